#include "network/tree.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "network/element_ohms.h"

namespace network {
namespace {

using detail::OutletOhms;

// One outlet's points, hung on `parent`; gives the point where the next run goes on.
std::size_t add_points(Tree& tree, const circuit::Outlet& outlet, std::size_t index, const OutletOhms& own,
                       std::size_t parent) {
  const double in_line = std::accumulate(own.in_line.begin(), own.in_line.end(), 0.0);
  const int taps = outlet.taps;
  const double wire = (std::max(own.wire / taps, kSmallestOhm) + std::max(own.back / taps, kSmallestOhm));
  const double joint = own.spliced ? 2.0 * own.splice : 0.0;
  const double tail = 2.0 * ((own.spliced ? own.tail : 0.0) + own.terminal + own.inside);
  TreePoint point;
  point.outlet = index;
  point.wire_ohm = wire;
  const auto add = [&](const circuit::Load* load, double path, double to_device) {
    point.parent = parent;
    point.load = load;
    point.path_ohm = path;
    point.tail_ohm = to_device;
    tree.points.push_back(point);
    parent = tree.points.size() - 1;
    return parent;
  };
  if (outlet.devices.size() > 1) {
    const std::size_t goes_on = add(nullptr, in_line + wire + joint, 0.0);
    point.wire_ohm = 0.0;
    for (std::size_t d = 0; d < outlet.devices.size(); ++d) add(&outlet.devices[d].load, d == 0 ? tail : 0.0, 0.0);
    tree.point_of_outlet.push_back(goes_on + 1);
    return goes_on;
  }
  const circuit::Load* load = outlet.devices.empty() ? nullptr : &outlet.devices.front().load;
  point.share = 1.0 / taps;
  for (int tap = 0; tap < taps; ++tap) add(load, (tap == 0 ? in_line : 0.0) + wire + joint, load != nullptr ? tail : 0.0);
  tree.point_of_outlet.push_back(parent);
  return parent;
}

}  // namespace

Tree tree_of(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery) {
  const detail::ElementOhms ohms = detail::element_ohms(circuit, fitted, battery);
  Tree tree;
  tree.emf_v = ohms.emf_v;
  tree.source_ohm = ohms.battery;
  tree.feeder_ohm = ohms.main_fuse + ohms.disconnect + 2.0 * (ohms.feeder + ohms.bus);
  tree.supply_ohm = tree.feeder_ohm + ohms.fuse_contact + ohms.fuse + 2.0 * ohms.clamp;
  tree.beside_a = circuit.supply.beside.number();
  tree.nominal_v = circuit.supply.nominal.number();
  tree.points.reserve(circuit.outlets.size());
  tree.point_of_outlet.reserve(circuit.outlets.size());
  std::map<circuit::OutletId, std::size_t> goes_on;   // the point that what an outlet feeds hangs on
  for (std::size_t k = 0; k < circuit.outlets.size(); ++k) {
    const circuit::Outlet& outlet = circuit.outlets[k];
    const auto parent = goes_on.find(outlet.fed_from);
    goes_on[outlet.id] = add_points(tree, outlet, k, ohms.outlets[k], parent == goes_on.end() ? kNoPoint : parent->second);
  }
  return tree;
}

std::vector<LoadSlot> load_slots(const circuit::Circuit& circuit) {
  std::vector<LoadSlot> slots;
  slots.reserve(circuit.outlets.size());
  for (std::size_t k = 0; k < circuit.outlets.size(); ++k) {
    const circuit::Outlet& outlet = circuit.outlets[k];
    if (outlet.devices.size() > 1) {
      slots.push_back({k, kNoPoint, 0});
      for (std::size_t d = 0; d < outlet.devices.size(); ++d) slots.push_back({k, d, 0});
    } else {
      const std::size_t device = outlet.devices.empty() ? kNoPoint : 0;
      for (int tap = 0; tap < outlet.taps; ++tap) slots.push_back({k, device, tap});
    }
  }
  return slots;
}

}  // namespace network
