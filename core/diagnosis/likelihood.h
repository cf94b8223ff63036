// How likely each answer to a check is under a scenario: what is seen (sight.h) through the row's answers
// (check_row.h), and human error. Private to this room.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "diagnosis/check.h"
#include "diagnosis/check_row.h"
#include "diagnosis/plant.h"
#include "diagnosis/scenario.h"
#include "diagnosis/sight.h"

namespace diagnosis {

using Chances = std::array<double, kMaxChoices>;  // by choice; the rest 0

class Likelihood {
 public:
  // The case and the plant stay where they are for as long as this lives.
  // `checks`: those that will be asked about, each with its index.
  Likelihood(const Case& the_case, const Plant& plant, const std::vector<Hypothesis>& hypotheses,
             const std::vector<Check>& checks);

  // `repaired`: bit 0 the first fault, bit 1 the second, put right before this check.
  void aim(Look& look, const Scenario& scenario, unsigned repaired) const;
  Chances chances(const Check& check, Look& look) const;
  // The same to a sixtieth of battery volts, for ranking checks only: many times as fast.
  Chances coarse_chances(const Check& check, Look& look) const;
  // Density of a typed reading over what could be typed, times the width of a word, so that it
  // compares with chances(): only ratios between scenarios matter.
  double density(const Check& check, Look& look, double typed) const;
  // The reading predicted; nullopt where the answer has no number.
  std::optional<double> value(const Check& check, Look& look) const;
  // How likely somebody with this fault comes with this complaint.
  double complaint(Look& look) const;

 private:
  Plan plan_of(const Check& check);
  const Plan& plan(const Check& check) const { return plans_[static_cast<std::size_t>(check.index)]; }
  Sight sight(const Check& check, Look& look) const { return {plant_, complained_, check, plan(check), look}; }
  void lay_steps(CheckKind kind, std::vector<Chances> (&into)[2]);
  double complaint_at(Look& look, Symptom symptom, int outlet) const;
  double complaint_told(const Look& look) const;

  const Case& case_;
  const Plant& plant_;
  const std::vector<Hypothesis>& hypotheses_;
  std::vector<int> complained_;
  std::vector<Plan> plans_;                  // by check
  std::vector<Bench> benches_;               // by slot
  std::vector<Chances> volts_[2], glow_[2];  // coarse: by spread, by step of the reading
};

}  // namespace diagnosis
