// What is wrong with typed-in data, said to a person: where, what, and what is allowed.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace circuit {

enum class Field : int;  // circuit/limits.h

struct Problem {
  std::string place;     // "Outlet C (Tyre inflator), run" or "line 3"; empty: the whole thing
  std::string sentence;  // "Length is -2 m."
  std::string allowed;   // "Give 0.05 m to 100 m."
  // When a number is out of its range: which, and what it was, so that the app can say it in
  // the user's units. The sentences above are metric.
  std::optional<Field> field = std::nullopt;
  double value = 0.0;
};
using Problems = std::vector<Problem>;

// "Outlet C (Tyre inflator), run: length is -2 m. Give 0.05 m to 100 m."
std::string one_line(const Problem& problem);

}  // namespace circuit
