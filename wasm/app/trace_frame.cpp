#include "app/trace_frame.h"

#include "app/built.h"
#include "sizing/sizing.h"

namespace app {
namespace {

// The other positions of the same block: their wires leave it side by side.
std::vector<diagnosis::Neighbour> neighbours_of(const vehicle::Vehicle& vehicle, vehicle::CircuitId open) {
  std::vector<diagnosis::Neighbour> found;
  for (const vehicle::PlacedCircuit* other : vehicle::neighbours(vehicle, open)) {
    if (found.size() == diagnosis::kMaxNeighbours) break;
    found.push_back({other->plan.name, other->position, true});
  }
  return found;
}

// What Size would choose is the best guess at what somebody chose; nothing more than a guess.
void guess(diagnosis::Case& frame) {
  const sizing::Answer answer = sizing::size_circuit(frame.circuit);
  const sizing::Candidate* choice = answer.choice();
  if (choice != nullptr && choice->fuse) frame.fitted = {choice->size, choice->tail, *choice->fuse};
}

void fit(TraceFrame& made, const vehicle::Built& built) {
  diagnosis::Case& frame = made.frame;
  made.wire_guessed = !all_wire_known(built);
  if (built.fuse_knowledge != vehicle::Knowledge::unknown) frame.fitted.fuse = built.fuse;
  made.fuse_guessed = built.fuse_knowledge != vehicle::Knowledge::known;
  frame.fuse_told = fuse_protects(frame.circuit, built);
}

}  // namespace

TraceFrame trace_frame(const Notebook& notebook, CircuitRef open, units::Preference units) {
  TraceFrame made;
  made.frame = diagnosis::generic_case(units == units::Preference::us ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  made.frame.neighbours.clear();   // nobody told of any
  made.frame.fuse_told = false;
  const vehicle::PlacedCircuit* placed = notebook.find(open);
  if (placed == nullptr) return made;
  const vehicle::Vehicle& of = notebook.find(open.vehicle)->vehicle;
  made.frame.circuit = vehicle::as_built(of, open.circuit);
  made.frame.neighbours = neighbours_of(of, open.circuit);
  guess(made.frame);
  if (placed->built) fit(made, *placed->built);
  return made;
}

}  // namespace app
