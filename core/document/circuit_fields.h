// Every key of a circuit, once, in the order it is written. A door is what goes through the
// fields: the writer, the reader, and in the tests a lister. A key that is changed here is
// changed for all of them; docs/vehicle-format.md and docs/vehicle.schema.json follow, and a
// test holds both to this.
//
// `door.<kind>(key, value)`. maybe_...: the key is left out when nothing is told. ..._or: left
// out when it is the usual value, which is the format's own and stays what it is for ever.
#pragma once

#include "document/words.h"

namespace document {

// A circuit by itself, with the supply that it sees; or what of it is not its vehicle's.
enum class Extent { with_supply, plan };

template <class Door, class Load>
void load_fields(Door& door, Load& load) {
  door.word("kind", load.kind);
  door.rating("rated_a", "rated_w", load);  // one of the two: as the user typed it
  door.maybe_quantity("minimum_voltage_v", load.minimum_voltage);
}

template <class Door, class Inrush>
void inrush_fields(Door& door, Inrush& inrush) {
  door.quantity("current_a", inrush.current);
  door.quantity("lasting_s", inrush.lasting);
}

template <class Door, class Device>
void device_fields(Door& door, Device& device) {
  door.text_or("name", device.name, "");
  door.text_or("preset", device.preset, "");
  door.object("load", [&device](auto& inside) { load_fields(inside, device.load); });
  door.word_or("use", device.use, circuit::Use::continuous);
  door.maybe_object("inrush", device.inrush, [](auto& inside, auto& inrush) { inrush_fields(inside, inrush); });
  door.maybe_quantity("own_fuse_a", device.own_fuse);
}

template <class Door, class InLine>
void in_line_fields(Door& door, InLine& part) {
  door.word("kind", part.kind);
  door.quantity("rating_a", part.rating);
}

template <class Door, class Run>
void run_fields(Door& door, Run& run) {
  door.quantity("run_m", run.length);
  door.maybe_text("wire_size", run.size);
  door.word_or("wire_metal", run.metal, tables::WireMetal::copper);
  door.flag_or("two_core", run.two_core, false);
  door.word_or("return", run.back, circuit::ReturnPath::wire);
  door.list_or_none("in_line", "in_line", run.in_line, [](auto& inside, auto& part) { in_line_fields(inside, part); });
}

template <class Door, class Outlet>
void outlet_fields(Door& door, Outlet& outlet) {
  door.whole("id", outlet.id.number);
  door.text("name", outlet.name);
  door.word_or("point", outlet.point, circuit::PointKind::outlet);
  door.whole("fed_from", outlet.fed_from.number);
  run_fields(door, outlet.run);
  door.word_or("joint", outlet.joint, circuit::Joint::splice);
  // One device of which only the load is told: its load alone, as in version 1. None: neither.
  door.load_or_devices("load", "devices", outlet.devices,
                       [](auto& inside, auto& load) { load_fields(inside, load); },
                       [](auto& inside, auto& device) { device_fields(inside, device); });
  door.whole_or("taps", outlet.taps, 1);
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
  door.maybe_quantity("highest_v", supply.highest);
  door.maybe_quantity("internal_ohm", supply.internal_resistance);
  door.quantity("feeder_run_m", supply.feeder_run);
  door.text("feeder_size", supply.feeder_size);
  door.word_or("feeder_metal", supply.feeder_metal, tables::WireMetal::copper);
  door.quantity("main_fuse_a", supply.main_fuse);
  door.word_or("main_fuse_kind", supply.main_fuse_kind, tables::FuseFamilyId::bolt_on);
  door.quantity_or("main_fuse_distance_m", supply.main_fuse_distance, 0.15);
  door.maybe_quantity("disconnect_a", supply.disconnect);
  door.maybe_quantity("block_rating_a", supply.block_rating);
  door.quantity_or("beside_a", supply.beside, 0.0);
}

// What of the wiring is the block's: shared by all of its circuits.
template <class Door, class Block>
void position_fields(Door& door, Block& block) {
  door.word("fuse_family", block.fuse_family);
  door.text("clamp_part", block.clamp_part);
  door.maybe_quantity("clamp_rating_a", block.clamp_rating);
}

template <class Door, class Wiring>
void wiring_fields(Door& door, Wiring& wiring, Extent extent) {
  door.word("gauge", wiring.gauge);
  door.word("ampacity_table", wiring.ampacity_table);
  door.quantity("ambient_c", wiring.around.ambient);
  door.flag("hot_space", wiring.around.hot_space);
  door.quantity("insulation_c", wiring.around.insulation);
  door.whole("circuits_bundled", wiring.around.circuits_bundled);
  door.quantity("wire_temperature_c", wiring.wire_temperature);
  if (extent == Extent::with_supply) position_fields(door, wiring);
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
void circuit_fields(Door& door, Circuit& circuit, Extent extent) {
  door.text("name", circuit.name);
  if (extent == Extent::with_supply) {
    door.text("place", circuit.place);
    door.whole("fuse_position", circuit.fuse_position);
    door.word("setting", circuit.setting);
    door.maybe_word("practice", circuit.practice);
    door.text_or("colours", circuit.colours, "");
    door.object("supply", [&circuit](auto& inside) { supply_fields(inside, circuit.supply); });
  }
  door.object("wiring", [&circuit, extent](auto& inside) { wiring_fields(inside, circuit.wiring, extent); });
  door.number("drop_limit_fraction", circuit.drop_limit);
  door.maybe_quantity("at_most_at_once_a", circuit.at_most_at_once);
  door.list("outlets", "outlet", circuit.outlets, [](auto& inside, auto& outlet) { outlet_fields(inside, outlet); });
  door.object("shelf", [&circuit](auto& inside) { shelf_fields(inside, circuit.shelf); });
  door.maybe_object("in_hand", circuit.in_hand, [](auto& inside, auto& in_hand) { in_hand_fields(inside, in_hand); });
  door.whole("next_outlet_id", circuit.next_outlet_id);
}

}  // namespace document
