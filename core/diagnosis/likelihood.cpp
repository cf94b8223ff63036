#include "diagnosis/likelihood.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/checks.h"
#include "diagnosis/sources.h"

namespace diagnosis {
namespace {

using network::Side;

// Meter: 0.5 % and 2 digits (usual handheld, from memory). Word: how sharply a person tells 'about'
// from 'in between' (our estimate).
constexpr double kMeterPart = 0.005, kMeterV = 0.02, kWordPart = 0.012;
// Battery: off the circuit's resting volts by its state of charge (lead-acid rests at 12.0 to 12.8 V, common
// practice, no source). With one case in five on charge, an alternator, solar or a charger holding it about a
// tenth above (13.3 to 14.6 V), which is sound and must not look odd.
constexpr double kBatteryPart = 0.03, kChargingShare = 0.2, kChargingRise = 0.10;
// A lamp's ohms and a device's current are known to a quarter or so; sizes stand a factor of about four
// apart. Both move a divided voltage by this part of x (1 - x).
constexpr double kSizePart = 0.55, kLoadPart = 0.20;

double below(double x) { return 0.5 * std::erfc(-x * 0.70710678118654752); }   // standard normal

Chances sure(std::size_t choice) {
  Chances made{};
  made[choice] = 1.0;
  return made;
}
Chances mostly(std::size_t choice, double chance, std::size_t otherwise) {
  Chances made{};
  made[otherwise] += 1.0 - chance;
  made[choice] += chance;
  return made;
}

bool red(const Fault& fault) { return fault.side == Side::positive; }
bool splice_fault(FaultKind kind) {
  return kind == FaultKind::splice_open || kind == FaultKind::splice_resistive || kind == FaultKind::splice_on_insulation ||
         kind == FaultKind::opens_when_moved;
}
bool other_pair(FaultKind kind) { return kind == FaultKind::wrong_branch || kind == FaultKind::wrong_branch_unfused; }

// How often a fault is noticed by whoever looks, pulls, presses: our estimate from trade sense.
struct Notice {
  FaultKind kind;
  double looked, tugged, flickers;
  const tables::Citation* citation;
};
constexpr Notice kNotices[] = {
    {FaultKind::splice_open, 0.75, 0.92, 0.25, &kNoticeEstimate},
    {FaultKind::splice_on_insulation, 0.70, 0.60, 0.10, &kNoticeEstimate},
    {FaultKind::splice_resistive, 0.35, 0.65, 0.45, &kNoticeEstimate},
    {FaultKind::opens_when_moved, 0.35, 0.80, 0.88, &kNoticeEstimate},
    {FaultKind::tab_off, 0.92, 0.95, 0.10, &kNoticeEstimate},
    {FaultKind::reversed_here, 0.85, 0.03, 0.0, &kNoticeEstimate},
    {FaultKind::reversed_from, 0.75, 0.03, 0.0, &kNoticeEstimate},
    {FaultKind::wrong_branch_unfused, 0.45, 0.03, 0.0, &kNoticeEstimate},
    {FaultKind::wrong_branch, 0.45, 0.03, 0.0, &kNoticeEstimate},
    {FaultKind::pair_shorted, 0.30, 0.03, 0.0, &kNoticeEstimate},
    {FaultKind::wire_open, 0.15, 0.05, 0.10, &kNoticeEstimate},
    {FaultKind::clamp_loose, 0.30, 0.92, 0.20, &kNoticeEstimate},
    {FaultKind::fuse_loose, 0.20, 0.0, 0.40, &kNoticeEstimate},
    {FaultKind::outlet_dead, 0.15, 0.05, 0.15, &kNoticeEstimate},
};
Notice notice(FaultKind kind) {
  for (const Notice& each : kNotices) {
    if (each.kind == kind) return each;
  }
  return {kind, 0.0, 0.0, 0.0, &kNoticeEstimate};
}

constexpr int kStepsPerEmf = 60, kSteps = 80;

enum Looked : std::size_t { l_fine, l_red_splice, l_black_splice, l_red_tab, l_black_tab, l_crossed_tabs, l_crossed_splice, l_other_cable, l_damaged, l_live };
enum Tugged : std::size_t { t_holds, t_red_splice, t_black_splice, t_red_tab, t_black_tab, t_live };

}  // namespace

Likelihood::Likelihood(const Case& the_case, const Plant& plant, const std::vector<Hypothesis>& all,
                       const std::vector<Check>& checks)
    : case_(the_case), plant_(plant), hypotheses_(all), complained_(complaint_outlets(the_case, plant)), benches_(1) {
  for (const Check& check : checks) plans_.push_back(plan_of(check));
  for (const bool spread : {false, true}) {
    for (int step = -kSteps; step <= kSteps; ++step) {
      const double v = step * plant_.emf_v() / kStepsPerEmf;
      volts_[spread ? 1 : 0].push_back(with_human_error(by_range(CheckKind::volts, v, spread, false), 4));
      glow_[spread ? 1 : 0].push_back(with_human_error(by_range(CheckKind::glow, v, spread, false), 3));
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

Likelihood::Plan Likelihood::plan_of(const Check& check) {
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
    bench.load_ohm = made.own ? 0.0 : bench.one_way ? plant_.test_device_ohm() : plant_.lamp_ohm();
    bench.load_red = plant_.contact(k, Side::positive);
    bench.load_black = plant_.contact(k, Side::negative);
  }
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

double Likelihood::device_volts(Look& look, int outlet, const Appliance& appliance) const {
  return look.view.plain().appliance_volts(plant_.contact(outlet, Side::positive), plant_.contact(outlet, Side::negative), appliance);
}
double Likelihood::device_volts(Look& look, const Plan& plan, int outlet, const Appliance& appliance) const {
  return look.view.at(plan.slot, plan.bench)
      .appliance_volts(plant_.contact(outlet, Side::positive), plant_.contact(outlet, Side::negative), appliance);
}

double Likelihood::sigma(double value, double scale, bool spread) const {
  const double x = std::clamp(std::abs(value) / scale, 0.0, 1.0);
  const double size = (spread ? kSizePart : kLoadPart) * x * (1.0 - x) * scale;
  return std::sqrt(std::pow(kMeterV + kMeterPart * std::abs(value), 2) + std::pow(kBatteryPart * value, 2) + size * size);
}

Chances Likelihood::by_range(CheckKind kind, double value, bool spread, bool drop) const {
  Chances made{};
  if (kind == CheckKind::ohms) {
    made[value < kJoinedBelowOhm ? 0 : value < kOpenFromOhm ? 1 : 2] = 1.0;
    return made;
  }
  const double e = plant_.emf_v();
  if (kind == CheckKind::glow) {
    const double nominal = plant_.nominal_v(), v = std::abs(value);
    const double s = std::hypot(sigma(v, e, spread), 0.05 * nominal);
    made[0] = 1.0 - below((kBrightFrom * nominal - v) / s);
    made[2] = below((kDimFrom * nominal - v) / s);
    made[1] = std::max(0.0, 1.0 - made[0] - made[2]);
    return made;
  }
  const double zero = (drop ? kNoDropBelow : kZeroBelow) * e;
  const double s = std::hypot(sigma(value, e, spread), drop ? 0.0 : kWordPart * e);
  const double up_to_minus = below((-zero - value) / s), up_to_zero = below((zero - value) / s);
  const double up_to_full = below((kFullFrom * e - value) / s);
  made[0] = 1.0 - up_to_full;
  made[1] = std::max(0.0, up_to_full - up_to_zero);
  made[2] = std::max(0.0, up_to_zero - up_to_minus);
  made[3] = up_to_minus;
  return made;
}

Chances Likelihood::runs(Look& look, double volts, bool dead_anyway) const {
  if (dead_anyway) return sure(2);
  for (const Look::Judged& known : look.judged) {
    if (!(known.volts < volts) && !(known.volts > volts)) return known.chances;
  }
  const double nominal = plant_.nominal_v();
  const double s = std::hypot(sigma(volts, plant_.emf_v(), true), 0.04 * nominal);
  Chances made{};
  made[0] = 1.0 - below((kWorksFrom * nominal - volts) / s);
  made[2] = below((kWeakFrom * nominal - volts) / s);
  made[1] = std::max(0.0, 1.0 - made[0] - made[2]);
  look.judged[look.next_judged] = {volts, made};
  look.next_judged = (look.next_judged + 1) % look.judged.size();
  return made;
}

double Likelihood::works(Look& look, int outlet, bool own_device) const {
  const Appliance appliance = own_device ? plant_.device(complained_.front()) : plant_.test_device();
  return runs(look, device_volts(look, outlet, appliance), own_device && look.has(FaultKind::device_dead))[0];
}

// The failed device at its outlet, with one element of the fuse put right.
double Likelihood::works_mended(Look& look, network::Element element) const {
  Edits left;
  for (const Edit& edit : look.edits.all()) {
    if (edit.kind != EditKind::series || edit.element != element) left.add(edit);
  }
  const int target = complained_.front();
  if (left.count == look.edits.count) return works(look, target, true);
  look.mended.aim(left);
  const double v = look.mended.plain().appliance_volts(plant_.contact(target, Side::positive),
                                                      plant_.contact(target, Side::negative), plant_.device(target));
  return runs(look, v, look.has(FaultKind::device_dead))[0];
}

// What the quick checks show under one fault; by_words() joins two.
Chances Likelihood::by_fault(const Check& check, const Fault& fault) const {
  const int k = plan(check).outlet, place = plant_.outlet_index(fault.outlet);
  const Notice noticed = notice(fault.kind);
  switch (check.kind) {
    case CheckKind::look_behind:
      if (fault.kind == FaultKind::wrong_branch && plant_.feeds(place, k)) return sure(l_live);
      if (place != k) return sure(l_fine);
      if (splice_fault(fault.kind)) return mostly(red(fault) ? l_red_splice : l_black_splice, noticed.looked, l_fine);
      if (fault.kind == FaultKind::tab_off) return mostly(red(fault) ? l_red_tab : l_black_tab, noticed.looked, l_fine);
      if (fault.kind == FaultKind::reversed_here) return mostly(l_crossed_tabs, noticed.looked, l_fine);
      if (fault.kind == FaultKind::reversed_from) return mostly(l_crossed_splice, noticed.looked, l_fine);
      if (other_pair(fault.kind)) return mostly(l_other_cable, noticed.looked, l_fine);
      if (fault.kind == FaultKind::pair_shorted || fault.kind == FaultKind::wire_open) return mostly(l_damaged, noticed.looked, l_fine);
      return sure(l_fine);
    case CheckKind::tug:
      if (fault.kind == FaultKind::wrong_branch && plant_.feeds(place, k)) return sure(t_live);
      if (place != k) return sure(t_holds);
      if (splice_fault(fault.kind)) return mostly(red(fault) ? t_red_splice : t_black_splice, noticed.tugged, t_holds);
      if (fault.kind == FaultKind::tab_off) return mostly(red(fault) ? t_red_tab : t_black_tab, noticed.tugged, t_holds);
      return sure(t_holds);
    case CheckKind::tug_clamps:
      // The neighbour's pair does not come to our clamps.
      if (fault.kind != FaultKind::clamp_loose) return sure(0);
      return mostly(red(fault) ? 1 : 2, noticed.tugged, 0);
    case CheckKind::wiggle: {
      const bool on_the_way = fault.outlet == circuit::kBlock || plant_.feeds(place, k);
      return mostly(1, on_the_way ? noticed.flickers : 0.0, 0);
    }
    case CheckKind::fuse_look:
      switch (fault.kind) {
        case FaultKind::fuse_blown:
        case FaultKind::overload:
        case FaultKind::pair_shorted: return mostly(1, 0.95, 0);
        case FaultKind::fuse_missing: return mostly(2, 0.98, 0);
        case FaultKind::fuse_elsewhere: {
          Chances made{};
          made[3] = 0.96;
          made[2] = 0.04;
          return made;
        }
        default: return sure(0);
      }
    case CheckKind::main_look: return fault.kind == FaultKind::main_open ? mostly(1, 0.95, 0) : sure(0);
    case CheckKind::add_up: return fault.kind == FaultKind::overload ? mostly(1, 0.95, 0) : mostly(0, 0.95, 1);
    case CheckKind::read_gauge: return fault.kind == FaultKind::wire_thin ? mostly(1, 0.95, 0) : sure(0);
    case CheckKind::device_elsewhere: return fault.kind == FaultKind::device_dead ? sure(1) : sure(0);
    case CheckKind::block_alive: return sure(0);
    default: return sure(0);
  }
}

Chances Likelihood::swap_fuse(Look& look) const {
  enum : std::size_t { f_works, f_same, f_at_once, f_later };
  if (look.has(FaultKind::pair_shorted)) return mostly(f_at_once, 0.97, f_later);
  double good = works_mended(look, network::Element::fuse);
  // A new fuse goes home in worn clips about as often as not.
  if (look.has(FaultKind::fuse_loose)) good = std::max(good, 0.5);
  Chances made{};
  made[f_later] = look.has(FaultKind::overload) ? 0.7 * good : 0.0;
  made[f_works] = good - made[f_later];
  made[f_same] = 1.0 - good;
  return made;
}

// With something that runs in it: about half an ampere, as the known good device.
Chances Likelihood::pull_fuse(const Check& check, Look& look) const {
  const Plan& pulled = plan(check);
  const Chances first = runs(look, device_volts(look, pulled.outlet, plant_.test_device()), false);
  const bool matters = check.neighbour < 0 || look.fed_by(check.neighbour);
  const Chances then = matters ? runs(look, device_volts(look, pulled, pulled.outlet, plant_.test_device()), false) : first;
  const double before = first[0] + first[1], after = then[0] + then[1];
  Chances made{};
  made[0] = before * (1.0 - after);
  made[1] = before * after;
  made[2] = 1.0 - before;
  return made;
}

Chances Likelihood::by_words(const Check& check, Look& look) const {
  const int k = plan(check).outlet, target = complained_.front();
  const bool device_dead = look.has(FaultKind::device_dead);
  switch (check.kind) {
    case CheckKind::device_here: return runs(look, device_volts(look, k, plant_.device(target)), device_dead);
    case CheckKind::other_device: return runs(look, device_volts(look, k, plant_.test_device()), false);
    case CheckKind::fuse_swap: return swap_fuse(look);
    case CheckKind::pull_fuse: return pull_fuse(check, look);
    case CheckKind::others_work: {
      double all = 1.0, none = 1.0;
      for (int o = 0; o < static_cast<int>(plant_.outlets()); ++o) {
        if (std::find(complained_.begin(), complained_.end(), o) != complained_.end()) continue;
        const double p = works(look, o, true);
        all = std::min(all, p);
        none = std::min(none, 1.0 - p);
      }
      return {all, std::max(0.0, 1.0 - all - none), none};
    }
    case CheckKind::fuse_press: {
      const double gained = works_mended(look, network::Element::fuse_contact) - works(look, target, true);
      return mostly(0, std::max(0.0, gained) * 0.92, 1);
    }
    case CheckKind::neighbour_fuse: {
      if (!look.fed_by(check.neighbour)) return mostly(0, 0.0, 1);
      const double v = device_volts(look, plan(check), target, plant_.device(target));
      return mostly(0, std::max(0.0, runs(look, v, device_dead)[0] - works(look, target, true)) * 0.97, 1);
    }
    case CheckKind::block_alive:   // another branch sees the block, not our wire; taken to draw about an ampere
      return runs(look, look.view.plain().load_volts(plant_.node({SpotKind::bus, circuit::kBlock, Side::positive}, true),
                                              plant_.node({SpotKind::bus, circuit::kBlock, Side::negative}, true),
                                              plant_.nominal_v(), true),
                  false);
    default: break;
  }
  // The one that shows most counts.
  Chances best = by_fault(check, look.count > 0 ? look.faults[0] : Fault{});
  if (look.count > 1) {
    const Chances other = by_fault(check, look.faults[1]);
    if (other[0] < best[0]) best = other;
  }
  return best;
}

double Likelihood::volts_read(const Plan& here, Look& look) const {
  if (!here.own) return look.view.at(here.slot, here.bench).reading_v(here.red, here.black);
  const Appliance& appliance = plant_.device(complained_.front());
  const double v = device_volts(look, complained_.front(), appliance);
  // Dead inside it is not there. Without volts it takes nothing, but joins what is loose to its other side.
  if (look.has(FaultKind::device_dead)) return look.view.plain().reading_v(here.red, here.black);
  Bench with = here.bench;
  with.load_ohm = appliance.ohm_at(std::max(v, 0.0));
  return look.view.at(here.slot, with).reading_v(here.red, here.black);
}

std::optional<double> Likelihood::value(const Check& check, Look& look) const {
  const Plan& here = plan(check);
  switch (check.kind) {
    case CheckKind::volts: return volts_read(here, look);
    case CheckKind::ohms: return look.view.at(here.slot, here.bench).ohms(here.red, here.black);
    case CheckKind::glow: return look.view.at(here.slot, here.bench).load_volts(here.red, here.black, plant_.lamp_ohm(), false);
    case CheckKind::device_here:
      return device_volts(look, here.outlet, plant_.device(complained_.front()));
    case CheckKind::other_device: return device_volts(look, here.outlet, plant_.test_device());
    default: return std::nullopt;
  }
}

Chances Likelihood::with_human_error(const Chances& made, std::size_t choices) {
  Chances mixed{};
  const double wrong = kHumanError / static_cast<double>(choices - 1);
  for (std::size_t c = 0; c < choices; ++c) mixed[c] = (1.0 - kHumanError) * made[c] + wrong * (1.0 - made[c]);
  return mixed;
}

Chances Likelihood::chances(const Check& check, Look& look) const {
  const std::size_t n = check.choices.size();
  if (look.unknown) {
    Chances made{};
    for (std::size_t c = 0; c < n; ++c) made[c] = 1.0 / static_cast<double>(n);
    return made;
  }
  const bool points = check.kind == CheckKind::volts || check.kind == CheckKind::glow || check.kind == CheckKind::ohms;
  return with_human_error(points ? by_range(check.kind, *value(check, look), look.spread, plan(check).drop) : by_words(check, look), n);
}

Chances Likelihood::coarse_chances(const Check& check, Look& look) const {
  const bool steps = check.kind == CheckKind::volts || check.kind == CheckKind::glow;
  if (look.unknown || !steps || plan(check).drop) return chances(check, look);
  const int step = static_cast<int>(std::lround(*value(check, look) * kStepsPerEmf / plant_.emf_v()));
  const auto at = static_cast<std::size_t>(std::clamp(step, -kSteps, kSteps) + kSteps);
  return (check.kind == CheckKind::volts ? volts_ : glow_)[look.spread ? 1 : 0][at];
}

double Likelihood::density(const Check& check, Look& look, double typed) const {
  if (check.kind == CheckKind::ohms) {
    return chances(check, look)[typed < kJoinedBelowOhm ? 0 : typed < kOpenFromOhm ? 1 : 2];
  }
  const double e = plant_.emf_v(), width = 0.25 * e, span = 2.4 * e;
  if (look.unknown) return width / span;
  const double v = *value(check, look);
  const auto normal = [&](double mean) {
    const double s = sigma(mean, e, look.spread), z = (typed - mean) / s;
    return std::exp(-0.5 * z * z) / (s * 2.5066282746310002);
  };
  const double seen = (1.0 - kChargingShare) * normal(v) + kChargingShare * normal(v * (1.0 + kChargingRise));
  return width * ((1.0 - kHumanError) * seen + kHumanError / span);
}

double Likelihood::complaint_at(Look& look, Symptom symptom, int outlet) const {
  const double v = device_volts(look, outlet, plant_.device(outlet));
  const Chances c = runs(look, v, look.has(FaultKind::device_dead));
  switch (symptom) {
    case Symptom::weak: return c[1];
    case Symptom::reversed: return v < -0.3 * plant_.nominal_v() ? 1.0 : 0.0;
    case Symptom::volts_but_dead: {
      const double open_v = look.view.plain().reading_v(plant_.contact(outlet, Side::positive), plant_.contact(outlet, Side::negative));
      return std::abs(open_v) > kFullFrom * plant_.emf_v() ? c[2] : 0.0;
    }
    default: return c[2];
  }
}

double Likelihood::complaint(Look& look) const {
  constexpr double kFloor = 0.004;      // people tell it wrongly, too
  constexpr double kUnknown = 0.15;
  if (look.unknown) return kUnknown;
  double p = 1.0;
  switch (case_.complaint.symptom) {
    case Symptom::only_when_moved:
      p = 0.0;
      for (std::size_t i = 0; i < look.count; ++i) {
        const Fault& fault = look.faults[i];
        const bool on_the_way =
            fault.outlet == circuit::kBlock || plant_.feeds(plant_.outlet_index(fault.outlet), complained_.front());
        if (on_the_way) p = std::max(p, notice(fault.kind).flickers);
      }
      break;
    case Symptom::blows_at_once:
      p = look.has(FaultKind::pair_shorted) ? 0.95 : look.has(FaultKind::overload) ? 0.02 : 0.0;
      break;
    case Symptom::blows_later:
      p = look.has(FaultKind::overload) ? 0.9 : look.has(FaultKind::pair_shorted) ? 0.05 : 0.0;
      break;
    case Symptom::something_else_alive:
      p = look.has(FaultKind::wrong_branch) || look.has(FaultKind::wrong_branch_unfused) ? 0.6 : 0.0;
      break;
    default:
      for (const int k : complained_) p = std::min(p, complaint_at(look, case_.complaint.symptom, k));
      break;
  }
  return kFloor + (1.0 - kFloor) * p;
}

}  // namespace diagnosis
