#include "document/circuit_file.h"

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "document/circuit_fields.h"
#include "document/circuit_list.h"
#include "document/writer.h"

namespace document {
namespace {

ReadResult no_circuits(circuit::Problem problem) { return {{}, {std::move(problem)}, 0}; }

}  // namespace

// Every key of version 1 is one of version 2 and means the same, and what is new may be left out
// for what version 1 took as given: both are read alike. A change of meaning is brought up here.
ReadResult read_circuit_list(const FileResult& file) {
  const ListResult items = read_list(file.root, "circuits", circuit::kMaxCircuitsInFile);
  if (items.problem) return no_circuits(*items.problem);
  ReadResult result;
  result.from_version = file.version;
  const auto fields = [](Reader& door, circuit::Circuit& read) { circuit_fields(door, read, Extent::with_supply); };
  for (std::size_t i = 0; i < items.list->size() && result.problems.size() < kEnoughProblems; ++i) {
    result.circuits.push_back(read_item<circuit::Circuit>((*items.list)[i], "Circuit " + std::to_string(i + 1),
                                                          result.problems, fields, circuit::validate));
  }
  if (!result.problems.empty()) result.circuits.clear();
  return result;
}

ReadResult read_circuits(std::string_view text) {
  const FileResult file = read_file(text);
  if (file.problem) return no_circuits(*file.problem);
  if (file.format == kCircuitsFormat) return read_circuit_list(file);
  return no_circuits({"", "The file holds vehicles, where circuits are wanted.", "Give a file of circuits."});
}

std::string write_circuits(const std::vector<circuit::Circuit>& circuits) {
  Json root = Json::object();
  Writer writer(root);
  writer.text("format", std::string(kCircuitsFormat));
  writer.whole("version", kFormatVersion);
  writer.list("circuits", "circuit", circuits,
              [](Writer& inside, const circuit::Circuit& c) { circuit_fields(inside, c, Extent::with_supply); });
  return text_of(root);
}

std::string write_circuit(const circuit::Circuit& circuit) { return write_circuits({circuit}); }

}  // namespace document
