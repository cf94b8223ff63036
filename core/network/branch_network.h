// The branch circuit as a network, every joint a resistance of its own with a name: battery,
// main fuse, feeder, block, fuse and its clips, clamps, red and black wire by segment,
// splices, tails, tabs, outlets, devices. Proving and tracing edit and probe this one model;
// radial.h is its reduction for sizing, and a test holds the two together.
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
  battery, main_fuse, feeder, bus, fuse_contact, fuse, clamp, wire, splice, tail, terminal,
  outlet_inside, device,
};
struct Place {
  Element element = Element::battery;
  circuit::OutletId outlet = circuit::kBlock;
  Side side = Side::positive;
  friend constexpr bool operator==(const Place&, const Place&) = default;
};

// What is fitted: sizing's choice, or what is there.
struct Fitted {
  const tables::Conductor* size = nullptr;
  const tables::Conductor* tail = nullptr;  // nullptr: the same as size
  units::Amperes fuse{0.0};
};

// How much of each outlet's load is on, 0 to 1, by index in circuit.outlets.
using Loading = std::vector<double>;

enum class BatteryState { resting, low, charging };

// Every resistance branch runs from `near_source` to `away` on both sides, so swap_ends() of a
// red and a black element reverses all that lies beyond; in use the black currents are negative.
// A device runs from its red contact to its black one. Feeder: wire with its lugs. Bus: one side
// of the block. fuse_contact: both clips, red side only, as are main_fuse and fuse. A device not
// fitted or switched off is an open branch.
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

// The resistances build() uses, summed for radial.h. Wire at circuit.wiring.wire_temperature,
// parts by tables::Part, fuses cold and as new; what no table lists is in network/assumed.h.
// The circuit has passed circuit::validate(), and fitted.size is set.
struct SeriesResistances {
  units::Volts emf;
  units::Ohms source;                 // battery inside
  units::Ohms supply_loop;            // main fuse, feeder both ways, bus joints, fuse and clips, clamps
  std::vector<units::Ohms> run_loop;  // by outlet index: wire both ways from its parent
  std::vector<units::Ohms> joint_loop;// splice through-joints on that run, both sides
  std::vector<units::Ohms> tail_loop; // splice to the device: tail, tab, outlet, both sides
};
SeriesResistances series_resistances(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery);

// Voltage below which a device is taken as unable to run at all, for the fold of its law:
// its own minimum when told, else a quarter of nominal.
units::Volts fold_voltage(const circuit::Load& load, units::Volts nominal);

}  // namespace network
