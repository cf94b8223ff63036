// Judgements on the rest of the path: fuses in the line, what a start asks of the fuse, and the
// feeder with its main fuse, main switch and block.
#include <algorithm>

#include "sizing/judgements.h"
#include "sizing/rules.h"
#include "sizing/words.h"
#include "network/load_law.h"
#include "network/tree.h"
#include "units/format.h"

namespace sizing {
namespace {

using units::Amperes;
using units::amperes_text;

// The most that a device takes between a charging battery and a low one.
double most_current_a(const circuit::Load& load, units::Volts nominal, double lowest_v, double highest_v) {
  const network::LoadLaw law = network::load_law(load, nominal);
  const double runs_from_v = std::max(lowest_v, law.fold_v);
  return std::max({law.current_a(nominal.number()), law.current_a(runs_from_v), law.current_a(highest_v)});
}

std::string protection_text(const circuit::InLine& protection) {
  return amperes_text(protection.rating) +
         (protection.kind == circuit::InLineKind::breaker ? " breaker" : " in-line fuse");
}

}  // namespace

ZoneCurrent zone_current(const Context& context, const Zone& zone, const std::vector<OutletResult>& outlets) {
  const units::Volts nominal = context.circuit.supply.nominal;
  double rated_a = 0.0, most_a = 0.0, lasting_a = 0.0, lasting_most_a = 0.0, largest_share = 1.0;
  for (const std::size_t i : zone.outlets) {
    const double lowest_v = std::min(outlets[i].voltage.number(), outlets[i].voltage_low.number());
    for (const circuit::Device& device : context.circuit.outlets[i].devices) {
      const double rated = circuit::rated_current(device.load, nominal).number();
      if (rated <= 0.0) continue;
      const double most = most_current_a(device.load, nominal, lowest_v, context.charging.number());
      rated_a += rated;
      most_a += most;
      largest_share = std::max(largest_share, most / rated);
      if (device.use != circuit::Use::continuous) continue;
      lasting_a += rated;
      lasting_most_a += most;
    }
  }
  for (const Zone& inner : context.zones.all) {
    if (!inner.begins_at || &context.zones.all[inner.inside] != &zone) continue;
    const ZoneCurrent within = zone_current(context, inner, outlets);
    rated_a += within.rated.number();
    most_a += within.most.number();
    lasting_a += within.lasting.number();
    lasting_most_a += within.lasting_most.number();
    if (within.rated > Amperes(0.0)) largest_share = std::max(largest_share, within.most / within.rated);
  }
  const double cap_a = context.demand.cap_a;
  if (rated_a > cap_a) {
    rated_a = cap_a;
    most_a = std::min(most_a, cap_a * largest_share);
    lasting_a = std::min(lasting_a, cap_a);
    lasting_most_a = std::min(lasting_most_a, cap_a * largest_share);
  }
  const double added_a = std::max((kFuseMargin - 1.0) * lasting_a, lasting_most_a - lasting_a);
  const double design_a = std::max(rated_a + added_a, most_a / kFuseCarriesForLong);
  return {Amperes(rated_a), Amperes(most_a), Amperes(lasting_a), Amperes(lasting_most_a), Amperes(design_a)};
}

Amperes start_peak(const Context& context, Amperes design, const circuit::Device& device) {
  const Amperes running = circuit::rated_current(device.load, context.circuit.supply.nominal);
  return std::max(Amperes(0.0), design - running) + std::max(running, device.inrush->current);
}

// Each fuse in the line carries its part of the circuit, and protects what lies behind it.
Judgement judge_inner_fuses(const Judging& judging, const std::vector<OutletResult>& outlets) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::inner_fuses, Measure::amperes, &fuse_ceiling_citation());
  result.passes = true;
  result.sentence = "There is no fuse in the line.";
  for (std::size_t z = 1; z < context.zones.all.size(); ++z) {
    const Zone& zone = context.zones.all[z];
    FuseCeiling ceiling;
    find_ceiling(context, judging.size, judging.tail, ceiling, z);
    const ZoneCurrent current = zone_current(context, zone, outlets);
    const std::string title = "The " + protection_text(zone.protection) + " to " + outlet_text(*zone.begins_at);
    result.at = context.circuit.outlets[*zone.begins_at].id;
    result.value = zone.protection.rating.number();
    if (ceiling.least != nullptr && !within(zone.protection.rating, ceiling.least->most)) {
      result.limit = ceiling.least->most.number();
      result.passes = false;
      result.sentence = title + " is too large for what lies behind it: the " + link_text(context, *ceiling.least) +
                        " allows " + amperes_text(ceiling.least->most) + ".";
      return result;
    }
    if (!within(current.need, zone.protection.rating)) {
      result.limit = current.need.number();
      result.citation = &fuse_margin_citation();
      result.passes = false;
      result.sentence = title + " is too small: it should be " + amperes_text(current.need) + " or more.";
      return result;
    }
    result.limit = current.need.number();
    result.sentence = title + " carries its part and protects what lies behind it.";
  }
  return result;
}

// A start that the fuse must not take for a fault. A long one is a load, and counted as such.
Judgement judge_inrush(const Judging& judging) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::inrush, Measure::seconds, context.family.citation);
  result.passes = true;
  result.sentence = "No device has a starting current told.";
  if (!judging.fuse) return result;
  for (std::size_t i = 0; i < context.circuit.outlets.size(); ++i) {
    for (const circuit::Device& device : context.circuit.outlets[i].devices) {
      if (!device.inrush || device.load.rating <= 0.0 || starts_long(device)) continue;
      const units::Seconds lasting = device.inrush->lasting;
      const Amperes peak = start_peak(context, judging.design, device);
      const auto holds = tables::holds_for(context.family, *judging.fuse, peak);
      const auto opens = tables::opens_within(context.family, *judging.fuse, peak);
      const bool sure = holds && *holds >= lasting;
      // What is over within a second is left to the fuse unless it must open on it.
      const bool passes = sure || (lasting < kShortStart && (!opens || *opens > lasting));
      if (result.at && (passes || !result.passes)) continue;
      result.at = context.circuit.outlets[i].id;
      result.passes = passes;
      result.value = lasting.number();
      result.limit = holds ? holds->number() : 0.0;
      if (!sure && passes) result.citation = &start_citation();
      result.sentence = "The start at " + outlet_text(i) + " draws " + amperes_text(peak) + " with all else running for " +
                        units::seconds_text(lasting) + "; a " + fuse_text(*judging.fuse) +
                        (!passes && opens && *opens <= lasting ? " opens on that."
                         : holds ? " holds that for " + units::seconds_text(*holds) + " at least."
                                 : " may open on that.");
    }
  }
  return result;
}

namespace {

// One pair of thick wires from the battery lies on a surface, whatever the branches lie in.
tables::AmpacityTableId feeder_table(tables::AmpacityTableId branches) {
  return branches == tables::AmpacityTableId::enclosed_iec ? tables::AmpacityTableId::clipped_iec : branches;
}

}  // namespace

std::optional<tables::DeratedAmpacity> feeder_ampacity(const Context& context) {
  const circuit::Supply& supply = context.circuit.supply;
  const tables::Conductor* feeder = tables::conductor_by_id(supply.feeder_size);
  if (feeder == nullptr || supply.feeder_run <= units::Metres(0.0)) return std::nullopt;
  tables::Surroundings around = context.circuit.wiring.around;
  around.circuits_bundled = 1;
  const tables::AmpacityTableId table = feeder_table(context.circuit.wiring.ampacity_table);
  return tables::ampacity(table, *feeder, around, {supply.feeder_metal, false}).value;
}

// Battery to block: every part carries what flows, and the main fuse protects the feeder.
Judgement judge_feeder(const Judging& judging) {
  const Context& context = judging.context;
  const circuit::Supply& supply = context.circuit.supply;
  Judgement result = judgement(Criterion::feeder, Measure::amperes, &fuse_ceiling_citation());
  const Amperes total = judging.design + supply.beside;
  const std::string flowing = rough_current_text(total) + (supply.beside > Amperes(0.0) ? " of all its circuits" : "");
  const bool fused = supply.main_fuse > Amperes(0.0);
  const auto carries = feeder_ampacity(context);
  const tables::Conductor* feeder = tables::conductor_by_id(supply.feeder_size);
  const auto fail = [&](Amperes value, Amperes limit, std::string sentence) {
    result.value = value.number();
    result.limit = limit.number();
    result.sentence = std::move(sentence);
    return result;
  };
  const auto over = [&](Amperes limit) { return !within(total, limit); };
  if (fused && over(supply.main_fuse)) {
    return fail(total, supply.main_fuse,
                "The main fuse, " + amperes_text(supply.main_fuse) + ", is too small for " + flowing + ".");
  }
  if (carries && over(carries->derated)) {
    return fail(total, carries->derated, "The feeder, " + size_text(*feeder) + ", carries " +
                                             amperes_text(carries->derated) + "; " + flowing + " may flow.");
  }
  if (fused && carries && !within(supply.main_fuse, carries->derated)) {
    return fail(supply.main_fuse, carries->derated,
                "The main fuse, " + amperes_text(supply.main_fuse) + ", does not protect the feeder: " +
                    size_text(*feeder) + " carries " + amperes_text(carries->derated) + ".");
  }
  if (supply.disconnect && over(*supply.disconnect)) {
    return fail(total, *supply.disconnect,
                "The main switch, " + amperes_text(*supply.disconnect) + ", is too small for " + flowing + ".");
  }
  if (supply.block_rating && over(*supply.block_rating)) {
    return fail(total, *supply.block_rating,
                "The block, " + amperes_text(*supply.block_rating) + ", is too small for " + flowing + ".");
  }
  result.passes = true;
  result.value = total.number();
  result.limit = fused ? supply.main_fuse.number() : 0.0;
  result.sentence = fused ? "The main fuse, " + amperes_text(supply.main_fuse) + ", carries " + flowing +
                                " and protects the feeder."
                          : "No main fuse is told, so nothing is known to protect the feeder.";
  return result;
}

// What the feeder takes from every circuit before this one begins.
Judgement judge_feeder_drop(const Judging& judging, const network::Fitted& fitted) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::feeder_drop, Measure::fraction, &drop_citation());
  const Amperes total = judging.design + context.circuit.supply.beside;
  const units::Ohms loop(network::tree_of(context.circuit, fitted, network::BatteryState::resting).feeder_ohm);
  result.value = (total * loop).number() / context.nominal_v();
  result.limit = 1.0;
  for (std::size_t i = 0; i < context.circuit.outlets.size(); ++i) {
    if (circuit::has_load(context.circuit.outlets[i])) result.limit = std::min(result.limit, context.drop_limit(i));
  }
  result.passes = result.value <= result.limit;
  result.sentence = "The feeder with its main fuse " + std::string(result.passes ? "loses " : "alone would lose ") +
                    units::percent_text(result.value) + " with " + rough_current_text(total) + " flowing; the limit is " +
                    units::percent_text(result.limit) + (result.passes ? " for the whole way." : ".");
  return result;
}

}  // namespace sizing
