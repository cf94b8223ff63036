// The judge beside the bench: a small count of random installations, faults and people, held to
// bounds clearly below the aims (meter, honest: 97 % right at the first conclusion, 99.5 % within two;
// 3 % wrong answers: 92 % and 98 %), so that chance does not fail it and a real loss does.
#include <doctest/doctest.h>

#include <cstdlib>

#include "evaluation/optimum.h"
#include "evaluation/tally.h"

using namespace evaluation;

namespace {

std::size_t cases(std::size_t full) {
  const char* quick = std::getenv("BRANCHLIGHT_QUICK");
  return quick != nullptr && *quick == '1' ? full / 10 : full;
}
bool quick() { return cases(100) < 100; }

struct Bound {
  Kit kit;
  double wrong_share, first, two;
  double most_minutes;
};

void hold(const Bound& bound, std::size_t count) {
  Setting setting;
  setting.kit = bound.kit;
  setting.wrong_share = bound.wrong_share;
  setting.cases = cases(count);
  setting.seed = 20261125;
  const std::vector<Run> runs = run_all(Policy::engine, setting);
  const Tally all = tally(runs);
  CAPTURE(setting_name(setting));
  CAPTURE(setting.seed);
  for (const Run& run : runs) {
    for (const std::string& breach : run.breaches) FAIL_CHECK("unsafe: " << breach);
  }
  CHECK(all.refused == 0);
  if (quick()) return;   // a dozen cases say nothing about shares
  CHECK(all.first_right >= bound.first);
  CHECK(all.second_right >= bound.two);
  CHECK(all.minutes.mean <= bound.most_minutes);
}

}  // namespace

TEST_CASE("With a meter and honest answers") { hold({Kit::meter, 0.0, 0.92, 0.96, 11.0}, 120); }
TEST_CASE("With a meter and one answer in thirty wrong") { hold({Kit::meter, 0.03, 0.87, 0.93, 12.0}, 120); }
TEST_CASE("With a lamp only") { hold({Kit::lamp, 0.0, 0.80, 0.88, 14.0}, 60); }
TEST_CASE("With nothing but a device with a light") { hold({Kit::device_only, 0.0, 0.75, 0.82, 16.0}, 60); }

TEST_CASE("Far fewer minutes than any fixed order") {
  Setting setting;
  setting.cases = cases(40);
  setting.seed = 20261125;
  const double engine = tally(run_all(Policy::engine, setting)).minutes.mean;
  if (quick()) return;
  for (const Policy policy : {Policy::outward, Policy::back, Policy::half_split}) {
    CAPTURE(policy_name(policy));
    CHECK(engine <= 0.5 * tally(run_all(policy, setting)).minutes.mean);
  }
}

TEST_CASE("Near the fewest minutes there are, where they can be computed") {
  // Aim: at most 1.1 of the optimum. Measured 1.02 to 1.06 on sets of a dozen; bits of both steps over minutes of
  // both, which puts off the better check, comes to 1.2 to 1.3 and fails here.
  constexpr double kMostOverOptimum = 1.1;
  constexpr std::uint64_t kSeed = 20261125;
  const std::size_t wanted = quick() ? 2 : 12;
  double optimum = 0.0, engine = 0.0;
  std::size_t done = 0;
  for (std::size_t k = 0; done < wanted && k < 100; ++k) {
    const auto best = best_minutes(small_case(kSeed, k), 8, 100'000);
    if (!best || !(best->optimum > 0.0)) continue;
    ++done;
    optimum += best->optimum;
    engine += best->engine;
    CHECK(best->engine >= best->optimum - 1e-9);   // nothing beats the best there is
  }
  REQUIRE(done == wanted);
  MESSAGE("engine's expected minutes over the optimum's: " << engine / optimum);
  if (!quick()) CHECK(engine <= kMostOverOptimum * optimum);
}
