#include "app/trace_frame.h"

#include "app/built.h"

namespace app {
namespace {

// The other positions of the same block: their wires leave it side by side.
std::vector<diagnosis::Neighbour> neighbours_of(const vehicle::Vehicle& vehicle, vehicle::CircuitId open) {
  std::vector<diagnosis::Neighbour> found;
  for (const vehicle::PlacedCircuit* other : vehicle::neighbours(vehicle, open)) {
    if (found.size() == diagnosis::kMaxNeighbours) break;
    diagnosis::Neighbour neighbour{other->plan.name, other->position, true, {}};
    const bool fuse = other->built && other->built->fuse_knowledge == vehicle::Knowledge::known;
    if (fuse) neighbour.fuse = other->built->fuse;
    found.push_back(std::move(neighbour));
  }
  return found;
}

diagnosis::Knowledge as_told(vehicle::Knowledge how) {
  switch (how) {
    case vehicle::Knowledge::known: return diagnosis::Knowledge::known;
    case vehicle::Knowledge::guessed: return diagnosis::Knowledge::guessed;
    case vehicle::Knowledge::unknown: break;
  }
  return diagnosis::Knowledge::unknown;
}

// What the plan keeps for a run may be in the wall, or only wanted there.
diagnosis::BuiltRun planned_run(const circuit::Outlet& outlet) {
  diagnosis::BuiltRun run;
  run.outlet = outlet.id;
  run.wire = outlet.run.size;
  run.wire_known = run.wire ? diagnosis::Knowledge::guessed : diagnosis::Knowledge::unknown;
  run.length_known = diagnosis::Knowledge::guessed;
  return run;
}

diagnosis::BuiltRun told_run(const circuit::Outlet& outlet, const vehicle::BuiltRun& told) {
  diagnosis::BuiltRun run;
  run.outlet = outlet.id;
  run.wire = outlet.run.size;
  run.wire_known = run.wire ? as_told(told.size) : diagnosis::Knowledge::unknown;
  run.length_known = as_told(told.length);
  return run;
}

diagnosis::Built built_of(const circuit::Circuit& seen, const std::optional<vehicle::Built>& told) {
  diagnosis::Built built;
  for (std::size_t i = 0; i < seen.outlets.size(); ++i)
    built.runs.push_back(told ? told_run(seen.outlets[i], told->runs[i]) : planned_run(seen.outlets[i]));
  if (!told) return built;
  if (told->fuse_knowledge != vehicle::Knowledge::unknown) built.fuse = told->fuse;
  built.fuse_known = as_told(told->fuse_knowledge);
  if (all_wire_known(*told) && told->fuse_knowledge == vehicle::Knowledge::known)
    built.protection = fuse_protects(seen, *told) ? diagnosis::Protection::protects : diagnosis::Protection::too_large;
  return built;
}

void colour(diagnosis::Case& made) {
  made.plus_colour = circuit::colours_of(made.circuit).plus;
  made.minus_colour = circuit::colours_of(made.circuit).minus;
}

}  // namespace

diagnosis::Case trace_frame(const Notebook& notebook, CircuitRef open, units::Preference units) {
  diagnosis::Case made = diagnosis::generic_case(units == units::Preference::us ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  made.neighbours.clear();   // nobody told of any
  const vehicle::PlacedCircuit* placed = notebook.find(open);
  if (placed == nullptr) return made;
  const vehicle::Vehicle& of = notebook.find(open.vehicle)->vehicle;
  made.circuit = vehicle::as_built(of, open.circuit);
  made.neighbours = neighbours_of(of, open.circuit);
  made.built = built_of(made.circuit, placed->built);
  colour(made);
  return made;
}

}  // namespace app
