// Everyday stories: what is wrong, what is in hand, what an honest person sees, and the right ending.
// All invented; the faults are those that anyone who fits out vans has met (common practice, no source).
#include <doctest/doctest.h>

#include <algorithm>

#include "diagnosis/bench_person.h"

using namespace diagnosis;
using diagnosis_test::BenchPerson;
using diagnosis_test::Ending;
using diagnosis_test::follow;
using diagnosis_test::Told;
using enum diagnosis::FaultKind;
using enum diagnosis::Symptom;

namespace {

constexpr auto kRed = network::Side::positive, kBlack = network::Side::negative;
constexpr Tools kAll{true, true, true, true}, kMeter{true, false, false, true}, kLamp{false, true, false, true},
    kCharger{false, false, true, true}, kNothing{};

struct Story {
  const char* told;
  Symptom symptom;
  std::vector<std::uint32_t> outlets;  // of three in a chain: 1 A, 2 B, 3 C
  Tools tools;
  Fault fault;
  double ohm;
  Told answers;        // where the person answers otherwise than plain truth
  const char* ending;  // remedy id
  std::size_t within;  // remedies tried at most
};

const std::vector<Story>& stories() {
  // clang-format off
  static const std::vector<Story> all{
      {"The inflator tripped everything last week, now all is dead", all_dead, {}, kAll, {fuse_blown, {}, kRed, -1}, 0, {}, "fit-fuse", 1},
      {"Dead since the fuse was lent to the fridge", all_dead, {}, kMeter, {fuse_missing, {}, kRed, -1}, 0, {}, "fit-fuse", 1},
      {"The fuse was put one position too far", all_dead, {}, kNothing, {fuse_elsewhere, {}, kRed, -1}, 0, {}, "move-fuse", 1},
      {"Worked until the washboard road: the fuse rides up in its clips", all_dead, {}, kMeter, {fuse_loose, {}, kRed, -1}, 0, {}, "seat-fuse", 1},
      {"Nothing but a charger in hand, fuse blown", one_dead, {2}, kCharger, {fuse_blown, {}, kRed, -1}, 0, {}, "fit-fuse", 1},
      {"A lamp in hand, all dead, fuse blown", all_dead, {}, kLamp, {fuse_blown, {}, kRed, -1}, 0, {}, "fit-fuse", 1},
      {"The main switch was left off", all_dead, {}, kMeter, {main_open, {}, kRed, -1}, 0, {}, "restore-main", 1},
      {"The last outlet died when it was pushed back into its hole: red tab", one_dead, {3}, kMeter, {tab_off, {3}, kRed, -1}, 0, {}, "refit-tab 3 +", 1},
      {"Black tab off at the first outlet, the others work", one_dead, {1}, kAll, {tab_off, {1}, kBlack, -1}, 0, {}, "refit-tab 1 -", 1},
      {"Black tab off at B, only a lamp", one_dead, {2}, kLamp, {tab_off, {2}, kBlack, -1}, 0, {}, "refit-tab 2 -", 1},
      {"Loose red splice at B, B and C dead", several_dead, {2, 3}, kMeter, {splice_open, {2}, kRed, -1}, 0, {}, "remake-splice 2 +", 1},
      {"Loose black splice at C", one_dead, {3}, kAll, {splice_open, {3}, kBlack, -1}, 0, {}, "remake-splice 3 -", 1},
      {"Black splice at C closed on the insulation, a beginner's first evening", one_dead, {3}, kMeter, {splice_on_insulation, {3}, kBlack, -1}, 0, {}, "remake-splice 3 -", 2},
      {"The splice gives nothing to a tug, but looks wrong", one_dead, {2}, kMeter, {splice_on_insulation, {2}, kRed, -1}, 0, {{"tug 2", "holds"}}, "remake-splice 2 +", 1},
      {"The light at B is dim: a few strands caught", weak, {2}, kAll, {splice_resistive, {2}, kRed, -1}, 8, {}, "remake-splice 2 +", 1},
      {"C is slow, black splice at C green with salt", weak, {3}, kAll, {splice_resistive, {3}, kBlack, -1}, 20, {}, "remake-splice 3 -", 1},
      {"Splice nearly open: the meter says full volts, the device stays off", volts_but_dead, {2}, kAll, {splice_resistive, {2}, kRed, -1}, 100, {}, "remake-splice 2 +", 1},
      {"The meter says minus at B only", reversed, {2}, kMeter, {reversed_here, {2}, kRed, -1}, 0, {}, "swap-at-tabs 2", 1},
      {"B and C both read minus", reversed, {2, 3}, kMeter, {reversed_from, {2}, kRed, -1}, 0, {}, "swap-at-splice 2", 1},
      {"A polarity-minded charger is dead at C, works elsewhere", one_dead, {3}, kAll, {reversed_here, {3}, kRed, -1}, 0, {}, "swap-at-tabs 3", 1},
      {"Reversed from A on, all of it", reversed, {1}, kAll, {reversed_from, {1}, kRed, -1}, 0, {}, "swap-at-splice 1", 1},
      {"With this fuse put in nothing comes; put in the lights' fuse and C lives", one_dead, {3}, kMeter, {wrong_branch_unfused, {3}, kRed, 0}, 0, {}, "reconnect-pair 3 n0", 1},
      {"All outlets hang on the lights' pair, whose fuse is out", all_dead, {}, kAll, {wrong_branch_unfused, {1}, kRed, 0}, 0, {}, "reconnect-pair 1 n0", 1},
      {"Pulling this fuse leaves B alive", something_else_alive, {}, kAll, {wrong_branch, {2}, kRed, 0}, 0, {}, "reconnect-pair 2 n0", 2},
      {"Other pair at A, and only a charger to see by", one_dead, {1}, kCharger, {wrong_branch_unfused, {1}, kRed, 0}, 0, {}, "reconnect-pair 1 n0", 1},
      {"The charger's own plug fuse is blown, no tools", one_dead, {2}, kNothing, {device_dead, {}, kRed, -1}, 0, {}, "replace-device", 1},
      {"Meter reads volts, device off: it is the device", volts_but_dead, {1}, kAll, {device_dead, {}, kRed, -1}, 0, {}, "replace-device", 1},
      {"Outlet burnt inside, plus contact", one_dead, {2}, kMeter, {outlet_dead, {2}, kRed, -1}, 0, {}, "replace-outlet 2", 1},
      {"Outlet C's outer contact bent away", one_dead, {3}, kAll, {outlet_dead, {3}, kBlack, -1}, 0, {}, "replace-outlet 3", 1},
      {"The fuse blows as it goes in: a screw through the cable to B", blows_at_once, {}, kMeter, {pair_shorted, {2}, kRed, -1}, 0, {}, "clear-short 2", 1},
      {"The same with only a lamp to find it", blows_at_once, {}, kLamp, {pair_shorted, {3}, kRed, -1}, 0, {}, "clear-short 3", 1},
      {"Kettle and inflator together: holds three minutes", blows_later, {}, kNothing, {overload, {}, kRed, -1}, 0, {}, "shed-load", 1},
      {"Fuse blown again today, add it up", all_dead, {}, kAll, {overload, {}, kRed, -1}, 0, {}, "shed-load", 1},
      {"Red clamp at the block never tightened", all_dead, {}, kMeter, {clamp_loose, {}, kRed, -1}, 0, {}, "remake-clamp +", 1},
      {"Black clamp at the block fell out", all_dead, {}, kAll, {clamp_loose, {}, kBlack, -1}, 0, {}, "remake-clamp -", 1},
      {"A staple cut the red wire between A and B", several_dead, {2, 3}, kAll, {wire_open, {2}, kRed, -1}, 0, {}, "replace-run 2 +", 2},
      {"Black wire to A broken in a hinge", all_dead, {}, kMeter, {wire_open, {1}, kBlack, -1}, 0, {}, "replace-run 1 -", 2},
      {"Comes and goes on the road: red splice at B", only_when_moved, {2}, kAll, {opens_when_moved, {2}, kRed, -1}, 0, {}, "remake-splice 2 +", 1},
      {"Cuts out when the plug at C is moved: black splice at C", only_when_moved, {3}, kCharger, {opens_when_moved, {3}, kBlack, -1}, 0, {}, "remake-splice 3 -", 1},
      {"Somebody misread the fuse as whole, the meter puts it right", all_dead, {}, kAll, {fuse_blown, {}, kRed, -1}, 0, {{"fuse-look", "whole"}}, "fit-fuse", 1},
  };
  // clang-format on
  return all;
}

}  // namespace

TEST_CASE("forty everyday stories end at the right remedy, and nothing unsafe is advised on the way") {
  REQUIRE(stories().size() == 40);
  for (const Story& story : stories()) {
    INFO(story.told);
    Case the_case = diagnosis_test::three_outlets(story.symptom, story.outlets);
    the_case.tools = story.tools;
    REQUIRE(problems(the_case).empty());
    const Ending ending = follow(the_case, BenchPerson(the_case, story.fault, story.ohm, story.answers), story.fault);
    std::string seen;
    for (const std::string& each : ending.checks) seen.append(each).append(" | ");
    for (const std::string& each : ending.remedies) seen.append("=> ").append(each).append(" ");
    INFO(seen);
    CHECK(ending.unsafe.empty());
    REQUIRE_FALSE(ending.remedies.empty());
    CHECK(ending.remedies.back() == story.ending);
    CHECK(ending.remedies.size() <= story.within);
    CHECK(ending.minutes < 45.0);
  }
}
