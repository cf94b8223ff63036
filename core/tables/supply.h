// What feeds the circuit: system voltages and battery kinds, with the voltage to plan with,
// the lowest voltage worth planning for, the highest that charging brings, and a typical
// internal resistance. Per 12 V; 24 V has two and 48 V four in series.
#pragma once

#include <span>
#include <string_view>

#include "tables/citation.h"
#include "units/quantity.h"

namespace tables {

struct BatteryKind {
  std::string_view key;       // "lead-flooded", "lead-agm", "lifepo4"
  std::string_view name;
  units::Volts resting;       // charged and rested, the voltage drops are planned at
  units::Volts low;           // where a careful user stops
  units::Volts charging;      // highest while charging
  units::Ohms internal_resistance;  // about 100 Ah, with its own leads
  const Citation* citation;
};
std::span<const BatteryKind> battery_kinds();
const BatteryKind* battery_kind_by_key(std::string_view key);

// 12, 24 and 48: the only nominal voltages offered.
std::span<const double> system_voltages_v();
int blocks_in_series(units::Volts nominal);  // 1, 2 or 4; the nearest for anything else, at least 1

}  // namespace tables
