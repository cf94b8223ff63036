// The healthy branch as a tree of loop resistances: both conductors carry the same current, so
// each run is one resistance. What radial.h solves and sizing searches over. The same elements as
// branch_network.h, summed; a test holds the two together.
#pragma once

#include <cstddef>
#include <vector>

#include "circuit/circuit.h"
#include "network/branch_network.h"

namespace network {

inline constexpr std::size_t kNoPoint = static_cast<std::size_t>(-1);

// One for each load_slots() entry, in its order: parents before children. The path leads from the
// parent's point to this one, the tail from here to the device.
struct TreePoint {
  std::size_t parent = kNoPoint;   // kNoPoint: the block
  std::size_t outlet = 0;          // index in circuit.outlets
  double path_ohm = 0.0;
  double tail_ohm = 0.0;
  double wire_ohm = 0.0;           // the part of the path that is wire
  const circuit::Load* load = nullptr;  // whole load of this point's device; nullptr: none here
  double share = 1.0;              // of that load: one light of several along a run
};

struct Tree {
  double emf_v = 0.0;
  double source_ohm = 0.0;         // inside the battery
  double feeder_ohm = 0.0;         // posts to bus: shared with the block's other circuits
  double supply_ohm = 0.0;         // posts to the wire side of the clamps
  double beside_a = 0.0;           // what the other circuits draw, at the bus
  double nominal_v = 12.0;
  std::vector<TreePoint> points;
  std::vector<std::size_t> point_of_outlet;   // where an outlet's voltage is read: its devices, or its last light
};
// The circuit is valid and outlives the tree; fitted.size is set.
Tree tree_of(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery);

}  // namespace network
