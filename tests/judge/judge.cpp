#include "judge.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace judge {
namespace {

constexpr double kSlack = 1e-6;
// 33 CFR 183.455(b): 7 in, or 40 in when sheathed; 72 in sheathed from the battery post is ABYC, from memory.
constexpr double kBare = 0.178;
constexpr double kSheathed = 1.016;
constexpr double kSheathedFromPost = 1.829;
constexpr double kLastingMargin = 1.25;
// A power load draws more on a low battery; the lowest that a good installation is worked out for.
constexpr double kLowBattery = 0.9;
// An inrush shorter than this is the fuse's gates' affair; a longer one is a load.
constexpr double kLongInrush = 1.0;

bool above(double value, double limit) { return value > limit * (1 + kSlack) + kSlack; }

double nominal_amps(const Device& device, double volts) {
  return device.watts > 0 ? device.watts / volts : device.amps;
}

// What it may draw: lenient on a full battery, strict on a low one.
double running_amps(const World& world, const Device& device, View view) {
  const double nominal = world.battery.nominal_volts;
  double amps = nominal_amps(device, nominal);
  if (device.law == Law::power)
    amps *= view == View::lenient ? std::min(1.0, nominal / world.battery.resting_volts) : 1 / kLowBattery;
  return amps;
}

double lasting_inrush(const Device& device) {
  return device.inrush_s > kLongInrush ? device.inrush_amps : 0;
}

double load(const World& world, const Outlet& outlet, View view) {
  double amps = 0;
  for (const Device& device : outlet.devices) amps += running_amps(world, device, view);
  return amps;
}

double capped(const Circuit& circuit, double amps) {
  return circuit.at_most_amps > 0 ? std::min(circuit.at_most_amps, amps) : amps;
}

double circuit_load(const World& world, const Circuit& circuit, View view) {
  double amps = 0;
  for (const Outlet& outlet : circuit.outlets) amps += load(world, outlet, view);
  return capped(circuit, amps);
}

// Nominal amps beyond each node of one circuit's part of the tree.
std::vector<double> loads_beyond(const World& world, const Net& net, int index, View view) {
  const Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  std::vector<double> amps(net.legs.size(), 0);
  for (std::size_t o = 0; o < circuit.outlets.size(); ++o)
    amps[static_cast<std::size_t>(net.outlet_node[static_cast<std::size_t>(index)][o])] +=
        load(world, circuit.outlets[o], view);
  for (std::size_t n = net.legs.size(); n-- > 1;) amps[static_cast<std::size_t>(net.legs[n].parent)] += amps[n];
  for (double& value : amps) value = capped(circuit, value);
  return amps;
}

double allowed_bare(const Leg& leg) {
  if (!leg.run->around.sheathed) return kBare;
  return leg.parent == 0 ? kSheathedFromPost : kSheathed;
}

double iz(const World& world, const Leg& leg, View view) {
  const double amps = ampacity(leg, view);
  return world.trailer_code ? std::min(amps, trailer_ceiling(leg.run->wire)) : amps;
}

// Current that comes in at one end is stopped by the first guard no larger than what the wire bears.
void judge_end(const Leg& leg, double available, double bears, bool from_start, std::vector<Finding>& out) {
  if (!above(available, bears)) return;
  double bare = leg.run->metres;
  bool guarded = false;
  for (const Guard& guard : leg.guards) {
    if (above(guard.amps, bears)) continue;
    const double here = from_start ? guard.metres_from_start : leg.run->metres - guard.metres_from_start;
    bare = guarded ? std::min(bare, here) : here;
    guarded = true;
  }
  if (guarded && !above(bare, allowed_bare(leg))) return;
  out.push_back({What::unprotected_wire, leg.name + (from_start ? ", from the battery side" : ", from its far end"),
                 available, bears});
}

void judge_protection(const World& world, const Net& net, std::size_t n, View view, std::vector<Finding>& out) {
  const Leg& leg = net.legs[n];
  if (leg.run == nullptr || leg.run->metres <= 0) return;
  if (!known(leg.run->wire)) {
    out.push_back({What::size_not_known, leg.name});
    return;
  }
  const double bears = iz(world, leg, view);
  judge_end(leg, net.from_parent[n], bears, true, out);
  judge_end(leg, net.from_beyond[n], bears, false, out);
}

void judge_guards(const World& world, const Leg& leg, View view, std::vector<Finding>& out) {
  const double nominal = world.battery.nominal_volts;
  const double sees = view == View::lenient ? nominal : highest_volts(nominal);
  for (const Guard& guard : leg.guards)
    if (above(sees, guard.volts)) out.push_back({What::guard_volts_too_low, leg.name, sees, guard.volts});
}

void judge_run(const World& world, const Leg& leg, double amps, View view, std::vector<Finding>& out) {
  const Run& run = *leg.run;
  if (world.kind == VehicleKind::boat && run.back == Return::chassis) out.push_back({What::hull_return, leg.name});
  if (run.is_new && run.wire.metal == Metal::copper_clad_aluminium)
    out.push_back({What::clad_wire_in_new_work, leg.name});
  // 33 CFR 183.425(d) 16 AWG, ISO 10133 7.7 1 mm2, for single conductors.
  const double least = run.wire.gauge == Gauge::metric ? 0.88 : 1.1;
  const bool thin = known(run.wire) && copper_area(run.wire) < least;
  if (world.kind == VehicleKind::boat && run.is_new && !run.around.sheathed && thin)
    out.push_back({What::too_thin_for_a_boat, leg.name, copper_area(run.wire), least});
  if (known(run.wire) && above(amps, ampacity(leg, view)))
    out.push_back({What::wire_overloaded, leg.name, amps, ampacity(leg, view)});
  for (const Part& part : run.parts)
    if (above(amps, part.amps)) out.push_back({What::part_too_small, leg.name + ", " + part.name, amps, part.amps});
}

// The way from the battery posts to a node, the node first.
std::vector<std::size_t> way(const Net& net, int node) {
  std::vector<std::size_t> legs;
  for (int n = node; n > 0; n = net.legs[static_cast<std::size_t>(n)].parent) legs.push_back(static_cast<std::size_t>(n));
  return legs;
}

void judge_points(const World& world, const Net& net, int index, View view, std::vector<Finding>& out) {
  const Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  for (std::size_t o = 0; o < circuit.outlets.size(); ++o) {
    const Outlet& outlet = circuit.outlets[o];
    if (outlet.point_amps <= 0) continue;
    const int node = net.outlet_node[static_cast<std::size_t>(index)][o];
    double guard = kNoLimit;
    for (const std::size_t n : way(net, node))
      for (const Guard& g : net.legs[n].guards) guard = std::min(guard, g.amps);
    const double amps = outlet.point == Point::socket ? guard : capped(circuit, load(world, outlet, View::lenient));
    if (above(amps, outlet.point_amps))
      out.push_back({What::point_too_small, circuit.name + ", " + outlet.name, amps, outlet.point_amps});
    (void)view;
  }
}

void judge_inrush(const World& world, const Net& net, int index, std::vector<Finding>& out) {
  const Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  for (std::size_t o = 0; o < circuit.outlets.size(); ++o)
    for (const Device& device : circuit.outlets[o].devices)
      for (const std::size_t n : way(net, net.outlet_node[static_cast<std::size_t>(index)][o]))
        for (const Guard& guard : net.legs[n].guards)
          if (guard.kind != GuardKind::breaker && surely_opens(guard, device.inrush_amps, device.inrush_s))
            out.push_back({What::guard_opens_on_start, net.legs[n].name, device.inrush_amps, guard.amps});
}

// Ohms that two outlets' currents share, counted from the battery.
double shared_ohms(const Net& net, const std::vector<double>& ohms, const std::vector<bool>& on_way, int node) {
  double sum = 0;
  for (const std::size_t n : way(net, node))
    if (on_way[n]) sum += ohms[n];
  return sum;
}

// With 'at most at once', the current that hurts the target most: it fills the outlets that share most of its way.
std::vector<double> shares(const World& world, const Net& net, int index, std::size_t target, View view) {
  const Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  const auto& nodes = net.outlet_node[static_cast<std::size_t>(index)];
  std::vector<double> share(circuit.outlets.size(), 1);
  double left = circuit.at_most_amps;
  if (left <= 0) return share;
  std::vector<double> ohms(net.legs.size(), 0);
  for (std::size_t n = 1; n < ohms.size(); ++n) ohms[n] = leg_ohms(net.legs[n], view);
  std::vector<bool> on_way(net.legs.size(), false);
  for (const std::size_t n : way(net, nodes[target])) on_way[n] = true;
  std::vector<std::pair<double, std::size_t>> order;
  for (std::size_t o = 0; o < nodes.size(); ++o) order.emplace_back(-shared_ohms(net, ohms, on_way, nodes[o]), o);
  std::ranges::sort(order);
  for (const auto& [ignored, o] : order) {
    const double amps = load(world, circuit.outlets[o], View::strict);
    share[o] = amps <= 0 ? 0 : std::min(1.0, left / amps);
    left -= share[o] * amps;
  }
  return share;
}

std::vector<Draw> draws(const World& world, const Net& net, int index, const std::vector<double>& share, View view) {
  std::vector<Draw> all;
  const double nominal = world.battery.nominal_volts;
  for (std::size_t c = 0; c < world.circuits.size(); ++c) {
    const bool own = static_cast<int>(c) == index;
    if (!own && view == View::lenient) continue;
    const Circuit& circuit = world.circuits[c];
    for (std::size_t o = 0; o < circuit.outlets.size(); ++o)
      for (const Device& device : circuit.outlets[o].devices) {
        double amps = nominal_amps(device, nominal);
        if (view == View::strict) amps = std::max(amps, lasting_inrush(device));
        all.push_back({net.outlet_node[c][o], device.law, amps * (own ? share[o] : 1.0)});
      }
  }
  return all;
}

struct Reading {
  bool settled = true;
  double drop = 0;
  double volts = 0;
};

// Both supplies that may be meant, the resting volts and the nominal; the kinder or the harsher.
Reading read(const World& world, const Net& net, int index, std::size_t target, View view) {
  const double nominal = world.battery.nominal_volts;
  const auto share = shares(world, net, index, target, view);
  const auto asked = draws(world, net, index, share, view);
  const auto node = static_cast<std::size_t>(net.outlet_node[static_cast<std::size_t>(index)][target]);
  Reading reading;
  bool first = true;
  bool any = false;
  for (const double supply : {nominal, world.battery.resting_volts}) {
    const Volts volts = solve(net, asked, nominal, supply, view);
    if (!volts.settled) {
      if (view == View::strict) return {false, 0, 0};
      continue;
    }
    any = true;
    const double drop = supply - volts.at[node];
    const bool worse = first || (view == View::strict ? drop > reading.drop : drop < reading.drop);
    if (worse) reading.drop = drop;
    const double here = volts.at[node];
    if (first || (view == View::strict ? here < reading.volts : here > reading.volts)) reading.volts = here;
    first = false;
  }
  reading.settled = any;
  return reading;
}

void judge_volts(const World& world, const Net& net, int index, View view, std::vector<Finding>& out) {
  const Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  const double allowed = circuit.drop_percent / 100.0 * world.battery.nominal_volts;
  for (std::size_t o = 0; o < circuit.outlets.size(); ++o) {
    const Outlet& outlet = circuit.outlets[o];
    if (outlet.devices.empty()) continue;
    const std::string where = circuit.name + ", " + outlet.name;
    const Reading reading = read(world, net, index, o, view);
    if (!reading.settled) {
      out.push_back({What::no_operating_point, where});
      return;
    }
    if (above(reading.drop, allowed)) out.push_back({What::drop_too_large, where, reading.drop, allowed});
    for (const Device& device : outlet.devices)
      if (device.least_volts > 0 && above(device.least_volts, reading.volts))
        out.push_back({What::device_volts_too_low, where, reading.volts, device.least_volts});
  }
}

bool all_known(const World& world, const Circuit& circuit) {
  return std::ranges::all_of(circuit.outlets, [](const Outlet& outlet) {
    return known(outlet.run.wire) && (!outlet.has_tail || known(outlet.tail.wire));
  }) && std::ranges::all_of(world.blocks, [](const Block& block) { return known(block.feeder.wire); });
}

void judge_way_in(const World& world, const Net& net, int index, View view, std::vector<Finding>& out) {
  const Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  const double amps = circuit_load(world, circuit, view);
  for (int b = circuit.block; b >= 0; b = world.blocks[static_cast<std::size_t>(b)].fed_from) {
    const Block& block = world.blocks[static_cast<std::size_t>(b)];
    const auto node = static_cast<std::size_t>(net.block_node[static_cast<std::size_t>(b)]);
    judge_protection(world, net, node, view, out);
    judge_run(world, net.legs[node], amps, view, out);
    judge_guards(world, net.legs[node], view, out);
    for (const Guard& guard : net.legs[node].guards)
      if (above(amps, guard.amps)) out.push_back({What::main_guard_too_small, net.legs[node].name, amps, guard.amps});
    if (above(amps, block.amps)) out.push_back({What::block_too_small, block.name, amps, block.amps});
    if (b == circuit.block && above(std::min(amps, circuit.fuse.amps), block.position_amps))
      out.push_back({What::block_too_small, block.name + ", position", amps, block.position_amps});
  }
}

void judge_own_legs(const World& world, const Net& net, int index, View view, std::vector<Finding>& out) {
  const auto beyond = loads_beyond(world, net, index, view);
  for (std::size_t n = 1; n < net.legs.size(); ++n) {
    const Leg& leg = net.legs[n];
    if (leg.circuit != index) continue;
    judge_guards(world, leg, view, out);
    if (leg.run == nullptr) continue;
    judge_protection(world, net, n, view, out);
    judge_run(world, leg, beyond[n], view, out);
    for (const Guard& guard : leg.guards)
      if (above(beyond[n], guard.amps)) out.push_back({What::guard_too_small, leg.name, beyond[n], guard.amps});
  }
}

bool chooses(const Run& run) { return run.is_new && run.metres > 0; }

void choose(World& world, int index, const std::string& size, double fuse) {
  Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  circuit.fuse.amps = fuse;
  circuit.answered = true;
  for (Outlet& outlet : circuit.outlets) {
    if (chooses(outlet.run)) outlet.run.wire.size = size;
    if (outlet.has_tail && chooses(outlet.tail)) outlet.tail.wire.size = size;
  }
}

bool surely_legal(const World& world, int index) {
  return judge_circuit(world, build(world), index, View::strict).empty();
}

// The one size of what is new; empty when there is none or when they differ.
std::string chosen_size(const Circuit& circuit) {
  std::string size;
  for (const Outlet& outlet : circuit.outlets)
    for (const Run* run : {&outlet.run, outlet.has_tail ? &outlet.tail : nullptr}) {
      if (run == nullptr || !chooses(*run)) continue;
      if (!size.empty() && size != run->wire.size) return {};
      size = run->wire.size;
    }
  return size;
}

// The largest fuse up to `most` that makes the choice surely legal; 0: none does. A fuse too small for the load is not
// tried, so the list is short.
double legal_fuse(World trial, int index, const std::string& size, double most) {
  const Circuit& circuit = trial.circuits[static_cast<std::size_t>(index)];
  const double needs = amps_for_fuse(trial, circuit, View::strict);
  double found = 0;
  for (const double amps : ratings(circuit.fuse.kind)) {
    if (above(amps, most) || above(needs, amps)) continue;
    choose(trial, index, size, amps);
    if (surely_legal(trial, index)) found = amps;
  }
  return found;
}

}  // namespace

const char* words(What what) {
  static constexpr std::array<const char*, 20> names{
      "unprotected wire",       "wire overloaded",      "guard too small",      "main guard too small",
      "guard opens on start",   "drop too large",       "device volts too low", "no operating point",
      "part too small",         "point too small",      "block too small",      "guard volts too low",
      "guard cannot break",     "hull return",          "clad wire in new work", "too thin for a boat",
      "size not known",         "smaller wire is legal", "smaller fuse is legal", "something fits"};
  return names.at(static_cast<std::size_t>(what));
}

double amps_for_fuse(const World& world, const Circuit& circuit, View view) {
  double amps = 0;
  bool lasting = false;
  for (const Outlet& outlet : circuit.outlets)
    for (const Device& device : outlet.devices) {
      const bool lasts = device.use == Use::continuous;
      lasting = lasting || lasts;
      const double runs = running_amps(world, device, view) * (lasts ? kLastingMargin : 1.0);
      amps += std::max(runs, lasting_inrush(device));
    }
  if (circuit.at_most_amps <= 0) return amps;
  const double margin = lasting || view == View::strict ? kLastingMargin : 1.0;
  return std::min(amps, margin * circuit.at_most_amps);
}

std::vector<Finding> judge_circuit(const World& world, const Net& net, int index, View view) {
  std::vector<Finding> out;
  const Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  judge_way_in(world, net, index, view, out);
  judge_own_legs(world, net, index, view, out);
  const double needs = amps_for_fuse(world, circuit, view);
  if (above(needs, circuit.fuse.amps))
    out.push_back({What::guard_too_small, circuit.name + ", fuse", needs, circuit.fuse.amps});
  if (std::ranges::find(ratings(circuit.fuse.kind), circuit.fuse.amps) == ratings(circuit.fuse.kind).end())
    out.push_back({What::size_not_known, circuit.name + ", fuse", circuit.fuse.amps});
  judge_points(world, net, index, view, out);
  judge_inrush(world, net, index, out);
  if (all_known(world, circuit)) judge_volts(world, net, index, view, out);
  return out;
}

std::vector<Finding> judge(const World& world, View view) {
  std::vector<Finding> out;
  const Net net = build(world);
  for (std::size_t n = 1; n < net.legs.size(); ++n) {
    judge_protection(world, net, n, view, out);
    if (net.legs[n].parent != 0) continue;
    const double fault = fault_amps(world.battery, view);
    for (const Guard& guard : net.legs[n].guards)
      if (above(fault, breaks(guard, view)))
        out.push_back({What::guard_cannot_break, net.legs[n].name, fault, breaks(guard, view)});
  }
  for (std::size_t c = 0; c < world.circuits.size(); ++c) {
    if (!world.circuits[c].answered) continue;
    for (const Finding& finding : judge_circuit(world, net, static_cast<int>(c), view))
      if (finding.what != What::unprotected_wire) out.push_back(finding);  // told above, once
  }
  return out;
}

std::vector<Finding> beaten(const World& world, int index, const std::vector<std::string>& shelf) {
  const Circuit& circuit = world.circuits[static_cast<std::size_t>(index)];
  const std::string& where = circuit.name;
  if (!circuit.answered) {
    if (shelf.empty() || legal_fuse(world, index, shelf.back(), kNoLimit) <= 0) return {};
    return {{What::something_fits, where}};
  }
  std::vector<Finding> out;
  const std::string size = chosen_size(circuit);
  // Thicker is never less legal, so the next thinner one stands for all thinner ones.
  const auto here = std::ranges::find(shelf, size);
  if (!size.empty() && here != shelf.end() && here != shelf.begin() &&
      legal_fuse(world, index, *std::prev(here), circuit.fuse.amps) > 0)
    out.push_back({What::smaller_wire_is_legal, where + ", " + *std::prev(here)});
  const double less = next_smaller(circuit.fuse.kind, circuit.fuse.amps);
  if (less > 0 && !above(amps_for_fuse(world, circuit, View::strict), less)) {
    World trial = world;
    trial.circuits[static_cast<std::size_t>(index)].fuse.amps = less;
    if (surely_legal(trial, index)) out.push_back({What::smaller_fuse_is_legal, where, circuit.fuse.amps, less});
  }
  return out;
}

}  // namespace judge
