// Each calculator against published worked examples or handbook formulas; source beside each.
#include <cmath>

#include "calculators/ask.h"
#include "calculators/run.h"
#include "tables/conductor.h"

using ask::evaluate;
using ask::number;
using doctest::Approx;

TEST_CASE("drop: 2.5 mm2, 4 m, 10 A at 20 degC loses 0.638 V (IEC 60228 class 5, 7.98 ohm/km)") {
  const auto e = evaluate("drop-of-a-run", {{"run", 4}, {"current", 10}, {"metal", 20}}, {{"wire", "2.5mm2"}});
  CHECK(number(e, "drop") == Approx(0.6384).epsilon(1e-4));
  CHECK(number(e, "fraction") == Approx(0.0532).epsilon(1e-3));
  CHECK(number(e, "heat") == Approx(6.384).epsilon(1e-4));
}
TEST_CASE("drop: 12 AWG, 15 ft, 10 A at 75 degC loses 0.594 V (NEC Chapter 9 Table 8, 1.98 ohm/kft stranded)") {
  const auto e = evaluate("drop-of-a-run", {{"run", 15 * 0.3048}, {"current", 10}, {"metal", 75}}, {{"wire", "12awg"}});
  CHECK(number(e, "drop") == Approx(0.594).epsilon(0.007));
}
TEST_CASE("drop: 15 A, 40 ft, 10 AWG loses 1.49 V (NEC Table 8, 1.24 ohm/kft at 75 degC)") {
  const auto e = evaluate("drop-of-a-run", {{"run", 40 * 0.3048}, {"current", 15}, {"metal", 75}}, {{"wire", "10awg"}});
  CHECK(number(e, "drop") == Approx(1.488).epsilon(0.007));
}
TEST_CASE("longest run: FAA AC 43.13-1B Table 11-8 formula, L = V / (I r), both ways here") {
  // Its tinned 10 AWG is 1.26 mohm/ft and the airframe returns; with our wire the same formula.
  const auto e = evaluate("longest-run", {{"current", 20}, {"limit", 0.05}, {"metal", 20}}, {{"wire", "10awg"}, {"system", "12"}});
  const double r = tables::conductor_by_id("10awg")->resistance_20c.number();
  CHECK(number(e, "run") == Approx(0.6 / (20.0 * 2.0 * r)));
}
TEST_CASE("wire for a run: 10 A pump, 10.5 ft one way, 3 % of 12 V needs 12 AWG (marine supplier's worked example)") {
  // Its formula uses copper at 25 degC (K = 10.75).
  const auto e = evaluate("wire-for-a-run", {{"current", 10}, {"run", 10.5 * 0.3048}, {"limit", 0.03}, {"metal", 25}},
                          {{"setting", "boat"}});
  CHECK(e.result->outputs.front().text == "12 AWG");
}
TEST_CASE("most current: 14 AWG, 105 degC, engine space, 2 circuits (4 conductors): 35 x 0.6 x 0.85 = 17.9 A (cable maker)") {
  const auto e = evaluate("most-current", {{"bundled", 2}}, {{"wire", "14awg"}, {"hot", "yes"}});
  CHECK(number(e, "ampacity") == Approx(17.85).epsilon(0.005));
  CHECK(number(e, "base") == Approx(35.0));
}
TEST_CASE("fuse: 12 A lasting needs 15 A (125 %, fuse makers' notes); 10 AWG in a van allows 30 (NEC 552.10, from memory)") {
  const auto e = evaluate("fuse-for-a-wire", {{"current", 12}});
  CHECK(number(e, "fuse") == Approx(15.0));
  CHECK(number(e, "most") == Approx(30.0));
}
TEST_CASE("fuse for a wire: none where the smallest that carries the load is above what the wire may carry (33 CFR 183.425 Table 5)") {
  // 14 AWG, 105 degC: 35 A. 30 A lasting asks for 37.5 A, and the next rating is 40 A.
  const auto e = evaluate("fuse-for-a-wire", {{"current", 30}}, {{"wire", "14awg"}, {"setting", "boat"}});
  REQUIRE(e.result);
  CHECK_FALSE(e.result->outputs.front().value);
  CHECK_FALSE(e.result->serves);
}
TEST_CASE("watts: 60 W at 12 V is 5 A and 2.4 ohm (P = V I, Ohm's law); any two give the rest") {
  const auto a = evaluate("watts-amps-volts", {{"volts", 12}, {"watts", 60}});
  const auto b = evaluate("watts-amps-volts", {{"volts", 12}, {"amperes", 5}}, {{"know", "volts-amperes"}});
  const auto c = evaluate("watts-amps-volts", {{"amperes", 5}, {"watts", 60}}, {{"know", "amperes-watts"}});
  for (const auto& e : {a, b, c}) {
    CHECK(number(e, "watts") == Approx(60.0));
    CHECK(number(e, "amperes") == Approx(5.0));
    CHECK(number(e, "volts") == Approx(12.0));
    CHECK(number(e, "ohms") == Approx(2.4));
  }
}
TEST_CASE("loads: 10 and 10 ohm make 5 side by side and 20 in series (textbook)") {
  CHECK(number(evaluate("loads-together", {{"first-ohms", 10}, {"second-ohms", 10}}, {{"rated", "ohms"}}), "ohms") == Approx(5.0));
  const auto series = evaluate("loads-together", {{"first-ohms", 10}, {"second-ohms", 20}, {"third-ohms", 30}},
                               {{"rated", "ohms"}, {"joined", "series"}});
  CHECK(number(series, "ohms") == Approx(60.0));
  CHECK(number(series, "across") == Approx(2.0));
  // Two equal 20 W lamps in series take a quarter each: 10 W in all.
  const auto lamps = evaluate("loads-together", {{"first-watts", 20}, {"second-watts", 20}}, {{"joined", "series"}});
  CHECK(number(lamps, "watts") == Approx(10.0));
}
TEST_CASE("gauge: ASTM B258, and back again over the whole range") {
  // Published diameters, mm: 10 AWG 2.588, 18 AWG 1.024, 4/0 11.684, 36 AWG 0.127.
  for (const auto& [awg, mm] : {std::pair{10.0, 2.588}, std::pair{18.0, 1.024}, std::pair{-3.0, 11.684}, std::pair{36.0, 0.127}}) {
    CHECK(number(evaluate("wire-sizes", {{"awg", awg}}), "diameter") == Approx(mm).epsilon(0.0005));
  }
  for (double awg = -3.0; awg <= 40.0; awg += 1.0) {
    const double area = number(evaluate("wire-sizes", {{"awg", awg}}), "area");
    CHECK(number(evaluate("wire-sizes", {{"area", area}}, {{"from", "area"}}), "awg") == Approx(awg).epsilon(1e-9));
    const double mm = number(evaluate("wire-sizes", {{"awg", awg}}), "diameter");
    CHECK(number(evaluate("wire-sizes", {{"diameter", mm}}, {{"from", "diameter"}}), "area") == Approx(area).epsilon(1e-9));
  }
  // NEC Chapter 9 Table 8: solid 10 AWG at 75 degC 1.21 ohm/kft.
  CHECK(number(evaluate("wire-sizes", {{"awg", 10}, {"metal", 75}}), "ohms") == Approx(1.21 / 304.8).epsilon(0.01));
}
TEST_CASE("battery: Peukert, t = H (C / (I H))^n (formula from a handbook, exponent typed)") {
  // 100 Ah over 20 h, n = 1.2, 20 A: 20 (100 / 400)^1.2 = 3.789 h to the end.
  const auto e = evaluate("battery-run-time", {{"current", 20}, {"depth", 1}, {"exponent", 1.2}}, {{"rate", "own"}});
  CHECK(number(e, "time") / 3600.0 == Approx(20.0 * std::pow(0.25, 1.2)));
  CHECK(number(evaluate("battery-run-time", {{"current", 5}}), "time") / 3600.0 == Approx(10.0));   // the 20-hour rate
  CHECK(number(evaluate("battery-run-time", {{"current", 1}}), "usable") == Approx(50.0));          // slower earns nothing
  CHECK(number(evaluate("battery-run-time", {{"current", 50}, {"depth", 0.8}}, {{"battery", "lifepo4"}}), "time") / 3600.0 == Approx(1.6));
}
TEST_CASE("joint: 50 mohm at 10 A is 0.5 V and 5 W (Ohm and Joule)") {
  const auto e = evaluate("joint", {{"before", 12.5}, {"after", 12.0}, {"current", 10}});
  CHECK(number(e, "resistance") == Approx(0.05));
  CHECK(number(e, "heat") == Approx(5.0));
  CHECK(number(e, "excess") == Approx(0.049));
}
TEST_CASE("path: 12.7 V falling to 12.2 V at 10 A is 50 mohm (Ohm)") {
  const auto e = evaluate("path", {{"unloaded", 12.7}, {"loaded", 12.2}, {"current", 10}});
  CHECK(number(e, "resistance") == Approx(0.05));
  CHECK(number(e, "short") == Approx(254.0));
}
TEST_CASE("fuse at n times: gates of blade fuses (one maker's sheet: 200 % 0.15 to 5 s, 350 % up to 0.5 s, 600 % 0.15 s)") {
  CHECK(number(evaluate("fuse-at-n-times", {{"times", 2}}), "opens") == Approx(5.0));
  CHECK(number(evaluate("fuse-at-n-times", {{"times", 2}}), "holds") == Approx(0.15));
  CHECK(number(evaluate("fuse-at-n-times", {{"times", 3.5}}), "opens") == Approx(0.5));
  CHECK(number(evaluate("fuse-at-n-times", {{"times", 6}}), "opens") == Approx(0.15));
  CHECK_FALSE(evaluate("fuse-at-n-times", {{"times", 1.2}}).result->outputs.front().value.has_value());
  double last = 1e9;
  for (double n = 1.35; n < 20.0; n += 0.05) {   // never slower at more current
    const double opens = number(evaluate("fuse-at-n-times", {{"times", n}}), "opens");
    CHECK(opens <= last);
    last = opens;
  }
}
TEST_CASE("every answer and every calculator names its source, formula and range") {
  for (const auto& calculator : calculators::calculators()) {
    CHECK(!calculator.citations.empty());
    CHECK(!calculator.formula.empty());
    CHECK(!calculator.formula_words.empty());
    const auto e = calculators::evaluate(calculator, calculators::normal_values(calculator), units::Preference::us);
    REQUIRE_MESSAGE(e.result.has_value(), std::string(calculator.key));
    CHECK(e.result->outputs.size() == calculator.outputs.size());
    CHECK(!e.result->citations.empty());
    CHECK(!e.result->sentence.empty());
    std::size_t asked = 0;
    for (std::size_t i = 0; i < calculator.inputs.size(); ++i) {
      if (!calculator.inputs[i].folded && calculators::is_asked(calculator, calculators::normal_values(calculator), i)) ++asked;
    }
    CHECK_MESSAGE(asked >= 2, std::string(calculator.key));
    CHECK_MESSAGE(asked <= 4, std::string(calculator.key));
  }
}
