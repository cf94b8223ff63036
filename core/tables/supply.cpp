#include "tables/supply.h"

#include <array>

#include "tables/citation_list.h"
#include "tables/row_by_key.h"

namespace tables {
namespace {

using units::Ohms;
using units::Volts;

constexpr double kBlockV = 12.0;

// Per 12 V. Lead: full and rested; half charged at rest; warm absorption. Lithium: on the
// plateau (a full one falls there at once); the upper controller cut-off; full charge.
// The internal resistance is the high end of its band: the safe side for drop.
constinit const std::array<BatteryKind, 3> kBatteryKinds{{
    {"lead-flooded", "Lead, flooded", Volts(12.65), Volts(12.1), Volts(14.8), Ohms(0.008), &kLeadFlooded},
    {"lead-agm", "Lead, AGM", Volts(12.85), Volts(12.1), Volts(14.7), Ohms(0.005), &kLeadAgm},
    {"lifepo4", "Lithium iron phosphate", Volts(13.2), Volts(12.0), Volts(14.6), Ohms(0.004), &kLithiumIron},
}};

constexpr std::array<double, 3> kSystemVoltages{12.0, 24.0, 48.0};

}  // namespace

std::span<const BatteryKind> battery_kinds() { return kBatteryKinds; }

const BatteryKind* battery_kind_by_key(std::string_view key) { return row_by_key(kBatteryKinds, key); }

std::span<const double> system_voltages_v() { return kSystemVoltages; }

int blocks_in_series(units::Volts nominal) {
  const double blocks = nominal.number() / kBlockV;
  if (!(blocks >= 1.5)) return 1;
  return blocks < 3.0 ? 2 : 4;
}

}  // namespace tables
