// The two formats of a file and their version. Both are JSON, with the same rules:
// docs/vehicle-format.md.
#pragma once

#include <string_view>

namespace document {

// Raise when a file written by the new code would not be read right by the old; keep a
// migration from each earlier version and samples in tests/documents/.
inline constexpr int kFormatVersion = 2;

// Vehicles: what the app keeps. Begins with version 2.
inline constexpr std::string_view kVehiclesFormat = "branchlight-vehicles";
// Circuits, each with its supply: all that version 1 had, and what the probe is asked with.
inline constexpr std::string_view kCircuitsFormat = "branchlight-circuits";

}  // namespace document
