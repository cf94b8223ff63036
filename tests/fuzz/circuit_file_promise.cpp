#include "fuzz/circuit_file_promise.h"

#include "circuit/validate.h"
#include "document/circuit_file.h"

std::string broken_promise(std::string_view text) {
  const document::ReadResult read = document::read_circuits(text);
  if (read.circuits.empty() == read.problems.empty()) return "neither circuits nor problems, or both";
  for (const circuit::Problem& problem : read.problems) {
    if (problem.sentence.empty() || problem.allowed.empty()) return "a problem without its sentence";
    if (one_line(problem).size() > 1000) return "a problem too long to read";
  }
  if (read.circuits.empty()) return {};
  for (const circuit::Circuit& circuit : read.circuits) {
    if (!circuit::validate(circuit).empty()) return "a circuit that is not valid";
  }
  const std::string written = document::write_circuits(read.circuits);
  if (written.size() > circuit::kMaxFileBytes) return {};  // tight text may spread out past what is read
  const document::ReadResult again = document::read_circuits(written);
  if (again.circuits.size() != read.circuits.size()) return "what was written is not read back";
  if (document::write_circuits(again.circuits) != written) return "written twice, two texts";
  return {};
}
