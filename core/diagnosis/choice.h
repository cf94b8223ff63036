// Which check next: expected information about what to put right and where, per minute, two steps
// ahead where that is cheap. Private to this room.
#pragma once

#include <vector>

#include "diagnosis/model.h"

namespace diagnosis {

struct Candidate {
  int check = 0;  // index in Model::checks
  double minutes = 1.0;
};
struct Weighed {
  const Scenario* scenario = nullptr;
  unsigned repaired = 0;
  int group = 0;
  double probability = 0.0;
};
struct NextChoice {
  int check = -1;          // -1: none
  double bits = 0.0;       // expected information
  double most_bits = 0.0;  // of any candidate
  double minutes = 0.0;
};
// `weighed` sums to about one. `setup`: how the last check left things; the candidates' minutes count from there.
NextChoice choose(const Model& model, std::vector<Weighed> weighed, const std::vector<Candidate>& candidates,
                  const Setup& setup);

}  // namespace diagnosis
