#include "diagnosis/choice.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/judgement_constants.h"

namespace diagnosis {
namespace {

double p_log_p(double p) { return p > 0.0 ? p * std::log2(p) : 0.0; }

// Chances of every answer, laid out by candidate, then scenario.
struct Grid {
  std::size_t scenarios = 0;
  std::vector<std::size_t> choices;  // by candidate
  std::vector<std::size_t> first;    // by candidate, in chance
  std::vector<float> chance;
  [[nodiscard]] const float* at(std::size_t candidate, std::size_t scenario) const {
    return chance.data() + first[candidate] + scenario * choices[candidate];
  }
};

void keep_the_likely(std::vector<Weighed>& weighed) {
  std::sort(weighed.begin(), weighed.end(),
            [](const Weighed& a, const Weighed& b) { return a.probability > b.probability; });
  double sum = 0.0;
  std::size_t kept = 0;
  while (kept < weighed.size() && kept < judged_count(Judged::most_scenarios) &&
         (sum < judged(Judged::covered) || kept < 2))
    sum += weighed[kept++].probability;
  weighed.resize(kept);
  for (Weighed& each : weighed) each.probability /= sum;
  std::stable_sort(weighed.begin(), weighed.end(),
                   [](const Weighed& a, const Weighed& b) { return a.group < b.group; });
}

double entropy_of_groups(const std::vector<Weighed>& weighed, const std::vector<double>& probability) {
  double sum = 0.0, group = 0.0;
  for (std::size_t s = 0; s < weighed.size(); ++s) {
    group += probability[s];
    if (s + 1 == weighed.size() || weighed[s + 1].group != weighed[s].group) {
      sum -= p_log_p(group);
      group = 0.0;
    }
  }
  return sum;
}

// Information from one candidate, in bits, when scenario s has probability[s] (sums to `total`).
double information(const std::vector<Weighed>& weighed, const std::vector<double>& probability, const Grid& grid,
                   std::size_t candidate, double prior_entropy) {
  const std::size_t n = grid.choices[candidate];
  Chances answer{}, group{};
  double joint = 0.0;
  for (std::size_t s = 0; s < weighed.size(); ++s) {
    const float* chance = grid.at(candidate, s);
    for (std::size_t c = 0; c < n; ++c) group[c] += probability[s] * static_cast<double>(chance[c]);
    if (s + 1 == weighed.size() || weighed[s + 1].group != weighed[s].group) {
      for (std::size_t c = 0; c < n; ++c) {
        joint += p_log_p(group[c]);
        answer[c] += group[c];
        group[c] = 0.0;
      }
    }
  }
  double marginal = 0.0;
  for (std::size_t c = 0; c < n; ++c) marginal += p_log_p(answer[c]);
  return prior_entropy - (marginal - joint);
}

Grid fill(const Model& model, const std::vector<Weighed>& weighed, const std::vector<Candidate>& candidates) {
  Grid grid;
  grid.scenarios = weighed.size();
  std::size_t room = 0;
  for (const Candidate& each : candidates) {
    grid.choices.push_back(model.checks[static_cast<std::size_t>(each.check)].choices.size());
    grid.first.push_back(room);
    room += grid.choices.back() * weighed.size();
  }
  grid.chance.resize(room);
  Look look(model.plant);
  for (std::size_t s = 0; s < weighed.size(); ++s) {
    model.likelihood.aim(look, *weighed[s].scenario, weighed[s].repaired);
    for (std::size_t c = 0; c < candidates.size(); ++c) {
      const Chances chances =
          model.likelihood.coarse_chances(model.checks[static_cast<std::size_t>(candidates[c].check)], look);
      float* to = grid.chance.data() + grid.first[c] + s * grid.choices[c];
      for (std::size_t a = 0; a < grid.choices[c]; ++a) to[a] = static_cast<float>(chances[a]);
    }
  }
  return grid;
}

// What a first check leads to. Its own bits and, after each answer, those of the best second check,
// each less the price of its minutes, counted from where the first one leaves the person. (Bits of both over
// minutes of both would not do: it does not see which of the two comes first, and puts off the better one.)
class Ahead {
 public:
  Ahead(const Model& model, const Setup& setup, const std::vector<Weighed>& weighed,
        const std::vector<double>& probability, const Grid& grid, const std::vector<Candidate>& candidates,
        const std::vector<std::size_t>& seconds)
      : model_(model),
        setup_(setup),
        weighed_(weighed),
        probability_(probability),
        grid_(grid),
        candidates_(candidates),
        seconds_(seconds),
        after_(weighed.size()),
        minutes_(seconds.size()) {}

  double worth(std::size_t first, double own_bits, double price) {
    Setup then = setup_;
    leave_behind(check(first), then);
    for (std::size_t j = 0; j < seconds_.size(); ++j) minutes_[j] = minutes_for(check(seconds_[j]), then, model_.plant);
    double net = own_bits - price * candidates_[first].minutes;
    for (std::size_t c = 0; c < grid_.choices[first]; ++c) net += after_answer(first, c, price);
    return net;
  }

 private:
  [[nodiscard]] const Check& check(std::size_t candidate) const {
    return model_.checks[static_cast<std::size_t>(candidates_[candidate].check)];
  }
  double after_answer(std::size_t first, std::size_t answer, double price) {
    double sum = 0.0;
    for (std::size_t s = 0; s < weighed_.size(); ++s) {
      sum += after_[s] = probability_[s] * static_cast<double>(grid_.at(first, s)[answer]);
    }
    if (sum < judged(Judged::rare_answer)) return 0.0;
    for (double& each : after_) each /= sum;
    const double left = entropy_of_groups(weighed_, after_);
    if (left < judged(Judged::sure_by_then)) return 0.0;
    double best = 0.0;
    for (std::size_t j = 0; j < seconds_.size(); ++j) {
      // All that is left is the most that any check can tell.
      if (seconds_[j] == first || left - price * minutes_[j] <= best) continue;
      best = std::max(best, information(weighed_, after_, grid_, seconds_[j], left) - price * minutes_[j]);
    }
    return sum * best;
  }

  const Model& model_;
  const Setup& setup_;
  const std::vector<Weighed>& weighed_;
  const std::vector<double>& probability_;
  const Grid& grid_;
  const std::vector<Candidate>& candidates_;
  const std::vector<std::size_t>& seconds_;
  std::vector<double> after_, minutes_;  // room to work in
};

}  // namespace

NextChoice choose(const Model& model, std::vector<Weighed> weighed, const std::vector<Candidate>& candidates,
                  const Setup& setup) {
  NextChoice best;
  if (candidates.empty() || weighed.empty()) return best;
  keep_the_likely(weighed);
  const Grid grid = fill(model, weighed, candidates);
  std::vector<double> probability;
  for (const Weighed& each : weighed) probability.push_back(each.probability);
  const double prior_entropy = entropy_of_groups(weighed, probability);

  std::vector<double> bits(candidates.size());
  std::vector<std::size_t> order(candidates.size());
  for (std::size_t c = 0; c < candidates.size(); ++c) {
    bits[c] = information(weighed, probability, grid, c, prior_entropy);
    order[c] = c;
  }
  const auto rate = [&](std::size_t c) { return bits[c] / candidates[c].minutes; };
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return rate(a) > rate(b); });
  std::size_t chosen = order.front();

  if (weighed.size() * candidates.size() <= judged_count(Judged::cheap_products)) {
    const double price = judged(Judged::price_of_minutes) * rate(chosen);
    std::vector<std::size_t> leading = order;
    leading.resize(std::min(judged_count(Judged::seconds), leading.size()));
    Ahead ahead(model, setup, weighed, probability, grid, candidates, leading);
    double most = -1e300;
    for (std::size_t i = 0; i < std::min(judged_count(Judged::starts), order.size()); ++i) {
      if (bits[order[i]] < judged(Judged::least_start_bits)) continue;
      const double worth = ahead.worth(order[i], bits[order[i]], price);
      if (worth > most) {
        most = worth;
        chosen = order[i];
      }
    }
  }
  best.check = candidates[chosen].check;
  best.bits = bits[chosen];
  best.most_bits = *std::max_element(bits.begin(), bits.end());
  best.minutes = candidates[chosen].minutes;
  return best;
}

}  // namespace diagnosis
