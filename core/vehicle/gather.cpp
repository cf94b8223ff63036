#include "vehicle/gather.h"

#include <algorithm>
#include <string>

#include "vehicle/validate.h"

namespace vehicle {
namespace {

bool same_battery(const Battery& a, const circuit::Supply& b) {
  return a.nominal == b.nominal && a.kind == b.battery && a.resting == b.resting && a.low == b.low &&
         a.internal_resistance == b.internal_resistance;
}

bool same_block(const Block& a, const circuit::Circuit& c) {
  return a.feeder.run == c.supply.feeder_run && a.feeder.size == c.supply.feeder_size &&
         a.feeder.metal == c.supply.feeder_metal && a.main.rating == c.supply.main_fuse &&
         a.main.kind == c.supply.main_fuse_kind && a.fuse_family == c.wiring.fuse_family &&
         a.clamp_part == c.wiring.clamp_part && a.clamp_rating == c.wiring.clamp_rating;
}

// The vehicle that this circuit was in; nullptr: it is the first of its vehicle.
Vehicle* vehicle_for(std::vector<Vehicle>& vehicles, const circuit::Circuit& circuit, const std::vector<bool>& placeless) {
  if (circuit.place.empty()) return nullptr;
  for (std::size_t i = 0; i < vehicles.size(); ++i) {
    Vehicle& vehicle = vehicles[i];
    if (placeless[i] || vehicle.name != circuit.place || vehicle.kind != circuit.setting) continue;
    if (same_battery(vehicle.battery, circuit.supply) && vehicle.circuits.size() < kMaxCircuits) return &vehicle;
  }
  return nullptr;
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

}  // namespace

Gathered gather(const std::vector<circuit::Circuit>& circuits) {
  Gathered gathered;
  std::vector<bool> placeless;
  for (const circuit::Circuit& circuit : circuits) {
    Vehicle* vehicle = vehicle_for(gathered.vehicles, circuit, placeless);
    Block* block = vehicle == nullptr ? nullptr : block_for(*vehicle, circuit);
    if (block == nullptr) {
      gathered.vehicles.push_back(around(circuit));
      placeless.push_back(circuit.place.empty());
      gathered.where.push_back({gathered.vehicles.size() - 1, gathered.vehicles.back().circuits.front().id});
      continue;
    }
    block->positions = std::max(block->positions, circuit.fuse_position);
    PlacedCircuit placed;
    placed.id = CircuitId{vehicle->next_id++};
    placed.block = block->id;
    placed.position = circuit.fuse_position;
    vehicle->circuits.push_back(std::move(placed));
    put(*vehicle, vehicle->circuits.back().id, circuit);
    gathered.where.push_back({static_cast<std::size_t>(vehicle - gathered.vehicles.data()), vehicle->circuits.back().id});
  }
  return gathered;
}

}  // namespace vehicle
