#include "calculators/ask.h"

#include "calculators/battery.h"
#include "tables/fact.h"

namespace calculators {
namespace {

Evaluation how_long(const Asked& asked) {
  const tables::RateEffect& effect = *tables::rate_effect(asked.choice("battery"));
  const units::Amperes load(asked.number("current"));
  const bool own = asked.choice("rate") == "own";
  const double exponent = !effect.counts ? 1.0 : own ? asked.number("exponent") : effect.exponent;
  const RunTime run = run_time(asked.number("capacity"), load, asked.number("depth"), exponent, asked.number("hours"));
  Draft draft(asked);
  draft.gives(run.time.number()).gives(run.usable_ah).gives(run.rate_factor);
  draft.cites(&kChargeOverCurrent).cites(effect.citation);
  if (effect.counts) {
    draft.note("Rate effect by Peukert's rule, n = " + units::number_text(exponent, 3) +
               (own ? ", as you gave it." : ", from memory."));
  } else {
    draft.note("No rate effect counted for lithium, up to the current it is rated for.");
  }
  if (effect.counts && asked.number("depth") > 0.5 + 1e-9) draft.note("Taking more than half shortens a lead battery's life.");
  return draft.says(units::amperes_text(load) + " runs for " + units::seconds_text(run.time) + " from " +
                    units::text(Measure::charge, run.usable_ah, asked.preference) + " that can be used.");
}

}  // namespace

std::vector<Definition> battery_calculators() {
  static const std::vector<Choice> rates{{"usual", "As usual for its kind"}, {"own", "My own exponent"}};
  Input rate = choice_input("rate", "Rate effect", rates, "usual");
  Input exponent = number_input("exponent", "Exponent n", Measure::count, 1.0, 1.6, 0.01, 1.2);
  exponent.only_if = "rate";
  exponent.only_if_choices = 0b10;
  Input hours = number_input("hours", "Rated over", Measure::count, 1.0, 100.0, 1.0, 20.0);
  hours.name = "Rated over, hours";
  rate.folded = exponent.folded = hours.folded = true;
  std::vector<Definition> all;
  all.push_back({{.key = "battery-run-time", .title = "Battery run time", .question = "How long does this battery last?",
                  .formula_words = "Hours = ampere hours x the share you use / amperes. A lead battery gives less the "
                                   "faster it is emptied.",
                  .formula = "t = depth x H x (C / (I x H))^n, never more than depth x C / I",
                  .caution = "A battery can deliver thousands of amperes: rings off, main fuse close to it.",
                  .keywords = "how long battery last hours runtime capacity ah amp hours peukert discharge",
                  .plot = Plot::battery_voltage},
                 {choice_input("battery", "Battery", battery_choices(), "lead-agm"),
                  number_input("capacity", "Capacity", Measure::charge, 1.0, 2000.0, 5.0, 100.0), current_input("Load", 5.0),
                  number_input("depth", "Share you use", Measure::fraction, 0.05, 1.0, 0.05, 0.5), rate, exponent, hours},
                 {{"time", "Runs for", Measure::time}, {"usable", "Can be used", Measure::charge},
                  {"left", "Left of the rated charge at this current", Measure::fraction}},
                 {&kChargeOverCurrent, tables::rate_effect("lead-agm")->citation}, &how_long});
  return all;
}

}  // namespace calculators
