#include "judge/volts.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace judge {
namespace {

constexpr int kMostSweeps = 3000;

class Builder {
 public:
  Builder(const Circuit& circuit, const Choice& choice, double metal_c, View view)
      : circuit_(circuit), choice_(choice), metal_c_(metal_c), view_(view) {}

  Net build() {
    const Supply& supply = circuit_.supply;
    net_.posts = node(-1, supply.inside_ohms);
    double feeder = 2 * (supply.feeder_metres * ohms_per_metre(supply.feeder, metal_c_, view_) + 2 * supply.ring_ohms +
                         supply.bus_ohms);
    if (supply.main_amps > 0) feeder += fuse_ohms(supply.main_kind, supply.main_amps, view_);
    if (supply.switch_amps > 0) feeder += supply.switch_ohms;
    net_.bus = node(net_.posts, feeder);
    const int fed = node(net_.bus, fuse_ohms(circuit_.fuse_kind, choice_.fuse, view_) + 2 * circuit_.clamp.ohms);
    for (std::size_t i = 0; i < circuit_.outlets.size(); ++i) {
      const Outlet& outlet = circuit_.outlets[i];
      run(static_cast<int>(i), outlet.fed_from < 0 ? fed : goes_on_.at(static_cast<std::size_t>(outlet.fed_from)));
    }
    return std::move(net_);
  }

 private:
  int node(int parent, double ohms) {
    net_.parent.push_back(parent);
    net_.ohms.push_back(ohms);
    return static_cast<int>(net_.parent.size()) - 1;
  }

  void run(int index, int from) {
    const Outlet& outlet = circuit_.outlets[static_cast<std::size_t>(index)];
    double in_line = 0;
    for (const InLine& part : outlet.in_line) {
      in_line += part.ohms;
      if (part.kind == InLineKind::fuse) in_line += element_ohms(circuit_.fuse_kind, part.amps, view_);
    }
    const double wire = outlet.metres * ohms_per_metre(run_wire(circuit_, index, choice_.size), metal_c_, view_);
    const double loop = wire + (outlet.chassis_return ? circuit_.supply.chassis_ohms : wire);
    const double splice = outlet.spliced || outlet.only_joins ? 2 * circuit_.splice.ohms : 0;
    double tail = 2 * (outlet.terminal.ohms + outlet.point.ohms);
    if (outlet.spliced)
      tail += 2 * circuit_.tail_metres * ohms_per_metre(tail_wire(circuit_, index, choice_), metal_c_, view_);
    int at = from;
    for (int light = 0; light < outlet.lights; ++light) {
      at = node(at, loop / outlet.lights + splice + (light == 0 ? in_line : 0.0));
      if (outlet.only_joins) continue;
      const int contact = node(at, tail);
      for (std::size_t d = 0; d < outlet.devices.size(); ++d)
        net_.loads.push_back({contact, index, static_cast<int>(d), counted_amps(outlet.devices[d]) / outlet.lights});
    }
    net_.end.push_back(outlet.only_joins ? at : static_cast<int>(net_.parent.size()) - 1);
    goes_on_.push_back(at);
  }

  const Circuit& circuit_;
  const Choice& choice_;
  double metal_c_;
  View view_;
  Net net_;
  std::vector<int> goes_on_;
};

double drawn(Law law, double amps, double nominal, double volts) {
  switch (law) {
    case Law::current: return amps;
    case Law::power: return amps * nominal / volts;
    case Law::resistive: return amps * volts / nominal;
  }
  return 0;
}

}  // namespace

bool starts_long(const Device& device) { return device.start_s >= 60 && device.amps > 0; }
double counted_amps(const Device& device) {
  return starts_long(device) ? std::max(device.amps, device.start_amps) : device.amps;
}

Wire run_wire(const Circuit& circuit, int outlet, const std::string& size) {
  const Outlet& at = circuit.outlets[static_cast<std::size_t>(outlet)];
  if (at.there_already) return at.wire;
  return {circuit.gauge, size, at.wire.metal, at.wire.two_core};
}

Wire tail_wire(const Circuit& circuit, int outlet, const Choice& choice) {
  const Outlet& at = circuit.outlets[static_cast<std::size_t>(outlet)];
  if (at.there_already) return {at.wire.gauge, at.wire.size, Metal::copper, false};
  return {circuit.gauge, choice.tail.empty() ? choice.size : choice.tail, Metal::copper, false};
}

Net build(const Circuit& circuit, const Choice& choice, double metal_c, View view) {
  return Builder(circuit, choice, metal_c, view).build();
}

Volts solve(const Circuit& circuit, const Net& net, double battery_volts, const std::vector<double>& on) {
  const std::size_t nodes = net.parent.size();
  const double nominal = circuit.supply.nominal;
  Volts result;
  result.at.assign(nodes, battery_volts);
  result.drawn.assign(net.loads.size(), 0);
  std::vector<double> through(nodes);
  for (int sweep = 0; sweep < kMostSweeps; ++sweep) {
    std::fill(through.begin(), through.end(), 0.0);
    through[static_cast<std::size_t>(net.bus)] += circuit.supply.beside_amps;
    for (std::size_t l = 0; l < net.loads.size(); ++l) {
      const Load& load = net.loads[l];
      const double volts = result.at[static_cast<std::size_t>(load.node)];
      if (volts < 0.2 * nominal) return result;
      const Outlet& outlet = circuit.outlets[static_cast<std::size_t>(load.outlet)];
      const Law law = outlet.devices[static_cast<std::size_t>(load.device)].law;
      result.drawn[l] = drawn(law, load.amps * on[l], nominal, volts);
      through[static_cast<std::size_t>(load.node)] += result.drawn[l];
    }
    // A node stands behind its parent: one pass inwards for the amperes, one outwards for the volts.
    for (std::size_t n = nodes; n-- > 0;) {
      if (net.parent[n] >= 0) through[static_cast<std::size_t>(net.parent[n])] += through[n];
    }
    double moved = 0;
    for (std::size_t n = 0; n < nodes; ++n) {
      const double before = net.parent[n] < 0 ? battery_volts : result.at[static_cast<std::size_t>(net.parent[n])];
      const double volts = before - net.ohms[n] * through[n];
      moved = std::max(moved, std::abs(volts - result.at[n]));
      result.at[n] = volts;
    }
    if (moved < 1e-9 * battery_volts) {
      result.settled = true;
      return result;
    }
  }
  return result;
}

std::vector<double> spend(const Net& net, double at_most, const std::vector<double>& worth) {
  std::vector<double> on(net.loads.size(), 1);
  if (at_most <= 0) return on;
  std::vector<std::size_t> order(on.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return worth[a] > worth[b]; });
  double left = at_most;
  for (const std::size_t l : order) {
    const double amps = net.loads[l].amps;
    on[l] = amps > 0 ? std::min(1.0, left / amps) : 0;
    left -= on[l] * amps;
  }
  return on;
}

std::vector<double> shared_ohms(const Net& net, int with) {
  std::vector<bool> on_way(net.parent.size(), false);
  for (int n = with; n >= 0; n = net.parent[static_cast<std::size_t>(n)]) on_way[static_cast<std::size_t>(n)] = true;
  std::vector<double> sum(net.parent.size(), 0);
  for (std::size_t n = 0; n < sum.size(); ++n) {
    // The drop counts from the posts: what lies inside the battery is not part of it.
    const double own = on_way[n] && static_cast<int>(n) != net.posts ? net.ohms[n] : 0;
    sum[n] = own + (net.parent[n] < 0 ? 0 : sum[static_cast<std::size_t>(net.parent[n])]);
  }
  std::vector<double> shared;
  for (const Load& load : net.loads) shared.push_back(sum[static_cast<std::size_t>(load.node)]);
  return shared;
}

std::vector<double> short_amps(const Net& net, double battery_volts) {
  std::vector<double> to(net.parent.size(), 0);
  for (std::size_t n = 0; n < to.size(); ++n)
    to[n] = net.ohms[n] + (net.parent[n] < 0 ? 0 : to[static_cast<std::size_t>(net.parent[n])]);
  std::vector<double> amps;
  for (const int end : net.end) amps.push_back(battery_volts / to[static_cast<std::size_t>(end)]);
  return amps;
}

}  // namespace judge
