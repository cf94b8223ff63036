#include "calculators/ask.h"

#include <cmath>

#include "calculators/gauge.h"

namespace calculators {
namespace {

std::string listed(const tables::Conductor* size) { return size == nullptr ? "the list ends" : wire_name(*size); }

Evaluation convert(const Asked& asked) {
  const units::Celsius metal(asked.number("metal"));
  const std::string_view from = asked.choice("from");
  const Gauge gauge = from == "awg"    ? from_awg(asked.number("awg"), metal)
                      : from == "area" ? from_area(units::SquareMillimetres(asked.number("area")), metal)
                                       : from_diameter(units::Millimetres(asked.number("diameter")), metal);
  const std::string awg = units::gauge_text(gauge.awg);
  Draft draft(asked);
  draft.gives_text(gauge.area.number(), units::exact_text(Measure::area, gauge.area.number(), asked.preference))
      .gives_text(gauge.awg, awg).gives(gauge.diameter.number()).gives(gauge.solid.number());
  const auto size = [&](const tables::Conductor* wire) {
    if (wire == nullptr) draft.lacks("the list ends");
    else draft.gives_text(wire->area.number(), wire_name(*wire));
  };
  size(gauge.not_thinner_awg);
  size(gauge.not_thinner_metric);
  for (const tables::Citation* citation : asked.calculator.citations) draft.cites(citation);
  if (gauge.not_thinner_awg != nullptr) draft.about(*gauge.not_thinner_awg);
  draft.note("Diameter and ohms are of one solid conductor. Strands make it wider by about a seventh and add some 2 %.");
  draft.note("Automotive cable sold by SAE gauge may hold 5 to 12 % less copper than true AWG.");
  return draft.says(units::area_text(gauge.area) + " of copper. Not thinner: " + listed(gauge.not_thinner_awg) + " or " +
                    listed(gauge.not_thinner_metric) + ".");
}

Input only_if(Input input, std::uint32_t choices) {
  input.only_if = "from";
  input.only_if_choices = choices;
  return input;
}

}  // namespace

std::vector<Definition> gauge_calculators() {
  static const std::vector<Choice> from{{"awg", "AWG"}, {"area", "mm²"}, {"diameter", "Diameter"}};
  Input awg = number_input("awg", "Gauge", Measure::gauge, -3.0, 40.0, 1.0, 10.0);
  awg.whole = true;
  Input metal = metal_input();
  metal.folded = false;
  metal.normal = 20.0;
  std::vector<Definition> all;
  all.push_back({{.key = "wire-sizes", .title = "AWG, mm², diameter, ohms",
                  .question = "What is this size in the other measures?",
                  .formula_words = "39 gauge steps between 0.127 mm (36 AWG) and 11.68 mm (4/0) make 92 times the diameter.",
                  .formula = "d = 0.127 mm x 92^((36 - n)/39);  r = 1/58 / A x (1 + 0.00393 (T - 20))", .caution = {},
                  .keywords = "convert gauge mm2 awg to square millimetre millimeter cross section diameter resistance metric",
                  .plot = Plot::conductor},
                 {choice_input("from", "From", from, "awg"), only_if(awg, 0b001),
                  only_if(as_reading(number_input("area", "Copper", Measure::area, 0.005, 120.0, 0.5, 6.0)), 0b010),
                  only_if(as_reading(number_input("diameter", "Diameter, solid", Measure::diameter, 0.05, 12.0, 0.1, 2.5)), 0b100), metal},
                 {{"area", "Copper", Measure::area}, {"awg", "Gauge", Measure::gauge}, {"diameter", "Diameter, solid", Measure::diameter},
                  {"ohms", "Solid, one conductor", Measure::resistance_per_length},
                  {"next-awg", "Not thinner, AWG", Measure::area}, {"next-metric", "Not thinner, metric", Measure::area}},
                 {tables::citation_by_id("awg-conductors"), tables::citation_by_id("iec-60028")}, &convert});
  return all;
}

}  // namespace calculators
