// Geometry by ASTM B258's formula, resistances by IEC 60028, IEC 60228 and NEC Chapter 9 Table 8.
#include "tables/conductor.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "reference/reference.h"
#include "tables/wire.h"

using tables::Conductor;
using tables::GaugeSystem;

namespace {

constexpr double kOhmPerKftToOhmPerM = 1.0 / 304.8;

}  // namespace

TEST_CASE("AWG areas follow ASTM B258 and the published list") {
  int listed = 0;
  for (const auto& row : reference::read("awg_copper")["rows"]) {
    const Conductor* size = tables::conductor_by_id(row["awg"].get<std::string>() + "awg");
    if (size == nullptr) continue;
    ++listed;
    const double n = row["n"].get<double>();
    const double diameter_mm = 0.127 * std::pow(92.0, (36.0 - n) / 39.0);
    CHECK(size->area.number() == doctest::Approx(std::acos(-1.0) / 4.0 * diameter_mm * diameter_mm).epsilon(1e-12));
    CHECK(size->area.number() == doctest::Approx(row["area_mm2"].get<double>()).epsilon(5e-5));
  }
  CHECK(listed == 15);
  // Typed a second time, from ASTM B258: 4/0 is 0.46 in thick by definition.
  CHECK(wire("4/0awg").area.number() == doctest::Approx(std::acos(-1.0) / 4.0 * 11.684 * 11.684).epsilon(1e-12));
  CHECK(wire("10awg").area.number() == doctest::Approx(5.261).epsilon(1e-4));
  CHECK(wire("18awg").area.number() == doctest::Approx(0.823).epsilon(1e-4));
}

TEST_CASE("AWG resistance is IEC 60028 copper with 2 % lay") {
  for (const auto& row : reference::read("awg_copper")["rows"]) {
    const Conductor* size = tables::conductor_by_id(row["awg"].get<std::string>() + "awg");
    if (size == nullptr) continue;
    const double solid = row["r20_solid_computed_ohm_per_km"].get<double>() / 1000.0;
    CHECK(size->resistance_20c.number() == doctest::Approx(1.02 * solid).epsilon(4e-4));
  }
}

TEST_CASE("AWG at 75 degC agrees with NEC Chapter 9 Table 8, stranded uncoated, within 0.7 %") {
  int compared = 0;
  for (const auto& row : reference::read("awg_copper")["rows"]) {
    const Conductor* size = tables::conductor_by_id(row["awg"].get<std::string>() + "awg");
    if (size == nullptr) continue;
    const double printed = row["r75_stranded_uncoated_ohm_per_kft"].get<double>() * kOhmPerKftToOhmPerM;
    const double ours = tables::resistance_at(size->resistance_20c, units::Celsius(75.0)).number();
    CHECK_MESSAGE(std::fabs(ours / printed - 1.0) < 0.007, row["awg"]);
    ++compared;
  }
  CHECK(compared == 15);
  // Typed a second time from Table 8: 10 AWG 1.24, 4/0 0.0608 ohm/kft.
  const auto at_75 = [](const char* id) { return tables::resistance_at(wire(id).resistance_20c, units::Celsius(75.0)); };
  CHECK(at_75("10awg").number() * 304.8 == doctest::Approx(1.24).epsilon(0.007));
  CHECK(at_75("4/0awg").number() * 304.8 == doctest::Approx(0.0608).epsilon(0.007));
}

TEST_CASE("Metric resistance is the IEC 60228 class 5 plain maximum") {
  int listed = 0;
  for (const auto& row : reference::read("metric_copper")["rows"]) {
    const double area = row["area_mm2"].get<double>();
    for (const Conductor& size : tables::conductors(GaugeSystem::metric)) {
      if (std::fabs(size.area.number() - area) > 1e-9) continue;
      CHECK(size.resistance_20c.number() * 1000.0 == doctest::Approx(row["class5_plain"].get<double>()).epsilon(1e-12));
      ++listed;
    }
  }
  CHECK(listed == static_cast<int>(tables::conductors(GaugeSystem::metric).size()));
  CHECK(wire("2.5mm2").resistance_20c.number() == doctest::Approx(0.00798));
  CHECK(wire("120mm2").resistance_20c.number() == doctest::Approx(0.000161));
}

TEST_CASE("Each ladder ascends in area and descends in resistance; ids lead back") {
  CHECK(tables::gauge_systems().size() == 3);
  for (const GaugeSystem system : tables::gauge_systems()) {
    const auto ladder = tables::conductors(system);
    CHECK(ladder.size() == (system == GaugeSystem::awg ? 15U : 14U));
    for (std::size_t i = 0; i < ladder.size(); ++i) {
      CHECK(ladder[i].system == system);
      CHECK(tables::conductor_by_id(ladder[i].id) == &ladder[i]);
      CHECK(ladder[i].citation != nullptr);
      if (i == 0) continue;
      CHECK(ladder[i].area > ladder[i - 1].area);
      CHECK(ladder[i].resistance_20c < ladder[i - 1].resistance_20c);
    }
  }
  CHECK(tables::conductor_by_id("5awg") == nullptr);
  CHECK(tables::conductor_by_id("") == nullptr);
}

TEST_CASE("Resistance rises with temperature as R2/R1 = (234.5 + T2)/(234.5 + T1)") {
  // The ratio form is IEC 60228's own; its rounding of 0.00393 leaves 0.1 % at the far ends.
  const units::OhmsPerMetre at_20(1.0);
  for (double t = -40.0; t <= 200.0; t += 5.0) {
    const double ratio = (234.5 + t) / (234.5 + 20.0);
    CHECK(tables::resistance_at(at_20, units::Celsius(t)).number() == doctest::Approx(ratio).epsilon(1e-3));
  }
  CHECK(tables::resistance_at(at_20, units::Celsius(20.0)).number() == 1.0);
}

TEST_CASE("k of the adiabatic rule gives the rounded values standards print (from memory)") {
  // IEC 60364-4-43 Table 43A and IEC 60364-5-54 Table A.54.2.
  CHECK(std::round(tables::adiabatic_k(units::Celsius(70), units::Celsius(160))) == 115);
  CHECK(std::round(tables::adiabatic_k(units::Celsius(90), units::Celsius(160))) == 100);
  CHECK(std::round(tables::adiabatic_k(units::Celsius(90), units::Celsius(250))) == 143);
  CHECK(std::round(tables::adiabatic_k(units::Celsius(60), units::Celsius(200))) == 141);
  CHECK(std::round(tables::adiabatic_k(units::Celsius(30), units::Celsius(160))) == 143);
  CHECK(std::round(tables::adiabatic_k(units::Celsius(30), units::Celsius(250))) == 176);
  CHECK(tables::adiabatic_k(units::Celsius(160), units::Celsius(160)) == 0.0);
  CHECK(tables::adiabatic_k(units::Celsius(170), units::Celsius(160)) == 0.0);
}
