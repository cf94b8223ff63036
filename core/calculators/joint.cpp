#include "calculators/joint.h"

#include <algorithm>

#include "tables/fact.h"

namespace calculators {
namespace {

JointGrade grade_of(units::Ohms resistance) {
  if (resistance < tables::kGoodJoint) return JointGrade::good;
  if (resistance <= tables::kDoubtfulJoint) return JointGrade::fair;
  return resistance <= tables::kBadJoint ? JointGrade::doubtful : JointGrade::bad;
}

}  // namespace

JointReading judge_joint(units::Volts before, units::Volts after, units::Amperes current, units::Ohms good_one) {
  JointReading reading;
  reading.lost = before - after;
  reading.resistance = reading.lost / current;
  reading.excess = std::max(units::Ohms(0.0), reading.resistance - good_one);
  reading.heat = reading.lost * current;
  reading.grade = grade_of(reading.resistance);
  return reading;
}

PathReading judge_path(units::Volts unloaded, units::Volts loaded, units::Amperes current) {
  PathReading reading;
  const units::Volts lost = unloaded - loaded;
  reading.resistance = lost / current;
  reading.heat = lost * current;
  reading.fraction = lost / unloaded;
  reading.into_short = unloaded / reading.resistance;
  return reading;
}

}  // namespace calculators
