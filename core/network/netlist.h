// A direct-current network as nodes and branches. Node 0 is the battery's negative post, the
// zero of all voltages. Resistances are 1e-5 to 1e12 ohm: a bolted short is 1e-4 ohm.
// Every fault is an edit of a copy: open a branch, add resistance in it, bridge two nodes,
// swap two branches' ends. Any such edit leaves a network that solve() can answer, floating
// parts included.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "units/quantity.h"

namespace network {

struct NodeId {
  std::int32_t index = 0;
  friend constexpr auto operator<=>(NodeId, NodeId) = default;
};
inline constexpr NodeId kReference{0};
struct BranchId {
  std::int32_t index = -1;
  friend constexpr auto operator<=>(BranchId, BranchId) = default;
};

inline constexpr double kSmallestOhm = 1e-5;
inline constexpr double kLargestOhm = 1e12;
inline constexpr double kLargestEmfV = 1000.0;    // either sign
inline constexpr double kLargestLoad = 1e6;       // A or W

enum class Law {
  resistance,        // value_ohm
  battery,           // emf_v behind value_ohm; `to` is the positive post
  constant_current,  // takes value_a from `from` to `to` while the voltage is at least fold_v;
                     // below, proportional to voltage; none when reversed
  constant_power,    // takes value_w the same way: P/V at or above fold_v, below it P*V/fold_v^2
  open,              // nothing
};

struct Branch {
  NodeId from;
  NodeId to;
  Law law = Law::open;
  double value = 0.0;       // ohm, A or W by law; battery: its internal ohm
  double emf_v = 0.0;       // battery only
  double fold_v = 0.0;      // loads only, above 0
};

class Netlist {
 public:
  Netlist();                              // node 0 exists
  NodeId add_node();
  BranchId add_resistance(NodeId from, NodeId to, units::Ohms ohms);
  BranchId add_battery(NodeId negative, NodeId positive, units::Volts emf, units::Ohms internal);
  BranchId add_constant_current(NodeId from, NodeId to, units::Amperes current, units::Volts fold);
  BranchId add_constant_power(NodeId from, NodeId to, units::Watts power, units::Volts fold);

  BranchId add_open(NodeId from, NodeId to);                // a place for something not there

  void open(BranchId branch);
  void add_series(BranchId branch, units::Ohms extra);      // a load gets it in its `from` lead, with a new
                                                            // node; in an open branch nothing changes
  BranchId bridge(NodeId a, NodeId b, units::Ohms ohms);    // a short, or a meter or lamp
  void swap_ends(BranchId first, BranchId second);          // the `to` ends change places: reversed polarity

  [[nodiscard]] std::size_t node_count() const { return node_count_; }
  [[nodiscard]] const std::vector<Branch>& branches() const { return branches_; }
  [[nodiscard]] const Branch& branch(BranchId id) const { return branches_[static_cast<std::size_t>(id.index)]; }

 private:
  BranchId add(const Branch& branch);
  std::size_t node_count_ = 1;
  std::vector<Branch> branches_;
};

}  // namespace network
