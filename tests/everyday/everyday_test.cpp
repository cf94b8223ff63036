// Everyday circuits against the answers of an experienced installer, who wrote them down without
// sight of this program (tests/everyday/README.md). Every difference is argued here, or fails.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdio>
#include <map>

#include "circuit/validate.h"
#include "everyday/everyday_circuit.h"
#include "sizing/sizing.h"

namespace {

using everyday::EverydayCircuit;

// Where we answer otherwise, and why we stand by it. An argument that is no longer needed fails.
const std::map<std::string, std::string> kArgued{};

struct Given {
  bool as_expected = false;
  std::string words;
};

Given answer_to(const EverydayCircuit& each) {
  const circuit::Problems problems = circuit::validate(each.circuit);
  if (!problems.empty()) return {!each.expected.fits, "refused: " + circuit::one_line(problems.front())};
  const sizing::Answer answer = sizing::size_circuit(each.circuit);
  const sizing::Candidate* choice = answer.choice();
  if (choice == nullptr) return {!each.expected.fits, answer.headline};
  const std::string words = std::string(choice->size->id) + ", " + std::to_string(choice->fuse->number()) + " A. " + answer.reason;
  if (!each.expected.fits) return {false, words};
  const auto& wires = each.expected.wire;
  const auto& fuses = each.expected.fuse_a;
  const bool wire = std::find(wires.begin(), wires.end(), choice->size->id) != wires.end();
  const bool fuse = fuses.empty() || std::find(fuses.begin(), fuses.end(), choice->fuse->number()) != fuses.end();
  return {(wire || wires.empty()) && fuse, words};
}

std::string expected_words(const EverydayCircuit& each) {
  std::string words = each.expected.fits ? "" : "none fits ";
  for (const std::string& wire : each.expected.wire) words += wire + " ";
  for (const double fuse : each.expected.fuse_a) words += std::to_string(static_cast<int>(fuse)) + " A ";
  return words;
}

}  // namespace

TEST_CASE("everyday circuits are answered as an experienced installer answers them") {
  const auto all = everyday::read_everyday(BRANCHLIGHT_SOURCE_DIR "/tests/everyday/circuits.json");
  CHECK(all.size() >= 60);
  int same = 0;
  for (const EverydayCircuit& each : all) {
    const Given given = answer_to(each);
    same += given.as_expected ? 1 : 0;
    const bool argued = kArgued.count(each.id) > 0;
    INFO(each.id, ": ", each.story);
    INFO("installer: ", expected_words(each), each.expected.because);
    INFO("we: ", given.words);
    CHECK(given.as_expected != argued);
  }
  std::printf("everyday circuits: %d of %zu as the installer, %zu argued\n", same, all.size(), kArgued.size());
}
