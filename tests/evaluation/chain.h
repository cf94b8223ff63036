// The way from the battery to the outlet complained of, as the fixed orders walk it: points to read on
// the red side and on the black, and what sits between one point and the one before.
#pragma once

#include <string>
#include <vector>

#include "diagnosis/checks.h"
#include "diagnosis/plant.h"
#include "evaluation/policy.h"

namespace evaluation {

struct Point {
  std::vector<diagnosis::Check> checks;       // at most one: none where the tools read nothing there
  std::vector<diagnosis::Fault> before_it;    // cheapest to put right first
};

class Chain {
 public:
  explicit Chain(const diagnosis::Case& the_case);

  [[nodiscard]] const std::vector<diagnosis::Check>& all() const { return all_; }
  [[nodiscard]] const diagnosis::Check* find(diagnosis::CheckKind kind, OutletId outlet = circuit::kBlock,
                                             int neighbour = -1) const;
  [[nodiscard]] std::vector<Point> red_points() const;
  [[nodiscard]] std::vector<Point> black_points() const;
  [[nodiscard]] OutletId target() const { return target_; }
  [[nodiscard]] const std::vector<OutletId>& path() const { return path_; }   // block to target
  [[nodiscard]] double minutes(const diagnosis::Check& check) const { return diagnosis::minutes_for(check, setup_, plant_); }
  void done(const diagnosis::Check& check) { diagnosis::leave_behind(check, setup_); }

  // The word on the button for a typed reading; empty for no answer.
  static std::string word_of(const diagnosis::Check& check, const diagnosis::Answer& answer);

 private:
  [[nodiscard]] std::vector<diagnosis::Check> reading(const diagnosis::Spot& red, const diagnosis::Spot& black) const;
  void add_path(std::vector<Point>& points, Side side) const;

  const diagnosis::Case& case_;
  diagnosis::Plant plant_;
  std::vector<diagnosis::Check> all_;
  OutletId target_;
  std::vector<OutletId> path_;
  diagnosis::Setup setup_;
};

}  // namespace evaluation
