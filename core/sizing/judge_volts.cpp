// Judgements on voltage, and on a short at the far end.
#include <algorithm>

#include "sizing/judgements.h"
#include "sizing/rules.h"
#include "sizing/words.h"
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

Judgement judge_far_short(const Judging& judging, const network::Fitted& fitted) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::far_short, Measure::seconds, &far_short_citation());
  result.limit = kShortOpensWithin.number();
  const FarShort far = far_short(context, fitted);
  result.at = context.circuit.outlets[far.outlet].id;
  if (!judging.fuse) {
    result.sentence = "There is no fuse to open in a short.";
    return result;
  }
  const auto opens = tables::opens_within(context.family, *judging.fuse, far.current);
  const std::string current = "A short at " + outlet_text(far.outlet) + " draws at least " +
                              units::amperes_text(far.current) + " through " + size_text(judging.size);
  if (!opens) {
    result.sentence = current + "; at that a " + fuse_text(*judging.fuse) + " need not open.";
    return result;
  }
  result.value = opens->number();
  result.passes = *opens <= kShortOpensWithin;
  result.sentence = current + "; a " + fuse_text(*judging.fuse) + " opens within " + units::seconds_text(*opens) +
                    (result.passes ? "." : ", the limit is " + units::seconds_text(kShortOpensWithin) + ".");
  return result;
}

Judgement judge_withstand(const Judging& judging, const network::Fitted& fitted) {
  const Context& context = judging.context;
  Judgement result = judgement(Criterion::withstand, Measure::ampere_squared_seconds, &withstand_citation());
  const units::Celsius insulation = context.circuit.wiring.around.insulation;
  const tables::Conductor& thinnest =
      judging.tail != nullptr && judging.tail->area < judging.size.area ? *judging.tail : judging.size;
  const units::AmpereSquaredSeconds stands = withstands(thinnest, insulation);
  result.limit = stands.number();
  if (!judging.fuse) {
    result.sentence = "There is no fuse to end a short.";
    return result;
  }
  const auto through = let_through(context.family, *judging.fuse, far_short(context, fitted).current);
  if (!through) {
    result.sentence = "A " + fuse_text(*judging.fuse) + " need not open in a short, so " + size_text(thinnest) +
                      " has no end to its heating.";
    return result;
  }
  result.value = through->number();
  result.passes = *through <= stands;
  result.sentence = "In a short the " + fuse_text(*judging.fuse) + " may let through " +
                    units::number_text(through->number(), 2) + " A²s; " + size_text(thinnest) + " stands " +
                    units::number_text(stands.number(), 2) + " A²s.";
  return result;
}

}  // namespace sizing
