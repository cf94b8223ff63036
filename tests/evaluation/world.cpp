#include "evaluation/world.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "network/probe.h"
#include "network/solve.h"

namespace evaluation {
namespace {

using diagnosis::FaultKind;
using diagnosis::SpotKind;
using network::Branch;
using network::Element;
using network::Law;
using network::NodeId;

constexpr double kShortOhm = 0.02;         // a screw through the cable

// Spread of what is fitted about what the tables say; our estimate.
constexpr double kWireSpread = 0.06;       // length paced off, temperature, maker: one sigma
constexpr double kJointSpread = 0.45;      // sigma of the logarithm
constexpr double kLeadsLow = 0.15, kLeadsHigh = 0.45;   // ohm of a meter's leads

std::size_t at(network::BranchId id) { return static_cast<std::size_t>(id.index); }

double gauss(Engine& engine, double sigma) { return std::normal_distribution<double>(0.0, sigma)(engine); }

// Volts of the whole battery at the time: mostly rested, now and then low or on charge.
double draw_emf(const circuit::Supply& supply, Engine& engine) {
  const double blocks = supply.nominal.number() / 12.0;
  const bool lithium = supply.battery == "lifepo4";
  const double what = uniform(engine, 0.0, 1.0);
  if (what < 0.70) return blocks * (lithium ? uniform(engine, 13.1, 13.4) : uniform(engine, 12.3, 12.85));
  if (what < 0.82) return blocks * (lithium ? uniform(engine, 12.8, 13.1) : uniform(engine, 12.05, 12.3));
  return blocks * (lithium ? uniform(engine, 13.6, 14.3) : uniform(engine, 13.3, 14.4));
}

}  // namespace

struct World::Net {
  std::vector<Branch> branches;
  std::size_t nodes = 0;

  NodeId add_node() { return {static_cast<std::int32_t>(nodes++)}; }
  std::size_t join(NodeId a, NodeId b, double ohm) {
    branches.push_back({a, b, Law::resistance, ohm, 0.0, 0.0});
    return branches.size() - 1;
  }
  void open(std::size_t b) { branches[b] = {branches[b].from, branches[b].to, Law::open, 0.0, 0.0, 0.0}; }
  void more(std::size_t b, double ohm) {
    if (std::isinf(ohm)) open(b);
    else if (branches[b].law == Law::resistance) branches[b].value += ohm;
  }
  [[nodiscard]] network::Netlist netlist() const {
    network::Netlist list;
    while (list.node_count() < nodes) list.add_node();
    for (const Branch& b : branches) {
      switch (b.law) {
        case Law::resistance: list.add_resistance(b.from, b.to, units::Ohms(b.value)); break;
        case Law::battery: list.add_battery(b.from, b.to, units::Volts(b.emf_v), units::Ohms(b.value)); break;
        case Law::constant_current:
          list.add_constant_current(b.from, b.to, units::Amperes(b.value), units::Volts(b.fold_v));
          break;
        case Law::constant_power:
          list.add_constant_power(b.from, b.to, units::Watts(b.value), units::Volts(b.fold_v));
          break;
        case Law::open: list.add_open(b.from, b.to); break;
      }
    }
    return list;
  }
};

network::Fitted fitted_in(const diagnosis::Case& the_case) {
  const diagnosis::BuiltRun& run = the_case.built.runs.front();
  return {tables::conductor_by_id(run.wire.value()), run.tail ? tables::conductor_by_id(*run.tail) : nullptr, the_case.built.fuse.value()};
}

World::World(const diagnosis::Case& the_case, std::vector<TrueFault> faults)
    : case_(the_case), faults_(std::move(faults)),
      base_(network::build(the_case.circuit, fitted_in(the_case),
                           network::Loading(the_case.circuit.outlets.size(), 1.0), network::BatteryState::resting)),
      branches_(base_.netlist.branches()), nodes_(base_.netlist.node_count()) {
  emf_v_ = branches_[at(base_.find({Element::battery, circuit::kBlock, Side::positive})->branch)].emf_v;
  add_neighbours(nullptr);
}

World::World(const diagnosis::Case& the_case, std::vector<TrueFault> faults, Engine& engine)
    : case_(the_case), faults_(std::move(faults)),
      base_(network::build(the_case.circuit, fitted_in(the_case),
                           network::Loading(the_case.circuit.outlets.size(), 1.0), network::BatteryState::resting)),
      branches_(base_.netlist.branches()), nodes_(base_.netlist.node_count()) {
  spread(engine);
  add_neighbours(&engine);
}

void World::spread(Engine& engine) {
  emf_v_ = draw_emf(case_.circuit.supply, engine);
  const double wires = std::exp(gauss(engine, kWireSpread));
  for (const auto& named : base_.elements) {
    Branch& branch = branches_[at(named.branch)];
    const Element element = named.place.element;
    if (element == Element::device) continue;
    if (element == Element::battery) {
      branch.emf_v = emf_v_;
      branch.value *= log_uniform(engine, 0.6, 2.5);
    } else if (element == Element::wire || element == Element::tail || element == Element::feeder) {
      branch.value *= wires * std::exp(gauss(engine, 0.5 * kWireSpread));
    } else {
      branch.value *= std::exp(gauss(engine, kJointSpread));
    }
  }
}

// The neighbours, and one thing more on the block that nobody told of. Without an engine 2 m of wire.
void World::add_neighbours(Engine* engine) {
  Net net{branches_, nodes_};
  const NodeId bus_red = base_.find({Element::bus, circuit::kBlock, Side::positive})->away;
  const NodeId bus_black = base_.find({Element::bus, circuit::kBlock, Side::negative})->away;
  for (std::size_t n = 0; n <= case_.neighbours.size(); ++n) {
    const NodeId clip = net.add_node(), clamp = net.add_node(), clamp_black = net.add_node();
    const NodeId red = net.add_node(), black = net.add_node();
    Line line{};
    line.fuse = net.join(bus_red, clip, 0.006);
    net.join(clip, clamp, 0.0008);
    net.join(bus_black, clamp_black, 0.0008);
    const double ohm = 0.006 * (engine != nullptr ? log_uniform(*engine, 0.8, 6.0) : 2.0);
    line.red = net.join(clamp, red, ohm);
    line.black = net.join(clamp_black, black, ohm);
    lines_.push_back(line);
    neighbour_fused_.push_back(n == case_.neighbours.size() || engine == nullptr || chance(*engine, 0.85));
  }
  branches_ = net.branches;
  nodes_ = net.nodes;
  for (const TrueFault& fault : faults_) {
    if (fault.neighbour < 0) continue;
    neighbour_fused_[static_cast<std::size_t>(fault.neighbour)] = fault.kind == FaultKind::wrong_branch;
  }
}

void World::spoil_fuse(const TrueFault& fault, const Setup& setup, Net& net) const {
  if (!setup.fuse_in || setup.new_fuse) return;
  const std::size_t fuse = at(base_.find({Element::fuse, circuit::kBlock, Side::positive})->branch);
  const std::size_t clips = at(base_.find({Element::fuse_contact, circuit::kBlock, Side::positive})->branch);
  switch (fault.kind) {
    case FaultKind::fuse_blown:
    case FaultKind::fuse_missing:
    case FaultKind::fuse_elsewhere:
    case FaultKind::pair_shorted:   // as found, it has blown
    case FaultKind::overload: net.open(fuse); break;
    case FaultKind::fuse_loose:
      if (!setup.pressed) net.more(clips, fault.ohm);
      break;
    default: break;
  }
}

void World::apply(const TrueFault& fault, const Setup& setup, Net& net) const {
  const auto branch = [&](Element element, OutletId outlet, Side side) -> std::size_t {
    const auto* named = base_.find({element, outlet, side});
    return named != nullptr ? at(named->branch) : 0;
  };
  const auto swap = [&](Element element) {
    std::swap(net.branches[branch(element, fault.outlet, Side::positive)].to,
              net.branches[branch(element, fault.outlet, Side::negative)].to);
  };
  spoil_fuse(fault, setup, net);
  switch (fault.kind) {
    case FaultKind::source_flat: {
      Branch& battery = net.branches[branch(Element::battery, circuit::kBlock, Side::positive)];
      battery.emf_v = fault.size * nominal_v();
      battery.value *= fault.size2;
      break;
    }
    case FaultKind::main_open: net.open(branch(Element::main_fuse, circuit::kBlock, Side::positive)); break;
    case FaultKind::feeder_resistive: net.more(branch(Element::feeder, circuit::kBlock, fault.side), fault.ohm); break;
    case FaultKind::clamp_loose: net.more(branch(Element::clamp, circuit::kBlock, fault.side), fault.ohm); break;
    case FaultKind::wire_open: net.open(branch(Element::wire, fault.outlet, fault.side)); break;
    case FaultKind::opens_when_moved:
      if (!setup.moved) break;
      [[fallthrough]];
    case FaultKind::splice_open:
    case FaultKind::splice_resistive:
    case FaultKind::splice_on_insulation: {
      const double ohm = fault.kind == FaultKind::splice_resistive ? fault.ohm : kOpen;
      if (fault.port == Port::from_source) net.more(branch(Element::splice, fault.outlet, fault.side), ohm);
      if (fault.port == Port::to_tab) net.more(branch(Element::tail, fault.outlet, fault.side), ohm);
      if (fault.port == Port::onward) net.more(branch(Element::wire, fault.onward, fault.side), ohm);
      break;
    }
    case FaultKind::pair_shorted: {
      const auto* red = base_.find({Element::wire, fault.outlet, Side::positive});
      const auto* black = base_.find({Element::wire, fault.outlet, Side::negative});
      net.join(red->away, black->away, kShortOhm);
      break;
    }
    case FaultKind::tab_off: net.open(branch(Element::terminal, fault.outlet, fault.side)); break;
    case FaultKind::outlet_dead: net.open(branch(Element::outlet_inside, fault.outlet, fault.side)); break;
    case FaultKind::reversed_here: swap(Element::terminal); break;
    case FaultKind::reversed_from: swap(Element::splice); break;
    case FaultKind::wrong_branch:
    case FaultKind::wrong_branch_unfused: {
      const Line& line = lines_[static_cast<std::size_t>(fault.neighbour)];
      std::swap(net.branches[branch(Element::wire, fault.outlet, Side::positive)].to, net.branches[line.red].to);
      std::swap(net.branches[branch(Element::wire, fault.outlet, Side::negative)].to, net.branches[line.black].to);
      break;
    }
    case FaultKind::wire_thin:
      for (const circuit::Outlet& outlet : case_.circuit.outlets) {
        for (const Side side : {Side::positive, Side::negative}) {
          net.branches[branch(Element::wire, outlet.id, side)].value *= fault.size;
        }
      }
      break;
    case FaultKind::fuse_blown:
    case FaultKind::fuse_missing:
    case FaultKind::fuse_elsewhere:
    case FaultKind::fuse_loose:
    case FaultKind::overload:
    case FaultKind::device_dead:
    case FaultKind::none_of_these: break;
  }
}

void World::set_up(const Setup& setup, Net& net) const {
  if (!setup.fuse_in) net.open(at(base_.find({Element::fuse, circuit::kBlock, Side::positive})->branch));
  for (const Side side : {Side::positive, Side::negative}) {
    if (setup.parted_at == circuit::kBlock) break;
    net.open(at(base_.find({Element::splice, setup.parted_at, side})->branch));
  }
  for (std::size_t n = 0; n < lines_.size(); ++n) {
    const bool out = n < setup.neighbour_out.size() && setup.neighbour_out[n];
    const bool in = n < setup.neighbour_in.size() && setup.neighbour_in[n];
    if (out || (!neighbour_fused_[n] && !in)) net.open(lines_[n].fuse);
  }
  double usual_a = 0.0;
  for (const auto& named : base_.elements) {
    if (named.place.element != Element::device) continue;
    const Branch usual = branches_[at(named.branch)];
    if (!setup.all_usual_loads) net.open(at(named.branch));
    if (usual.law == Law::constant_current) usual_a += usual.value;
    if (usual.law == Law::constant_power) usual_a += usual.value / nominal_v();
    if (usual.law == Law::resistance) usual_a += nominal_v() / usual.value;
  }
  if (setup.load_at && setup.load.law != Law::open) {
    Branch load = setup.load;
    load.from = base_.outlet_contact(*setup.load_at, Side::positive);
    load.to = base_.outlet_contact(*setup.load_at, Side::negative);
    net.branches.push_back(load);
  }
  if (!setup.all_usual_loads) return;
  for (const TrueFault& fault : faults_) {   // what overloads it hangs on the first outlet's splices
    if (fault.kind != FaultKind::overload) continue;
    const OutletId first = case_.circuit.outlets.front().id;
    const double extra_a = std::max(0.5, fault.size * fuse_a() - usual_a);
    net.join(base_.find({Element::splice, first, Side::positive})->away,
             base_.find({Element::splice, first, Side::negative})->away, nominal_v() / extra_a);
  }
}

World::Net World::build(const Setup& setup) const {
  Net net{branches_, nodes_};
  for (const TrueFault& fault : faults_) apply(fault, setup, net);
  set_up(setup, net);
  return net;
}

namespace {

// The node a probe touches: the table of diagnosis/check.h, read again here.
NodeId node_of(const network::BranchNetwork& base, const diagnosis::Spot& spot, bool fuse_in) {
  const auto named = [&](Element element, OutletId outlet) { return base.find({element, outlet, spot.side}); };
  switch (spot.kind) {
    case SpotKind::battery_post: {
      const auto* battery = base.find({Element::battery, circuit::kBlock, Side::positive});
      return spot.side == Side::positive ? battery->away : battery->near_source;
    }
    case SpotKind::bus: return named(Element::bus, circuit::kBlock)->away;
    case SpotKind::fuse_feed:
      return fuse_in ? base.find({Element::fuse, circuit::kBlock, Side::positive})->near_source
                     : base.find({Element::bus, circuit::kBlock, Side::positive})->away;
    case SpotKind::fuse_wire: return base.find({Element::fuse, circuit::kBlock, Side::positive})->away;
    case SpotKind::clamp: return named(Element::clamp, circuit::kBlock)->away;
    case SpotKind::wire_end: return named(Element::wire, spot.outlet)->away;
    case SpotKind::splice: return named(Element::splice, spot.outlet)->away;
    case SpotKind::tab: return named(Element::tail, spot.outlet)->away;
    case SpotKind::lug: return named(Element::terminal, spot.outlet)->away;
    case SpotKind::contact: break;
  }
  return named(Element::outlet_inside, spot.outlet)->away;
}

}  // namespace

double World::across(const Setup& setup, const diagnosis::Spot& red, const diagnosis::Spot& black, double ohm) const {
  Net net = build(setup);
  const NodeId plus = node_of(base_, red, setup.fuse_in), minus = node_of(base_, black, setup.fuse_in);
  net.join(plus, minus, ohm);
  return network::solve(net.netlist()).between(plus, minus).number();
}

double World::lamp_volts(const Setup& setup, const diagnosis::Spot& red, const diagnosis::Spot& black) const {
  const double hot = network::lamp_hot_resistance(case_.circuit.supply.nominal).number();
  double volts = across(setup, red, black, hot);
  for (int round = 0; round < 4; ++round) {   // tungsten: about a tenth cold, rising with the root of the volts
    const double heat = std::min(std::abs(volts) / nominal_v(), 1.3);
    volts = across(setup, red, black, hot * (0.1 + 0.9 * std::sqrt(heat)));
  }
  return volts;
}

std::optional<double> World::ohms(const Setup& setup, const diagnosis::Spot& red, const diagnosis::Spot& black) const {
  if (std::abs(across(setup, red, black, network::kMeterInputOhm)) > 0.1) return std::nullopt;
  Net net = build(setup);
  const NodeId plus = node_of(base_, red, setup.fuse_in), minus = node_of(base_, black, setup.fuse_in);
  // The meter's own source: 1 V behind 1 kohm. The battery is a short to it, its volts are not.
  for (Branch& branch : net.branches) {
    if (branch.law == Law::battery) branch.emf_v = 0.0;
  }
  net.branches.push_back({minus, plus, Law::battery, 1000.0, 1.0, 0.0});
  const double volts = network::solve(net.netlist()).between(plus, minus).number();
  if (volts > 0.9999) return kOpen;
  return 1000.0 * volts / (1.0 - volts) + 0.5 * (kLeadsLow + kLeadsHigh);
}

namespace {

Runs judge(const Device& device, double volts, double nominal_v) {
  const double share = (device.either_way ? std::abs(volts) : volts) / nominal_v;
  if (share >= device.works_from) return Runs::works;
  return share >= device.weak_from ? Runs::weak : Runs::dead;
}

}  // namespace

Runs World::runs(const Setup& setup, OutletId outlet, const Device& device) const {
  Setup with = setup;
  with.load_at = outlet;
  with.load = device.law;
  const network::Solution solved = network::solve(build(with).netlist());
  return judge(device, solved.between(base_.outlet_contact(outlet, Side::positive),
                                      base_.outlet_contact(outlet, Side::negative)).number(), nominal_v());
}

Runs World::runs_elsewhere(const Setup& setup, int neighbour, const Device& device) const {
  Net net = build(setup);
  const Line& line = neighbour < 0 ? lines_.back() : lines_[static_cast<std::size_t>(neighbour)];
  // The outlet of that circuit stands where its own wire was meant to end.
  const NodeId red = branches_[line.red].to, black = branches_[line.black].to;
  Branch load = device.law;
  load.from = red;
  load.to = black;
  if (load.law != Law::open) net.branches.push_back(load);
  return judge(device, network::solve(net.netlist()).between(red, black).number(), nominal_v());
}

double World::fuse_current_a(Setup setup) const {
  setup.fuse_in = true;
  setup.new_fuse = true;
  const auto* fuse = base_.find({Element::fuse, circuit::kBlock, Side::positive});
  return std::abs(network::solve(build(setup).netlist()).through(fuse->branch).number());
}

double World::live_volts(const Setup& setup, const diagnosis::Site& site) const {
  const network::Solution solved = network::solve(build(setup).netlist());
  double most = 0.0;
  const auto look = [&](Element element, OutletId outlet) {
    for (const Side side : {Side::positive, Side::negative}) {
      const auto* named = base_.find({element, outlet, side});
      if (named == nullptr) continue;
      for (const NodeId node : {named->near_source, named->away}) {
        most = std::max(most, std::abs(solved.between(node, network::kReference).number()));
      }
    }
  };
  if (site.location == diagnosis::Location::behind) {
    for (const Element element : {Element::splice, Element::tail, Element::terminal}) look(element, site.outlet);
  }
  if (site.location == diagnosis::Location::block) look(Element::clamp, circuit::kBlock);
  return most;
}

Device World::device_of(OutletId outlet) const {
  Device device;
  const auto* named = base_.find({Element::device, outlet, Side::positive});
  if (named != nullptr) device.law = base_.netlist.branch(named->branch);
  device.either_way = device.law.law == Law::resistance;
  const circuit::Outlet* there = circuit::find_outlet(case_.circuit, outlet);
  if (there != nullptr && there->devices.front().load.minimum_voltage) {
    device.works_from = there->devices.front().load.minimum_voltage->number() / nominal_v();
    device.weak_from = device.works_from - 0.05;
  }
  return device;
}

Device World::good_device() const {
  Device device;   // 6 W, whatever the volts, down to where its electronics give up
  device.law = {{}, {}, Law::constant_power, 6.0, 0.0, 0.7 * nominal_v()};
  device.works_from = 0.85;
  device.weak_from = 0.7;
  return device;
}

bool World::device_is_dead() const {
  return std::any_of(faults_.begin(), faults_.end(),
                     [](const TrueFault& fault) { return fault.kind == FaultKind::device_dead; });
}

bool World::on_the_way(OutletId outlet, OutletId to) const {
  for (OutletId at_outlet = to; at_outlet != circuit::kBlock;) {
    if (at_outlet == outlet) return true;
    const circuit::Outlet* found = circuit::find_outlet(case_.circuit, at_outlet);
    at_outlet = found != nullptr ? found->fed_from : circuit::kBlock;
  }
  return false;
}

bool World::passes(const TrueFault& fault, OutletId to) const {
  if (fault.outlet == circuit::kBlock) return true;
  if (fault.port == Port::to_tab) return fault.outlet == to;
  if (fault.port == Port::onward) return on_the_way(fault.onward, to);
  return on_the_way(fault.outlet, to);
}

}  // namespace evaluation
