// Branch currents that balance at every node. A voltage is good to about 1e-15 V, so the current
// through 1e-4 ohm read off a voltage difference is good to 1e-11 A only, and currents at a node
// would not quite cancel. So along a tree of the lowest resistances the current is taken from
// what flows on beyond, leaf to root, and only the branches outside the tree are read off
// voltages. Both ways agree to the last digits of the voltages; a test says so. Private to this room.
#pragma once

#include <vector>

#include "network/netlist.h"

namespace network::detail {

// `current_a` comes in as read off the voltages and the load laws, by branch.
void balance_currents(const Netlist& netlist, std::vector<double>& current_a);

}  // namespace network::detail
