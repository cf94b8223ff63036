#include "screens/words.h"

#include <array>

#include "circuit/validate.h"
#include "tables/fuse.h"

namespace screens {
namespace {

constexpr std::array kSources{
    Words{"Alternator", "of the engine, straight or through a relay"},
    Words{"DC-DC charger", "from the vehicle's own battery"},
    Words{"Mains charger", "from shore or a socket"},
    Words{"Solar controller", "from panels on the roof"},
    Words{"Other source", "a generator, a second battery"},
};
constexpr std::array<Words, 3> kLoadKinds{{
    {"Takes the same amps", "Most motors, pumps and plain LED strips."},
    {"Takes the same watts", "Chargers, inverters, most electronics: more amps as the volts fall."},
    {"Heater or filament lamp", "Fewer amps as the volts fall."},
}};
constexpr std::array<Words, 4> kSettings{{
    {"Van", "Moves and shakes."},
    {"Trailer", "Moves and shakes."},
    {"Boat", "Moves, shakes and gets damp."},
    {"Fixed", "A shed or cabin that stays where it is."},
}};

constexpr std::array<Words, 3> kUses{{
    {"Hours on end", "Three hours or more: its fuse gets a quarter in hand."},
    {"Less than three hours", "Its fuse may be as large as its amps."},
    {"A minute or two", "Then it rests: a windlass, a starter."},
}};
constexpr std::array<Words, 3> kPoints{{
    {"Outlet", "Something runs here."},
    {"Junction", "Only joins wires."},
    {"Sub-block", "Joins them through fuses: each wire from here begins with its own."},
}};
constexpr std::array<Words, 2> kJoints{{
    {"Spliced, with a tail", "The run goes on from the splice; short wires go to the outlet."},
    {"Straight to the terminals", "The wire ends at the outlet; the next run begins there."},
}};
constexpr std::array<Words, 2> kReturns{{
    {"By wire", "Its own minus wire, as long as the plus."},
    {"By chassis", "The bare metal of the vehicle brings the current back."},
}};
constexpr std::array<std::string_view, 4> kInLine{"Switch", "Inline fuse", "Breaker", "Relay"};

struct CriterionWords {
  sizing::Criterion criterion;
  std::string_view name;
  std::string_view failed;
};
constexpr std::array<CriterionWords, 11> kCriteria{{
    {sizing::Criterion::ampacity, "Heat in the wire", "too thin for the amps"},
    {sizing::Criterion::fuse_rating, "Fuse", "no fuse protects it"},
    {sizing::Criterion::fuse_voltage, "Fuse voltage", "fuse not made for these volts"},
    {sizing::Criterion::part_rating, "Parts carry it", "a part carries less"},
    {sizing::Criterion::fit, "Wire fits the parts", "does not fit a part"},
    {sizing::Criterion::mechanical_minimum, "Strong enough", "too thin to last"},
    {sizing::Criterion::operating_point, "Loads can run", "a load can not run"},
    {sizing::Criterion::drop, "Voltage drop", "drops too much"},
    {sizing::Criterion::device_minimum, "Device's lowest volts", "too few volts for a device"},
    {sizing::Criterion::far_short, "Short at the far end", "fuse opens too late"},
    {sizing::Criterion::withstand, "Wire outlasts a short", "a short burns it first"},
}};

const CriterionWords& words_of(sizing::Criterion criterion) {
  for (const CriterionWords& words : kCriteria)
    if (words.criterion == criterion) return words;
  return kCriteria.front();
}

}  // namespace

std::span<const Words> load_kind_words() { return kLoadKinds; }
std::span<const Words> source_words() { return kSources; }
std::span<const Words> setting_words() { return kSettings; }
std::span<const Words> use_words() { return kUses; }
std::span<const Words> point_words() { return kPoints; }
std::span<const Words> joint_words() { return kJoints; }
std::span<const Words> return_words() { return kReturns; }
std::string_view in_line_name(circuit::InLineKind kind) { return kInLine.at(static_cast<std::size_t>(kind)); }
std::string_view criterion_name(sizing::Criterion criterion) { return words_of(criterion).name; }
std::string_view criterion_failed(sizing::Criterion criterion) { return words_of(criterion).failed; }

std::vector<std::string> names_of(std::span<const Words> words) {
  std::vector<std::string> names;
  for (const Words& each : words) names.emplace_back(each.name);
  return names;
}

std::vector<std::string> helps_of(std::span<const Words> words) {
  std::vector<std::string> helps;
  for (const Words& each : words) helps.emplace_back(each.help);
  return helps;
}

std::string size_text(const tables::Conductor& size) {
  return std::string(size.size) + " " + std::string(tables::gauge_system_suffix(size.system));
}

std::string size_unit(const tables::Conductor& size) {
  const std::string suffix(tables::gauge_system_suffix(size.system));
  return size.system == tables::GaugeSystem::awg ? suffix + " · " + units::area_text(size.area) : suffix;
}

std::string fuse_text(const circuit::Circuit& circuit, units::Amperes fuse) {
  const std::string_view colour = tables::fuse_colour(circuit.wiring.fuse_family, fuse);
  return units::amperes_text(fuse) + (colour.empty() ? "" : ", " + std::string(colour));
}

std::string load_text(const circuit::Load& load) {
  if (load.rating == 0.0) return "no load yet";
  return load.rating_in_watts ? units::watts_text(units::Watts(load.rating))
                              : units::amperes_text(units::Amperes(load.rating));
}

std::string what_runs_text(const circuit::Circuit& circuit, const circuit::Outlet& outlet) {
  if (outlet.point == circuit::PointKind::junction) return "only joins wires";
  if (outlet.point == circuit::PointKind::sub_block) return "joins wires through fuses";
  if (outlet.devices.size() == 1) {
    const std::string load = load_text(outlet.devices.front().load);
    return outlet.taps == 1 ? load : load + " in " + std::to_string(outlet.taps) + " lights";
  }
  return std::to_string(outlet.devices.size()) + " devices, " +
         units::amperes_text(circuit::rated_current(outlet, circuit.supply.nominal));
}

std::string letter_of(const circuit::Circuit& circuit, circuit::OutletId id) {
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i)
    if (circuit.outlets[i].id == id) return circuit::outlet_letter(i);
  return {};
}

std::string feeder_text(const circuit::Circuit& circuit, circuit::OutletId from) {
  return from == circuit::kBlock ? "the fuse block" : letter_of(circuit, from);
}

std::string run_text(const app::AppState& app, const circuit::Outlet& outlet) {
  return units::length_text(outlet.run.length, app.settings().units()) + " from " + feeder_text(app.editor().circuit(), outlet.fed_from);
}

std::string limit_text(const sizing::Judgement& judgement, double number) {
  switch (judgement.measure) {
    case sizing::Measure::amperes: return units::amperes_text(units::Amperes(number));
    case sizing::Measure::fraction: return units::percent_text(number);
    case sizing::Measure::volts: return units::volts_text(units::Volts(number));
    case sizing::Measure::seconds: return units::seconds_text(units::Seconds(number));
    case sizing::Measure::ampere_squared_seconds: return units::number_text(number, 3) + " A²s";
    case sizing::Measure::square_millimetres: return units::area_text(units::SquareMillimetres(number));
    case sizing::Measure::none: return {};
  }
  return {};
}

std::string source_text(const tables::Citation& citation) {
  std::string text(citation.document);
  if (!citation.edition.empty()) text.append(", ").append(citation.edition);
  if (!citation.where.empty()) text.append(", ").append(citation.where);
  return text;
}

std::string trimmed(double number) { return units::number_text(number, 6); }

}  // namespace screens
