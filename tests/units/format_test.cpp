#include "units/format.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>

#include "units/parse.h"

using units::Measure;
using units::Preference;

namespace {

std::string amperes(double a) { return units::amperes_text(units::Amperes(a)); }
std::string volts(double v) { return units::volts_text(units::Volts(v)); }
std::string metric(double m) { return units::length_text(units::Metres(m), Preference::metric); }
double read(const std::string& text, Measure measure, Preference bare = Preference::metric) {
  return units::read(text, measure, bare).core.value();
}
std::string feet(double m) { return units::length_text(units::Metres(m), Preference::us); }

// Text as people write it: no exponent, no negative zero.
void check_written(const std::string& text) {
  INFO(text);
  CHECK(text.find('e') == std::string::npos);
  CHECK(text.find('E') == std::string::npos);
  CHECK_FALSE(text.empty());
  if (text.front() == '-') CHECK(text.find_first_of("123456789\xE2") != std::string::npos);
}

}  // namespace

TEST_CASE("Numbers as the trade writes them") {
  CHECK(amperes(15) == "15 A");
  CHECK(amperes(7.5) == "7.5 A");
  CHECK(amperes(0.3) == "0.3 A");
  CHECK(amperes(12.34) == "12.3 A");
  CHECK(amperes(9.996) == "10 A");
  CHECK(amperes(99.96) == "100 A");
  CHECK(amperes(1234) == "1234 A");
  CHECK(volts(12.2) == "12.2 V");
  CHECK(volts(12) == "12.0 V");
  CHECK(volts(0.36) == "0.36 V");
  CHECK(volts(0.999) == "1.0 V");
  CHECK(volts(-0.001) == "0.00 V");
  CHECK(units::watts_text(units::Watts(60)) == "60 W");
  CHECK(units::watts_text(units::Watts(1250)) == "1250 W");
  CHECK(units::ohms_text(units::Ohms(0.0033)) == "3.3 mΩ");
  CHECK(units::ohms_text(units::Ohms(28.8)) == "28.8 Ω");
  CHECK(units::ohms_text(units::Ohms(0.123)) == "123 mΩ");
  CHECK(units::ohms_text(units::Ohms(10e6)) == "10 MΩ");
  CHECK(units::ohms_text(units::Ohms(1500.0)) == "1.5 kΩ");
  CHECK(units::ohms_text(units::Ohms(0.99999)) == "1 Ω");
  CHECK(units::seconds_text(units::Seconds(0.15)) == "0.15 s");
  CHECK(units::seconds_text(units::Seconds(600)) == "10 min");
  CHECK(units::seconds_text(units::Seconds(1800)) == "30 min");
  CHECK(units::seconds_text(units::Seconds(360000)) == "100 h");
  CHECK(units::percent_text(0.046) == "4.6 %");
  CHECK(units::percent_text(0.05) == "5 %");
  CHECK(units::celsius_text(units::Celsius(50), Preference::metric) == "50 °C");
  CHECK(units::celsius_text(units::Celsius(50), Preference::us) == "122 °F");
  CHECK(units::celsius_text(units::Celsius(-0.2), Preference::metric) == "0 °C");
  CHECK(units::area_text(units::SquareMillimetres(5.2612)) == "5.3 mm²");
  CHECK(units::area_text(units::SquareMillimetres(107.2)) == "107 mm²");
  CHECK(units::area_text(units::SquareMillimetres(0.75)) == "0.75 mm²");
  CHECK(units::number_text(0.1 + 0.2, 15) == "0.3");
  CHECK(units::number_text(-1e-300, 3).find('e') == std::string::npos);
  CHECK(units::number_text(-0.0, 3) == "0");
  CHECK(units::number_text(123456, 3) == "123000");
  CHECK(units::number_text(9.996, 3) == "10");
}

TEST_CASE("Lengths") {
  CHECK(metric(3.2) == "3.2 m");
  CHECK(metric(0.08) == "0.08 m");
  CHECK(metric(0.075) == "0.07 m");  // a tail: short_length_text() writes it better
  CHECK(metric(12.25) == "12.25 m");
  CHECK(metric(0) == "0 m");
  CHECK(feet(3.2004) == "10 ft 6 in");
  CHECK(feet(0.3048) == "1 ft");
  CHECK(feet(0.2286) == "9 in");
  CHECK(feet(0.3) == "1 ft");      // 11.8 in rounds to 12
  CHECK(feet(3.04) == "10 ft");    // 119.7 in rounds to 120: no "9 ft 12 in"
  CHECK(feet(-0.001) == "0 in");
  CHECK(feet(-1.0) == "-3 ft 3 in");
  CHECK(units::short_length_text(units::Metres(0.075), Preference::metric) == "75 mm");
  CHECK(units::short_length_text(units::Metres(0.075), Preference::us) == "3 in");
}

TEST_CASE("Not a number and infinity are written, not crashed over") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinity = std::numeric_limits<double>::infinity();
  CHECK(amperes(nan) == "? A");
  CHECK(amperes(infinity) == "∞ A");
  CHECK(feet(nan) == "? ft");
  CHECK(feet(infinity) == "∞ ft");
  CHECK(units::number_text(-infinity, 3) == "-∞");
  check_written(volts(std::numeric_limits<double>::max()));
  check_written(volts(std::numeric_limits<double>::denorm_min()));
  check_written(units::number_text(std::numeric_limits<double>::denorm_min(), 3));
  check_written(units::number_text(std::numeric_limits<double>::max(), 3));
  check_written(feet(1e300));
}

TEST_CASE("What is written reads back as the same number, to its rounding") {
  const unsigned long long seed = 20240607;
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  std::uniform_real_distribution<double> exponent(-3.0, 4.0);
  for (int i = 0; i < 5000; ++i) {
    const double x = std::pow(10.0, exponent(random)) * (i % 7 == 0 ? -1.0 : 1.0);
    INFO("x " << x);
    const auto near = [&](double y, double relative, double absolute) {
      return std::fabs(y - x) <= relative * std::fabs(x) + absolute;
    };
    check_written(amperes(x));
    CHECK(near(read(amperes(x), Measure::current), 0.005, 1e-12));
    CHECK(near(read(units::watts_text(units::Watts(x)), Measure::power), 0.005, 1e-12));
    CHECK(near(units::parse_volts(volts(x)).value.value().number(), 0.0, 0.0501));
    CHECK(near(units::parse_percent(units::percent_text(x)).value.value(), 0.0, 0.000501));
    CHECK(near(units::parse_number(units::number_text(x, 6)).value.value(), 5e-6, 0.0));
    const double mm = 0.00501;
    const double inch = 0.0127 + 1e-9;
    CHECK(near(read(metric(x), Measure::length, Preference::us), 0.0, mm));
    CHECK(near(read(feet(x), Measure::length), 0.0, inch));
    CHECK(near(read(units::celsius_text(units::Celsius(x), Preference::us), Measure::temperature), 0.0, 0.2778 + 1e-9));
    // Written, read and written again is the same text.
    CHECK(amperes(read(amperes(x), Measure::current)) == amperes(x));
    CHECK(feet(read(feet(x), Measure::length, Preference::us)) == feet(x));
    CHECK(metric(read(metric(x), Measure::length, Preference::us)) == metric(x));
  }
}
