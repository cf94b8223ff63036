// Points where a run ends: outlets with splices, outlets that the wire goes straight to, junctions where nothing is
// plugged in. Nothing is suspected or asked for at a place that is not there.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "diagnosis/bench_person.h"
#include "diagnosis/safety.h"

using namespace diagnosis;
using diagnosis_test::BenchPerson;
using diagnosis_test::Ending;
using diagnosis_test::follow;
using doctest::Approx;
using enum diagnosis::FaultKind;

namespace {

constexpr auto kRedSide = network::Side::positive;

// Block, outlet A with the wire straight to its terminals, a junction B, outlet C behind a splice.
Case mixed(Symptom symptom, std::vector<std::uint32_t> outlets) {
  Case made = diagnosis_test::three_outlets(symptom, std::move(outlets));
  made.circuit.outlets[0].joint = circuit::Joint::direct;
  made.circuit.outlets[1].point = circuit::PointKind::junction;
  made.circuit.outlets[1].devices.clear();
  return made;
}

bool suspected(const Case& the_case, FaultKind kind, std::uint32_t outlet) {
  const std::vector<Hypothesis> all = hypotheses(the_case);
  return std::any_of(all.begin(), all.end(), [&](const Hypothesis& each) {
    return each.fault.kind == kind && each.fault.outlet == circuit::OutletId{outlet};
  });
}

}  // namespace

TEST_CASE("faults stand only where there is something that can fail so") {
  const Case the_case = mixed(Symptom::one_dead, {3});
  REQUIRE(problems(the_case).empty());
  for (const FaultKind kind : {splice_open, splice_resistive, splice_on_insulation, reversed_from, opens_when_moved}) {
    CHECK_FALSE(suspected(the_case, kind, 1));
    CHECK(suspected(the_case, kind, 2));
    CHECK(suspected(the_case, kind, 3));
  }
  for (const FaultKind kind : {tab_off, outlet_dead, reversed_here}) {
    CHECK(suspected(the_case, kind, 1));
    CHECK_FALSE(suspected(the_case, kind, 2));
    CHECK(suspected(the_case, kind, 3));
  }
  for (const FaultKind kind : {wire_open, pair_shorted, wrong_branch}) {
    for (const std::uint32_t id : {1u, 2u, 3u}) CHECK(suspected(the_case, kind, id));
  }
}

TEST_CASE("no probe, plug or hand is asked for at a place that is not there") {
  const Case the_case = mixed(Symptom::all_dead, {});
  const Tracer tracer(the_case);
  for (const Check& check : tracer.all_checks()) {
    INFO(check.id);
    CHECK(unsafe(the_case, check).empty());
    for (const Spot& spot : {check.red, check.black}) {
      if (check.kind != CheckKind::volts && check.kind != CheckKind::glow && check.kind != CheckKind::ohms) continue;
      if (spot.outlet == circuit::OutletId{1}) CHECK(spot.kind != SpotKind::splice);
      if (spot.outlet == circuit::OutletId{2})
        CHECK((spot.kind == SpotKind::splice || spot.kind == SpotKind::wire_end));
    }
    const bool behind = check.kind == CheckKind::look_behind || check.kind == CheckKind::tug;
    if (!behind) CHECK_FALSE(check.outlet == circuit::OutletId{2});
    CHECK_FALSE(check.state.at == circuit::OutletId{2});
    CHECK_FALSE(check.state.parted_at == circuit::OutletId{1});
    for (const Site& site : check.sites) CHECK_FALSE(site == Site{Location::front, {2}});
  }
  CHECK(tracer.find_check("volts tab+1 bus- in").has_value());
  CHECK(tracer.find_check("volts splice+2 splice-2 in").has_value());
}

TEST_CASE("every point check there reads as the general network with the instrument in place") {
  const Case the_case = mixed(Symptom::one_dead, {3});
  const Tracer tracer(the_case);
  int compared = 0;
  for (const Hypothesis& each : hypotheses(the_case)) {
    const FaultKind kind = each.fault.kind;
    if (kind == source_flat || kind == splice_resistive || kind == feeder_resistive || kind == wire_thin)
      continue;  // sizes: readings_test.cpp
    if (kind == reversed_here && each.fault.outlet == circuit::OutletId{2}) continue;
    INFO(fault_key(each.fault));
    for (const Check& check : tracer.all_checks()) {
      if (check.red.kind == SpotKind::wire_end || check.black.kind == SpotKind::wire_end) continue;
      const std::optional<double> network_v = diagnosis_test::read(the_case, each.fault, 0.0, check);
      if (!network_v) continue;
      INFO(check.id);
      ++compared;
      const double allowed = kind == wrong_branch ? 0.05 : 0.003;  // its line: another estimate
      CHECK(tracer.predicted(each.fault, check.id).value() == Approx(*network_v).epsilon(allowed));
    }
  }
  CHECK(compared > 1000);
}

TEST_CASE("a complaint about a place where nothing is plugged in is told; the others count as the outlets") {
  const circuit::Problems told = problems(mixed(Symptom::one_dead, {2}));
  REQUIRE(told.size() == 1);
  CHECK(circuit::one_line(told.front()) ==
        "Complaint: at B nothing is plugged in: it only joins wires. Name an outlet of this circuit.");
  Case nothing = mixed(Symptom::all_dead, {});
  nothing.circuit.outlets.resize(2);
  nothing.circuit.outlets.erase(nothing.circuit.outlets.begin());
  nothing.circuit.outlets.front().fed_from = circuit::kBlock;
  nothing.built = {};
  CHECK_FALSE(problems(nothing).empty());
}

TEST_CASE("a trace comes to the splice in the junction, and the re-test is at the outlet beyond") {
  const Fault open{splice_open, {2}, kRedSide, -1};
  const Case the_case = mixed(Symptom::one_dead, {3});
  const Ending ending = follow(the_case, BenchPerson(the_case, open, 0.0, {}), open);
  CHECK(ending.unsafe.empty());
  REQUIRE_FALSE(ending.remedies.empty());
  CHECK(std::find(ending.remedies.begin(), ending.remedies.end(), "remake-splice 2 +") != ending.remedies.end());
  CHECK(remedy_for(mixed(Symptom::all_dead, {}), open).retest.outlet == circuit::OutletId{3});
  const Fault tab{tab_off, {1}, kRedSide, -1};
  const Case first = mixed(Symptom::one_dead, {1});
  const Ending straight = follow(first, BenchPerson(first, tab, 0.0, {}), tab);
  CHECK(straight.unsafe.empty());
  REQUIRE_FALSE(straight.remedies.empty());
  CHECK(straight.remedies.front() == "refit-tab 1 +");
}
