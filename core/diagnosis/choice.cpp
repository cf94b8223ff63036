#include "diagnosis/choice.h"

#include <algorithm>
#include <cmath>

namespace diagnosis {
namespace {

// Enough of the posterior to choose by; the inference itself leaves nothing out.
constexpr double kCovered = 0.99;
constexpr std::size_t kMostScenarios = 200;
// Two steps ahead costs scenarios x candidates x starts; above this many products one step must do.
constexpr std::size_t kCheapProducts = 60'000;
constexpr std::size_t kStarts = 5;

double p_log_p(double p) { return p > 0.0 ? p * std::log2(p) : 0.0; }

// Chances of every answer, laid out by candidate, then scenario.
struct Grid {
  std::size_t scenarios = 0;
  std::vector<std::size_t> choices;      // by candidate
  std::vector<std::size_t> first;        // by candidate, in chance
  std::vector<float> chance;
  [[nodiscard]] const float* at(std::size_t candidate, std::size_t scenario) const {
    return chance.data() + first[candidate] + scenario * choices[candidate];
  }
};

void keep_the_likely(std::vector<Weighed>& weighed) {
  std::sort(weighed.begin(), weighed.end(), [](const Weighed& a, const Weighed& b) { return a.probability > b.probability; });
  double sum = 0.0;
  std::size_t kept = 0;
  while (kept < weighed.size() && kept < kMostScenarios && (sum < kCovered || kept < 2)) sum += weighed[kept++].probability;
  weighed.resize(kept);
  for (Weighed& each : weighed) each.probability /= sum;
  std::stable_sort(weighed.begin(), weighed.end(), [](const Weighed& a, const Weighed& b) { return a.group < b.group; });
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
      const Chances chances = model.likelihood.coarse_chances(model.checks[static_cast<std::size_t>(candidates[c].check)], look);
      float* to = grid.chance.data() + grid.first[c] + s * grid.choices[c];
      for (std::size_t a = 0; a < grid.choices[c]; ++a) to[a] = static_cast<float>(chances[a]);
    }
  }
  return grid;
}

}  // namespace

NextChoice choose(const Model& model, std::vector<Weighed> weighed, const std::vector<Candidate>& candidates) {
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

  if (weighed.size() * candidates.size() <= kCheapProducts) {
    // The best of the few that lead, counting what the best second check after each answer would add.
    double chosen_rate = 0.0;
    std::vector<double> after(weighed.size());
    for (std::size_t i = 0; i < std::min(kStarts, order.size()); ++i) {
      const std::size_t first = order[i];
      if (bits[first] < 1e-3) continue;
      double gained = bits[first], spent = candidates[first].minutes;
      for (std::size_t c = 0; c < grid.choices[first]; ++c) {
        double sum = 0.0;
        for (std::size_t s = 0; s < weighed.size(); ++s) sum += after[s] = probability[s] * static_cast<double>(grid.at(first, s)[c]);
        if (sum < 0.02) continue;
        for (double& each : after) each /= sum;
        const double left = entropy_of_groups(weighed, after);
        if (left < 0.15) continue;   // sure by then
        double best_rate = 0.0, best_bits = 0.0, best_minutes = 0.0;
        for (std::size_t j = 0; j < std::min<std::size_t>(24, order.size()); ++j) {
          const std::size_t second = order[j];
          if (second == first) continue;
          const double more = information(weighed, after, grid, second, left);
          if (more / candidates[second].minutes > best_rate) {
            best_rate = more / candidates[second].minutes;
            best_bits = more;
            best_minutes = candidates[second].minutes;
          }
        }
        gained += sum * best_bits;
        spent += sum * best_minutes;
      }
      if (gained / spent > chosen_rate) {
        chosen_rate = gained / spent;
        chosen = first;
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
