#include "network/solve.h"

#include <algorithm>
#include <cmath>

#include "network/current_tree.h"
#include "network/node_groups.h"
#include "network/operating_point.h"
#include "network/star_mesh.h"

namespace network {
namespace {

std::size_t at(NodeId node) { return static_cast<std::size_t>(node.index); }
bool is_load(const Branch& branch) {
  return branch.law == Law::constant_current || branch.law == Law::constant_power;
}
// A branch back to its own node moves nothing but its own current.
bool joins_nodes(const Branch& branch) { return branch.law != Law::open && branch.from != branch.to; }

bool within(double value, double low, double high) { return value >= low && value <= high; }  // false for NaN

// What is wrong with a branch, empty when nothing is.
std::string fault_of(const Branch& branch, std::size_t node_count) {
  const auto known = [&](NodeId node) { return node.index >= 0 && at(node) < node_count; };
  if (!known(branch.from) || !known(branch.to)) return "joins a node that does not exist";
  const bool resists = branch.law == Law::resistance || branch.law == Law::battery;
  if (resists && !within(branch.value, kSmallestOhm, kLargestOhm)) return "has a resistance outside 1e-5 to 1e12 ohm";
  if (branch.law == Law::battery && !within(branch.emf_v, -kLargestEmfV, kLargestEmfV)) {
    return "has a battery voltage outside -1000 to 1000 V";
  }
  if (is_load(branch) && !within(branch.value, 0.0, kLargestLoad)) return "has a load outside 0 to 1e6 A or W";
  if (is_load(branch) && !within(branch.fold_v, 1e-3, kLargestEmfV)) return "has a fold outside 0.001 to 1000 V";
  return {};
}

std::string fault_of(const Netlist& netlist) {
  for (std::size_t b = 0; b < netlist.branches().size(); ++b) {
    const std::string fault = fault_of(netlist.branches()[b], netlist.node_count());
    if (!fault.empty()) return "Branch " + std::to_string(b) + " " + fault + ".";
  }
  return {};
}

struct Ground {
  std::vector<bool> held;      // stands at 0 V: the reference, and one node of each floating part
  std::vector<bool> floating;
};

Ground find_ground(const Netlist& netlist) {
  detail::NodeGroups groups(netlist.node_count());
  for (const Branch& branch : netlist.branches()) {
    if (joins_nodes(branch)) groups.join(at(branch.from), at(branch.to));
  }
  Ground ground{std::vector<bool>(netlist.node_count()), std::vector<bool>(netlist.node_count())};
  for (std::size_t n = 0; n < netlist.node_count(); ++n) {
    ground.held[n] = groups.group(n) == n;
    ground.floating[n] = groups.group(n) != at(kReference);
  }
  return ground;
}

// The linear step by star-mesh elimination.
class Mesh {
 public:
  Mesh(const Netlist& netlist, const Ground& ground)
      : netlist_(netlist), voltage_v_(netlist.node_count()), next_v_(netlist.node_count()),
        mesh_(netlist.node_count(), find_joins(netlist), ground.held) {
    for (std::size_t b = 0; b < netlist.branches().size(); ++b) {
      const Branch& branch = netlist.branches()[b];
      if (!is_load(branch) || !joins_nodes(branch)) continue;
      load_branches_.push_back(b);
      laws_.push_back({branch.law, branch.value, branch.fold_v});
    }
  }
  [[nodiscard]] const std::vector<LoadLaw>& laws() const { return laws_; }
  [[nodiscard]] const std::vector<std::size_t>& load_branches() const { return load_branches_; }
  [[nodiscard]] std::vector<double>& voltage_v() { return voltage_v_; }

  bool solve(const std::vector<double>& slope, const std::vector<double>& offset_a, std::vector<double>& load_v) {
    mesh_.clear();
    std::size_t join = 0, load = 0;
    for (const Branch& branch : netlist_.branches()) {
      if (!joins_nodes(branch)) continue;
      if (is_load(branch)) {
        mesh_.add(join, slope[load], offset_a[load]);
        ++load;
      } else {
        mesh_.add(join, 1.0 / branch.value, branch.emf_v / branch.value);
      }
      ++join;
    }
    if (!mesh_.solve(next_v_)) return false;
    for (std::size_t k = 0; k < load_branches_.size(); ++k) {
      const Branch& branch = netlist_.branches()[load_branches_[k]];
      load_v[k] = next_v_[at(branch.from)] - next_v_[at(branch.to)];
    }
    return true;
  }
  void accept(double fraction) {
    for (std::size_t n = 0; n < voltage_v_.size(); ++n) voltage_v_[n] += fraction * (next_v_[n] - voltage_v_[n]);
  }

 private:
  static std::vector<detail::StarMesh::Join> find_joins(const Netlist& netlist) {
    std::vector<detail::StarMesh::Join> joins;
    for (const Branch& branch : netlist.branches()) {
      if (joins_nodes(branch)) joins.emplace_back(branch.from.index, branch.to.index);
    }
    return joins;
  }

  const Netlist& netlist_;
  std::vector<double> voltage_v_, next_v_;  // by node
  std::vector<std::size_t> load_branches_;
  std::vector<LoadLaw> laws_;
  detail::StarMesh mesh_;
};

void read_currents(const Netlist& netlist, Solution& solution) {
  solution.branch_current_a.reserve(netlist.branches().size());
  for (const Branch& branch : netlist.branches()) {
    const double voltage_v = solution.node_voltage_v[at(branch.from)] - solution.node_voltage_v[at(branch.to)];
    double current_a = 0.0;
    if (is_load(branch)) {
      current_a = LoadLaw{branch.law, branch.value, branch.fold_v}.current_a(voltage_v);
    } else if (branch.law != Law::open) {
      current_a = (voltage_v + branch.emf_v) / branch.value;
    }
    solution.branch_current_a.push_back(current_a);
  }
  detail::balance_currents(netlist, solution.branch_current_a);
}

// Currents into each node, and loads against their laws where the currents came from the balance.
double worst_imbalance(const Netlist& netlist, const Solution& solution) {
  std::vector<double> into_a(netlist.node_count(), 0.0);
  double worst = 0.0;
  for (std::size_t b = 0; b < netlist.branches().size(); ++b) {
    const Branch& branch = netlist.branches()[b];
    const double current_a = solution.branch_current_a[b];
    into_a[at(branch.to)] += current_a;
    into_a[at(branch.from)] -= current_a;
    if (is_load(branch)) {
      const double voltage_v = solution.node_voltage_v[at(branch.from)] - solution.node_voltage_v[at(branch.to)];
      const double by_law = LoadLaw{branch.law, branch.value, branch.fold_v}.current_a(voltage_v);
      worst = std::max(worst, std::abs(by_law - current_a));
    }
  }
  for (const double node_a : into_a) worst = std::max(worst, std::abs(node_a));
  return worst;
}

}  // namespace

units::Volts Solution::between(NodeId plus, NodeId minus) const {
  return units::Volts(node_voltage_v[at(plus)] - node_voltage_v[at(minus)]);
}

units::Amperes Solution::through(BranchId branch) const {
  return units::Amperes(branch_current_a[static_cast<std::size_t>(branch.index)]);
}

Solution solve(const Netlist& netlist) {
  Solution solution;
  solution.message = fault_of(netlist);
  if (!solution.message.empty()) return solution;

  Ground ground = find_ground(netlist);
  Mesh mesh(netlist, ground);
  detail::LoadSpace loads;
  const detail::Walk walk = detail::find_operating_point(mesh.laws(), loads, mesh);
  solution.node_voltage_v = std::move(mesh.voltage_v());
  solution.floating = std::move(ground.floating);
  solution.iterations = walk.iterations;
  read_currents(netlist, solution);
  solution.worst_imbalance_a = worst_imbalance(netlist, solution);
  for (std::size_t b = 0; b < netlist.branches().size(); ++b) {
    const Branch& branch = netlist.branches()[b];
    if (is_load(branch) && branch.value > 0.0 && solution.between(branch.from, branch.to).number() < branch.fold_v) {
      solution.folded.push_back({static_cast<std::int32_t>(b)});
    }
  }
  if (!walk.converged || !(solution.worst_imbalance_a <= kCurrentBalanceA)) {
    solution.outcome = Outcome::not_converged;
    solution.message = "No balance found in " + std::to_string(walk.iterations) + " steps.";
  } else if (!solution.folded.empty()) {
    solution.outcome = Outcome::no_operating_point;
    solution.message = "Loads that cannot run there: " + std::to_string(solution.folded.size()) + ".";
  } else {
    solution.outcome = Outcome::solved;
    solution.message = "Solved.";
  }
  return solution;
}

}  // namespace network
