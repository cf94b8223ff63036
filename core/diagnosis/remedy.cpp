#include "diagnosis/remedy.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/built.h"
#include "diagnosis/judgement_constants.h"
#include "diagnosis/plant.h"
#include "diagnosis/prove_dead.h"
#include "diagnosis/remedy_row.h"
#include "diagnosis/words.h"
#include "network/probe.h"
#include "tables/supply.h"
#include "units/format.h"

namespace diagnosis {
namespace {

using network::Side;
using units::Volts;

class Writer {
 public:
  Writer(const Case& the_case, const Fault& fault)
      : case_(the_case), fault_(fault), row_(remedy_row(fault_row(fault.kind).remedy)) {
    remedy_.id = remedy_id(fault);
    remedy_.kind = row_.kind;
    remedy_.fault = fault;
    remedy_.title = joined({fault_words(the_case, fault), "."});
    remedy_.minutes = fault_row(fault.kind).repair_minutes;
  }

  Remedy write() {
    for (const std::string_view caution : row_.cautions) remedy_.cautions.push_back(sentence(caution));
    for (const StepRow& step : row_.steps) add(step);
    borrow();
    retest();
    return std::move(remedy_);
  }

 private:
  void add(const StepRow& row);
  void borrow();
  void retest();
  [[nodiscard]] std::string sentence(std::string_view words) const;

  const Case& case_;
  const Fault& fault_;
  const RemedyRow& row_;
  Remedy remedy_;
  bool fuse_in_ = true, main_on_ = true, minus_on_ = true, dead_ = false;
};

// The fuse that was pulled goes back, unless it is one that must not.
std::string fuse_back_words(const Case& the_case) {
  if (the_case.built.protection == Protection::too_large) {
    return joined({"Not the old fuse, it is larger than this wire may have: put in ", new_fuse_words(the_case),
                   ", or leave it out."});
  }
  return joined({"Put the ", fuse_words(the_case), " back, the same that you pulled."});
}

std::string prove_open_words(const Case& the_case) {
  const std::string clamps = joined({"the ", the_case.plus_colour, " and the ", the_case.minus_colour, " clamp"});
  if (the_case.tools.meter)
    return joined({"Fuse still out, everything unplugged: measure ohms between ", clamps, ". It must be open."});
  return "Fuse still out, everything unplugged: the lamp across the fuse clips must stay dark.";
}

// Volts below which a charged and rested battery of this kind counts as worn out.
std::string rest_low_words(const Case& the_case) {
  const circuit::Supply& supply = the_case.circuit.supply;
  if (supply.low) return units::volts_text(*supply.low);
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  return kind == nullptr ? std::string("its low volts")
                         : units::volts_text(kind->low * tables::blocks_in_series(supply.nominal));
}

std::string Writer::sentence(std::string_view words) const {
  const Subject subject{fault_.outlet, fault_.side, fault_.neighbour};
  return filled(words, [&](std::string_view token) {
    if (token == "fuse_back") return fuse_back_words(case_);
    if (token == "prove_open") return prove_open_words(case_);
    if (token == "rest_low") return rest_low_words(case_);
    return token_words(case_, subject, token);
  });
}

void Writer::add(const StepRow& row) {
  RemedyStep step;
  step.words = sentence(row.words);
  switch (row.then) {
    case Then::as_before: break;
    case Then::fuse_out: fuse_in_ = false; break;
    case Then::fuse_in: fuse_in_ = true; break;
    case Then::main_off: main_on_ = false; break;
    case Then::minus_off: minus_on_ = main_on_ = false; break;
    case Then::main_on: minus_on_ = main_on_ = true; break;
    case Then::exposes: break;
    case Then::proves_dead: step.words = prove_dead_words(case_, step.words); break;
  }
  if (row.then == Then::fuse_in || row.then == Then::main_on || row.then == Then::exposes) dead_ = false;
  step.act = row.act;
  step.fuse_in = fuse_in_;
  step.main_on = main_on_;
  step.minus_on = minus_on_;
  step.exposes = row.then == Then::exposes;
  step.proved_dead = dead_;
  step.proves_dead = row.then == Then::proves_dead;
  step.puts_fuse_in = row.then == Then::fuse_in;
  if (step.puts_fuse_in && names_fuse(case_)) step.fits_fuse = case_.built.fuse;
  if (step.proves_dead) dead_ = true;
  remedy_.steps.push_back(std::move(step));
}

// Without a tester nothing by hand begins.
void Writer::borrow() {
  if (!row_.takes.hands_on_conductors || can_prove_dead(case_.tools)) return;
  RemedyStep step;
  step.act = Act::watch;
  step.words = borrow_words(case_);
  remedy_.steps.insert(remedy_.steps.begin(), std::move(step));
}

// What a healthy circuit reads at the outlet with what is in hand, battery low to charging.
void Writer::retest() {
  const Plant plant(case_);
  int k = plant.outlet_index(fault_.outlet);
  for (const circuit::OutletId id : case_.complaint.outlets) {
    const int complained = plant.outlet_index(id);
    if (complained >= 0 && (k < 0 || plant.feeds(k, complained))) k = complained;
  }
  // Where nothing can be plugged in, at an outlet beyond; else at the last one.
  for (int beyond = static_cast<int>(plant.outlets()) - 1; beyond >= 0 && (k < 0 || !plant.has_socket(k)); --beyond) {
    if (plant.has_socket(beyond) && (k < 0 || plant.feeds(k, beyond))) k = beyond;
  }
  for (int last = static_cast<int>(plant.outlets()) - 1; last >= 0 && !plant.has_socket(k); --last) {
    if (plant.has_socket(last)) k = last;
  }
  Retest& test = remedy_.retest;
  test.outlet = case_.circuit.outlets[static_cast<std::size_t>(k)].id;
  test.with = case_.tools.lamp ? Plugged::lamp : case_.tools.device ? Plugged::device : Plugged::nothing;
  test.by_meter = case_.tools.meter;
  Potentials now;
  plant.solve({}, {}, now);
  const int red = plant.contact(k, Side::positive), black = plant.contact(k, Side::negative);
  const Appliance& good = plant.test_device();
  const double load_ohm = test.with == Plugged::lamp     ? plant.lamp_ohm()
                          : test.with == Plugged::device ? good.ohm_at(plant.nominal_v())
                                                         : network::kMeterInputOhm;
  const auto volts_from = [&](network::BatteryState state) {
    const network::BranchNetwork built = network::build(case_.circuit, fitted_of(case_), {}, state);
    const double emf =
        built.netlist.branch(built.find({network::Element::battery, circuit::kBlock, Side::positive})->branch).emf_v;
    return now.load_volts(red, black, load_ohm, false) * emf / plant.emf_v();
  };
  // Wires that are not known may take more than those that stand in for them.
  const double wires_v = 2.0 * plant.wire_spread() * plant.wire_ohm(k) * plant.emf_v() / load_ohm;
  const double part = judged(Judged::retest_part), digits = judged(Judged::retest_v);
  test.low = Volts(volts_from(network::BatteryState::low) * (1.0 - part) - digits - wires_v);
  test.high = Volts(std::max(volts_from(network::BatteryState::resting), volts_from(network::BatteryState::charging)) *
                        (1.0 + part) +
                    digits);
  const std::string letter = letter_of(case_, test.outlet);
  const std::string_view plugged = test.with == Plugged::lamp     ? "the lamp"
                                   : test.with == Plugged::device ? "a device"
                                                                  : "nothing";
  if (test.by_meter) {
    test.words = joined({"Fuse in, ", plugged, " plugged into ", letter,
                         ". Measure there, the meter's red lead on plus: ", units::volts_text(test.low), " to ",
                         units::volts_text(test.high), ", no minus sign."});
  } else if (test.with != Plugged::nothing) {
    test.words = joined(
        {"Fuse in, ", plugged, " in ", letter, ": as bright and steady as anywhere else. Move the cable: no flicker."});
  } else {
    test.words = joined({"Fuse in, the device that failed in ", letter, ": it runs. Move the cable: no change."});
  }
}

}  // namespace

std::string remedy_id(const Fault& fault) {
  const RemedyKind kind = fault_row(fault.kind).remedy;
  std::string id(remedy_row(kind).key);
  if (fault.outlet != circuit::kBlock) id.append(" ").append(std::to_string(fault.outlet.number));
  if (remedy_row(kind).by_side) id.append(" ").push_back(side_sign(fault.side));
  if (fault.neighbour >= 0) id.append(" n").append(std::to_string(fault.neighbour));
  return id;
}

Remedy remedy_for(const Case& the_case, const Fault& fault) { return Writer(the_case, fault).write(); }

}  // namespace diagnosis
