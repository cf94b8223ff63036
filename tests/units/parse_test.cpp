#include "units/parse.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <random>
#include <string>

using units::Measure;
using units::Preference;

namespace {

// Metres typed where the app shows metres, or feet; a large negative number when refused.
double read(const char* text, Measure measure, Preference bare = Preference::metric) {
  const units::Typed typed = units::read(text, measure, bare);
  CHECK((typed.core.has_value() == typed.why_not.empty()));
  return typed.core.value_or(-1e9);
}
double metres(const char* text, Preference bare = Preference::metric) { return read(text, Measure::length, bare); }
double amperes(const char* text) { return read(text, Measure::current); }
double celsius(const char* text, Preference bare) { return read(text, Measure::temperature, bare); }
constexpr double kRefused = -1e9;

int rounds(int full) {
  const char* quick = std::getenv("BRANCHLIGHT_QUICK");
  return quick != nullptr && std::string(quick) == "1" ? full / 20 : full;
}

}  // namespace

TEST_CASE("Numbers typed with greasy thumbs") {
  CHECK(units::parse_number("12").value == 12.0);
  CHECK(units::parse_number(" 7,5 ").value == 7.5);
  CHECK(units::parse_number("+.5").value == 0.5);
  CHECK(units::parse_number("-3").value == -3.0);
  CHECK(units::parse_number("\xE2\x88\x92" "3").value == -3.0);  // a real minus sign
  CHECK(units::parse_number("0,125").value == 0.125);
  CHECK(amperes("7.5A") == 7.5);
  CHECK(amperes("7.5 amps") == 7.5);
  CHECK(amperes("300 mA") == doctest::Approx(0.3));
  CHECK(read("1.2 kW", Measure::power) == 1200.0);
  CHECK(units::parse_volts("12,6 v").value == units::Volts(12.6));
  CHECK(units::parse_percent("5").value == 0.05);
  CHECK(units::parse_percent("5 %").value == 0.05);
}

TEST_CASE("Lengths in both systems") {
  CHECK(metres("3.2") == 3.2);
  CHECK(metres("3.2", Preference::us) == doctest::Approx(3.2 * 0.3048));
  CHECK(metres("3,2 M") == 3.2);
  CHECK(metres("75mm") == doctest::Approx(0.075));
  CHECK(metres("1 m 20 cm") == doctest::Approx(1.2));
  CHECK(metres("10 ft 6 in") == doctest::Approx(3.2004));
  CHECK(metres("10'6\"") == doctest::Approx(3.2004));
  CHECK(metres("10\xE2\x80\xB2 6\xE2\x80\xB3") == doctest::Approx(3.2004));
  CHECK(metres("10'6") == doctest::Approx(3.2004));
  CHECK(metres("10.5ft") == doctest::Approx(3.2004));
  CHECK(metres("10 ft. 6 in.") == doctest::Approx(3.2004));
  CHECK(metres("6 inches") == doctest::Approx(0.1524));
  CHECK(metres("-2 m") == -2.0);  // read as typed; the field's limit refuses it
  CHECK(celsius("104 F", Preference::metric) == doctest::Approx(40));
  CHECK(celsius("104", Preference::us) == doctest::Approx(40));
  CHECK(celsius("40 °C", Preference::us) == doctest::Approx(40));
  CHECK(celsius("-40", Preference::us) == doctest::Approx(-40));
}

TEST_CASE("Half a text, two numbers or a guess are refused, with a hint") {
  for (const char* text : {"", " ", "m", "abc", "3.2 x", "3 m 4", "3 4", "1.2.3", "1,2,3", "--3", "3-", "1e3", "nan",
                           "inf", "0x10", "10 in 6 ft", "10 m 6 in", "10' 6\" 3", "3 mm 2 cm", ".", ",", "1,200",
                           "12345678901234567890123456789012345"}) {
    CHECK_MESSAGE(metres(text) == kRefused, text);
    CHECK_FALSE(units::read(text, Measure::length, Preference::us).why_not.empty());
    CHECK_FALSE(units::parse_number(text).value.has_value());
  }
  CHECK(amperes("5 V") == kRefused);
  CHECK(amperes("1,200") == kRefused);
  CHECK(read("5 MW", Measure::power) == kRefused);  // milli or mega: nobody knows
  CHECK(celsius("40 K", Preference::metric) == kRefused);
  CHECK(units::parse_number("5 A").value.has_value() == false);
}

TEST_CASE("Any bytes are read or refused, never half read") {
  const unsigned long long seed = 183425;
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  const std::string likely = "0123456789.,-+ '\"mMfFtTinNcCaAvVwWkK%eEx\xC2\xB0\xE2\x80\xB2\n\0";
  const int count = rounds(60000);
  for (int i = 0; i < count; ++i) {
    std::string text(random() % 16, '\0');
    for (char& c : text) c = i % 2 == 0 ? static_cast<char>(random() % 256) : likely[random() % likely.size()];
    bool fine = true;
    for (std::size_t m = 0; m < units::kMeasures; ++m) {
      for (const Preference preference : {Preference::metric, Preference::us}) {
        const units::Typed typed = units::read(text, static_cast<Measure>(m), preference);
        fine = fine && (typed.core ? typed.why_not.empty() && std::isfinite(*typed.core) : !typed.why_not.empty());
      }
    }
    if (!fine) FAIL("seed " << seed << ", text " << i);
  }
}

TEST_CASE("A field of amperes or watts takes either, and tells which it was") {
  const std::array either{Measure::current, Measure::power};
  const auto typed = [&](const char* text) { return units::read(text, either, Preference::metric); };
  CHECK(typed("60 W").measure == Measure::power);
  CHECK(typed("60w").core == 60.0);
  CHECK(typed("1,2 kW").core == 1200.0);
  CHECK(typed("5 A").measure == Measure::current);
  CHECK(typed("5 A").unit_told);
  CHECK(typed("5").measure == Measure::current);     // a bare number is of the first
  CHECK_FALSE(typed("5").unit_told);
  const std::array watts_now{Measure::power, Measure::current};
  CHECK(units::read("5", watts_now, Preference::metric).measure == Measure::power);
  CHECK_FALSE(typed("5 V").core.has_value());
  CHECK(typed("5 V").why_not == "Not a current or a power. Type it as 7.5 A or 60 W.");
}

TEST_CASE("Resistances: the case of m and M counts, gauges with their noughts") {
  CHECK(read("15 mΩ", Measure::resistance) == 0.015);
  CHECK(read("15", Measure::small_resistance) == 0.015);
  CHECK(read("2 MΩ", Measure::resistance) == 2e6);
  CHECK(read("2.2 kohm", Measure::resistance) == 2200.0);
  CHECK(read("0.4 \xE2\x84\xA6", Measure::resistance) == 0.4);   // the ohm sign of a phone's keyboard
  CHECK(read("3 MOHM", Measure::resistance) == kRefused);           // milli or mega: nobody knows
  CHECK(read("1/0", Measure::gauge) == 0.0);
  CHECK(read("4/0 AWG", Measure::gauge) == -3.0);
  CHECK(read("10 awg", Measure::gauge) == 10.0);
  CHECK(read("5/0", Measure::gauge) == kRefused);
  CHECK(read("1/0 mm", Measure::gauge) == kRefused);
  CHECK(read("2.5 mm2", Measure::area) == 2.5);
  CHECK(read("2.5 MM²", Measure::area) == 2.5);
  CHECK(read("90 min", Measure::time) == 5400.0);
  CHECK(read("500 mAh", Measure::charge) == 0.5);
}

TEST_CASE("A whole number of a record is digits and nothing else") {
  CHECK(units::parse_whole("0") == 0U);
  CHECK(units::parse_whole("4294967295") == 4294967295U);
  for (const char* text : {"", " 1", "1 ", "+1", "-1", "1.0", "1e3", "0x1", "4294967296", "one"}) CHECK_FALSE(units::parse_whole(text));
}
