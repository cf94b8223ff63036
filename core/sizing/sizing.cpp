#include "sizing/sizing.h"

#include <algorithm>

#include "circuit/validate.h"
#include "sizing/judge.h"
#include "sizing/notes.h"
#include "sizing/rules.h"
#include "sizing/words.h"
#include "units/expect.h"

namespace sizing {
namespace {

bool any_load(const circuit::Circuit& circuit) {
  return std::any_of(circuit.outlets.begin(), circuit.outlets.end(),
                     [](const circuit::Outlet& outlet) { return circuit::has_load(outlet); });
}

// What the answer rests on, whatever the inputs: a wire that its fuse does not protect is never
// recommended. Held here once more, apart from the judgements.
bool fuse_protects(const Context& context, const Candidate& choice) {
  if (!choice.passes || !choice.fuse || choice.first_failure() != nullptr) return false;
  for (std::size_t zone = 0; zone < context.zones.all.size(); ++zone) {
    FuseCeiling ceiling;
    find_ceiling(context, *choice.size, choice.tail, ceiling, zone);
    const units::Amperes fuse = zone == kBranchZone ? *choice.fuse : context.zones.all[zone].protection.rating;
    if (ceiling.least == nullptr || !within(fuse, ceiling.most())) return false;
  }
  return within(context.fuse_need(choice.design_current), *choice.fuse);
}

// A ladder tells of the other outlets only a bound; of what is recommended every outlet is told.
bool tell_every_outlet(const Context& context, Candidate& candidate, WarmStart& warm) {
  Candidate whole = judge_with(context, *candidate.size, candidate.fuse, warm, Detail::every_outlet);
  whole.on_shelf = candidate.on_shelf;
  candidate = std::move(whole);
  return candidate.passes;
}

void find_choice(const Context& context, Answer& answer, WarmStart& warm) {
  for (std::size_t i = 0; i < answer.ladder.size(); ++i) {
    Candidate& candidate = answer.ladder[i];
    const bool protects = fuse_protects(context, candidate);
    BRANCHLIGHT_EXPECT(protects == candidate.passes);
    if (!protects) continue;
    if (!answer.best_ignoring_shelf) answer.best_ignoring_shelf = i;
    if (!candidate.on_shelf || !tell_every_outlet(context, candidate, warm)) continue;
    answer.chosen = i;
    return;
  }
}

void tell_reason(Answer& answer) {
  const std::size_t chosen = *answer.chosen;
  if (answer.ladder.size() == 1) {
    answer.reason = "This is the wire that is there; with this fuse it passes everything.";
    return;
  }
  if (chosen == 0) {
    answer.reason = size_text(*answer.ladder[0].size) + " is the thinnest of the list, and passes everything.";
    return;
  }
  const Candidate& smaller = answer.ladder[chosen - 1];
  if (smaller.passes) {
    answer.reason = "Set by the shelf. " + size_text(*smaller.size) + " with a " + fuse_text(*smaller.fuse) +
                    " would do, but the shop does not have it.";
    return;
  }
  answer.set_by = *smaller.first_failure();
  answer.reason = "Set by " + set_by_words(answer.set_by->criterion) + ". " + answer.set_by->sentence;
}

// The size to speak of when none fits: of those that go into the parts, the one with the fewest
// failures; of equals the largest, as more copper helps against most of them.
const Candidate& nearest(const Answer& answer) {
  const Candidate* best = nullptr;
  std::ptrdiff_t best_failures = 0;
  for (const Candidate& candidate : answer.ladder) {
    const std::ptrdiff_t failures =
        std::count_if(candidate.judgements.begin(), candidate.judgements.end(),
                      [](const Judgement& j) { return !j.passes; }) +
        (candidate.fails(Criterion::fit) ? 100 : 0);
    if (best != nullptr && failures > best_failures) continue;
    best = &candidate;
    best_failures = failures;
  }
  return *best;
}

// Does the next thicker wire come nearer to meeting what this one fails?
bool thicker_helps(const Candidate& now, const Candidate& thicker) {
  const std::size_t failed = static_cast<std::size_t>(now.first_failure()->criterion);
  const Judgement& here = now.judgements[failed];
  const Judgement& there = thicker.judgements[failed];
  if (there.passes) return true;
  const bool more_is_better =
      here.criterion == Criterion::device_minimum || here.criterion == Criterion::mechanical_minimum;
  const auto excess = [&](const Judgement& j) { return more_is_better ? j.limit - j.value : j.value - j.limit; };
  return excess(there) < excess(here) - 1e-9;
}

void tell_nothing_fits(Answer& answer) {
  if (answer.best_ignoring_shelf) {
    const Candidate& best = answer.ladder[*answer.best_ignoring_shelf];
    answer.verdict = Verdict::not_on_shelf;
    const bool thicker = std::any_of(answer.ladder.begin(), answer.ladder.end(), [&](const Candidate& other) {
      return other.passes && other.size->area > best.size->area;
    });
    answer.headline = "The shop has nothing that fits: it takes " + size_text(*best.size) + " with a " +
                      fuse_text(*best.fuse) + (thicker ? ", or thicker." : ".");
    return;
  }
  answer.verdict = Verdict::none_fits;
  const Candidate& best = nearest(answer);
  std::string why = best.first_failure()->sentence;
  const auto next = static_cast<std::size_t>(&best - answer.ladder.data()) + 1;
  if (!best.fails(Criterion::fit) && next < answer.ladder.size() && answer.ladder[next].fails(Criterion::fit) &&
      thicker_helps(best, answer.ladder[next])) {
    // More copper would help, and the parts do not take it: one reason, in both its halves.
    if (why.ends_with('.')) why.pop_back();
    why += ", and " + answer.ladder[next].judgements[static_cast<std::size_t>(Criterion::fit)].sentence;
  }
  answer.headline = "No size fits: " + why;
}

}  // namespace

Answer size_circuit(const circuit::Circuit& circuit) {
  Answer answer;
  answer.problems = circuit::validate(circuit);
  if (!answer.problems.empty()) {
    answer.verdict = Verdict::invalid;
    answer.headline = circuit::one_line(answer.problems.front());
    return answer;
  }
  if (!any_load(circuit)) {
    answer.verdict = Verdict::no_load;
    answer.headline = "No outlet has a load yet. Give at least one a load in A or W.";
    return answer;
  }
  const Context context(circuit);
  const std::span<const tables::Conductor> sizes = sizes_to_judge(circuit);
  answer.ladder.reserve(sizes.size());
  WarmStart warm;
  for (const tables::Conductor& size : sizes) answer.ladder.push_back(judge_on_shelf(context, size, warm));
  find_choice(context, answer, warm);
  answer.solves = warm.solves;
  if (answer.chosen) {
    answer.verdict = Verdict::fits;
    tell_reason(answer);
    answer.notes = notes_for(context, answer.ladder[*answer.chosen]);
  } else {
    tell_nothing_fits(answer);
  }
  return answer;
}

Candidate judge(const circuit::Circuit& circuit, const tables::Conductor& size, std::optional<units::Amperes> fuse) {
  const Context context(circuit);
  WarmStart warm;
  return judge_with(context, size, fuse, warm, Detail::every_outlet);
}

}  // namespace sizing
