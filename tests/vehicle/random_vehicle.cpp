#include "vehicle/random_vehicle.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "tables/part.h"
#include "tables/supply.h"
#include "vehicle/validate.h"

namespace random_vehicles {
namespace {

using circuit::Circuit;
using circuit::Field;
using circuit::Outlet;
using units::Amperes;
using units::Metres;
using units::Volts;
using vehicle::Vehicle;

class Maker {
 public:
  Maker(Engine& engine, const Style& style) : engine_(engine), style_(style) {}

  Vehicle vehicle();

 private:
  // Numbers --------------------------------------------------------------------------------
  std::size_t below(std::size_t size) { return std::uniform_int_distribution<std::size_t>(0, size - 1)(engine_); }
  double uniform(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
  bool chance(double probability) { return uniform(0.0, 1.0) < probability; }
  template <class Range>
  decltype(auto) one_of(const Range& range) { return range[below(range.size())]; }
  template <class T>
  T choice(std::size_t count) { return static_cast<T>(below(count)); }

  // As met: between `low` and `high`, small ones as often as large ones. Else all that is allowed.
  double number(Field field, double low, double high, int series = 1) {
    const circuit::Limit& limit = circuit::limit(field);
    const double scale = series;
    if (!style_.whole_ranges) return rounded(log_uniform(low, high) * scale);
    if (limit.whole) return std::round(uniform(limit.low, limit.high));
    switch (below(12)) {
      case 0: return limit.low * scale;
      case 1: return limit.high * scale;
      default: return (limit.low > 0.0 && chance(0.5) ? log_uniform(limit.low, limit.high) : uniform(limit.low, limit.high)) * scale;
    }
  }
  double log_uniform(double low, double high) {
    if (!(low > 0.0)) return uniform(low, high);
    return std::clamp(std::exp(uniform(std::log(low), std::log(high))), low, high);
  }
  // Three digits, as people type.
  static double rounded(double value) {
    if (value == 0.0) return value;
    const double digits = std::pow(10.0, 2.0 - std::floor(std::log10(std::fabs(value))));
    return std::round(value * digits) / digits;
  }
  // 0 where the field has a meaning for it.
  double or_zero(double value) { return chance(0.15) ? 0.0 : value; }

  // Words ----------------------------------------------------------------------------------
  std::string name(const char* plain) {
    if (!style_.whole_ranges) return plain + std::string(" ") + std::to_string(1 + below(99));
    static const std::array<std::string, 10> kNames{
        "Pump", "Küche & <Bad> \"12\" \\ 🔌", "x", std::string(40, 'n'), "<script>alert(1)</script>", "炊事 مطبخ",
        "a, b; c: d / e", "null", "{\"format\": 1}", wide(40)};
    return one_of(kNames);
  }
  static std::string wide(std::size_t characters) {
    std::string text;
    for (std::size_t i = 0; i < characters; ++i) text += "🔌";
    return text;
  }
  std::string sentence() {
    static const std::array<std::string, 6> kSentences{
        "", "About 12.6 V", "Measure between the two tabs at C, \"red\" first.", std::string(vehicle::kMaxTextBytes, 's'),
        "The red splice at C is open: 95 %.", "Größer als 10 Ω"};
    return one_of(kSentences);
  }
  std::string date() {
    return "20" + std::to_string(10 + below(90)) + "-" + std::to_string(10 + below(3)) + "-" + std::to_string(10 + below(20));
  }
  std::string part(tables::PartKind kind) { return std::string(one_of(tables::parts(kind)).key); }
  std::string size() {
    return std::string(one_of(tables::conductors(one_of(tables::gauge_systems()))).id);
  }
  // A size that carries something.
  std::string thick() {
    return style_.whole_ranges ? size() : std::string(one_of(std::array{"10awg", "6awg", "4awg", "1/0awg", "16mm2", "25mm2", "6sae"}));
  }
  tables::WireMetal metal() { return chance(0.7) ? tables::WireMetal::copper : choice<tables::WireMetal>(3); }
  tables::FuseFamilyId block_fuse() { return one_of(tables::fuse_families()).id; }
  tables::FuseFamilyId main_fuse() { return chance(0.8) ? one_of(tables::main_fuse_kinds())->id : block_fuse(); }

  // The vehicle ----------------------------------------------------------------------------
  vehicle::Battery battery() {
    vehicle::Battery made;
    made.nominal = Volts(one_of(tables::system_voltages_v()));
    const tables::BatteryKind& kind = one_of(tables::battery_kinds());
    series_ = tables::blocks_in_series(made.nominal);
    made.kind = kind.key;
    made.capacity_ah = or_zero(number(Field::capacity_ah, 50.0, 400.0));
    if (chance(0.3)) made.resting = Volts(number(Field::resting_per_12v, 12.5, 13.4, series_));
    if (chance(0.3)) made.low = Volts(number(Field::low_per_12v, 11.0, 12.2, series_));
    const Volts resting = made.resting.value_or(kind.resting * series_);
    if (made.low.value_or(kind.low * series_) > resting) made.low = std::max(Volts(circuit::limit(Field::low_per_12v).low * series_), resting * 0.9);
    if (chance(0.3)) made.internal_resistance = units::Ohms(number(Field::internal_ohm, 0.002, 0.05));
    return made;
  }

  vehicle::Source source(const Vehicle& of) {
    vehicle::Source made;
    made.id = vehicle::SourceId{fresh_id()};
    made.kind = choice<vehicle::SourceKind>(5);
    made.name = name("Charger");
    made.highest = Volts(number(Field::highest_per_12v, 13.8, 14.8, tables::blocks_in_series(of.battery.nominal)));
    made.most = Amperes(number(Field::source_a, 5.0, 150.0));
    made.cable_run = Metres(number(Field::source_run_m, 0.3, 6.0));
    made.cable_size = thick();
    made.cable_metal = metal();
    made.fuse = Amperes(or_zero(number(Field::main_fuse_a, 10.0, 200.0)));
    made.fuse_kind = main_fuse();
    return made;
  }

  vehicle::Block block() {
    vehicle::Block made;
    made.id = vehicle::BlockId{fresh_id()};
    made.name = name("Fuse block");
    made.positions = static_cast<int>(std::round(number(Field::positions, 4.0, 16.0)));
    if (chance(0.4)) made.rating = Amperes(number(Field::block_a, 50.0, 150.0));
    made.main.kind = main_fuse();
    made.main.rating = Amperes(or_zero(number(Field::main_fuse_a, 30.0, 200.0)));
    made.main.distance = Metres(number(Field::main_fuse_distance_m, 0.05, 0.5));
    if (chance(0.4)) made.disconnect = Amperes(number(Field::disconnect_a, 50.0, 300.0));
    made.feeder.run = Metres(or_zero(number(Field::feeder_run_m, 0.2, 6.0)));
    made.feeder.size = thick();
    made.feeder.metal = metal();
    made.fuse_family = chance(0.5) ? tables::FuseFamilyId::blade : block_fuse();
    made.clamp_part = part(tables::PartKind::clamp);
    if (chance(0.3)) made.clamp_rating = Amperes(number(Field::part_rating_a, 15.0, 40.0));
    if (chance(0.3)) made.at_most_at_once = Amperes(number(Field::at_most_at_once_a, 20.0, 120.0));
    return made;
  }

  std::uint32_t fresh_id() {
    next_id_ += static_cast<std::uint32_t>(below(3));
    return next_id_++;
  }

  void place_circuit(Vehicle& of) {
    const vehicle::Block& block = one_of(of.blocks);
    const auto position = vehicle::spare_position(of, block.id, 1 + static_cast<int>(below(static_cast<std::size_t>(block.positions))));
    if (!position) return;
    vehicle::PlacedCircuit placed;
    placed.id = vehicle::CircuitId{fresh_id()};
    placed.block = block.id;
    placed.position = *position;
    placed.plan = plan(of.kind);
    if (style_.built && chance(0.5)) placed.built = built(placed.plan, of.kind);
    if (style_.built && chance(0.4)) traces(placed);
    const std::size_t at = below(of.circuits.size() + 1);
    of.circuits.insert(of.circuits.begin() + static_cast<std::ptrdiff_t>(at), std::move(placed));
  }

  // A circuit ------------------------------------------------------------------------------
  Circuit plan(circuit::Setting kind) {
    Circuit made;
    made.name = name("Circuit");
    wire_up(made.wiring);
    made.drop_limit = chance(0.5) ? 0.05 : number(Field::drop_limit_fraction, 0.02, 0.1);
    const std::size_t points = 1 + below(style_.most_points);
    const bool chain = chance(0.5);
    for (std::size_t i = 0; i < points; ++i) add_point(made, chain, kind);
    made.next_outlet_id = made.outlets.back().id.number + 1;
    for (const Outlet& each : made.outlets) made.next_outlet_id = std::max(made.next_outlet_id, each.id.number + 1);
    if (chance(0.5)) cap(made);
    stock(made);
    if (chance(0.2)) made.in_hand = circuit::InHand{size(), Amperes(number(Field::fuse_a, 5.0, 30.0))};
    return made;
  }

  void cap(Circuit& made) {
    double sum = 0.0;
    for (const Outlet& each : made.outlets) sum += circuit::rated_current(each, Volts(12.0 * series_)).number();
    const circuit::Limit& limit = circuit::limit(Field::at_most_at_once_a);
    made.at_most_at_once = Amperes(style_.whole_ranges ? number(Field::at_most_at_once_a, 1.0, 50.0)
                                                       : std::clamp(rounded(sum * uniform(0.2, 1.0)), limit.low, limit.high));
  }

  void wire_up(circuit::Wiring& wiring) {
    wiring.gauge = one_of(tables::gauge_systems());
    wiring.ampacity_table = chance(0.6) ? tables::default_ampacity_table(wiring.gauge) : one_of(tables::ampacity_tables()).id;
    const double insulation = one_of(tables::insulation_ratings_c());
    wiring.around.insulation = units::Celsius(style_.whole_ranges ? insulation : std::max(insulation, 75.0));
    // Metal is no colder than its air and no hotter than its insulation stands.
    const double air = style_.whole_ranges ? uniform(-40.0, std::min(90.0, insulation)) : std::round(uniform(10.0, 50.0));
    wiring.around.ambient = units::Celsius(air);
    wiring.wire_temperature = units::Celsius(style_.whole_ranges ? uniform(air, insulation) : std::max(air, 50.0));
    wiring.around.hot_space = chance(0.2);
    wiring.around.circuits_bundled = chance(0.6) ? 1 : static_cast<int>(1 + below(style_.whole_ranges ? 20 : 6));
    wiring.ferrule = chance(0.3);
    wiring.splice_part = part(tables::PartKind::splice);
    wiring.tail = Metres(or_zero(number(Field::tail_m, 0.05, 0.3)));
  }

  // Numbers with gaps, and the highest is not always the last.
  circuit::OutletId fresh_outlet(const Circuit& made) {
    for (;;) {
      const circuit::OutletId id{static_cast<std::uint32_t>(1 + below(3 * made.outlets.size() + 5))};
      if (circuit::find_outlet(made, id) == nullptr) return id;
    }
  }

  void add_point(Circuit& made, bool chain, circuit::Setting kind) {
    Outlet outlet;
    outlet.id = fresh_outlet(made);
    outlet.name = name("Outlet");
    const std::size_t parent = made.outlets.empty() ? 0 : chain ? made.outlets.size() : below(made.outlets.size() + 1);
    const Outlet* from = parent == 0 ? nullptr : &made.outlets[parent - 1];
    if (from != nullptr) outlet.fed_from = from->id;
    outlet.point = chance(0.75) ? circuit::PointKind::outlet : choice<circuit::PointKind>(3);
    outlet.run = run(kind);
    if (from != nullptr && from->point == circuit::PointKind::sub_block) {
      outlet.run.in_line.resize(std::min<std::size_t>(outlet.run.in_line.size(), circuit::kMaxInLine - 1));
      outlet.run.in_line.insert(outlet.run.in_line.begin(), in_line(chance(0.8) ? circuit::InLineKind::fuse : circuit::InLineKind::breaker));
    }
    outlet.devices.clear();
    if (outlet.point == circuit::PointKind::outlet) {
      const std::size_t count = chance(0.6) ? 1 : 1 + below(style_.whole_ranges ? circuit::kMaxDevices : 4);
      for (std::size_t i = 0; i < count; ++i) outlet.devices.push_back(device());
      if (chance(0.4)) outlet.joint = circuit::Joint::direct;
      if (count == 1 && chance(0.2)) outlet.taps = static_cast<int>(2 + below(style_.whole_ranges ? 99 : 12));
    }
    if (chance(0.2)) outlet.drop_limit = number(Field::drop_limit_fraction, 0.01, 0.1);
    outlet.outlet_part = part(tables::PartKind::outlet);
    outlet.terminal_part = part(tables::PartKind::terminal);
    if (chance(0.2)) outlet.rating = Amperes(number(Field::part_rating_a, 5.0, 50.0));
    made.outlets.push_back(std::move(outlet));
  }

  circuit::Run run(circuit::Setting kind) {
    circuit::Run made;
    made.length = Metres(number(Field::run_m, 0.2, 10.0));
    if (chance(0.35)) made.size = style_.whole_ranges ? size() : std::string(one_of(std::array{"16awg", "12awg", "10awg", "2.5mm2", "6mm2", "14sae"}));
    if (made.size || style_.whole_ranges) made.metal = metal();
    made.two_core = chance(0.25);
    const bool chassis = kind == circuit::Setting::van || kind == circuit::Setting::trailer;
    if (chassis && !made.two_core && chance(0.2)) made.back = circuit::ReturnPath::chassis;
    while (made.in_line.size() < circuit::kMaxInLine && chance(0.2)) made.in_line.push_back(in_line(choice<circuit::InLineKind>(4)));
    return made;
  }
  circuit::InLine in_line(circuit::InLineKind kind) { return {kind, Amperes(number(Field::in_line_a, 5.0, 40.0))}; }

  circuit::Device device() {
    circuit::Device made;
    if (chance(0.4)) made.name = name("Device");
    if (chance(0.3)) made.preset = one_of(std::array{"pump", "cool-box", "phone-charger"});
    circuit::Load& load = made.load;
    load.kind = choice<circuit::LoadKind>(3);
    load.rating_in_watts = chance(0.4);
    load.rating = load.rating_in_watts ? number(Field::load_w, 5.0, 150.0) : number(Field::load_a, 0.1, 12.0);
    load.rating = or_zero(load.rating);
    if (chance(0.3)) load.minimum_voltage = Volts(number(Field::minimum_voltage_per_12v, 9.0, 11.5, series_));
    made.use = choice<circuit::Use>(3);
    if (chance(0.3)) {
      made.inrush = circuit::Inrush{Amperes(number(Field::inrush_a, 1.0, 60.0)), units::Seconds(number(Field::inrush_s, 0.01, 5.0))};
    }
    if (chance(0.3)) made.own_fuse = Amperes(number(Field::fuse_a, 2.0, 20.0));
    return made;
  }

  void stock(Circuit& made) {
    if (chance(0.3)) {
      for (const tables::Conductor& each : tables::conductors(made.wiring.gauge)) {
        if (chance(0.3)) made.shelf.missing_sizes.emplace_back(each.id);
      }
    }
    if (chance(0.3)) made.shelf.missing_fuses_a = {7.5, number(Field::fuse_a, 10.0, 30.0)};
    auto& fuses = made.shelf.missing_fuses_a;
    if (fuses.size() == 2 && fuses[0] == fuses[1]) fuses.pop_back();
  }

  // What is there --------------------------------------------------------------------------
  vehicle::Built built(const Circuit& plan_of_it, circuit::Setting kind) {
    vehicle::Built made;
    made.circuit = chance(0.7) ? plan_of_it : plan(kind);   // as planned, or otherwise
    if (chance(0.8)) {
      made.fuse = Amperes(number(Field::fuse_a, 5.0, 40.0));
      made.fuse_knowledge = chance(0.5) ? vehicle::Knowledge::known : vehicle::Knowledge::guessed;
    }
    for (Outlet& each : made.circuit.outlets) {
      if (chance(0.3)) each.run.size.reset();
      else if (chance(0.5)) each.run.size = size();
      const vehicle::Knowledge size_is = !each.run.size ? vehicle::Knowledge::unknown : choice<vehicle::Knowledge>(2);
      made.runs.push_back({each.id, size_is, choice<vehicle::Knowledge>(3)});
    }
    if (chance(0.6)) made.date = date();
    return made;
  }

  void traces(vehicle::PlacedCircuit& placed) {
    const std::size_t count = 1 + below(3);
    std::uint32_t number = 0;
    for (std::size_t i = 0; i < count; ++i) {
      vehicle::TraceRecord made;
      made.number = number += 1 + static_cast<std::uint32_t>(below(3));
      made.date = date();
      made.circuit = name("Circuit");
      made.complaint = sentence();
      const std::size_t told = below(6);
      for (std::size_t k = 0; k < told; ++k) made.told.push_back({sentence(), sentence()});
      made.outcome = sentence();
      placed.traces.push_back(std::move(made));
    }
  }

  Engine& engine_;
  const Style& style_;
  int series_ = 1;
  std::uint32_t next_id_ = 1;
};

Vehicle Maker::vehicle() {
  Vehicle made;
  made.name = name("Van");
  made.kind = choice<circuit::Setting>(4);
  if (chance(0.3)) made.practice = one_of(tables::practices()).id;
  if (chance(0.3)) made.colours = one_of(tables::conductor_colours()).key;
  made.battery = battery();
  next_id_ = 1 + static_cast<std::uint32_t>(below(50));
  const std::size_t sources = below(style_.most_sources + 1);
  for (std::size_t i = 0; i < sources; ++i) made.sources.push_back(source(made));
  const std::size_t blocks = 1 + below(style_.most_blocks);
  for (std::size_t i = 0; i < blocks; ++i) made.blocks.push_back(block());
  const std::size_t circuits = below(style_.most_circuits + 1);
  for (std::size_t i = 0; i < circuits; ++i) place_circuit(made);
  made.next_id = next_id_;
  return made;
}

}  // namespace

Vehicle any(Engine& engine, const Style& style) {
  for (;;) {
    Vehicle made = Maker(engine, style).vehicle();
    if (vehicle::validate(made).empty()) return made;
  }
}

Circuit any_circuit(Engine& engine, const Style& style) {
  for (;;) {
    const Vehicle made = any(engine, style);
    if (!made.circuits.empty()) return vehicle::circuit_of(made, made.circuits.front().id);
  }
}

}  // namespace random_vehicles
