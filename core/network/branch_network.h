// The branch circuit as a network, every joint a resistance of its own with a name: battery,
// main fuse, main switch, feeder, block, fuse and its clips, clamps, what is in the line, red and
// black wire by segment, splices, tails, tabs, outlets, devices, and beside it what the block's
// other circuits draw. tree.h sums it up for sizing, and a test holds the two together.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "circuit/circuit.h"
#include "network/netlist.h"

namespace network {

enum class Side { positive, negative };

// An element of the branch; `outlet` is kBlock for those that belong to the whole circuit.
enum class Element {
  battery, main_fuse, disconnect, feeder, bus, beside, fuse_contact, fuse, clamp, in_line, wire, splice, tail,
  terminal, outlet_inside, device,
};
struct Place {
  Element element = Element::battery;
  circuit::OutletId outlet = circuit::kBlock;
  Side side = Side::positive;
  int nth = 0;    // from the source: of the parts in line, the pieces of a tapped run, the devices of an outlet
  friend constexpr bool operator==(const Place&, const Place&) = default;
};

// What is fitted: sizing's choice, or what is there.
struct Fitted {
  const tables::Conductor* size = nullptr;
  const tables::Conductor* tail = nullptr;  // nullptr: the same as size
  units::Amperes fuse{0.0};
};

// A place in a Loading, and a point of the tree (tree.h). An outlet with one device has one; lights
// along a run have one each; several devices at an outlet have one each, after one for the joint
// that they share. So with one device at every outlet, places count as outlets do.
struct LoadSlot {
  std::size_t outlet = 0;   // index in circuit.outlets
  std::size_t device = 0;   // index in its devices; kNoPoint: no device here
  int tap = 0;              // which light along the run
};
std::vector<LoadSlot> load_slots(const circuit::Circuit& circuit);

// How much of each load is on, 0 to 1, by slot.
using Loading = std::vector<double>;

enum class BatteryState { resting, low, charging };

// Every resistance branch runs from `near_source` to `away` on both sides, so swap_ends() of a
// red and a black element reverses all that lies beyond; in use the black currents are negative.
// A device runs from its red contact to its black one. Feeder: wire with its lugs. Bus: one side
// of the block. fuse_contact: both clips, red side only, as are main_fuse, disconnect, in_line and
// fuse. A device not fitted or switched off is an open branch. The negative `wire` of a run that
// returns by chassis is the chassis, taken to lead back to the point before. Where lights are
// spread along a run, each piece of its wire is a `wire` of its own and each light a `device`.
struct BranchNetwork {
  Netlist netlist;
  struct Named { Place place; BranchId branch; NodeId near_source; NodeId away; };
  std::vector<Named> elements;

  // nullptr when the circuit has no such element.
  [[nodiscard]] const Named* find(Place place) const;
  [[nodiscard]] NodeId outlet_contact(circuit::OutletId outlet, Side side) const;  // where a plug touches
};
BranchNetwork build(const circuit::Circuit& circuit, const Fitted& fitted, const Loading& loading,
                    BatteryState battery);

}  // namespace network
