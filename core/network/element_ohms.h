// Every resistance of a branch, element by element: the one list that build() hangs in the
// network and that tree_of() sums. Private to this room. All at circuit.wiring.wire_temperature;
// parts and fuses as new. Ohm.
#pragma once

#include <vector>

#include "circuit/circuit.h"
#include "network/branch_network.h"

namespace network::detail {

struct OutletOhms {
  std::vector<double> in_line;  // positive side only, in order from the source
  double wire = 0.0;      // one way from its parent, the positive conductor
  double back = 0.0;      // the same way back: a conductor, or the chassis with its bonds
  bool spliced = true;    // false: the wire goes straight to the terminals
  double splice = 0.0;    // one side; what passes on to the next outlet goes through it too
  double tail = 0.0;      // one conductor
  double terminal = 0.0;  // one side
  double inside = 0.0;    // outlet's own contact, one side
};

struct ElementOhms {
  double emf_v = 0.0;
  double battery = 0.0;
  double main_fuse = 0.0;     // with its own joints; 0: the circuit has none
  double disconnect = 0.0;    // 0: none
  double feeder = 0.0;        // one side, its lugs included
  double bus = 0.0;           // one side
  double fuse_contact = 0.0;  // both clips
  double fuse = 0.0;
  double clamp = 0.0;         // one side
  std::vector<OutletOhms> outlets;  // by index in circuit.outlets
};
ElementOhms element_ohms(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery);

}  // namespace network::detail
