// What does not change during a trace, shared by all copies of a tracer. Private to this room.
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "diagnosis/checks.h"
#include "diagnosis/likelihood.h"
#include "diagnosis/remedy.h"
#include "diagnosis/scenario.h"

namespace diagnosis {

struct Model {
  explicit Model(Case the_case);
  Model(const Model&) = delete;
  Model& operator=(const Model&) = delete;

  Case the_case;
  Plant plant;
  std::vector<Hypothesis> hypotheses;
  std::vector<int> group_of;           // by hypothesis: what puts it right, and where
  std::vector<std::string> group_ids;  // remedy_id()
  std::vector<double> group_minutes;
  std::vector<RemedyKind> group_kinds;
  int unknown_group = 0;      // of none_of_these
  std::vector<Check> checks;  // safe ones only, without their words
  std::unordered_map<std::string_view, int> check_index;
  Likelihood likelihood;
  std::vector<Scenario> scenarios;  // singles by hypothesis, then the likely pairs
  std::vector<double> log_prior;    // with the complaint, not normalised
  std::vector<Scenario> typical;    // by hypothesis: the size in the middle

  [[nodiscard]] Check worded(const Check& check) const;  // as it is shown
  // The faults that a failed repair of one of these may have hidden.
  void add_pairs_with(int first, std::vector<Scenario>& into) const;

 private:
  void make_groups();
  void make_scenarios();
  void make_likely_pairs();
  [[nodiscard]] Scenario pair_of(int first, int second, double prior) const;
};

}  // namespace diagnosis
