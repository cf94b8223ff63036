// The table of measures against definitions from outside, and against itself: what is shown can be
// typed, what is typed comes back, steps are round.
#include "units/measure.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "units/parse.h"

using units::Measure;
using units::Preference;

namespace {

std::vector<Measure> all() {
  std::vector<Measure> measures;
  for (std::size_t i = 0; i < units::kMeasures; ++i) measures.push_back(static_cast<Measure>(i));
  return measures;
}
constexpr Preference kBoth[] = {Preference::metric, Preference::us};

}  // namespace

TEST_CASE("Units as they are defined") {
  // Foot and inch: international yard and pound agreement of 1959, 0.9144 m to the yard.
  CHECK(units::to_core(Measure::length, 3.0, Preference::us) == doctest::Approx(0.9144).epsilon(1e-12));
  CHECK(units::to_core(Measure::short_length, 36.0, Preference::us) == doctest::Approx(0.9144).epsilon(1e-12));
  CHECK(units::to_shown(Measure::short_length, 0.075, Preference::metric) == doctest::Approx(75.0));
  // Boiling and freezing water, and where the two scales meet.
  CHECK(units::to_shown(Measure::temperature, 100.0, Preference::us) == doctest::Approx(212.0));
  CHECK(units::to_shown(Measure::temperature, 0.0, Preference::us) == doctest::Approx(32.0));
  CHECK(units::to_shown(Measure::temperature, -40.0, Preference::us) == doctest::Approx(-40.0));
  CHECK(units::to_shown(Measure::temperature, 40.0, Preference::metric) == 40.0);
  CHECK(units::to_shown(Measure::fraction, 0.05, Preference::us) == doctest::Approx(5.0));
  CHECK(units::to_shown(Measure::small_resistance, 0.015, Preference::metric) == doctest::Approx(15.0));
  // 1 mΩ/m is 0.3048 mΩ/ft.
  CHECK(units::to_shown(Measure::resistance_per_length, 0.001, Preference::us) == doctest::Approx(0.3048));
}

TEST_CASE("Every row: shown and back is the same number, and its text can be typed") {
  const unsigned long long seed = 240817;
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> exponent(-2.0, 3.0);
  for (const Measure measure : all()) {
    for (const Preference preference : kBoth) {
      CAPTURE(static_cast<int>(measure));
      CAPTURE(static_cast<int>(preference));
      const units::MeasureRow& row = units::row(measure, preference);
      CHECK(row.measure == measure);
      CHECK(row.preference == preference);
      for (int i = 0; i < 300; ++i) {
        const double core = measure == Measure::gauge ? static_cast<double>(random() % 44) - 3.0 : std::pow(10.0, exponent(random));
        CAPTURE(core);
        const double back = units::to_core(measure, units::to_shown(measure, core, preference), preference);
        CHECK(back == doctest::Approx(core).epsilon(1e-12));
        for (const std::string& text : {units::typed_text(measure, core, preference), units::exact_text(measure, core, preference),
                                        units::text(measure, core, preference)}) {
          CAPTURE(text);
          const units::Typed typed = units::read(text, measure, preference);
          REQUIRE(typed.core.has_value());
          // The least that five digits keep; text() is rounded further, as format_test holds it.
          const double kept = std::pow(10.0, 1 - row.typed_digits) * (std::fabs(core) + std::fabs(row.zero * row.to_core));
          if (text != units::text(measure, core, preference)) CHECK(std::fabs(*typed.core - core) <= kept);
        }
      }
    }
  }
}

TEST_CASE("Every key of the number pad types a unit that is read") {
  for (const Measure measure : all()) {
    for (const Preference preference : kBoth) {
      const units::MeasureRow& row = units::row(measure, preference);
      CHECK(row.keys.size() <= 3);
      bool own = row.keys.empty();
      for (const units::UnitKey& key : row.keys) {
        own = own || key.label == row.unit;
        const units::Typed typed = units::read("2 " + std::string(key.label), measure, preference);
        CAPTURE(key.label);
        CHECK(typed.core.has_value());
        CHECK(typed.unit_told);
      }
      CHECK(own);
    }
  }
}

TEST_CASE("Steps are round in the unit that is shown") {
  const auto step = [](Measure measure, double core, Preference preference) { return units::shown_step(measure, core, preference); };
  CHECK(step(Measure::length, 0.1, Preference::metric) == doctest::Approx(0.1));
  CHECK(step(Measure::length, 0.1, Preference::us) == 0.5);              // half a foot
  CHECK(step(Measure::length, 0.01, Preference::us) == doctest::Approx(1.0 / 12.0));
  CHECK(step(Measure::short_length, 0.025, Preference::metric) == doctest::Approx(25.0));
  CHECK(step(Measure::short_length, 0.025, Preference::us) == 1.0);      // an inch
  CHECK(step(Measure::temperature, 5.0, Preference::us) == 10.0);
  CHECK(step(Measure::fraction, 0.005, Preference::us) == doctest::Approx(0.5));
  CHECK(step(Measure::current, 0.5, Preference::us) == 0.5);
  CHECK(step(Measure::small_resistance, 0.001, Preference::metric) == doctest::Approx(1.0));
}

TEST_CASE("What the pad starts with") {
  CHECK(units::typed_text(Measure::length, 5.7, Preference::metric) == "5.7");
  CHECK(units::typed_text(Measure::length, 3.2004, Preference::us) == "10 ft 6 in");
  CHECK(units::typed_text(Measure::length, 5.7 * 0.3048, Preference::us) == "5.7");
  CHECK(units::typed_text(Measure::gauge, 0.0, Preference::us) == "1/0 AWG");
  CHECK(units::typed_text(Measure::voltage, 12.345, Preference::metric) == "12.345");
  CHECK(units::exact_text(Measure::voltage, 12.345, Preference::metric) == "12.345 V");
  CHECK(units::exact_text(Measure::area, 0.823, Preference::metric) == "0.823 mm²");
  CHECK(units::text(Measure::resistance_per_length, 0.00328, Preference::us) == "1 mΩ/ft");
  CHECK(units::text(Measure::gauge, -2.0, Preference::us) == "3/0 AWG");
  CHECK(units::text(Measure::charge, 100.0, Preference::metric) == "100 Ah");
}

TEST_CASE("A value that left its range by a rounding error is put back, one that left it is not") {
  CHECK(units::settled(0.05 - 1e-12, 0.05, 100.0) == 0.05);
  CHECK(units::settled(100.0 + 1e-9, 0.05, 100.0) == 100.0);
  CHECK(units::settled(100.1, 0.05, 100.0) == 100.1);
  CHECK(units::settled(0.04, 0.05, 100.0) == 0.04);
  CHECK(units::settled(3.0, 0.05, 100.0) == 3.0);
}
