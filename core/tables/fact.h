// Facts of the trade told in words and figures, each with its source: where a fuse sits, how
// much drop is usual, what joints and meters do, what colours mean, what to take care of.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "tables/citation.h"
#include "units/quantity.h"

namespace tables {

enum class Topic { fuse_place, drop_practice, colour_practice, colour_code, meter, outlet_form, caution };

struct Fact {
  Topic topic;
  std::string_view key;        // stable within its topic
  std::string_view what;
  std::string_view says;
  std::string_view more;       // a second column or a remark; may be empty
  std::string_view keywords;
  const Citation* citation;
};
std::span<const Fact> facts(Topic topic);

// Resistance of a joint, new and good, as a band. Rules of thumb.
struct JointBand {
  std::string_view key;
  std::string_view joint;
  units::Ohms low;
  units::Ohms high;
  std::string_view note;
  const Citation* citation;
};
std::span<const JointBand> joint_bands();
// The bands a joint is judged by: good below, bad above.
inline constexpr units::Ohms kGoodJoint{0.002};
inline constexpr units::Ohms kDoubtfulJoint{0.005};
inline constexpr units::Ohms kBadJoint{0.020};

// Rested open-circuit voltage of a 12 V battery by charge; `spread`: either way.
struct RestVoltage {
  double charge;               // 0 to 1
  units::Volts volts;
  units::Volts spread;
};
struct RestCurve {
  std::string_view battery;    // tables::BatteryKind key
  std::span<const RestVoltage> points;   // descending charge and voltage
  const Citation* citation;
};
std::span<const RestCurve> rest_curves();
const RestCurve* rest_curve(std::string_view battery_key);   // nullptr when there is none
// Charge at a rested voltage of one 12 V block, straight between points, held at the ends.
double charge_at_rest(const RestCurve& curve, units::Volts volts);

// How a battery gives less at a higher current (Peukert's rule): exponent 1 gives all.
struct RateEffect {
  std::string_view battery;    // tables::BatteryKind key
  double exponent;
  bool counts;                 // false: taken as none
  const Citation* citation;
};
const RateEffect* rate_effect(std::string_view battery_key);   // nullptr when there is none

}  // namespace tables
