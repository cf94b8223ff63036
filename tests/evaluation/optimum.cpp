#include "evaluation/optimum.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <unordered_map>

#include "diagnosis/checks.h"
#include "diagnosis/plant.h"
#include "evaluation/installation.h"
#include "evaluation/patience.h"

namespace evaluation {
namespace {

using diagnosis::Advice;
using diagnosis::AdviceKind;
using diagnosis::Check;
using diagnosis::Tracer;

// Answers less likely than this end the branch at no further cost, for the optimum and the engine alike.
constexpr double kUnlikely = 0.01;
double entropy(double p) { return p > 0.0 ? -p * std::log2(p) : 0.0; }

class Search {
 public:
  Search(const diagnosis::Case& the_case, std::size_t most_states)
      : hypotheses_(diagnosis::hypotheses(the_case)), plant_(the_case), most_states_(most_states) {
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
    std::vector<std::string> ids;
    for (const diagnosis::Hypothesis& each : hypotheses_) {
      const std::string id = diagnosis::remedy_id(each.fault);
      const auto found = std::find(ids.begin(), ids.end(), id);
      remedy_.push_back(static_cast<std::size_t>(found - ids.begin()));
      if (found == ids.end()) ids.push_back(id);
      if (each.fault.kind == diagnosis::FaultKind::none_of_these) unknown_ = remedy_.back();
    }
    remedies_ = ids.size();
  }

  [[nodiscard]] std::size_t checks() const { return checks_.size(); }
  [[nodiscard]] std::size_t states() const { return states_.size(); }
  [[nodiscard]] bool too_many() const { return states_.size() > most_states_; }
  [[nodiscard]] std::size_t other_stops() const { return other_stops_; }

  std::vector<double> posterior(const Tracer& tracer) const {
    std::vector<double> weights;
    double sum = 0.0;   // single faults only: pairs have no likelihood of their own to ask for
    for (const diagnosis::Hypothesis& each : hypotheses_) {
      weights.push_back(tracer.probability(each.fault));
      sum += weights.back();
    }
    for (double& weight : weights) weight /= sum;
    return weights;
  }

  // `weights` sum to one. `key`: one letter for each check: not asked, or its answer; and the one asked last.
  double optimum(const std::vector<double>& weights, const diagnosis::Setup& setup, const std::string& key) {
    if (too_many()) return 0.0;
    const auto known = states_.find(key);
    if (known != states_.end()) return known->second;
    states_[key] = 0.0;
    const std::vector<std::size_t> worth = worth_asking(weights, key);
    double best = worth.empty() ? 0.0 : std::numeric_limits<double>::infinity();
    for (const std::size_t c : worth) {
      double minutes = diagnosis::minutes_for(checks_[c], setup, plant_);
      diagnosis::Setup then = setup;
      diagnosis::leave_behind(checks_[c], then);
      for (std::size_t a = 0; a < checks_[c].choices.size() && minutes < best; ++a) {
        const double p = chance(weights, c, a);
        if (p >= kUnlikely) minutes += p * optimum(given(weights, c, a, p), then, next_key(key, c, a));
      }
      best = std::min(best, minutes);
    }
    states_[key] = best;
    return best;
  }

  double greedy(const std::vector<double>& weights, const diagnosis::Setup& setup, const std::string& key) const {
    const std::vector<std::size_t> worth = worth_asking(weights, key);
    if (worth.empty()) return 0.0;
    const std::vector<double> share = shares(weights);
    const auto rate = [&](std::size_t c) { return bits(weights, share, c) / diagnosis::minutes_for(checks_[c], setup, plant_); };
    const std::size_t c = *std::max_element(worth.begin(), worth.end(),
                                            [&](std::size_t a, std::size_t b) { return rate(a) < rate(b); });
    double minutes = diagnosis::minutes_for(checks_[c], setup, plant_);
    diagnosis::Setup then = setup;
    diagnosis::leave_behind(checks_[c], then);
    for (std::size_t a = 0; a < checks_[c].choices.size(); ++a) {
      const double p = chance(weights, c, a);
      if (p >= kUnlikely) minutes += p * greedy(given(weights, c, a, p), then, next_key(key, c, a));
    }
    return minutes;
  }

  // Both pay up to the same stop: where the engine would go on past it, it is cut off; where it would stop
  // before it, it goes on as well as can be.
  double engine(const Tracer& tracer, const diagnosis::Setup& setup, const std::string& key) {
    const std::vector<double> weights = posterior(tracer);
    const Advice advice = tracer.next();
    const bool stops = advice.kind != AdviceKind::check;
    const bool stop = worth_asking(weights, key).empty();
    if (stops != stop) ++other_stops_;
    if (stop) return 0.0;
    if (stops) return optimum(weights, setup, key);
    const auto found = std::find_if(checks_.begin(), checks_.end(), [&](const Check& c) { return c.id == advice.check->id; });
    const auto c = static_cast<std::size_t>(found - checks_.begin());
    double minutes = diagnosis::minutes_for(*found, setup, plant_);
    diagnosis::Setup after = setup;
    diagnosis::leave_behind(*found, after);
    for (std::size_t a = 0; a < found->choices.size(); ++a) {
      const double p = chance(weights, c, a);
      if (p < kUnlikely) continue;
      Tracer then = tracer;
      then.observe(found->id, diagnosis::word(found->choices[a].key));
      minutes += p * engine(then, after, next_key(key, c, a));
    }
    return minutes;
  }

 private:
  static std::string next_key(std::string key, std::size_t c, std::size_t answer) {
    key[c] = static_cast<char>('a' + static_cast<int>(answer));
    key.back() = static_cast<char>('A' + static_cast<int>(c));
    return key;
  }
  double chance(const std::vector<double>& weights, std::size_t c, std::size_t answer) const {
    double sum = 0.0;
    for (std::size_t h = 0; h < weights.size(); ++h) sum += weights[h] * likelihood_[c][h][answer];
    return sum;
  }
  std::vector<double> given(const std::vector<double>& weights, std::size_t c, std::size_t answer, double p) const {
    std::vector<double> then = weights;
    for (std::size_t h = 0; h < then.size(); ++h) then[h] *= likelihood_[c][h][answer] / p;
    return then;
  }
  std::vector<double> shares(const std::vector<double>& weights) const {
    std::vector<double> share(remedies_, 0.0);
    for (std::size_t h = 0; h < weights.size(); ++h) share[remedy_[h]] += weights[h];
    return share;
  }
  // Checks not yet asked that can tell something; none when it is time to stop.
  std::vector<std::size_t> worth_asking(const std::vector<double>& weights, const std::string& key) const {
    std::vector<double> share = shares(weights);
    const double unknown = share[unknown_];
    share[unknown_] = 0.0;
    const double top = *std::max_element(share.begin(), share.end());
    share[unknown_] = unknown;
    std::vector<std::size_t> worth;
    if (top >= kSureEnough * (1.0 - unknown) || unknown > 0.5) return worth;
    for (std::size_t c = 0; c < checks_.size(); ++c) {
      if (key[c] == '.' && bits(weights, share, c) >= kLeastBits) worth.push_back(c);
    }
    return worth;
  }
  double bits(const std::vector<double>& weights, const std::vector<double>& share, std::size_t c) const {
    double result = 0.0;
    std::vector<double> joint(remedies_);
    for (std::size_t a = 0; a < checks_[c].choices.size(); ++a) {
      std::fill(joint.begin(), joint.end(), 0.0);
      double sum = 0.0;
      for (std::size_t h = 0; h < weights.size(); ++h) {
        joint[remedy_[h]] += weights[h] * likelihood_[c][h][a];
        sum += weights[h] * likelihood_[c][h][a];
      }
      result += entropy(sum);
      for (std::size_t g = 0; g < remedies_; ++g) {
        if (share[g] > 0.0) result -= share[g] * entropy(joint[g] / share[g]);
      }
    }
    return result;
  }

  std::vector<diagnosis::Hypothesis> hypotheses_;
  diagnosis::Plant plant_;
  std::vector<std::size_t> remedy_;   // by hypothesis
  std::size_t remedies_ = 0, unknown_ = 0, other_stops_ = 0;
  std::vector<Check> checks_;
  std::vector<std::vector<std::vector<double>>> likelihood_;   // by check, hypothesis, answer
  std::unordered_map<std::string, double> states_;
  std::size_t most_states_;
};

// Shuts places until few checks are left: behind the outlets, or the block, and mostly the battery.
void shut_places(diagnosis::Case& made, Engine& engine) {
  using diagnosis::Location;
  const bool block_shut = chance(engine, 0.5);
  if (block_shut) made.out_of_reach.push_back({Location::block, circuit::kBlock});
  for (const circuit::Outlet& outlet : made.circuit.outlets) {
    if (!block_shut) made.out_of_reach.push_back({Location::behind, outlet.id});
  }
  if (chance(engine, 0.7)) made.out_of_reach.push_back({Location::battery, circuit::kBlock});
  made.tools.spare_fuse = chance(engine, 0.4);
  made.tools.lamp = false;
  made.tools.meter = false;
  made.tools.device = chance(engine, 0.5);
  if (made.neighbours.size() > 1) made.neighbours.resize(1);
}

}  // namespace

diagnosis::Case small_case(std::uint64_t seed, std::size_t k) {
  Engine engine(hash_of("optimum", seed * 1000003u + k));
  diagnosis::Case made = draw_breakdown(engine, Kit::device_only, 2).the_case;
  shut_places(made, engine);
  return made;
}

std::optional<Best> best_minutes(const diagnosis::Case& the_case, std::size_t most_checks, std::size_t most_states) {
  Search search(the_case, most_states);
  if (search.checks() > most_checks || search.checks() == 0) return std::nullopt;
  const Tracer tracer(the_case);
  const std::string start = std::string(search.checks(), '.') + ' ';
  Best best;
  best.optimum = search.optimum(search.posterior(tracer), {}, start);
  if (search.too_many()) return std::nullopt;
  best.engine = search.engine(tracer, {}, start);
  best.greedy = search.greedy(search.posterior(tracer), {}, start);
  best.checks = search.checks();
  best.states = search.states();
  best.other_stops = search.other_stops();
  return best;
}

}  // namespace evaluation
