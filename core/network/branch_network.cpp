#include "network/branch_network.h"

#include <algorithm>

#include "network/element_ohms.h"

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

  NodeId add(Element element, OutletId outlet, Side side, NodeId near, double ohm) {
    const NodeId away = network_.netlist.add_node();
    const BranchId branch = network_.netlist.add_resistance(near, away, units::Ohms(ohm));
    network_.elements.push_back({{element, outlet, side}, branch, near, away});
    return away;
  }
  Pair add_both(Element element, OutletId outlet, Pair near, double ohm) {
    const NodeId red = add(element, outlet, Side::positive, near.red, ohm);
    return {red, add(element, outlet, Side::negative, near.black, ohm)};
  }
  Pair add_battery(const ElementOhms& ohms) {
    const NodeId post = network_.netlist.add_node();
    const BranchId branch =
        network_.netlist.add_battery(kReference, post, units::Volts(ohms.emf_v), units::Ohms(ohms.battery));
    network_.elements.push_back({{Element::battery, kBlock, Side::positive}, branch, kReference, post});
    return {post, kReference};
  }
  void add_device(const circuit::Outlet& outlet, units::Volts nominal, double loading, Pair at) {
    const detail::DeviceLaw device = detail::device_law(outlet.devices.front().load, nominal);
    const units::Volts fold = fold_voltage(outlet.devices.front().load, nominal);
    const bool on = loading > 0.0 && device.law != Law::open;
    BranchId branch;
    if (!on || (device.law == Law::resistance && device.value / loading > kLargestOhm)) {
      branch = network_.netlist.add_open(at.red, at.black);
    } else if (device.law == Law::resistance) {
      branch = network_.netlist.add_resistance(at.red, at.black, units::Ohms(device.value / loading));
    } else if (device.law == Law::constant_power) {
      branch = network_.netlist.add_constant_power(at.red, at.black, units::Watts(device.value * loading), fold);
    } else {
      branch = network_.netlist.add_constant_current(at.red, at.black, units::Amperes(device.value * loading), fold);
    }
    network_.elements.push_back({{Element::device, outlet.id, Side::positive}, branch, at.red, at.black});
  }

 private:
  BranchNetwork network_;
};

// From the posts to the wire side of the block's clamps.
Pair build_supply(Builder& builder, const ElementOhms& ohms) {
  Pair at = builder.add_battery(ohms);
  if (ohms.main_fuse > 0.0) {
    at.red = builder.add(Element::main_fuse, kBlock, Side::positive, at.red, ohms.main_fuse);
  }
  at = builder.add_both(Element::feeder, kBlock, at, ohms.feeder);
  at = builder.add_both(Element::bus, kBlock, at, ohms.bus);
  at.red = builder.add(Element::fuse_contact, kBlock, Side::positive, at.red, ohms.fuse_contact);
  at.red = builder.add(Element::fuse, kBlock, Side::positive, at.red, ohms.fuse);
  return builder.add_both(Element::clamp, kBlock, at, ohms.clamp);
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
  const Named* inside = find({Element::outlet_inside, outlet, side});
  return inside != nullptr ? inside->away : kReference;
}

BranchNetwork build(const circuit::Circuit& circuit, const Fitted& fitted, const Loading& loading,
                    BatteryState battery) {
  const ElementOhms ohms = detail::element_ohms(circuit, fitted, battery);
  Builder builder;
  const Pair block = build_supply(builder, ohms);
  std::vector<Pair> splices;  // far side of each outlet's splices, by index
  splices.reserve(circuit.outlets.size());
  for (std::size_t k = 0; k < circuit.outlets.size(); ++k) {
    const circuit::Outlet& outlet = circuit.outlets[k];
    const OutletOhms& own = ohms.outlets[k];
    const std::ptrdiff_t parent = parent_index(circuit, outlet);
    const Pair start = parent < 0 ? block : splices[static_cast<std::size_t>(parent)];
    const Pair end = builder.add_both(Element::wire, outlet.id, start, own.wire);
    const Pair splice = builder.add_both(Element::splice, outlet.id, end, own.splice);
    splices.push_back(splice);
    const Pair tail = builder.add_both(Element::tail, outlet.id, splice, own.tail);
    const Pair terminal = builder.add_both(Element::terminal, outlet.id, tail, own.terminal);
    const Pair contact = builder.add_both(Element::outlet_inside, outlet.id, terminal, own.inside);
    builder.add_device(outlet, circuit.supply.nominal, k < loading.size() ? loading[k] : 0.0, contact);
  }
  return builder.take();
}

SeriesResistances series_resistances(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery) {
  const ElementOhms ohms = detail::element_ohms(circuit, fitted, battery);
  SeriesResistances series;
  series.emf = units::Volts(ohms.emf_v);
  series.source = units::Ohms(ohms.battery);
  series.supply_loop =
      units::Ohms(ohms.main_fuse + ohms.fuse_contact + ohms.fuse + 2.0 * (ohms.feeder + ohms.bus + ohms.clamp));
  for (const OutletOhms& own : ohms.outlets) {
    series.run_loop.emplace_back(2.0 * own.wire);
    series.joint_loop.emplace_back(2.0 * own.splice);
    series.tail_loop.emplace_back(2.0 * (own.tail + own.terminal + own.inside));
  }
  return series;
}

units::Volts fold_voltage(const circuit::Load& load, units::Volts nominal) {
  return load.minimum_voltage ? *load.minimum_voltage : nominal * 0.25;
}

}  // namespace network
