#include "vehicle/edit.h"

#include <algorithm>
#include <utility>

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "vehicle/validate.h"

namespace vehicle {
namespace {

using circuit::Problem;
using Refusal = std::optional<Problem>;

template <class List, class Id>
auto find_in(List& list, Id id) {
  return std::find_if(list.begin(), list.end(), [id](const auto& each) { return each.id == id; });
}

Refusal gone(const std::string& what) {
  return Problem{"", "The vehicle has no such " + what + ".", "Choose one of its own."};
}

struct SourceStart { SourceKind kind; const char* name; double amperes; };
constexpr SourceStart kSourceStarts[] = {
    {SourceKind::alternator, "Alternator", 80.0}, {SourceKind::dc_charger, "DC-DC charger", 30.0},
    {SourceKind::mains_charger, "Mains charger", 20.0}, {SourceKind::solar, "Solar controller", 20.0},
    {SourceKind::other, "Other source", 10.0},
};

// Every edit changes `vehicle`, a copy, in place; apply() holds the outcome to validate().
struct Apply {
  Vehicle& vehicle;

  Refusal operator()(const SetName& e) { vehicle.name = e.name; return {}; }
  Refusal operator()(const SetKind& e) { vehicle.kind = e.kind; return {}; }
  Refusal operator()(const SetPractice& e) {
    vehicle.practice = e.practice;
    vehicle.colours = e.colours;
    return {};
  }

  // Through the door of the first circuit, so that told voltages are carried along once, there.
  Refusal operator()(const SetBattery& e) {
    const double factor = e.battery.nominal / vehicle.battery.nominal;
    const Battery old = std::exchange(vehicle.battery, e.battery);
    if (factor == 1.0) return {};
    const auto carry = [factor](std::optional<units::Volts>& now, const std::optional<units::Volts>& before) {
      if (now && now == before) now = *now * factor;
    };
    carry(vehicle.battery.resting, old.resting);
    carry(vehicle.battery.low, old.low);
    for (Source& source : vehicle.sources) source.highest = source.highest * factor;
    for (PlacedCircuit& placed : vehicle.circuits) {
      carry_minimums(placed.plan, factor);
      if (placed.built) carry_minimums(placed.built->circuit, factor);
    }
    return {};
  }
  static void carry_minimums(circuit::Circuit& circuit, double factor) {
    for (circuit::Outlet& outlet : circuit.outlets) {
      for (circuit::Device& device : outlet.devices) {
        if (device.load.minimum_voltage) device.load.minimum_voltage = *device.load.minimum_voltage * factor;
      }
    }
  }

  Refusal operator()(const SetSupply& e) {
    const auto at = find_in(vehicle.blocks, e.block);
    if (at == vehicle.blocks.end()) return gone("block");
    const circuit::Supply& told = e.supply;
    at->feeder = {told.feeder_run, told.feeder_size, told.feeder_metal};
    at->main = {told.main_fuse_kind, told.main_fuse, told.main_fuse_distance};
    at->disconnect = told.disconnect;
    at->rating = told.block_rating;
    Battery battery = vehicle.battery;
    battery.nominal = told.nominal;
    battery.kind = told.battery;
    battery.resting = told.resting;
    battery.low = told.low;
    battery.internal_resistance = told.internal_resistance;
    return (*this)(SetBattery{battery});
  }

  Refusal operator()(const AddSource& e) {
    Source source;
    source.id = SourceId{vehicle.next_id++};
    source.kind = e.kind;
    for (const SourceStart& start : kSourceStarts) {
      if (start.kind != e.kind) continue;
      source.name = start.name;
      source.most = units::Amperes(start.amperes);
    }
    source.highest = highest_voltage(vehicle);
    if (!vehicle.circuits.empty() && vehicle.circuits.front().plan.wiring.gauge == tables::GaugeSystem::metric) {
      source.cable_size = "6mm2";
    }
    vehicle.sources.push_back(std::move(source));
    return {};
  }
  Refusal operator()(const SetSource& e) {
    const auto at = find_in(vehicle.sources, e.source.id);
    if (at == vehicle.sources.end()) return gone("source");
    *at = e.source;
    return {};
  }
  Refusal operator()(const RemoveSource& e) {
    const auto at = find_in(vehicle.sources, e.id);
    if (at == vehicle.sources.end()) return gone("source");
    vehicle.sources.erase(at);
    return {};
  }

  Refusal operator()(const AddBlock&) {
    Block block = vehicle.blocks.back();
    block.id = BlockId{vehicle.next_id++};
    block.name = "Fuse block " + std::to_string(vehicle.blocks.size() + 1);
    vehicle.blocks.push_back(std::move(block));
    return {};
  }
  Refusal operator()(const SetBlock& e) {
    const auto at = find_in(vehicle.blocks, e.block.id);
    if (at == vehicle.blocks.end()) return gone("block");
    *at = e.block;
    return {};
  }
  Refusal operator()(const RemoveBlock& e) {
    const auto at = find_in(vehicle.blocks, e.id);
    if (at == vehicle.blocks.end()) return gone("block");
    if (vehicle.blocks.size() == 1) return Problem{"", "It is the only block.", "A vehicle keeps at least one."};
    const bool used = std::any_of(vehicle.circuits.begin(), vehicle.circuits.end(),
                                  [&e](const PlacedCircuit& each) { return each.block == e.id; });
    if (used) return Problem{"", "Circuits still sit on this block.", "Move or delete them first."};
    vehicle.blocks.erase(at);
    return {};
  }

  Refusal operator()(const AddCircuit& e) {
    if (find_block(vehicle, e.block) == nullptr) return gone("block");
    const auto position = spare_position(vehicle, e.block);
    if (!position) return Problem{"", "The block has no spare position.", "Give it more positions, or add a block."};
    PlacedCircuit placed;
    placed.id = CircuitId{vehicle.next_id++};
    placed.block = e.block;
    placed.position = *position;
    placed.plan = bare(e.plan);
    vehicle.circuits.push_back(std::move(placed));
    return {};
  }
  Refusal operator()(const RemoveCircuit& e) {
    const auto at = find_in(vehicle.circuits, e.id);
    if (at == vehicle.circuits.end()) return gone("circuit");
    vehicle.circuits.erase(at);
    return {};
  }
  Refusal operator()(const PlaceCircuit& e) {
    const auto at = find_in(vehicle.circuits, e.id);
    if (at == vehicle.circuits.end()) return gone("circuit");
    for (PlacedCircuit& other : vehicle.circuits) {
      if (other.id == e.id || other.block != e.block || other.position != e.position) continue;
      other.block = at->block;
      other.position = at->position;
    }
    at->block = e.block;
    at->position = e.position;
    return {};
  }
  Refusal operator()(const MoveCircuit& e) {
    const auto at = find_in(vehicle.circuits, e.id);
    if (at == vehicle.circuits.end()) return gone("circuit");
    const std::ptrdiff_t to = at - vehicle.circuits.begin() + e.by;
    if (to < 0 || to >= static_cast<std::ptrdiff_t>(vehicle.circuits.size())) {
      return Problem{"", "It can't move further in the list.", "Move it to a place in the list."};
    }
    std::swap(*at, vehicle.circuits[static_cast<std::size_t>(to)]);
    return {};
  }

  Refusal operator()(const EditCircuit& e) {
    if (find_circuit(vehicle, e.id) == nullptr) return gone("circuit");
    circuit::EditResult result = circuit::apply(circuit_of(vehicle, e.id), e.edit);
    if (!result.circuit) return result.problem;
    put(vehicle, e.id, *result.circuit);
    return {};
  }
  Refusal operator()(const PutCircuit& e) {
    if (find_circuit(vehicle, e.id) == nullptr) return gone("circuit");
    put(vehicle, e.id, e.circuit);
    return {};
  }
  Refusal operator()(const SetBuilt& e) {
    const auto at = find_in(vehicle.circuits, e.id);
    if (at == vehicle.circuits.end()) return gone("circuit");
    at->built = e.built;
    if (at->built) at->built->circuit = bare(std::move(at->built->circuit));
    return {};
  }

  Refusal operator()(const AddTrace& e) {
    const auto at = find_in(vehicle.circuits, e.id);
    if (at == vehicle.circuits.end()) return gone("circuit");
    TraceRecord record = e.record;
    record.number = at->traces.empty() ? 1 : at->traces.back().number + 1;
    at->traces.push_back(std::move(record));
    if (at->traces.size() > kMaxTraces) at->traces.erase(at->traces.begin());
    return {};
  }
  Refusal operator()(const PutTrace& e) {
    const auto at = find_in(vehicle.circuits, e.id);
    if (at == vehicle.circuits.end()) return gone("circuit");
    const auto place = std::lower_bound(at->traces.begin(), at->traces.end(), e.record.number,
                                        [](const TraceRecord& each, std::uint32_t number) { return each.number < number; });
    if (place != at->traces.end() && place->number == e.record.number) *place = e.record;
    else at->traces.insert(place, e.record);
    return {};
  }
  Refusal operator()(const RemoveTrace& e) {
    const auto at = find_in(vehicle.circuits, e.id);
    if (at == vehicle.circuits.end()) return gone("circuit");
    std::erase_if(at->traces, [&e](const TraceRecord& each) { return each.number == e.number; });
    return {};
  }
};

// What undo offers to take back.
struct Describe {
  const Vehicle& before;

  std::string operator()(const SetName&) const { return "rename the vehicle"; }
  std::string operator()(const SetKind&) const { return "change the kind of vehicle"; }
  std::string operator()(const SetPractice&) const { return "change whose rules bind"; }
  std::string operator()(const SetBattery&) const { return "change the battery"; }
  std::string operator()(const SetSupply&) const { return "change the supply"; }
  std::string operator()(const AddSource&) const { return "add a source"; }
  std::string operator()(const SetSource&) const { return "change a source"; }
  std::string operator()(const RemoveSource&) const { return "remove a source"; }
  std::string operator()(const AddBlock&) const { return "add a block"; }
  std::string operator()(const SetBlock&) const { return "change the block"; }
  std::string operator()(const RemoveBlock&) const { return "remove a block"; }
  std::string operator()(const AddCircuit&) const { return "add a circuit"; }
  std::string operator()(const RemoveCircuit&) const { return "delete a circuit"; }
  std::string operator()(const PlaceCircuit&) const { return "change the fuse position"; }
  std::string operator()(const MoveCircuit&) const { return "move a circuit in the list"; }
  std::string operator()(const EditCircuit& e) const { return circuit::describe(circuit_of(before, e.id), e.edit); }
  std::string operator()(const PutCircuit&) const { return "change the circuit"; }
  std::string operator()(const SetBuilt&) const { return "change what is built"; }
  std::string operator()(const AddTrace&) const { return "keep a trace"; }
  std::string operator()(const PutTrace&) const { return "put back a trace"; }
  std::string operator()(const RemoveTrace&) const { return "delete a trace"; }
};

}  // namespace

EditResult apply(const Vehicle& vehicle, const Edit& edit) {
  Vehicle changed = vehicle;
  if (Refusal refusal = std::visit(Apply{changed}, edit)) return {std::nullopt, std::move(refusal)};
  circuit::Problems problems = validate(changed);
  if (!problems.empty()) return {std::nullopt, std::move(problems.front())};
  return {std::move(changed), std::nullopt};
}

std::uint32_t next_id(const Vehicle& vehicle) { return vehicle.next_id; }

std::string describe(const Vehicle& before, const Edit& edit) { return std::visit(Describe{before}, edit); }

}  // namespace vehicle
