// Ways to go about it, all on the same broken-down installation with the same person, the same
// checks and the same minutes for each: the tracing engine, and the fixed orders of the trade.
#pragma once

#include <string>
#include <vector>

#include "evaluation/installation.h"
#include "evaluation/person.h"

namespace evaluation {

// outward, back, half_split: the checks come in that fixed order, what they tell is weighed as the
// engine weighs it, and one stops when one remedy is as sure as the engine wants it, or when nothing
// left in the order can tell more. spare_...: the same, leaving out on the way what can tell nothing
// any more; no longer a fixed order, strictly. thumb_...: as done by hand: one bad reading next to a
// good one, repair what sits between, try again.
enum class Policy {
  engine, outward, back, half_split, spare_outward, spare_back, spare_half, thumb_outward, thumb_back, thumb_half,
};
std::string policy_name(Policy policy);

struct Run {
  bool first_right = false;     // kind and place of the first remedy
  bool second_right = false;    // of the first or the second
  bool ended_right = false;     // before giving up
  bool gave_up = false;         // no remedy left, or too many steps
  bool cannot_tell = false;     // the first conclusion said that nothing tells the rest apart
  int checks = 0, remedies = 0; // until right or given up
  double minutes = 0.0;         // of checks alone, until right or given up
  double minutes_first = 0.0;   // of checks alone, until the first conclusion
  double repair_minutes = 0.0;  // of remedies carried out in vain
  int refused = 0;              // honest answers that were not taken
  int found_live = 0;           // hands asked for, fuse out: the proving found it live
  std::vector<std::string> breaches;   // of the safety rule
  std::vector<double> next_ms;         // time for each advice
  std::string truth, concluded;        // first conclusion, for the list of mistakes
  double sure = 0.0;                   // what the engine gave its first conclusion
  std::vector<std::string> story;      // question and answer, kept when asked for
};

struct RunOptions {
  double wrong_share = 0.0;
  std::uint64_t seed = 1;       // of the person
  bool keep_story = false;
};
Run run_policy(Policy policy, const Breakdown& breakdown, const RunOptions& options);

// "splice-open 3 - (onward)", for the list of mistakes.
std::string fault_text(const TrueFault& fault);

// The policies themselves.
void run_engine(const Breakdown& breakdown, Person& person, const RunOptions& options, Run& run);
void run_in_order(Policy policy, const Breakdown& breakdown, Person& person, const RunOptions& options, Run& run);
void run_by_thumb(Policy policy, const Breakdown& breakdown, Person& person, const RunOptions& options, Run& run);
// A remedy was tried: books what came of it. True when the trace is over.
bool book_remedy(const diagnosis::Case& the_case, Person& person, const diagnosis::Remedy& remedy, Run& run,
                 diagnosis::RetestResult& result);

}  // namespace evaluation
