// Volts at every node of the tree, by plain fixed-point iteration from the battery outwards.
#pragma once

#include "net.h"

namespace judge {

struct Draw {
  int node = 0;
  Law law = Law::current;
  double amps = 0;  // at nominal volts
};

struct Volts {
  bool settled = false;        // false: the loads ask for more than the wires can bring
  std::vector<double> at;      // by node
  std::vector<double> through; // amps through the leg to the node
};

// `supply` volts stand at the battery posts.
Volts solve(const Net& net, const std::vector<Draw>& draws, double nominal, double supply, View view);

}  // namespace judge
