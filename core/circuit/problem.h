// What is wrong with typed-in data, said to a person: where, what, and what is allowed.
#pragma once

#include <string>
#include <vector>

namespace circuit {

struct Problem {
  std::string place;     // "Outlet C, run" or "line 3"; empty: the whole thing
  std::string sentence;  // "Length is -2 m."
  std::string allowed;   // "Give 0.05 m to 100 m."
};
using Problems = std::vector<Problem>;

// "Outlet C, run: length is -2 m. Give 0.05 m to 100 m."
std::string one_line(const Problem& problem);

}  // namespace circuit
