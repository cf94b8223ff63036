#include "calculators/ask.h"

#include "calculators/run.h"
#include "sizing/rules.h"

namespace calculators {
namespace {

using units::Amperes;
using units::Celsius;
using units::Metres;

std::string length(const Asked& asked, double metres) { return units::length_text(Metres(metres), asked.preference); }

const char* only_the_wire() { return "Only the wire counts: joints, fuse and feeder lose some more. Size counts them."; }

Evaluation drop(const Asked& asked) {
  const tables::Conductor& wire = asked.wire();
  const RunLoss loss = drop_of_run(wire, Metres(asked.number("run")), Amperes(asked.number("current")),
                                   asked.system(), Celsius(asked.number("metal")));
  const double left = asked.system().number() - loss.drop.number();
  Draft draft(asked);
  draft.gives(loss.drop.number()).gives(loss.fraction).gives(loss.heat.number()).gives(loss.loop.number());
  draft.about(wire).cites(&kOhmsLaw).cites(asked.calculator.citations[1]).cites(&sizing::drop_citation());
  draft.note(only_the_wire());
  if (left <= 0.0) {
    draft.serves_not();
    return draft.says("The wire alone would need more than the whole voltage: this current cannot flow there.");
  }
  const bool within = loss.fraction <= asked.number("limit");
  return draft.says(wire_name(wire) + " loses " + units::percent_text(loss.fraction) + " over " +
                    length(asked, asked.number("run")) + (within ? ", within " : ", more than ") +
                    units::percent_text(asked.number("limit")) + ".");
}

Evaluation longest(const Asked& asked) {
  const tables::Conductor& wire = asked.wire();
  const units::Volts allowed = asked.system() * asked.number("limit");
  const Metres run = longest_run(wire, Amperes(asked.number("current")), allowed, Celsius(asked.number("metal")));
  Draft draft(asked);
  draft.gives(run.number()).gives(allowed.number());
  draft.about(wire).cites(&kOhmsLaw).cites(asked.calculator.citations[1]).cites(&sizing::drop_citation());
  draft.note(only_the_wire()).note("This says nothing about heat: see the most current for a wire here.");
  return draft.says(wire_name(wire) + " may be " + length(asked, run.number()) + " long, one way, until it loses " +
                    units::percent_text(asked.number("limit")) + ".");
}

std::string lacks_text(SizeLacks lacks, const Asked& asked) {
  switch (lacks) {
    case SizeLacks::minimum: return "is thinner than what is allowed there";
    case SizeLacks::ampacity: return "may not carry it, or not with its fuse";
    case SizeLacks::fuse: return "has no standard fuse between the current and what it may carry";
    case SizeLacks::drop: return "loses more than " + units::percent_text(asked.number("limit"));
    case SizeLacks::nothing: break;
  }
  return "would do";
}

Evaluation size(const Asked& asked) {
  RunDemand demand;
  demand.gauge = asked.choice("gauge") == "metric" ? tables::GaugeSystem::metric : tables::GaugeSystem::awg;
  demand.length = Metres(asked.number("run"));
  demand.current = Amperes(asked.number("current"));
  demand.nominal = asked.system();
  demand.drop_limit = asked.number("limit");
  demand.metal = Celsius(asked.number("metal"));
  demand.lie = asked.lie();
  const SizeForRun answer = wire_for_run(demand);
  Draft draft(asked);
  for (const tables::Citation* citation : {&kOhmsLaw, &sizing::drop_citation(), &sizing::fuse_margin_citation(),
                                           &sizing::fuse_ceiling_citation()}) {
    draft.cites(citation);
  }
  if (answer.wire == nullptr) {
    draft.lacks("none").lacks("none").lacks("none").lacks("none").serves_not();
    const tables::Conductor& last = tables::conductors(demand.gauge).back();
    if (fuse_for(last, demand.current, demand.lie).family_ends) {
      draft.note("This kind of fuse ends at " +
                 units::amperes_text(Amperes(asked.family().ratings_a.back())) + ". Pick another kind under More.");
    } else {
      draft.note("Shorten the run, carry less, split the load or raise the system voltage.");
    }
    return draft.says("No size of the list serves: even " + wire_name(last) + " " +
                      lacks_text(answer.largest_lacks, asked) + ".");
  }
  draft.gives_text(answer.wire->area.number(), wire_name(*answer.wire));
  draft.gives(answer.loss.fraction).gives(answer.fuse->number());
  draft.gives(most_current(*answer.wire, demand.lie).value->derated.number());
  draft.about(*answer.wire).cites(most_current(*answer.wire, demand.lie).value->base_citation);
  if (const auto ceiling = fuse_ceiling(*answer.wire, demand.lie); ceiling && ceiling->road_vehicle) draft.cites(ceiling->citation);
  draft.note(only_the_wire());
  std::string sentence = wire_name(*answer.wire) + " with a " + units::amperes_text(*answer.fuse) + " fuse loses " +
                         units::percent_text(answer.loss.fraction) + ".";
  if (answer.smaller != nullptr) {
    sentence += " " + wire_name(*answer.smaller) + " " + lacks_text(answer.smaller_lacks, asked) + ".";
  }
  return draft.says(std::move(sentence));
}

}  // namespace

std::vector<Definition> run_calculators() {
  static const std::vector<Choice> gauges{{"awg", "AWG"}, {"metric", "mm²"}};
  Input gauge = choice_input("gauge", "Sizes", gauges, "awg");
  gauge.folded = true;
  const tables::Citation* copper = tables::citation_by_id("iec-60028");
  std::vector<Definition> all;
  all.push_back({{.key = "drop-of-a-run", .title = "Voltage drop of a run",
                  .question = "How much voltage does this wire lose?",
                  .formula_words = "Volts lost = amperes x the ohms of red and black wire, at the wire's temperature.",
                  .formula = "V = I x 2 x L x r20 x (1 + 0.00393 (T - 20))",
                  .caution = {}, .keywords = "voltage drop loss volts lost calculate cable line",
                  .plot = Plot::drop_by_length, .fits_circuit = true},
                 {wire_input(), length_input(), current_input("Current", 10.0), system_input(), drop_limit_input(true),
                  metal_input()},
                 {{"drop", "Lost", Measure::voltage}, {"fraction", "Of the system voltage", Measure::fraction},
                  {"heat", "Heat in the wire", Measure::power}, {"loop", "Red and black together", Measure::resistance}},
                 {&kOhmsLaw, copper}, &drop});
  all.push_back({{.key = "wire-for-a-run", .title = "Wire size for a run", .question = "Which size does this run need?",
                  .formula_words = "The smallest size whose drop is within the limit, that may carry a standard fuse of "
                                   "1.25 x the current, and that is not too thin for the place.",
                  .formula = "I x 2 x L x r(T) <= limit x V;  1.25 I <= fuse <= ampacity",
                  .caution = "The fuse protects the wire: never above what the wire may carry.",
                  .keywords = "wire size cable gauge which awg how thick", .plot = Plot::drop_by_length,
                  .fits_circuit = true},
                 {current_input("Current", 10.0), length_input(), system_input(), drop_limit_input(false), gauge,
                  table_input(true), insulation_input(true), ambient_input(true), bundled_input(true),
                  hot_space_input(), setting_input(), family_input(true), metal_input()},
                 {{"wire", "Wire", Measure::area}, {"fraction", "Lost", Measure::fraction}, {"fuse", "Fuse", Measure::current},
                  {"ampacity", "Wire may carry", Measure::current}},
                 {&kOhmsLaw, &sizing::drop_citation(), &sizing::fuse_margin_citation(), &sizing::fuse_ceiling_citation()},
                 &size});
  all.push_back({{.key = "longest-run", .title = "Longest run", .question = "How far does this wire reach?",
                  .formula_words = "Length = volts allowed / (amperes x the ohms of a metre of red and black).",
                  .formula = "L = limit x V / (2 x I x r(T))", .caution = {},
                  .keywords = "maximum max length how far cable distance reach", .plot = Plot::drop_by_length,
                  .fits_circuit = true},
                 {wire_input(), current_input("Current", 10.0), system_input(), drop_limit_input(false), metal_input()},
                 {{"run", "Longest, one way", Measure::length}, {"allowed", "May lose", Measure::voltage}},
                 {&kOhmsLaw, copper, &sizing::drop_citation()}, &longest});
  return all;
}

}  // namespace calculators
