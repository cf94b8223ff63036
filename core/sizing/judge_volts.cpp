// Judgements on voltage, and on a short at the far end.
#include <algorithm>

#include "sizing/judgements.h"
#include "sizing/rules.h"
#include "sizing/words.h"
#include "tables/wire_metal.h"
#include "units/format.h"

namespace sizing {
namespace {

using units::Amperes;
using units::Volts;

// Solved volts are exact to far below this; a limit met to the last bit is met.
constexpr double kRounding = 1e-12;

Judgement judgement(Criterion criterion, Measure measure, const tables::Citation* citation) {
  Judgement made;
  made.criterion = criterion;
  made.measure = measure;
  made.citation = citation;
  return made;
}

}  // namespace

Judgement judge_operating_point(const Judging& judging, const CannotRun& cannot_run) {
  Judgement result = judgement(Criterion::operating_point, Measure::none, &operating_point_citation());
  result.passes = !cannot_run.outlet && !cannot_run.unsettled;
  if (result.passes) {
    result.sentence = "Every load runs with " + size_text(judging.size) + ".";
    return result;
  }
  const std::string with = "With " + size_text(judging.size) + " ";
  if (!cannot_run.outlet) {
    result.sentence = with + "no steady voltage was found: the loads are too much for this length.";
    return result;
  }
  const circuit::Outlet& outlet = judging.context.circuit.outlets[*cannot_run.outlet];
  result.at = outlet.id;
  result.sentence = with + "the load at " + outlet_text(*cannot_run.outlet) + " cannot run at that length";
  result.sentence += cannot_run.only_when_low ? " when the battery is low." : ".";
  if (const auto needed = voltage_needed(outlet)) {
    result.sentence += " It stops below " + units::volts_text(*needed) + ".";
  }
  return result;
}

Judgement judge_drop(const Judging& judging, const OutletsFound& found) {
  Judgement result = judgement(Criterion::drop, Measure::fraction, &drop_citation());
  const std::size_t worst = found.worst;
  result.value = found.results[worst].drop_fraction;
  result.limit = found.results[worst].drop_limit;
  result.at = found.results[worst].id;
  result.passes = result.value <= result.limit + kRounding;
  std::string lost = units::percent_text(result.value);
  std::string limit = units::percent_text(result.limit);
  if (!result.passes && lost == limit) {  // a miss by less than the rounding still has to read as one
    lost = units::number_text(result.value * 100.0, 4) + " %";
    limit = units::number_text(result.limit * 100.0, 4) + " %";
  }
  result.sentence = size_text(judging.size) + (result.passes ? " loses " : " would lose ") + lost + " at " +
                    outlet_text(worst) + " with " + rough_current_text(Amperes(found.worst_flowing_a)) +
                    " flowing, the limit is " + limit + ".";
  return result;
}

Judgement judge_device_minimum(const Judging& judging, const std::vector<double>& low_v) {
  Judgement result = judgement(Criterion::device_minimum, Measure::volts, &device_minimum_citation());
  result.passes = true;
  result.sentence = "No device has a lowest voltage told.";
  double closest = 0.0;
  for (std::size_t i = 0; i < low_v.size(); ++i) {
    const auto needed = voltage_needed(judging.context.circuit.outlets[i]);
    if (!needed) continue;
    const double spare = low_v[i] - needed->number();
    if (result.at && spare >= closest) continue;
    closest = spare;
    result.at = judging.context.circuit.outlets[i].id;
    result.value = low_v[i];
    result.limit = needed->number();
    result.passes = spare >= -kRounding;
    result.sentence = "With the battery low and " + size_text(judging.size) + ", " + outlet_text(i) + " gets " +
                      units::volts_text(Volts(low_v[i])) + "; it needs " + units::volts_text(*needed) + ".";
  }
  return result;
}

namespace {

// "15 A fuse" of the branch, "5 A in-line fuse to B", "10 A breaker to C".
std::string zone_fuse_text(const Context& context, std::size_t zone, const ZoneFuse& fuse) {
  if (zone == kBranchZone) return fuse_text(*fuse.rating);
  return units::amperes_text(*fuse.rating) + (fuse.breaker ? " breaker to " : " in-line fuse to ") +
         outlet_text(*context.zones.all[zone].begins_at);
}

}  // namespace

Judgement judge_far_short(const Judging& judging, const FarShorts& shorts) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::far_short, Measure::seconds, &far_short_citation());
  result.limit = kShortOpensWithin.number();
  result.passes = true;
  result.sentence = "There is no fuse to open in a short.";
  bool told = false;
  for (std::size_t zone = 0; zone < shorts.size(); ++zone) {
    const ZoneFuse fuse = zone_fuse(context, zone, judging.fuse);
    if (!fuse.rating) result.passes = false;
    if (!shorts[zone] || !fuse.rating) continue;
    const auto opens = tables::opens_within(fuse.family, *fuse.rating, shorts[zone]->current);
    const bool passes = opens && *opens <= kShortOpensWithin;
    if (told && (!result.passes || (passes && opens->number() <= result.value))) continue;
    told = true;
    result.passes = result.passes && passes;
    result.value = opens ? opens->number() : 0.0;
    result.at = context.circuit.outlets[shorts[zone]->outlet].id;
    const std::string title = zone_fuse_text(context, zone, fuse);
    result.sentence = "A short at " + outlet_text(shorts[zone]->outlet) + " draws at least " +
                      units::amperes_text(shorts[zone]->current) + " through " + size_text(judging.size);
    if (!opens) {
      result.sentence += "; at that a " + title + " need not open.";
    } else {
      result.sentence += "; a " + title + " opens within " + units::seconds_text(*opens) +
                         (passes ? "." : ", the limit is " + units::seconds_text(kShortOpensWithin) + ".");
    }
  }
  return result;
}

namespace {

// The wire of a zone that stands the least heat.
struct Weakest {
  const tables::Conductor* wire = nullptr;
  units::AmpereSquaredSeconds stands{0.0};
};
Weakest weakest_wire(const Judging& judging, const Zone& zone) {
  const Context& context = judging.context;
  const units::Celsius insulation = context.circuit.wiring.around.insulation;
  Weakest weakest;
  const auto meet = [&](const tables::Conductor& wire, tables::WireMetal metal) {
    const units::AmpereSquaredSeconds stands = withstands(wire, insulation, metal);
    if (weakest.wire == nullptr || stands < weakest.stands) weakest = {&wire, stands};
  };
  for (const std::size_t i : zone.outlets) {
    const circuit::Outlet& outlet = context.circuit.outlets[i];
    const tables::Conductor* there = outlet.run.size ? tables::conductor_by_id(*outlet.run.size) : nullptr;
    meet(there != nullptr ? *there : judging.size, outlet.run.metal);
    const bool tailed = outlet.point == circuit::PointKind::outlet && there == nullptr && judging.tail != nullptr;
    if (tailed) meet(*judging.tail, tables::WireMetal::copper);
  }
  return weakest;
}

}  // namespace

Judgement judge_withstand(const Judging& judging, const FarShorts& shorts) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::withstand, Measure::ampere_squared_seconds, &withstand_citation());
  result.passes = true;
  result.sentence = "There is no fuse to end a short.";
  double worst = 0.0;
  for (std::size_t zone = 0; zone < shorts.size(); ++zone) {
    const ZoneFuse fuse = zone_fuse(context, zone, judging.fuse);
    if (!fuse.rating) result.passes = false;
    if (!shorts[zone] || !fuse.rating) continue;
    const Weakest weakest = weakest_wire(judging, context.zones.all[zone]);
    const auto through = let_through(fuse.family, *fuse.rating, shorts[zone]->current);
    const bool passes = through && *through <= weakest.stands;
    const double share = through ? *through / weakest.stands : 0.0;
    if (worst > 0.0 && passes && (!result.passes || share <= worst)) continue;
    worst = std::max(share, 1e-12);
    result.passes = result.passes && passes;
    result.limit = weakest.stands.number();
    result.value = through ? through->number() : 0.0;
    const std::string title = zone_fuse_text(context, zone, fuse);
    result.sentence = through ? "In a short the " + title + " may let through " + units::number_text(through->number(), 2) +
                                    " A²s; " + size_text(*weakest.wire) + " stands " +
                                    units::number_text(weakest.stands.number(), 2) + " A²s."
                              : "A " + title + " need not open in a short, so " + size_text(*weakest.wire) +
                                    " has no end to its heating.";
    if (!passes) break;
  }
  return result;
}

}  // namespace sizing
