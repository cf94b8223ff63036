// Every key of the file, once, in the order it is written. A door is what goes through the
// fields: the writer, the reader, and in the tests a lister. A key that is changed here is
// changed for all of them; docs/circuit-format.md and docs/circuit.schema.json follow, and
// a test holds the schema to this.
#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "circuit/circuit.h"

namespace document {

template <class T>
using Words = std::pair<std::string_view, T>;

inline constexpr std::array<Words<circuit::LoadKind>, 3> kLoadKinds{{
    {"constant-current", circuit::LoadKind::constant_current},
    {"constant-power", circuit::LoadKind::constant_power},
    {"resistive", circuit::LoadKind::resistive},
}};
inline constexpr std::array<Words<circuit::Setting>, 4> kSettings{{
    {"van", circuit::Setting::van},
    {"trailer", circuit::Setting::trailer},
    {"boat", circuit::Setting::boat},
    {"fixed", circuit::Setting::fixed},
}};
inline constexpr std::array<Words<tables::GaugeSystem>, 2> kGauges{{
    {"awg", tables::GaugeSystem::awg},
    {"metric", tables::GaugeSystem::metric},
}};

// `door.<kind>(key, value)`; maybe_...: the key is left out when nothing is told.
template <class Door, class Load>
void load_fields(Door& door, Load& load) {
  door.choice("kind", load.kind, kLoadKinds);
  door.rating("rated_a", "rated_w", load);  // one of the two: as the user typed it
  door.maybe_quantity("minimum_voltage_v", load.minimum_voltage);
}

template <class Door, class Outlet>
void outlet_fields(Door& door, Outlet& outlet) {
  door.whole("id", outlet.id.number);
  door.text("name", outlet.name);
  door.whole("fed_from", outlet.fed_from.number);
  door.quantity("run_m", outlet.run.length);
  door.object("load", [&outlet](auto& inside) { load_fields(inside, outlet.devices.front().load); });
  door.maybe_number("drop_limit_fraction", outlet.drop_limit);
  door.text("outlet_part", outlet.outlet_part);
  door.text("terminal_part", outlet.terminal_part);
  door.maybe_quantity("rating_a", outlet.rating);
}

template <class Door, class Supply>
void supply_fields(Door& door, Supply& supply) {
  door.quantity("nominal_v", supply.nominal);
  door.text("battery", supply.battery);
  door.maybe_quantity("resting_v", supply.resting);
  door.maybe_quantity("low_v", supply.low);
  door.quantity("feeder_run_m", supply.feeder_run);
  door.text("feeder_size", supply.feeder_size);
  door.quantity("main_fuse_a", supply.main_fuse);
}

template <class Door, class Wiring>
void wiring_fields(Door& door, Wiring& wiring) {
  door.choice("gauge", wiring.gauge, kGauges);
  door.ampacity_table("ampacity_table", wiring.ampacity_table);
  door.quantity("ambient_c", wiring.around.ambient);
  door.flag("hot_space", wiring.around.hot_space);
  door.quantity("insulation_c", wiring.around.insulation);
  door.whole("circuits_bundled", wiring.around.circuits_bundled);
  door.quantity("wire_temperature_c", wiring.wire_temperature);
  door.fuse_family("fuse_family", wiring.fuse_family);
  door.text("clamp_part", wiring.clamp_part);
  door.maybe_quantity("clamp_rating_a", wiring.clamp_rating);
  door.flag("ferrule", wiring.ferrule);
  door.text("splice_part", wiring.splice_part);
  door.quantity("tail_m", wiring.tail);
}

template <class Door, class Shelf>
void shelf_fields(Door& door, Shelf& shelf) {
  door.texts("missing_sizes", shelf.missing_sizes);
  door.numbers("missing_fuses_a", shelf.missing_fuses_a);
}

template <class Door, class InHand>
void in_hand_fields(Door& door, InHand& in_hand) {
  door.text("size", in_hand.size);
  door.quantity("fuse_a", in_hand.fuse);
}

template <class Door, class Circuit>
void circuit_fields(Door& door, Circuit& circuit) {
  door.text("name", circuit.name);
  door.text("place", circuit.place);
  door.whole("fuse_position", circuit.fuse_position);
  door.choice("setting", circuit.setting, kSettings);
  door.object("supply", [&circuit](auto& inside) { supply_fields(inside, circuit.supply); });
  door.object("wiring", [&circuit](auto& inside) { wiring_fields(inside, circuit.wiring); });
  door.number("drop_limit_fraction", circuit.drop_limit);
  door.maybe_quantity("at_most_at_once_a", circuit.at_most_at_once);
  door.list("outlets", circuit.outlets, [](auto& inside, auto& outlet) { outlet_fields(inside, outlet); });
  door.object("shelf", [&circuit](auto& inside) { shelf_fields(inside, circuit.shelf); });
  door.maybe_object("in_hand", circuit.in_hand, [](auto& inside, auto& in_hand) { in_hand_fields(inside, in_hand); });
  door.whole("next_outlet_id", circuit.next_outlet_id);
}

}  // namespace document
