#include "calculators/ask.h"

#include "calculators/joint.h"
#include "tables/fact.h"
#include "tables/part.h"

namespace calculators {
namespace {

using units::Amperes;
using units::Ohms;
using units::Volts;

std::string grade_text(JointGrade grade) {
  switch (grade) {
    case JointGrade::good: return "A good joint: below 2 mΩ.";
    case JointGrade::fair: return "Usable, not perfect: 2 to 5 mΩ.";
    case JointGrade::doubtful: return "Doubtful: above 5 mΩ. Look at it again.";
    case JointGrade::bad: return "Bad: above 20 mΩ. Make it again.";
  }
  return {};
}

Evaluation joint(const Asked& asked) {
  const Volts before(asked.number("before")), after(asked.number("after"));
  if (after > before) {
    return refuse(asked, "after", "The second reading is higher than the first.",
                  "Give at most " + units::number_text(before.number(), 5) + " V, or swap the two readings.");
  }
  const JointReading reading = judge_joint(before, after, Amperes(asked.number("current")), Ohms(asked.number("good")));
  Draft draft(asked);
  draft.gives(reading.excess.number()).gives(reading.heat.number()).gives(reading.resistance.number()).gives(reading.lost.number());
  for (const tables::Citation* citation : asked.calculator.citations) draft.cites(citation);
  if (reading.lost < Volts(0.02)) draft.note("So small a drop is near the last digit of the meter: more current tells more.");
  draft.note("The bands are a rule of thumb from memory.");
  return draft.says(grade_text(reading.grade) + " It turns " + units::watts_text(reading.heat) + " to heat.");
}

Evaluation path(const Asked& asked) {
  const Volts unloaded(asked.number("unloaded")), loaded(asked.number("loaded"));
  if (!(loaded < unloaded)) {
    return refuse(asked, "loaded", "The loaded reading is not below the unloaded one.",
                  "Give less than " + units::number_text(unloaded.number(), 5) + " V.");
  }
  const PathReading reading = judge_path(unloaded, loaded, Amperes(asked.number("current")));
  Draft draft(asked);
  draft.gives(reading.resistance.number()).gives(reading.fraction).gives(reading.heat.number()).gives(reading.into_short.number());
  draft.cites(&kLoadedTest).cites(&kOhmsLaw);
  draft.note("Everything counts: battery, feeder, fuse, wires and joints, both ways.");
  return draft.says("The path has " + units::ohms_text(reading.resistance) + " and turns " +
                    units::watts_text(reading.heat) + " to heat.");
}

Input reading(std::string_view key, std::string_view name, double low, double normal) {
  return as_reading(number_input(key, name, Measure::voltage, low, 60.0, 0.01, normal));
}

}  // namespace

std::vector<Definition> joint_calculators() {
  Input good = as_reading(number_input("good", "A good one has", Measure::small_resistance, 0.0, 0.02, 0.0001, 0.001));
  good.folded = true;
  std::vector<Definition> all;
  all.push_back({{.key = "joint", .title = "A joint from two readings", .question = "Is this joint good, and how hot does it get?",
                  .formula_words = "Ohms = volts lost across it / amperes. Heat = volts lost x amperes.",
                  .formula = "R = (V1 - V2) / I;  P = (V1 - V2) x I",
                  .caution = "A loose joint heats: do not leave one running to see.",
                  .keywords = "excess resistance heat bad connection crimp corroded hot terminal milliohm voltage drop test",
                  .plot = Plot::none},
                 {reading("before", "Reading before it", 0.0, 12.5), reading("after", "Reading after it", 0.0, 12.4),
                  current_input("Current", 10.0), good},
                 {{"excess", "More than a good one", Measure::resistance}, {"heat", "Heat in it", Measure::power},
                  {"resistance", "Its resistance", Measure::resistance}, {"lost", "Lost across it", Measure::voltage}},
                 {&kLoadedTest, &tables::joint_resistance_citation()}, &joint});
  all.push_back({{.key = "path", .title = "A path from two readings",
                  .question = "What resistance lies between battery and outlet?",
                  .formula_words = "Ohms = (volts without load - volts with load) / amperes of the load.",
                  .formula = "R = (V0 - V1) / I", .caution = {},
                  .keywords = "loaded unloaded reading resistance circuit internal wiring sag loop",
                  .plot = Plot::none},
                 {reading("unloaded", "Without load", 0.1, 12.7), reading("loaded", "With load", 0.0, 12.2),
                  current_input("Current", 10.0)},
                 {{"resistance", "Resistance of the path", Measure::resistance}, {"fraction", "Drop", Measure::fraction},
                  {"heat", "Heat along it", Measure::power}, {"short", "A short there would take", Measure::current}},
                 {&kLoadedTest, &kOhmsLaw}, &path});
  return all;
}

}  // namespace calculators
