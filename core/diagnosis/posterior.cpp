// Every answer weighed under every scenario; repairs made, and the pairs that a failed one may have hidden.
#include <cmath>

#include "diagnosis/check_row.h"
#include "diagnosis/judgement_constants.h"
#include "diagnosis/remedy_row.h"
#include "diagnosis/trace_work.h"

namespace diagnosis {
void Tracer::Work::start() {
  scenarios = model->scenarios;
  log_weight = model->log_prior;
  repaired.assign(scenarios.size(), 0u);
  asked.assign(model->checks.size(), 0);
  unreachable = record.out_of_reach;
  could_not.clear();
  in_vain.clear();
  setup = {};
  finished = false;
  normalise();
}

void Tracer::Work::rebuild() {
  start();
  for (std::size_t i = 0; i < record.entries.size(); ++i) apply(record.entries[i], i);
  normalise();
}

void Tracer::Work::normalise() {
  advice.reset();
  const double top = *std::max_element(log_weight.begin(), log_weight.end());
  double sum = 0.0;
  probability.resize(log_weight.size());
  for (std::size_t s = 0; s < log_weight.size(); ++s) sum += probability[s] = std::exp(log_weight[s] - top);
  for (double& each : probability) each /= sum;
}

int Tracer::Work::open_fault(std::size_t s) const {
  const Scenario& scenario = scenarios[s];
  if (scenario.second >= 0 && (repaired[s] & 1u) != 0) return scenario.second;
  return scenario.first;
}
int Tracer::Work::group(std::size_t s) const { return model->group_of[static_cast<std::size_t>(open_fault(s))]; }

// Logarithm of how likely the answer is; 0 where it tells nothing.
double Tracer::Work::log_chance(const Entry& entry, Look& look) const {
  const Check* asked_check = check(entry.id);
  if (asked_check == nullptr) return 0.0;
  if (entry.answer.kind == AnswerKind::reading) {
    return std::log(model->likelihood.density(*asked_check, look, entry.answer.reading));
  }
  if (entry.answer.kind != AnswerKind::word) return 0.0;
  const Chances chances = model->likelihood.chances(*asked_check, look);
  for (std::size_t c = 0; c < asked_check->choices.size(); ++c) {
    if (asked_check->choices[c].key == entry.answer.key) return std::log(std::max(chances[c], 1e-300));
  }
  return 0.0;
}

void Tracer::Work::apply_check(const Entry& entry) {
  const Check* done = check(entry.id);
  if (done == nullptr) return;
  asked[static_cast<std::size_t>(done - model->checks.data())] = 1;
  if (entry.answer.kind == AnswerKind::cant_reach) {
    // The hardest place that the check goes to is the one that was out of reach.
    const auto hardest = std::max_element(done->sites.begin(), done->sites.end(), [](const Site& a, const Site& b) {
      return static_cast<int>(a.location) < static_cast<int>(b.location);
    });
    if (hardest != done->sites.end()) unreachable.push_back(*hardest);
    return;
  }
  leave_behind(*done, setup);
  Look look(model->plant);
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    model->likelihood.aim(look, scenarios[s], repaired[s]);
    log_weight[s] += log_chance(entry, look);
  }
}

void Tracer::Work::apply_remedy(const Entry& entry, std::size_t index) {
  const auto found = std::find(model->group_ids.begin(), model->group_ids.end(), entry.id);
  if (found == model->group_ids.end()) return;
  const int made = static_cast<int>(found - model->group_ids.begin());
  if (entry.answer.key == AnswerKey::cant) {
    could_not.push_back(made);
    return;
  }
  finished = entry.answer.key == AnswerKey::works;
  if (finished) return;
  in_vain.push_back(made);
  add_pairs(made, index);
  weigh_new_fuse(entry, made);
  Look look(model->plant);
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    const Scenario& scenario = scenarios[s];
    if (model->group_of[static_cast<std::size_t>(scenario.first)] == made && scenario.second < 0) {
      log_weight[s] += std::log(judged(Judged::repair_misses));
      continue;
    }
    unsigned now = repaired[s];
    if (scenario.second >= 0) {
      if (model->group_of[static_cast<std::size_t>(scenario.first)] == made) now |= 1u;
      if (model->group_of[static_cast<std::size_t>(scenario.second)] == made) now |= 2u;
    }
    if (now == repaired[s]) continue;
    repaired[s] = now;
    if (now == 3u) {
      log_weight[s] += std::log(judged(Judged::repair_misses));
      continue;
    }
    // What is left must keep the complaint alive.
    model->likelihood.aim(look, scenario, now);
    log_weight[s] += std::log(model->likelihood.complaint(look));
  }
  setup.state = {};
}

// A repair that is a new fuse and no more tells what the check with one tells: it blew, or nothing changed.
void Tracer::Work::weigh_new_fuse(const Entry& entry, int made) {
  const bool blew = entry.answer.key == AnswerKey::blows_at_once;
  const FuseWork fuse = remedy_row(model->group_kinds[static_cast<std::size_t>(made)]).fuse;
  if (fuse != FuseWork::only_a_fuse && !blew) return;
  const Check* swap = check(check_kind_row(CheckKind::fuse_swap).key);
  if (swap == nullptr) return;
  Look look(model->plant);
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    if (fuse != FuseWork::only_a_fuse && group(s) == made) continue;  // weighed as a repair in vain
    model->likelihood.aim(look, scenarios[s], repaired[s]);
    const Chances chances = model->likelihood.chances(*swap, look);
    double chance = 0.0;
    for (std::size_t c = 0; c < swap->choices.size(); ++c) {
      const AnswerKey key = swap->choices[c].key;
      const bool blows = key == AnswerKey::blows_at_once || key == AnswerKey::blows_later;
      if (blew ? blows : key == AnswerKey::same) chance += chances[c];
    }
    log_weight[s] += std::log(std::max(chance, 1e-300));
  }
}

// A pair of the fault just put right and another: as likely as the answers so far make it.
void Tracer::Work::add_pairs(int made, std::size_t up_to) {
  const int first = likeliest_in(made);
  const std::size_t before = scenarios.size();
  model->add_pairs_with(first, scenarios);
  repaired.resize(scenarios.size(), 0u);
  Look look(model->plant);
  for (std::size_t s = before; s < scenarios.size(); ++s) {
    model->likelihood.aim(look, scenarios[s], 0u);
    double weight = std::log(scenarios[s].prior) + std::log(model->likelihood.complaint(look));
    for (std::size_t i = 0; i < up_to; ++i) {
      const Entry& entry = record.entries[i];
      if (entry.kind == EntryKind::check) {
        weight += log_chance(entry, look);
        continue;
      }
      if (entry.answer.key != AnswerKey::same) continue;
      unsigned now = repaired[s];
      if (model->group_ids[static_cast<std::size_t>(model->group_of[static_cast<std::size_t>(scenarios[s].first)])] ==
          entry.id)
        now |= 1u;
      if (model->group_ids[static_cast<std::size_t>(model->group_of[static_cast<std::size_t>(scenarios[s].second)])] ==
          entry.id)
        now |= 2u;
      if (now == repaired[s]) continue;
      repaired[s] = now;
      model->likelihood.aim(look, scenarios[s], now);
      weight += now == 3u ? std::log(judged(Judged::repair_misses)) : std::log(model->likelihood.complaint(look));
    }
    log_weight.push_back(weight);
  }
}

void Tracer::Work::apply(const Entry& entry, std::size_t index) {
  if (entry.kind == EntryKind::check) apply_check(entry);
  else {
    normalise();
    apply_remedy(entry, index);
  }
}

std::vector<double> Tracer::Work::group_probability() const {
  std::vector<double> groups(model->group_ids.size(), 0.0);
  for (std::size_t s = 0; s < scenarios.size(); ++s) groups[static_cast<std::size_t>(group(s))] += probability[s];
  return groups;
}

int Tracer::Work::likeliest_in(int of_group) const {
  std::vector<double> by_hypothesis(model->hypotheses.size(), 0.0);
  for (std::size_t s = 0; s < probability.size(); ++s) {
    if (group(s) == of_group) by_hypothesis[static_cast<std::size_t>(open_fault(s))] += probability[s];
  }
  int best = -1;
  for (std::size_t h = 0; h < by_hypothesis.size(); ++h) {
    if (model->group_of[h] != of_group) continue;
    if (best < 0 || by_hypothesis[h] > by_hypothesis[static_cast<std::size_t>(best)]) best = static_cast<int>(h);
  }
  return best;
}

}  // namespace diagnosis
