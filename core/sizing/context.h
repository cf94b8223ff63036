// A valid circuit with its keys looked up once, for everything that judges sizes of it.
#pragma once

#include <vector>

#include "circuit/circuit.h"
#include "sizing/loading.h"
#include "sizing/zones.h"
#include "tables/conductor.h"
#include "tables/fuse.h"
#include "tables/part.h"

namespace sizing {

struct Context {
  explicit Context(const circuit::Circuit& valid_circuit);
  const circuit::Circuit& circuit;
  Demand demand;
  Zones zones;
  const tables::FuseFamily& family;
  const tables::Part& clamp;
  const tables::Part& splice;
  std::vector<const tables::Part*> terminals;  // by outlet index
  std::vector<const tables::Part*> sockets;    // the outlets themselves, by outlet index
  units::Volts charging;                       // highest the system sees, whole battery
  units::Metres farthest;                      // far outlet from the block
  double fuse_margin = 1.25;                   // on the design current: 1.25 on what lasts for hours, 1 on the rest

  [[nodiscard]] double nominal_v() const { return circuit.supply.nominal.number(); }
  [[nodiscard]] bool road_vehicle() const {
    return circuit.setting == circuit::Setting::van || circuit.setting == circuit::Setting::trailer;
  }
  // An outlet that limits its own output, or a device wired in: its part's rating does not bound the fuse.
  [[nodiscard]] bool limits_itself(std::size_t outlet) const;
  [[nodiscard]] double drop_limit(std::size_t outlet) const {
    return circuit.outlets[outlet].drop_limit.value_or(circuit.drop_limit);
  }
};

}  // namespace sizing
