#include "calculators/calculator.h"

#include <algorithm>
#include <cmath>

#include "calculators/ask.h"
#include "calculators/run.h"

namespace calculators {
namespace {

std::size_t work_index(const Calculator& calculator) {
  const auto all = calculators();
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].key == calculator.key) return i;
  }
  return all.size();
}

bool close_to_whole(double value) { return std::fabs(value - std::round(value)) < 1e-9; }

// A number that falls short of its range by a rounding error counts as in it.
bool within(const Input& input, double value) {
  const double slack = 1e-9 * std::max(1.0, std::fabs(input.high));
  return value >= input.low - slack && value <= input.high + slack;
}

}  // namespace

Values normal_values(const Calculator& calculator) {
  Values values;
  for (const Input& input : calculator.inputs) values.push_back(input.normal);
  return values;
}

std::optional<std::size_t> input_index(const Calculator& calculator, std::string_view key) {
  for (std::size_t i = 0; i < calculator.inputs.size(); ++i) {
    if (calculator.inputs[i].key == key) return i;
  }
  return std::nullopt;
}

std::optional<std::size_t> choice_index(const Input& input, std::string_view key) {
  for (std::size_t i = 0; i < input.choices.size(); ++i) {
    if (input.choices[i].key == key) return i;
  }
  return std::nullopt;
}

bool is_asked(const Calculator& calculator, const Values& values, std::size_t input) {
  if (input >= calculator.inputs.size()) return false;
  const Input& asked = calculator.inputs[input];
  if (asked.only_if.empty()) return true;
  const auto by = input_index(calculator, asked.only_if);
  if (!by || *by >= values.size() || !(values[*by] >= 0.0 && values[*by] < 32.0)) return false;
  return (asked.only_if_choices >> static_cast<unsigned>(values[*by]) & 1U) != 0U;
}

std::string value_text(const Input& input, double value, units::Preference preference) {
  if (!input.choices.empty()) {
    const bool known = value >= 0.0 && value < static_cast<double>(input.choices.size());
    return known ? input.choices[static_cast<std::size_t>(value)].name : std::string("?");
  }
  return input.reading ? units::exact_text(input.measure, value, preference) : units::text(input.measure, value, preference);
}

std::optional<circuit::Problem> check_input(const Input& input, double value, units::Preference preference) {
  if (!input.choices.empty()) {
    if (within(input, value) && close_to_whole(value)) return std::nullopt;
    return circuit::Problem{std::string(input.name), "That is not one of the choices.", "Pick one of the list."};
  }
  circuit::Problem problem;
  problem.place = std::string(input.name);
  problem.allowed = "Give " + value_text(input, input.low, preference) + " to " +
                    value_text(input, input.high, preference) + (input.whole ? ", whole numbers." : ".");
  problem.value = value;
  if (std::isnan(value)) {
    problem.sentence = "Not a number.";
    return problem;
  }
  if (!within(input, value)) {
    problem.sentence = "It is " + value_text(input, value, preference) + ".";
    return problem;
  }
  if (input.whole && !close_to_whole(value)) {
    problem.sentence = "It is " + value_text(input, value, preference) + ".";
    return problem;
  }
  return std::nullopt;
}

Evaluation evaluate(const Calculator& calculator, const Values& values, units::Preference preference) {
  Evaluation evaluation;
  const std::size_t index = work_index(calculator);
  if (index >= definitions().size() || values.size() != calculators()[index].inputs.size()) {
    evaluation.problem = circuit::Problem{"", "That is not one of the calculators.", "Pick one of the list."};
    return evaluation;
  }
  const Calculator& known = calculators()[index];
  Values held = values;
  for (std::size_t i = 0; i < known.inputs.size(); ++i) {
    const Input& input = known.inputs[i];
    if (!is_asked(known, values, i)) {
      held[i] = input.normal;
      continue;
    }
    if (auto problem = check_input(input, values[i], preference)) {
      evaluation.problem = std::move(problem);
      evaluation.input = i;
      return evaluation;
    }
    held[i] = std::clamp(input.whole ? std::round(values[i]) : values[i], input.low, input.high);
  }
  return definitions()[index].work(Asked{known, held, preference});
}

std::optional<DropCurve> drop_curve(const Calculator& calculator, const Values& values) {
  if (calculator.plot != Plot::drop_by_length) return std::nullopt;
  const Evaluation evaluation = evaluate(calculator, values, units::Preference::metric);
  if (!evaluation.result || !evaluation.result->wire) return std::nullopt;
  const Asked asked{calculator, values, units::Preference::metric};
  const tables::Conductor& wire = *tables::conductor_by_id(*evaluation.result->wire);
  const units::Amperes current(asked.number("current"));
  const units::Celsius metal(asked.number("metal"));
  DropCurve curve;
  curve.limit_fraction = asked.number("limit");
  curve.longest_m = longest_run(wire, current, asked.system() * curve.limit_fraction, metal).number();
  curve.here_m = input_index(calculator, "run") ? asked.number("run") : curve.longest_m;
  const double to_m = 1.3 * std::max(curve.longest_m > 10.0 * curve.here_m ? 0.0 : curve.longest_m, curve.here_m);
  constexpr int kPoints = 40;
  for (int i = 0; i <= kPoints; ++i) {
    const double x = to_m * i / kPoints;
    curve.points.push_back({x, drop_of_run(wire, units::Metres(x), current, asked.system(), metal).fraction});
  }
  return curve;
}

}  // namespace calculators
