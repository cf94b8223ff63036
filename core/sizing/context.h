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

// A start of a minute or more (a heater's glow) is a load like any other: wire, fuse and drop are
// for its current. Every such device is given it as its load.
circuit::Circuit with_long_starts(const circuit::Circuit& circuit);
bool starts_long(const circuit::Device& device);

struct Context {
  explicit Context(const circuit::Circuit& valid_circuit);
  Context(const Context&) = delete;   // `demand` points into `circuit`
  Context& operator=(const Context&) = delete;
  const circuit::Circuit circuit;     // with its long starts counted as loads
  Demand demand;
  Zones zones;
  const tables::FuseFamily& family;
  const tables::Part& clamp;
  const tables::Part& splice;
  std::vector<const tables::Part*> terminals;  // by outlet index
  std::vector<const tables::Part*> sockets;    // the outlets themselves, by outlet index
  units::Volts charging;                       // highest the system sees, whole battery
  units::Metres farthest;                      // far outlet from the block
  double lasting_share = 1.0;                  // of what may be on at once, by rated amperes: on for hours

  // What a fuse must be rated at least, `most` being the most that may flow: the loads as rated, at
  // nominal voltage, and for those that last for hours the larger of the margin and what a low or
  // charging battery adds (rules.h).
  [[nodiscard]] units::Amperes fuse_need(units::Amperes most) const;
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
