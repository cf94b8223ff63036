// What is built is told, guessed or not known: no wire and no fuse is named that nobody told, and readings count
// for less where the wires are not known.
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "diagnosis/built.h"
#include "diagnosis/faulty.h"
#include "diagnosis/plant.h"
#include "diagnosis/tracer.h"
#include "units/format.h"

using namespace diagnosis;
using diagnosis_test::three_outlets;
using doctest::Approx;
using network::Side;

namespace {

const tables::Conductor& wire(const char* id) { return *tables::conductor_by_id(id); }

Built all_of(const circuit::Circuit& circuit, const char* size, double fuse_a, Knowledge how, Protection protection) {
  return built_throughout(circuit, {&wire(size), nullptr, units::Amperes(fuse_a)}, how, protection);
}

// Everything that a person can be shown or told of this case.
std::string all_words(const Case& the_case) {
  std::string all;
  const Tracer tracer(the_case);
  for (const Check& check : tracer.all_checks()) {
    all += check.question + "\n" + check.state_words + "\n" + check.caution + "\n";
    for (const Choice& choice : check.choices) all += choice.words + "\n";
  }
  for (const Hypothesis& each : hypotheses(the_case)) {
    all += fault_words(the_case, each.fault) + "\n";
    const Remedy remedy = remedy_for(the_case, each.fault);
    for (const std::string& caution : remedy.cautions) all += caution + "\n";
    for (const RemedyStep& step : remedy.steps) all += step.words + "\n";
    all += remedy.retest.words + "\n";
  }
  return all;
}

// "14 A" in words: any rating, and any size.
bool names_a_rating(const std::string& words) {
  for (std::size_t at = words.find(" A "); at != std::string::npos; at = words.find(" A ", at + 1)) {
    if (at > 0 && words[at - 1] >= '0' && words[at - 1] <= '9') return true;
  }
  return words.find("AWG") != std::string::npos || words.find("mm²") != std::string::npos;
}

// The wire of this outlet's run, one way, as the trace reckons with it.
double run_ohm(const Case& the_case, std::uint32_t outlet) {
  const Plant plant(the_case);
  Potentials now;
  plant.solve({}, {}, now);
  const circuit::OutletId from = circuit::find_outlet(the_case.circuit, {outlet})->fed_from;
  const Spot start = from == circuit::kBlock ? Spot{SpotKind::clamp, circuit::kBlock, Side::positive}
                                             : Spot{SpotKind::splice, from, Side::positive};
  return now.ohms(plant.node(start, true), plant.node({SpotKind::wire_end, {outlet}, Side::positive}, true));
}

}  // namespace

TEST_CASE("a rating is named only where the fuse and every wire are known, and it protects them") {
  Case the_case = three_outlets(Symptom::all_dead, {1, 2, 3});
  CHECK(names_fuse(the_case));
  CHECK(names_a_rating(all_words(the_case)));
  const auto told = [&](Built built) {
    the_case.built = std::move(built);
    return names_a_rating(all_words(the_case));
  };
  const circuit::Circuit& circuit = the_case.circuit;
  CHECK_FALSE(told({}));
  CHECK_FALSE(told(all_of(circuit, "12awg", 15.0, Knowledge::guessed, Protection::protects)));
  CHECK_FALSE(told(all_of(circuit, "12awg", 15.0, Knowledge::known, Protection::not_judged)));
  CHECK_FALSE(told(all_of(circuit, "18awg", 30.0, Knowledge::known, Protection::too_large)));
  CHECK_FALSE(told(built_throughout(circuit, {&wire("12awg"), nullptr, units::Amperes(0.0)}, Knowledge::known,
                                    Protection::not_judged)));
  Built guessed_fuse = all_of(circuit, "12awg", 15.0, Knowledge::known, Protection::protects);
  guessed_fuse.fuse_known = Knowledge::guessed;
  CHECK_FALSE(told(guessed_fuse));
  Built one_run_not = all_of(circuit, "12awg", 15.0, Knowledge::known, Protection::protects);
  one_run_not.runs.back().wire_known = Knowledge::guessed;
  CHECK_FALSE(told(one_run_not));
  one_run_not.runs.pop_back();  // not listed is not known
  CHECK_FALSE(told(one_run_not));
}

TEST_CASE("what a plan wants is not named as built: not the size of a run, not the fuse in hand") {
  Case the_case = three_outlets(Symptom::all_dead, {1, 2, 3});
  the_case.built = {};
  for (circuit::Outlet& outlet : the_case.circuit.outlets) outlet.run.size = "16awg";
  the_case.circuit.in_hand = circuit::InHand{"16awg", units::Amperes(20.0)};
  CHECK_FALSE(names_fuse(the_case));
  CHECK_FALSE(names_a_rating(all_words(the_case)));
  const Tracer tracer(the_case);
  CHECK_FALSE(tracer.find_check("read-gauge 1").has_value());  // nothing is there to hold it against
}

TEST_CASE("a replay goes by what its frame says is built") {
  Case the_case = three_outlets(Symptom::all_dead, {1, 2, 3});
  Tracer tracer(the_case);
  REQUIRE(tracer.observe("fuse-look", word("blown")).taken);
  Case frame = the_case;
  frame.built = {};
  const Replay again = replay(frame, tracer.record());
  CHECK(again.dropped.empty());
  CHECK_FALSE(names_a_rating(all_words(again.tracer.the_case())));
}

TEST_CASE("the old fuse does not go back where it is larger than the wire may have") {
  Case the_case = three_outlets(Symptom::all_dead, {});
  the_case.built = all_of(the_case.circuit, "18awg", 30.0, Knowledge::known, Protection::too_large);
  for (const Hypothesis& each : hypotheses(the_case)) {
    for (const RemedyStep& step : remedy_for(the_case, each.fault).steps) {
      CHECK(step.words.find("the same that you pulled") == std::string::npos);
      CHECK_FALSE(step.fits_fuse.has_value());
    }
  }
}

TEST_CASE("each run has the wire that is there, whatever size the circuit keeps for it") {
  // ASTM B258: three sizes of AWG are twice the area, within 1 %.
  Case the_case = three_outlets(Symptom::one_dead, {2});
  const double thick = run_ohm(the_case, 2);
  the_case.built.runs[1].wire = "18awg";  // twice three sizes thinner
  const double thin = run_ohm(the_case, 2);
  CHECK(thin / thick == Approx(4.0).epsilon(0.03));
  CHECK(run_ohm(the_case, 3) == Approx(run_ohm(three_outlets(Symptom::one_dead, {2}), 3)));
  for (circuit::Outlet& outlet : the_case.circuit.outlets) outlet.run.size = "10awg";
  CHECK(run_ohm(the_case, 2) == Approx(thin).epsilon(1e-9));
  // With nothing told, the size that the circuit keeps stands in, with no trust in it.
  the_case.built = {};
  the_case.circuit.outlets[1].run.size = "18awg";
  CHECK(run_ohm(the_case, 2) == Approx(thin).epsilon(1e-9));
  CHECK(wire_spread(the_case) > 0.5);
}

TEST_CASE("a switch in the line and a chassis are no wire: another size leaves them as they are") {
  Case the_case = three_outlets(Symptom::one_dead, {1});
  the_case.circuit.outlets.front().run.in_line.push_back({circuit::InLineKind::toggle, units::Amperes(15.0)});
  for (circuit::Outlet& outlet : the_case.circuit.outlets) outlet.run.back = circuit::ReturnPath::chassis;
  const auto both_ways = [&](const char* size) {
    the_case.built = all_of(the_case.circuit, size, 15.0, Knowledge::known, Protection::protects);
    the_case.circuit.outlets.front().run.size.reset();
    return Plant(the_case).wire_ohm(0);
  };
  const double thin = both_ways("18awg");
  the_case.circuit.outlets.front().run.size = "10awg";  // what the network gives it is scaled back
  CHECK(Plant(the_case).wire_ohm(0) == Approx(thin).epsilon(1e-9));
  CHECK(thin / both_ways("12awg") == Approx(4.0).epsilon(0.03));
  // One way only: 3 m of 12 AWG at 50 degrees, 5.211 ohm/km at 20 (ASTM B258 and 0.393 % a degree).
  CHECK(both_ways("12awg") == Approx(3.0 * 5.211e-3 * (1.0 + 0.00393 * 30.0)).epsilon(0.02));
}

TEST_CASE("readings under load tell less where the wires are not known") {
  // Twice the drop that sound wires of this size would have: wires that are thin, or only not what was taken.
  Case the_case = three_outlets(Symptom::weak, {3});
  the_case.tools = {true, false, false, false};
  for (circuit::Outlet& outlet : the_case.circuit.outlets) outlet.run.length = units::Metres(6.0);
  const Fault thin{FaultKind::wire_thin, {}, Side::positive, -1},
      sound{FaultKind::opens_when_moved, {3}, Side::positive, -1};
  const char* along_plus = "volts bus+ splice+3 in own3";
  the_case.built = all_of(the_case.circuit, "12awg", 15.0, Knowledge::known, Protection::protects);
  const double twice = 2.0 * Tracer(the_case).predicted(sound, along_plus).value();
  const auto odds = [&](Knowledge how) {
    the_case.built = all_of(the_case.circuit, "12awg", 15.0, how, Protection::not_judged);
    if (how == Knowledge::unknown) the_case.built = {};  // 12 AWG stands in: the same physics
    Tracer tracer(the_case);
    const double before = tracer.probability(thin) / tracer.probability(sound);
    REQUIRE(tracer.observe(along_plus, reading(twice)).taken);
    return tracer.probability(thin) / tracer.probability(sound) / before;
  };
  const double known = odds(Knowledge::known), guessed = odds(Knowledge::guessed), unknown = odds(Knowledge::unknown);
  CAPTURE(known);
  CAPTURE(guessed);
  CAPTURE(unknown);
  CHECK(known > 1.5 * guessed);
  CHECK(guessed > 1.1 * unknown);
}
