#include "calculators/ask.h"

#include <algorithm>
#include <cmath>

#include "calculators/short.h"
#include "sizing/rules.h"
#include "tables/supply.h"

namespace calculators {
namespace {

using units::Amperes;
using units::Ohms;

bool is_listed(const tables::FuseFamily& family, double rating) {
  return std::any_of(family.ratings_a.begin(), family.ratings_a.end(),
                     [&](double listed) { return std::fabs(listed - rating) < 1e-6; });
}

Evaluation not_listed(const Asked& asked) {
  std::string list = "Give one of ";
  const auto ratings = asked.family().ratings_a;
  for (std::size_t i = 0; i < ratings.size(); ++i) {
    if (i > 0) list += i + 1 == ratings.size() ? " or " : ", ";
    list += units::number_text(ratings[i], 3);
  }
  return refuse(asked, "fuse", std::string(asked.family().name) + "s are not made for " +
                                   units::amperes_text(Amperes(asked.number("fuse"))) + ".", list + " A.");
}

std::string opens_text(const std::optional<units::Seconds>& opens) {
  return opens ? "within " + units::seconds_text(*opens) : "perhaps never";
}

Evaluation far(const Asked& asked) {
  if (!is_listed(asked.family(), asked.number("fuse"))) return not_listed(asked);
  const tables::Conductor& wire = asked.wire();
  const tables::BatteryKind& battery = *tables::battery_kind_by_key(asked.choice("battery"));
  const int blocks = tables::blocks_in_series(asked.system());
  const Lie lie = asked.lie();
  const Amperes rating(asked.number("fuse"));
  const ShortCircuit fault =
      far_short(wire, units::Metres(asked.number("run")), asked.family(), rating, battery.low * blocks,
                battery.internal_resistance * blocks + Ohms(asked.number("before")), lie.around.insulation);
  Draft draft(asked);
  draft.gives(fault.current.number());
  if (fault.opens) draft.gives_text(fault.opens->number(), opens_text(fault.opens));
  else draft.lacks("no promise");
  draft.gives_text(fault.multiple, units::number_text(fault.multiple, 3) + " x");
  draft.gives_text(fault.wire_survives ? 1.0 : 0.0, fault.wire_survives ? "yes" : "no");
  draft.about(wire).cites(&kOhmsLaw).cites(asked.family().citation).cites(battery.citation);
  draft.cites(&sizing::far_short_citation()).cites(&sizing::withstand_citation());
  draft.note("Battery low, wire as hot as its insulation may get: the least current there can be.");
  const Amperes at_block = battery.resting * blocks / (battery.internal_resistance * blocks + Ohms(asked.number("before")));
  if (at_block > asked.family().breaking_capacity) {
    draft.note("Near the block a short may take " + units::amperes_text(at_block) + ", more than the " +
               units::amperes_text(asked.family().breaking_capacity) + " this fuse can break: the main fuse must break that.");
  }
  if (!fault.in_time || !fault.wire_survives) draft.serves_not();
  std::string sentence = "A short at the far end takes " + units::amperes_text(fault.current) + " and opens the fuse " +
                         opens_text(fault.opens) + ".";
  if (!fault.in_time) sentence += " That is too slow: a thicker or shorter wire, or a smaller fuse.";
  else if (!fault.wire_survives) sentence += " The wire would not survive it: a thicker wire, or a smaller fuse.";
  return draft.says(std::move(sentence));
}

Evaluation times(const Asked& asked) {
  if (!is_listed(asked.family(), asked.number("fuse"))) return not_listed(asked);
  const FuseAt at = fuse_at(asked.family(), Amperes(asked.number("fuse")), asked.number("times"));
  Draft draft(asked);
  if (at.opens) draft.gives_text(at.opens->number(), opens_text(at.opens));
  else draft.lacks("no promise");
  if (at.holds) draft.gives_text(at.holds->number(), "at least " + units::seconds_text(*at.holds));
  else draft.lacks("no promise");
  draft.gives(at.current.number()).cites(asked.family().citation);
  draft.note("Typical gates, the slowest known; between two gates the slower holds. Check the fuse's own curve.");
  if (!at.opens) {
    draft.serves_not();
    draft.note("A fuse does not open near its rating: a small overload may last for ever.");
  }
  return draft.says("At " + units::amperes_text(at.current) + " it " +
                    (at.opens ? "opens " + opens_text(at.opens) + "." : "is not promised to open at all."));
}

}  // namespace

std::vector<Definition> short_calculators() {
  const auto rating = [] { return number_input("fuse", "Fuse", Measure::current, 0.5, 500.0, 1.0, 15.0); };
  Input battery = choice_input("battery", "Battery", battery_choices(), "lead-agm");
  Input system = system_input();
  Input before = as_reading(number_input("before", "Feeder, fuse and joints", Measure::small_resistance, 0.0, 2.0, 0.001, 0.015));
  battery.folded = system.folded = before.folded = true;
  const tables::Citation* blade = tables::fuse_family(tables::FuseFamilyId::blade).citation;
  std::vector<Definition> all;
  all.push_back({{.key = "short-at-the-far-end", .title = "Short at the far end",
                  .question = "Does a short out there open the fuse in time?",
                  .formula_words = "Amperes = battery volts / ohms of battery, feeder, joints and both wires, all hot. The "
                                   "fuse's gates tell how soon it opens.",
                  .formula = "I = E / (Ri + R + 2 x L x r(T));  I^2 t <= k^2 S^2",
                  .caution = "Never try it: a battery's short circuit burns and blinds.",
                  .keywords = "short circuit fault current fuse blow time open loop prospective",
                  .plot = Plot::fuse_gates},
                 {wire_input(), length_input(), rating(), family_input(false), system, battery, before,
                  insulation_input(true)},
                 {{"current", "Short-circuit current", Measure::current}, {"opens", "Fuse opens", Measure::time},
                  {"times", "Times its rating", Measure::count}, {"survives", "Wire survives", Measure::count}},
                 {&kOhmsLaw, blade, &sizing::far_short_citation(), &sizing::withstand_citation()}, &far});
  all.push_back({{.key = "fuse-at-n-times", .title = "A fuse at n times its rating",
                  .question = "How soon does a fuse open when overloaded?",
                  .formula_words = "Published gates: at each multiple it holds at least, and opens at most, so long.",
                  .formula = "n = I / rating", .caution = "Never a larger fuse to stop one from blowing.",
                  .keywords = "fuse curve time current blow overload slow gates percent how fast",
                  .plot = Plot::fuse_gates},
                 {family_input(false), rating(), number_input("times", "Times its rating", Measure::count, 0.5, 20.0, 0.1, 2.0)},
                 {{"opens", "Opens", Measure::time}, {"holds", "Holds", Measure::time}, {"current", "That is", Measure::current}},
                 {blade}, &times});
  return all;
}

}  // namespace calculators
