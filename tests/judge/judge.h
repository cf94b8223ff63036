// Judges one circuit with its answer, from the published figures alone. docs/sizing-rules.md tells the rules in prose.
// In the kind view (sure_fault) each finding is a fault by every reading; in the harsh view (surely_right) a choice
// without a finding is right by every reading. What lies between is within the bands that copper.cpp and parts.cpp
// state, and nobody is accused of it.
#pragma once

#include "judge/volts.h"

namespace judge {

enum class What {
  unprotected_wire,
  wire_overloaded,
  feeder_unprotected,
  feeder_overloaded,
  main_fuse_too_small,
  switch_or_block_too_small,
  not_told,
  fuse_too_small,
  fuse_not_made,
  fuse_volts,
  inner_fuse_too_small,
  opens_on_start,
  part_too_small,
  does_not_fit,
  too_thin,
  drop,
  device_volts,
  cannot_run,
  short_not_ended,
  short_too_hot,
  ohms_not_believable,
  smaller_wire,
  smaller_fuse,
  something_fits,
  count
};
const char* words(What what);

struct Finding {
  What what = What::count;
  int outlet = -1;
  double value = 0;
  double limit = 0;
};

// What is wrong with a choice; ends at the first finding when `first_only`.
std::vector<Finding> judge(const Circuit& circuit, const Choice& choice, View view, bool first_only);
// The answer: every rule in the kind view, and what has to be told beside it.
std::vector<Finding> judge_answer(const Circuit& circuit, const Answer& answer);
// Whether a smaller choice is surely right: a thinner wire with a fuse no larger, or the same wire with a smaller
// fuse; where the program says that none fits, any choice.
std::vector<Finding> beaten(const Circuit& circuit, const Answer& answer);

}  // namespace judge
