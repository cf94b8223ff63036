// When to stop asking, and what to say then; what each answer would mean.
#include <cmath>
#include <span>

#include "diagnosis/explain.h"
#include "diagnosis/judgement_constants.h"
#include "diagnosis/prove_dead.h"
#include "diagnosis/remedy_row.h"
#include "diagnosis/trace_work.h"

namespace diagnosis {
namespace {

// Answers of "not sure" since the last one that told anything, or since the last remedy.
std::size_t unsure_in_a_row(const Record& record) {
  std::size_t count = 0;
  for (auto entry = record.entries.rbegin(); entry != record.entries.rend(); ++entry) {
    if (entry->kind != EntryKind::check) break;
    if (entry->answer.kind == AnswerKind::cant_reach) continue;  // says where, not what
    if (entry->answer.kind != AnswerKind::not_sure) break;
    ++count;
  }
  return count;
}

}  // namespace

bool Tracer::Work::was_tried(std::size_t one) const {
  return std::find(in_vain.begin(), in_vain.end(), static_cast<int>(one)) != in_vain.end();
}

bool Tracer::Work::cause_first() const {
  bool blew = record.complaint.symptom == Symptom::blows_at_once || record.complaint.symptom == Symptom::blows_later;
  for (const Entry& entry : record.entries) {
    if (entry.answer.kind != AnswerKind::word) continue;
    if (entry.answer.key == AnswerKey::blows_at_once || entry.answer.key == AnswerKey::blows_later) {
      blew = true;
    } else if (entry.kind == EntryKind::remedy && entry.answer.key != AnswerKey::cant) {
      const auto made = std::find(model->group_ids.begin(), model->group_ids.end(), entry.id);
      if (made == model->group_ids.end()) continue;
      const RemedyKind kind = model->group_kinds[static_cast<std::size_t>(made - model->group_ids.begin())];
      if (remedy_row(kind).fuse == FuseWork::removes_what_blew_it) blew = false;
    }
  }
  return blew;
}

bool Tracer::Work::not_now(std::size_t one) const {
  if (std::find(could_not.begin(), could_not.end(), static_cast<int>(one)) != could_not.end()) return true;
  return remedy_row(model->group_kinds[one]).fuse == FuseWork::only_a_fuse && cause_first();
}

// A joint that still passes current, badly, is a heater at whatever it carries: said as soon as it is likely.
std::string Tracer::Work::warning() const {
  double warm = 0.0;
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    const auto passes_badly = [](const Edit& edit) {
      return edit.kind == EditKind::thin_runs ||
             (edit.kind == EditKind::series && std::isfinite(edit.ohm) && edit.ohm > 0.0);
    };
    for (std::size_t i = 0; i < 2; ++i) {
      const std::span<const Edit> edits = scenarios[s].edits[i].all();
      if ((repaired[s] & (1u << i)) != 0 || std::none_of(edits.begin(), edits.end(), passes_badly)) continue;
      warm += probability[s];
      break;
    }
  }
  return warm > judged(Judged::likely) ? "A joint here may be heating: switch off what it feeds until it is put right."
                                       : "";
}

std::vector<std::size_t> Tracer::Work::groups_to_try(const std::vector<double>& groups) const {
  std::vector<std::size_t> order;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    if (groups[g] > judged(Judged::some_weight) && !not_now(g) && static_cast<int>(g) != model->unknown_group)
      order.push_back(g);
  }
  // The likely and the quick first: the order with the fewest minutes expected. What was made in vain comes last.
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (was_tried(a) != was_tried(b)) return was_tried(b);
    return groups[a] / model->group_minutes[a] > groups[b] / model->group_minutes[b];
  });
  if (order.size() > judged_count(Judged::most_to_try)) order.resize(judged_count(Judged::most_to_try));
  return order;
}

std::vector<Remedy> Tracer::Work::remedies_of(const std::vector<std::size_t>& order) const {
  std::vector<Remedy> remedies;
  for (const std::size_t g : order) {
    remedies.push_back(remedy_for(
        model->the_case, model->hypotheses[static_cast<std::size_t>(likeliest_in(static_cast<int>(g)))].fault));
  }
  return remedies;
}

// The answer without which the rest agrees best, when it agrees far better.
std::optional<std::size_t> Tracer::Work::odd_entry() const {
  std::vector<std::size_t> informative;
  for (std::size_t i = 0; i < record.entries.size(); ++i) {
    const Entry& entry = record.entries[i];
    if (entry.kind == EntryKind::check &&
        (entry.answer.kind == AnswerKind::word || entry.answer.kind == AnswerKind::reading))
      informative.push_back(i);
  }
  if (informative.size() < 2) return std::nullopt;
  // Best single explanation with everything, and with each answer left out.
  std::vector<double> best(informative.size(), -1e300);
  double with_all = -1e300;
  Look look(model->plant);
  std::vector<double> logs(informative.size());
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    if (scenarios[s].second >= 0) continue;
    model->likelihood.aim(look, scenarios[s], 0u);
    if (look.unknown) continue;
    double sum = std::log(scenarios[s].prior) + std::log(model->likelihood.complaint(look));
    for (std::size_t i = 0; i < informative.size(); ++i)
      sum += logs[i] = log_chance(record.entries[informative[i]], look);
    with_all = std::max(with_all, sum);
    for (std::size_t i = 0; i < informative.size(); ++i) best[i] = std::max(best[i], sum - logs[i]);
  }
  const auto oddest = static_cast<std::size_t>(std::max_element(best.begin(), best.end()) - best.begin());
  if (best[oddest] - with_all < std::log(judged(Judged::far_better))) return std::nullopt;
  return informative[oddest];
}

std::vector<Outlook> Tracer::Work::outlooks(const Check& one) const {
  const std::size_t n = one.choices.size();
  std::vector<double> before(model->hypotheses.size(), 0.0);
  std::vector<std::vector<double>> after(n, before);
  std::vector<Outlook> all(n);
  Look look(model->plant);
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    if (probability[s] < judged(Judged::outlook_from)) continue;
    model->likelihood.aim(look, scenarios[s], repaired[s]);
    const Chances chances = model->likelihood.coarse_chances(one, look);
    const auto h = static_cast<std::size_t>(open_fault(s));
    before[h] += probability[s];
    for (std::size_t c = 0; c < n; ++c) {
      after[c][h] += probability[s] * chances[c];
      all[c].probability += probability[s] * chances[c];
    }
  }
  std::vector<std::size_t> order(before.size());
  for (std::size_t h = 0; h < order.size(); ++h) order[h] = h;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return before[a] > before[b]; });
  for (std::size_t c = 0; c < n; ++c) {
    Outlook& outlook = all[c];
    outlook.key = one.choices[c].key;
    for (const std::size_t h : order) {
      if (before[h] < judged(Judged::outlook_before) &&
          after[c][h] < judged(Judged::outlook_after) * outlook.probability)
        continue;
      const double now = outlook.probability > 0.0 ? after[c][h] / outlook.probability : 0.0;
      if (now < judged(Judged::cleared_below) * before[h]) outlook.cleared.push_back(model->hypotheses[h].fault);
      if (now > judged(Judged::raised_above) * before[h] && now > judged(Judged::raised_from))
        outlook.raised.push_back(model->hypotheses[h].fault);
    }
    outlook.words = outlook_words(model->the_case, outlook);
  }
  return all;
}

void Tracer::Work::offer(Advice& made, const NextChoice& choice) const {
  if (choice.check < 0) return;
  made.check = model->worded(model->checks[static_cast<std::size_t>(choice.check)]);
  made.check->minutes = choice.minutes;
  made.outlooks = outlooks(*made.check);
}

Advice Tracer::Work::advise() const {
  Advice made;
  if (finished) {
    made.kind = AdviceKind::finished;
    made.words = "Found and put right.";
    return made;
  }
  made.warning = warning();
  const std::vector<double> groups = group_probability();
  std::size_t top = groups.size();
  for (std::size_t g = 0; g < groups.size(); ++g) {
    if (static_cast<int>(g) == model->unknown_group || not_now(g)) continue;
    // The same again only when nothing else has weight.
    const auto better = [&] {
      const bool again = was_tried(g) && groups[top] > judged(Judged::some_weight),
                 instead = was_tried(top) && groups[g] > judged(Judged::some_weight);
      return was_tried(g) == was_tried(top) ? groups[g] > groups[top]
             : again                        ? false
             : instead                      ? true
                                            : groups[g] > groups[top];
    };
    if (top == groups.size() || better()) top = g;
  }
  const double unknown = groups[static_cast<std::size_t>(model->unknown_group)];
  if (unknown > judged(Judged::none_fits)) {
    made.kind = AdviceKind::none_fits;
    made.odd_entry = odd_entry();
    made.words = made.odd_entry ? "These answers do not go together. One of them stands out: take it again."
                                : "Nothing known here explains all of these answers.";
    made.to_try = remedies_of(groups_to_try(groups));
    offer(made, next_check());
    return made;
  }
  const double sure = groups[top] / (1.0 - unknown);
  if (sure >= judged(Judged::sure)) {
    made.kind = AdviceKind::remedy;
    made.probability = groups[top];
    made.remedy = remedy_for(model->the_case,
                             model->hypotheses[static_cast<std::size_t>(likeliest_in(static_cast<int>(top)))].fault);
    made.words = remedy_words(made.probability);
    return made;
  }
  const std::size_t unsure = unsure_in_a_row(record);
  const bool try_now = unsure >= judged_count(Judged::unsure_of_any) ||
                       (unsure >= judged_count(Judged::unsure_of_likely) && sure >= judged(Judged::likely));
  const NextChoice choice = try_now ? NextChoice{} : next_check();
  if (choice.check < 0 || choice.most_bits < judged(Judged::least_bits)) {
    made.kind = AdviceKind::cannot_tell;
    const std::vector<std::size_t> order = groups_to_try(groups);
    made.to_try = remedies_of(order);
    made.probability =
        order.empty() ? 0.0 : groups[order.front()];  // of the quick and likely one, not of the likeliest
    if (made.to_try.empty()) {
      made.remedy = remedy_for(model->the_case, Fault{});
      made.to_try.push_back(*made.remedy);
    } else {
      made.remedy = made.to_try.front();
    }
    made.words = try_now ? "Several answers were not sure. Trying this first tells more than another check."
                 : made.to_try.size() == 1
                     ? "Nothing more can be told with what is in hand. Try this."
                     : "Nothing in hand can tell these apart. Try them in this order, re-testing after each.";
    if (!can_prove_dead(record.tools))
      made.words += " With a meter, or a lamp with a filament, the trace goes on: borrow one.";
    return made;
  }
  made.kind = AdviceKind::check;
  made.probability = groups[top];
  offer(made, choice);
  made.words = why_words(model->the_case, made.outlooks);
  return made;
}

}  // namespace diagnosis
