// Random installations, faults and people: how often and how fast tracing ends at the right remedy,
// against the fixed orders of the trade. Prints; judges nothing but the count of unsafe advice.
//   evaluation_bench [--cases 2000] [--seed 1] [--only meter|lamp|device] [--wrong 0.03] [--engine]
//                    [--outlets 6] [--pairs 0.0] [--threads 2] [--mistakes] [--stories]
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string_view>

#include "evaluation/tally.h"

using namespace evaluation;

namespace {

struct Arguments {
  Setting setting;
  bool engine_only = false, mistakes = false, stories = false, one_share = false;
  std::string_view only;
};

bool parse(int count, char** words, Arguments& into) {
  for (int k = 1; k < count; ++k) {
    const std::string_view word = words[k];
    const auto flag = [&](std::string_view name, bool& value) {
      if (word != name) return false;
      value = true;
      return true;
    };
    if (flag("--engine", into.engine_only) || flag("--mistakes", into.mistakes) || flag("--stories", into.stories)) continue;
    if (k + 1 >= count) return false;
    const char* value = words[++k];
    if (word == "--cases") into.setting.cases = static_cast<std::size_t>(std::atoll(value));
    else if (word == "--seed") into.setting.seed = static_cast<std::uint64_t>(std::atoll(value));
    else if (word == "--outlets") into.setting.most_outlets = static_cast<std::size_t>(std::atoll(value));
    else if (word == "--threads") into.setting.threads = static_cast<unsigned>(std::atoi(value));
    else if (word == "--pairs") into.setting.pair_share = std::atof(value);
    else if (word == "--only") into.only = value;
    else if (word == "--wrong") {
      into.setting.wrong_share = std::atof(value);
      into.one_share = true;
    } else return false;
  }
  return into.setting.cases > 0;
}

std::size_t print_setting(const Arguments& arguments, const Setting& setting) {
  std::printf("\n== %s: %zu cases, seed %llu, 1 to %zu outlets\n", setting_name(setting).c_str(), setting.cases,
              static_cast<unsigned long long>(setting.seed), setting.most_outlets);
  print_header();
  const std::vector<Run> runs = run_all(Policy::engine, setting);
  const Tally engine = tally(runs);
  print_row(Policy::engine, engine);
  if (!arguments.engine_only) {
    double fixed_best = 1e300, sparing_best = 1e300, thumb_best = 1e300;
    for (int k = static_cast<int>(Policy::outward); k <= static_cast<int>(Policy::thumb_half); ++k) {
      const auto policy = static_cast<Policy>(k);
      const Tally other = tally(run_all(policy, setting));
      print_row(policy, other);
      double& best = policy <= Policy::half_split ? fixed_best : policy <= Policy::spare_half ? sparing_best : thumb_best;
      best = std::min(best, other.minutes.mean + (policy >= Policy::thumb_outward ? other.repairs_in_vain.mean : 0.0));
    }
    std::printf("engine's minutes over the best fixed order's: %.2f; over the best sparing one's: %.2f; repairs in vain\n"
                "counted in, over the best rule of thumb's: %.2f\n", engine.minutes.mean / fixed_best,
                engine.minutes.mean / sparing_best, (engine.minutes.mean + engine.repairs_in_vain.mean) / thumb_best);
  }
  for (const Run& run : runs) {
    for (const std::string& breach : run.breaches) std::printf("UNSAFE  %s\n", breach.c_str());
  }
  if (arguments.mistakes || arguments.stories) print_mistakes(runs, 20, arguments.stories);
  std::fflush(stdout);
  return engine.breaches;
}

}  // namespace

int main(int count, char** words) {
  Arguments arguments;
  if (!parse(count, words, arguments)) {
    std::fprintf(stderr, "see the head of tests/evaluation/evaluation_bench.cpp\n");
    return 2;
  }
  arguments.setting.keep_stories = arguments.stories;
  std::printf("first, two, end: right remedy and place at the first conclusion, within two, in the end. tie: said that\n"
              "nothing tells the rest apart; sure: right where it did not say so. min: minutes of checks until right.\n"
              "in vain: minutes of repairs that were not it. live: hands asked for, and the proving found volts.\n");
  std::size_t breaches = 0;
  for (const Kit kit : {Kit::meter, Kit::lamp, Kit::device_only}) {
    const std::string_view name = kit == Kit::meter ? "meter" : kit == Kit::lamp ? "lamp" : "device";
    if (!arguments.only.empty() && arguments.only != name) continue;
    for (const double wrong : {0.0, 0.03}) {
      Setting setting = arguments.setting;
      setting.kit = kit;
      if (!arguments.one_share) setting.wrong_share = wrong;
      else if (wrong > 0.0) continue;
      breaches += print_setting(arguments, setting);
    }
  }
  std::printf("\nunsafe advice: %zu\n", breaches);
  return breaches == 0 ? 0 : 1;
}
