// Circuits as text and back, each with the supply that it sees: what version 1 kept, and what one
// circuit is told with outside a vehicle. JSON, keys carry their unit ("run_m"), stable order.
// Reading never trusts the text: any bytes give either valid circuits or problems that say what
// is wrong and where, never a crash, and the caller's data is only replaced by a whole, valid
// result. docs/vehicle-format.md and its JSON Schema describe every field.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "circuit/circuit.h"
#include "circuit/problem.h"
#include "document/format.h"

namespace document {

// Of circuits that validate() passes. Same circuits, same bytes. read_circuits() takes the text
// back unless it is longer than circuit::kMaxFileBytes or holds more than kMaxCircuitsInFile.
std::string write_circuit(const circuit::Circuit& circuit);
std::string write_circuits(const std::vector<circuit::Circuit>& circuits);

struct ReadResult {
  std::vector<circuit::Circuit> circuits;   // empty when there are problems
  circuit::Problems problems;
  int from_version = 0;                     // that the file says; 0: it says none that is known
};
ReadResult read_circuits(std::string_view text);   // version 1 or 2, a file of one or of several

}  // namespace document
