// The vehicle as a tree of legs from the battery posts, and what current can reach each end of each leg.
#pragma once

#include "guards.h"

namespace judge {

// One leg leads from `parent` to the node of the same index; node 0 is the battery posts and has none.
struct Leg {
  int parent = -1;
  const Run* run = nullptr;  // null: no wire (a fuse position)
  std::vector<Guard> guards;
  std::string name;
  int circuit = -1;
  int outlet = -1;  // the outlet whose run or tail it is
  bool is_tail = false;
  double supply_amps = 0;  // what a source at this node can give
};

struct Net {
  std::vector<Leg> legs;              // [0] is the battery
  std::vector<int> block_node;
  std::vector<std::vector<int>> outlet_node;  // by circuit, by outlet: where its devices hang
  std::vector<int> position_node;     // by circuit: behind its fuse
  std::vector<double> from_parent;    // amps that can come into the leg at its start
  std::vector<double> from_beyond;    // amps that can come into the leg at its end
};

// Keeps pointers into the world: it must outlive the net.
Net build(const World& world);

// Ohms there and back of a leg.
double leg_ohms(const Leg& leg, View view);

double ampacity(const Leg& leg, View view);

}  // namespace judge
