#include "diagnosis/built.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/judgement_constants.h"
#include "tables/conductor.h"

namespace diagnosis {
namespace {

const tables::Conductor* told(const std::optional<std::string>& id) {
  return id ? tables::conductor_by_id(*id) : nullptr;
}

// The middle of what is usual in a branch of this kind (see Judged::wire_unknown).
const tables::Conductor* usual_wire(const Case& the_case) {
  return tables::conductor_by_id(the_case.circuit.wiring.gauge == tables::GaugeSystem::metric ? "2.5mm2" : "12awg");
}

double ohms_over(const tables::Conductor& wire, const tables::Conductor& other) {
  return wire.resistance_20c.number() / other.resistance_20c.number();
}

}  // namespace

const BuiltRun* built_run(const Built& built, circuit::OutletId outlet) {
  const auto found =
      std::find_if(built.runs.begin(), built.runs.end(), [&](const BuiltRun& run) { return run.outlet == outlet; });
  return found == built.runs.end() ? nullptr : &*found;
}

network::Fitted fitted_of(const Case& the_case) {
  network::Fitted fitted;
  for (const BuiltRun& run : the_case.built.runs) {
    if (fitted.size == nullptr) fitted.size = told(run.wire);
    if (fitted.tail == nullptr) fitted.tail = told(run.tail);
  }
  if (fitted.size == nullptr) fitted.size = usual_wire(the_case);
  fitted.fuse = the_case.built.fuse.value_or(units::Amperes(judged(Judged::stand_in_fuse_a)));
  return fitted;
}

WireFactors wire_factors(const Case& the_case, circuit::OutletId outlet) {
  const network::Fitted base = fitted_of(the_case);
  const circuit::Outlet* at = circuit::find_outlet(the_case.circuit, outlet);
  const tables::Conductor* wanted = at != nullptr ? told(at->run.size) : nullptr;  // the network gives it this
  const BuiltRun* run = built_run(the_case.built, outlet);
  const tables::Conductor* wire = run != nullptr ? told(run->wire) : nullptr;
  const tables::Conductor* tail = run != nullptr ? told(run->tail) : nullptr;
  if (wire == nullptr) wire = wanted != nullptr ? wanted : usual_wire(the_case);
  if (tail == nullptr) tail = wire;
  const tables::Conductor* base_wire = wanted != nullptr ? wanted : base.size;
  const tables::Conductor* base_tail = wanted != nullptr ? wanted : base.tail != nullptr ? base.tail : base.size;
  return {ohms_over(*wire, *base_wire), ohms_over(*tail, *base_tail)};
}

double wire_spread(const Case& the_case) {
  const auto part = [](Knowledge how, Judged unknown, Judged guessed) {
    return how == Knowledge::known ? 0.0 : judged(how == Knowledge::guessed ? guessed : unknown);
  };
  double most = 0.0;
  for (const circuit::Outlet& outlet : the_case.circuit.outlets) {
    const BuiltRun* run = built_run(the_case.built, outlet.id);
    const Knowledge wire = run != nullptr && run->wire ? run->wire_known : Knowledge::unknown;
    const Knowledge length = run != nullptr ? run->length_known : Knowledge::unknown;
    most = std::max(most, std::hypot(part(wire, Judged::wire_unknown, Judged::wire_guessed),
                                     part(length, Judged::length_unknown, Judged::length_guessed)));
  }
  return most;
}

}  // namespace diagnosis
