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

// Of these fuses the one that a short asks the least of, in seconds or in heat let through; nullopt: none need open.
template <class Quantity>
struct Ends {
  FuseBefore fuse;
  Quantity after;
};
template <class Quantity>
using Asks = std::optional<Quantity>(const tables::FuseFamily&, Amperes rating, Amperes current);
template <class Quantity>
std::optional<Ends<Quantity>> first_to_end(const std::vector<FuseBefore>& fuses, Amperes current, Asks<Quantity>* asks) {
  std::optional<Ends<Quantity>> first;
  for (const FuseBefore& fuse : fuses) {
    const auto after = asks(*fuse.family, fuse.rating, current);
    if (after && (!first || *after < first->after)) first = Ends<Quantity>{fuse, *after};
  }
  return first;
}

std::string protection_text(const FuseBefore& fuse) {
  return fuse.family->resettable ? units::amperes_text(fuse.rating) + " breaker" : fuse_text(fuse.rating);
}

}  // namespace

// A short at the far end of what each fuse protects ends in time, by that fuse or one before it.
Judgement judge_far_short(const Judging& judging, const FarShorts& shorts) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::far_short, Measure::seconds, &far_short_citation());
  result.limit = kShortOpensWithin.number();
  if (!judging.fuse) {
    result.sentence = "There is no fuse to open in a short.";
    return result;
  }
  for (std::size_t zone = 0; zone < shorts.size(); ++zone) {
    if (!shorts[zone]) continue;
    const FarShort& far = *shorts[zone];
    const auto fuses = fuses_before(context, zone, *judging.fuse);
    const auto opens = first_to_end(fuses, far.current, tables::opens_within);
    if (result.at && opens && opens->after.number() <= result.value) continue;
    result.at = context.circuit.outlets[far.outlet].id;
    const std::string current = "A short at " + outlet_text(far.outlet) + " draws at least " +
                                units::amperes_text(far.current) + " through " + size_text(judging.size);
    if (!opens) {
      result.value = 0.0;
      result.passes = false;
      result.sentence = current + "; at that a " + protection_text(fuses.front()) + " need not open.";
      return result;
    }
    result.value = opens->after.number();
    result.passes = opens->after <= kShortOpensWithin;
    result.sentence = current + "; a " + protection_text(opens->fuse) + " opens within " + units::seconds_text(opens->after) +
                      (result.passes ? "." : ", the limit is " + units::seconds_text(kShortOpensWithin) + ".");
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
    if (outlet.point == circuit::PointKind::outlet) meet(wire_at_terminal(outlet, judging.size, judging.tail), tables::WireMetal::copper);
  }
  return weakest;
}

bool lies_within(const Zones& zones, std::size_t inner, std::size_t outer) {
  while (inner != outer && inner != kBranchZone) inner = zones.all[inner].inside;
  return inner == outer;
}

}  // namespace

// Each wire stands the longest short behind its fuse, and behind the fuses further on: that flows through it too.
Judgement judge_withstand(const Judging& judging, const FarShorts& shorts) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::withstand, Measure::ampere_squared_seconds, &withstand_citation());
  if (!judging.fuse) {
    result.limit = withstands(judging.size, context.circuit.wiring.around.insulation).number();
    result.sentence = "There is no fuse to end a short.";
    return result;
  }
  double share = -1.0;
  for (std::size_t outer = 0; outer < shorts.size(); ++outer) {
    if (!shorts[outer]) continue;
    const Weakest weakest = weakest_wire(judging, context.zones.all[outer]);
    for (std::size_t zone = outer; zone < shorts.size(); ++zone) {   // a zone stands before those inside it
      if (!shorts[zone] || !lies_within(context.zones, zone, outer)) continue;
      const auto fuses = fuses_before(context, zone, *judging.fuse);
      const auto through = first_to_end(fuses, shorts[zone]->current, let_through);
      if (!through) {
        result.limit = weakest.stands.number();
        result.value = 0.0;
        result.passes = false;
        result.sentence = "A " + protection_text(fuses.front()) + " need not open in a short, so " +
                          size_text(*weakest.wire) + " has no end to its heating.";
        return result;
      }
      const double here = through->after / weakest.stands;
      if (here <= share) continue;
      share = here;
      result.value = through->after.number();
      result.limit = weakest.stands.number();
      result.passes = through->after <= weakest.stands;
      result.sentence = "In a short the " + protection_text(through->fuse) + " may let through " +
                        units::number_text(through->after.number(), 2) + " A²s; " + size_text(*weakest.wire) + " stands " +
                        units::number_text(weakest.stands.number(), 2) + " A²s.";
    }
  }
  return result;
}

}  // namespace sizing
