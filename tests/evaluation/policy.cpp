#include "evaluation/policy.h"

#include <chrono>
#include <cmath>
#include <cstdio>
#include <set>

#include "diagnosis/tracer.h"
#include "evaluation/safety_rule.h"

namespace evaluation {
namespace {

using diagnosis::Advice;
using diagnosis::AdviceKind;
using diagnosis::Answer;
using diagnosis::AnswerKind;
using diagnosis::RetestResult;
using diagnosis::Tracer;

constexpr int kMostSteps = 80;

std::string answer_text(const Answer& answer) {
  char buffer[32];
  switch (answer.kind) {
    case AnswerKind::word: return std::string(diagnosis::answer_text(answer.key));
    case AnswerKind::reading: std::snprintf(buffer, sizeof buffer, "%.4g", answer.reading); return buffer;
    case AnswerKind::cant_reach: return "can't reach";
    case AnswerKind::not_sure: break;
  }
  return "not sure";
}

Advice timed_next(const Tracer& tracer, Run& run) {
  const auto start = std::chrono::steady_clock::now();
  Advice advice = tracer.next();
  const auto end = std::chrono::steady_clock::now();
  run.next_ms.push_back(std::chrono::duration<double, std::milli>(end - start).count());
  return advice;
}

void ask(Tracer& tracer, const diagnosis::Check& check, Person& person, const RunOptions& options, Run& run) {
  if (const std::string wrong = breach(tracer.the_case(), check); !wrong.empty()) {
    run.breaches.push_back(check.id + ": " + wrong);
  }
  run.minutes += tracer.minutes(check);
  ++run.checks;
  const Answer answer = person.answer(check);
  if (options.keep_story) run.story.push_back(check.id + " -> " + answer_text(answer));
  if (tracer.observe(check.id, answer).taken) return;
  ++run.refused;
  if (!tracer.observe(check.id, diagnosis::not_sure()).taken) run.gave_up = true;
}

// The engine says that an answer is the odd one out: it is taken again, with care. Once each.
bool take_again(Tracer& tracer, const Advice& advice, std::set<std::size_t>& retaken, Person& person,
                const RunOptions& options, Run& run) {
  if (!advice.odd_entry || !retaken.insert(*advice.odd_entry).second) return false;
  const auto& entry = tracer.record().entries[*advice.odd_entry];
  const auto check = tracer.find_check(entry.id);
  if (!check) return false;
  run.minutes += tracer.minutes(*check);
  ++run.checks;
  const Answer answer = person.answer(*check, true);
  if (options.keep_story) run.story.push_back("again: " + check->id + " -> " + answer_text(answer));
  return tracer.retake(*advice.odd_entry, answer).taken;
}

}  // namespace

std::string policy_name(Policy policy) {
  switch (policy) {
    case Policy::engine: return "engine";
    case Policy::outward: return "outward";
    case Policy::back: return "back";
    case Policy::half_split: return "half-split";
    case Policy::spare_outward: return "sparing, outward";
    case Policy::spare_back: return "sparing, back";
    case Policy::spare_half: return "sparing, halves";
    case Policy::thumb_outward: return "by thumb, outward";
    case Policy::thumb_back: return "by thumb, back";
    case Policy::thumb_half: break;
  }
  return "by thumb, halves";
}

std::string fault_text(const TrueFault& fault) {
  std::string text = diagnosis::fault_key({fault.kind, fault.outlet, fault.side, fault.neighbour});
  const bool joint = fault.kind == diagnosis::FaultKind::splice_resistive ||
                     fault.kind == diagnosis::FaultKind::splice_open ||
                     fault.kind == diagnosis::FaultKind::splice_on_insulation ||
                     fault.kind == diagnosis::FaultKind::opens_when_moved;
  if (joint && fault.port == Port::to_tab) text += " (to tab)";
  if (joint && fault.port == Port::onward) text += " (onward)";
  if (fault.ohm > 0.0 && std::isfinite(fault.ohm)) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, " %.2g ohm", fault.ohm);
    text += buffer;
  }
  return text;
}

bool book_remedy(const diagnosis::Case& the_case, Person& person, const diagnosis::Remedy& remedy, Run& run,
                 RetestResult& result) {
  if (const std::string wrong = breach(the_case, remedy); !wrong.empty()) {
    run.breaches.push_back(remedy.id + ": " + wrong);
  }
  if (run.remedies == 0) {
    run.minutes_first = run.minutes;
    run.concluded = remedy.id;
  }
  bool right = false;
  result = person.try_remedy(remedy, right);
  ++run.remedies;
  if (right && run.remedies == 1) run.first_right = true;
  if (right && run.remedies <= 2) run.second_right = true;
  if (right) run.ended_right = true;
  else run.repair_minutes += remedy.minutes;
  return right;
}

void run_engine(const Breakdown& breakdown, Person& person, const RunOptions& options, Run& run) {
  Tracer tracer(breakdown.the_case);
  std::set<std::size_t> retaken;
  for (int step = 0; step < kMostSteps && !run.gave_up; ++step) {
    const Advice advice = timed_next(tracer, run);
    if (advice.kind == AdviceKind::finished) return;
    if (advice.kind == AdviceKind::check) {
      ask(tracer, *advice.check, person, options, run);
      continue;
    }
    if (advice.kind == AdviceKind::none_fits && take_again(tracer, advice, retaken, person, options, run)) continue;
    if (advice.kind == AdviceKind::none_fits && advice.check) {   // "keep everything, go on"
      ask(tracer, *advice.check, person, options, run);
      continue;
    }
    if (!advice.remedy && advice.to_try.empty()) break;
    if (run.remedies == 0) {
      run.cannot_tell = advice.kind == AdviceKind::cannot_tell;
      run.sure = advice.probability;
    }
    RetestResult result{};
    const diagnosis::Remedy remedy = advice.remedy ? *advice.remedy : advice.to_try.front();
    const bool over = book_remedy(breakdown.the_case, person, remedy, run, result);
    if (options.keep_story) run.story.push_back("REMEDY " + remedy.id + (over ? " -> right" : " -> wrong"));
    if (over) return;
    if (!tracer.after_remedy(remedy.id, result).taken || run.remedies >= 10) break;
  }
  run.gave_up = true;
}

Run run_policy(Policy policy, const Breakdown& breakdown, const RunOptions& options) {
  Person person(breakdown.world, breakdown.the_case, options.wrong_share, options.seed);
  Run run;
  run.truth = fault_text(breakdown.world.fault());
  switch (policy) {
    case Policy::engine: run_engine(breakdown, person, options, run); break;
    case Policy::outward:
    case Policy::back:
    case Policy::half_split:
    case Policy::spare_outward:
    case Policy::spare_back:
    case Policy::spare_half: run_in_order(policy, breakdown, person, options, run); break;
    default: run_by_thumb(policy, breakdown, person, options, run); break;
  }
  if (run.remedies == 0) run.minutes_first = run.minutes;
  run.found_live = person.found_live();
  return run;
}

}  // namespace evaluation
