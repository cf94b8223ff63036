#include "diagnosis/tracer.h"

#include <cmath>

#include "diagnosis/explain.h"
#include "diagnosis/judgement_constants.h"
#include "diagnosis/trace_work.h"

namespace diagnosis {

Tracer::Tracer(Case the_case) : work_(std::make_unique<Work>()) {
  work_->record = {the_case.complaint, the_case.tools, the_case.out_of_reach, the_case.neighbours, {}};
  work_->model = std::make_shared<const Model>(std::move(the_case));
  work_->start();
}
Tracer::~Tracer() = default;
Tracer::Tracer(const Tracer& other) : work_(std::make_unique<Work>(*other.work_)) {}
Tracer& Tracer::operator=(const Tracer& other) {
  if (this != &other) work_ = std::make_unique<Work>(*other.work_);
  return *this;
}
Tracer::Tracer(Tracer&&) noexcept = default;
Tracer& Tracer::operator=(Tracer&&) noexcept = default;

const Case& Tracer::the_case() const { return work_->model->the_case; }
const Record& Tracer::record() const { return work_->record; }
std::vector<Check> Tracer::all_checks() const {
  std::vector<Check> all;
  for (const Check& each : work_->model->checks) all.push_back(work_->model->worded(each));
  return all;
}
std::optional<Check> Tracer::find_check(std::string_view id) const {
  const Check* found = work_->check(id);
  return found == nullptr ? std::nullopt : std::optional<Check>(work_->model->worded(*found));
}

Advice Tracer::next() const {
  if (!work_->advice) work_->advice = work_->advise();
  return *work_->advice;
}

std::vector<Suspect> Tracer::suspects(std::size_t at_most) const {
  const Work& w = *work_;
  std::vector<double> by_hypothesis(w.model->hypotheses.size(), 0.0);
  std::vector<double> best_pair(w.model->hypotheses.size(), 0.0);
  std::vector<int> partner(w.model->hypotheses.size(), -1);
  for (std::size_t s = 0; s < w.scenarios.size(); ++s) {
    const auto h = static_cast<std::size_t>(w.open_fault(s));
    by_hypothesis[h] += w.probability[s];
    const bool both = w.scenarios[s].second >= 0 && w.repaired[s] == 0u;
    if (both && w.probability[s] > best_pair[h]) {
      best_pair[h] = w.probability[s];
      partner[h] = w.scenarios[s].second;
    }
  }
  std::vector<std::size_t> order(by_hypothesis.size());
  for (std::size_t h = 0; h < order.size(); ++h) order[h] = h;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return by_hypothesis[a] > by_hypothesis[b]; });
  std::vector<Suspect> all;
  for (const std::size_t h : order) {
    if (all.size() >= at_most) break;
    Suspect suspect;
    suspect.fault = w.model->hypotheses[h].fault;
    suspect.probability = by_hypothesis[h];
    suspect.words = fault_words(the_case(), suspect.fault);
    suspect.remedy_id = w.model->group_ids[static_cast<std::size_t>(w.model->group_of[h])];
    if (partner[h] >= 0 && best_pair[h] > judged(Judged::pair_told_from) * by_hypothesis[h]) {
      suspect.with = w.model->hypotheses[static_cast<std::size_t>(partner[h])].fault;
    }
    all.push_back(std::move(suspect));
  }
  return all;
}

double Tracer::probability(const Fault& fault) const {
  double sum = 0.0;
  for (std::size_t s = 0; s < work_->scenarios.size(); ++s) {
    const Scenario& scenario = work_->scenarios[s];
    if (scenario.second < 0 && work_->model->hypotheses[static_cast<std::size_t>(scenario.first)].fault == fault)
      sum += work_->probability[s];
  }
  return sum;
}

double Tracer::total() const {
  double sum = 0.0;
  for (const double each : work_->probability) sum += each;
  return sum;
}

namespace {

const Scenario* typical_of(const Model& model, const Fault& fault) {
  for (std::size_t h = 0; h < model.hypotheses.size(); ++h) {
    if (model.hypotheses[h].fault == fault) return &model.typical[h];
  }
  return nullptr;
}

}  // namespace

std::vector<Evidence> Tracer::evidence(const Suspect& suspect) const {
  const Work& w = *work_;
  std::vector<Evidence> all;
  const Scenario* scenario = typical_of(*w.model, suspect.fault);
  if (scenario == nullptr) return all;
  Look look(w.model->plant), other(w.model->plant);
  for (std::size_t i = 0; i < w.record.entries.size(); ++i) {
    const Entry& entry = w.record.entries[i];
    const Check* done = entry.kind == EntryKind::check ? w.check(entry.id) : nullptr;
    if (done == nullptr || (entry.answer.kind != AnswerKind::word && entry.answer.kind != AnswerKind::reading))
      continue;
    w.model->likelihood.aim(look, *scenario, 0u);
    const double own = w.log_chance(entry, look);
    double mean = 0.0;  // over the faults that there were at first
    for (std::size_t h = 0; h < w.model->hypotheses.size(); ++h) {
      w.model->likelihood.aim(other, w.model->typical[h], 0u);
      mean += w.model->hypotheses[h].prior * std::exp(w.log_chance(entry, other));
    }
    const double ratio = std::exp(own) / mean;
    if (ratio > 1.0 / judged(Judged::evidence_ratio) && ratio < judged(Judged::evidence_ratio)) continue;
    Evidence evidence;
    evidence.entry = i;
    evidence.speaks_for = ratio >= judged(Judged::evidence_ratio);
    evidence.words =
        evidence_words(the_case(), w.model->worded(*done), entry.answer, w.model->likelihood.value(*done, look));
    all.push_back(std::move(evidence));
  }
  return all;
}

std::optional<double> Tracer::predicted(const Fault& fault, std::string_view check_id) const {
  const Check* one = work_->check(check_id);
  const Scenario* scenario = typical_of(*work_->model, fault);
  if (one == nullptr || scenario == nullptr) return std::nullopt;
  Look look(work_->model->plant);
  work_->model->likelihood.aim(look, *scenario, 0u);
  return work_->model->likelihood.value(*one, look);
}

std::vector<double> Tracer::likelihood(const Fault& fault, std::string_view check_id) const {
  const Check* one = work_->check(check_id);
  if (one == nullptr) return {};
  std::vector<double> mean(one->choices.size(), 0.0);
  double sum = 0.0;
  Look look(work_->model->plant);
  for (const Scenario& scenario : work_->model->scenarios) {
    if (scenario.second >= 0 || !(work_->model->hypotheses[static_cast<std::size_t>(scenario.first)].fault == fault))
      continue;
    work_->model->likelihood.aim(look, scenario, 0u);
    const Chances chances = work_->model->likelihood.chances(*one, look);
    sum += scenario.prior;
    for (std::size_t c = 0; c < mean.size(); ++c) mean[c] += scenario.prior * chances[c];
  }
  for (double& each : mean) each /= sum;
  return mean;
}

double Tracer::minutes(const Check& check) const {
  const Check* own = work_->check(check.id);
  return minutes_for(own != nullptr ? *own : check, work_->setup, work_->model->plant);
}

Receipt Tracer::observe(std::string_view check_id, const Answer& answer) {
  const Check* one = work_->check(check_id);
  if (one == nullptr) return {false, "There is no such check on this circuit."};
  Receipt receipt = judge_answer(the_case(), work_->model->plant.emf_v(), *one, answer);
  if (!receipt.taken) return receipt;
  work_->record.entries.push_back({EntryKind::check, std::string(check_id), answer});
  work_->apply(work_->record.entries.back(), work_->record.entries.size() - 1);
  work_->finished = false;
  work_->normalise();
  return receipt;
}

Receipt Tracer::after_remedy(std::string_view remedy_id, RetestResult result) {
  const auto& ids = work_->model->group_ids;
  if (std::find(ids.begin(), ids.end(), remedy_id) == ids.end())
    return {false, "There is no such repair on this circuit."};
  const AnswerKey outcome = result == RetestResult::works  ? AnswerKey::works
                            : result == RetestResult::same ? AnswerKey::same
                            : result == RetestResult::blew ? AnswerKey::blows_at_once
                                                           : AnswerKey::cant;
  work_->record.entries.push_back({EntryKind::remedy, std::string(remedy_id), word(outcome)});
  work_->apply(work_->record.entries.back(), work_->record.entries.size() - 1);
  work_->normalise();
  return {true, {}};
}

bool Tracer::undo() {
  if (work_->record.entries.empty()) return false;
  work_->record.entries.pop_back();
  work_->rebuild();
  return true;
}

Receipt Tracer::retake(std::size_t entry, const Answer& answer) {
  if (entry >= work_->record.entries.size() || work_->record.entries[entry].kind != EntryKind::check) {
    return {false, "There is no such answer to take again."};
  }
  const Check* one = work_->check(work_->record.entries[entry].id);
  if (one == nullptr) return {false, "There is no such check on this circuit."};
  Receipt receipt = judge_answer(the_case(), work_->model->plant.emf_v(), *one, answer);
  if (!receipt.taken) return receipt;
  work_->record.entries[entry].answer = answer;
  work_->rebuild();
  return receipt;
}

}  // namespace diagnosis
