// The list of calculators, and the small tools their answers are put together with.
#include <algorithm>
#include <cmath>

#include "calculators/ask.h"
#include "tables/row_by_key.h"

namespace calculators {
namespace {

std::vector<Definition> all_definitions() {
  std::vector<Definition> all;
  for (auto* group : {&run_calculators, &carrying_calculators, &power_calculators, &gauge_calculators,
                      &battery_calculators, &joint_calculators, &short_calculators}) {
    for (Definition& made : group()) all.push_back(std::move(made));
  }
  for (Definition& each : all) {
    // What is asked first stands first; "More" follows.
    std::stable_partition(each.inputs.begin(), each.inputs.end(), [](const Input& input) { return !input.folded; });
    each.face.inputs = each.inputs;
    each.face.outputs = each.outputs;
    each.face.citations = each.citations;
  }
  return all;
}

}  // namespace

const std::vector<Definition>& definitions() {
  static const std::vector<Definition> all = all_definitions();
  return all;
}

std::span<const Calculator> calculators() {
  static const std::vector<Calculator> faces = [] {
    std::vector<Calculator> made;
    for (const Definition& each : definitions()) made.push_back(each.face);
    return made;
  }();
  return faces;
}

const Calculator* calculator_by_key(std::string_view key) { return tables::row_by_key(calculators(), key); }

Draft::Draft(const Asked& asked) : asked_(asked) {}

Draft& Draft::gives_text(double value, std::string text) {
  const OutputKind& kind = asked_.calculator.outputs[result_.outputs.size()];
  result_.outputs.push_back({kind, value, std::move(text)});
  return *this;
}
Draft& Draft::gives(double value) {
  const OutputKind& kind = asked_.calculator.outputs[result_.outputs.size()];
  return gives_text(value, units::text(kind.measure, value, asked_.preference));
}
Draft& Draft::lacks(std::string text) {
  const OutputKind& kind = asked_.calculator.outputs[result_.outputs.size()];
  result_.outputs.push_back({kind, std::nullopt, std::move(text)});
  return *this;
}
Draft& Draft::note(std::string text) {
  if (!text.empty()) result_.notes.push_back(std::move(text));
  return *this;
}
Draft& Draft::cites(const tables::Citation* citation) {
  if (citation != nullptr &&
      std::find(result_.citations.begin(), result_.citations.end(), citation) == result_.citations.end()) {
    result_.citations.push_back(citation);
  }
  return *this;
}
Draft& Draft::about(const tables::Conductor& wire) {
  result_.wire = wire.id;
  return cites(wire.citation);
}
Draft& Draft::serves_not() {
  result_.serves = false;
  return *this;
}
Evaluation Draft::says(std::string sentence) {
  result_.sentence = std::move(sentence);
  Evaluation evaluation;
  evaluation.result = std::move(result_);
  return evaluation;
}

Evaluation refuse(const Asked& asked, std::string_view input, std::string sentence, std::string allowed) {
  Evaluation evaluation;
  evaluation.input = input_index(asked.calculator, input);
  circuit::Problem problem;
  if (evaluation.input) {
    problem.place = std::string(asked.calculator.inputs[*evaluation.input].name);
    problem.value = asked.values[*evaluation.input];
  }
  problem.sentence = std::move(sentence);
  problem.allowed = std::move(allowed);
  evaluation.problem = std::move(problem);
  return evaluation;
}

std::string no_ampacity_text(tables::NoAmpacity why) {
  switch (why) {
    case tables::NoAmpacity::table_ends:
      return "The table ends: it has no figure for this size or for so many circuits tied together.";
    case tables::NoAmpacity::insulation_below_table:
      return "The table has no column for insulation rated so low.";
    case tables::NoAmpacity::too_hot: return "The air is as hot as the insulation may get: the wire may carry nothing.";
  }
  return "The table has no figure.";
}

}  // namespace calculators
