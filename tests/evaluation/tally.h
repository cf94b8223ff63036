// Many runs of one setting counted: shares, minutes, mistakes. Two threads by default; the same
// seed gives the same figures on any number of threads.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "evaluation/policy.h"

namespace evaluation {

struct Setting {
  Kit kit = Kit::meter;
  double wrong_share = 0.0;
  std::size_t cases = 2000;
  std::uint64_t seed = 1;
  std::size_t most_outlets = 6;
  double pair_share = 0.0;
  unsigned threads = 2;
  bool keep_stories = false;
};
std::string setting_name(const Setting& setting);

// Runs in the order of the cases.
std::vector<Run> run_all(Policy policy, const Setting& setting);

struct Spread { double mean = 0.0, median = 0.0, p95 = 0.0; };
Spread spread_of(std::vector<double> values);

struct Tally {
  std::size_t cases = 0;
  double first_right = 0.0, second_right = 0.0, ended_right = 0.0, gave_up = 0.0, cannot_tell = 0.0;   // shares
  // Where it did not say that nothing tells them apart: how often its first word was right.
  double right_when_sure = 0.0;
  Spread checks, minutes, minutes_first, repairs_in_vain, next_ms;
  std::size_t breaches = 0, refused = 0, found_live = 0;
};
Tally tally(const std::vector<Run>& runs);

void print_header();
void print_row(Policy policy, const Tally& tally);
// What was taken for what, most frequent first; kinds only, places left off unless the kind is the same.
void print_mistakes(const std::vector<Run>& runs, std::size_t at_most, bool stories);

}  // namespace evaluation
