#include "sizing/context.h"

#include <algorithm>
#include <map>

#include "sizing/rules.h"
#include "units/expect.h"

namespace sizing {
namespace {

const tables::Part& known_part(const std::string& key) {
  const tables::Part* part = tables::part_by_key(key);
  BRANCHLIGHT_EXPECT(part != nullptr);  // validate() lets no other through
  return *part;
}

// Under a cap the loads that last are taken to be the ones that are on.
double lasting_share_of(const circuit::Circuit& circuit, double cap_a) {
  if (cap_a <= 0.0) return 1.0;
  double lasting_a = 0.0;
  for (const circuit::Outlet& outlet : circuit.outlets) {
    for (const circuit::Device& device : outlet.devices) {
      if (device.use != circuit::Use::continuous) continue;
      lasting_a += circuit::rated_current(device.load, circuit.supply.nominal).number();
    }
  }
  return std::min(1.0, lasting_a / cap_a);
}

}  // namespace

bool starts_long(const circuit::Device& device) {
  return device.inrush && device.inrush->lasting >= kLongStart && device.load.rating > 0.0;
}

circuit::Circuit with_long_starts(const circuit::Circuit& circuit) {
  circuit::Circuit counted = circuit;
  for (circuit::Outlet& outlet : counted.outlets) {
    for (circuit::Device& device : outlet.devices) {
      if (!starts_long(device)) continue;
      const units::Amperes start = device.inrush->current;
      if (start <= circuit::rated_current(device.load, circuit.supply.nominal)) continue;
      device.load.rating = device.load.rating_in_watts ? (start * circuit.supply.nominal).number() : start.number();
    }
  }
  return counted;
}

Context::Context(const circuit::Circuit& valid_circuit)
    : circuit(with_long_starts(valid_circuit)),
      demand(circuit),
      zones(circuit),
      family(tables::fuse_family(circuit.wiring.fuse_family)),
      clamp(known_part(circuit.wiring.clamp_part)),
      splice(known_part(circuit.wiring.splice_part)),
      charging(circuit::highest_voltage(circuit.supply)) {
  terminals.reserve(circuit.outlets.size());
  sockets.reserve(circuit.outlets.size());
  for (const circuit::Outlet& outlet : circuit.outlets) {
    terminals.push_back(&known_part(outlet.terminal_part));
    sockets.push_back(&known_part(outlet.outlet_part));
  }
  lasting_share = lasting_share_of(circuit, demand.cap_a);
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

units::Amperes Context::fuse_need(units::Amperes most) const {
  const double rated_a = demand.cap_a;
  const double added_a = std::max((kFuseMargin - 1.0) * rated_a, most.number() - rated_a);
  return units::Amperes(std::max(rated_a + lasting_share * added_a, most.number() / kFuseCarriesForLong));
}

bool Context::limits_itself(std::size_t outlet) const {
  return sockets[outlet]->limits_itself || sockets[outlet]->wired_in;
}

}  // namespace sizing
