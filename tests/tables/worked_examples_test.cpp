// Published worked examples that concern the tables. The examples' own resistances check the
// arithmetic; the app's resistances must then land within what the difference in wire explains.
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "reference/reference.h"
#include "tables/ampacity.h"
#include "tables/conductor.h"

namespace {

nlohmann::json example(const std::string& id) {
  for (const auto& row : reference::read("worked_examples")["rows"]) {
    if (row["id"] == id) return row;
  }
  FAIL("no worked example " << id);
  return {};
}

constexpr double kMetresPerFoot = 0.3048;

units::OhmsPerMetre resistance(const char* id, double conductor_c) {
  return tables::resistance_at(tables::conductor_by_id(id)->resistance_20c, units::Celsius(conductor_c));
}

tables::DeratedAmpacity derated(const char* id, double insulation, int circuits, bool hot, double ambient = 30.0,
                                tables::AmpacityTableId table = tables::AmpacityTableId::marine_us) {
  tables::Surroundings around;
  around.insulation = units::Celsius(insulation);
  around.ambient = units::Celsius(ambient);
  around.circuits_bundled = circuits;
  around.hot_space = hot;
  const auto result = tables::ampacity(table, *tables::conductor_by_id(id), around);
  REQUIRE(result.value.has_value());
  return *result.value;
}

}  // namespace

TEST_CASE("Cable maker's bundling table: 14 AWG 105 degC, 4 to 6 bundled, in the engine space") {
  const auto row = example("cable_bundle_1");
  const auto ours = derated("14awg", 105, 2, true);  // two circuits, four conductors
  CHECK(ours.base.number() == row["inputs"]["base_A"].get<double>());
  CHECK(ours.bundling_factor == row["inputs"]["bundle"].get<double>());
  CHECK(ours.ambient_factor == row["inputs"]["engine"].get<double>());
  CHECK(std::fabs(ours.derated.number() - row["stated_answer"]["A"].get<double>()) <= 0.0501);  // rounded to 0.1
}

TEST_CASE("Cable maker's bundling table: 16 AWG, three bundled, outside") {
  // Three conductors are one and a half circuits; the app takes the next whole circuit, 0.6.
  const auto row = example("cable_bundle_3");
  const auto ours = derated("16awg", 105, 2, false);
  CHECK(ours.base.number() == row["inputs"]["base_A"].get<double>());
  CHECK(ours.base.number() * row["inputs"]["bundle"].get<double>() ==
        doctest::Approx(row["stated_answer"]["A"].get<double>()));
  CHECK(ours.derated.number() <= row["stated_answer"]["A"].get<double>());
}

TEST_CASE("Machine maker's manual: IEC figures at 40, 45 and 50 degC") {
  // The manual's wire is three-core; the ambient factors are the same for two.
  const auto row = example("iec_derate_1");
  const double base = row["inputs"]["A_30C"].get<double>();
  const auto& stated = row["stated_answer"]["A"];
  double ambient = 40.0;
  for (const auto& amperes : stated) {
    const auto ours = derated("6mm2", 70, 1, false, ambient, tables::AmpacityTableId::enclosed_iec);
    CHECK(std::fabs(base * ours.ambient_factor - amperes.get<double>()) <= 0.6);  // whole amperes, 'less than'
    ambient += 5.0;
  }
}

TEST_CASE("33 CFR's ceiling of 150 % is a ceiling, not what the app allows") {
  const auto row = example("fed_fuse");
  const auto ours = derated("16awg", 60, 1, false);
  CHECK(ours.base.number() == row["inputs"]["table5_A"].get<double>());
  CHECK(1.5 * ours.base.number() == row["stated_answer"]["max_fuse_A"].get<double>());
  CHECK(ours.derated.number() < row["stated_answer"]["max_fuse_A"].get<double>());
}

TEST_CASE("IEC 60364-4-43: 1.5 mm2 and 1000 A to 160 degC") {
  const auto row = example("adiabatic");
  const double k = tables::adiabatic_k(units::Celsius(70), units::Celsius(160));
  CHECK(k == doctest::Approx(row["inputs"]["k"].get<double>()).epsilon(0.001));
  const double area = tables::conductor_by_id("1.5mm2")->area.number();
  const double current = row["inputs"]["I"].get<double>();
  CHECK(std::pow(k * area / current, 2.0) == doctest::Approx(row["stated_answer"]["t_s"].get<double>()).epsilon(0.003));
}

TEST_CASE("FAA AC 43.13-1B Tables 11-7 and 11-8") {
  // Tin-plated aircraft wire at 20 degC against plain copper: the app's wire has up to 21 % less
  // resistance (10 AWG 1.26 printed, about 1.02 here), never more.
  struct Wire { const char* id; double ohm_per_ft; };
  for (const Wire& wire : {Wire{"6awg", 0.00044}, Wire{"12awg", 0.00202}, Wire{"14awg", 0.00306},
                           Wire{"10awg", 0.00126}}) {
    const double ours = resistance(wire.id, 20.0).number() * kMetresPerFoot;
    CHECK_MESSAGE(ours < wire.ohm_per_ft, wire.id);
    CHECK_MESSAGE(ours > 0.75 * wire.ohm_per_ft, wire.id);
  }
  int done = 0;
  for (const char* id : {"faa_11_7_1", "faa_11_7_4"}) {  // 11-7-3 is printed 3.60 V for 3.555 V
    const auto row = example(id);
    const units::Ohms ohms(row["inputs"]["ohm_per_ft"].get<double>() * row["inputs"]["run_ft"].get<double>());
    const units::Volts drop = units::Amperes(row["inputs"]["current_A"].get<double>()) * ohms;
    CHECK(drop.number() == doctest::Approx(row["stated_answer"]["drop_V"].get<double>()).epsilon(0.001));
    ++done;
  }
  CHECK(done == 2);
  for (const char* id : {"faa_11_8_1", "faa_11_8_4"}) {  // 11-8-2 is a misprint: not checked
    const auto row = example(id);
    const double per_ft = row["inputs"]["ohm_per_ft"].get<double>();
    const double limit = row["inputs"]["drop_allowed_V"].get<double>() / (per_ft * row["inputs"]["current_A"].get<double>());
    const double stated = row["stated_answer"]["max_run_ft"].get<double>();
    CHECK(stated <= limit);
    CHECK(stated > 0.975 * limit);
    // The app's wire reaches at least as far.
    const units::Ohms allowed = units::Volts(row["inputs"]["drop_allowed_V"].get<double>()) /
                                units::Amperes(row["inputs"]["current_A"].get<double>());
    CHECK((allowed / resistance("10awg", 20.0)).number() / kMetresPerFoot > stated);
  }
}

TEST_CASE("Aircraft bulletin: 18 AWG, 9 A, half a volt, 9 ft 3 in") {
  const auto row = example("bulletin_18awg");
  const double per_ft = row["inputs"]["ohm_per_ft"].get<double>();
  CHECK(0.5 / (9.0 * per_ft) == doctest::Approx(9.25).epsilon(0.002));  // 9 ft 3 in
  // Its 6 mohm/ft is for thicker tinned wire; ours is 8.5 % more, so the reach is shorter.
  const units::Metres reach = units::Volts(0.5) / units::Amperes(9.0) / resistance("18awg", 20.0);
  CHECK(reach.number() / kMetresPerFoot == doctest::Approx(9.25).epsilon(0.09));
  CHECK(reach.number() / kMetresPerFoot < 9.25);
}

TEST_CASE("Marine formula: 10 A over 21 ft there and back at 3 % of 12 V wants 12 AWG") {
  const auto row = example("abyc_bilge_3");
  const double mils = row["inputs"]["K"].get<double>() * 10.0 * 21.0 / 0.36;
  CHECK(mils == doctest::Approx(row["check"]["value_cmil"].get<double>()).epsilon(1e-3));
  constexpr double kSquareMmPerCircularMil = 0.00050670748;
  CHECK(tables::conductor_by_id("12awg")->area.number() >= mils * kSquareMmPerCircularMil);
  CHECK(tables::conductor_by_id("14awg")->area.number() < mils * kSquareMmPerCircularMil);
  CHECK((resistance("12awg", 20.0) * units::Metres(21.0 * kMetresPerFoot) * units::Amperes(10.0)).number() < 0.36);
  CHECK((resistance("14awg", 20.0) * units::Metres(21.0 * kMetresPerFoot) * units::Amperes(10.0)).number() > 0.36);
}

TEST_CASE("NEC Table 8: 10 A, 15 ft one way, 12 AWG at 75 degC") {
  const auto row = example("nec_t8_dc12");
  const units::Volts drop = resistance("12awg", 75.0) * units::Metres(30.0 * kMetresPerFoot) * units::Amperes(10.0);
  CHECK(drop.number() == doctest::Approx(row["stated_answer"]["drop_V"].get<double>()).epsilon(0.007));
}

TEST_CASE("NEC K method: 15 A, 40 ft one way, 10 AWG at 75 degC") {
  const auto row = example("nec_k");
  const units::Volts drop = resistance("10awg", 75.0) * units::Metres(80.0 * kMetresPerFoot) * units::Amperes(15.0);
  CHECK(drop.number() == doctest::Approx(row["stated_answer"]["drop_V"].get<double>()).epsilon(0.007));
}

TEST_CASE("IEC 60228: 2.5 mm2, 4 m one way, 10 A at 20 degC") {
  const auto row = example("iec_dc");
  const units::Volts drop = resistance("2.5mm2", 20.0) * units::Metres(8.0) * units::Amperes(10.0);
  CHECK(drop.number() == doctest::Approx(row["stated_answer"]["drop_V"].get<double>()).epsilon(0.001));
  CHECK(drop.number() / 12.0 == doctest::Approx(row["stated_answer"]["pct_12V"].get<double>() / 100.0).epsilon(0.001));
}
