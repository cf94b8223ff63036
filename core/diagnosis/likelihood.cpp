#include "diagnosis/likelihood.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/checks.h"
#include "diagnosis/judgement_constants.h"

namespace diagnosis {
namespace {

using network::Side;

constexpr int kStepsPerEmf = 60, kSteps = 80;

Chances with_human_error(const Chances& made, std::size_t choices) {
  Chances mixed{};
  const double wrong = judged(Judged::slip) / static_cast<double>(choices - 1);
  for (std::size_t c = 0; c < choices; ++c) mixed[c] = (1.0 - judged(Judged::slip)) * made[c] + wrong * (1.0 - made[c]);
  return mixed;
}

// Each choice by its own key: its place in the list means nothing.
Chances chances_of(const CheckKindRow& row, const std::vector<Choice>& choices, const Seen& seen) {
  Chances made{};
  for (std::size_t c = 0; c < choices.size(); ++c) made[c] = answer_row(row, choices[c].key)->chance(seen, choices[c]);
  return with_human_error(made, choices.size());
}

Chances all_alike(std::size_t choices) {
  Chances made{};
  for (std::size_t c = 0; c < choices; ++c) made[c] = 1.0 / static_cast<double>(choices);
  return made;
}

bool in(const Choice& choice, double reading) {
  return (!choice.low || reading >= *choice.low) && (!choice.high || reading < *choice.high);
}

}  // namespace

Likelihood::Likelihood(const Case& the_case, const Plant& plant, const std::vector<Hypothesis>& all,
                       const std::vector<Check>& checks)
    : case_(the_case), plant_(plant), hypotheses_(all), complained_(complaint_outlets(the_case, plant)), benches_(1) {
  for (const Check& check : checks) plans_.push_back(plan_of(check));
  lay_steps(CheckKind::volts, volts_);
  lay_steps(CheckKind::glow, glow_);
}

// What coarse_chances() looks up: the same answers for readings a sixtieth of the battery apart.
void Likelihood::lay_steps(CheckKind kind, std::vector<Chances> (&into)[2]) {
  const CheckKindRow& row = check_kind_row(kind);
  std::vector<Choice> choices;
  for (const AnswerRow& answer : row.answers) {
    const Bounds bounds = answer.bounds(plant_, false);
    choices.push_back({answer.key, {}, bounds.low, bounds.high});
  }
  for (const bool spread : {false, true}) {
    for (int step = -kSteps; step <= kSteps; ++step) {
      const double v = step * plant_.emf_v() / kStepsPerEmf;
      Seen seen;
      seen.value = kind == CheckKind::glow ? std::abs(v) : v;
      seen.sigma = std::hypot(sigma_of(plant_, v, spread, 0.0), kind == CheckKind::glow
                                                                    ? judged(Judged::eye_part) * plant_.nominal_v()
                                                                    : judged(Judged::word_part) * plant_.emf_v());
      into[spread ? 1 : 0].push_back(chances_of(row, choices, seen));
    }
  }
}

void Likelihood::aim(Look& look, const Scenario& scenario, unsigned repaired) const {
  look.count = 0;
  look.edits.count = 0;
  look.unknown = false;
  look.spread = scenario.spread;
  const int which[2] = {scenario.first, scenario.second};
  for (std::size_t i = 0; i < 2; ++i) {
    if (which[i] < 0 || (repaired & (1u << i)) != 0) continue;
    look.faults[look.count++] = hypotheses_[static_cast<std::size_t>(which[i])].fault;
    for (const Edit& edit : scenario.edits[i].all()) look.edits.add(edit);
    look.unknown = look.unknown || look.faults[look.count - 1].kind == FaultKind::none_of_these;
  }
  look.view.aim(look.edits);
}

Plan Likelihood::plan_of(const Check& check) {
  Plan made;
  made.outlet = plant_.outlet_index(check.outlet);
  made.drop = along_one_side(check);
  Bench& bench = made.bench;
  bench.fuse_in = check.state.fuse_in;
  if (check.state.parted_at) bench.parted_at = plant_.outlet_index(*check.state.parted_at);
  if (check.kind == CheckKind::volts && check.state.plugged != Plugged::nothing) {
    const int k = plant_.outlet_index(check.state.at);
    bench.with_load = true;
    bench.one_way = check.state.plugged != Plugged::lamp;
    made.own = check.state.plugged == Plugged::own;
    const Appliance& good = plant_.test_device();
    bench.load_ohm = made.own ? 0.0 : bench.one_way ? good.ohm_at(plant_.nominal_v()) : plant_.lamp_ohm();
    bench.load_red = plant_.contact(k, Side::positive);
    bench.load_black = plant_.contact(k, Side::negative);
    made.far_outlet = k;
  }
  if (check.kind == CheckKind::glow)
    made.far_outlet = std::max(plant_.outlet_index(check.red.outlet), plant_.outlet_index(check.black.outlet));
  made.red = plant_.node(check.red, bench.fuse_in);
  made.black = plant_.node(check.black, bench.fuse_in);
  switch (check.kind) {
    case CheckKind::volts:
    case CheckKind::glow:
    case CheckKind::ohms: break;
    case CheckKind::pull_fuse:
      bench = {};
      if (check.neighbour < 0) bench.fuse_in = false;
      bench.neighbour_switched = check.neighbour;
      bench.neighbour_in = false;
      break;
    case CheckKind::neighbour_fuse: bench.neighbour_switched = check.neighbour; break;
    default: bench = {}; break;
  }
  const auto found = std::find(benches_.begin(), benches_.end(), bench);
  made.slot = static_cast<std::size_t>(found - benches_.begin());
  if (found == benches_.end()) benches_.push_back(bench);
  return made;
}

std::optional<double> Likelihood::value(const Check& check, Look& look) const {
  const Plan& here = plan(check);
  switch (check.kind) {
    case CheckKind::volts:
    case CheckKind::glow:
    case CheckKind::ohms: return value_read(sight(check, look));
    case CheckKind::device_here:
      return device_volts(plant_, look.view.plain(), here.outlet, plant_.device(complained_.front()));
    case CheckKind::other_device: return device_volts(plant_, look.view.plain(), here.outlet, plant_.test_device());
    default: return std::nullopt;
  }
}

Chances Likelihood::chances(const Check& check, Look& look) const {
  if (look.unknown) return all_alike(check.choices.size());
  const CheckKindRow& row = check_kind_row(check.kind);
  return chances_of(row, check.choices, row.see(sight(check, look)));
}

Chances Likelihood::coarse_chances(const Check& check, Look& look) const {
  const bool steps = check.kind == CheckKind::volts || check.kind == CheckKind::glow;
  if (look.unknown || !steps || plan(check).drop) return chances(check, look);
  const int step = static_cast<int>(std::lround(value_read(sight(check, look)) * kStepsPerEmf / plant_.emf_v()));
  const auto at = static_cast<std::size_t>(std::clamp(step, -kSteps, kSteps) + kSteps);
  // Wires that are not known move a reading under load about as far as a size that is not.
  const bool spread = look.spread || (plant_.wire_spread() > 0.0 && plan(check).far_outlet >= 0);
  return (check.kind == CheckKind::volts ? volts_ : glow_)[spread ? 1 : 0][at];
}

double Likelihood::density(const Check& check, Look& look, double typed) const {
  if (check.kind == CheckKind::ohms) {
    const Chances made = chances(check, look);
    for (std::size_t c = 0; c < check.choices.size(); ++c) {
      if ((check.choices[c].low || check.choices[c].high) && in(check.choices[c], typed)) return made[c];
    }
    return made[0];
  }
  const double e = plant_.emf_v(), width = judged(Judged::word_width) * e, span = judged(Judged::typed_span) * e;
  if (look.unknown) return width / span;
  const Sight here = sight(check, look);
  const double v = value_read(here), wire_v = wire_volts(here);
  const auto normal = [&](double mean) {
    const double s = sigma_of(plant_, mean, look.spread, wire_v), z = (typed - mean) / s;
    return std::exp(-0.5 * z * z) / (s * 2.5066282746310002);
  };
  const double charging = judged(Judged::charging_share), rise = judged(Judged::charging_rise);
  const double seen = (1.0 - charging) * normal(v) + charging * normal(v * (1.0 + rise));
  return width * ((1.0 - judged(Judged::slip)) * seen + judged(Judged::slip) / span);
}

double Likelihood::complaint_at(Look& look, Symptom symptom, int outlet) const {
  const Appliance& device = plant_.device(outlet);
  const double v = device_volts(plant_, look.view.plain(), outlet, device);
  const Runs runs = device_runs(plant_, look, outlet, v, device, look.has(FaultKind::device_dead));
  switch (symptom) {
    case Symptom::weak: return runs.weak;
    case Symptom::reversed: return v < -judged(Judged::told_reversed_from) * plant_.nominal_v() ? 1.0 : 0.0;
    case Symptom::volts_but_dead: {
      const double open_v =
          look.view.plain().reading_v(plant_.contact(outlet, Side::positive), plant_.contact(outlet, Side::negative));
      return std::abs(open_v) > judged(Judged::full_from) * plant_.emf_v() ? runs.dead : 0.0;
    }
    default: return runs.dead;
  }
}

// Complaints that are about no outlet's volts: as the rows of the faults say; of two, the one that tells more.
double Likelihood::complaint_told(const Look& look) const {
  double most = 0.0;
  for (std::size_t i = 0; i < look.count; ++i) {
    const Fault& fault = look.faults[i];
    const FaultRow& row = fault_row(fault.kind);
    const bool felt =
        fault.outlet == circuit::kBlock || plant_.feeds(plant_.outlet_index(fault.outlet), complained_.front());
    switch (case_.complaint.symptom) {
      case Symptom::only_when_moved: most = std::max(most, felt ? row.shows.flickers : 0.0); break;
      case Symptom::blows_at_once: most = std::max(most, row.told_as.blows_at_once); break;
      case Symptom::blows_later: most = std::max(most, row.told_as.blows_later); break;
      default: most = std::max(most, row.told_as.something_else_alive); break;
    }
  }
  return most;
}

double Likelihood::complaint(Look& look) const {
  if (look.unknown) return judged(Judged::complaint_unknown);
  double p = 1.0;
  switch (case_.complaint.symptom) {
    case Symptom::only_when_moved:
    case Symptom::blows_at_once:
    case Symptom::blows_later:
    case Symptom::something_else_alive: p = complaint_told(look); break;
    default:
      for (const int k : complained_) p = std::min(p, complaint_at(look, case_.complaint.symptom, k));
      break;
  }
  const double floor = judged(Judged::complaint_floor);
  return floor + (1.0 - floor) * p;
}

}  // namespace diagnosis
