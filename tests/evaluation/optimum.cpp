#include "evaluation/optimum.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <unordered_map>

#include "diagnosis/checks.h"

namespace evaluation {
namespace {

using diagnosis::Advice;
using diagnosis::AdviceKind;
using diagnosis::Check;
using diagnosis::Tracer;

// Answers less likely than this end the branch at no further cost, for the optimum and the engine alike.
constexpr double kUnlikely = 0.004;
constexpr double kLeastBits = 0.012;   // below this the engine itself sees nothing worth asking

double entropy(double p) { return p > 0.0 ? -p * std::log2(p) : 0.0; }

class Search {
 public:
  Search(const diagnosis::Case& the_case, std::size_t most_states)
      : hypotheses_(diagnosis::hypotheses(the_case)), most_states_(most_states) {
    const Tracer tracer(the_case);
    for (const Check& check : tracer.all_checks()) {
      if (!diagnosis::has_tools(check, the_case.tools)) continue;
      const bool shut = std::any_of(check.sites.begin(), check.sites.end(), [&](const diagnosis::Site& site) {
        return std::find(the_case.out_of_reach.begin(), the_case.out_of_reach.end(), site) != the_case.out_of_reach.end();
      });
      if (shut) continue;
      checks_.push_back(check);
      std::vector<std::vector<double>> table;
      for (const diagnosis::Hypothesis& each : hypotheses_) table.push_back(tracer.likelihood(each.fault, check.id));
      likelihood_.push_back(std::move(table));
    }
    for (const diagnosis::Hypothesis& each : hypotheses_) remedy_.push_back(diagnosis::remedy_id(each.fault));
  }

  [[nodiscard]] std::size_t checks() const { return checks_.size(); }
  [[nodiscard]] std::size_t states() const { return states_.size(); }
  [[nodiscard]] bool too_many() const { return states_.size() > most_states_; }

  // `key`: one letter for each check: not asked, or its answer; and the check asked last.
  double optimum(const Tracer& tracer, const std::string& key) {
    if (too_many()) return 0.0;
    const auto known = states_.find(key);
    if (known != states_.end()) return known->second;
    states_[key] = 0.0;
    if (tracer.next().kind != AdviceKind::check) return 0.0;
    double best = std::numeric_limits<double>::infinity();
    const std::vector<double> weights = posterior(tracer);
    for (std::size_t c = 0; c < checks_.size() && !too_many(); ++c) {
      if (key[c] != '.' || bits(weights, c) < kLeastBits) continue;
      best = std::min(best, after(tracer, key, c, weights, best,
                                  [&](const Tracer& then, const std::string& next) { return optimum(then, next); }));
    }
    if (std::isinf(best)) best = 0.0;
    states_[key] = best;
    return best;
  }

  double engine(const Tracer& tracer, const std::string& key) {
    const auto known = engine_.find(key);
    if (known != engine_.end()) return known->second;
    const Advice advice = tracer.next();
    double minutes = 0.0;
    if (advice.kind == AdviceKind::check) {
      for (std::size_t c = 0; c < checks_.size(); ++c) {
        if (checks_[c].id != advice.check->id) continue;
        minutes = after(tracer, key, c, posterior(tracer), std::numeric_limits<double>::infinity(),
                        [&](const Tracer& then, const std::string& next) { return engine(then, next); });
      }
    }
    engine_[key] = minutes;
    return minutes;
  }

 private:
  std::vector<double> posterior(const Tracer& tracer) const {
    std::vector<double> weights;
    for (const diagnosis::Hypothesis& each : hypotheses_) weights.push_back(tracer.probability(each.fault));
    return weights;
  }
  double chance(const std::vector<double>& weights, std::size_t c, std::size_t answer) const {
    double sum = 0.0;
    for (std::size_t h = 0; h < weights.size(); ++h) sum += weights[h] * likelihood_[c][h][answer];
    return sum;
  }
  double bits(const std::vector<double>& weights, std::size_t c) const {
    std::unordered_map<std::string, std::vector<double>> remedies;
    std::unordered_map<std::string, double> share;
    const std::size_t answers = checks_[c].choices.size();
    double result = 0.0;
    for (std::size_t h = 0; h < weights.size(); ++h) {
      auto& sums = remedies[remedy_[h]];
      sums.resize(answers, 0.0);
      share[remedy_[h]] += weights[h];
      for (std::size_t a = 0; a < answers; ++a) sums[a] += weights[h] * likelihood_[c][h][a];
    }
    for (const auto& [id, sums] : remedies) {
      for (const double joint : sums) result -= share[id] > 0.0 ? share[id] * entropy(joint / share[id]) : 0.0;
    }
    for (std::size_t a = 0; a < answers; ++a) result += entropy(chance(weights, c, a));
    return result;
  }
  template <class Then>
  double after(const Tracer& tracer, const std::string& key, std::size_t c, const std::vector<double>& weights,
               double not_above, Then then) {
    double minutes = tracer.minutes(checks_[c]);
    for (std::size_t a = 0; a < checks_[c].choices.size() && minutes < not_above; ++a) {
      const double p = chance(weights, c, a);
      if (p < kUnlikely) continue;
      Tracer next = tracer;
      next.observe(checks_[c].id, diagnosis::word(checks_[c].choices[a].key));
      std::string next_key = key;
      next_key[c] = static_cast<char>('a' + a);
      next_key.back() = static_cast<char>('A' + static_cast<int>(c));
      minutes += p * then(next, next_key);
    }
    return minutes;
  }

  std::vector<diagnosis::Hypothesis> hypotheses_;
  std::vector<std::string> remedy_;
  std::vector<Check> checks_;
  std::vector<std::vector<std::vector<double>>> likelihood_;   // by check, hypothesis, answer
  std::unordered_map<std::string, double> states_, engine_;
  std::size_t most_states_;
};

}  // namespace

std::optional<Best> best_minutes(const diagnosis::Case& the_case, std::size_t most_checks, std::size_t most_states) {
  Search search(the_case, most_states);
  if (search.checks() > most_checks || search.checks() == 0) return std::nullopt;
  const Tracer tracer(the_case);
  const std::string start = std::string(search.checks(), '.') + ' ';
  Best best;
  best.optimum = search.optimum(tracer, start);
  if (search.too_many()) return std::nullopt;
  best.engine = search.engine(tracer, start);
  best.checks = search.checks();
  best.states = search.states();
  return best;
}

}  // namespace evaluation
