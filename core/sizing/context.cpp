#include "sizing/context.h"

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
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  BRANCHLIGHT_EXPECT(kind != nullptr);
  return kind->charging * static_cast<double>(tables::blocks_in_series(supply.nominal));
}

}  // namespace

Context::Context(const circuit::Circuit& valid_circuit)
    : circuit(valid_circuit),
      demand(valid_circuit),
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
  std::vector<units::Metres> distance(circuit.outlets.size());
  for (std::size_t i = 0; i < distance.size(); ++i) {  // parents stand before their children
    distance[i] = circuit.outlets[i].run;
    if (demand.parent[i] != kNoParent) distance[i] += distance[demand.parent[i]];
    if (distance[i] > farthest) farthest = distance[i];
  }
}

}  // namespace sizing
