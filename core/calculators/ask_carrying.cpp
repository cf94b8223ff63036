#include "calculators/ask.h"

#include "sizing/rules.h"

namespace calculators {
namespace {

using units::Amperes;

std::string factor_text(const char* what, double factor) {
  return factor < 1.0 ? std::string(what) + " x " + units::number_text(factor, 2) + "." : std::string();
}

Evaluation most(const Asked& asked) {
  const tables::Conductor& wire = asked.wire();
  const Lie lie = asked.lie();
  const tables::AmpacityResult carries = most_current(wire, lie);
  Draft draft(asked);
  draft.cites(asked.calculator.citations[0]);
  if (!carries.value) {
    draft.lacks("none").lacks("none").lacks("none").lacks("none").about(wire).serves_not();
    return draft.says(no_ampacity_text(carries.why_not));
  }
  const tables::DeratedAmpacity& found = *carries.value;
  const FusePick pick = fuse_for(wire, Amperes(0.0), lie);
  draft.gives(found.derated.number());
  if (pick.largest) {
    draft.gives(pick.largest->number()).gives(pick.largest->number() / sizing::kFuseMargin);
  } else {
    draft.lacks("none so small").lacks("none");
  }
  draft.gives(found.base.number());
  draft.about(wire).cites(found.base_citation).cites(found.strand_citation).cites(found.ambient_citation);
  draft.cites(found.bundling_citation).cites(&sizing::fuse_margin_citation());
  draft.note("Row read: " + found.row + ".");
  draft.note(factor_text("Fine strands", found.strand_factor));
  draft.note(factor_text("Warm air", found.ambient_factor));
  draft.note(factor_text("Tied together", found.bundling_factor));
  if (pick.ceiling && pick.ceiling->road_vehicle) {
    draft.note("In road vehicles the fuse for this size ends at " + units::amperes_text(pick.ceiling->most) + ".");
    draft.cites(pick.ceiling->citation);
  }
  draft.note("Not for wire buried in insulation.");
  return draft.says(wire_name(wire) + " may carry " + units::amperes_text(found.derated) + " there" +
                    (pick.largest ? ", behind a fuse of at most " + units::amperes_text(*pick.largest) + "." : "."));
}

Evaluation fuse(const Asked& asked) {
  const tables::Conductor& wire = asked.wire();
  const Lie lie = asked.lie();
  const FusePick pick = fuse_for(wire, Amperes(asked.number("current")), lie);
  Draft draft(asked);
  draft.about(wire).cites(&sizing::fuse_margin_citation()).cites(&sizing::fuse_ceiling_citation());
  draft.cites(asked.family().citation);
  if (pick.ceiling) draft.cites(pick.ceiling->citation);
  if (pick.fuse) draft.gives(pick.fuse->number());
  else draft.lacks("none");
  draft.gives(pick.least.number());
  if (pick.ceiling) draft.gives(pick.ceiling->most.number());
  else draft.lacks("table ends");
  const std::string family(asked.family().name);
  if (pick.fuse) {
    draft.note("Parts in the path may carry less than the wire: look at the marking of each.");
    const std::string_view colour = tables::fuse_colour(lie.family, *pick.fuse);
    return draft.says(family + " " + units::amperes_text(*pick.fuse) +
                      (colour.empty() ? std::string() : " (" + std::string(colour) + ")") + " carries the load and protects " +
                      wire_name(wire) + ".");
  }
  draft.serves_not();
  if (!pick.ceiling) return draft.says(no_ampacity_text(most_current(wire, lie).why_not));
  if (pick.ceiling->most < pick.least) {
    return draft.says("No fuse does both: the load needs " + units::amperes_text(pick.least) + ", " + wire_name(wire) +
                      " allows " + units::amperes_text(pick.ceiling->most) + ". Take a thicker wire.");
  }
  if (pick.family_ends) {
    return draft.says(family + " ends at " + units::amperes_text(Amperes(asked.family().ratings_a.back())) +
                      ". Pick another kind under More.");
  }
  return draft.says("No standard rating lies between " + units::amperes_text(pick.least) + " and " +
                    units::amperes_text(pick.ceiling->most) + ". Take a thicker wire.");
}

}  // namespace

std::vector<Definition> carrying_calculators() {
  std::vector<Definition> all;
  const tables::Citation* marine = tables::citation_by_id("cfr-183-425-table-5");
  const tables::Citation* iec = tables::citation_by_id("iec-60364-5-52");
  all.push_back({{.key = "most-current", .title = "Most current for a wire here",
                  .question = "How much may this wire carry where it lies?",
                  .formula_words = "The table's figure x a factor for warm air x a factor for circuits tied together.",
                  .formula = "I = I30 x sqrt((T - Ta)/(T - 30)) x bundling",
                  .caution = "Never extrapolated: where the table ends there is no figure.",
                  .keywords = "ampacity current capacity rating amps max derating hot engine bundle",
                  .plot = Plot::conductor, .fits_circuit = true},
                 {wire_input(), insulation_input(false), ambient_input(false), bundled_input(false), table_input(true),
                  hot_space_input(), setting_input(), family_input(true)},
                 {{"ampacity", "Wire may carry", Measure::current}, {"fuse", "Largest fuse", Measure::current},
                  {"load", "Lasting load behind it", Measure::current}, {"base", "Table's figure", Measure::current}},
                 {marine, iec, tables::citation_by_id("ambient-correction")}, &most});
  all.push_back({{.key = "fuse-for-a-wire", .title = "Fuse for a wire and load",
                  .question = "Which fuse carries this load and protects this wire?",
                  .formula_words = "The smallest standard rating from 1.25 x the current, not above what the wire may carry.",
                  .formula = "1.25 I <= fuse <= ampacity",
                  .caution = "Never a larger fuse to stop one from blowing: find what takes the current.",
                  .keywords = "fuse size rating which breaker amp protect", .plot = Plot::conductor, .fits_circuit = true},
                 {wire_input(), current_input("Lasting current", 10.0), family_input(false), insulation_input(true),
                  ambient_input(true), bundled_input(true), table_input(true), hot_space_input(), setting_input()},
                 {{"fuse", "Fuse", Measure::current}, {"least", "At least", Measure::current}, {"most", "At most", Measure::current}},
                 {&sizing::fuse_margin_citation(), &sizing::fuse_ceiling_citation()}, &fuse});
  return all;
}

}  // namespace calculators
