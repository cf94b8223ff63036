// Safety over random vehicles, by a judge that shares no code with the core. A test run takes some ten seconds;
// BRANCHLIGHT_JUDGE_VEHICLES=1000000 runs so many, BRANCHLIGHT_JUDGE_SEED=n on another seed, and
// BRANCHLIGHT_JUDGE_SECONDS=n as many as fit; BRANCHLIGHT_JUDGE_SHOW=n prints up to n circuits on which core and judge
// disagree.
#include <doctest/doctest.h>

#include <array>
#include <chrono>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <string>

#include "judge/adapter.h"
#include "sizing/sizing.h"

namespace {

using judge::Finding;
using judge::What;

std::size_t from_environment(const char* name, std::size_t otherwise) {
  const char* told = std::getenv(name);
  return told == nullptr ? otherwise : static_cast<std::size_t>(std::stoull(told));
}
bool quick() {
  const char* told = std::getenv("BRANCHLIGHT_QUICK");
  return told != nullptr && std::string_view(told) == "1";
}

struct Tally {
  std::size_t vehicles = 0, circuits = 0, answered = 0, none = 0, not_asked = 0, surely_right = 0;
  std::array<std::size_t, static_cast<std::size_t>(What::count)> found{};
  std::size_t shown = 0, show = 0, faulty = 0;

  void add(const std::vector<Finding>& findings, const judge::Circuit& circuit, const judge::Answer& answer,
           const sizing::Answer& said) {
    if (findings.empty()) return;
    ++faulty;
    std::array<bool, static_cast<std::size_t>(What::count)> seen{};
    for (const Finding& finding : findings) seen.at(static_cast<std::size_t>(finding.what)) = true;
    bool fresh = false;
    for (std::size_t k = 0; k < seen.size(); ++k) {
      if (seen[k]) fresh = ++found[k] <= 3 || fresh;
    }
    if (shown == show || !fresh) return;
    ++shown;
    std::cout << "\n  vehicle " << vehicles << ": " << judge_test::line(circuit, answer) << "\n";
    for (const Finding& finding : findings)
      std::cout << "    -> " << words(finding.what) << " (" << finding.outlet << ") " << finding.value << " against "
                << finding.limit << "\n";
    std::cout << "    core: " << said.headline << " " << said.reason << std::endl;
  }
};

void judge_circuit(const vehicle::Vehicle& made, const vehicle::PlacedCircuit& placed, Tally& tally) {
  ++tally.circuits;
  const sizing::Answer said = sizing::size_circuit(vehicle::circuit_of(made, placed.id));
  if (said.verdict == sizing::Verdict::invalid || said.verdict == sizing::Verdict::no_load) {
    ++tally.not_asked;
    return;
  }
  const judge::Circuit circuit = judge_test::describe(made, placed);
  const judge::Answer answer = judge_test::answer_of(circuit, said);
  ++(answer.fits ? tally.answered : tally.none);
  std::vector<Finding> findings = judge::judge_answer(circuit, answer);
  for (const Finding& better : judge::beaten(circuit, answer)) findings.push_back(better);
  tally.add(findings, circuit, answer, said);
  if (answer.fits &&
      judge::judge(circuit, {answer.size, answer.tail, answer.fuse}, judge::View::surely_right, true).empty())
    ++tally.surely_right;
}

}  // namespace

TEST_CASE("random vehicles: every conductor to every device is protected, and no smaller choice beats an answer") {
  const std::size_t seed = from_environment("BRANCHLIGHT_JUDGE_SEED", 9001);
  const std::size_t vehicles = from_environment("BRANCHLIGHT_JUDGE_VEHICLES", quick() ? 300 : 5000);
  judge_test::Engine engine(seed);
  Tally tally;
  tally.show = from_environment("BRANCHLIGHT_JUDGE_SHOW", 3);
  const auto begun = std::chrono::steady_clock::now();
  const double most_seconds = static_cast<double>(from_environment("BRANCHLIGHT_JUDGE_SECONDS", 1000000));
  const auto seconds_since_begun = [&] {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
  };
  while (tally.vehicles < vehicles && seconds_since_begun() < most_seconds) {
    const vehicle::Vehicle made = judge_test::any_vehicle(engine);
    ++tally.vehicles;
    for (const vehicle::PlacedCircuit& placed : made.circuits) judge_circuit(made, placed, tally);
  }
  const double seconds = seconds_since_begun();
  std::cout << "  seed " << seed << ": " << tally.vehicles << " vehicles, " << tally.circuits << " circuits ("
            << tally.answered << " answered, " << tally.none << " none fits, " << tally.not_asked
            << " without a load), " << seconds << " s; disagreements on " << tally.faulty
            << " circuits; of the answered " << tally.surely_right << " right by the harshest reading too\n";
  for (std::size_t k = 0; k < tally.found.size(); ++k) {
    if (tally.found[k] > 0) std::cout << "    " << words(static_cast<What>(k)) << ": " << tally.found[k] << "\n";
  }
  CHECK(tally.faulty == 0);
  CHECK(tally.answered > tally.vehicles / 4);
  CHECK(tally.none > tally.vehicles / 20);
}

TEST_CASE("the judge includes nothing of the program that it judges") {
  for (const char* file : {"description.h", "copper.h", "copper.cpp", "parts.h", "parts.cpp", "volts.h", "volts.cpp",
                           "judge.h", "judge.cpp"}) {
    std::ifstream in(std::string(BRANCHLIGHT_SOURCE_DIR "/tests/judge/") + file);
    REQUIRE(in);
    for (std::string text; std::getline(in, text);) {
      INFO(file, ": ", text);
      CHECK((text.find("#include \"") == text.npos || text.find("#include \"judge/") == 0));
      CHECK(text.find("adapter.h") == text.npos);
    }
  }
}
