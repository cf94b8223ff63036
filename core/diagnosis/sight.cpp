#include "diagnosis/sight.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/judgement_constants.h"

namespace diagnosis {
namespace {

using network::Side;

const Potentials& as_asked(const Sight& sight) { return sight.look.view.at(sight.plan.slot, sight.plan.bench); }

Seen two(AnswerKey one, double share, AnswerKey otherwise) {
  Seen seen;
  seen.add(one, share).add(otherwise, 1.0 - share);
  return seen;
}

Seen of_runs(const Runs& runs) {
  Seen seen;
  seen.add(AnswerKey::works, runs.works).add(AnswerKey::weak, runs.weak).add(AnswerKey::dead, runs.dead);
  return seen;
}

Seen of_show(const Show& show, Side side) {
  return two(side == Side::positive ? show.plus : show.minus, show.often, show.otherwise);
}

// What eyes and hands find: of two faults the one that shows most, where `quiet` is the answer that shows none.
template <class SeenOf>
Seen of_faults(const Look& look, AnswerKey quiet, SeenOf seen_of) {
  Seen best = seen_of(look.count > 0 ? look.faults[0] : Fault{});
  if (look.count > 1) {
    const Seen other = seen_of(look.faults[1]);
    if (other.share_of(quiet) < best.share_of(quiet)) best = other;
  }
  return best;
}

const Shows& shows(const Fault& fault) { return fault_row(fault.kind).shows; }

bool on_the_way(const Plant& plant, const Fault& fault, int outlet) {
  return fault.outlet == circuit::kBlock || plant.feeds(plant.outlet_index(fault.outlet), outlet);
}

// The neighbour's pair feeds this place, with its fuse in.
bool stays_live(const Plant& plant, const Fault& fault, int outlet) {
  return fault_row(fault.kind).does.damage == Damage::fed_from_neighbour &&
         plant.feeds(plant.outlet_index(fault.outlet), outlet);
}

Runs runs_there(const Sight& sight, const Potentials& at, int outlet, const Appliance& appliance, bool own) {
  const double volts = device_volts(sight.plant, at, outlet, appliance);
  return device_runs(sight.plant, sight.look, outlet, volts, appliance, own && sight.look.has(FaultKind::device_dead));
}
int target(const Sight& sight) { return sight.complained.front(); }
const Appliance& failed_device(const Sight& sight) { return sight.plant.device(target(sight)); }
double failed_works(const Sight& sight, int outlet) {
  return runs_there(sight, sight.look.view.plain(), outlet, failed_device(sight), true).works;
}

// The failed device at its outlet, with one element of the fuse put right.
double works_mended(const Sight& sight, network::Element element) {
  Look& look = sight.look;
  Edits left;
  for (const Edit& edit : look.edits.all()) {
    if (edit.kind != EditKind::series || edit.element != element) left.add(edit);
  }
  if (left.count == look.edits.count) return failed_works(sight, target(sight));
  look.mended.aim(left);
  return runs_there(sight, look.mended.plain(), target(sight), failed_device(sight), true).works;
}

}  // namespace

double below(double x) { return 0.5 * std::erfc(-x * 0.70710678118654752); }

double sigma_of(const Plant& plant, double value, bool spread, double wire_v) {
  const double scale = plant.emf_v();
  const double x = std::clamp(std::abs(value) / scale, 0.0, 1.0);
  const double size = judged(spread ? Judged::size_part : Judged::load_part) * x * (1.0 - x) * scale;
  const double meter = judged(Judged::meter_v) + judged(Judged::meter_part) * std::abs(value);
  const double battery = judged(Judged::battery_part) * value, wires = plant.wire_spread() * wire_v;
  return std::sqrt(meter * meter + battery * battery + size * size + wires * wires);
}

double device_volts(const Plant& plant, const Potentials& at, int outlet, const Appliance& appliance) {
  return at.appliance_volts(plant.contact(outlet, Side::positive), plant.contact(outlet, Side::negative), appliance);
}

Runs device_runs(const Plant& plant, Look& look, int outlet, double volts, const Appliance& appliance,
                 bool dead_anyway) {
  if (dead_anyway) return {0.0, 0.0, 1.0};
  const double wire_v =
      plant.wire_spread() > 0.0 && volts > 0.0 ? plant.wire_ohm(outlet) * volts / appliance.ohm_at(volts) : 0.0;
  for (const Look::JudgedRuns& known : look.judged_runs) {
    if (!(known.volts < volts) && !(known.volts > volts) && !(known.wire_v < wire_v) && !(known.wire_v > wire_v))
      return known.runs;
  }
  const double nominal = plant.nominal_v();
  const double s = std::hypot(sigma_of(plant, volts, true, wire_v), judged(Judged::device_part) * nominal);
  Runs made;
  made.works = 1.0 - below((judged(Judged::works_from) * nominal - volts) / s);
  made.dead = below((judged(Judged::weak_from) * nominal - volts) / s);
  made.weak = std::max(0.0, 1.0 - made.works - made.dead);
  look.judged_runs[look.next_judged] = {volts, wire_v, made};
  look.next_judged = (look.next_judged + 1) % look.judged_runs.size();
  return made;
}

double value_read(const Sight& sight) {
  const Plan& plan = sight.plan;
  if (sight.check.kind == CheckKind::ohms) return as_asked(sight).ohms(plan.red, plan.black);
  if (sight.check.kind == CheckKind::glow)
    return as_asked(sight).load_volts(plan.red, plan.black, sight.plant.lamp_ohm(), false);
  if (!plan.own) return as_asked(sight).reading_v(plan.red, plan.black);
  // Dead inside it is not there. Without volts it takes nothing, but joins what is loose to its other side.
  Look& look = sight.look;
  if (look.has(FaultKind::device_dead)) return look.view.plain().reading_v(plan.red, plan.black);
  const double v = device_volts(sight.plant, look.view.plain(), target(sight), failed_device(sight));
  Bench with = plan.bench;
  with.load_ohm = failed_device(sight).ohm_at(std::max(v, 0.0));
  return look.view.at(plan.slot, with).reading_v(plan.red, plan.black);
}

double wire_volts(const Sight& sight) {
  const Plan& plan = sight.plan;
  if (plan.far_outlet < 0 || !(sight.plant.wire_spread() > 0.0)) return 0.0;
  double current_a = 0.0;
  if (sight.check.kind == CheckKind::glow) {
    current_a = std::abs(value_read(sight)) / sight.plant.lamp_ohm();
  } else if (plan.own) {
    const double v =
        std::max(device_volts(sight.plant, sight.look.view.plain(), target(sight), failed_device(sight)), 0.0);
    current_a = v / failed_device(sight).ohm_at(v);
  } else {
    current_a = std::abs(as_asked(sight).load_v) / plan.bench.load_ohm;
  }
  return current_a * sight.plant.wire_ohm(plan.far_outlet);
}

Seen see_volts(const Sight& sight) {
  Seen seen;
  seen.value = value_read(sight);
  const double s = sigma_of(sight.plant, seen.value, sight.look.spread, wire_volts(sight));
  seen.sigma = std::hypot(s, sight.plan.drop ? 0.0 : judged(Judged::word_part) * sight.plant.emf_v());
  return seen;
}

Seen see_glow(const Sight& sight) {
  Seen seen;
  seen.value = std::abs(value_read(sight));  // a filament does not tell plus from minus
  seen.sigma = std::hypot(sigma_of(sight.plant, seen.value, sight.look.spread, wire_volts(sight)),
                          judged(Judged::eye_part) * sight.plant.nominal_v());
  return seen;
}

Seen see_ohms(const Sight& sight) {
  Seen seen;
  seen.value = value_read(sight);
  // On volts first, fuse out: what the neighbour feeds still stands at plus.
  const Potentials& at = as_asked(sight);
  const auto live = [&](int node) {
    return at.grounded(node) && at.voltage_v[static_cast<std::size_t>(node)] > judged(Judged::live_from_v);
  };
  if (live(sight.plan.red) || live(sight.plan.black)) seen.add(AnswerKey::live, 1.0);
  return seen;
}

Seen see_device_here(const Sight& sight) {
  return of_runs(runs_there(sight, sight.look.view.plain(), sight.plan.outlet, failed_device(sight), true));
}

Seen see_other_device(const Sight& sight) {
  return of_runs(runs_there(sight, sight.look.view.plain(), sight.plan.outlet, sight.plant.test_device(), false));
}

Seen see_device_elsewhere(const Sight& sight) {
  return of_faults(sight.look, AnswerKey::works, [](const Fault& fault) {
    return two(AnswerKey::dead, shows(fault).dead_elsewhere, AnswerKey::works);
  });
}

Seen see_others(const Sight& sight) {
  double all = 1.0, none = 1.0;
  for (int o = 0; o < static_cast<int>(sight.plant.outlets()); ++o) {
    if (!sight.plant.has_socket(o)) continue;
    if (std::find(sight.complained.begin(), sight.complained.end(), o) != sight.complained.end()) continue;
    const double p = failed_works(sight, o);
    all = std::min(all, p);
    none = std::min(none, 1.0 - p);
  }
  Seen seen;
  seen.add(AnswerKey::all, all).add(AnswerKey::some, std::max(0.0, 1.0 - all - none)).add(AnswerKey::none, none);
  return seen;
}

Seen see_wiggle(const Sight& sight) {
  return of_faults(sight.look, AnswerKey::steady, [&](const Fault& fault) {
    const bool felt = on_the_way(sight.plant, fault, sight.plan.outlet);
    return two(AnswerKey::flickers, felt ? shows(fault).flickers : 0.0, AnswerKey::steady);
  });
}

Seen see_behind(const Sight& sight) {
  return of_faults(sight.look, AnswerKey::fine, [&](const Fault& fault) {
    const bool here = sight.plant.outlet_index(fault.outlet) == sight.plan.outlet;
    return here ? of_show(shows(fault).behind, fault.side) : two(AnswerKey::fine, 1.0, AnswerKey::fine);
  });
}

Seen see_tug(const Sight& sight) {
  return of_faults(sight.look, AnswerKey::holds, [&](const Fault& fault) {
    if (stays_live(sight.plant, fault, sight.plan.outlet)) return two(AnswerKey::live, 1.0, AnswerKey::holds);
    const bool here = sight.plant.outlet_index(fault.outlet) == sight.plan.outlet;
    return here ? of_show(shows(fault).tugged, fault.side) : two(AnswerKey::holds, 1.0, AnswerKey::holds);
  });
}

Seen see_tug_clamps(const Sight& sight) {
  // The neighbour's pair does not come to our clamps.
  return of_faults(sight.look, AnswerKey::holds, [](const Fault& fault) {
    const bool at_block = fault.outlet == circuit::kBlock;
    return at_block ? of_show(shows(fault).tugged, fault.side) : two(AnswerKey::holds, 1.0, AnswerKey::holds);
  });
}

Seen see_gauge(const Sight& sight) {
  return of_faults(sight.look, AnswerKey::as_drawn, [](const Fault& fault) {
    return two(AnswerKey::thinner, shows(fault).thinner, AnswerKey::as_drawn);
  });
}

// Another branch sees the block, not our wire.
Seen see_block(const Sight& sight) {
  const Plant& plant = sight.plant;
  const int red = plant.node({SpotKind::bus, circuit::kBlock, Side::positive}, true);
  const int black = plant.node({SpotKind::bus, circuit::kBlock, Side::negative}, true);
  const Appliance load = drawing(judged(Judged::block_load_a), plant.nominal_v());
  const double volts = sight.look.view.plain().load_volts(red, black, load.ohm_at(plant.nominal_v()), true);
  const double s = std::hypot(sigma_of(plant, volts, true, 0.0), judged(Judged::device_part) * plant.nominal_v());
  const double yes = 1.0 - below((judged(Judged::works_from) * plant.nominal_v() - volts) / s);
  const double no = below((judged(Judged::weak_from) * plant.nominal_v() - volts) / s);
  Seen seen;
  seen.add(AnswerKey::yes, yes).add(AnswerKey::weak, std::max(0.0, 1.0 - yes - no)).add(AnswerKey::no, no);
  return seen;
}

Seen see_fuse(const Sight& sight) {
  return of_faults(sight.look, AnswerKey::whole,
                   [](const Fault& fault) { return of_show(shows(fault).fuse, fault.side); });
}

Seen see_press(const Sight& sight) {
  const double gained = works_mended(sight, network::Element::fuse_contact) - failed_works(sight, target(sight));
  return two(AnswerKey::works, std::max(0.0, gained) * judged(Judged::press_is_felt), AnswerKey::same);
}

Seen see_swap(const Sight& sight) {
  if (sight.look.has(FaultKind::pair_shorted))
    return two(AnswerKey::blows_at_once, judged(Judged::short_blows_at_once), AnswerKey::blows_later);
  double good = works_mended(sight, network::Element::fuse);
  if (sight.look.has(FaultKind::fuse_loose)) good = std::max(good, judged(Judged::clips_take_a_new_fuse));
  const double later = sight.look.has(FaultKind::overload) ? judged(Judged::overload_shows_again) * good : 0.0;
  Seen seen;
  seen.add(AnswerKey::blows_later, later).add(AnswerKey::works, good - later).add(AnswerKey::same, 1.0 - good);
  return seen;
}

// With something small that runs in it, as the known good device.
Seen see_pull(const Sight& sight) {
  const auto runs = [&](const Potentials& at) {
    const Runs made = runs_there(sight, at, sight.plan.outlet, sight.plant.test_device(), false);
    return made.works + made.weak;
  };
  const double before = runs(sight.look.view.plain());
  const bool matters = sight.check.neighbour < 0 || sight.look.fed_by(sight.check.neighbour);
  const double after = matters ? runs(as_asked(sight)) : before;
  Seen seen;
  seen.add(AnswerKey::dies, before * (1.0 - after))
      .add(AnswerKey::stays, before * after)
      .add(AnswerKey::was_dead, 1.0 - before);
  return seen;
}

Seen see_neighbour_fuse(const Sight& sight) {
  if (!sight.look.fed_by(sight.check.neighbour)) return two(AnswerKey::works, 0.0, AnswerKey::same);
  const double then = runs_there(sight, as_asked(sight), target(sight), failed_device(sight), true).works;
  const double gained = std::max(0.0, then - failed_works(sight, target(sight)));
  return two(AnswerKey::works, gained * judged(Judged::neighbour_fuse_is_seen), AnswerKey::same);
}

Seen see_main(const Sight& sight) {
  return of_faults(sight.look, AnswerKey::on,
                   [](const Fault& fault) { return two(AnswerKey::off, shows(fault).main_off, AnswerKey::on); });
}

Seen see_add_up(const Sight& sight) {
  return of_faults(sight.look, AnswerKey::within,
                   [](const Fault& fault) { return two(AnswerKey::over, shows(fault).over, AnswerKey::within); });
}

}  // namespace diagnosis
