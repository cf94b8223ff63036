// Every key of a vehicle, once, in the order it is written; doors as in circuit_fields.h.
#pragma once

#include "document/circuit_fields.h"

namespace document {

template <class Door, class Battery>
void battery_fields(Door& door, Battery& battery) {
  door.quantity("nominal_v", battery.nominal);
  door.text("kind", battery.kind);
  door.number_or("capacity_ah", battery.capacity_ah, 0.0);
  door.maybe_quantity("resting_v", battery.resting);
  door.maybe_quantity("low_v", battery.low);
  door.maybe_quantity("internal_ohm", battery.internal_resistance);
}

template <class Door, class Source>
void source_fields(Door& door, Source& source) {
  door.whole("id", source.id.number);
  door.word("kind", source.kind);
  door.text("name", source.name);
  door.quantity("highest_v", source.highest);
  door.quantity("most_a", source.most);
  door.quantity("cable_run_m", source.cable_run);
  door.text("cable_size", source.cable_size);
  door.word_or("cable_metal", source.cable_metal, tables::WireMetal::copper);
  door.quantity("fuse_a", source.fuse);
  door.word_or("fuse_kind", source.fuse_kind, tables::FuseFamilyId::blade);
}

template <class Door, class Main>
void main_fields(Door& door, Main& main) {
  door.word("kind", main.kind);
  door.quantity("rating_a", main.rating);
  door.quantity("distance_m", main.distance);
}

template <class Door, class Feeder>
void feeder_fields(Door& door, Feeder& feeder) {
  door.quantity("run_m", feeder.run);
  door.text("size", feeder.size);
  door.word_or("metal", feeder.metal, tables::WireMetal::copper);
}

template <class Door, class Block>
void block_fields(Door& door, Block& block) {
  door.whole("id", block.id.number);
  door.text("name", block.name);
  door.whole("positions", block.positions);
  door.maybe_quantity("rating_a", block.rating);
  door.object("main", [&block](auto& inside) { main_fields(inside, block.main); });
  door.maybe_quantity("disconnect_a", block.disconnect);
  door.object("feeder", [&block](auto& inside) { feeder_fields(inside, block.feeder); });
  position_fields(door, block);
  door.maybe_quantity("at_most_at_once_a", block.at_most_at_once);
}

template <class Door, class Run>
void built_run_fields(Door& door, Run& run) {
  door.whole("outlet", run.outlet.number);
  door.word("size_is", run.size);
  door.word("length_is", run.length);
}

template <class Door, class Built>
void built_fields(Door& door, Built& built) {
  door.text_or("date", built.date, "");
  door.quantity_or("fuse_a", built.fuse, 0.0);
  door.word("fuse_is", built.fuse_knowledge);
  door.list("runs", "run", built.runs, [](auto& inside, auto& run) { built_run_fields(inside, run); });
  door.object("circuit", [&built](auto& inside) { circuit_fields(inside, built.circuit, Extent::plan); });
}

template <class Door, class Told>
void told_fields(Door& door, Told& told) {
  door.text("question", told.question);
  door.text("answer", told.answer);
}

template <class Door, class Trace>
void trace_fields(Door& door, Trace& trace) {
  door.whole("number", trace.number);
  door.text("date", trace.date);
  door.text("circuit", trace.circuit);
  door.text("complaint", trace.complaint);
  door.list("told", "told", trace.told, [](auto& inside, auto& told) { told_fields(inside, told); });
  door.text("outcome", trace.outcome);
}

template <class Door, class Placed>
void placed_circuit_fields(Door& door, Placed& placed) {
  door.whole("id", placed.id.number);
  door.whole("block", placed.block.number);
  door.whole("position", placed.position);
  door.object("plan", [&placed](auto& inside) { circuit_fields(inside, placed.plan, Extent::plan); });
  door.maybe_object("built", placed.built, [](auto& inside, auto& built) { built_fields(inside, built); });
  door.list_or_none("traces", "trace", placed.traces, [](auto& inside, auto& trace) { trace_fields(inside, trace); });
}

template <class Door, class Vehicle>
void vehicle_fields(Door& door, Vehicle& vehicle) {
  door.text("name", vehicle.name);
  door.word("kind", vehicle.kind);
  door.maybe_word("practice", vehicle.practice);
  door.text_or("colours", vehicle.colours, "");
  door.object("battery", [&vehicle](auto& inside) { battery_fields(inside, vehicle.battery); });
  door.list_or_none("sources", "source", vehicle.sources, [](auto& inside, auto& source) { source_fields(inside, source); });
  door.list("blocks", "block", vehicle.blocks, [](auto& inside, auto& block) { block_fields(inside, block); });
  door.list("circuits", "circuit", vehicle.circuits,
            [](auto& inside, auto& placed) { placed_circuit_fields(inside, placed); });
  door.whole("next_id", vehicle.next_id);
}

}  // namespace document
