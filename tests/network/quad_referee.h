// Says how far a set of node voltages is from a true operating point, in 113-bit arithmetic:
// Newton over the nodal equations from that set, each step by a dense star-mesh elimination.
// Written apart from core/network: other arithmetic, other storage, other order, sources as
// currents into nodes. It decides when two solvers differ.
#pragma once

#include <vector>

#include "network/netlist.h"

namespace network_test {

struct Verdict {
  bool settled = false;      // Newton came to rest
  double moved_v = 0.0;      // furthest any node moved on the way
  std::vector<double> node_voltage_v;
};
// `held`: nodes that stand where they are. Reverse-blocking loads leave parts undecided; they
// are tied by 1e-15 S, so that such a part stays where it was.
Verdict judge(const network::Netlist& netlist, const std::vector<double>& node_voltage_v, const std::vector<bool>& held);

// One node of each part that has no branch to the reference, and the reference itself.
std::vector<bool> held_nodes(const network::Netlist& netlist);

}  // namespace network_test
