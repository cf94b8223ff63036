// A vehicle as it is wired: what feeds it, its fuse blocks, and the circuit on each position of
// them. It is the one home of all that several circuits share; a circuit is seen with its supply
// through circuit_of(). What is planned and what is built are two states of a circuit.
// Ranges stand in circuit/limits.h; vehicle/validate.h holds a vehicle to them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "circuit/circuit.h"

namespace vehicle {

// Stable through edits, never given twice within a vehicle.
struct BlockId {
  std::uint32_t number = 0;
  friend constexpr auto operator<=>(BlockId, BlockId) = default;
};
struct CircuitId {
  std::uint32_t number = 0;
  friend constexpr auto operator<=>(CircuitId, CircuitId) = default;
};
struct SourceId {
  std::uint32_t number = 0;
  friend constexpr auto operator<=>(SourceId, SourceId) = default;
};

struct Battery {
  units::Volts nominal{12.0};                      // 12, 24 or 48
  std::string kind = "lead-agm";                   // tables::BatteryKind key
  double capacity_ah = 0.0;                        // 0: not told
  std::optional<units::Volts> resting;             // typed over the kind's; whole battery
  std::optional<units::Volts> low;
  std::optional<units::Ohms> internal_resistance;  // whole battery
};

// What can feed the system besides the battery. Its cable ends at the battery, and the battery
// feeds it too when it is shorted: it needs a fuse at the battery's end.
enum class SourceKind { alternator, dc_charger, mains_charger, solar, other };
struct Source {
  SourceId id;
  SourceKind kind = SourceKind::mains_charger;
  std::string name;
  units::Volts highest{14.4};                      // that it brings the system to, whole battery
  units::Amperes most{20.0};                       // that it can give
  units::Metres cable_run{1.0};
  std::string cable_size = "10awg";                // tables::Conductor id
  tables::WireMetal cable_metal = tables::WireMetal::copper;
  units::Amperes fuse{0.0};                        // at the battery's end; 0: none told
  tables::FuseFamilyId fuse_kind = tables::FuseFamilyId::blade;
};

// The fuse that protects a feeder, at the battery's end of it.
struct MainProtection {
  tables::FuseFamilyId kind = tables::FuseFamilyId::bolt_on;
  units::Amperes rating{60.0};                     // 0: none told
  units::Metres distance{0.15};                    // from the battery, along the wire
};

struct Feeder {
  units::Metres run{1.0};                          // battery to block, one way; 0: block on the battery
  std::string size = "6awg";                       // tables::Conductor id
  tables::WireMetal metal = tables::WireMetal::copper;
};

struct Block {
  BlockId id;
  std::string name;                                // "Fuse block"
  int positions = 12;
  std::optional<units::Amperes> rating;            // marked on it, all positions together
  MainProtection main;
  std::optional<units::Amperes> disconnect;        // main switch in its feeder; nullopt: none
  Feeder feeder;
  tables::FuseFamilyId fuse_family = tables::FuseFamilyId::blade;
  std::string clamp_part = "clamp-6";
  std::optional<units::Amperes> clamp_rating;      // marked on a position
  std::optional<units::Amperes> at_most_at_once;   // of all its circuits together; nullopt: all
};

// How sure one is of a thing that is there.
enum class Knowledge { known, guessed, unknown };
struct BuiltRun {
  circuit::OutletId outlet;                        // the run that feeds it
  Knowledge size = Knowledge::unknown;
  Knowledge length = Knowledge::guessed;
  friend bool operator==(const BuiltRun&, const BuiltRun&) = default;
};
// What is in the wall. `circuit` is as built: a run without a size is one whose wire nobody knows.
struct Built {
  circuit::Circuit circuit;                        // its supply is not stored: see as_built()
  units::Amperes fuse{0.0};                        // 0: unknown
  Knowledge fuse_knowledge = Knowledge::unknown;
  std::vector<BuiltRun> runs;                      // one for each of circuit.outlets, in their order
  std::string date;                                // "2026-11-25", or empty
};

// A trace that was ended, in plain words that stay true when the circuit is edited later.
struct ToldAnswer {
  std::string question;
  std::string answer;
  friend bool operator==(const ToldAnswer&, const ToldAnswer&) = default;
};
struct TraceRecord {
  std::uint32_t number = 0;                        // 1 and up, newest highest
  std::string date;
  std::string circuit;                             // its name then
  std::string complaint;
  std::vector<ToldAnswer> told;
  std::string outcome;
  friend bool operator==(const TraceRecord&, const TraceRecord&) = default;
};

struct PlacedCircuit {
  CircuitId id;
  BlockId block;
  int position = 1;                                // no two circuits on one position of a block
  circuit::Circuit plan;                           // what it shares with others is not in here: bare()
  std::optional<Built> built;                      // nullopt: nothing is told to be built
  std::vector<TraceRecord> traces;                 // ascending number
};

struct Vehicle {
  std::string name;                                // "Repair trailer"
  circuit::Setting kind = circuit::Setting::trailer;
  std::optional<tables::Practice> practice;        // whose rules bind; nullopt: the usual one
  std::string colours;                             // tables::ConductorColours key; empty: see circuit::colours_of()
  Battery battery;
  std::vector<Source> sources;
  std::vector<Block> blocks;                       // at least one
  std::vector<PlacedCircuit> circuits;             // in the order they are listed
  std::uint32_t next_id = 1;                       // larger than any id ever used here
};

const Block* find_block(const Vehicle& vehicle, BlockId id);             // nullptr when absent
const PlacedCircuit* find_circuit(const Vehicle& vehicle, CircuitId id);
const Source* find_source(const Vehicle& vehicle, SourceId id);
// Who sits there; nullptr: the position is spare.
const PlacedCircuit* at_position(const Vehicle& vehicle, BlockId block, int position);
// The first spare position from `from` up; nullopt: the block is full.
std::optional<int> spare_position(const Vehicle& vehicle, BlockId block, int from = 1);
// Outlets and other points of all circuits as planned.
std::size_t planned_outlets(const Vehicle& vehicle);
// The circuits on the other positions of the same block, by position.
std::vector<const PlacedCircuit*> neighbours(const Vehicle& vehicle, CircuitId id);

// The planned circuit with all that it has from the vehicle: place, setting, position, supply,
// fuse family, clamps, and what its neighbours draw beside it. The circuit exists.
circuit::Circuit circuit_of(const Vehicle& vehicle, CircuitId id);
// The same for the circuit as built; the plan's where nothing is told to be built.
circuit::Circuit as_built(const Vehicle& vehicle, CircuitId id);
// What feeds the block: the battery, and the way from it. The block exists.
circuit::Supply supply_of(const Vehicle& vehicle, BlockId block);
// Without what belongs to the vehicle: those fields as in circuit::Circuit{}.
circuit::Circuit bare(circuit::Circuit circuit);
// Takes a circuit that was seen through circuit_of() and then edited apart again: what belongs to
// the vehicle, its battery or its block changes there, for all of them; the rest is the plan.
void put(Vehicle& vehicle, CircuitId id, const circuit::Circuit& edited);

// Built as planned, every run of `size` (its own size where the plan fixes one), known.
Built built_as(const circuit::Circuit& plan, const std::string& size, units::Amperes fuse);

// What the circuits of a block may draw together, at the nominal voltage; `but`: leave one out.
units::Amperes block_demand(const Vehicle& vehicle, BlockId block, std::optional<CircuitId> but = std::nullopt);
// The highest voltage that the battery or any source brings, whole battery.
units::Volts highest_voltage(const Vehicle& vehicle);

Vehicle new_vehicle(circuit::Setting kind, tables::GaugeSystem gauge);   // one block, no circuit
// One circuit and what feeds it, as a vehicle of its own.
Vehicle around(const circuit::Circuit& circuit);
Vehicle demo_vehicle();                                                  // the bicycle-repair trailer

}  // namespace vehicle
