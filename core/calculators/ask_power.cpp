#include "calculators/ask.h"

#include <cmath>

#include "calculators/power.h"

namespace calculators {
namespace {

using units::Amperes;
using units::Ohms;
using units::Volts;
using units::Watts;

Evaluation watts(const Asked& asked) {
  const std::string_view know = asked.choice("know");
  const Volts v(asked.number("volts"));
  const Amperes i(asked.number("amperes"));
  const Watts p(asked.number("watts"));
  const Power all = know == "volts-amperes" ? from_volts_amperes(v, i)
                    : know == "volts-watts" ? from_volts_watts(v, p)
                                            : from_amperes_watts(i, p);
  Draft draft(asked);
  draft.gives(all.watts.number()).gives(all.amperes.number()).gives(all.volts.number()).gives(all.ohms.number());
  draft.cites(&kPowerLaw);
  if (all.volts > Volts(60.0)) draft.note("Above 60 V d.c.: not for this app's circuits.");
  return draft.says(units::volts_text(all.volts) + " x " + units::amperes_text(all.amperes) + " = " +
                    units::watts_text(all.watts) + ".");
}

Evaluation together(const Asked& asked) {
  const bool in_ohms = asked.choice("rated") == "ohms";
  const Joined joined = asked.choice("joined") == "series" ? Joined::in_series : Joined::together;
  const Volts supply(asked.number("volts"));
  std::vector<Ohms> loads;
  for (const char* key : {"first", "second", "third"}) {
    const double told = asked.number(std::string(key) + (in_ohms ? "-ohms" : "-watts"));
    if (told > 0.0) loads.push_back(in_ohms ? Ohms(told) : resistance_of(Watts(told), supply));
  }
  const Combined all = combine(loads, supply, joined);
  Draft draft(asked);
  draft.gives(all.power.number()).gives(all.current.number()).gives(all.resistance.number());
  draft.gives(all.across.front().number()).cites(&kKirchhoff).cites(&kPowerLaw);
  if (joined == Joined::in_series) {
    draft.note("In series each load gets only a part of the voltage; devices made for the whole will not work.");
  }
  return draft.says(std::string(joined == Joined::in_series ? "One after the other" : "Side by side") + " they take " +
                    units::amperes_text(all.current) + " and " + units::watts_text(all.power) + " at " +
                    units::volts_text(supply) + ".");
}

Input only_if(Input input, std::string_view by, std::uint32_t choices) {
  input.only_if = by;
  input.only_if_choices = choices;
  return input;
}

}  // namespace

std::vector<Definition> power_calculators() {
  static const std::vector<Choice> known{{"volts-amperes", "Volts and amps"}, {"volts-watts", "Volts and watts"},
                                         {"amperes-watts", "Amps and watts"}};
  static const std::vector<Choice> joined{{"together", "Side by side (parallel)"}, {"series", "One after the other (series)"}};
  static const std::vector<Choice> rated{{"watts", "Watts"}, {"ohms", "Ohms"}};
  std::vector<Definition> all;
  all.push_back({{.key = "watts-amps-volts", .title = "Watts, amps, volts", .question = "Any two give the rest.",
                  .formula_words = "Watts = volts x amperes.", .formula = "P = V x I;  R = V / I", .caution = {},
                  .keywords = "power convert amperes wattage to amp w a v ohm law", .plot = Plot::none, .fits_circuit = true},
                 {choice_input("know", "You know", known, "volts-watts"),
                  only_if(number_input("volts", "Volts", Measure::voltage, 0.1, 60.0, 0.1, 12.0), "know", 0b011),
                  only_if(number_input("amperes", "Amperes", Measure::current, 0.001, 1000.0, 0.5, 5.0), "know", 0b101),
                  only_if(number_input("watts", "Watts", Measure::power, 0.001, 20000.0, 5.0, 60.0), "know", 0b110)},
                 {{"watts", "Watts", Measure::power}, {"amperes", "Amperes", Measure::current}, {"volts", "Volts", Measure::voltage},
                  {"ohms", "As a resistance", Measure::resistance}},
                 {&kPowerLaw}, &watts});
  // The third load may be left out: 0.
  const auto load = [](std::string_view key, std::string_view name, bool ohms, bool optional, double normal) {
    Input input = ohms ? number_input(key, name, Measure::resistance, optional ? 0.0 : 0.01, 100000.0, 1.0, normal)
                       : number_input(key, name, Measure::power, optional ? 0.0 : 0.01, 10000.0, 5.0, normal);
    return only_if(input, "rated", ohms ? 0b10U : 0b01U);
  };
  Input rated_in = choice_input("rated", "Loads told in", rated, "watts");
  rated_in.folded = true;
  Input volts = number_input("volts", "Supply", Measure::voltage, 0.5, 60.0, 0.1, 12.0);
  volts.folded = true;
  all.push_back({{.key = "loads-together", .title = "Loads together and in series",
                  .question = "What do these loads take, side by side or one after the other?",
                  .formula_words = "Side by side: currents add. One after the other: ohms add.",
                  .formula = "1/R = 1/R1 + 1/R2 + 1/R3;  R = R1 + R2 + R3;  Rk = V^2 / Pk", .caution = {},
                  .keywords = "parallel series resistor resistance ohms lamps total add", .plot = Plot::none},
                 {choice_input("joined", "Joined", joined, "together"),
                  load("first-watts", "First, 0 for none", false, false, 20.0), load("first-ohms", "First", true, false, 10.0),
                  load("second-watts", "Second", false, false, 10.0), load("second-ohms", "Second", true, false, 10.0),
                  load("third-watts", "Third, 0 for none", false, true, 0.0),
                  load("third-ohms", "Third, 0 for none", true, true, 0.0), rated_in, volts},
                 {{"watts", "All together", Measure::power}, {"amperes", "From the supply", Measure::current},
                  {"ohms", "As one resistance", Measure::resistance}, {"across", "Across the first", Measure::voltage}},
                 {&kKirchhoff, &kPowerLaw}, &together});
  all.back().inputs[1].name = "First";
  return all;
}

}  // namespace calculators
