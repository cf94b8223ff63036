// Vehicles as text and back: what the app keeps and exports. The rules are those of
// circuit_file.h: nothing is trusted, and what this version does not know is refused, so that
// the data of a newer app is never dropped by saving over it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "circuit/limits.h"
#include "circuit/problem.h"
#include "document/format.h"
#include "vehicle/gather.h"
#include "vehicle/vehicle.h"

namespace document {

// Every circuit of a version 1 file can be a vehicle of its own.
inline constexpr std::size_t kMaxVehiclesInFile = circuit::kMaxCircuitsInFile;

// Of vehicles that validate() passes. Same vehicles, same bytes.
std::string write_vehicle(const vehicle::Vehicle& vehicle);
std::string write_vehicles(const std::vector<vehicle::Vehicle>& vehicles);
// A text longer than circuit::kMaxFileBytes is not read again: to be asked before it replaces
// what is kept. nullopt: it fits.
std::optional<circuit::Problem> too_long_to_read(const std::string& written);

struct VehiclesRead {
  std::vector<vehicle::Vehicle> vehicles;   // empty when there are problems
  circuit::Problems problems;
  int from_version = 0;                     // that the file says; 0: it says none that is known
  // A file of circuits: for each of them, in its order, where it went. Else empty.
  std::vector<vehicle::Gathered::Where> where;
};
// A file of one or several vehicles, or of circuits (all of version 1), which are gathered into
// vehicles.
VehiclesRead read_vehicles(std::string_view text);

}  // namespace document
