#include "calculators/run.h"

#include "sizing/rules.h"

namespace calculators {

units::Ohms loop_resistance(const tables::Conductor& wire, units::Metres length, units::Celsius metal) {
  return tables::resistance_at(wire.resistance_20c, metal) * length * 2.0;
}

RunLoss drop_of_run(const tables::Conductor& wire, units::Metres length, units::Amperes current,
                    units::Volts nominal, units::Celsius metal) {
  RunLoss loss;
  loss.loop = loop_resistance(wire, length, metal);
  loss.drop = current * loss.loop;
  loss.heat = loss.drop * current;
  loss.fraction = loss.drop / nominal;
  return loss;
}

units::Metres longest_run(const tables::Conductor& wire, units::Amperes current, units::Volts allowed,
                          units::Celsius metal) {
  return (allowed / current) / (tables::resistance_at(wire.resistance_20c, metal) * 2.0);
}

SizeLacks what_lacks(const tables::Conductor& wire, const RunDemand& demand) {
  if (wire.area < sizing::mechanical_minimum(demand.lie.setting, demand.gauge).area) return SizeLacks::minimum;
  const FusePick pick = fuse_for(wire, demand.current, demand.lie);
  if (!pick.ceiling || pick.ceiling->most < pick.least) return SizeLacks::ampacity;
  if (!pick.fuse) return SizeLacks::fuse;
  const RunLoss loss = drop_of_run(wire, demand.length, demand.current, demand.nominal, demand.metal);
  return loss.fraction > demand.drop_limit ? SizeLacks::drop : SizeLacks::nothing;
}

SizeForRun wire_for_run(const RunDemand& demand) {
  SizeForRun answer;
  for (const tables::Conductor& wire : tables::conductors(demand.gauge)) {
    const SizeLacks lacks = what_lacks(wire, demand);
    if (lacks == SizeLacks::nothing) {
      answer.wire = &wire;
      answer.loss = drop_of_run(wire, demand.length, demand.current, demand.nominal, demand.metal);
      answer.fuse = fuse_for(wire, demand.current, demand.lie).fuse;
      return answer;
    }
    answer.smaller = &wire;
    answer.smaller_lacks = lacks;
  }
  answer.largest_lacks = answer.smaller_lacks;
  return answer;
}

}  // namespace calculators
