#include "fuzz/file_promise.h"

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "document/circuit_file.h"
#include "document/vehicle_file.h"
#include "vehicle/validate.h"

namespace {

std::string broken_problems(const circuit::Problems& problems) {
  for (const circuit::Problem& problem : problems) {
    if (problem.sentence.empty() || problem.allowed.empty()) return "a problem without its sentence";
    if (one_line(problem).size() > 1000) return "a problem too long to read";
  }
  return {};
}

// A circuit of a file is the one that its vehicle shows, but for what only a vehicle knows.
std::string broken_gathering(std::string_view text, const document::VehiclesRead& read) {
  const document::ReadResult circuits = document::read_circuits(text);
  if (circuits.circuits.size() != read.where.size()) return "circuits lost on the way into vehicles";
  for (std::size_t i = 0; i < read.where.size(); ++i) {
    circuit::Circuit seen = vehicle::circuit_of(read.vehicles[read.where[i].vehicle], read.where[i].circuit);
    seen.supply.beside = units::Amperes(0.0);
    if (circuits.circuits[i].place.empty()) seen.place.clear();
    if (document::write_circuit(seen) != document::write_circuit(circuits.circuits[i])) return "a circuit changed on the way into a vehicle";
  }
  return {};
}

}  // namespace

std::string broken_vehicle_promise(std::string_view text) {
  const document::VehiclesRead read = document::read_vehicles(text);
  if (read.vehicles.empty() == read.problems.empty()) return "neither vehicles nor problems, or both";
  if (std::string broken = broken_problems(read.problems); !broken.empty()) return broken;
  if (read.vehicles.empty()) return {};
  for (const vehicle::Vehicle& each : read.vehicles) {
    if (!vehicle::validate(each).empty()) return "a vehicle that is not valid";
    const std::string written = document::write_vehicle(each);
    if (document::too_long_to_read(written)) return "a vehicle that is too long once it is written";
    const document::VehiclesRead again = document::read_vehicles(written);
    if (again.vehicles.size() != 1) return "what was written is not read back";
    if (document::write_vehicle(again.vehicles.front()) != written) return "written twice, two texts";
  }
  return read.from_version == 1 || !read.where.empty() ? broken_gathering(text, read) : std::string();
}

std::string broken_circuit_promise(std::string_view text) {
  const document::ReadResult read = document::read_circuits(text);
  if (read.circuits.empty() == read.problems.empty()) return "neither circuits nor problems, or both";
  if (std::string broken = broken_problems(read.problems); !broken.empty()) return broken;
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
