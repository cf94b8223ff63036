#include "screens/supply_cards.h"

#include "screens/fields.h"
#include "screens/words.h"
#include "tables/fuse.h"
#include "tables/supply.h"
#include "tables/wire_metal.h"

namespace screens {
namespace {

bool draw_voltage(const Feeding& at, circuit::Supply supply) {
  const auto offered = tables::system_voltages_v();
  std::vector<std::string> names;
  std::size_t current = 0;
  for (std::size_t i = 0; i < offered.size(); ++i) {
    names.push_back(trimmed(offered[i]) + " V");
    if (offered[i] == supply.nominal.number()) current = i;
  }
  const auto chosen = ui::choice("System", names, current);
  if (!chosen) return false;
  supply.nominal = units::Volts(offered[*chosen]);
  at.tell(supply);
  return true;
}

bool draw_battery(const Feeding& at, circuit::Supply supply) {
  const auto kinds = tables::battery_kinds();
  const int blocks = tables::blocks_in_series(supply.nominal);
  std::vector<std::string> names, subs;
  std::size_t current = 0;
  for (std::size_t i = 0; i < kinds.size(); ++i) {
    names.emplace_back(kinds[i].name);
    subs.push_back(units::volts_text(kinds[i].resting * blocks) + " rested, " + units::volts_text(kinds[i].low * blocks) + " low");
    if (kinds[i].key == supply.battery) current = i;
  }
  const auto chosen = ui::choice("Battery", names, current, {.sub = {}, .hide_label = false, .as_list = true, .subs = subs});
  if (!chosen) return false;
  supply.battery = std::string(kinds[*chosen].key);
  at.tell(supply);
  return true;
}

bool draw_own_volts(const Feeding& at, circuit::Supply supply) {
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  if (kind == nullptr) return false;
  const int blocks = tables::blocks_in_series(supply.nominal);
  const bool own = supply.resting.has_value() || supply.low.has_value();
  if (ui::switch_row("Volts of my own battery", own, {.sub = own ? "" : "as that kind of battery", .disabled = false})) {
    supply.resting = own ? std::nullopt : std::optional(kind->resting * blocks);
    supply.low = own ? std::nullopt : std::optional(kind->low * blocks);
    at.tell(supply);
    return true;
  }
  if (!own) return false;
  if (const auto volts = number_stepper(at.app, {.label = "Rested", .sub = "charged, an hour without load",
                                              .field = circuit::Field::resting_per_12v,
                                              .value = supply.resting.value_or(kind->resting * blocks).number(),
                                              .blocks = blocks})) {
    supply.resting = units::Volts(volts->value);
    at.tell(supply, "resting", *volts);
    return true;
  }
  if (const auto volts = number_stepper(at.app, {.label = "Low", .sub = "where you stop using it",
                                              .field = circuit::Field::low_per_12v,
                                              .value = supply.low.value_or(kind->low * blocks).number(),
                                              .blocks = blocks})) {
    supply.low = units::Volts(volts->value);
    at.tell(supply, "low", *volts);
    return true;
  }
  return false;
}

bool draw_cable(const Feeding& at, circuit::Supply supply) {
  const tables::Conductor* now = tables::conductor_by_id(supply.feeder_size);
  if (!ui::disclosure("Cable: " + (now != nullptr ? size_text(*now) : std::string("not told")), false,
                      std::string("battery to block, plus and minus; ") + std::string(tables::wire_metal(supply.feeder_metal).name)))
    return false;
  const tables::Conductor* pressed = nullptr;
  ui::begin_flow();
  for (const tables::GaugeSystem system : tables::gauge_systems())
    for (const tables::Conductor& size : tables::conductors(system))
      if (ui::chip(size_text(size), {.on = size.id == supply.feeder_size, .said = "Cable " + size_text(size)})) pressed = &size;
  ui::end_flow();
  if (pressed == nullptr) return false;
  supply.feeder_size = std::string(pressed->id);
  at.tell(supply);
  return true;
}

bool draw_metal(const Feeding& at, circuit::Supply supply) {
  const tables::WireMetalRow& now = tables::wire_metal(supply.feeder_metal);
  if (!now.caution.empty()) ui::caption(now.caution, ui::Ink::caution);
  if (!ui::disclosure("Cable made of", false, now.name)) return false;
  std::vector<std::string> names, subs;
  std::size_t current = 0;
  for (const tables::WireMetalRow& row : tables::wire_metals()) {
    if (row.metal == supply.feeder_metal) current = names.size();
    names.emplace_back(row.name);
    subs.emplace_back(row.note);
  }
  const auto chosen = ui::choice("Cable made of", names, current, {.sub = {}, .hide_label = true, .as_list = true, .subs = subs});
  if (!chosen) return false;
  supply.feeder_metal = tables::wire_metals()[*chosen].metal;
  at.tell(supply);
  return true;
}

bool draw_feeder(const Feeding& at, circuit::Supply supply) {
  if (const auto run = number_stepper(at.app, {.label = "Battery to block", .sub = "one way, along the cable",
                                            .field = circuit::Field::feeder_run_m, .value = supply.feeder_run.number()})) {
    supply.feeder_run = units::Metres(run->value);
    at.tell(supply, "feeder", *run);
    return true;
  }
  return draw_cable(at, supply) || draw_metal(at, supply);
}

std::string range_text(const tables::FuseFamily& kind, units::Volts highest) {
  return trimmed(kind.ratings_a.front()) + " to " + trimmed(kind.ratings_a.back()) + " A, breaks " +
         units::amperes_text(tables::breaks_at(kind, highest));
}

// A kind is offered where it may break anything at the most that the system sees.
bool draw_main_fuse_kind(const Feeding& at, circuit::Supply supply) {
  const units::Volts highest = circuit::highest_voltage(supply);
  const tables::FuseFamily& now = tables::fuse_family(supply.main_fuse_kind);
  if (!ui::disclosure("Kind of main fuse", false, std::string(now.name) + ", " + range_text(now, highest))) return false;
  std::vector<std::string> names, subs;
  std::vector<tables::FuseFamilyId> kinds;
  std::size_t current = 0;
  for (const tables::FuseFamily* kind : tables::main_fuse_kinds()) {
    const bool suits = tables::breaks_at(*kind, highest) > units::Amperes(0.0);
    if (!suits && kind->id != now.id) continue;
    if (kind->id == now.id) current = kinds.size();
    kinds.push_back(kind->id);
    names.emplace_back(kind->name);
    subs.push_back(range_text(*kind, highest));
  }
  const auto chosen = ui::choice("Kind of main fuse", names, current, {.sub = {}, .hide_label = true, .as_list = true, .subs = subs});
  if (!chosen) return false;
  supply.main_fuse_kind = kinds[*chosen];
  at.tell(supply);
  return true;
}

bool draw_main_fuse(const Feeding& at, circuit::Supply supply) {
  if (const auto fuse = number_stepper(at.app, {.label = "Main fuse", .sub = "protects the cable to the block",
                                             .field = circuit::Field::main_fuse_a, .value = supply.main_fuse.number()})) {
    supply.main_fuse = units::Amperes(fuse->value);
    at.tell(supply, "main-fuse", *fuse);
    return true;
  }
  if (supply.main_fuse == units::Amperes(0.0)) return false;
  if (draw_main_fuse_kind(at, supply)) return true;
  const auto distance = number_stepper(at.app, {.label = "Battery to main fuse", .sub = "bare of any protection: as short as can be",
                                             .field = circuit::Field::main_fuse_distance_m,
                                             .value = supply.main_fuse_distance.number()});
  if (!distance) return false;
  supply.main_fuse_distance = units::Metres(distance->value);
  at.tell(supply, "main-fuse-distance", *distance);
  return true;
}

// A rating that may be told or not: a switch, and its number under it.
struct MaybeRating {
  std::string_view question;
  std::string_view unknown;      // under the question while it is not told
  std::string_view label;
  std::string_view key;          // joins what one held finger changes
  circuit::Field field;
  double first;                  // A: only where the field starts
  std::optional<units::Amperes> circuit::Supply::* member;
};
constexpr MaybeRating kDisconnect{"There is a main switch", "none in the cable to the block", "Main switch", "disconnect",
                                  circuit::Field::disconnect_a, 100.0, &circuit::Supply::disconnect};
constexpr MaybeRating kBlock{"The whole block has a rating", "not told: all positions together", "Block", "block",
                             circuit::Field::block_a, 100.0, &circuit::Supply::block_rating};

bool draw_maybe(const Feeding& at, circuit::Supply supply, const MaybeRating& of) {
  auto& rating = supply.*of.member;
  const bool told = rating.has_value();
  if (ui::switch_row(of.question, told, {.sub = told ? std::string() : std::string(of.unknown), .disabled = false})) {
    rating = told ? std::nullopt : std::optional(units::Amperes(of.first));
    at.tell(supply);
    return true;
  }
  if (!told) return false;
  const auto amperes = number_stepper(at.app, {.label = std::string(of.label), .sub = "marked on it", .field = of.field, .value = rating->number()});
  if (!amperes) return false;
  rating = units::Amperes(amperes->value);
  at.tell(supply, std::string(of.key), *amperes);
  return true;
}

}  // namespace

void Feeding::tell(const circuit::Supply& supply) const { app.editor().change(vehicle, vehicle::SetSupply{block, supply}); }

void Feeding::tell(const circuit::Supply& supply, std::string join_key, const ui::Changed& changed) const {
  change(app, vehicle, vehicle::SetSupply{block, supply}, std::move(join_key), changed);
}

bool draw_supply_cards(const Feeding& at) {
  const circuit::Supply supply = vehicle::supply_of(at.app.desk().notebook().find(at.vehicle)->vehicle, at.block);
  ui::begin_card("battery", {.name = "Battery", .tone = ui::Tone::plain});
  bool edited = draw_voltage(at, supply) || draw_battery(at, supply) || draw_own_volts(at, supply);
  ui::end_card();
  ui::begin_card("feeder", {.name = "Cable to the fuse block", .tone = ui::Tone::plain});
  edited = edited || draw_feeder(at, supply);
  ui::end_card();
  ui::begin_card("main-fuse", {.name = "Main fuse, switch and block", .tone = ui::Tone::plain});
  edited = edited || draw_main_fuse(at, supply) || draw_maybe(at, supply, kDisconnect) || draw_maybe(at, supply, kBlock);
  ui::end_card();
  ui::notice({.tone = ui::Tone::caution, .title = {},
              .text = "A battery can deliver thousands of amps. Large and lithium batteries need a main fuse of their "
                      "own, close to the positive post, that can break that current.",
              .action = {}});
  return edited;
}

}  // namespace screens
