#include "evaluation/tally.h"

#include <algorithm>
#include <atomic>
#include <cstdio>
#include <map>
#include <thread>

namespace evaluation {

std::string setting_name(const Setting& setting) {
  char buffer[96];
  std::snprintf(buffer, sizeof buffer, "%s, %.0f %% wrong answers", kit_name(setting.kit).c_str(),
                100.0 * setting.wrong_share);
  return buffer;
}

std::vector<Run> run_all(Policy policy, const Setting& setting) {
  std::vector<Run> runs(setting.cases);
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t k = next++; k < setting.cases; k = next++) {
      const std::uint64_t seed = hash_of("case", setting.seed * 1000003u + k);
      Engine engine(seed);
      const Breakdown breakdown = draw_breakdown(engine, setting.kit, setting.most_outlets, setting.pair_share);
      runs[k] = run_policy(policy, breakdown, {setting.wrong_share, seed, setting.keep_stories});
    }
  };
  std::vector<std::thread> threads;
  for (unsigned t = 1; t < std::max(1u, setting.threads); ++t) threads.emplace_back(work);
  work();
  for (std::thread& thread : threads) thread.join();
  return runs;
}

Spread spread_of(std::vector<double> values) {
  Spread spread;
  if (values.empty()) return spread;
  std::sort(values.begin(), values.end());
  for (const double value : values) spread.mean += value / static_cast<double>(values.size());
  spread.median = values[values.size() / 2];
  spread.p95 = values[std::min(values.size() - 1, values.size() * 95 / 100)];
  return spread;
}

Tally tally(const std::vector<Run>& runs) {
  Tally all;
  all.cases = runs.size();
  std::vector<double> checks, minutes, minutes_first, repairs, next_ms;
  double sure = 0.0;
  for (const Run& run : runs) {
    const double one = 1.0 / static_cast<double>(runs.size());
    all.first_right += run.first_right ? one : 0.0;
    all.second_right += run.second_right ? one : 0.0;
    all.ended_right += run.ended_right ? one : 0.0;
    all.gave_up += run.gave_up ? one : 0.0;
    all.cannot_tell += run.cannot_tell ? one : 0.0;
    sure += run.cannot_tell ? 0.0 : 1.0;
    all.right_when_sure += !run.cannot_tell && run.first_right ? 1.0 : 0.0;
    all.breaches += run.breaches.size();
    all.refused += static_cast<std::size_t>(run.refused);
    all.found_live += static_cast<std::size_t>(run.found_live);
    checks.push_back(run.checks);
    minutes.push_back(run.minutes);
    minutes_first.push_back(run.minutes_first);
    repairs.push_back(run.repair_minutes);
    next_ms.insert(next_ms.end(), run.next_ms.begin(), run.next_ms.end());
  }
  if (sure > 0.0) all.right_when_sure /= sure;
  all.checks = spread_of(checks);
  all.minutes = spread_of(minutes);
  all.minutes_first = spread_of(minutes_first);
  all.repairs_in_vain = spread_of(repairs);
  all.next_ms = spread_of(next_ms);
  return all;
}

void print_header() {
  std::printf("%-18s %7s %7s %7s %7s %7s | %5s %4s %4s | %6s %6s %6s %7s | %7s | %6s %6s\n", "", "first", "two", "end",
              "tie", "sure", "checks", "med", "p95", "min", "med", "p95", "(first)", "in vain", "breach", "live");
}

void print_row(Policy policy, const Tally& t) {
  std::printf("%-18s %6.1f%% %6.1f%% %6.1f%% %6.1f%% %6.1f%% | %6.1f %4.0f %4.0f | %6.2f %6.2f %6.2f %7.2f | %7.1f | %6zu %6zu\n",
              policy_name(policy).c_str(), 100.0 * t.first_right, 100.0 * t.second_right, 100.0 * t.ended_right,
              100.0 * t.cannot_tell, 100.0 * t.right_when_sure, t.checks.mean, t.checks.median, t.checks.p95,
              t.minutes.mean, t.minutes.median, t.minutes.p95, t.minutes_first.mean, t.repairs_in_vain.mean, t.breaches,
              t.found_live);
  if (!(t.next_ms.mean > 0.0)) return;
  std::printf("%-18s next check: mean %.2f ms, median %.2f, 95th %.2f; answers refused %zu, gave up %.1f %%\n", "",
              t.next_ms.mean, t.next_ms.median, t.next_ms.p95, t.refused, 100.0 * t.gave_up);
}

void print_mistakes(const std::vector<Run>& runs, std::size_t at_most, bool stories) {
  const auto kind = [](const std::string& text) { return text.substr(0, text.find(' ')); };
  std::map<std::string, std::vector<const Run*>> groups;
  for (const Run& run : runs) {
    if (run.first_right) continue;
    groups[kind(run.truth) + "  taken for  " + (run.concluded.empty() ? "(nothing)" : kind(run.concluded))].push_back(&run);
  }
  std::vector<std::pair<std::string, std::vector<const Run*>>> order(groups.begin(), groups.end());
  std::stable_sort(order.begin(), order.end(),
                   [](const auto& a, const auto& b) { return a.second.size() > b.second.size(); });
  for (std::size_t k = 0; k < order.size() && k < at_most; ++k) {
    const Run& example = *order[k].second.front();
    std::printf("  %4zu  %s   e.g. %s -> %s at %.2f%s\n", order[k].second.size(), order[k].first.c_str(),
                example.truth.c_str(), example.concluded.c_str(), example.sure,
                example.cannot_tell ? " (said it cannot tell)" : "");
    if (!stories) continue;
    for (const std::string& line : example.story) std::printf("          %s\n", line.c_str());
  }
}

}  // namespace evaluation
