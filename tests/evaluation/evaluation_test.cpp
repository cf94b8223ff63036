// The judge beside the bench: a small count of random installations, faults and people, held to
// bounds clearly below the aims (meter, honest: 97 % right at the first conclusion, 99.5 % within two;
// 3 % wrong answers: 92 % and 98 %), so that chance does not fail it and a real loss does.
#include <doctest/doctest.h>

#include <cstdlib>

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
