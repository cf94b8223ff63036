// A change to a vehicle as a value. apply() gives the new vehicle, or says what is wrong and
// leaves the old one standing: no invalid vehicle is ever produced.
#pragma once

#include <optional>
#include <string>
#include <variant>

#include "circuit/edit.h"
#include "circuit/problem.h"
#include "vehicle/vehicle.h"

namespace vehicle {

struct SetName { std::string name; };
struct SetKind { circuit::Setting kind; };
struct SetPractice { std::optional<tables::Practice> practice; std::string colours; };
struct SetBattery { Battery battery; };          // another nominal voltage carries every told voltage along
struct SetSupply { BlockId block; circuit::Supply supply; };   // its battery and the way from it, as supply_of() gives it
struct AddSource { SourceKind kind; };
struct SetSource { Source source; };             // by its id
struct RemoveSource { SourceId id; };
struct AddBlock {};                              // as the last one is, spare in all positions
struct SetBlock { Block block; };                // by its id
struct RemoveBlock { BlockId id; };              // refused while a circuit sits on it, or when it is the last
struct AddCircuit { BlockId block; circuit::Circuit plan; };   // on the first spare position, last in the list
struct RemoveCircuit { CircuitId id; };
struct PlaceCircuit { CircuitId id; BlockId block; int position; };   // who sits there already changes places with it
struct MoveCircuit { CircuitId id; int by; };    // in the list
struct EditCircuit { CircuitId id; circuit::Edit edit; };      // of the plan and what feeds it
struct PutCircuit { CircuitId id; circuit::Circuit circuit; }; // the whole plan, as seen through circuit_of()
struct SetBuilt { CircuitId id; std::optional<Built> built; };
struct AddTrace { CircuitId id; TraceRecord record; };         // its number is given here
struct PutTrace { CircuitId id; TraceRecord record; };         // back under its own number
struct RemoveTrace { CircuitId id; std::uint32_t number; };

using Edit = std::variant<SetName, SetKind, SetPractice, SetBattery, SetSupply, AddSource, SetSource, RemoveSource, AddBlock, SetBlock,
                          RemoveBlock, AddCircuit, RemoveCircuit, PlaceCircuit, MoveCircuit, EditCircuit, PutCircuit,
                          SetBuilt, AddTrace, PutTrace, RemoveTrace>;

struct EditResult {
  std::optional<Vehicle> vehicle;             // absent when refused
  std::optional<circuit::Problem> problem;    // why it was refused
};
EditResult apply(const Vehicle& vehicle, const Edit& edit);

// The number that AddSource, AddBlock or AddCircuit gives.
std::uint32_t next_id(const Vehicle& vehicle);

// "remove outlet C": what undo offers to take back, lower case.
std::string describe(const Vehicle& before, const Edit& edit);

}  // namespace vehicle
