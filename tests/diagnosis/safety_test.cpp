// The safety rules see what is unsafe, and every check and repair carries the caution that its work needs.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "diagnosis/check_row.h"
#include "diagnosis/faulty.h"
#include "diagnosis/remedy_row.h"
#include "diagnosis/safety.h"
#include "diagnosis/tracer.h"

using namespace diagnosis;
using diagnosis_test::three_outlets;

namespace {

constexpr auto kHot = network::Side::positive;

Remedy remedy_of(const Case& the_case, FaultKind kind, circuit::OutletId outlet = {}, int neighbour = -1) {
  return remedy_for(the_case, {kind, outlet, kHot, neighbour});
}

bool warns(const Remedy& remedy, std::string_view of) {
  return std::any_of(remedy.cautions.begin(), remedy.cautions.end(),
                     [&](const std::string& each) { return each.find(of) != std::string::npos; });
}

}  // namespace

TEST_CASE("every check there is keeps the safety rules") {
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  const Tracer tracer(the_case);
  for (const Check& check : tracer.all_checks()) {
    INFO(check.id);
    CHECK(unsafe(the_case, check).empty());
  }
}

TEST_CASE("hands with the fuse in, or on what nobody proved dead, are seen, whatever the row says of itself") {
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  const Tracer tracer(the_case);
  for (const char* id : {"tug 2", "look-behind 2", "read-gauge 2", "tug-clamps"}) {
    Check flagless = *tracer.find_check(id);
    CHECK(unsafe(the_case, flagless).empty());
    flagless.act = Act::watch;
    flagless.takes = {false, false, false};
    CHECK(unsafe(the_case, flagless).empty());
    flagless.state.fuse_in = true;
    CHECK_FALSE(unsafe(the_case, flagless).empty());
    flagless.state.fuse_in = false;
    flagless.proves_dead = false;
    CHECK_FALSE(unsafe(the_case, flagless).empty());
    flagless.proves_dead = true;
    flagless.caution.clear();
    CHECK_FALSE(unsafe(the_case, flagless).empty());
  }
  Check ohms = *tracer.find_check("ohms clamp+ clamp- out");
  ohms.state.fuse_in = true;
  CHECK_FALSE(unsafe(the_case, ohms).empty());
  ohms.state.fuse_in = false;
  ohms.proves_dead = false;
  CHECK_FALSE(unsafe(the_case, ohms).empty());
  // A check that says nothing of what it takes is taken for the most there is.
  CHECK_FALSE(unsafe(the_case, Check{}).empty());
}

TEST_CASE("the rows take what the work takes: a second list, typed here") {
  // Fingers on or near bare conductors: common practice, no source.
  for (const CheckKindRow& row : check_kind_rows()) {
    CAPTURE(row.key);
    const bool by_hand = row.kind == CheckKind::look_behind || row.kind == CheckKind::tug ||
                         row.kind == CheckKind::tug_clamps || row.kind == CheckKind::read_gauge;
    CHECK(row.takes.hands_on_conductors == by_hand);
    CHECK(row.proves_dead == (by_hand || row.kind == CheckKind::ohms));
    if (row.proves_dead) CHECK(row.question.find("rove dead") != std::string_view::npos);
    // Pulling a fuse under load sparks; a spanner that slips at the main switch draws hundreds of amperes.
    const bool about_fuses = row.kind == CheckKind::fuse_press || row.kind == CheckKind::fuse_swap ||
                             row.kind == CheckKind::pull_fuse || row.kind == CheckKind::neighbour_fuse ||
                             row.kind == CheckKind::main_look;
    if (about_fuses) CHECK_FALSE(row.caution.empty());
  }
  // The battery, the feeder, the block's clamps: nothing but the main switch makes these dead.
  for (const RemedyRow& row : remedy_rows()) {
    CAPTURE(row.key);
    const bool in_the_supply = row.kind == RemedyKind::restore_main || row.kind == RemedyKind::remake_feeder_joint ||
                               row.kind == RemedyKind::remake_clamp;
    CHECK(row.in_the_supply == in_the_supply);
    const bool no_wiring = row.kind == RemedyKind::charge_source || row.kind == RemedyKind::fit_fuse ||
                           row.kind == RemedyKind::move_fuse || row.kind == RemedyKind::seat_fuse ||
                           row.kind == RemedyKind::shed_load || row.kind == RemedyKind::replace_device ||
                           row.kind == RemedyKind::look_further;
    CHECK(row.takes.hands_on_conductors == !no_wiring);
  }
}

TEST_CASE("each repair warns of what can hurt there") {
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  using enum FaultKind;
  struct Warning {
    FaultKind kind;
    std::string_view of;
  };
  // Hazards of batteries, feed studs, fuses, hidden pipes: common practice, no source.
  // clang-format off
  constexpr Warning kWarnings[] = {
      {source_flat, "never charge lithium below freezing"}, {source_flat, "no sparks"},
      {main_open, "blows again means a short"}, {main_open, "The feed stud carries the whole battery"}, {main_open, "minus lead off first"},
      {main_open, "leave it to somebody who does this for a living"},
      {feeder_resistive, "The feed stud carries the whole battery"}, {feeder_resistive, "minus lead off first"},
      {feeder_resistive, "leave it to somebody who does this for a living"},
      {fuse_blown, "never a bigger one"}, {fuse_missing, "never a bigger one"}, {fuse_elsewhere, "Never a bigger one"},
      {fuse_loose, "Do not bend live clips"}, {fuse_loose, "never a bigger one"},
      {clamp_loose, "No way to switch the block off"}, {clamp_loose, "The feed stud carries the whole battery"},
      {wire_open, "Before you drill"}, {wire_open, "Same size or thicker"},
      {splice_open, "A loose joint heats"}, {splice_resistive, "A loose joint heats"}, {splice_on_insulation, "A loose joint heats"},
      {pair_shorted, "Do not feed a short with fuse after fuse"}, {overload, "A bigger fuse is no answer"}, {overload, "never a bigger one"},
      {tab_off, "soot and bare metal"}, {outlet_dead, "browned or soft"}, {device_dead, "Do not fit a bigger one"},
      {reversed_here, "may be damaged"}, {reversed_from, "may be damaged"}, {wrong_branch, "One fuse out does not make it dead"},
      {wrong_branch_unfused, "One fuse out does not make it dead"}, {wire_thin, "thinnest wire"}, {wire_thin, "Before you drill"},
      {opens_when_moved, "A loose joint heats"}, {none_of_these, "Do not run a circuit that you do not understand"},
  };
  // clang-format on
  for (const Warning& row : kWarnings) {
    CAPTURE(fault_row(row.kind).key);
    CAPTURE(row.of);
    CHECK(warns(remedy_of(the_case, row.kind, {2}, 0), row.of));
  }
  for (const FaultRow& row : fault_rows()) {
    CHECK(std::any_of(std::begin(kWarnings), std::end(kWarnings),
                      [&](const Warning& each) { return each.kind == row.kind; }));
  }
}

TEST_CASE("every repair keeps the safety rules, and one that breaks them is seen") {
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  for (const Hypothesis& each : hypotheses(the_case)) {
    const Remedy remedy = remedy_for(the_case, each.fault);
    INFO(remedy.id);
    CHECK(unsafe(the_case, remedy).empty());
    for (const RemedyStep& step : remedy.steps) {
      if (step.fits_fuse) CHECK(*step.fits_fuse == *the_case.built.fuse);
    }
  }
  Remedy remedy = remedy_of(the_case, FaultKind::splice_open, {2});
  std::erase_if(remedy.steps, [](const RemedyStep& step) { return step.proves_dead; });
  CHECK_FALSE(unsafe(the_case, remedy).empty());
  remedy = remedy_of(the_case, FaultKind::splice_open, {2});
  for (RemedyStep& step : remedy.steps) step.act = Act::watch;  // wiring that says it takes no hands
  CHECK_FALSE(unsafe(the_case, remedy).empty());
  remedy = remedy_of(the_case, FaultKind::splice_open, {2});
  remedy.cautions.clear();
  CHECK_FALSE(unsafe(the_case, remedy).empty());
  remedy = remedy_of(the_case, FaultKind::fuse_blown);
  remedy.steps.back().fits_fuse = units::Amperes(20.0);
  CHECK_FALSE(unsafe(the_case, remedy).empty());
  for (const FaultKind kind : {FaultKind::clamp_loose, FaultKind::feeder_resistive, FaultKind::main_open}) {
    remedy = remedy_of(the_case, kind);
    for (RemedyStep& step : remedy.steps) step.main_on = true;  // hands beside the live feed stud
    CHECK_FALSE(unsafe(the_case, remedy).empty());
  }
  remedy = remedy_of(the_case, FaultKind::wrong_branch, {2}, 0);
  CHECK(std::any_of(remedy.steps.begin(), remedy.steps.end(),
                    [](const RemedyStep& step) { return step.words.find("Label both pairs") != std::string::npos; }));
}
