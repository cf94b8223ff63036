// What the quick calculators were asked last, so that a sum begun in the shop goes on in the
// van. One record of lines: "drop-of-a-run wire=10awg run=5 current=10"; choices by their key,
// numbers in the core's own unit. What can not be read, or is out of its range now, starts as new.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "calculators/calculator.h"

namespace app {

class QuickInputs {
 public:
  explicit QuickInputs(std::string_view record);
  // One for each input of the calculator, each within its range.
  [[nodiscard]] calculators::Values values(const calculators::Calculator& calculator) const;
  void set(const calculators::Calculator& calculator, const calculators::Values& values);
  [[nodiscard]] std::string record() const;

 private:
  std::map<std::string, std::string, std::less<>> lines_;   // calculator -> "wire=10awg run=5"; unknown ones too
};

}  // namespace app
