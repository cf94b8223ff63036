#include "app/trace_frame.h"

#include "sizing/fixes.h"

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
    if (same_block) found.push_back({other.circuit->name, other.circuit->fuse_position, true, {}});
  }
  return found;
}

// The length that was typed is paced or planned: nobody said that it was measured along the wire.
diagnosis::BuiltRun run_of(const circuit::Outlet& outlet, const FittedTold& told, bool of_a_circuit) {
  using diagnosis::Knowledge;
  diagnosis::BuiltRun run;
  run.outlet = outlet.id;
  if (tables::conductor_by_id(told.size) != nullptr) {
    run.wire = told.size;
    run.wire_known = Knowledge::known;
  } else if (outlet.run.size) {   // in the wall, or only wanted there
    run.wire = outlet.run.size;
    run.wire_known = Knowledge::guessed;
  }
  if (of_a_circuit) run.length_known = Knowledge::guessed;
  return run;
}

diagnosis::Built built_of(const circuit::Circuit& circuit, const FittedTold& told, bool of_a_circuit) {
  diagnosis::Built built;
  for (const circuit::Outlet& outlet : circuit.outlets) built.runs.push_back(run_of(outlet, told, of_a_circuit));
  if (told.fuse_a > 0.0) {
    built.fuse = units::Amperes(told.fuse_a);
    built.fuse_known = diagnosis::Knowledge::known;
  }
  built.protection = protection_of(circuit, told);
  return built;
}

// Where nobody told the colours, those that most wires have: red and black.
void colour(diagnosis::Case& made) {
  const tables::ConductorColours* told = tables::conductor_colours_by_key(made.circuit.colours);
  if (told == nullptr) return;
  made.plus_colour = told->plus;
  made.minus_colour = told->minus;
}

}  // namespace

diagnosis::Protection protection_of(const circuit::Circuit& circuit, const FittedTold& told) {
  using diagnosis::Protection;
  if (tables::conductor_by_id(told.size) == nullptr || told.fuse_a <= 0.0) return Protection::not_judged;
  const bool protects = sizing::reach(circuit, {told.size, units::Amperes(told.fuse_a)}).fuse_protects_wire;
  return protects ? Protection::protects : Protection::too_large;
}

diagnosis::Case trace_frame(const Notebook& notebook, const Stored* open, const FittedTold& told, units::Preference units) {
  diagnosis::Case made = diagnosis::generic_case(units == units::Preference::us ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  made.neighbours.clear();   // nobody told of any
  if (open != nullptr) {
    made.circuit = *open->circuit;
    made.neighbours = neighbours_of(notebook, *open);
    colour(made);
  }
  made.built = built_of(made.circuit, told, open != nullptr);
  return made;
}

}  // namespace app
