#include "network/current_tree.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

#include "network/node_groups.h"

namespace network::detail {
namespace {

std::size_t at(NodeId node) { return static_cast<std::size_t>(node.index); }

// Lowest resistance first, loads after all resistances.
bool goes_before(const Branch& a, const Branch& b) {
  const auto is_load = [](const Branch& x) { return x.law == Law::constant_current || x.law == Law::constant_power; };
  if (is_load(a) != is_load(b)) return is_load(b);
  return !is_load(a) && a.value < b.value;
}

struct TreeEnd {
  std::size_t branch;
  NodeId other;
};

std::vector<std::vector<TreeEnd>> lowest_tree(const Netlist& netlist) {
  const auto& branches = netlist.branches();
  std::vector<std::size_t> order;
  for (std::size_t b = 0; b < branches.size(); ++b) {
    if (branches[b].law != Law::open && branches[b].from != branches[b].to) order.push_back(b);
  }
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return goes_before(branches[a], branches[b]); });
  NodeGroups groups(netlist.node_count());
  std::vector<std::vector<TreeEnd>> tree(netlist.node_count());
  for (const std::size_t b : order) {
    if (!groups.join(at(branches[b].from), at(branches[b].to))) continue;
    tree[at(branches[b].from)].push_back({b, branches[b].to});
    tree[at(branches[b].to)].push_back({b, branches[b].from});
  }
  return tree;
}

}  // namespace

void balance_currents(const Netlist& netlist, std::vector<double>& current_a) {
  const auto& branches = netlist.branches();
  const auto tree = lowest_tree(netlist);
  constexpr std::size_t kNone = static_cast<std::size_t>(-1);
  std::vector<std::size_t> up(netlist.node_count(), kNone);  // tree branch towards the root
  std::vector<bool> seen(netlist.node_count(), false);
  std::vector<std::size_t> walk;  // roots before what hangs on them
  for (std::size_t root = 0; root < netlist.node_count(); ++root) {
    if (seen[root]) continue;
    seen[root] = true;
    walk.push_back(root);
    for (std::size_t next = walk.size() - 1; next < walk.size(); ++next) {
      for (const TreeEnd& end : tree[walk[next]]) {
        if (seen[at(end.other)]) continue;
        seen[at(end.other)] = true;
        up[at(end.other)] = end.branch;
        walk.push_back(at(end.other));
      }
    }
  }
  std::vector<bool> in_tree(branches.size(), false);
  for (const std::size_t branch : up) {
    if (branch != kNone) in_tree[branch] = true;
  }
  std::vector<double> leaving_a(netlist.node_count(), 0.0);  // by all branches settled so far
  const auto settle = [&](std::size_t b) {
    leaving_a[at(branches[b].from)] += current_a[b];
    leaving_a[at(branches[b].to)] -= current_a[b];
  };
  for (std::size_t b = 0; b < branches.size(); ++b) {
    if (!in_tree[b]) settle(b);
  }
  for (std::size_t w = walk.size(); w-- > 0;) {
    const std::size_t node = walk[w];
    if (up[node] == kNone) continue;
    const std::size_t b = up[node];
    current_a[b] = at(branches[b].from) == node ? -leaving_a[node] : leaving_a[node];
    settle(b);
  }
}

}  // namespace network::detail
