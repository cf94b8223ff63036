// What people type, contradict and change on the way: told plainly, nothing lost.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <string>

#include "diagnosis/bench_person.h"
#include "diagnosis/safety.h"
#include "units/format.h"

using namespace diagnosis;
using diagnosis_test::three_outlets;

TEST_CASE("readings that can not be are not taken, and the reason is told") {
  Tracer tracer(three_outlets(Symptom::one_dead, {2}));
  const char* at_b = "volts contact+2 contact-2 in";
  for (const double typed : {60.0, 470.0, -40.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(typed);
    const Receipt receipt = tracer.observe(at_b, reading(typed));
    CHECK_FALSE(receipt.taken);
    CHECK_FALSE(receipt.words.empty());
  }
  CHECK(tracer.observe(at_b, reading(60.0)).words.find("60.0 V is more than a 12 V circuit can have") !=
        std::string::npos);
  CHECK(tracer.record().entries.empty());
  CHECK_FALSE(tracer.observe("fuse-look", reading(12.0)).taken);
  CHECK_FALSE(tracer.observe("fuse-look", word("sideways")).taken);
  CHECK_FALSE(tracer.observe("volts moon+ moon-", word("full")).taken);
  CHECK_FALSE(tracer.observe("ohms clamp+ clamp- out", reading(-3.0)).taken);
  CHECK_FALSE(tracer.after_remedy("turn it off and on", RetestResult::same).taken);
  CHECK_FALSE(tracer.retake(0, word("whole")).taken);
}

TEST_CASE("a minus is taken, told, and points at red and black changed over") {
  Tracer tracer(three_outlets(Symptom::one_dead, {2}));
  const Fault here{FaultKind::reversed_here, {2}, network::Side::positive, -1};
  const double before = tracer.probability(here);
  const Receipt receipt = tracer.observe("volts contact+2 contact-2 in", reading(-12.7));
  CHECK(receipt.taken);
  CHECK(receipt.words.find("minus") != std::string::npos);
  CHECK(tracer.probability(here) > 10.0 * before);
}

TEST_CASE("answers that contradict each other: the odd one is named and can be taken again") {
  Tracer tracer(three_outlets(Symptom::one_dead, {2}));
  // Everything says that the whole circuit is dead from the clamp on, and one answer says that C lives.
  tracer.observe("fuse-look", word("blown"));
  tracer.observe("volts fuse-wire bus- in", word("zero"));
  tracer.observe("volts clamp+ clamp- in", word("zero"));
  tracer.observe("volts splice+1 splice-1 in", word("full"));
  tracer.observe("volts contact+1 contact-1 in", word("zero"));
  tracer.observe("volts splice+2 splice-2 in", word("zero"));
  tracer.observe("volts tab+1 tab-1 in", word("zero"));
  tracer.observe("volts bus+ clamp- in", word("minus"));  // no fault does that
  tracer.observe("volts bus+ splice-1 in", word("minus"));
  tracer.observe("block-alive", word("no"));
  tracer.observe("volts fuse-feed bus- in", word("minus"));
  const Advice advice = tracer.next();
  CHECK(advice.kind == AdviceKind::none_fits);
  CHECK_FALSE(advice.words.empty());
  CHECK(advice.check.has_value());  // and it goes on
  CHECK(tracer.record().entries.size() == 11);

  // One slip among good answers: it is the one named.
  Tracer slip(three_outlets(Symptom::one_dead, {3}));
  slip.observe("volts contact+3 contact-3 in", word("minus"));  // the slip: leads crossed
  for (const char* good : {"volts splice+3 splice-3 in", "volts tab+3 tab-3 in", "volts lug+3 lug-3 in",
                           "volts lug+3 splice-3 in", "volts splice+3 lug-3 in", "volts tab+3 splice-3 in"}) {
    slip.observe(good, word("full"));
  }
  slip.observe("look-behind 3", word("fine"));
  slip.observe("other-device 3", word("works"));
  slip.observe("device-elsewhere", word("dead"));
  CHECK(slip.probability({FaultKind::device_dead, {}, network::Side::positive, -1}) > 0.5);
  REQUIRE(slip.retake(0, word("full")).taken);
  CHECK(slip.probability({FaultKind::device_dead, {}, network::Side::positive, -1}) > 0.95);
}

// Common practice, no source: lead-acid on an alternator, solar or a charger stands at 13.3 to 14.6 V, and rests
// at about 12.0 V when half used. Neither is a fault.
TEST_CASE("a battery on charge, or half used, is no odd answer and no suspect") {
  for (const double battery : {12.05, 13.4, 14.4}) {
    CAPTURE(battery);
    Tracer tracer(three_outlets(Symptom::one_dead, {3}));
    for (const char* sound :
         {"volts battery+ battery- in", "volts bus+ bus- in", "volts clamp+ clamp- in", "volts contact+1 contact-1 in",
          "volts splice+2 splice-2 in", "volts contact+3 contact-3 in"}) {
      REQUIRE(tracer.observe(sound, reading(battery)).taken);
      CHECK(tracer.next().kind != AdviceKind::none_fits);
    }
    CHECK(tracer.probability(Fault{}) < 0.1);
    CHECK(tracer.probability({FaultKind::source_flat, {}, network::Side::positive, -1}) < 0.05);
    CHECK(tracer.probability({FaultKind::device_dead, {}, network::Side::positive, -1}) > 0.3);
  }
}

TEST_CASE("a remedy made in vain is not offered again while another fault has weight") {
  Tracer tracer(three_outlets(Symptom::all_dead, {}));
  tracer.observe("fuse-look", word("blown"));
  std::vector<std::string> offered;
  for (int step = 0; step < 500 && offered.size() < 4; ++step) {
    const Advice advice = tracer.next();
    if (advice.check) {
      tracer.observe(advice.check->id, not_sure());
      continue;
    }
    REQUIRE(advice.remedy.has_value());
    CHECK(std::find(offered.begin(), offered.end(), advice.remedy->id) == offered.end());
    offered.push_back(advice.remedy->id);
    tracer.after_remedy(advice.remedy->id, RetestResult::same);
  }
  CHECK(offered.size() == 4);
}

TEST_CASE("nobody is asked without end who is not sure of anything") {
  const auto unsure_answers = [](Tracer& tracer) {
    int asked = 0;
    for (Advice advice = tracer.next(); advice.check && asked < 100; advice = tracer.next(), ++asked) {
      tracer.observe(advice.check->id, not_sure());
    }
    return asked;
  };
  Tracer blown(three_outlets(Symptom::all_dead, {}));
  blown.observe("fuse-look", word("blown"));
  CHECK(unsure_answers(blown) <= 3);
  const Advice advice = blown.next();
  CHECK(advice.kind == AdviceKind::cannot_tell);
  REQUIRE(advice.remedy.has_value());
  blown.after_remedy(advice.remedy->id, RetestResult::same);
  CHECK(unsure_answers(blown) > 0);  // asked again after a remedy in vain
  Tracer vague(three_outlets(Symptom::one_dead, {2}));
  CHECK(unsure_answers(vague) == 6);  // nothing stands out: the order to try
  CHECK(vague.next().to_try.size() > 1);
}

TEST_CASE("the share told beside the first to try is its own, be it quicker and less likely than another") {
  int quicker_than_likely = 0;
  for (const Symptom symptom :
       {Symptom::one_dead, Symptom::all_dead, Symptom::weak, Symptom::only_when_moved, Symptom::blows_later}) {
    for (const std::uint32_t outlet : {1u, 2u, 3u}) {
      Tracer tracer(three_outlets(symptom, {outlet}));
      for (int asked = 0; tracer.next().check && asked < 100; ++asked)
        tracer.observe(tracer.next().check->id, not_sure());
      const Advice advice = tracer.next();
      if (advice.kind != AdviceKind::cannot_tell) continue;
      std::map<std::string, double> by_remedy;
      for (const Suspect& suspect : tracer.suspects(1000)) by_remedy[suspect.remedy_id] += suspect.probability;
      CAPTURE(advice.to_try.front().id);
      CHECK(advice.probability == doctest::Approx(by_remedy[advice.to_try.front().id]).epsilon(0.05));
      for (const auto& [id, share] : by_remedy) {
        if (share > 1.2 * advice.probability) {
          ++quicker_than_likely;
          break;
        }
      }
    }
  }
  CHECK(quicker_than_likely > 0);
}

TEST_CASE("a circuit edited in the middle: what still applies is kept, what does not is named") {
  Case the_case = three_outlets(Symptom::one_dead, {2});
  Tracer tracer(the_case);
  tracer.observe("fuse-look", word("whole"));
  tracer.observe("volts contact+3 contact-3 in", reading(12.7));
  tracer.observe("volts contact+2 contact-2 in", word("zero"));
  circuit::Circuit edited = the_case.circuit;
  edited.outlets.pop_back();   // C is gone
  const auto frame_of = [&] {  // what is built of a circuit names its outlets only
    Case frame = the_case;
    frame.circuit = edited;
    std::erase_if(frame.built.runs,
                  [&](const BuiltRun& run) { return circuit::find_outlet(edited, run.outlet) == nullptr; });
    return frame;
  };
  const Replay again = replay(frame_of(), tracer.record());
  CHECK(again.dropped.size() == 1);
  CHECK(again.dropped.front().find("contact+3") != std::string::npos);
  CHECK(again.tracer.record().entries.size() == 2);
  edited.outlets.erase(edited.outlets.begin() + 1);  // and B, the one complained of
  const Replay third = replay(frame_of(), tracer.record());
  CHECK(third.dropped.size() == 3);
  CHECK(problems(third.tracer.the_case()).empty());
  CHECK(third.tracer.next().check.has_value());
}

TEST_CASE("can't reach it: nothing behind that outlet is asked for again") {
  Tracer tracer(three_outlets(Symptom::one_dead, {2}));
  tracer.observe("look-behind 2", cant_reach());
  for (int step = 0; step < 15; ++step) {
    const Advice advice = tracer.next();
    if (!advice.check) break;
    for (const Site& site : advice.check->sites) CHECK_FALSE(site == Site{Location::behind, {2}});
    tracer.observe(advice.check->id, not_sure());
  }
}

TEST_CASE("cases that can not be traced are told") {
  Case none = three_outlets(Symptom::one_dead, {});
  CHECK_FALSE(problems(none).empty());
  CHECK_FALSE(problems(three_outlets(Symptom::one_dead, {9})).empty());
  CHECK_FALSE(problems(three_outlets(Symptom::several_dead, {1})).empty());
  Case blind = three_outlets(Symptom::volts_but_dead, {1});
  blind.tools.meter = false;
  CHECK_FALSE(problems(blind).empty());
  Case unfused = three_outlets(Symptom::all_dead, {});
  unfused.built.fuse = units::Amperes(0.0);
  CHECK(problems(unfused).size() == 1);
  unfused.built.fuse.reset();  // said to be known, and not told
  CHECK(problems(unfused).size() == 1);
  unfused.built.fuse_known = Knowledge::unknown;
  CHECK(problems(unfused).empty());
  Case no_wire = three_outlets(Symptom::all_dead, {});
  no_wire.built.runs.front().wire = "9awg";
  CHECK(problems(no_wire).size() == 1);
  no_wire.built.runs.front().wire.reset();
  CHECK(problems(no_wire).size() == 1);
  no_wire.built.runs.clear();
  CHECK(problems(no_wire).empty());
  Case one_colour = three_outlets(Symptom::all_dead, {});
  one_colour.minus_colour = one_colour.plus_colour;
  CHECK(problems(one_colour).size() == 1);
  Case unnamed_position = three_outlets(Symptom::one_dead, {2});  // nobody told its name: no fault of the person
  CHECK(problems(unnamed_position).empty());
  for (const char* name : {" ", "Li\nghts", "\xff"}) {
    Case unnamed = three_outlets(Symptom::one_dead, {2});
    unnamed.neighbours.front().name = name;
    CHECK(problems(unnamed).size() == 1);
  }
  Case nowhere = three_outlets(Symptom::one_dead, {2});
  nowhere.neighbours.front().fuse_position = -3;
  CHECK(problems(nowhere).size() == 1);
  CHECK(problems(generic_case(tables::GaugeSystem::metric)).size() == 1);  // says nothing of which outlet yet
}
