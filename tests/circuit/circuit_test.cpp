#include "circuit/circuit.h"

#include <doctest/doctest.h>

#include "circuit/limits.h"
#include "circuit/validate.h"

using namespace circuit;

TEST_CASE("letters run A to Z, then AA, as columns are lettered") {
  CHECK(outlet_letter(0) == "A");
  CHECK(outlet_letter(25) == "Z");
  CHECK(outlet_letter(26) == "AA");
  CHECK(outlet_letter(51) == "AZ");
  CHECK(outlet_letter(52) == "BA");
  CHECK(outlet_letter(299) == "KN");  // 300 = 11 * 26 + 14
  CHECK(outlet_letter(701) == "ZZ");
  CHECK(outlet_letter(702) == "AAA");
}

TEST_CASE("rated current: amperes as typed, watts over the nominal voltage") {
  CHECK(rated_current({LoadKind::constant_current, false, 10.0, {}}, units::Volts(24)).number() == 10.0);
  CHECK(rated_current({LoadKind::constant_power, true, 36.0, {}}, units::Volts(12)).number() == doctest::Approx(3.0));
  CHECK(rated_current({LoadKind::resistive, true, 60.0, {}}, units::Volts(24)).number() == doctest::Approx(2.5));
}

TEST_CASE("the demo: a bench of three outlets, valid, within its cap") {
  const Circuit demo = demo_circuit();
  CHECK(validate(demo).empty());
  REQUIRE(demo.outlets.size() == 3);
  CHECK(demo.fuse_position == 4);
  CHECK(demo.outlets[1].devices.front().load.minimum_voltage == units::Volts(11.0));
  // 2.9 + 1.2 + 1.0 m along the wire.
  CHECK(distance_from_block(demo, demo.outlets[2].id).number() == doctest::Approx(5.1));
  CHECK(fed_by(demo, kBlock) == std::vector<std::size_t>{0});
  CHECK(fed_by(demo, demo.outlets[0].id) == std::vector<std::size_t>{1});
  CHECK(fed_by(demo, demo.outlets[2].id).empty());
}

TEST_CASE("a new circuit is valid in both gauge systems and holds one outlet without a load") {
  for (const auto gauge : {tables::GaugeSystem::awg, tables::GaugeSystem::metric}) {
    const Circuit fresh = new_circuit(gauge);
    CHECK(validate(fresh).empty());
    REQUIRE(fresh.outlets.size() == 1);
    CHECK(fresh.outlets[0].devices.front().load.rating == 0.0);
    const auto* feeder = tables::conductor_by_id(fresh.supply.feeder_size);
    REQUIRE(feeder != nullptr);
    CHECK(feeder->system == gauge);
  }
}

TEST_CASE("an outlet that is not there has no place and no distance") {
  const Circuit demo = demo_circuit();
  CHECK(find_outlet(demo, OutletId{99}) == nullptr);
  CHECK(find_outlet(demo, kBlock) == nullptr);
  CHECK(distance_from_block(demo, OutletId{99}).number() == 0.0);
}

TEST_CASE("distance in unchecked data that feeds itself in a ring still ends") {
  Circuit ring = demo_circuit();
  ring.outlets[0].fed_from = ring.outlets[2].id;
  CHECK(distance_from_block(ring, ring.outlets[0].id).number() > 0.0);
  CHECK_FALSE(validate(ring).empty());
}

TEST_CASE("every limit has a name, a step within its range, and a place by its field") {
  for (const Limit& entry : limits()) {
    CAPTURE(entry.name);
    CHECK(&limit(entry.field) == &entry);
    CHECK_FALSE(entry.name.empty());
    CHECK(entry.low < entry.high);
    CHECK(entry.step > 0.0);
    CHECK(entry.step < entry.high - entry.low);
  }
}
