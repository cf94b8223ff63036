// Somebody at the bench who answers checks from the truth: points from the general network, the rest as
// an honest person would, but for what a story says of its own.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "diagnosis/faulty.h"

namespace diagnosis_test {

// First of a check's id, and the answer's word: {"look-behind 2", "red-tab"}.
using Told = std::vector<std::pair<std::string, std::string>>;

class BenchPerson {
 public:
  BenchPerson(diagnosis::Case the_case, diagnosis::Fault fault, double ohm, Told told);
  [[nodiscard]] diagnosis::Answer answer(const diagnosis::Check& check) const;

 private:
  [[nodiscard]] double device_volts(circuit::OutletId outlet, bool fuse_in) const;
  [[nodiscard]] diagnosis::AnswerKey natural(const diagnosis::Check& check) const;
  diagnosis::Case case_;
  diagnosis::Fault fault_;
  double ohm_;
  Told told_;
};

struct Ending {
  std::vector<std::string> remedies;  // ids, in order of advice
  std::vector<std::string> checks;    // ids
  double minutes = 0.0;
  std::vector<std::string> unsafe;
};
// Follows the advice to the end; a remedy helps when it is the fault's own.
Ending follow(const diagnosis::Case& the_case, const BenchPerson& person, const diagnosis::Fault& fault);

}  // namespace diagnosis_test
