#include "network/netlist.h"

#include <utility>

namespace network {

Netlist::Netlist() = default;

NodeId Netlist::add_node() { return {static_cast<std::int32_t>(node_count_++)}; }

BranchId Netlist::add(const Branch& branch) {
  branches_.push_back(branch);
  return {static_cast<std::int32_t>(branches_.size() - 1)};
}

BranchId Netlist::add_resistance(NodeId from, NodeId to, units::Ohms ohms) {
  return add({from, to, Law::resistance, ohms.number(), 0.0, 0.0});
}

BranchId Netlist::add_battery(NodeId negative, NodeId positive, units::Volts emf, units::Ohms internal) {
  return add({negative, positive, Law::battery, internal.number(), emf.number(), 0.0});
}

BranchId Netlist::add_constant_current(NodeId from, NodeId to, units::Amperes current, units::Volts fold) {
  return add({from, to, Law::constant_current, current.number(), 0.0, fold.number()});
}

BranchId Netlist::add_constant_power(NodeId from, NodeId to, units::Watts power, units::Volts fold) {
  return add({from, to, Law::constant_power, power.number(), 0.0, fold.number()});
}

BranchId Netlist::add_open(NodeId from, NodeId to) { return add({from, to, Law::open, 0.0, 0.0, 0.0}); }

void Netlist::open(BranchId branch) {
  Branch& opened = branches_[static_cast<std::size_t>(branch.index)];
  opened = {opened.from, opened.to, Law::open, 0.0, 0.0, 0.0};
}

void Netlist::add_series(BranchId branch, units::Ohms extra) {
  Branch& in = branches_[static_cast<std::size_t>(branch.index)];
  switch (in.law) {
    case Law::resistance:
    case Law::battery: in.value += extra.number(); break;
    case Law::constant_current:
    case Law::constant_power: {
      const NodeId outer = in.from;
      const NodeId inner = add_node();
      in.from = inner;
      add_resistance(outer, inner, extra);
      break;
    }
    case Law::open: break;
  }
}

BranchId Netlist::bridge(NodeId a, NodeId b, units::Ohms ohms) { return add_resistance(a, b, ohms); }

void Netlist::swap_ends(BranchId first, BranchId second) {
  Branch& one = branches_[static_cast<std::size_t>(first.index)];
  Branch& other = branches_[static_cast<std::size_t>(second.index)];
  std::swap(one.to, other.to);
}

}  // namespace network
