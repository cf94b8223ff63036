#include "vehicle/vehicle.h"

#include <algorithm>

#include "tables/supply.h"

namespace vehicle {
namespace {

template <class List, class Id>
auto* found(List& list, Id id) {
  const auto at = std::find_if(list.begin(), list.end(), [id](const auto& each) { return each.id == id; });
  return at == list.end() ? nullptr : &*at;
}

units::Amperes demand_of(const PlacedCircuit& placed, units::Volts nominal) {
  units::Amperes sum;
  for (const circuit::Outlet& outlet : placed.plan.outlets) sum += circuit::rated_current(outlet, nominal);
  return placed.plan.at_most_at_once ? std::min(sum, *placed.plan.at_most_at_once) : sum;
}

// What the block's other circuits draw while this one draws all it may.
units::Amperes beside(const Vehicle& vehicle, const PlacedCircuit& placed, const Block& block) {
  const units::Amperes others = block_demand(vehicle, placed.block, placed.id);
  if (!block.at_most_at_once) return others;
  const units::Amperes left = *block.at_most_at_once - demand_of(placed, vehicle.battery.nominal);
  return std::clamp(left, units::Amperes(0.0), others);
}

void give_supply(const Vehicle& vehicle, const Block& block, circuit::Circuit& circuit) {
  circuit::Supply& supply = circuit.supply;
  supply.nominal = vehicle.battery.nominal;
  supply.battery = vehicle.battery.kind;
  supply.resting = vehicle.battery.resting;
  supply.low = vehicle.battery.low;
  supply.internal_resistance = vehicle.battery.internal_resistance;
  if (!vehicle.sources.empty()) supply.highest = highest_voltage(vehicle);
  supply.feeder_run = block.feeder.run;
  supply.feeder_size = block.feeder.size;
  supply.feeder_metal = block.feeder.metal;
  supply.main_fuse = block.main.rating;
  supply.main_fuse_kind = block.main.kind;
  supply.main_fuse_distance = block.main.distance;
  supply.disconnect = block.disconnect;
  supply.block_rating = block.rating;
}

circuit::Circuit seen(const Vehicle& vehicle, const PlacedCircuit& placed, circuit::Circuit circuit) {
  circuit.place = vehicle.name;
  circuit.setting = vehicle.kind;
  circuit.practice = vehicle.practice;
  circuit.colours = vehicle.colours;
  circuit.fuse_position = placed.position;
  const Block* block = find_block(vehicle, placed.block);
  if (block == nullptr) return circuit;
  circuit.wiring.fuse_family = block->fuse_family;
  circuit.wiring.clamp_part = block->clamp_part;
  circuit.wiring.clamp_rating = block->clamp_rating;
  give_supply(vehicle, *block, circuit);
  circuit.supply.beside = beside(vehicle, placed, *block);
  return circuit;
}

void take_supply(const circuit::Circuit& edited, Vehicle& vehicle, Block& block) {
  const circuit::Supply& supply = edited.supply;
  vehicle.battery.nominal = supply.nominal;
  vehicle.battery.kind = supply.battery;
  vehicle.battery.resting = supply.resting;
  vehicle.battery.low = supply.low;
  vehicle.battery.internal_resistance = supply.internal_resistance;
  block.feeder = {supply.feeder_run, supply.feeder_size, supply.feeder_metal};
  block.main = {supply.main_fuse_kind, supply.main_fuse, supply.main_fuse_distance};
  block.disconnect = supply.disconnect;
  block.rating = supply.block_rating;
  block.fuse_family = edited.wiring.fuse_family;
  block.clamp_part = edited.wiring.clamp_part;
  block.clamp_rating = edited.wiring.clamp_rating;
}

// Voltages told for the old battery go along in proportion, in every circuit but the edited one.
void follow_nominal(Vehicle& vehicle, double factor, CircuitId but) {
  const auto scale = [factor](circuit::Circuit& circuit) {
    for (circuit::Outlet& outlet : circuit.outlets) {
      for (circuit::Device& device : outlet.devices) {
        if (device.load.minimum_voltage) device.load.minimum_voltage = *device.load.minimum_voltage * factor;
      }
    }
  };
  for (PlacedCircuit& placed : vehicle.circuits) {
    if (placed.id != but) scale(placed.plan);
    if (placed.built) scale(placed.built->circuit);
  }
  for (Source& source : vehicle.sources) source.highest = source.highest * factor;
}

}  // namespace

const Block* find_block(const Vehicle& vehicle, BlockId id) { return found(vehicle.blocks, id); }
const PlacedCircuit* find_circuit(const Vehicle& vehicle, CircuitId id) { return found(vehicle.circuits, id); }
const Source* find_source(const Vehicle& vehicle, SourceId id) { return found(vehicle.sources, id); }

const PlacedCircuit* at_position(const Vehicle& vehicle, BlockId block, int position) {
  const auto at = std::find_if(vehicle.circuits.begin(), vehicle.circuits.end(), [&](const PlacedCircuit& each) {
    return each.block == block && each.position == position;
  });
  return at == vehicle.circuits.end() ? nullptr : &*at;
}

std::optional<int> spare_position(const Vehicle& vehicle, BlockId block, int from) {
  const Block* there = find_block(vehicle, block);
  if (there == nullptr) return std::nullopt;
  for (int position = std::max(1, from); position <= there->positions; ++position) {
    if (at_position(vehicle, block, position) == nullptr) return position;
  }
  return std::nullopt;
}

std::size_t planned_outlets(const Vehicle& vehicle) {
  std::size_t sum = 0;
  for (const PlacedCircuit& each : vehicle.circuits) sum += each.plan.outlets.size();
  return sum;
}

std::vector<const PlacedCircuit*> neighbours(const Vehicle& vehicle, CircuitId id) {
  std::vector<const PlacedCircuit*> others;
  const PlacedCircuit* own = find_circuit(vehicle, id);
  if (own == nullptr) return others;
  for (const PlacedCircuit& each : vehicle.circuits) {
    if (each.block == own->block && each.id != id) others.push_back(&each);
  }
  std::sort(others.begin(), others.end(), [](const auto* a, const auto* b) { return a->position < b->position; });
  return others;
}

circuit::Circuit circuit_of(const Vehicle& vehicle, CircuitId id) {
  const PlacedCircuit* placed = find_circuit(vehicle, id);
  return placed == nullptr ? circuit::Circuit{} : seen(vehicle, *placed, placed->plan);
}

circuit::Circuit as_built(const Vehicle& vehicle, CircuitId id) {
  const PlacedCircuit* placed = find_circuit(vehicle, id);
  if (placed == nullptr || !placed->built) return circuit_of(vehicle, id);
  return seen(vehicle, *placed, placed->built->circuit);
}

circuit::Supply supply_of(const Vehicle& vehicle, BlockId block) {
  circuit::Circuit fed;
  if (const Block* there = find_block(vehicle, block)) give_supply(vehicle, *there, fed);
  return fed.supply;
}

circuit::Circuit bare(circuit::Circuit circuit) {
  const circuit::Circuit fresh;
  circuit.place = fresh.place;
  circuit.setting = fresh.setting;
  circuit.practice = fresh.practice;
  circuit.colours = fresh.colours;
  circuit.fuse_position = fresh.fuse_position;
  circuit.supply = fresh.supply;
  circuit.wiring.fuse_family = fresh.wiring.fuse_family;
  circuit.wiring.clamp_part = fresh.wiring.clamp_part;
  circuit.wiring.clamp_rating = fresh.wiring.clamp_rating;
  return circuit;
}

void put(Vehicle& vehicle, CircuitId id, const circuit::Circuit& edited) {
  PlacedCircuit* placed = found(vehicle.circuits, id);
  if (placed == nullptr) return;
  const double factor = edited.supply.nominal / vehicle.battery.nominal;
  if (Block* block = found(vehicle.blocks, placed->block)) take_supply(edited, vehicle, *block);
  vehicle.name = edited.place;
  vehicle.kind = edited.setting;
  vehicle.practice = edited.practice;
  vehicle.colours = edited.colours;
  placed->position = edited.fuse_position;
  placed->plan = bare(edited);
  if (factor != 1.0) follow_nominal(vehicle, factor, id);
}

Built built_as(const circuit::Circuit& plan, const std::string& size, units::Amperes fuse) {
  Built built;
  built.circuit = bare(plan);
  built.fuse = fuse;
  built.fuse_knowledge = fuse > units::Amperes(0.0) ? Knowledge::known : Knowledge::unknown;
  for (circuit::Outlet& outlet : built.circuit.outlets) {
    if (!outlet.run.size && !size.empty()) outlet.run.size = size;
    built.runs.push_back({outlet.id, outlet.run.size ? Knowledge::known : Knowledge::unknown, Knowledge::known});
  }
  return built;
}

units::Amperes block_demand(const Vehicle& vehicle, BlockId block, std::optional<CircuitId> but) {
  units::Amperes sum;
  for (const PlacedCircuit& each : vehicle.circuits) {
    if (each.block == block && each.id != but) sum += demand_of(each, vehicle.battery.nominal);
  }
  const Block* there = find_block(vehicle, block);
  const bool capped = !but && there != nullptr && there->at_most_at_once;
  return capped ? std::min(sum, *there->at_most_at_once) : sum;
}

units::Volts highest_voltage(const Vehicle& vehicle) {
  const tables::BatteryKind* kind = tables::battery_kind_by_key(vehicle.battery.kind);
  units::Volts highest = vehicle.battery.nominal;
  if (kind != nullptr) highest = kind->charging * tables::blocks_in_series(vehicle.battery.nominal);
  for (const Source& source : vehicle.sources) highest = std::max(highest, source.highest);
  return highest;
}

Vehicle new_vehicle(circuit::Setting kind, tables::GaugeSystem gauge) {
  Vehicle made;
  made.name = "My vehicle";
  made.kind = kind;
  Block block;
  block.id = BlockId{made.next_id++};
  block.name = "Fuse block";
  if (gauge == tables::GaugeSystem::metric) block.feeder.size = "16mm2";
  made.blocks.push_back(std::move(block));
  return made;
}

Vehicle around(const circuit::Circuit& circuit) {
  Vehicle made = new_vehicle(circuit.setting, circuit.wiring.gauge);
  Block& block = made.blocks.front();
  block.positions = std::max(block.positions, circuit.fuse_position);
  made.circuits.push_back({CircuitId{made.next_id++}, block.id, circuit.fuse_position, bare(circuit), std::nullopt, {}});
  put(made, made.circuits.front().id, circuit);
  if (made.name.empty()) made.name = circuit.name;
  return made;
}

Vehicle demo_vehicle() { return around(circuit::demo_circuit()); }

}  // namespace vehicle
