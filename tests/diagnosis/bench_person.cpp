#include "diagnosis/bench_person.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "diagnosis/safety.h"

namespace diagnosis_test {
namespace {

using namespace diagnosis;
using network::Side;

// The meter's own battery drives a little current through what is measured.
double measured_ohm(const Case& the_case, const Fault& fault, double ohm, const Check& check) {
  Faulty made = build_faulty(the_case, fault, ohm, check.state);
  network::Netlist& net = made.branch.netlist;
  net.open(made.branch.find({network::Element::battery, circuit::kBlock, Side::positive})->branch);
  constexpr double kInside = 1000.0;
  const network::NodeId red = made.node(check.red, false), black = made.node(check.black, false);
  net.add_battery(black, red, units::Volts(1.0), units::Ohms(kInside));
  const double v = network::solve(net).between(red, black).number();
  return v > 0.999 ? std::numeric_limits<double>::infinity() : kInside * v / (1.0 - v);
}

// Either point stands at plus with the fuse out: another circuit feeds it.
bool still_live(const Case& the_case, const Fault& fault, double ohm, const Check& check) {
  const Faulty made = build_faulty(the_case, fault, ohm, check.state);
  const network::Solution solved = network::solve(made.branch.netlist);
  for (const Spot& spot : {check.red, check.black}) {
    if (solved.between(made.node(spot, check.state.fuse_in), network::kReference).number() > 1.0) return true;
  }
  return false;
}

AnswerKey by_range(const Check& check, double value) {
  for (const Choice& choice : check.choices) {
    if ((!choice.low || value >= *choice.low) && (!choice.high || value < *choice.high)) return choice.key;
  }
  return check.choices.back().key;
}

bool is_splice(FaultKind kind) {
  return kind == FaultKind::splice_open || kind == FaultKind::splice_resistive ||
         kind == FaultKind::splice_on_insulation || kind == FaultKind::opens_when_moved;
}

}  // namespace

BenchPerson::BenchPerson(Case the_case, Fault fault, double ohm, Told told)
    : case_(std::move(the_case)), fault_(fault), ohm_(ohm), told_(std::move(told)) {}

double BenchPerson::device_volts(circuit::OutletId outlet, bool fuse_in) const {
  Check check;
  check.kind = CheckKind::volts;
  check.red = {SpotKind::contact, outlet, Side::positive};
  check.black = {SpotKind::contact, outlet, Side::negative};
  check.state = {fuse_in, Plugged::lamp, outlet, {}};  // the story's devices take about what a lamp does
  return *read(case_, fault_, ohm_, check);
}

AnswerKey BenchPerson::natural(const Check& check) const {
  using enum FaultKind;
  const auto runs = [&](circuit::OutletId outlet) { return device_volts(outlet, true); };
  const bool red = fault_.side == Side::positive;
  const bool here = check.outlet == fault_.outlet;
  switch (check.kind) {
    case CheckKind::device_here:
      return fault_.kind == device_dead ? AnswerKey::dead : by_range(check, runs(check.outlet));
    case CheckKind::other_device: return by_range(check, runs(check.outlet));
    case CheckKind::device_elsewhere: return fault_.kind == device_dead ? AnswerKey::dead : AnswerKey::works;
    case CheckKind::others_work: {
      std::size_t good = 0, tried = 0;
      for (const circuit::Outlet& outlet : case_.circuit.outlets) {
        if (std::count(case_.complaint.outlets.begin(), case_.complaint.outlets.end(), outlet.id) != 0) continue;
        ++tried;
        if (fault_.kind != device_dead && runs(outlet.id) > 10.6) ++good;
      }
      return good == tried ? AnswerKey::all : good == 0 ? AnswerKey::none : AnswerKey::some;
    }
    case CheckKind::wiggle: return fault_.kind == opens_when_moved && here ? AnswerKey::flickers : AnswerKey::steady;
    case CheckKind::look_behind:
      if (!here) return AnswerKey::fine;
      if (is_splice(fault_.kind)) return red ? AnswerKey::plus_splice : AnswerKey::minus_splice;
      if (fault_.kind == tab_off) return red ? AnswerKey::plus_tab : AnswerKey::minus_tab;
      if (fault_.kind == reversed_here) return AnswerKey::crossed_tabs;
      if (fault_.kind == reversed_from) return AnswerKey::crossed_splice;
      if (fault_.kind == wrong_branch_unfused || fault_.kind == wrong_branch) return AnswerKey::other_cable;
      return AnswerKey::fine;
    case CheckKind::tug:
      if (fault_.kind == wrong_branch && here) return AnswerKey::live;
      if (here && is_splice(fault_.kind)) return red ? AnswerKey::plus_splice : AnswerKey::minus_splice;
      if (here && fault_.kind == tab_off) return red ? AnswerKey::plus_tab : AnswerKey::minus_tab;
      return AnswerKey::holds;
    case CheckKind::read_gauge: return fault_.kind == wire_thin ? AnswerKey::thinner : AnswerKey::as_drawn;
    case CheckKind::block_alive: return fault_.kind == main_open ? AnswerKey::no : AnswerKey::yes;
    case CheckKind::fuse_look:
      if (fault_.kind == fuse_blown || fault_.kind == overload || fault_.kind == pair_shorted) return AnswerKey::blown;
      return fault_.kind == fuse_missing     ? AnswerKey::missing
             : fault_.kind == fuse_elsewhere ? AnswerKey::elsewhere
                                             : AnswerKey::whole;
    case CheckKind::fuse_press: return fault_.kind == fuse_loose ? AnswerKey::works : AnswerKey::same;
    case CheckKind::fuse_swap:
      if (fault_.kind == pair_shorted) return AnswerKey::blows_at_once;
      if (fault_.kind == overload) return AnswerKey::blows_later;
      return fault_.kind == fuse_blown || fault_.kind == fuse_missing || fault_.kind == fuse_elsewhere ||
                     fault_.kind == fuse_loose
                 ? AnswerKey::works
                 : AnswerKey::same;
    case CheckKind::pull_fuse:
      if (runs(check.outlet) < 5.4) return AnswerKey::was_dead;
      if (fault_.kind == wrong_branch && check.outlet >= fault_.outlet)
        return check.neighbour == fault_.neighbour ? AnswerKey::dies : AnswerKey::stays;
      return check.neighbour < 0 ? AnswerKey::dies : AnswerKey::stays;
    case CheckKind::neighbour_fuse:
      return fault_.kind == wrong_branch_unfused && check.neighbour == fault_.neighbour ? AnswerKey::works
                                                                                        : AnswerKey::same;
    case CheckKind::tug_clamps:
      return fault_.kind == clamp_loose ? (red ? AnswerKey::plus_clamp : AnswerKey::minus_clamp) : AnswerKey::holds;
    case CheckKind::main_look: return fault_.kind == main_open ? AnswerKey::off : AnswerKey::on;
    case CheckKind::add_up: return fault_.kind == overload ? AnswerKey::over : AnswerKey::within;
    default: return AnswerKey::unknown;
  }
}

Answer BenchPerson::answer(const Check& check) const {
  for (const auto& [id, told] : told_) {
    if (check.id.compare(0, id.size(), id) == 0) return word(told);
  }
  if (const auto volts = read(case_, fault_, ohm_, check)) {
    return word(by_range(check, check.kind == CheckKind::glow ? std::abs(*volts) : *volts));
  }
  if (check.kind == CheckKind::ohms && still_live(case_, fault_, ohm_, check)) return word(AnswerKey::live);
  if (check.kind == CheckKind::ohms) return word(by_range(check, measured_ohm(case_, fault_, ohm_, check)));
  return word(natural(check));
}

Ending follow(const Case& the_case, const BenchPerson& person, const Fault& fault) {
  Ending ending;
  Tracer tracer(the_case);
  for (int step = 0; step < 60; ++step) {
    const Advice advice = tracer.next();
    if (advice.check) {
      if (const std::string why = unsafe(the_case, *advice.check); !why.empty()) ending.unsafe.push_back(why);
      ending.minutes += advice.check->minutes;
      ending.checks.push_back(advice.check->id);
      tracer.observe(advice.check->id, person.answer(*advice.check));
      continue;
    }
    if (!advice.remedy) break;
    if (const std::string why = unsafe(the_case, *advice.remedy); !why.empty()) ending.unsafe.push_back(why);
    ending.remedies.push_back(advice.remedy->id);
    const bool helps = advice.remedy->id == remedy_id(fault);
    tracer.after_remedy(advice.remedy->id, helps ? RetestResult::works : RetestResult::same);
    if (helps) break;
  }
  return ending;
}

}  // namespace diagnosis_test
