#include "network/branch_network.h"

#include <algorithm>
#include <numeric>
#include <span>

#include "network/element_ohms.h"
#include "network/load_law.h"

namespace network {
namespace {

using circuit::kBlock;
using circuit::OutletId;
using detail::ElementOhms;
using detail::OutletOhms;


// Red and black ends of the network as far as it has been built.
struct Pair {
  NodeId red;
  NodeId black;
};

// Hangs elements one after the other and writes down where each one is.
class Builder {
 public:
  BranchNetwork take() { return std::move(network_); }

  NodeId add(Place place, NodeId near, double ohm) {
    const NodeId away = network_.netlist.add_node();
    const BranchId branch = network_.netlist.add_resistance(near, away, units::Ohms(ohm));
    network_.elements.push_back({place, branch, near, away});
    return away;
  }
  NodeId add_red(Element element, NodeId near, double ohm) {
    return add({element, kBlock, Side::positive}, near, ohm);
  }
  Pair add_both(Element element, OutletId outlet, Pair near, double red_ohm, double black_ohm, int nth = 0) {
    const NodeId red = add({element, outlet, Side::positive, nth}, near.red, red_ohm);
    return {red, add({element, outlet, Side::negative, nth}, near.black, black_ohm)};
  }
  Pair add_both(Element element, OutletId outlet, Pair near, double ohm, int nth = 0) {
    return add_both(element, outlet, near, ohm, ohm, nth);
  }
  Pair add_battery(const ElementOhms& ohms) {
    const NodeId post = network_.netlist.add_node();
    const BranchId branch =
        network_.netlist.add_battery(kReference, post, units::Volts(ohms.emf_v), units::Ohms(ohms.battery));
    network_.elements.push_back({{Element::battery, kBlock, Side::positive}, branch, kReference, post});
    return {post, kReference};
  }
  void add_device(Place place, const circuit::Load& load, units::Volts nominal, double loading, Pair at) {
    const LoadLaw device = load_law(load, nominal).part(loading > 0.0 ? loading : 1.0);
    const units::Volts fold(device.fold_v);
    const bool on = loading > 0.0 && device.law != Law::open;
    BranchId branch;
    if (!on || (device.law == Law::resistance && device.value > kLargestOhm)) {
      branch = network_.netlist.add_open(at.red, at.black);
    } else if (device.law == Law::resistance) {
      branch = network_.netlist.add_resistance(at.red, at.black, units::Ohms(device.value));
    } else if (device.law == Law::constant_power) {
      branch = network_.netlist.add_constant_power(at.red, at.black, units::Watts(device.value), fold);
    } else {
      branch = network_.netlist.add_constant_current(at.red, at.black, units::Amperes(device.value), fold);
    }
    network_.elements.push_back({place, branch, at.red, at.black});
  }
  void add_beside(units::Amperes current, units::Volts nominal, Pair at) {
    const BranchId branch = network_.netlist.add_constant_current(at.red, at.black, current, nominal * kFoldsBelow);
    network_.elements.push_back({{Element::beside, kBlock, Side::positive}, branch, at.red, at.black});
  }

 private:
  BranchNetwork network_;
};

// From the posts to the wire side of the block's clamps.
Pair build_supply(Builder& builder, const circuit::Supply& supply, const ElementOhms& ohms) {
  Pair at = builder.add_battery(ohms);
  if (ohms.main_fuse > 0.0) at.red = builder.add_red(Element::main_fuse, at.red, ohms.main_fuse);
  if (ohms.disconnect > 0.0) at.red = builder.add_red(Element::disconnect, at.red, ohms.disconnect);
  at = builder.add_both(Element::feeder, kBlock, at, ohms.feeder);
  at = builder.add_both(Element::bus, kBlock, at, ohms.bus);
  if (supply.beside > units::Amperes(0.0)) builder.add_beside(supply.beside, supply.nominal, at);
  at.red = builder.add_red(Element::fuse_contact, at.red, ohms.fuse_contact);
  at.red = builder.add_red(Element::fuse, at.red, ohms.fuse);
  return builder.add_both(Element::clamp, kBlock, at, ohms.clamp);
}

// One outlet being built: its parts, and how much is on by its places in the loading.
struct OutletJob {
  const circuit::Outlet& outlet;
  const OutletOhms& ohms;
  units::Volts nominal;
  std::span<const double> on;
  [[nodiscard]] double part_on(std::size_t place) const { return place < on.size() ? on[place] : 0.0; }
};

// From where the wire ends, or from the splice, to the devices.
void build_outlet(Builder& builder, const OutletJob& job, Pair from, int tap) {
  const OutletId id = job.outlet.id;
  if (job.ohms.spliced) from = builder.add_both(Element::tail, id, from, job.ohms.tail, tap);
  from = builder.add_both(Element::terminal, id, from, job.ohms.terminal, tap);
  const Pair contact = builder.add_both(Element::outlet_inside, id, from, job.ohms.inside, tap);
  const auto& devices = job.outlet.devices;
  for (std::size_t d = 0; d < devices.size(); ++d) {
    const std::size_t light = static_cast<std::size_t>(tap);
    const std::size_t place = devices.size() > 1 ? d + 1 : light;   // the first place of several is the joint's
    const int nth = static_cast<int>(devices.size() > 1 ? d : light);
    builder.add_device({Element::device, id, Side::positive, nth}, devices[d].load, job.nominal,
                       job.part_on(place) / job.outlet.taps, contact);
  }
}

double piece(double ohm, int taps) { return std::max(ohm / taps, kSmallestOhm); }

// The run to an outlet and the outlet itself; gives where the next run goes on.
Pair build_run(Builder& builder, const OutletJob& job, Pair at) {
  const OutletId id = job.outlet.id;
  int nth = 0;
  for (const double ohm : job.ohms.in_line) at.red = builder.add({Element::in_line, id, Side::positive, nth++}, at.red, ohm);
  const int taps = job.outlet.taps;
  for (int tap = 0; tap < taps; ++tap) {
    at = builder.add_both(Element::wire, id, at, piece(job.ohms.wire, taps), piece(job.ohms.back, taps), tap);
    if (job.ohms.spliced) at = builder.add_both(Element::splice, id, at, job.ohms.splice, tap);
    if (job.outlet.point == circuit::PointKind::outlet) build_outlet(builder, job, at, tap);
  }
  return at;
}

// Index of the outlet that feeds this one, or -1 for the block.
std::ptrdiff_t parent_index(const circuit::Circuit& circuit, const circuit::Outlet& outlet) {
  if (outlet.fed_from == kBlock) return -1;
  const auto parent = std::find_if(circuit.outlets.begin(), circuit.outlets.end(),
                                   [&](const circuit::Outlet& other) { return other.id == outlet.fed_from; });
  return parent == circuit.outlets.end() ? -1 : parent - circuit.outlets.begin();
}

}  // namespace

const BranchNetwork::Named* BranchNetwork::find(Place place) const {
  const auto found =
      std::find_if(elements.begin(), elements.end(), [&](const Named& named) { return named.place == place; });
  return found == elements.end() ? nullptr : &*found;
}

NodeId BranchNetwork::outlet_contact(OutletId outlet, Side side) const {
  // Of lights along a run, the farthest; of a point without contacts, its joint.
  const auto last = std::find_if(elements.rbegin(), elements.rend(), [&](const Named& named) {
    const Element element = named.place.element;
    return named.place.outlet == outlet && named.place.side == side &&
           (element == Element::outlet_inside || element == Element::splice);
  });
  return last != elements.rend() ? last->away : kReference;
}

BranchNetwork build(const circuit::Circuit& circuit, const Fitted& fitted, const Loading& loading,
                    BatteryState battery) {
  const ElementOhms ohms = detail::element_ohms(circuit, fitted, battery);
  Builder builder;
  const Pair block = build_supply(builder, circuit.supply, ohms);
  std::vector<Pair> ends;  // where each outlet's run ends and the next goes on, by index
  ends.reserve(circuit.outlets.size());
  std::size_t slot = 0;
  for (std::size_t k = 0; k < circuit.outlets.size(); ++k) {
    const circuit::Outlet& outlet = circuit.outlets[k];
    const std::ptrdiff_t parent = parent_index(circuit, outlet);
    const std::size_t slots =
        outlet.devices.size() > 1 ? outlet.devices.size() + 1 : static_cast<std::size_t>(outlet.taps);
    const std::size_t first = std::min(slot, loading.size());
    const std::span<const double> on(loading.data() + first, std::min(slots, loading.size() - first));
    slot += slots;
    const OutletJob job{outlet, ohms.outlets[k], circuit.supply.nominal, on};
    ends.push_back(build_run(builder, job, parent < 0 ? block : ends[static_cast<std::size_t>(parent)]));
  }
  return builder.take();
}

}  // namespace network
