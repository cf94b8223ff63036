#include "diagnosis/tracer.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/choice.h"
#include "diagnosis/explain.h"
#include "diagnosis/model.h"
#include "diagnosis/words.h"

namespace diagnosis {
namespace {

// Stop when the remedy at its place is this sure.
constexpr double kSure = 0.97;
// A check that promises less than this tells nothing worth its minutes.
constexpr double kLeastBits = 0.02;
// None of the faults known here explains the answers.
constexpr double kNoneFits = 0.5;
// A repair that was made and did not help: made badly, or made at the wrong place.
constexpr double kRepairMisses = 0.03;
constexpr double kSomeWeight = 0.01;
constexpr std::size_t kMostToTry = 5;

}  // namespace

struct Tracer::Work {
  std::shared_ptr<const Model> model;
  Record record;
  std::vector<Scenario> scenarios;
  std::vector<double> log_weight;
  std::vector<unsigned> repaired;
  std::vector<double> probability;
  std::vector<char> asked;                 // by check
  std::vector<Site> unreachable;
  std::vector<int> could_not;              // groups whose remedy could not be made
  std::vector<int> in_vain;                // groups whose remedy was made and did not help
  Setup setup;
  bool finished = false;
  mutable std::optional<Advice> advice;

  void start();
  void rebuild();
  void normalise();
  void apply(const Entry& entry, std::size_t index);
  void apply_check(const Entry& entry);
  void apply_remedy(const Entry& entry, std::size_t index);
  void add_pairs(int group, std::size_t up_to);
  double log_chance(const Entry& entry, Look& look) const;
  [[nodiscard]] int group(std::size_t s) const;
  [[nodiscard]] int open_fault(std::size_t s) const;   // hypothesis still to be put right, first
  [[nodiscard]] std::vector<double> group_probability() const;
  [[nodiscard]] bool within_reach(const Check& check) const;
  [[nodiscard]] std::vector<char> outlets_worth_a_look(std::vector<char>& parted) const;
  [[nodiscard]] std::vector<Candidate> candidates() const;
  [[nodiscard]] NextChoice next_check() const;
  [[nodiscard]] int likeliest_in(int group) const;     // hypothesis
  [[nodiscard]] bool was_tried(std::size_t group) const;
  [[nodiscard]] std::vector<Remedy> order_to_try(const std::vector<double>& groups) const;
  [[nodiscard]] std::optional<std::size_t> odd_entry() const;
  [[nodiscard]] Advice advise() const;
  void offer(Advice& advice, const NextChoice& choice) const;
  [[nodiscard]] std::vector<Outlook> outlooks(const Check& check) const;
  [[nodiscard]] const Check* check(std::string_view id) const {
    const auto found = model->check_index.find(id);
    return found == model->check_index.end() ? nullptr : &model->checks[static_cast<std::size_t>(found->second)];
  }
};

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
    if (asked_check->choices[c].key == entry.answer.word) return std::log(std::max(chances[c], 1e-300));
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
  if (entry.answer.word == "cant") {
    could_not.push_back(made);
    return;
  }
  finished = entry.answer.word == "works";
  if (finished) return;
  in_vain.push_back(made);
  add_pairs(made, index);
  Look look(model->plant);
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    const Scenario& scenario = scenarios[s];
    if (model->group_of[static_cast<std::size_t>(scenario.first)] == made && scenario.second < 0) {
      log_weight[s] += std::log(kRepairMisses);
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
      log_weight[s] += std::log(kRepairMisses);
      continue;
    }
    // What is left must keep the complaint alive.
    model->likelihood.aim(look, scenario, now);
    log_weight[s] += std::log(model->likelihood.complaint(look));
  }
  setup.state = {};
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
      if (entry.answer.word != "same") continue;
      unsigned now = repaired[s];
      if (model->group_ids[static_cast<std::size_t>(model->group_of[static_cast<std::size_t>(scenarios[s].first)])] == entry.id) now |= 1u;
      if (model->group_ids[static_cast<std::size_t>(model->group_of[static_cast<std::size_t>(scenarios[s].second)])] == entry.id) now |= 2u;
      if (now == repaired[s]) continue;
      repaired[s] = now;
      model->likelihood.aim(look, scenarios[s], now);
      weight += now == 3u ? std::log(kRepairMisses) : std::log(model->likelihood.complaint(look));
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

bool Tracer::Work::within_reach(const Check& one) const {
  return std::none_of(one.sites.begin(), one.sites.end(), [&](const Site& site) {
    return std::find(unreachable.begin(), unreachable.end(), site) != unreachable.end();
  });
}

// On a long circuit not every outlet is weighed: those that most is suspected of, and those that cut
// what is suspected into equal parts, where halving begins. `parted`: where parting a splice is weighed.
std::vector<char> Tracer::Work::outlets_worth_a_look(std::vector<char>& parted) const {
  constexpr std::size_t kAll = 8, kCuts = 7, kSuspected = 4, kParted = 2;
  const std::size_t n = model->plant.outlets();
  std::vector<char> worth(n, n <= kAll ? 1 : 0);
  parted.assign(n, n <= kParted ? 1 : 0);
  if (n <= kParted) return worth;
  std::vector<double> mass(n, 0.0);
  double sum = 0.0;
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    const int k = model->plant.outlet_index(model->hypotheses[static_cast<std::size_t>(open_fault(s))].fault.outlet);
    if (k >= 0) sum += (mass[static_cast<std::size_t>(k)] += probability[s], probability[s]);
  }
  double so_far = 0.0;
  for (std::size_t k = 0, cut = 1; k < n; ++k) {
    so_far += mass[k];
    for (; cut <= kCuts && so_far * (kCuts + 1) >= sum * static_cast<double>(cut); ++cut) worth[k] = 1;
  }
  std::vector<std::size_t> order(n);
  for (std::size_t k = 0; k < n; ++k) order[k] = k;
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return mass[a] > mass[b]; });
  for (std::size_t i = 0; i < std::min(kSuspected, n); ++i) {
    worth[order[i]] = 1;
    if (i < kParted) parted[order[i]] = 1;
  }
  // A short is halved by parting: the cut in the middle too.
  so_far = 0.0;
  for (std::size_t k = 0; k < n; ++k) {
    if (so_far < 0.5 * sum && so_far + mass[k] >= 0.5 * sum) parted[k] = 1;
    so_far += mass[k];
  }
  worth[static_cast<std::size_t>(complaint_outlets(model->the_case, model->plant).front())] = 1;
  return worth;
}

std::vector<Candidate> Tracer::Work::candidates() const {
  std::vector<Candidate> all;
  std::vector<char> parted;
  const std::vector<char> worth = outlets_worth_a_look(parted);
  const auto left_out = [&](const Check& one) {
    for (const Site& site : one.sites) {
      const int k = model->plant.outlet_index(site.outlet);
      if (k >= 0 && worth[static_cast<std::size_t>(k)] == 0) return true;
    }
    return one.state.parted_at && parted[static_cast<std::size_t>(model->plant.outlet_index(*one.state.parted_at))] == 0;
  };
  for (std::size_t c = 0; c < model->checks.size(); ++c) {
    const Check& one = model->checks[c];
    if (asked[c] != 0 || !has_tools(one, record.tools) || !within_reach(one) || left_out(one)) continue;
    all.push_back({static_cast<int>(c), minutes_for(one, setup, model->plant)});
  }
  return all;
}

NextChoice Tracer::Work::next_check() const {
  std::vector<Weighed> weighed;
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    if (probability[s] < 1e-7) continue;
    weighed.push_back({&scenarios[s], repaired[s], group(s), probability[s]});
  }
  return choose(*model, std::move(weighed), candidates(), setup);
}

bool Tracer::Work::was_tried(std::size_t one) const {
  return std::find(in_vain.begin(), in_vain.end(), static_cast<int>(one)) != in_vain.end();
}

std::vector<Remedy> Tracer::Work::order_to_try(const std::vector<double>& groups) const {
  std::vector<std::size_t> order;
  for (std::size_t g = 0; g < groups.size(); ++g) {
    const bool not_possible = std::find(could_not.begin(), could_not.end(), static_cast<int>(g)) != could_not.end();
    if (groups[g] > 0.01 && !not_possible && static_cast<int>(g) != model->unknown_group) order.push_back(g);
  }
  // The likely and the quick first: the order with the fewest minutes expected. What was made in vain comes last.
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (was_tried(a) != was_tried(b)) return was_tried(b);
    return groups[a] / model->group_minutes[a] > groups[b] / model->group_minutes[b];
  });
  if (order.size() > kMostToTry) order.resize(kMostToTry);
  std::vector<Remedy> remedies;
  for (const std::size_t g : order) {
    remedies.push_back(remedy_for(model->the_case, model->hypotheses[static_cast<std::size_t>(likeliest_in(static_cast<int>(g)))].fault));
  }
  return remedies;
}

// The answer without which the rest agrees best, when it agrees far better.
std::optional<std::size_t> Tracer::Work::odd_entry() const {
  constexpr double kFarBetter = 8.0;
  std::vector<std::size_t> informative;
  for (std::size_t i = 0; i < record.entries.size(); ++i) {
    const Entry& entry = record.entries[i];
    if (entry.kind == EntryKind::check && (entry.answer.kind == AnswerKind::word || entry.answer.kind == AnswerKind::reading)) informative.push_back(i);
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
    for (std::size_t i = 0; i < informative.size(); ++i) sum += logs[i] = log_chance(record.entries[informative[i]], look);
    with_all = std::max(with_all, sum);
    for (std::size_t i = 0; i < informative.size(); ++i) best[i] = std::max(best[i], sum - logs[i]);
  }
  const auto oddest = static_cast<std::size_t>(std::max_element(best.begin(), best.end()) - best.begin());
  if (best[oddest] - with_all < std::log(kFarBetter)) return std::nullopt;
  return informative[oddest];
}

std::vector<Outlook> Tracer::Work::outlooks(const Check& one) const {
  const std::size_t n = one.choices.size();
  std::vector<double> before(model->hypotheses.size(), 0.0);
  std::vector<std::vector<double>> after(n, before);
  std::vector<Outlook> all(n);
  Look look(model->plant);
  for (std::size_t s = 0; s < scenarios.size(); ++s) {
    if (probability[s] < 1e-6) continue;
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
      if (before[h] < 0.01 && after[c][h] < 0.05 * outlook.probability) continue;
      const double now = outlook.probability > 0.0 ? after[c][h] / outlook.probability : 0.0;
      if (now < 0.1 * before[h]) outlook.cleared.push_back(model->hypotheses[h].fault);
      if (now > 2.0 * before[h] && now > 0.02) outlook.raised.push_back(model->hypotheses[h].fault);
    }
    outlook.words = outlook_words(model->the_case, outlook);
  }
  return all;
}

void Tracer::Work::offer(Advice& made, const NextChoice& choice) const {
  if (choice.check < 0) return;
  made.check = model->checks[static_cast<std::size_t>(choice.check)];
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
  const std::vector<double> groups = group_probability();
  std::size_t top = groups.size();
  for (std::size_t g = 0; g < groups.size(); ++g) {
    const bool not_possible = std::find(could_not.begin(), could_not.end(), static_cast<int>(g)) != could_not.end();
    if (static_cast<int>(g) == model->unknown_group || not_possible) continue;
    // The same again only when nothing else has weight.
    const auto better = [&] {
      const bool again = was_tried(g) && groups[top] > kSomeWeight, instead = was_tried(top) && groups[g] > kSomeWeight;
      return was_tried(g) == was_tried(top) ? groups[g] > groups[top] : again ? false : instead ? true : groups[g] > groups[top];
    };
    if (top == groups.size() || better()) top = g;
  }
  const double unknown = groups[static_cast<std::size_t>(model->unknown_group)];
  if (unknown > kNoneFits) {
    made.kind = AdviceKind::none_fits;
    made.odd_entry = odd_entry();
    made.words = made.odd_entry ? "These answers do not go together. One of them stands out: take it again."
                                : "Nothing known here explains all of these answers.";
    made.to_try = order_to_try(groups);
    offer(made, next_check());
    return made;
  }
  const double sure = groups[top] / (1.0 - unknown);
  if (sure >= kSure) {
    made.kind = AdviceKind::remedy;
    made.probability = groups[top];
    made.remedy = remedy_for(model->the_case, model->hypotheses[static_cast<std::size_t>(likeliest_in(static_cast<int>(top)))].fault);
    made.words = remedy_words(made.probability);
    return made;
  }
  const NextChoice choice = next_check();
  if (choice.check < 0 || choice.most_bits < kLeastBits) {
    made.kind = AdviceKind::cannot_tell;
    made.to_try = order_to_try(groups);
    if (made.to_try.empty()) {
      made.remedy = remedy_for(model->the_case, Fault{});
      made.to_try.push_back(*made.remedy);
    } else {
      made.remedy = made.to_try.front();
    }
    made.probability = groups[top];
    made.words = made.to_try.size() == 1 ? "Nothing more can be told with what is in hand. Try this."
                                         : "Nothing in hand can tell these apart. Try them in this order, re-testing after each.";
    return made;
  }
  made.kind = AdviceKind::check;
  made.probability = groups[top];
  offer(made, choice);
  made.words = why_words(model->the_case, made.outlooks);
  return made;
}

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
std::vector<Check> Tracer::all_checks() const { return work_->model->checks; }
std::optional<Check> Tracer::find_check(std::string_view id) const {
  const Check* found = work_->check(id);
  return found == nullptr ? std::nullopt : std::optional<Check>(*found);
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
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return by_hypothesis[a] > by_hypothesis[b]; });
  std::vector<Suspect> all;
  for (const std::size_t h : order) {
    if (all.size() >= at_most) break;
    Suspect suspect;
    suspect.fault = w.model->hypotheses[h].fault;
    suspect.probability = by_hypothesis[h];
    suspect.words = fault_words(the_case(), suspect.fault);
    suspect.remedy_id = w.model->group_ids[static_cast<std::size_t>(w.model->group_of[h])];
    if (partner[h] >= 0 && best_pair[h] > 0.5 * by_hypothesis[h]) {
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
    if (scenario.second < 0 && work_->model->hypotheses[static_cast<std::size_t>(scenario.first)].fault == fault) sum += work_->probability[s];
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
    if (done == nullptr || (entry.answer.kind != AnswerKind::word && entry.answer.kind != AnswerKind::reading)) continue;
    w.model->likelihood.aim(look, *scenario, 0u);
    const double own = w.log_chance(entry, look);
    double mean = 0.0;   // over the faults that there were at first
    for (std::size_t h = 0; h < w.model->hypotheses.size(); ++h) {
      w.model->likelihood.aim(other, w.model->typical[h], 0u);
      mean += w.model->hypotheses[h].prior * std::exp(w.log_chance(entry, other));
    }
    const double ratio = std::exp(own) / mean;
    if (ratio > 0.5 && ratio < 2.0) continue;
    Evidence evidence;
    evidence.entry = i;
    evidence.speaks_for = ratio >= 2.0;
    evidence.words = evidence_words(the_case(), *done, entry.answer, w.model->likelihood.value(*done, look));
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
    if (scenario.second >= 0 || !(work_->model->hypotheses[static_cast<std::size_t>(scenario.first)].fault == fault)) continue;
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
  if (std::find(ids.begin(), ids.end(), remedy_id) == ids.end()) return {false, "There is no such repair on this circuit."};
  const std::string_view outcome = result == RetestResult::works ? "works" : result == RetestResult::same ? "same" : "cant";
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

Replay replay(const circuit::Circuit& circuit, const network::Fitted& fitted, const Record& record, bool fuse_told) {
  std::vector<std::string> dropped;
  Case the_case{circuit, fitted, record.neighbours, record.complaint, record.tools, record.out_of_reach, fuse_told};
  std::erase_if(the_case.complaint.outlets, [&](circuit::OutletId id) {
    if (circuit::find_outlet(circuit, id) != nullptr) return false;
    dropped.push_back(joined({"The complaint named outlet ", std::to_string(id.number), ", which is gone."}));
    return true;
  });
  if (the_case.complaint.outlets.empty() && symptom_row(the_case.complaint.symptom).names_outlets) {
    the_case.complaint.symptom = Symptom::all_dead;
  }
  if (the_case.complaint.symptom == Symptom::several_dead && the_case.complaint.outlets.size() == 1) {
    the_case.complaint.symptom = Symptom::one_dead;
  }
  Tracer tracer(std::move(the_case));
  for (const Entry& entry : record.entries) {
    Receipt receipt;
    if (entry.kind == EntryKind::check) {
      receipt = tracer.observe(entry.id, entry.answer);
    } else {
      const RetestResult result = entry.answer.word == "works" ? RetestResult::works
                                  : entry.answer.word == "same" ? RetestResult::same
                                                                : RetestResult::cant;
      receipt = tracer.after_remedy(entry.id, result);
    }
    if (!receipt.taken) dropped.push_back(joined({"\"", entry.id, "\" no longer applies to this circuit."}));
  }
  return {std::move(tracer), std::move(dropped)};
}

}  // namespace diagnosis
