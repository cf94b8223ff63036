// Judgements on heat, fuse rating and what the parts take and carry.
#include <algorithm>

#include "sizing/judgements.h"
#include "sizing/rules.h"
#include "sizing/words.h"
#include "units/format.h"

namespace sizing {
namespace {

using units::amperes_text;

std::string no_figure_sentence(const Judging& judging) {
  const circuit::Wiring& wiring = judging.context.circuit.wiring;
  const tables::AmpacityTable& table = tables::ampacity_table(wiring.ampacity_table);
  const std::string name = "The table \"" + std::string(table.name) + "\"";
  const int rating = static_cast<int>(wiring.around.insulation.number());
  switch (judging.ceiling.wire.why_not) {
    case tables::NoAmpacity::insulation_below_table:
      return name + " has no column for insulation rated " + std::to_string(rating) + " °C.";
    case tables::NoAmpacity::too_hot:
      return "Where it lies it is too hot for insulation rated " + std::to_string(rating) +
             " °C: no current is left for " + size_text(judging.size) + ".";
    case tables::NoAmpacity::table_ends: break;
  }
  const tables::Conductor* first = nullptr;
  const tables::Conductor* last = nullptr;
  for (const tables::Conductor& size : tables::conductors(judging.size.system)) {
    if (!tables::ampacity(wiring.ampacity_table, size, wiring.around).value) continue;
    if (first == nullptr) first = &size;
    last = &size;
  }
  if (first == nullptr) return name + " has no figure for " + size_text(judging.size) + ".";
  if (judging.size.area < first->area) {
    return name + " begins at " + size_text(*first) + ": it has no figure for " + size_text(judging.size) + ".";
  }
  return name + " ends at " + size_text(*last) + ": it has no figure for " + size_text(judging.size) + ".";
}

std::string derating_words(const tables::DeratedAmpacity& ampacity) {
  if (ampacity.derated == ampacity.base) return "";
  std::string words = " (" + amperes_text(ampacity.base);
  const auto factor = [&](double value, std::string_view why) {
    if (value < 1.0) words += " x " + units::number_text(value, 2) + " " + std::string(why);
  };
  factor(ampacity.strand_factor, "fine strands");
  factor(ampacity.ambient_factor, "warm place");
  factor(ampacity.bundling_factor, "bundle");
  return words + ")";
}

// The wire in the wall carries what flows as the new one does.
void hold_wire_that_is_there(const Judging& judging, Judgement& result) {
  for (const LinkRating& link : judging.ceiling.links) {
    if (link.link != Link::wire_there) continue;
    result.limit = link.most.number();
    result.passes = within(judging.design, link.most);
    result.sentence = "The wire that is there carries " + amperes_text(link.most) + "; " + current_text(judging.design) +
                      " may flow.";
  }
}

// No run behind the branch fuse itself is for sizing to choose; its wire is held with the fuse. Where every run from
// the block begins with a fuse of its own, the branch fuse has no wire behind it at all.
Judgement only_wire_that_is_there(const Judging& judging) {
  Judgement result = judgement(Criterion::ampacity, Measure::amperes, &fuse_ceiling_citation());
  result.value = judging.design.number();
  result.limit = judging.design.number();
  result.passes = true;
  result.sentence = "Each run begins with a fuse of its own.";
  hold_wire_that_is_there(judging, result);
  return result;
}

}  // namespace

Judgement judge_ampacity(const Judging& judging) {
  const auto& value = judging.ceiling.wire.value;
  if (!judging.context.zones.all[kBranchZone].has_open_runs) return only_wire_that_is_there(judging);
  Judgement result = judgement(
      Criterion::ampacity, Measure::amperes,
      value ? value->base_citation
            : tables::ampacity_table(judging.context.circuit.wiring.ampacity_table).citation);
  result.value = judging.design.number();
  if (!value) {
    result.sentence = no_figure_sentence(judging);
    return result;
  }
  result.limit = value->derated.number();
  result.passes = within(judging.design, value->derated);
  result.sentence = size_text(judging.size) + " carries " + amperes_text(value->derated) + " here" +
                    derating_words(*value) + "; " + current_text(judging.design) + " may flow.";
  if (result.passes) {
    Judgement there = result;
    hold_wire_that_is_there(judging, there);
    if (!there.passes) return there;
  }
  return result;
}

namespace {

// "at least 1.25 x the 12 A it is rated for": what the fuse was chosen by.
std::string need_words(const Judging& judging) {
  const Context& context = judging.context;
  const units::Amperes rated(context.demand.cap_a);
  const double margin = 1.0 + (kFuseMargin - 1.0) * context.lasting_share;
  if (judging.need > rated * (margin * (1.0 + 1e-9))) {
    return "at least the " + exact_current_text(judging.need) + " that may flow for hours";
  }
  return "at least " + units::number_text(margin, 3) + " x the rated " + exact_current_text(rated);
}

}  // namespace

Judgement judge_fuse_rating(const Judging& judging) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::fuse_rating, Measure::amperes, &fuse_ceiling_citation());
  const LinkRating& least = *judging.ceiling.least;
  result.limit = least.most.number();
  result.value = judging.fuse.value_or(judging.need).number();
  result.passes = judging.fuse && judging.fuse_carries && within(*judging.fuse, least.most);
  if (least.citation != nullptr) result.citation = least.citation;
  if (least.outlet) result.at = context.circuit.outlets[*least.outlet].id;
  const std::string with = "With " + size_text(judging.size) + " ";
  if (!judging.fuse) {
    result.citation = context.family.citation;
    result.sentence = with + "the fuse would have to be " + amperes_text(judging.need) + " or more (" +
                      need_words(judging) + "); the largest " + without_capital(context.family.name) + " is " +
                      amperes_text(units::Amperes(context.family.ratings_a.back())) + ".";
  } else if (!judging.fuse_carries) {
    result.citation = &fuse_margin_citation();
    result.value = judging.need.number();
    result.limit = judging.fuse->number();
    result.sentence = with + "a " + fuse_text(*judging.fuse) + " is too small: it should be " +
                      amperes_text(judging.need) + " or more (" + need_words(judging) + ").";
  } else if (!result.passes && least.most <= units::Amperes(0.0)) {
    result.sentence = with + "no fuse can be chosen: there is no current figure for the " +
                      link_text(context, least) + ".";
  } else if (!result.passes) {
    result.sentence = with + "the fuse has to be " + amperes_text(*judging.fuse) + " (" + need_words(judging) +
                      ", and up to the next rating), but the " + link_text(context, least) + " allows " +
                      amperes_text(least.most) + " (" + chain_text(context, judging.ceiling) + ").";
  } else {
    result.sentence = "A " + fuse_text(*judging.fuse) + " protects the wire: it is " + need_words(judging) +
                      ", and nothing in its path is rated below " + amperes_text(least.most) + " (" +
                      chain_text(context, judging.ceiling) + ").";
  }
  return result;
}

Judgement judge_fuse_voltage(const Judging& judging) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::fuse_voltage, Measure::volts, &fuse_voltage_citation());
  const units::Volts nominal = context.circuit.supply.nominal;
  result.value = context.charging.number();
  result.limit = context.family.rated_voltage.number();
  result.passes = context.charging <= context.family.rated_voltage;
  result.sentence = std::string(context.family.name) + ": made for up to " +
                    units::volts_text(context.family.rated_voltage) + "; this is a " + units::volts_text(nominal) +
                    " system that reaches " + units::volts_text(context.charging) + " while charging.";
  return result;
}

Judgement judge_part_rating(const Judging& judging) {
  const Context& context = judging.context;
  if (judging.ceiling.least_part == nullptr) {
    Judgement none = judgement(Criterion::part_rating, Measure::amperes, &fuse_ceiling_citation());
    none.passes = true;
    none.sentence = "No part in the branch fuse's reach has a rating to hold to.";
    return none;
  }
  const LinkRating& part = *judging.ceiling.least_part;
  Judgement result = judgement(Criterion::part_rating, Measure::amperes, part.citation);
  const units::Amperes through = judging.fuse.value_or(judging.need);
  result.value = through.number();
  result.limit = part.most.number();
  result.passes = within(through, part.most);
  if (part.outlet) result.at = context.circuit.outlets[*part.outlet].id;
  const std::string limiting = "the " + link_text(context, part) + ", " + amperes_text(part.most);
  result.sentence = result.passes ? "Every part carries what a " + fuse_text(through) +
                                        " lets through with " + size_text(judging.size) + "; the least is " + limiting + "."
                                  : "A " + fuse_text(through) + " lets through more than " + limiting + " with " +
                                        size_text(judging.size) + ".";
  return result;
}

namespace {

// The first part that does not take the wire, in the order the hand meets them.
struct Misfit {
  std::string part;
  units::SquareMillimetres wire;
  units::SquareMillimetres takes;
  const tables::Citation* citation = nullptr;
  std::optional<std::size_t> outlet;
  std::string advice;
};

std::optional<Misfit> clamp_misfit(const Judging& judging) {
  const Context& context = judging.context;
  const auto& outlets = context.circuit.outlets;
  const bool any_new = std::any_of(outlets.begin(), outlets.end(), [](const circuit::Outlet& outlet) {
    return outlet.fed_from == circuit::kBlock && !outlet.run.size;   // wire that is there is in its clamp
  });
  if (!any_new) return std::nullopt;
  const bool ferrule = context.circuit.wiring.ferrule;
  const units::SquareMillimetres area = judging.size.area;
  if (tables::part_accepts(context.clamp, area, ferrule)) return std::nullopt;
  Misfit misfit{"block clamp", area, context.clamp.largest_bare, context.clamp.citation, std::nullopt, ""};
  if (ferrule) {
    misfit.part += " (with a ferrule)";
    misfit.takes = context.clamp.largest_with_ferrule.value_or(units::SquareMillimetres(0.0));
    if (tables::part_accepts(context.clamp, area, false)) misfit.advice = " Bare strands fit.";
  }
  if (area < context.clamp.smallest) misfit.takes = context.clamp.smallest;
  return misfit;
}

std::optional<Misfit> splice_misfit(const Judging& judging) {
  const tables::Part& splice = judging.context.splice;
  const units::SquareMillimetres area = judging.size.area;
  const auto& outlets = judging.context.circuit.outlets;
  const auto spliced = [](const circuit::Outlet& outlet) {
    return outlet.joint == circuit::Joint::splice || outlet.point != circuit::PointKind::outlet;
  };
  // A splice holds the run to its outlet and those that go on from it; wire that is there is in already.
  const bool any_splice = std::any_of(outlets.begin(), outlets.end(), [&](const circuit::Outlet& outlet) {
    if (outlet.run.size) return false;
    const circuit::Outlet* from = circuit::find_outlet(judging.context.circuit, outlet.fed_from);
    return spliced(outlet) || (from != nullptr && spliced(*from));
  });
  if (!any_splice) return std::nullopt;
  if (tables::part_accepts(splice, area, false)) return std::nullopt;
  return Misfit{"splice", area, area < splice.smallest ? splice.smallest : splice.largest_bare, splice.citation,
                std::nullopt, ""};
}

std::optional<Misfit> terminal_misfit(const Judging& judging) {
  const Context& context = judging.context;
  for (std::size_t i = 0; i < context.terminals.size(); ++i) {
    const circuit::Outlet& outlet = context.circuit.outlets[i];
    if (outlet.point != circuit::PointKind::outlet || outlet.run.size) continue;   // that wire is in already
    const units::SquareMillimetres area = wire_at_terminal(outlet, judging.size, judging.tail).area;
    const tables::Part& terminal = *context.terminals[i];
    if (tables::part_accepts(terminal, area, false)) continue;
    return Misfit{"terminal at " + outlet_text(i), area,
                  area < terminal.smallest ? terminal.smallest : terminal.largest_bare, terminal.citation, i, ""};
  }
  return std::nullopt;
}

}  // namespace

Judgement judge_fit(const Judging& judging) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::fit, Measure::square_millimetres, context.clamp.citation);
  result.value = judging.size.area.number();
  result.limit = std::min({context.clamp.largest_bare, context.splice.largest_bare}).number();
  if (!context.splice.stands_vibration && context.circuit.setting != circuit::Setting::fixed) {
    result.citation = &vibration_citation();
    result.measure = Measure::none;
    result.sentence = std::string(context.splice.name) + ": it works loose in anything that moves, whatever the wire.";
    return result;
  }
  std::optional<Misfit> misfit = clamp_misfit(judging);
  if (!misfit) misfit = splice_misfit(judging);
  if (!misfit) misfit = terminal_misfit(judging);
  if (!misfit) {
    result.passes = true;
    result.sentence = "Clamp, splice and terminals take " + size_text(judging.size) + ".";
    if (judging.tail != nullptr && judging.tail != &judging.size) {
      result.sentence = "Clamp and splice take " + size_text(judging.size) + "; the terminals take less, so the tails are " +
                        size_text(*judging.tail) + ".";
    }
    return result;
  }
  result.citation = misfit->citation;
  result.value = misfit->wire.number();
  result.limit = misfit->takes.number();
  if (misfit->outlet) result.at = context.circuit.outlets[*misfit->outlet].id;
  const bool thin = misfit->wire < misfit->takes;
  result.sentence = size_text(judging.size) + " (" + units::area_text(misfit->wire) + ") does not fit the " +
                    misfit->part + ": it takes ";
  result.sentence += misfit->takes <= units::SquareMillimetres(0.0)
                         ? "none."
                         : (thin ? "no less than " : "up to ") + units::area_text(misfit->takes) + ".";
  result.sentence += misfit->advice;
  return result;
}

Judgement judge_mechanical_minimum(const Judging& judging) {
  const circuit::Circuit& circuit = judging.context.circuit;
  const MechanicalMinimum minimum = mechanical_minimum(circuit.setting, judging.size.system);
  Judgement result = judgement(Criterion::mechanical_minimum, Measure::square_millimetres, minimum.citation);
  const tables::Conductor& thinnest =
      judging.tail != nullptr && judging.tail->area < judging.size.area ? *judging.tail : judging.size;
  result.value = thinnest.area.number();
  result.limit = minimum.area.number();
  result.passes = thinnest.area >= minimum.area;
  const bool one_square = minimum.area > units::SquareMillimetres(1.0);
  std::string allowed = units::area_text(minimum.area);
  if (judging.size.system == tables::GaugeSystem::awg) allowed = one_square ? "16 AWG" : "18 AWG";
  if (judging.size.system == tables::GaugeSystem::sae && !one_square) allowed = "18 SAE";
  result.sentence = size_text(thinnest) + (result.passes ? " is thick enough: single wires here are " : " is too thin: single wires here are ") +
                    allowed + " or thicker.";
  return result;
}

}  // namespace sizing
