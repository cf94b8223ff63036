// Bad input says what is allowed; random input never breaks anything.
#include <cmath>
#include <cstdlib>
#include <limits>
#include <random>

#include "calculators/ask.h"

using ask::evaluate;

TEST_CASE("out of range, not a number, not listed: a sentence and what is allowed") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinite = std::numeric_limits<double>::infinity();
  for (const double bad : {nan, infinite, -infinite, -1.0, 1e9}) {
    const auto e = evaluate("drop-of-a-run", {{"run", bad}});
    REQUIRE(e.problem.has_value());
    CHECK(!e.result);
    CHECK(e.problem->allowed == "Give 0.05 m to 100 m.");
    CHECK(e.input.has_value());
  }
  CHECK(evaluate("fuse-at-n-times", {{"fuse", 16}}).problem->sentence == "Blade fuses are not made for 16 A.");
  CHECK(evaluate("joint", {{"before", 12.0}, {"after", 12.1}}).problem.has_value());
  CHECK(evaluate("path", {{"unloaded", 12.0}, {"loaded", 12.0}}).problem.has_value());
  CHECK(evaluate("drop-of-a-run", {{"wire", 99}}).problem.has_value());
  calculators::Calculator unknown;
  CHECK(calculators::evaluate(unknown, {}, units::Preference::metric).problem.has_value());
  CHECK(calculators::evaluate(calculators::calculators().front(), {1.0}, units::Preference::metric).problem.has_value());
}

TEST_CASE("a table that ends says so") {
  const auto e = evaluate("most-current", {}, {{"wire", "120mm2"}});
  CHECK(e.result->sentence.find("table ends") != std::string::npos);
  CHECK_FALSE(e.result->serves);
  CHECK_FALSE(e.result->outputs.front().value.has_value());
  CHECK(evaluate("wire-for-a-run", {{"current", 200}}).result->sentence.find("No size") == 0);
  CHECK(evaluate("wire-sizes", {{"area", 119}}, {{"from", "area"}}).result->outputs[4].text == "the list ends");
}

TEST_CASE("random values within and beyond the ranges") {
  constexpr std::uint64_t kSeed = 4;
  MESSAGE("seed " << kSeed);
  std::mt19937_64 random(kSeed);
  const int count = std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 300 : 6000;
  for (int i = 0; i < count; ++i) {
    const auto all = calculators::calculators();
    const auto& calculator = all[random() % all.size()];
    calculators::Values values;
    for (const auto& input : calculator.inputs) {
      const double share = std::uniform_real_distribution<double>(random() % 20 == 0 ? -0.2 : 0.0, 1.0)(random);
      double value = input.low + share * (input.high - input.low);
      if (input.whole) value = std::round(value);
      values.push_back(value);
    }
    const auto preference = random() % 2 == 0 ? units::Preference::metric : units::Preference::us;
    const auto e = calculators::evaluate(calculator, values, preference);
    CHECK(e.result.has_value() != e.problem.has_value());
    if (!e.result) {
      CHECK(!e.problem->allowed.empty());
      continue;
    }
    CHECK(e.result->outputs.size() == calculator.outputs.size());
    for (const auto& output : e.result->outputs) {
      CHECK(!output.text.empty());
      if (output.value) CHECK(std::isfinite(*output.value));
    }
    (void)calculators::drop_curve(calculator, values);
  }
}
