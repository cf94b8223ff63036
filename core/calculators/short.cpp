#include "calculators/short.h"

#include "calculators/run.h"
#include "sizing/protection.h"
#include "sizing/rules.h"

namespace calculators {

ShortCircuit far_short(const tables::Conductor& wire, units::Metres length, const tables::FuseFamily& family,
                       units::Amperes rating, units::Volts source, units::Ohms before, units::Celsius insulation) {
  ShortCircuit fault;
  fault.current = source / (before + loop_resistance(wire, length, insulation));
  fault.multiple = fault.current / rating;
  fault.opens = tables::opens_within(family, rating, fault.current);
  fault.let_through = sizing::let_through(family, rating, fault.current);
  fault.withstands = sizing::withstands(wire, insulation);
  fault.in_time = fault.opens && *fault.opens <= sizing::kShortOpensWithin;
  fault.wire_survives = fault.let_through && *fault.let_through <= fault.withstands;
  return fault;
}

FuseAt fuse_at(const tables::FuseFamily& family, units::Amperes rating, double multiple) {
  const units::Amperes current = rating * multiple;
  return {current, tables::holds_for(family, rating, current), tables::opens_within(family, rating, current)};
}

}  // namespace calculators
