#include "sizing/fixes.h"

#include <algorithm>
#include <cmath>

#include "circuit/validate.h"
#include "sizing/fixes_kit.h"
#include "sizing/judge.h"
#include "sizing/rules.h"
#include "sizing/sizing.h"
#include "sizing/words.h"
#include "units/format.h"

namespace sizing {

std::optional<Candidate> serves(const circuit::Circuit& circuit, const tables::Conductor& size) {
  if (!circuit::validate(circuit).empty()) return std::nullopt;
  const Context context(circuit);
  if (context.demand.total_a <= 0.0) return std::nullopt;
  const auto sizes = sizes_to_judge(circuit);   // the size in hand may have no run to be put in
  if (&size < sizes.data() || &size >= sizes.data() + sizes.size()) return std::nullopt;
  WarmStart warm;
  Candidate candidate = judge_on_shelf(context, size, warm);
  if (!candidate.passes) return std::nullopt;
  if (!candidate.on_shelf && size_circuit(circuit).verdict != Verdict::fits) return std::nullopt;
  return candidate;
}

circuit::Circuit with_runs_scaled(const circuit::Circuit& circuit, double factor) {
  circuit::Circuit scaled = circuit;
  for (circuit::Outlet& outlet : scaled.outlets) outlet.run.length = outlet.run.length * factor;
  return scaled;
}

units::Metres farthest_outlet(const circuit::Circuit& circuit) { return Context(circuit).farthest; }

namespace {

constexpr double kDropStep = 0.001;
constexpr double kNearly = 1e-9;
// Past twice the rating a fuse tells little of the load any more; our choice.
constexpr double kMostRaised = 2.0;

// What still runs alone under a cap: told, as carrying less means not plugging in all.
std::string alone_words(const circuit::Circuit& circuit, double cap_a) {
  std::string too_much;
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    const double rated = circuit::rated_current(circuit.outlets[i], circuit.supply.nominal).number();
    if (rated <= cap_a + kNearly) continue;
    if (!too_much.empty()) too_much += ", ";
    too_much += outlet_text(i);
  }
  return too_much.empty() ? "Any outlet still runs alone." : "Too little for " + too_much + " at full load.";
}

std::optional<Fix> carry_less_fix(const circuit::Circuit& circuit, const tables::Conductor& size) {
  const circuit::Circuit counted = with_long_starts(circuit);
  const Demand demand(counted);
  const auto with_cap = [&](long steps) {
    circuit::Circuit changed = circuit;
    changed.at_most_at_once = units::Amperes(static_cast<double>(steps) * kCurrentStepA);
    return changed;
  };
  const long most = static_cast<long>(std::ceil(demand.cap_a / kCurrentStepA - kNearly)) - 1;
  const auto steps =
      largest_that_holds(1, most, [&](long n) { return serves(with_cap(n), size).has_value(); });
  if (!steps) return std::nullopt;
  Fix fix;
  fix.kind = FixKind::carry_less;
  fix.value = static_cast<double>(*steps) * kCurrentStepA;
  fix.measure = Measure::amperes;
  fix.title = "Carry less";
  fix.result = {with_cap(*steps)};
  fix.detail = "Whole circuit at once; fit a " + fuse_text(*serves(fix.result.front(), size)->fuse) + ". " +
               alone_words(circuit, fix.value);
  return fix;
}

std::optional<Fix> run_shorter_fix(const circuit::Circuit& circuit, const tables::Conductor& size) {
  const double far_m = farthest_outlet(circuit).number();
  const auto at_length = [&](long steps) {
    return with_runs_scaled(circuit, static_cast<double>(steps) * kLengthStepM / far_m);
  };
  // No run may be shorter than a run can be, so the shortest whole length is above 0.
  double least_run_m = far_m;
  for (const circuit::Outlet& outlet : circuit.outlets) least_run_m = std::min(least_run_m, outlet.run.length.number());
  const double least_far_m = circuit::limit(circuit::Field::run_m).low / least_run_m * far_m;
  const long low = static_cast<long>(std::ceil(least_far_m / kLengthStepM + kNearly));
  const long high = static_cast<long>(std::ceil(far_m / kLengthStepM - kNearly)) - 1;
  const auto steps =
      largest_that_holds(low, high, [&](long n) { return serves(at_length(n), size).has_value(); });
  if (!steps) return std::nullopt;
  Fix fix;
  fix.kind = FixKind::run_shorter;
  fix.value = static_cast<double>(*steps) * kLengthStepM;
  fix.measure = Measure::none;
  fix.title = "Run it shorter";
  fix.result = {at_length(*steps)};
  fix.detail = circuit.outlets.size() > 1 ? "Block to far outlet, every run in proportion; fit a "
                                          : "Block to outlet; fit a ";
  fix.detail += fuse_text(*serves(fix.result.front(), size)->fuse) + ".";
  return fix;
}

// Limits raised to `fraction` wherever they are tighter.
circuit::Circuit with_drop_limit(const circuit::Circuit& circuit, double fraction) {
  circuit::Circuit changed = circuit;
  changed.drop_limit = std::max(changed.drop_limit, fraction);
  for (circuit::Outlet& outlet : changed.outlets) {
    if (outlet.drop_limit) outlet.drop_limit = std::max(*outlet.drop_limit, fraction);
  }
  return changed;
}

std::optional<Fix> more_drop_fix(const circuit::Circuit& circuit, const tables::Conductor& size) {
  double own = circuit.drop_limit;
  for (const circuit::Outlet& outlet : circuit.outlets) own = std::max(own, outlet.drop_limit.value_or(0.0));
  const double widest = std::max(kWidestUsualDrop, own);
  double tightest = circuit.drop_limit;
  for (const circuit::Outlet& outlet : circuit.outlets) {
    if (outlet.drop_limit) tightest = std::min(tightest, *outlet.drop_limit);
  }
  const auto at_limit = [&](long steps) { return with_drop_limit(circuit, static_cast<double>(steps) * kDropStep); };
  // Downwards from the widest, so that the search runs on 'how much tighter'.
  const long top = static_cast<long>(std::floor(widest / kDropStep + kNearly));
  const long bottom = static_cast<long>(std::floor(tightest / kDropStep + kNearly)) + 1;
  const auto tighter = largest_that_holds(
      0, top - bottom, [&](long less) { return serves(at_limit(top - less), size).has_value(); });
  if (!tighter) return std::nullopt;
  const long steps = top - *tighter;
  Fix fix;
  fix.kind = FixKind::more_drop;
  fix.value = static_cast<double>(steps) * kDropStep;
  fix.measure = Measure::fraction;
  fix.title = "Allow more drop";
  fix.detail = "Lamps dim and motors slow a little; 10 % is usual for what does not matter, 3 % for what does.";
  fix.result = {at_limit(steps)};
  return fix;
}

// A larger fuse loses fewer volts of its own. Within what protects the wire it may be taken, but it is
// the owner's to choose: it opens later.
std::optional<Fix> larger_fuse_fix(const circuit::Circuit& circuit, const tables::Conductor& size, const Candidate& failing) {
  const bool by_volts = std::all_of(failing.judgements.begin(), failing.judgements.end(), [](const Judgement& j) {
    return j.passes || j.criterion == Criterion::drop || j.criterion == Criterion::device_minimum ||
           j.criterion == Criterion::operating_point;
  });
  if (!by_volts || !failing.fuse) return std::nullopt;
  circuit::Circuit changed = circuit;
  std::optional<Candidate> candidate;
  for (const double rating : tables::fuse_family(circuit.wiring.fuse_family).ratings_a) {
    if (rating < failing.fuse->number()) continue;
    if (rating > kMostRaised * failing.fuse->number()) return std::nullopt;
    changed.shelf.missing_fuses_a.push_back(rating);
    candidate = serves(changed, size);
    if (candidate) break;
  }
  if (!candidate) return std::nullopt;
  Fix fix;
  fix.kind = FixKind::larger_fuse;
  fix.value = candidate->fuse->number();
  fix.measure = Measure::amperes;
  fix.title = "Larger fuse: " + units::amperes_text(*candidate->fuse);
  fix.detail = "It loses less than a " + fuse_text(*failing.fuse) +
               " and still protects wire and parts, but opens later. Not above what the device's maker allows.";
  fix.result = {std::move(changed)};
  return fix;
}

std::optional<Fix> other_family_fix(const circuit::Circuit& circuit, const tables::Conductor& size) {
  for (const tables::FuseFamily& family : tables::fuse_families()) {
    if (family.id == circuit.wiring.fuse_family) continue;
    circuit::Circuit changed = circuit;
    changed.wiring.fuse_family = family.id;
    const auto candidate = serves(changed, size);
    if (!candidate) continue;
    Fix fix;
    fix.kind = FixKind::other_fuse_family;
    fix.value = candidate->fuse->number();
    fix.measure = Measure::amperes;
    fix.title = "Other fuse";
    fix.detail = std::string(family.name) + ", " + units::amperes_text(*candidate->fuse) + ", in a holder made for it.";
    fix.result = {std::move(changed)};
    return fix;
  }
  return std::nullopt;
}

std::optional<Fix> next_size_fix(const circuit::Circuit& circuit, const tables::Conductor& size) {
  const Answer answer = size_circuit(circuit);
  const Candidate* other = nullptr;
  for (const Candidate& candidate : answer.ladder) {
    if (!candidate.passes || candidate.size == &size) continue;
    const bool thicker = candidate.size->area > size.area;
    if (other == nullptr || !thicker) other = &candidate;   // the largest of the thinner ones so far
    if (thicker) {
      other = &candidate;
      break;
    }
  }
  if (other == nullptr) return std::nullopt;
  Fix fix;
  fix.kind = FixKind::next_size;
  fix.value = other->size->area.number();
  fix.measure = Measure::square_millimetres;
  fix.title = "Take " + size_text(*other->size);
  fix.detail = "With a " + fuse_text(*other->fuse) + (other->on_shelf ? "." : ", from another shop.");
  circuit::Circuit changed = circuit;
  std::erase(changed.shelf.missing_sizes, std::string(other->size->id));
  std::erase_if(changed.shelf.missing_fuses_a,
                [&](double a) { return std::abs(a - other->fuse->number()) < kNearly; });
  if (!serves(changed, *other->size)) return std::nullopt;
  fix.result = {std::move(changed)};
  return fix;
}

void keep(std::vector<Fix>& fixes, std::optional<Fix> fix) {
  if (fix) fixes.push_back(std::move(*fix));
}

}  // namespace

Fixes fixes(const circuit::Circuit& circuit, const tables::Conductor& size) {
  Fixes found;
  found.size = &size;
  const circuit::Problems problems = circuit::validate(circuit);
  if (!problems.empty()) {
    found.why_none = circuit::one_line(problems.front());
    return found;
  }
  if (Demand(circuit).total_a <= 0.0) {
    found.why_none = "No outlet has a load yet.";
    return found;
  }
  if (size.system != circuit.wiring.gauge) {
    found.why_none = size_text(size) + " is not of this circuit's list of sizes.";
    return found;
  }
  if (serves(circuit, size)) {
    found.why_none = size_text(size) + " fits as it is.";
    return found;
  }
  const Candidate failing = judge(circuit, size);
  keep(found.fixes, carry_less_fix(circuit, size));
  keep(found.fixes, run_shorter_fix(circuit, size));
  keep(found.fixes, more_drop_fix(circuit, size));
  keep(found.fixes, larger_fuse_fix(circuit, size, failing));
  keep(found.fixes, feeder_fix(circuit, size, failing));
  keep(found.fixes, other_part_fix(circuit, size, failing));
  keep(found.fixes, other_family_fix(circuit, size));
  keep(found.fixes, split_fix(circuit, size));
  keep(found.fixes, next_size_fix(circuit, size));
  if (found.fixes.empty()) {
    const Judgement* why = failing.first_failure();
    found.why_none = "No single change makes " + size_text(size) + " fit.";
    if (why != nullptr) found.why_none += " " + why->sentence;
  }
  return found;
}

const tables::Conductor* nearest_size(const circuit::Circuit& circuit, const Answer& answer) {
  const auto on_shelf = [&](const tables::Conductor& size) {
    const auto& missing = circuit.shelf.missing_sizes;
    return std::find(missing.begin(), missing.end(), size.id) == missing.end();
  };
  const tables::Conductor* fallback = nullptr;
  const tables::Conductor* nearest = nullptr;
  for (const Candidate& candidate : answer.ladder) {
    if (!on_shelf(*candidate.size)) continue;
    if (fallback == nullptr) fallback = candidate.size;
    const bool fits = std::none_of(candidate.judgements.begin(), candidate.judgements.end(), [](const Judgement& j) {
      return j.criterion == Criterion::fit && !j.passes;
    });
    if (fits && candidate.derated_ampacity) nearest = candidate.size;
  }
  return nearest != nullptr ? nearest : fallback;
}

}  // namespace sizing
