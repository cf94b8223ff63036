#include "evaluation/person.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace evaluation {
namespace {

using diagnosis::Answer;
using diagnosis::Check;
using diagnosis::CheckKind;
using diagnosis::FaultKind;
using enum diagnosis::FaultKind;

// How often a fault shows when somebody looks, pulls or moves, at its own place; our estimate from
// trade sense, written apart from the engine's.
struct Shows {
  FaultKind kind;
  double looked, tugged, moved;
};
constexpr std::array<Shows, 11> kShows{{
    {splice_open, 0.85, 0.95, 0.10},           // a wire beside its splice; or hidden by the sleeve
    {splice_on_insulation, 0.75, 0.40, 0.05},  // gripped firmly, by the wrong part
    {splice_resistive, 0.30, 0.70, 0.55},
    {opens_when_moved, 0.30, 0.85, 0.92},
    {tab_off, 0.95, 0.98, 0.10},
    {reversed_here, 0.92, 0.0, 0.0},
    {reversed_from, 0.88, 0.0, 0.0},
    {wrong_branch, 0.50, 0.0, 0.0},
    {wrong_branch_unfused, 0.50, 0.0, 0.0},
    {pair_shorted, 0.40, 0.0, 0.0},
    {clamp_loose, 0.0, 0.95, 0.15},
}};
Shows shows(FaultKind kind) {
  for (const Shows& row : kShows) {
    if (row.kind == kind) return row;
  }
  return {kind, 0.0, 0.0, 0.0};
}

constexpr double kNotSure = 0.01;          // share of answers
constexpr double kBehindShut = 0.04;       // outlets that do not come out of their hole
constexpr double kTypesReading = 0.6;      // the rest choose the word
constexpr double kLiveVolts = 2.0;

std::string runs_word(Runs runs) { return runs == Runs::works ? "works" : runs == Runs::weak ? "weak" : "dead"; }

bool splice_fault(FaultKind kind) {
  return kind == splice_open || kind == splice_on_insulation || kind == splice_resistive || kind == opens_when_moved;
}
std::string sided(Side side, std::string_view what) {
  return std::string(side == Side::positive ? "red" : "black").append(what);
}

// The word on the button whose range holds the reading.
std::string word_for(const Check& check, double value) {
  const diagnosis::Choice* nearest = nullptr;
  double best = std::numeric_limits<double>::infinity();
  for (const diagnosis::Choice& choice : check.choices) {
    if (!choice.low && !choice.high) continue;   // no word of a reading
    const double low = choice.low.value_or(-1e300), high = choice.high.value_or(1e300);
    const double off = value < low ? low - value : value > high ? value - high : 0.0;
    if (off < best) {
      best = off;
      nearest = &choice;
    }
  }
  return nearest != nullptr ? std::string(diagnosis::answer_text(nearest->key)) : std::string();
}

}  // namespace

Person::Person(const World& world, const diagnosis::Case& told, double wrong_share, std::uint64_t seed)
    : world_(world), told_(told), wrong_share_(wrong_share), seed_(seed),
      complained_(told.complaint.outlets.empty() ? told.circuit.outlets.front().id : told.complaint.outlets.front()) {
  Engine engine(hash_of("meter", seed));
  const bool cheap = chance(engine, 0.4);
  meter_gain_ = 1.0 + uniform(engine, -1.0, 1.0) * (cheap ? 0.01 : 0.005);
  meter_digit_v_ = cheap ? 0.03 : 0.02;
}

bool Person::out_of_reach(const diagnosis::Site& site) const {
  if (site.location != diagnosis::Location::behind) return false;
  Engine engine(hash_of(diagnosis::site_key(site), seed_ + 17));
  return chance(engine, kBehindShut);
}

Setup Person::setup_of(const Check& check) const {
  Setup setup;
  setup.fuse_in = check.state.fuse_in;
  if (check.state.parted_at) setup.parted_at = *check.state.parted_at;
  if (check.state.plugged == diagnosis::Plugged::lamp) {
    setup.load_at = check.state.at;
    const double nominal = world_.nominal_v();
    setup.load = {{}, {}, network::Law::resistance, nominal * nominal / 5.0, 0.0, 0.0};
  } else if (check.state.plugged == diagnosis::Plugged::device) {
    setup.load_at = check.state.at;
    setup.load = world_.good_device().law;
  } else if (check.state.plugged == diagnosis::Plugged::own && !world_.device_is_dead()) {
    setup.load_at = check.state.at;
    setup.load = world_.device_of(complained_).law;
  }
  return setup;
}

Runs Person::failed_device(const Setup& setup, OutletId at) const {
  if (world_.device_is_dead()) return Runs::dead;
  return world_.runs(setup, at, world_.device_of(complained_));
}

std::optional<Person::Seen> Person::measure(const Check& check, Engine& engine) const {
  const Setup setup = setup_of(check);
  if (check.kind == CheckKind::glow) {
    const double share = std::abs(world_.lamp_volts(setup, check.red, check.black)) / world_.nominal_v();
    const double eye = uniform(engine, -0.04, 0.04);
    return Seen{share > 0.78 + eye ? "bright" : share > 0.22 + eye ? "dim" : "dark", {}};
  }
  if (check.kind == CheckKind::ohms) {
    const diagnosis::Spot minus{diagnosis::SpotKind::battery_post, circuit::kBlock, Side::negative};
    for (const diagnosis::Spot& spot : {check.red, check.black}) {
      if (std::abs(world_.across(setup, spot, minus, 10e6)) > kLiveVolts) return Seen{"live", {}};
    }
    const auto ohms = world_.ohms(setup, check.red, check.black);
    if (!ohms) return std::nullopt;   // the figures run about: nobody can make sense of it
    return Seen{word_for(check, std::min(*ohms, 1e9)), *ohms};
  }
  double volts = meter_gain_ * world_.across(setup, check.red, check.black, 10e6);
  volts += uniform(engine, -1.0, 1.0) * meter_digit_v_;
  volts = std::round(volts * 100.0) / 100.0;
  return Seen{word_for(check, volts), volts};
}

Person::Seen Person::hands_behind(const Check& check, Engine& engine) {
  const bool pulls = check.kind == CheckKind::tug;
  Setup fuse_out;
  fuse_out.fuse_in = false;
  if (pulls && world_.live_volts(fuse_out, {diagnosis::Location::behind, check.outlet}) > kLiveVolts) {
    ++found_live_;
    return {"live", {}};
  }
  for (const TrueFault& fault : world_.faults()) {
    if (fault.outlet != check.outlet) continue;
    const Shows row = shows(fault.kind);
    if (!chance(engine, pulls ? row.tugged : row.looked)) continue;
    if (splice_fault(fault.kind)) return {sided(fault.side, "-splice"), {}};
    if (fault.kind == tab_off) return {sided(fault.side, "-tab"), {}};
    if (pulls) continue;
    if (fault.kind == reversed_here) return {"crossed-tabs", {}};
    if (fault.kind == reversed_from) return {"crossed-splice", {}};
    if (fault.kind == wrong_branch || fault.kind == wrong_branch_unfused) return {"other-cable", {}};
    if (fault.kind == pair_shorted) return {"damaged", {}};
  }
  return {pulls ? "holds" : "fine", {}};
}

Person::Seen Person::pull_fuse(const Check& check) const {
  const Device device = world_.good_device();
  Setup setup;
  if (world_.runs(setup, check.outlet, device) == Runs::dead) return {"was-dead", {}};
  if (check.neighbour < 0) {
    setup.fuse_in = false;
  } else {
    setup.neighbour_out.assign(told_.neighbours.size(), false);
    setup.neighbour_out[static_cast<std::size_t>(check.neighbour)] = true;
  }
  return {world_.runs(setup, check.outlet, device) == Runs::dead ? "dies" : "stays", {}};
}

Person::Seen Person::at_block(const Check& check, Engine& engine) const {
  const TrueFault& fault = world_.faults().empty() ? TrueFault{} : world_.fault();
  const auto has = [&](FaultKind kind) {
    return std::any_of(world_.faults().begin(), world_.faults().end(),
                       [&](const TrueFault& each) { return each.kind == kind; });
  };
  switch (check.kind) {
    case CheckKind::block_alive: {
      Device light;   // a cabin light of 10 W
      light.law = {{}, {}, network::Law::resistance, world_.nominal_v() * world_.nominal_v() / 10.0, 0.0, 0.0};
      const Runs runs = world_.runs_elsewhere({}, -1, light);
      return {runs == Runs::works ? "yes" : runs == Runs::weak ? "weak" : "no", {}};
    }
    case CheckKind::fuse_look:
      if (has(fuse_missing)) return {"missing", {}};
      if (has(fuse_elsewhere)) return {chance(engine, 0.9) ? "elsewhere" : "missing", {}};
      if (has(fuse_blown) || has(overload) || has(pair_shorted)) return {chance(engine, 0.96) ? "blown" : "whole", {}};
      return {"whole", {}};
    case CheckKind::fuse_press: {
      Setup pressed;
      pressed.pressed = chance(engine, 0.95);
      const bool before = failed_device({}, complained_) == Runs::works;
      return {!before && failed_device(pressed, complained_) == Runs::works ? "works" : "same", {}};
    }
    case CheckKind::fuse_swap: {
      Setup swapped;
      swapped.new_fuse = true;
      const double rating = world_.fuse_a();
      if (world_.fuse_current_a({}) > 3.0 * rating) return {"blows-at-once", {}};
      Setup usual;
      usual.all_usual_loads = true;
      if (has(overload) && world_.fuse_current_a(usual) > 1.15 * rating && chance(engine, 0.8)) return {"blows-later", {}};
      const bool before = failed_device({}, complained_) == Runs::works;
      return {!before && failed_device(swapped, complained_) == Runs::works ? "works" : "same", {}};
    }
    case CheckKind::neighbour_fuse: {
      Setup put_in;
      put_in.neighbour_in.assign(told_.neighbours.size(), false);
      put_in.neighbour_in[static_cast<std::size_t>(check.neighbour)] = true;
      const bool before = failed_device({}, complained_) == Runs::works;
      return {!before && failed_device(put_in, complained_) == Runs::works ? "works" : "same", {}};
    }
    case CheckKind::tug_clamps: {
      Setup fuse_out;
      fuse_out.fuse_in = false;
      if (world_.live_volts(fuse_out, {diagnosis::Location::block, circuit::kBlock}) > kLiveVolts) return {"live", {}};
      if (has(clamp_loose) && chance(engine, shows(clamp_loose).tugged)) return {sided(fault.side, ""), {}};
      return {"holds", {}};
    }
    case CheckKind::main_look: return {has(main_open) && chance(engine, 0.97) ? "off" : "on", {}};
    default: return {has(overload) && chance(engine, 0.95) ? "over" : "within", {}};
  }
}

// nullopt: cannot be told.
std::optional<Person::Seen> Person::look(const Check& check, Engine& engine) {
  switch (check.kind) {
    case CheckKind::volts:
    case CheckKind::glow:
    case CheckKind::ohms: return measure(check, engine);
    case CheckKind::device_here: return Seen{runs_word(failed_device({}, check.outlet)), {}};
    case CheckKind::other_device: return Seen{runs_word(world_.runs({}, check.outlet, world_.good_device())), {}};
    case CheckKind::device_elsewhere:
      if (world_.device_is_dead()) return Seen{"dead", {}};
      if (world_.runs_elsewhere({}, -1, world_.device_of(complained_)) == Runs::dead) return std::nullopt;
      return Seen{"works", {}};
    case CheckKind::others_work: {
      std::size_t tried = 0, work = 0;
      for (const circuit::Outlet& outlet : told_.circuit.outlets) {
        const auto& named = told_.complaint.outlets;
        if (std::find(named.begin(), named.end(), outlet.id) != named.end()) continue;
        ++tried;
        if (failed_device({}, outlet.id) == Runs::works) ++work;
      }
      return Seen{work == tried ? "all" : work == 0 ? "none" : "some", {}};
    }
    case CheckKind::wiggle: {
      for (const TrueFault& fault : world_.faults()) {
        if (!world_.passes(fault, check.outlet)) continue;
        const bool joint = fault.kind == clamp_loose || fault.kind == fuse_loose || fault.kind == splice_resistive ||
                           fault.kind == splice_open || fault.kind == opens_when_moved || fault.kind == tab_off;
        if (!joint) continue;
        const double here = shows(fault.kind).moved * (fault.outlet == check.outlet ? 1.0 : 0.93);
        if (chance(engine, here)) return Seen{"flickers", {}};
      }
      return Seen{"steady", {}};
    }
    case CheckKind::look_behind:
    case CheckKind::tug: return hands_behind(check, engine);
    case CheckKind::read_gauge: {
      const bool thin = world_.faults().size() == 1 && world_.fault().kind == wire_thin;
      return Seen{thin && chance(engine, 0.95) ? "thinner" : "as-drawn", {}};
    }
    case CheckKind::pull_fuse: return pull_fuse(check);
    default: return at_block(check, engine);
  }
}

Answer Person::answer(const Check& check, bool again) {
  Engine engine(hash_of(check.id, seed_));
  for (const diagnosis::Site& site : check.sites) {
    if (out_of_reach(site)) return diagnosis::cant_reach();
  }
  if (chance(engine, kNotSure)) return diagnosis::not_sure();
  const bool wrong = chance(engine, wrong_share_) && !again;
  const bool types = chance(engine, kTypesReading);
  const std::optional<Seen> seen = look(check, engine);
  if (!seen) return diagnosis::not_sure();
  if (wrong && check.choices.size() > 1) {   // the wrong clip, the wrong outlet, a slip of the thumb
    std::vector<std::string> others;
    for (const diagnosis::Choice& choice : check.choices) {
      if (const std::string text(diagnosis::answer_text(choice.key)); text != seen->word) others.push_back(text);
    }
    return diagnosis::word(one_of(engine, others));
  }
  if (seen->reading && check.takes_reading && types) return diagnosis::reading(*seen->reading);
  return diagnosis::word(seen->word);
}

diagnosis::RetestResult Person::try_remedy(const diagnosis::Remedy& remedy, bool& right) {
  const bool mended = world_.repair(remedy);
  const bool sound = world_.sound();
  right = mended && sound;
  return sound ? diagnosis::RetestResult::works : diagnosis::RetestResult::same;
}

}  // namespace evaluation
