#include "app/trace_frame.h"

#include "sizing/fixes.h"
#include "sizing/sizing.h"

namespace app {
namespace {

// The other positions of the same block. Which block it is, only the place tells: circuits without
// one are not taken for neighbours of each other.
std::vector<diagnosis::Neighbour> neighbours_of(const Notebook& notebook, const Stored& open) {
  std::vector<diagnosis::Neighbour> found;
  if (open.circuit->place.empty()) return found;
  for (const Stored& other : notebook.circuits()) {
    if (!other.readable() || other.number == open.number || found.size() == diagnosis::kMaxNeighbours) continue;
    const bool same_block = other.circuit->place == open.circuit->place &&
                            other.circuit->fuse_position != open.circuit->fuse_position;
    if (same_block) found.push_back({other.circuit->name, other.circuit->fuse_position, true});
  }
  return found;
}

// What Size would choose is the best guess at what somebody chose; nothing more than a guess.
void guess(diagnosis::Case& frame) {
  const sizing::Answer answer = sizing::size_circuit(frame.circuit);
  const sizing::Candidate* choice = answer.choice();
  if (choice != nullptr && choice->fuse) frame.fitted = {choice->size, choice->tail, *choice->fuse};
}

void fit(TraceFrame& made, const FittedTold& told) {
  diagnosis::Case& frame = made.frame;
  if (const tables::Conductor* size = tables::conductor_by_id(told.size)) {
    frame.fitted.size = frame.fitted.tail = size;
    made.wire_guessed = false;
  }
  if (told.fuse_a > 0.0) {
    frame.fitted.fuse = units::Amperes(told.fuse_a);
    made.fuse_guessed = false;
  }
  frame.fuse_told = protects(frame.circuit, told);
}

}  // namespace

bool protects(const circuit::Circuit& circuit, const FittedTold& told) {
  if (tables::conductor_by_id(told.size) == nullptr || told.fuse_a <= 0.0) return false;
  return sizing::reach(circuit, {told.size, units::Amperes(told.fuse_a)}).fuse_protects_wire;
}

TraceFrame trace_frame(const Notebook& notebook, const Stored* open, const FittedTold& told, units::Preference units) {
  TraceFrame made;
  made.frame = diagnosis::generic_case(units == units::Preference::us ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  made.frame.neighbours.clear();   // nobody told of any
  made.frame.fuse_told = false;
  if (open != nullptr) {
    made.frame.circuit = *open->circuit;
    made.frame.neighbours = neighbours_of(notebook, *open);
    guess(made.frame);
  }
  fit(made, told);
  return made;
}

}  // namespace app
