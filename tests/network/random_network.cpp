#include "network/random_network.h"

#include <array>
#include <cmath>
#include <string>

#include "tables/part.h"
#include "tables/supply.h"

namespace network_test {

using network::BranchId;
using network::Netlist;
using network::NodeId;
using units::Ohms;
using units::Volts;

double Random::log_uniform(double low, double high) { return low * std::pow(high / low, uniform(0.0, 1.0)); }

namespace {

template <class Rows>
const auto& any_of(Random& random, const Rows& rows) {
  return rows[random.below(rows.size())];
}

circuit::Load random_load(Random& random, Volts nominal) {
  circuit::Load load;
  load.kind = static_cast<circuit::LoadKind>(random.below(3));
  load.rating_in_watts = random.chance(0.5);
  load.rating = random.chance(0.1) ? 0.0 : random.log_uniform(0.1, 15.0);
  if (load.rating_in_watts) load.rating *= nominal.number();
  if (random.chance(0.4)) load.minimum_voltage = nominal * random.uniform(0.7, 0.95);
  return load;
}

NodeId any_node(Random& random, const Netlist& netlist) {
  return {static_cast<std::int32_t>(random.below(netlist.node_count()))};
}

}  // namespace

circuit::Circuit random_circuit(Random& random, std::size_t outlets) {
  circuit::Circuit made = circuit::new_circuit(random.chance(0.5) ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  made.outlets.clear();
  constexpr std::array<double, 3> kVoltages{12.0, 24.0, 48.0};
  made.supply.nominal = Volts(any_of(random, kVoltages));
  made.supply.battery = std::string(any_of(random, tables::battery_kinds()).key);
  made.supply.feeder_run = units::Metres(random.chance(0.2) ? 0.0 : random.uniform(0.2, 5.0));
  if (random.chance(0.3)) made.supply.main_fuse = units::Amperes(0.0);
  made.wiring.splice_part = std::string(any_of(random, tables::parts(tables::PartKind::splice)).key);
  made.wiring.clamp_part = std::string(any_of(random, tables::parts(tables::PartKind::clamp)).key);
  made.wiring.wire_temperature = units::Celsius(random.uniform(-20.0, 90.0));
  made.wiring.tail = units::Metres(random.uniform(0.05, 0.5));
  const bool chain = random.chance(0.5);
  for (std::size_t k = 0; k < outlets; ++k) {
    circuit::Outlet outlet;
    outlet.id = {static_cast<std::uint32_t>(k + 1)};
    outlet.name = "Outlet " + std::to_string(k + 1);
    outlet.fed_from = {static_cast<std::uint32_t>(chain ? k : random.below(k + 1))};
    outlet.run.length = units::Metres(random.log_uniform(0.05, 8.0));
    outlet.devices.front().load = random_load(random, made.supply.nominal);
    outlet.outlet_part = std::string(any_of(random, tables::parts(tables::PartKind::outlet)).key);
    outlet.terminal_part = std::string(any_of(random, tables::parts(tables::PartKind::terminal)).key);
    made.outlets.push_back(outlet);
  }
  made.next_outlet_id = static_cast<std::uint32_t>(outlets + 1);
  return made;
}

network::Fitted random_fitted(Random& random) {
  const auto ladder = tables::conductors(random.chance(0.5) ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  constexpr std::array<double, 6> kFuses{0.0, 5.0, 7.5, 15.0, 30.0, 40.0};
  network::Fitted fitted;
  fitted.size = &any_of(random, ladder);
  fitted.tail = random.chance(0.5) ? nullptr : &any_of(random, ladder);
  fitted.fuse = units::Amperes(any_of(random, kFuses));
  return fitted;
}

network::Loading random_loading(Random& random, std::size_t outlets) {
  network::Loading loading(outlets);
  for (double& on : loading) on = random.chance(0.2) ? 0.0 : random.chance(0.4) ? 1.0 : random.uniform(0.0, 1.0);
  return loading;
}

network::BranchNetwork random_build(Random& random, const circuit::Circuit& circuit) {
  const network::Fitted fitted = random_fitted(random);
  const network::Loading loading = random_loading(random, circuit.outlets.size());
  return network::build(circuit, fitted, loading, static_cast<network::BatteryState>(random.below(3)));
}

Netlist random_tangle(Random& random, std::size_t nodes) {
  Netlist netlist;
  const auto resistance = [&] {
    return Ohms(random.chance(0.7) ? random.log_uniform(1e-3, 1.0) : random.log_uniform(1.0, 1e4));
  };
  for (std::size_t n = 1; n < nodes; ++n) {
    const NodeId from = any_node(random, netlist);
    netlist.add_resistance(from, netlist.add_node(), resistance());
  }
  const auto add = [&](std::size_t count, auto&& one) {
    for (std::size_t k = 0; k < count; ++k) {
      const NodeId a = any_node(random, netlist), b = any_node(random, netlist);
      if (a != b) one(a, b);
    }
  };
  add(nodes / 2, [&](NodeId a, NodeId b) { netlist.add_resistance(a, b, resistance()); });
  add(1 + random.below(3), [&](NodeId a, NodeId b) {
    const Volts emf(random.uniform(5.0, 50.0));
    netlist.add_battery(a, b, emf, Ohms(random.log_uniform(2e-3, 1.0)));
  });
  add(random.below(5), [&](NodeId a, NodeId b) {
    const Volts fold(random.uniform(1.0, 11.0));
    if (random.chance(0.5)) {
      netlist.add_constant_power(a, b, units::Watts(random.log_uniform(0.1, 300.0)), fold);
    } else {
      netlist.add_constant_current(a, b, units::Amperes(random.log_uniform(0.05, 30.0)), fold);
    }
  });
  return netlist;
}

void random_fault(Random& random, Netlist& netlist) {
  const auto branch = [&] { return BranchId{static_cast<std::int32_t>(random.below(netlist.branches().size()))}; };
  const NodeId a = any_node(random, netlist), b = any_node(random, netlist);
  switch (random.below(7)) {
    case 0:
    case 1: netlist.open(branch()); break;
    case 2: {
      const BranchId in = branch();
      netlist.add_series(in, Ohms(random.log_uniform(1e-3, 1e7)));
      break;
    }
    case 3: netlist.bridge(a, b, Ohms(random.chance(0.5) ? 1e-4 : random.log_uniform(1e-4, 100.0))); break;
    case 4: {
      const BranchId first = branch();
      netlist.swap_ends(first, branch());
      break;
    }
    case 5: netlist.bridge(a, b, Ohms(1e7)); break;
    default: {
      const Volts emf(random.uniform(1.0, 26.0));
      netlist.add_battery(a, b, emf, Ohms(random.log_uniform(2e-3, 1.0)));
      break;
    }
  }
}

}  // namespace network_test
