// A circuit held to the limits and to its own shape: known sizes and parts, parents before
// children, no loops, names that are text. Everything else in the core takes a circuit for
// which this list is empty.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "circuit/circuit.h"
#include "circuit/limits.h"
#include "circuit/problem.h"

namespace circuit {

Problems validate(const Circuit& circuit);

// One value against its limit: empty optional when it is fine. NaN and infinities are never
// fine. `blocks`: 12 V blocks in series; the "per 12 V" fields are taken and told for the
// whole battery, the others do not look at it.
std::optional<Problem> check_value(Field field, double value, std::string_view place, int blocks = 1);
// A name as typed: valid UTF-8, no control or direction-changing characters, not blank, at
// most kMaxNameCharacters.
std::optional<Problem> check_name(std::string_view name, std::string_view place);
// A sentence that is kept: the same characters, may be empty, at most `most_bytes` long.
std::optional<Problem> check_text(std::string_view text, std::size_t most_bytes, std::string_view place);

// "Outlet C (Tyre inflator)", as problems name it; only the letter where the name is not
// text or says the same. `index` is the place in circuit.outlets.
std::string outlet_title(const Circuit& circuit, std::size_t index);
// A wire size that the tables know.
std::optional<Problem> check_size(std::string_view id, std::string_view place);
// A fuse that a block's positions can hold.
std::optional<Problem> check_fuse_family(tables::FuseFamilyId id, std::string_view place);
// Foreign text made fit to stand in a sentence: in quotes, at most 40 characters, what can
// not be printed as '?'.
std::string quoted(std::string_view text);

}  // namespace circuit
