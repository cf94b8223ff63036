// A wire past a table's last row: practically that size (resistance within 5 %), or the table ends.
#include <doctest/doctest.h>

#include "tables/ampacity.h"

using tables::AmpacityTableId;

TEST_CASE("120 mm2 is practically 4/0 and reads its row; nothing else past an end has a figure") {
  tables::Surroundings around;
  const auto read = [&](AmpacityTableId table, const char* id) {
    return tables::ampacity(table, *tables::conductor_by_id(id), around);
  };
  // 33 CFR 183.425 Table 5, 4/0 at 105 degC: 445 A. IEC 60228 class 5: 120 mm2 0.161 mohm/m.
  const auto thick = read(AmpacityTableId::marine_us, "120mm2");
  REQUIRE(thick.value);
  CHECK(thick.value->derated.number() == doctest::Approx(445.0));
  CHECK(thick.value->row == "4/0 AWG, 105 °C");
  // 2/0 AWG (67.4 mm2) has 0.261 against 0.272 mohm/m of 70 mm2: 4 % less.
  CHECK(read(AmpacityTableId::enclosed_iec, "2/0awg").value);
  for (const char* id : {"95mm2", "120mm2", "3/0awg", "4/0awg"}) {
    CHECK_MESSAGE(!read(AmpacityTableId::enclosed_iec, id).value, id);
    CHECK_MESSAGE(!read(AmpacityTableId::clipped_iec, id).value, id);
  }
  // The limit itself: a wire 6 % better than 4/0 has no figure, 4 % better has.
  tables::Conductor made = *tables::conductor_by_id("4/0awg");
  const auto last = made.resistance_20c;
  made.id = "made";
  made.resistance_20c = last * 0.96;
  CHECK(tables::ampacity(AmpacityTableId::marine_us, made, around).value);
  made.resistance_20c = last * 0.94;
  CHECK_FALSE(tables::ampacity(AmpacityTableId::marine_us, made, around).value);
}
