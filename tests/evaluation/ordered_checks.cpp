// The fixed orders with the engine's own patience: checks come in an order laid down beforehand, every
// answer is weighed by Bayes, and a remedy is tried when it is as sure as the engine wants it. What is
// left of the difference is the choice of checks alone.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "diagnosis/tracer.h"
#include "evaluation/chain.h"
#include "evaluation/patience.h"

namespace evaluation {
namespace {

using diagnosis::Check;
using diagnosis::CheckKind;

class InOrder {
 public:
  InOrder(Policy policy, const Breakdown& breakdown, Person& person, const RunOptions& options, Run& run)
      : policy_(policy), case_(breakdown.the_case), person_(person), options_(options), run_(run), chain_(case_),
        tracer_(case_) {}

  void go() {
    const bool by_halves = policy_ == Policy::half_split || policy_ == Policy::spare_half;
    const bool sparing = policy_ == Policy::spare_outward || policy_ == Policy::spare_back || policy_ == Policy::spare_half;
    if (by_halves) halve();
    std::vector<Check> order = outward();
    if (policy_ == Policy::back || policy_ == Policy::spare_back) std::reverse(order.begin(), order.end());
    if (by_halves) near_first(order);
    for (std::size_t k = 0; k < order.size() && !over_; ++k) {
      if (sparing) {
        if (could_tell_something(order[k])) ask(order[k]);
        continue;
      }
      const auto from = order.begin() + static_cast<std::ptrdiff_t>(k);
      if (std::none_of(from, order.end(), [&](const Check& later) { return could_tell_something(later); })) break;
      ask(order[k]);
    }
    while (!over_ && run_.remedies < 10 && !top().first.empty()) attempt();   // the likeliest first
    run_.gave_up = !over_;
  }

 private:
  // What somebody orderly would go through from the battery to the outlet, then the odd things.
  std::vector<Check> outward() const {
    std::vector<Check> order;
    std::set<std::string> in_it;
    const auto add = [&](const Check& check) {
      if (diagnosis::has_tools(check, case_.tools) && in_it.insert(check.id).second) order.push_back(check);
    };
    const auto add_kind = [&](CheckKind kind, OutletId outlet = circuit::kBlock) {
      if (const Check* check = chain_.find(kind, outlet); check != nullptr) add(*check);
    };
    const auto add_point = [&](const Point& point) {
      for (const Check& check : point.checks) add(check);
    };
    const std::vector<Point> red = chain_.red_points(), black = chain_.black_points();
    const std::size_t hops = chain_.path().size();
    add_kind(CheckKind::main_look);
    for (std::size_t k = 0; k < 2; ++k) add_point(red[k]);
    add_kind(CheckKind::block_alive);
    for (const CheckKind kind : {CheckKind::fuse_look, CheckKind::fuse_press, CheckKind::fuse_swap}) add_kind(kind);
    for (std::size_t k = 2; k < 5; ++k) add_point(red[k]);
    add_point(black[0]);
    add_kind(CheckKind::tug_clamps);
    for (std::size_t hop = 0; hop < hops; ++hop) {
      add_point(red[5 + hop]);
      add_point(black[1 + hop]);
      add_kind(CheckKind::other_device, chain_.path()[hop]);
      add_kind(CheckKind::look_behind, chain_.path()[hop]);
      add_kind(CheckKind::tug, chain_.path()[hop]);
      add_kind(CheckKind::wiggle, chain_.path()[hop]);
    }
    for (std::size_t k = 0; k < 3; ++k) {
      add_point(red[5 + hops + k]);
      add_point(black[1 + hops + k]);
    }
    add_kind(CheckKind::device_elsewhere);
    add_kind(CheckKind::add_up);
    for (const Check& check : chain_.all()) {   // and whatever else there is
      if (check.kind != CheckKind::volts && check.kind != CheckKind::glow) add(check);
    }
    return order;
  }

  void halve() {
    for (const std::vector<Point>& points : {chain_.red_points(), chain_.black_points()}) {
      std::size_t low = 0, high = points.size();
      bool first = true;
      while (low < high && !over_) {
        const std::size_t at = first ? points.size() - 1 : (low + high) / 2;
        first = false;
        if (points[at].checks.empty()) {
          low = high == at + 1 ? high : at + 1;
          continue;
        }
        const std::string word = ask(points[at].checks.front());
        if (word == "full" || word == "bright") low = at + 1;
        else high = at;
        if (low == points.size()) break;
      }
      if (low < points.size() && !points[low].before_it.empty()) {
        found_ = points[low].before_it.front().outlet;
        return;
      }
    }
  }
  // What concerns the place found comes first.
  void near_first(std::vector<Check>& order) const {
    std::stable_partition(order.begin(), order.end(), [&](const Check& check) {
      return found_ && check.outlet == *found_ && check.kind != CheckKind::volts && check.kind != CheckKind::glow;
    });
  }

  std::string ask(const Check& check) {
    if (!asked_.insert(check.id).second) return answers_[check.id];
    run_.minutes += tracer_.minutes(check);
    ++run_.checks;
    const diagnosis::Answer answer = person_.answer(check);
    const std::string word = Chain::word_of(check, answer);
    answers_[check.id] = word;
    if (options_.keep_story) run_.story.push_back(check.id + " -> " + word);
    if (!tracer_.observe(check.id, answer).taken) ++run_.refused;
    suspects_.clear();
    while (!over_ && top().second >= kSureEnough && run_.remedies < 10) attempt();
    return word;
  }

  // As things stand, likeliest first; worked out once after each answer.
  const std::vector<diagnosis::Suspect>& suspects() {
    if (suspects_.empty()) suspects_ = tracer_.suspects(60);
    return suspects_;
  }
  // Information about the remedy, in bits: is there any to be had?
  bool could_tell_something(const Check& check) {
    std::map<std::string, std::pair<double, std::vector<double>>> remedies;   // share, chance of each answer
    double sum = 0.0;
    for (const diagnosis::Suspect& suspect : suspects()) {
      if (suspect.probability < 1e-4) break;   // likeliest first
      const std::vector<double> chances = tracer_.likelihood(suspect.fault, check.id);
      if (chances.empty()) continue;
      auto& [share, answers] = remedies[suspect.remedy_id];
      answers.resize(chances.size(), 0.0);
      share += suspect.probability;
      sum += suspect.probability;
      for (std::size_t c = 0; c < chances.size(); ++c) answers[c] += suspect.probability * chances[c];
    }
    const auto entropy = [](double p) { return p > 0.0 ? -p * std::log2(p) : 0.0; };
    std::vector<double> overall;
    double bits = 0.0;
    for (const auto& [id, remedy] : remedies) {
      overall.resize(remedy.second.size(), 0.0);
      for (std::size_t c = 0; c < overall.size(); ++c) {
        overall[c] += remedy.second[c] / sum;
        bits -= remedy.first / sum * entropy(remedy.second[c] / remedy.first);
      }
    }
    for (const double p : overall) bits += entropy(p);
    return bits >= kLeastBits;
  }

  // The remedy that is surest, of what is known.
  std::pair<std::string, double> top() {
    std::map<std::string, double> shares;
    double known = 0.0;
    faults_.clear();
    for (const diagnosis::Suspect& suspect : suspects()) {
      if (suspect.fault.kind == diagnosis::FaultKind::none_of_these) continue;
      known += suspect.probability;
      shares[suspect.remedy_id] += suspect.probability;
      faults_.emplace(suspect.remedy_id, suspect.fault);   // likeliest first
    }
    std::pair<std::string, double> best{"", 0.0};
    for (const auto& [id, share] : shares) {
      const bool again = std::find(tried_.begin(), tried_.end(), id) != tried_.end();
      if (!again && share > best.second) best = {id, share};
    }
    if (known > 0.0) best.second /= known;
    return best;
  }
  void attempt() {
    const std::string id = top().first;
    if (id.empty()) return;
    tried_.push_back(id);
    diagnosis::RetestResult result{};
    over_ = book_remedy(case_, person_, diagnosis::remedy_for(case_, faults_.at(id)), run_, result);
    if (!over_) tracer_.after_remedy(id, result);
    suspects_.clear();
  }

  Policy policy_;
  const diagnosis::Case& case_;
  Person& person_;
  const RunOptions& options_;
  Run& run_;
  Chain chain_;
  diagnosis::Tracer tracer_;
  std::set<std::string> asked_;
  std::map<std::string, std::string> answers_;
  std::vector<diagnosis::Suspect> suspects_;
  std::map<std::string, diagnosis::Fault> faults_;
  std::vector<std::string> tried_;
  std::optional<OutletId> found_;
  bool over_ = false;
};

}  // namespace

void run_in_order(Policy policy, const Breakdown& breakdown, Person& person, const RunOptions& options, Run& run) {
  InOrder(policy, breakdown, person, options, run).go();
}

}  // namespace evaluation
