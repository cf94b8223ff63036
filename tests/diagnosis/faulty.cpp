#include "diagnosis/faulty.h"

namespace diagnosis_test {
namespace {

using namespace diagnosis;
using network::BranchNetwork;
using network::Element;
using network::NodeId;
using network::Side;

const BranchNetwork::Named& element(const BranchNetwork& branch, Element what, circuit::OutletId outlet, Side side) {
  return *branch.find({what, outlet, side});
}

void put_in(BranchNetwork& branch, const Case& the_case, const Fault& fault, double ohm) {
  using enum FaultKind;
  network::Netlist& net = branch.netlist;
  const auto at = [&](Element what, circuit::OutletId outlet, Side side) {
    return element(branch, what, outlet, side).branch;
  };
  const circuit::OutletId k = fault.outlet, block = circuit::kBlock;
  const Side red = Side::positive, black = Side::negative;
  switch (fault.kind) {
    case main_open: net.open(at(Element::main_fuse, block, red)); return;
    case feeder_resistive: net.add_series(at(Element::feeder, block, fault.side), units::Ohms(ohm)); return;
    case fuse_blown:
    case fuse_missing:
    case fuse_elsewhere:
    case overload: net.open(at(Element::fuse, block, red)); return;
    case fuse_loose: net.open(at(Element::fuse_contact, block, red)); return;
    case clamp_loose: net.open(at(Element::clamp, block, fault.side)); return;
    case wire_open: net.open(at(Element::wire, k, fault.side)); return;
    case splice_open:
    case splice_on_insulation: net.open(at(Element::splice, k, fault.side)); return;
    case splice_resistive: net.add_series(at(Element::splice, k, fault.side), units::Ohms(ohm)); return;
    case pair_shorted:  // whatever fuse is put in is blown a moment later
      net.bridge(element(branch, Element::wire, k, red).away, element(branch, Element::wire, k, black).away,
                 units::Ohms(1e-3));
      net.open(at(Element::fuse, block, red));
      return;
    case tab_off: net.open(at(Element::terminal, k, fault.side)); return;
    case outlet_dead: net.open(at(Element::outlet_inside, k, fault.side)); return;
    case reversed_here: net.swap_ends(at(Element::terminal, k, red), at(Element::terminal, k, black)); return;
    case reversed_from: net.swap_ends(at(Element::splice, k, red), at(Element::splice, k, black)); return;
    case wrong_branch:
    case wrong_branch_unfused: {
      const NodeId stud = element(branch, Element::bus, block, red).away,
                   bus = element(branch, Element::bus, block, black).away;
      net.open(at(Element::wire, k, red));
      net.open(at(Element::wire, k, black));
      if (fault.kind == wrong_branch) net.bridge(stud, element(branch, Element::wire, k, red).away, units::Ohms(0.05));
      net.bridge(bus, element(branch, Element::wire, k, black).away, units::Ohms(0.05));
      return;
    }
    case wire_thin:
      for (const circuit::Outlet& outlet : the_case.circuit.outlets) {
        for (const Side side : {red, black}) {
          const auto wire = at(Element::wire, outlet.id, side);
          net.add_series(wire, units::Ohms(net.branch(wire).value * (ohm - 1.0)));
        }
      }
      return;
    case source_flat:
    case device_dead:
    case opens_when_moved:
    case none_of_these: return;
  }
}

}  // namespace

NodeId Faulty::node(const Spot& spot, bool fuse_in) const {
  const auto away = [&](Element what) { return element(branch, what, spot.outlet, spot.side).away; };
  switch (spot.kind) {
    case SpotKind::battery_post:
      return spot.side == Side::negative ? network::kReference
                                         : element(branch, Element::battery, circuit::kBlock, Side::positive).away;
    case SpotKind::bus: return away(Element::bus);
    case SpotKind::fuse_feed:
      return fuse_in ? away(Element::fuse_contact)
                     : element(branch, Element::bus, circuit::kBlock, Side::positive).away;
    case SpotKind::fuse_wire: return away(Element::fuse);
    case SpotKind::clamp: return away(Element::clamp);
    case SpotKind::wire_end: return away(Element::wire);
    case SpotKind::splice: return away(Element::splice);
    case SpotKind::tab:  // the run's own end where the wire goes straight to the outlet
      return branch.find({Element::tail, spot.outlet, spot.side}) != nullptr ? away(Element::tail)
                                                                             : away(Element::wire);
    case SpotKind::lug: return away(Element::terminal);
    case SpotKind::contact: break;
  }
  return away(Element::outlet_inside);
}

Faulty build_faulty(const Case& the_case, const Fault& fault, double ohm, const State& state) {
  Faulty made{network::build(the_case.circuit, fitted_there(the_case), {}, network::BatteryState::resting)};
  put_in(made.branch, the_case, fault, ohm);
  network::Netlist& net = made.branch.netlist;
  if (!state.fuse_in) {
    net.open(element(made.branch, Element::fuse, circuit::kBlock, Side::positive).branch);
    net.open(element(made.branch, Element::fuse_contact, circuit::kBlock, Side::positive).branch);
  }
  if (state.parted_at) {
    for (const Side side : {Side::positive, Side::negative}) {
      net.open(element(made.branch, Element::splice, *state.parted_at, side).branch);
    }
  }
  const double nominal = the_case.circuit.supply.nominal.number();
  if (state.plugged == Plugged::lamp) {
    net.bridge(made.branch.outlet_contact(state.at, Side::positive),
               made.branch.outlet_contact(state.at, Side::negative),
               network::lamp_hot_resistance(the_case.circuit.supply.nominal));
  } else if ((state.plugged == Plugged::device ||
              (state.plugged == Plugged::own && fault.kind != FaultKind::device_dead)) &&
             network::probe(net, made.branch.outlet_contact(state.at, Side::positive),
                            made.branch.outlet_contact(state.at, Side::negative), network::Instrument::lamp,
                            the_case.circuit.supply.nominal)
                     .voltage.number() > -1.0) {
    // Reversed it takes nothing.
    net.bridge(made.branch.outlet_contact(state.at, Side::positive),
               made.branch.outlet_contact(state.at, Side::negative),
               units::Ohms(nominal / (state.plugged == Plugged::own
                                          ? the_case.circuit.outlets.front().devices.front().load.rating
                                          : 0.5)));
  }
  return made;
}

std::optional<double> read(const Case& the_case, const Fault& fault, double ohm, const Check& check) {
  if (check.kind != CheckKind::volts && check.kind != CheckKind::glow) return std::nullopt;
  const Faulty made = build_faulty(the_case, fault, ohm, check.state);
  const network::Instrument with =
      check.kind == CheckKind::glow ? network::Instrument::lamp : network::Instrument::meter_volts;
  const network::Reading reading =
      network::probe(made.branch.netlist, made.node(check.red, check.state.fuse_in),
                     made.node(check.black, check.state.fuse_in), with, the_case.circuit.supply.nominal);
  if (reading.outcome == network::Outcome::invalid) return std::nullopt;
  return reading.voltage.number();
}

network::Fitted fitted_there(const Case& the_case) {
  const BuiltRun& run = the_case.built.runs.front();
  return {tables::conductor_by_id(*run.wire), run.tail ? tables::conductor_by_id(*run.tail) : nullptr,
          *the_case.built.fuse};
}

Case three_outlets(Symptom symptom, std::vector<std::uint32_t> outlets) {
  Case made = generic_case(tables::GaugeSystem::awg);
  made.complaint.symptom = symptom;
  for (const std::uint32_t id : outlets) made.complaint.outlets.push_back({id});
  made.tools = {true, true, true, true};
  made.built = built_throughout(made.circuit, {tables::conductor_by_id("12awg"), nullptr, units::Amperes(15.0)},
                                Knowledge::known, Protection::protects);
  return made;
}

}  // namespace diagnosis_test
