#include "app/built.h"

#include <algorithm>

#include "sizing/fixes.h"
#include "sizing/sizing.h"
#include "tables/conductor.h"
#include "units/format.h"

namespace app {
namespace {

using vehicle::Knowledge;

struct RunOf {
  circuit::Outlet* outlet;
  vehicle::BuiltRun* known;
};
RunOf run_of(vehicle::Built& built, circuit::OutletId id) {
  const auto is = [id](const circuit::Outlet& each) { return each.id == id; };
  const auto knows = [id](const vehicle::BuiltRun& each) { return each.outlet == id; };
  const auto outlet = std::find_if(built.circuit.outlets.begin(), built.circuit.outlets.end(), is);
  const auto known = std::find_if(built.runs.begin(), built.runs.end(), knows);
  const bool there = outlet != built.circuit.outlets.end() && known != built.runs.end();
  return there ? RunOf{&*outlet, &*known} : RunOf{nullptr, nullptr};
}

std::string size_words(const tables::Conductor& size) {
  return std::string(size.size) + " " + std::string(tables::gauge_system_suffix(size.system));
}

}  // namespace

bool all_wire_known(const vehicle::Built& built) {
  return !built.runs.empty() && std::all_of(built.runs.begin(), built.runs.end(), [](const vehicle::BuiltRun& each) {
    return each.size == Knowledge::known;
  });
}

bool fuse_protects(const circuit::Circuit& seen, const vehicle::Built& built) {
  if (!all_wire_known(built) || built.fuse_knowledge != Knowledge::known) return false;
  const std::optional<std::string>& any = seen.outlets.front().run.size;
  return any && sizing::reach(seen, {*any, built.fuse}).fuse_protects_wire;
}

vehicle::Built nothing_told(const circuit::Circuit& plan) {
  vehicle::Built built = vehicle::built_as(plan, {}, units::Amperes(0.0));
  for (circuit::Outlet& outlet : built.circuit.outlets) outlet.run.size.reset();
  for (vehicle::BuiltRun& run : built.runs) run = {run.outlet, Knowledge::unknown, Knowledge::guessed};
  return built;
}

vehicle::Built as_chosen(const circuit::Circuit& plan, const sizing::Candidate& choice) {
  return vehicle::built_as(plan, std::string(choice.size->id), choice.fuse.value_or(units::Amperes(0.0)));
}

void tell_size(vehicle::Built& built, circuit::OutletId run, const std::string& size, Knowledge how) {
  const RunOf there = run_of(built, run);
  if (there.outlet == nullptr) return;
  there.outlet->run.size = size.empty() ? std::nullopt : std::optional(size);
  there.known->size = size.empty() ? Knowledge::unknown : how;
}

void tell_size_throughout(vehicle::Built& built, const std::string& size, Knowledge how) {
  for (const vehicle::BuiltRun& each : std::vector(built.runs)) tell_size(built, each.outlet, size, how);
}

void tell_length(vehicle::Built& built, circuit::OutletId run, units::Metres length, Knowledge how) {
  const RunOf there = run_of(built, run);
  if (there.outlet == nullptr) return;
  there.outlet->run.length = length;
  there.known->length = how;
}

void tell_fuse(vehicle::Built& built, units::Amperes fuse, Knowledge how) {
  const bool told = fuse > units::Amperes(0.0);
  built.fuse = told ? fuse : units::Amperes(0.0);
  built.fuse_knowledge = told ? how : Knowledge::unknown;
}

const tables::Conductor* one_size(const vehicle::Built& built) {
  const auto& outlets = built.circuit.outlets;
  if (outlets.empty() || !outlets.front().run.size) return nullptr;
  const bool same = std::all_of(outlets.begin(), outlets.end(), [&outlets](const circuit::Outlet& each) {
    return each.run.size == outlets.front().run.size;
  });
  return same ? tables::conductor_by_id(*outlets.front().run.size) : nullptr;
}

std::string built_words(const std::optional<vehicle::Built>& built) {
  if (!built) return "not told";
  const bool any = std::any_of(built->runs.begin(), built->runs.end(),
                               [](const vehicle::BuiltRun& each) { return each.size != Knowledge::unknown; });
  const bool fuse = built->fuse_knowledge != Knowledge::unknown;
  if (!any && !fuse) return "not told";
  const tables::Conductor* one = one_size(*built);
  const std::string wire = one != nullptr ? size_words(*one) : any ? "several wires" : "wire not known";
  return wire + ", " + (fuse ? units::amperes_text(built->fuse) : std::string("fuse not known"));
}

bool same_outlets(const vehicle::Built& built, const circuit::Circuit& plan) {
  return std::equal(built.circuit.outlets.begin(), built.circuit.outlets.end(), plan.outlets.begin(), plan.outlets.end(),
                    [](const circuit::Outlet& a, const circuit::Outlet& b) { return a.id == b.id && a.fed_from == b.fed_from; });
}

vehicle::Built with_outlets_of(const vehicle::Built& built, const circuit::Circuit& plan) {
  vehicle::Built now = nothing_told(plan);
  now.fuse = built.fuse;
  now.fuse_knowledge = built.fuse_knowledge;
  now.date = built.date;
  for (const vehicle::BuiltRun& told : built.runs) {
    const RunOf to = run_of(now, told.outlet);
    const circuit::Outlet* from = circuit::find_outlet(built.circuit, told.outlet);
    if (to.outlet == nullptr || from == nullptr) continue;
    to.outlet->run = from->run;
    *to.known = told;
  }
  return now;
}

circuit::Circuit with_known_wire(circuit::Circuit plan, const vehicle::Built& built) {
  for (circuit::Outlet& outlet : plan.outlets) {
    const auto known = std::find_if(built.runs.begin(), built.runs.end(),
                                    [&outlet](const vehicle::BuiltRun& each) { return each.outlet == outlet.id; });
    const circuit::Outlet* there = circuit::find_outlet(built.circuit, outlet.id);
    if (known != built.runs.end() && known->size == Knowledge::known && there != nullptr) outlet.run = there->run;
  }
  return plan;
}

}  // namespace app
