// One circuit among all that are kept: the number of its vehicle's record, and its own in there.
#pragma once

#include <cstdint>
#include <string>

#include "vehicle/vehicle.h"

namespace app {

struct CircuitRef {
  std::uint32_t vehicle = 0;        // 0: none
  vehicle::CircuitId circuit;
  [[nodiscard]] bool none() const { return vehicle == 0 || circuit.number == 0; }
  friend bool operator==(const CircuitRef&, const CircuitRef&) = default;
};

inline constexpr CircuitRef kNoCircuit{};   // in Current and in keys: none is open

// "3/5", as keys and addresses have it.
inline std::string ref_text(CircuitRef ref) {
  return std::to_string(ref.vehicle) + "/" + std::to_string(ref.circuit.number);
}

}  // namespace app
