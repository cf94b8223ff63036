// Ask a calculator by key, as the screen does.
#pragma once

#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <vector>

#include "calculators/calculator.h"

namespace ask {

using With = std::vector<std::pair<std::string, double>>;
using Choose = std::vector<std::pair<std::string, std::string>>;

inline calculators::Evaluation evaluate(const char* key, const With& with, const Choose& choose = {}) {
  const calculators::Calculator* calculator = calculators::calculator_by_key(key);
  REQUIRE(calculator != nullptr);
  calculators::Values values = calculators::normal_values(*calculator);
  for (const auto& [input, value] : with) values.at(calculators::input_index(*calculator, input).value()) = value;
  for (const auto& [input, choice] : choose) {
    const std::size_t i = calculators::input_index(*calculator, input).value();
    values.at(i) = static_cast<double>(calculators::choice_index(calculator->inputs[i], choice).value());
  }
  return calculators::evaluate(*calculator, values, units::Preference::metric);
}
inline double number(const calculators::Evaluation& evaluation, const char* output) {
  REQUIRE(evaluation.result.has_value());
  for (const auto& each : evaluation.result->outputs) {
    if (each.kind.key == output) return each.value.value();
  }
  FAIL("no such output");
  return 0.0;
}

}  // namespace ask
