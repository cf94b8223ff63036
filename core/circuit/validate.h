// A circuit held to the limits and to its own shape: known sizes and parts, parents before
// children, no loops, names that are text. Everything else in the core takes a circuit for
// which this list is empty.
#pragma once

#include <string>
#include <string_view>

#include "circuit/circuit.h"
#include "circuit/limits.h"
#include "circuit/problem.h"

namespace circuit {

Problems validate(const Circuit& circuit);

// One value against its limit: empty optional when it is fine. `shown` is how the screen
// writes the value ("-2 m"); NaN and infinities are never fine.
std::optional<Problem> check_value(Field field, double value, std::string_view place);
// A name as typed: valid UTF-8, no control characters, not blank, at most kMaxNameCharacters.
std::optional<Problem> check_name(std::string_view name, std::string_view place);

}  // namespace circuit
