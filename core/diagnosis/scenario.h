// Hypotheses cut into sizes: each scenario is one fault of one size (or a pair of faults) as edits
// of the plant, with its share of the prior. Private to this room.
#pragma once

#include <vector>

#include "diagnosis/fault.h"
#include "diagnosis/plant.h"

namespace diagnosis {

struct Sample {
  Edits edits;
  double share = 1.0;   // of the fault's prior; the shares of a fault sum to one
  bool spread = false;  // stands for a range of sizes around it
};
// Sizes and ports of one fault: a few points with weights (quadrature over the row's spread).
std::vector<Sample> samples_of(const Plant& plant, const Fault& fault);

struct Scenario {
  int first = 0;    // index of the hypothesis
  int second = -1;  // of a pair; -1: a single fault
  Edits edits[2];   // of each
  bool spread = false;
  double prior = 0.0;
};

}  // namespace diagnosis
