#include "vehicle/gather.h"

#include <algorithm>
#include <string>

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "vehicle/validate.h"

namespace vehicle {
namespace {

bool same_battery(const Battery& a, const circuit::Supply& b) {
  return a.nominal == b.nominal && a.kind == b.battery && a.resting == b.resting && a.low == b.low &&
         a.internal_resistance == b.internal_resistance;
}

bool same_vehicle(const Vehicle& a, const circuit::Circuit& c) {
  return a.name == c.place && a.kind == c.setting && a.practice == c.practice && a.colours == c.colours &&
         same_battery(a.battery, c.supply);
}

bool same_block(const Block& a, const circuit::Circuit& c) {
  const circuit::Supply& supply = c.supply;
  return a.feeder.run == supply.feeder_run && a.feeder.size == supply.feeder_size &&
         a.feeder.metal == supply.feeder_metal && a.main.rating == supply.main_fuse &&
         a.main.kind == supply.main_fuse_kind && a.main.distance == supply.main_fuse_distance &&
         a.disconnect == supply.disconnect && a.rating == supply.block_rating &&
         a.fuse_family == c.wiring.fuse_family && a.clamp_part == c.wiring.clamp_part &&
         a.clamp_rating == c.wiring.clamp_rating;
}

// A block of this kind with that position spare; nullptr where there is none and no room for one.
Block* block_for(Vehicle& vehicle, const circuit::Circuit& circuit) {
  for (Block& block : vehicle.blocks) {
    if (same_block(block, circuit) && at_position(vehicle, block.id, circuit.fuse_position) == nullptr) return &block;
  }
  if (vehicle.blocks.size() >= kMaxBlocks) return nullptr;
  Block block = vehicle.blocks.back();
  block.id = BlockId{vehicle.next_id++};
  block.name = "Fuse block " + std::to_string(vehicle.blocks.size() + 1);
  vehicle.blocks.push_back(std::move(block));
  return &vehicle.blocks.back();
}

bool has_room(const Vehicle& vehicle, const circuit::Circuit& circuit) {
  return vehicle.circuits.size() < kMaxCircuits &&
         planned_outlets(vehicle) + circuit.outlets.size() <= kMaxPlannedOutlets;
}

// A position in the vehicle that this circuit was in; nullptr: it is the first of its vehicle, or
// those of its name are full.
struct Spot {
  std::size_t vehicle = 0;
  Block* block = nullptr;
};
Spot spot_for(std::vector<Vehicle>& vehicles, const circuit::Circuit& circuit, const std::vector<bool>& placeless) {
  for (std::size_t i = 0; i < vehicles.size() && !circuit.place.empty(); ++i) {
    if (placeless[i] || !same_vehicle(vehicles[i], circuit) || !has_room(vehicles[i], circuit)) continue;
    if (Block* block = block_for(vehicles[i], circuit)) return {i, block};
  }
  return {};
}

}  // namespace

Gathered gather(const std::vector<circuit::Circuit>& circuits) {
  Gathered gathered;
  std::vector<bool> placeless;
  for (const circuit::Circuit& circuit : circuits) {
    const Spot spot = spot_for(gathered.vehicles, circuit, placeless);
    if (spot.block == nullptr) {
      gathered.vehicles.push_back(around(circuit));
      placeless.push_back(circuit.place.empty());
      gathered.where.push_back({gathered.vehicles.size() - 1, gathered.vehicles.back().circuits.front().id});
      continue;
    }
    Vehicle& vehicle = gathered.vehicles[spot.vehicle];
    spot.block->positions = std::max(spot.block->positions, circuit.fuse_position);
    PlacedCircuit placed;
    placed.id = CircuitId{vehicle.next_id++};
    placed.block = spot.block->id;
    placed.position = circuit.fuse_position;
    vehicle.circuits.push_back(std::move(placed));
    put(vehicle, vehicle.circuits.back().id, circuit);
    gathered.where.push_back({spot.vehicle, vehicle.circuits.back().id});
  }
  return gathered;
}

Built built_from_v1(const circuit::Circuit& plan, const std::string& size, units::Amperes fuse) {
  const bool a_fuse = !circuit::check_value(circuit::Field::fuse_a, fuse.number(), {});
  Built built = built_as(plan, size, a_fuse ? fuse : units::Amperes(0.0));
  for (BuiltRun& run : built.runs) run.length = Knowledge::guessed;
  return built;
}

}  // namespace vehicle
