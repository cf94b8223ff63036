// The safety rules see what is unsafe, and every check and repair carries the caution that its work needs.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "diagnosis/check_row.h"
#include "diagnosis/checks.h"
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

// Every set of things in hand: meter, lamp, device, spare fuse.
std::vector<Tools> every_kit() {
  std::vector<Tools> kits;
  for (unsigned bits = 0; bits < 16; ++bits)
    kits.push_back({(bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0, (bits & 8) != 0});
  return kits;
}
std::size_t words_in(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] != ' ' && (i == 0 || text[i - 1] == ' ')) ++count;
  return count;
}
bool tells(const std::vector<std::string>& all, std::string_view what) {
  return std::any_of(all.begin(), all.end(),
                     [&](const std::string& each) { return each.find(what) != std::string::npos; });
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
  for (const char* id : {"tug 2", "tug-clamps"}) {
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
    const bool by_hand = row.kind == CheckKind::tug || row.kind == CheckKind::tug_clamps;
    CHECK(row.takes.hands_on_conductors == by_hand);
    CHECK(row.proves_dead == (by_hand || row.kind == CheckKind::ohms));
    // Pulling a fuse under load sparks; a spanner that slips at the main switch draws hundreds of amperes.
    const bool about_fuses = row.kind == CheckKind::fuse_press || row.kind == CheckKind::fuse_swap ||
                             row.kind == CheckKind::pull_fuse || row.kind == CheckKind::neighbour_fuse ||
                             row.kind == CheckKind::main_look;
    if (about_fuses) CHECK_FALSE(row.caution.empty());
  }
  // The battery, the feeder, the block's clamps: nothing but the main switch makes these dead.
  for (const RemedyRow& row : remedy_rows()) {
    CAPTURE(row.key);
    const bool before = row.kind == RemedyKind::restore_main || row.kind == RemedyKind::remake_feeder_joint;
    CHECK(row.supply == (before                                 ? Supply::before_the_block
                         : row.kind == RemedyKind::remake_clamp ? Supply::at_the_block
                                                                : Supply::beyond_the_fuse));
    const bool fuse_alone = row.kind == RemedyKind::fit_fuse || row.kind == RemedyKind::move_fuse;
    CHECK((row.fuse == FuseWork::only_a_fuse) == fuse_alone);
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
      {clamp_loose, "No way to cut the block off"}, {clamp_loose, "The feed stud carries the whole battery"},
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

TEST_CASE("every kind of check in every state: what is permitted, typed here a second time") {
  // Hands and ohms only with the fuse out and dead proved; eyes behind an outlet with the fuse out; probe tips on
  // volts and a lamp at any time; the rest comes near no metal. Common practice, no source.
  using enum CheckKind;
  constexpr CheckKind kByHand[] = {tug, tug_clamps};
  int states = 0;
  for (const CheckKindRow& row : check_kind_rows()) {
    for (const bool fuse_in : {false, true}) {
      for (const bool proves : {false, true}) {
        for (const bool parted : {false, true}) {
          for (const Plugged plugged : {Plugged::nothing, Plugged::lamp, Plugged::device, Plugged::own}) {
            Check check;
            check.kind = row.kind;
            check.act = row.act;
            check.takes = row.takes;
            check.red = {SpotKind::clamp, {}, network::Side::positive};
            check.black = {SpotKind::clamp, {}, network::Side::negative};
            check.sites = {{Location::block, {}}};
            check.proves_dead = proves;
            check.state = {fuse_in, plugged, {2}, {}};
            if (parted) check.state.parted_at = circuit::OutletId{2};
            const bool by_hand =
                parted || std::find(std::begin(kByHand), std::end(kByHand), row.kind) != std::end(kByHand);
            const bool needs_dead = by_hand || row.kind == ohms;
            CAPTURE(row.key);
            CAPTURE(fuse_in);
            CAPTURE(proves);
            CAPTURE(parted);
            const bool bare = row.kind == look_behind || row.kind == read_gauge;
            CHECK(unsafe(check).empty() == ((!needs_dead || (!fuse_in && proves)) && (!bare || !fuse_in)));
            ++states;
          }
        }
      }
    }
  }
  CHECK(states == static_cast<int>(kCheckKinds) * 32);
}

TEST_CASE("dead is proved on the metal that will be touched, side by side, and with a tester in hand") {
  for (const Tools& kit : every_kit()) {
    Case the_case = three_outlets(Symptom::one_dead, {2});
    the_case.tools = kit;
    const bool tester = kit.meter || kit.lamp;
    const Tracer tracer(the_case);
    for (const Check& check : tracer.all_checks()) {
      if (!check.proves_dead) continue;
      CAPTURE(check.id);
      CHECK((has_tools(check, kit) ? tester : true));
      CHECK(tells(check.first, "dead on the bare metal"));
      CHECK(tells(check.first, "red to a minus that you know, black to it, red to black"));
      CHECK(tells(check.first, "on a live point before and after"));
    }
    for (const Hypothesis& each : hypotheses(the_case)) {
      const Remedy remedy = remedy_for(the_case, each.fault);
      CAPTURE(remedy.id);
      CHECK(unsafe(the_case, remedy).empty());
      const bool by_hand = remedy_row(remedy.kind).takes.hands_on_conductors;
      CHECK((remedy.steps.front().words.find("Borrow a meter") == 0) == (by_hand && !tester));
      // Exposed, then proved, then touched.
      bool exposed = false, proved = false;
      for (const RemedyStep& step : remedy.steps) {
        exposed = exposed || step.exposes;
        if (step.proves_dead) CHECK(exposed);
        proved = proved || step.proves_dead;
        if (step.act == Act::hands) CHECK(proved);
      }
    }
  }
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  Remedy remedy = remedy_of(the_case, FaultKind::splice_open, {2});
  const auto proves =
      std::find_if(remedy.steps.begin(), remedy.steps.end(), [](const RemedyStep& step) { return step.proves_dead; });
  REQUIRE(proves != remedy.steps.begin());
  std::iter_swap(proves, proves - 1);  // proved before it is opened
  CHECK_FALSE(unsafe(the_case, remedy).empty());
  Case bare = the_case;
  bare.tools = {false, false, true, true};
  remedy = remedy_of(bare, FaultKind::splice_open, {2});
  remedy.steps.erase(remedy.steps.begin());  // nobody said what to borrow
  CHECK_FALSE(unsafe(bare, remedy).empty());
}

TEST_CASE("minus comes off the battery before a tool comes near plus") {
  // A spanner that bridges plus and the body shorts the battery: common practice, no source.
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  for (const FaultKind kind : {FaultKind::feeder_resistive, FaultKind::main_open}) {
    Remedy remedy = remedy_of(the_case, kind);
    bool minus_off = false;
    for (const RemedyStep& step : remedy.steps) {
      minus_off = minus_off || !step.minus_on;
      if (step.act == Act::hands) CHECK(minus_off);
    }
    for (RemedyStep& step : remedy.steps) step.minus_on = true;
    CHECK_FALSE(unsafe(the_case, remedy).empty());
  }
}

TEST_CASE("after a new fuse blew no other goes in before its cause is gone") {
  const auto puts_in_a_fuse = [](const Advice& advice) {
    if (advice.check && advice.check->kind == CheckKind::fuse_swap) return true;
    const auto only_a_fuse = [](const Remedy& remedy) {
      return remedy.kind == RemedyKind::fit_fuse || remedy.kind == RemedyKind::move_fuse;
    };
    return (advice.remedy && only_a_fuse(*advice.remedy)) ||
           std::any_of(advice.to_try.begin(), advice.to_try.end(), only_a_fuse);
  };
  for (const Symptom symptom : {Symptom::blows_at_once, Symptom::blows_later, Symptom::all_dead}) {
    for (const AnswerKey as : {AnswerKey::blows_at_once, AnswerKey::blows_later}) {
      Tracer tracer(three_outlets(symptom, {}));
      if (symptom == Symptom::all_dead) tracer.observe("fuse-swap", word(as));
      for (int step = 0; step < 25; ++step) {
        const Advice advice = tracer.next();
        CAPTURE(advice.words);
        CHECK_FALSE(puts_in_a_fuse(advice));
        if (advice.kind == AdviceKind::check) tracer.observe(advice.check->id, not_sure());
        else if (advice.remedy) {
          if (remedy_row(advice.remedy->kind).fuse == FuseWork::removes_what_blew_it) break;
          tracer.after_remedy(advice.remedy->id, RetestResult::same);
        } else {
          break;
        }
      }
    }
  }
  // A repair that ended with the fuse blown is taken as that, and undone with it.
  Tracer tracer(three_outlets(Symptom::all_dead, {}));
  tracer.observe("fuse-look", word(AnswerKey::blown));
  const double before = tracer.probability({FaultKind::pair_shorted, {1}});
  REQUIRE(tracer.after_remedy("fit-fuse", RetestResult::blew).taken);
  CHECK(tracer.probability({FaultKind::pair_shorted, {1}}) > 2.0 * before);
  CHECK_FALSE(puts_in_a_fuse(tracer.next()));
  REQUIRE(tracer.undo());
  CHECK(tracer.probability({FaultKind::pair_shorted, {1}}) == doctest::Approx(before));
}

TEST_CASE("a joint that may be heating is told as soon as it is likely") {
  Case the_case = three_outlets(Symptom::weak, {3});
  Tracer tracer(the_case);
  CHECK(tracer.next().warning.find("switch off what it feeds") != std::string::npos);
  Tracer open(three_outlets(Symptom::one_dead, {2}));
  open.observe("fuse-look", word(AnswerKey::missing));
  CHECK(open.next().warning.empty());
}

TEST_CASE("a question has at most 16 words, a caution at most 14") {
  for (const double nominal : {12.0, 48.0}) {
    for (const Tools& kit : every_kit()) {
      Case the_case = three_outlets(Symptom::one_dead, {2});
      the_case.circuit.supply.nominal = units::Volts(nominal);
      the_case.tools = kit;
      for (const Check& check : Tracer(the_case).all_checks()) {
        INFO(check.question << " / " << check.caution);
        CHECK(words_in(check.question) <= kMostQuestionWords);
        CHECK(words_in(check.caution) <= kMostCautionWords);
      }
    }
  }
}
