#include "net.h"

#include <algorithm>

namespace judge {
namespace {

double weakest_guard(const Leg& leg) {
  double amps = kNoLimit;
  for (const Guard& guard : leg.guards) amps = std::min(amps, guard.amps);
  return amps;
}

// On a tree the most that can flow is the least cut: each guard lets its rating through, each source gives its most.
void flood(Net& net) {
  const auto count = net.legs.size();
  net.from_parent.assign(count, 0);
  net.from_beyond.assign(count, 0);
  std::vector<std::vector<std::size_t>> children(count);
  for (std::size_t n = 1; n < count; ++n) children[static_cast<std::size_t>(net.legs[n].parent)].push_back(n);
  const auto rises = [&](std::size_t n) { return std::min(weakest_guard(net.legs[n]), net.from_beyond[n]); };
  for (std::size_t n = count; n-- > 0;) {
    net.from_beyond[n] = net.legs[n].supply_amps;
    for (const std::size_t child : children[n]) net.from_beyond[n] += rises(child);
  }
  for (std::size_t n = 1; n < count; ++n) {
    const auto parent = static_cast<std::size_t>(net.legs[n].parent);
    double amps = net.legs[parent].supply_amps;
    if (parent > 0) amps += std::min(weakest_guard(net.legs[parent]), net.from_parent[parent]);
    for (const std::size_t sibling : children[parent])
      if (sibling != n) amps += rises(sibling);
    net.from_parent[n] = amps;
  }
}

int add(Net& net, int parent, const Run* run, std::vector<Guard> guards, std::string name) {
  Leg leg;
  leg.parent = parent;
  leg.run = run;
  leg.guards = std::move(guards);
  std::ranges::sort(leg.guards, {}, &Guard::metres_from_start);
  leg.name = std::move(name);
  net.legs.push_back(std::move(leg));
  return static_cast<int>(net.legs.size()) - 1;
}

void add_circuit(Net& net, const Circuit& circuit, int index) {
  const int bar = net.block_node.at(static_cast<std::size_t>(circuit.block));
  const int position = add(net, bar, nullptr, {circuit.fuse}, circuit.name + ", fuse position");
  net.legs.back().circuit = index;
  net.position_node.push_back(position);
  std::vector<int> splice;
  std::vector<int> point;
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    const Outlet& outlet = circuit.outlets[i];
    const int from = outlet.fed_from < 0 ? position : splice.at(static_cast<std::size_t>(outlet.fed_from));
    const auto tagged = [&](int parent, const Run& run, bool tail) {
      const int node = add(net, parent, &run, run.guards, circuit.name + ", " + outlet.name + (tail ? ", tail" : ""));
      net.legs.back().circuit = index;
      net.legs.back().outlet = static_cast<int>(i);
      net.legs.back().is_tail = tail;
      return node;
    };
    splice.push_back(tagged(from, outlet.run, false));
    point.push_back(outlet.has_tail ? tagged(splice.back(), outlet.tail, true) : splice.back());
  }
  net.outlet_node.push_back(std::move(point));
}

}  // namespace

Net build(const World& world) {
  Net net;
  net.legs.emplace_back();
  net.legs[0].name = "battery";
  net.legs[0].supply_amps = kNoLimit;
  for (const Block& block : world.blocks) {
    const int parent = block.fed_from < 0 ? 0 : net.block_node.at(static_cast<std::size_t>(block.fed_from));
    net.block_node.push_back(add(net, parent, &block.feeder, block.feeder.guards, block.name + ", feeder"));
  }
  for (std::size_t c = 0; c < world.circuits.size(); ++c)
    add_circuit(net, world.circuits[c], static_cast<int>(c));
  for (const Source& source : world.sources) {
    const int parent = source.joins < 0 ? 0 : net.block_node.at(static_cast<std::size_t>(source.joins));
    add(net, parent, &source.cable, source.cable.guards, source.name + ", cable");
    net.legs.back().supply_amps = source.most_amps;
  }
  flood(net);
  return net;
}

double leg_ohms(const Leg& leg, View view) {
  const bool strict = view == View::strict;
  double ohms = 0;
  for (const Guard& guard : leg.guards) ohms += guard_ohms(guard, view);
  if (leg.run == nullptr) return ohms + (strict ? 0.001 : 0.0);
  const Run& run = *leg.run;
  const double each = ohms_per_metre(run.wire, view) * run.metres;
  ohms += run.back == Return::wire ? 2 * each : each;
  if (!strict) return ohms;
  // Good joints: to 1.5 milliohm for clamps and tabs of thin wire, 0.3 for lugs; a switch 10, a frame path 10. (Bands.)
  const bool thick = copper_area(run.wire) > 9;
  ohms += run.joints * (thick ? 0.0003 : 0.0015);
  ohms += static_cast<double>(run.parts.size()) * (thick ? 0.001 : 0.010);
  return run.back == Return::chassis ? ohms + 0.010 : ohms;
}

double ampacity(const Leg& leg, View view) {
  return leg.run == nullptr ? kNoLimit : ampacity(leg.run->wire, leg.run->around, leg.run->back, view);
}

}  // namespace judge
