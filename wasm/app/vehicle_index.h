// The record "vehicles": lines "order 3 1 2", "open 3 5", "demo 1", "next 4", and for each circuit of
// version 1 that is in a vehicle now "moved 7 3 9c1f04a2": its number, the vehicle's, a sum of its text.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/circuit_ref.h"

namespace app {

struct Moved {
  std::uint32_t circuit = 0;
  std::uint32_t vehicle = 0;
  std::uint32_t sum = 0;
  friend bool operator==(const Moved&, const Moved&) = default;
};

struct VehicleIndex {
  std::vector<std::uint32_t> order;
  CircuitRef open;
  std::uint32_t demo = 0;
  std::uint32_t next = 1;
  std::vector<Moved> moved;
};

inline constexpr std::string_view kIndexKey = "vehicles";
std::string write_index(const VehicleIndex& index);
VehicleIndex read_index(std::string_view text);   // what can not be read is passed over

std::string vehicle_key(std::uint32_t number);                               // "vehicle/3"
std::optional<std::uint32_t> vehicle_in_key(std::string_view key);           // exactly as vehicle_key() writes it
// To tell whether a text is still the same.
std::uint32_t text_sum(std::string_view text);

}  // namespace app
