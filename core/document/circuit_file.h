// Circuits as text and back: the saved file. JSON, keys carry their unit ("run_m"), stable
// order, one format name and version. Reading never trusts the text: any bytes give either
// valid circuits or problems that say what is wrong and where, never a crash, and the caller's
// data is only replaced by a whole, valid result. docs/circuit-format.md and its JSON Schema
// describe every field.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "circuit/circuit.h"
#include "circuit/problem.h"

namespace document {

// Raise when a file written by the new code would not be read right by the old; keep a
// migration from each earlier version and a sample in tests/documents/.
inline constexpr int kFormatVersion = 1;
inline constexpr std::string_view kFormatName = "branchlight-circuits";

// Of circuits that validate() passes. Same circuits, same bytes. read_circuits() takes the text
// back unless it is longer than circuit::kMaxFileBytes or holds more than kMaxCircuitsInFile.
std::string write_circuit(const circuit::Circuit& circuit);
std::string write_circuits(const std::vector<circuit::Circuit>& circuits);  // an export of several

struct ReadResult {
  std::vector<circuit::Circuit> circuits;   // empty when there are problems
  circuit::Problems problems;
};
ReadResult read_circuits(std::string_view text);   // accepts a file of one or of several

}  // namespace document
