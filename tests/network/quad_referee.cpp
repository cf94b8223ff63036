#include "network/quad_referee.h"

#include <cstddef>

namespace network_test {
namespace {

__extension__ typedef __float128 Quad;

using network::Branch;
using network::Law;
using network::Netlist;

std::size_t at(network::NodeId node) { return static_cast<std::size_t>(node.index); }
Quad size_of(Quad x) { return x < 0 ? -x : x; }

struct Flow {
  Quad amperes;
  Quad siemens;
};

// The laws of netlist.h, from the header's words.
Flow flow(const Branch& branch, Quad voltage) {
  const Quad value = branch.value, fold = branch.fold_v;
  switch (branch.law) {
    case Law::resistance: return {voltage / value, 1 / value};
    case Law::battery: return {(voltage + Quad(branch.emf_v)) / value, 1 / value};
    case Law::constant_current:
      if (voltage < 0) return {0, 0};
      return voltage < fold ? Flow{value * voltage / fold, value / fold} : Flow{value, 0};
    case Law::constant_power:
      if (voltage < 0) return {0, 0};
      return voltage < fold ? Flow{value * voltage / (fold * fold), value / (fold * fold)}
                            : Flow{value / voltage, -value / (voltage * voltage)};
    case Law::open: break;
  }
  return {0, 0};
}

// Solves for the nodes not held; `into` are currents into nodes. The held ones are one zero.
bool star_mesh(std::vector<std::vector<Quad>> g, std::vector<Quad> into, const std::vector<bool>& held,
               std::vector<Quad>& voltage) {
  const std::size_t n = into.size();
  voltage.assign(n, 0);
  std::vector<Quad> divisor(n, 1);
  for (std::size_t p = n; p-- > 0;) {
    if (held[p]) continue;
    const auto left = [&](std::size_t k) { return k != p && (held[k] || k < p); };
    Quad sum = 0;
    for (std::size_t k = 0; k < n; ++k) sum += left(k) ? g[p][k] : Quad(0);
    if (!(size_of(sum) > 0)) return false;
    divisor[p] = sum;
    for (std::size_t j = 0; j < n; ++j) {
      if (!left(j) || g[p][j] == 0) continue;
      into[j] += into[p] * g[p][j] / sum;
      for (std::size_t k = 0; k < n; ++k) {
        if (left(k) && k != j) g[j][k] += g[p][j] * g[p][k] / sum;
      }
    }
  }
  for (std::size_t p = 0; p < n; ++p) {
    if (held[p]) continue;
    Quad sum = into[p];
    for (std::size_t k = 0; k < n; ++k) {
      if (k != p && (held[k] || k < p)) sum += g[p][k] * voltage[k];
    }
    voltage[p] = sum / divisor[p];
  }
  return true;
}

}  // namespace

std::vector<bool> held_nodes(const Netlist& netlist) {
  const std::size_t n = netlist.node_count();
  std::vector<std::size_t> group(n);
  for (std::size_t k = 0; k < n; ++k) group[k] = k;
  for (bool changed = true; changed;) {
    changed = false;
    for (const Branch& branch : netlist.branches()) {
      if (branch.law == Law::open) continue;
      std::size_t& a = group[at(branch.from)];
      std::size_t& b = group[at(branch.to)];
      changed = changed || a != b;
      a = b = a < b ? a : b;
    }
  }
  std::vector<bool> held(n);
  for (std::size_t k = 0; k < n; ++k) held[k] = group[k] == k;
  return held;
}

Verdict judge(const Netlist& netlist, const std::vector<double>& node_voltage_v, const std::vector<bool>& held) {
  const std::size_t n = netlist.node_count();
  std::vector<Quad> voltage(node_voltage_v.begin(), node_voltage_v.end());
  Verdict verdict;
  for (int step = 0; step < 60 && !verdict.settled; ++step) {
    std::vector<std::vector<Quad>> g(n, std::vector<Quad>(n, 0));
    std::vector<Quad> into(n, 0), change;
    for (const Branch& branch : netlist.branches()) {
      const std::size_t a = at(branch.from), b = at(branch.to);
      if (a == b || branch.law == Law::open) continue;
      Flow now = flow(branch, voltage[a] - voltage[b]);
      if (now.siemens == 0) now.siemens = 1e-15;
      g[a][b] += now.siemens;
      g[b][a] += now.siemens;
      into[a] -= now.amperes;
      into[b] += now.amperes;
    }
    if (!star_mesh(std::move(g), std::move(into), held, change)) return verdict;
    Quad largest = 0;
    for (std::size_t k = 0; k < n; ++k) {
      voltage[k] += change[k];
      if (size_of(change[k]) > largest) largest = size_of(change[k]);
    }
    verdict.settled = largest < Quad(1e-13);
    if (!(largest < Quad(1e9))) return verdict;
  }
  for (std::size_t k = 0; k < n; ++k) {
    const double moved = static_cast<double>(size_of(voltage[k] - Quad(node_voltage_v[k])));
    verdict.moved_v = moved > verdict.moved_v ? moved : verdict.moved_v;
    verdict.node_voltage_v.push_back(static_cast<double>(voltage[k]));
  }
  return verdict;
}

}  // namespace network_test
