// The posterior against a plain enumeration written here, and what must hold whatever is answered.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "diagnosis/bench_person.h"
#include "diagnosis/safety.h"
#include "network/random_network.h"

using namespace diagnosis;
using diagnosis_test::three_outlets;
using doctest::Approx;
using network_test::Random;

namespace {

// A random honest or careless answer.
Answer any_answer(Random& random, const Check& check) {
  const std::size_t pick = random.below(20);
  if (pick == 0) return not_sure();
  if (pick == 1) return cant_reach();
  if (pick == 2 && check.takes_reading && check.kind == CheckKind::volts) return reading(random.uniform(-13.0, 14.0));
  return word(check.choices[random.below(check.choices.size())].key);
}

std::vector<double> all_probabilities(const Tracer& tracer) {
  std::vector<double> all;
  for (const Hypothesis& each : hypotheses(tracer.the_case())) all.push_back(tracer.probability(each.fault));
  return all;
}

std::size_t choice_index(const Check& check, AnswerKey key) {
  const auto found =
      std::find_if(check.choices.begin(), check.choices.end(), [&](const Choice& c) { return c.key == key; });
  return static_cast<std::size_t>(found - check.choices.begin());
}

bool one_size(FaultKind kind) {  // no spread, one port: the likelihood of the kind is that of its only size
  switch (kind) {
    case FaultKind::fuse_blown:
    case FaultKind::fuse_missing:
    case FaultKind::fuse_elsewhere:
    case FaultKind::wire_open:
    case FaultKind::tab_off:
    case FaultKind::outlet_dead:
    case FaultKind::device_dead:
    case FaultKind::reversed_here:
    case FaultKind::reversed_from:
    case FaultKind::wrong_branch_unfused:
    case FaultKind::main_open: return true;
    default: return false;
  }
}

}  // namespace

TEST_CASE("priors sum to one, and every kind of fault can be") {
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  std::map<FaultKind, double> by_kind;
  double sum = 0.0;
  for (const Hypothesis& each : hypotheses(the_case)) {
    by_kind[each.fault.kind] += each.prior;
    sum += each.prior;
  }
  CHECK(sum == Approx(1.0));
  CHECK(by_kind.size() == kFaultKinds);
}

TEST_CASE("a blown fuse to a loose tab: the odds are the prior's times each answer's, worked by hand") {
  // Complaint 'one dead' is as likely under both, so the prior odds stand: 12 to 2.
  Tracer tracer(three_outlets(Symptom::one_dead, {2}));
  const Fault blown{FaultKind::fuse_blown, {}, network::Side::positive, -1},
      tab{FaultKind::tab_off, {2}, network::Side::positive, -1};
  CHECK(tracer.probability(blown) / tracer.probability(tab) == Approx(12.0 / 2.0).epsilon(1e-9));
  REQUIRE(tracer.observe("fuse-look", word("whole")).taken);
  // Blown is seen as blown 95 times in 100, and 3 answers in 100 slip to one of three others:
  // 0.97 * 0.05 + 0.01 * 0.95 = 0.058. Whole is seen as whole 0.97.
  CHECK(tracer.probability(blown) / tracer.probability(tab) == Approx(6.0 * 0.058 / 0.97).epsilon(1e-9));
}

TEST_CASE("the posterior is that of plain enumeration over the same likelihoods") {
  Random random(31);
  for (int run = 0; run < network_test::run_count(20); ++run) {
    Tracer tracer(three_outlets(Symptom::one_dead, {static_cast<std::uint32_t>(1 + random.below(3))}));
    const std::vector<Hypothesis> all = hypotheses(tracer.the_case());
    std::vector<double> by_hand;
    for (const Hypothesis& each : all) by_hand.push_back(tracer.probability(each.fault));  // with the complaint
    const std::vector<Check> checks = tracer.all_checks();
    for (int step = 0; step < 8; ++step) {
      const Check& check = checks[random.below(checks.size())];
      const AnswerKey key = check.choices[random.below(check.choices.size())].key;
      REQUIRE(tracer.observe(check.id, word(key)).taken);
      for (std::size_t h = 0; h < all.size(); ++h) {
        by_hand[h] *= tracer.likelihood(all[h].fault, check.id)[choice_index(check, key)];
      }
    }
    // Pairs take their share of the whole, so ratios are compared.
    std::size_t reference = 0;
    while (all[reference].fault.kind != FaultKind::wire_open) ++reference;
    for (std::size_t h = 0; h < all.size(); ++h) {
      if (!one_size(all[h].fault.kind)) continue;
      INFO(fault_key(all[h].fault));
      const double odds = by_hand[h] / by_hand[reference];
      CHECK(tracer.probability(all[h].fault) / tracer.probability(all[reference].fault) == Approx(odds).epsilon(1e-6));
    }
  }
}

TEST_CASE("whatever is answered: sums to one, never nothing, undo goes back to the bit, a record replays") {
  Random random(7);
  for (int run = 0; run < network_test::run_count(60); ++run) {
    INFO("run ", run);
    Case the_case =
        three_outlets(static_cast<Symptom>(random.below(10)), {static_cast<std::uint32_t>(1 + random.below(3))});
    if (the_case.complaint.symptom == Symptom::several_dead) the_case.complaint.outlets = {{1}, {2}};
    Tracer tracer(the_case);
    std::vector<std::vector<double>> before;
    for (int step = 0; step < 12; ++step) {
      const Advice advice = tracer.next();
      before.push_back(all_probabilities(tracer));
      CHECK(tracer.total() == Approx(1.0).epsilon(1e-12));
      CHECK(tracer.probability(Fault{}) > 0.0);  // 'none of these' never dies
      if (advice.check) {
        CHECK(unsafe(the_case, *advice.check).empty());
        REQUIRE(tracer.observe(advice.check->id, any_answer(random, *advice.check)).taken);
      } else {
        REQUIRE(advice.remedy.has_value());
        CHECK(unsafe(the_case, *advice.remedy).empty());
        for (const Remedy& each : advice.to_try) CHECK(unsafe(the_case, each).empty());
        REQUIRE(
            tracer.after_remedy(advice.remedy->id, random.chance(0.8) ? RetestResult::same : RetestResult::cant).taken);
      }
    }
    const Replay again = replay(the_case, tracer.record());
    CHECK(again.dropped.empty());
    CHECK(again.tracer.record().entries == tracer.record().entries);
    CHECK(all_probabilities(again.tracer) == all_probabilities(tracer));
    CHECK(again.tracer.next().words == tracer.next().words);
    while (!before.empty()) {
      REQUIRE(tracer.undo());
      CHECK(all_probabilities(tracer) == before.back());
      before.pop_back();
    }
    CHECK_FALSE(tracer.undo());
  }
}

TEST_CASE("every fault at every place of a small circuit is found by following the advice") {
  const Case base = three_outlets(Symptom::one_dead, {2});
  int found_first = 0, all = 0;
  for (const Hypothesis& each : hypotheses(base)) {
    using enum FaultKind;
    const Fault fault = each.fault;
    if (fault.kind == none_of_these || fault.kind == source_flat || fault.kind == feeder_resistive ||
        fault.kind == wire_thin)
      continue;
    INFO(fault_key(fault));
    Case the_case = base;
    const std::uint32_t at = fault.outlet == circuit::kBlock ? 2 : fault.outlet.number;
    the_case.complaint.outlets = {{at}};
    switch (fault.kind) {
      case reversed_here:
      case reversed_from: the_case.complaint.symptom = Symptom::reversed; break;
      case splice_resistive: the_case.complaint.symptom = Symptom::weak; break;
      case pair_shorted: the_case.complaint = {Symptom::blows_at_once, {}}; break;
      case overload: the_case.complaint = {Symptom::blows_later, {}}; break;
      case wrong_branch: the_case.complaint = {Symptom::something_else_alive, {}}; break;
      case opens_when_moved: the_case.complaint.symptom = Symptom::only_when_moved; break;
      default: break;
    }
    const diagnosis_test::Ending ending =
        diagnosis_test::follow(the_case, diagnosis_test::BenchPerson(the_case, fault, 10.0, {}), fault);
    REQUIRE_FALSE(ending.remedies.empty());
    CHECK(ending.remedies.back() == remedy_id(fault));
    CHECK(ending.remedies.size() <= 3);
    CHECK(ending.unsafe.empty());
    ++all;
    if (ending.remedies.front() == remedy_id(fault)) ++found_first;
  }
  CHECK(found_first >= all * 9 / 10);
}

TEST_CASE("after a repair that did not help, the evidence stays and the second fault is found") {
  // Fuse blown, and a tab off at B as well.
  Case the_case = three_outlets(Symptom::one_dead, {2});
  Tracer tracer(the_case);
  REQUIRE(tracer.observe("fuse-look", word("blown")).taken);
  REQUIRE(tracer.after_remedy("fit-fuse", RetestResult::same).taken);
  const std::size_t kept = tracer.record().entries.size();
  const Fault tab{FaultKind::tab_off, {2}, network::Side::positive, -1};
  const diagnosis_test::BenchPerson person(the_case, tab, 0.0, {});
  std::string last;
  for (int step = 0; step < 30 && last != "refit-tab 2 +"; ++step) {
    const Advice advice = tracer.next();
    if (advice.check) {
      tracer.observe(advice.check->id, person.answer(*advice.check));
    } else {
      REQUIRE(advice.remedy.has_value());
      last = advice.remedy->id;
      if (last != "refit-tab 2 +") tracer.after_remedy(last, RetestResult::same);
    }
  }
  CHECK(last == "refit-tab 2 +");
  CHECK(tracer.record().entries.size() > kept);
}
