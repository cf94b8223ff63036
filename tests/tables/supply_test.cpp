#include "tables/supply.h"

#include <doctest/doctest.h>

#include "reference/reference.h"

using tables::BatteryKind;

TEST_CASE("Battery figures stand inside the published bands") {
  const auto& rows = reference::read("batteries")["rows"];
  const BatteryKind& flooded = *tables::battery_kind_by_key("lead-flooded");
  const BatteryKind& agm = *tables::battery_kind_by_key("lead-agm");
  const BatteryKind& lithium = *tables::battery_kind_by_key("lifepo4");
  CHECK(flooded.resting.number() == rows["lead_acid_flooded_ocv_12V"][0]["V"].get<double>());
  CHECK(agm.resting.number() == rows["agm_ocv_12V"][0]["V"].get<double>());
  CHECK(flooded.low.number() == rows["low_voltage_limits_12V"][0]["V"].get<double>());
  CHECK(agm.low.number() == rows["low_voltage_limits_12V"][0]["V"].get<double>());
  // Full to two thirds lies on a plateau of 13.1 to 13.5 V; controllers stop at 11.5 to 12.0 V.
  CHECK(lithium.resting.number() > 13.1);
  CHECK(lithium.resting.number() < 13.5);
  CHECK(lithium.low.number() >= 11.5);
  CHECK(lithium.low.number() <= 12.0);
  CHECK(lithium.charging.number() <= 4 * rows["lifepo4_per_cell"]["charge_max_V"].get<double>() + 1e-9);
  // Inside resistance for 100 Ah: the high end of the bands 4-8, 3-5 and 1.5-4 mohm.
  CHECK(flooded.internal_resistance.number() == 0.008);
  CHECK(agm.internal_resistance.number() == 0.005);
  CHECK(lithium.internal_resistance.number() == 0.004);
}

TEST_CASE("Low is below resting, resting below charging, and charging within ISO 16750-2's 16 V") {
  for (const BatteryKind& kind : tables::battery_kinds()) {
    CHECK(kind.low < kind.resting);
    CHECK(kind.resting < kind.charging);
    CHECK(kind.charging.number() <= 16.0);
    CHECK(kind.internal_resistance.number() > 0.0);
    CHECK(tables::battery_kind_by_key(kind.key) == &kind);
  }
  CHECK(tables::battery_kind_by_key("none") == nullptr);
}

TEST_CASE("System voltages are whole blocks of 12 V") {
  for (const double volts : tables::system_voltages_v()) {
    CHECK(tables::blocks_in_series(units::Volts(volts)) * 12.0 == volts);
  }
  CHECK(tables::blocks_in_series(units::Volts(0.0)) == 1);
}
