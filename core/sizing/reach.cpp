// The question turned round: this wire and this fuse, how far and how much.
#include <algorithm>
#include <cmath>

#include "circuit/validate.h"
#include "sizing/fixes.h"
#include "sizing/fixes_kit.h"
#include "sizing/judge.h"
#include "sizing/rules.h"
#include "sizing/words.h"
#include "units/format.h"

namespace sizing {
namespace {

struct Held {
  const tables::Conductor& size;
  units::Amperes fuse;
};

Candidate judged(const circuit::Circuit& circuit, const Held& held) {
  const Context context(circuit);
  WarmStart warm;
  return judge_with(context, held.size, held.fuse, warm, Detail::judged);
}

circuit::Circuit with_loads_scaled(const circuit::Circuit& circuit, double factor) {
  circuit::Circuit scaled = circuit;
  for (circuit::Outlet& outlet : scaled.outlets) {
    for (circuit::Device& device : outlet.devices) device.load.rating *= factor;
  }
  if (scaled.at_most_at_once) scaled.at_most_at_once = *scaled.at_most_at_once * factor;
  return scaled;
}

units::Amperes largest_fuse(const Context& context, const FuseCeiling& ceiling) {
  units::Amperes largest(0.0);
  for (const double rating : context.family.ratings_a) {
    if (within(units::Amperes(rating), ceiling.most())) largest = units::Amperes(rating);
  }
  return largest;
}

// All loads grown or shrunk together, as they share the circuit now.
units::Amperes most_current(const circuit::Circuit& circuit, const Held& held, double cap_a) {
  const long most = static_cast<long>(std::ceil(held.fuse.number() / kCurrentStepA)) * 2;
  const auto steps = largest_that_holds(1, most, [&](long n) {
    return judged(with_loads_scaled(circuit, static_cast<double>(n) * kCurrentStepA / cap_a), held).passes;
  });
  return units::Amperes(steps ? static_cast<double>(*steps) * kCurrentStepA : 0.0);
}

units::Metres longest_run(const circuit::Circuit& circuit, const Held& held) {
  const double far_m = farthest_outlet(circuit).number();
  double longest_m = 0.0;
  double shortest_m = far_m;
  for (const circuit::Outlet& outlet : circuit.outlets) {
    longest_m = std::max(longest_m, outlet.run.length.number());
    shortest_m = std::min(shortest_m, outlet.run.length.number());
  }
  const circuit::Limit& run = circuit::limit(circuit::Field::run_m);
  const long low = static_cast<long>(std::ceil(run.low / shortest_m * far_m / kLengthStepM - 1e-9));
  const long high = static_cast<long>(std::floor(run.high / longest_m * far_m / kLengthStepM + 1e-9));
  const auto steps = largest_that_holds(low, high, [&](long n) {
    return judged(with_runs_scaled(circuit, static_cast<double>(n) * kLengthStepM / far_m), held).passes;
  });
  return units::Metres(steps ? static_cast<double>(*steps) * kLengthStepM : 0.0);
}

void tell_fuse(const Context& context, const Held& held, const FuseCeiling& ceiling, Reach& reach) {
  const std::string chain = " (" + chain_text(context, ceiling) + ").";
  if (!ceiling.wire.value) {
    reach.fuse_sentence = "There is no current figure for " + size_text(held.size) + " here, so no fuse can be said to protect it.";
    return;
  }
  reach.fuse_protects_wire = within(held.fuse, ceiling.most());
  reach.fuse_sentence =
      reach.fuse_protects_wire
          ? "The " + fuse_text(held.fuse) + " protects the wire: nothing in its path is rated below " +
                units::amperes_text(ceiling.most()) + chain
          : "The " + fuse_text(held.fuse) + " is too large: the " + link_text(context, *ceiling.least) + " allows " +
                units::amperes_text(ceiling.most()) + chain;
}

}  // namespace

Reach reach(const circuit::Circuit& circuit, const circuit::InHand& in_hand) {
  Reach reach;
  const circuit::Problems problems = circuit::validate(circuit);
  const tables::Conductor* size = tables::conductor_by_id(in_hand.size);
  if (!problems.empty()) reach.notes.push_back(circuit::one_line(problems.front()));
  if (size == nullptr) reach.notes.push_back("Unknown wire size. Pick one from the list.");
  if (!(in_hand.fuse > units::Amperes(0.0)) || !std::isfinite(in_hand.fuse.number())) {
    reach.notes.push_back("The fuse in hand has to be above 0 A.");
  }
  if (!reach.notes.empty()) return reach;
  const Held held{*size, in_hand.fuse};
  const Context context(circuit);
  const tables::Conductor* tail = choose_tail(context, *size);
  FuseCeiling ceiling;
  find_ceiling(context, *size, tail, ceiling);
  reach.largest_fuse = largest_fuse(context, ceiling);
  tell_fuse(context, held, ceiling, reach);
  if (context.demand.cap_a <= 0.0) {
    reach.notes.push_back("No outlet has a load yet, so there is no current to say how far for.");
    return reach;
  }
  if (!reach.fuse_protects_wire) return reach;
  reach.most_current = most_current(circuit, held, context.demand.cap_a);
  reach.longest_run = longest_run(circuit, held);
  const Candidate now = judged(circuit, held);
  if (!now.passes && now.first_failure() != nullptr) reach.notes.push_back(now.first_failure()->sentence);
  return reach;
}

}  // namespace sizing
