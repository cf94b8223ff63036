#include "sizing/context.h"

#include <algorithm>
#include <map>

#include "sizing/rules.h"
#include "tables/supply.h"
#include "units/expect.h"

namespace sizing {
namespace {

const tables::Part& known_part(const std::string& key) {
  const tables::Part* part = tables::part_by_key(key);
  BRANCHLIGHT_EXPECT(part != nullptr);  // validate() lets no other through
  return *part;
}

units::Volts charging_voltage(const circuit::Supply& supply) {
  if (supply.highest) return *supply.highest;
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  BRANCHLIGHT_EXPECT(kind != nullptr);
  return kind->charging * static_cast<double>(tables::blocks_in_series(supply.nominal));
}

// Under a cap the loads that last are taken to be the ones that are on.
double margin_of(const circuit::Circuit& circuit, double cap_a) {
  if (cap_a <= 0.0) return kFuseMargin;
  double lasting_a = 0.0;
  for (const circuit::Outlet& outlet : circuit.outlets) {
    for (const circuit::Device& device : outlet.devices) {
      if (device.use != circuit::Use::continuous) continue;
      lasting_a += circuit::rated_current(device.load, circuit.supply.nominal).number();
    }
  }
  return 1.0 + (kFuseMargin - 1.0) * std::min(1.0, lasting_a / cap_a);
}

}  // namespace

Context::Context(const circuit::Circuit& valid_circuit)
    : circuit(valid_circuit),
      demand(valid_circuit),
      zones(valid_circuit),
      family(tables::fuse_family(valid_circuit.wiring.fuse_family)),
      clamp(known_part(valid_circuit.wiring.clamp_part)),
      splice(known_part(valid_circuit.wiring.splice_part)),
      charging(charging_voltage(valid_circuit.supply)) {
  terminals.reserve(circuit.outlets.size());
  sockets.reserve(circuit.outlets.size());
  for (const circuit::Outlet& outlet : circuit.outlets) {
    terminals.push_back(&known_part(outlet.terminal_part));
    sockets.push_back(&known_part(outlet.outlet_part));
  }
  fuse_margin = margin_of(circuit, demand.cap_a);
  std::map<circuit::OutletId, std::size_t> index_of;
  std::vector<units::Metres> distance(circuit.outlets.size());
  for (std::size_t i = 0; i < distance.size(); ++i) {  // parents stand before their children
    distance[i] = circuit.outlets[i].run.length;
    const auto parent = index_of.find(circuit.outlets[i].fed_from);
    if (parent != index_of.end()) distance[i] += distance[parent->second];
    index_of[circuit.outlets[i].id] = i;
    if (distance[i] > farthest) farthest = distance[i];
  }
}

bool Context::limits_itself(std::size_t outlet) const {
  return sockets[outlet]->limits_itself || sockets[outlet]->wired_in;
}

}  // namespace sizing
