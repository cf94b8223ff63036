// How near the engine's choice of checks comes to the best there is, where the best can be computed:
// one or two outlets, little in hand, some places shut. Prints.
//   optimum_bench [--cases 30] [--seed 1] [--states 300000] [--checks 9]
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "evaluation/optimum.h"

using namespace evaluation;

int main(int count, char** words) {
  std::size_t cases = 30, states = 300000, most_checks = 9;
  std::uint64_t seed = 1;
  for (int k = 1; k + 1 < count; k += 2) {
    const std::string_view word = words[k];
    const long long number = std::atoll(words[k + 1]);
    if (number <= 0) return 2;
    if (word == "--cases") cases = static_cast<std::size_t>(number);
    if (word == "--states") states = static_cast<std::size_t>(number);
    if (word == "--checks") most_checks = static_cast<std::size_t>(number);
    if (word == "--seed") seed = static_cast<std::uint64_t>(number);
  }
  double optimum = 0.0, engine_minutes = 0.0, greedy = 0.0, worst = 1.0;
  std::size_t done = 0, too_big = 0;
  for (std::size_t k = 0; done < cases && k < 20 * cases; ++k) {
    const auto best = best_minutes(small_case(seed, k), most_checks, states);
    if (!best) {
      ++too_big;
      continue;
    }
    if (!(best->optimum > 0.0)) continue;   // nothing to ask: nothing to compare
    ++done;
    optimum += best->optimum;
    engine_minutes += best->engine;
    greedy += best->greedy;
    worst = std::max(worst, best->engine / best->optimum);
    std::printf("%2zu checks, %6zu states: optimum %5.2f min, engine %5.2f, ratio %.3f, other stops %zu; greedy %5.2f\n",
                best->checks, best->states, best->optimum, best->engine, best->engine / best->optimum, best->other_stops,
                best->greedy);
    std::fflush(stdout);
  }
  if (done == 0) return 1;
  std::printf("%zu cases (%zu more were too big): engine's expected minutes over the optimum's: %.3f (worst case %.3f);\n"
              "most information per minute, one step ahead: %.3f\n", done, too_big, engine_minutes / optimum, worst,
              greedy / optimum);
  return 0;
}
