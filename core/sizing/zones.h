// Which fuse protects what. The branch fuse protects everything up to the first fuse or breaker
// in the line; each of those protects what lies behind it, up to the next.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "circuit/circuit.h"
#include "units/quantity.h"

namespace sizing {

inline constexpr std::size_t kBranchZone = 0;   // behind the fuse that sizing chooses

struct Zone {
  std::optional<std::size_t> begins_at;     // index of the outlet whose run has the fuse; nullopt: the block
  circuit::InLine protection;               // of no meaning for the branch zone
  std::size_t inside = kBranchZone;         // the zone whose fuse comes before this one's
  std::vector<std::size_t> outlets;         // whose run and parts it protects, by index
  bool has_open_runs = false;               // a run whose size sizing chooses
};

struct Zones {
  explicit Zones(const circuit::Circuit& circuit);
  std::vector<Zone> all;                    // the branch zone first, each before those inside it
  std::vector<std::size_t> of_outlet;       // index into `all`, by outlet index
};

}  // namespace sizing
