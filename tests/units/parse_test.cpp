#include "units/parse.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <random>
#include <string>

using units::Preference;

namespace {

// Metres typed where the app shows metres, or feet; a large negative number when refused.
double metres(const char* text, Preference bare = Preference::metric) {
  const auto parsed = units::parse_length(text, bare);
  CHECK((parsed.value.has_value() == parsed.why_not.empty()));
  return parsed.value ? parsed.value->number() : -1e9;
}
double amperes(const char* text) {
  const auto parsed = units::parse_amperes(text);
  return parsed.value ? parsed.value->number() : -1e9;
}
double celsius(const char* text, Preference bare) {
  const auto parsed = units::parse_celsius(text, bare);
  return parsed.value ? parsed.value->number() : -1e9;
}
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
  CHECK(units::parse_watts("1.2 kW").value == units::Watts(1200));
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
    CHECK_FALSE(units::parse_length(text, Preference::us).why_not.empty());
    CHECK_FALSE(units::parse_number(text).value.has_value());
  }
  CHECK(amperes("5 V") == kRefused);
  CHECK(amperes("1,200") == kRefused);
  CHECK(units::parse_watts("5 MW").value.has_value() == false);  // milli or mega: nobody knows
  CHECK(celsius("40 K", Preference::metric) == kRefused);
  CHECK(units::parse_number("5 A").value.has_value() == false);
}

TEST_CASE("Any bytes are read or refused, never half read") {
  const unsigned long long seed = 183425;
  INFO("seed " << seed);
  std::mt19937_64 random(seed);
  const std::string likely = "0123456789.,-+ '\"mMfFtTinNcCaAvVwWkK%eEx\xC2\xB0\xE2\x80\xB2\n\0";
  const int count = rounds(200000);
  for (int i = 0; i < count; ++i) {
    std::string text(random() % 16, '\0');
    for (char& c : text) c = i % 2 == 0 ? static_cast<char>(random() % 256) : likely[random() % likely.size()];
    const auto good = [](const auto& parsed, auto number) {
      if (!parsed.value) return !parsed.why_not.empty();
      return parsed.why_not.empty() && std::isfinite(number(*parsed.value));
    };
    const auto plain = [](double x) { return x; };
    const auto quantity = [](auto q) { return q.number(); };
    bool fine = good(units::parse_number(text), plain) && good(units::parse_percent(text), plain);
    fine = fine && good(units::parse_length(text, Preference::us), quantity);
    fine = fine && good(units::parse_length(text, Preference::metric), quantity);
    fine = fine && good(units::parse_amperes(text), quantity) && good(units::parse_watts(text), quantity);
    fine = fine && good(units::parse_volts(text), quantity);
    fine = fine && good(units::parse_celsius(text, Preference::us), quantity);
    if (!fine) FAIL("seed " << seed << ", text " << i);
  }
}
