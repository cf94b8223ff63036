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
const std::map<std::string, std::string> kArgued{
    {"trailer-scene-light", "Provisional: the cause is being put right."},
    {"eu-caravan-awning-light", "Provisional: the cause is being put right."},
    {"van-four-usb-c-60w-capped", "Provisional: the cause is being put right."},
    {"van-lighter-socket-12a-lasting", "Provisional: the cause is being put right."},
    {"eu-van-bike-socket-published", "Provisional: the cause is being put right."},
    {"van-fridge-7m", "Provisional: the cause is being put right."},
    {"eu-van-absorption-fridge-driving", "Provisional: the cause is being put right."},
    {"trailer-cool-box-socket", "Provisional: the cause is being put right."},
    {"van-diesel-heater-2m", "Provisional: the cause is being put right."},
    {"trailer-diesel-heater-8m-volts", "Provisional: the cause is being put right."},
    {"eu-van-diesel-heater", "Provisional: the cause is being put right."},
    {"boat-24v-diesel-heater", "Provisional: the cause is being put right."},
    {"van-water-boiler-200w", "Provisional: the cause is being put right."},
    {"boat-bilge-pump-published", "Provisional: the cause is being put right."},
    {"boat-washdown-pump", "Provisional: the cause is being put right."},
    {"boat-macerator", "Provisional: the cause is being put right."},
    {"van-roof-fan", "Provisional: the cause is being put right."},
    {"boat-windlass-80a", "Provisional: the cause is being put right."},
    {"boat-bow-thruster-175a", "Provisional: the cause is being put right."},
    {"trailer-slide-out", "Provisional: the cause is being put right."},
    {"eu-van-entry-step", "Provisional: the cause is being put right."},
    {"van-inverter-1000w-2m", "Provisional: the cause is being put right."},
    {"van-inverter-1000w-5m", "Provisional: the cause is being put right."},
    {"fixed-48v-inverter-3000w", "Provisional: the cause is being put right."},
    {"feeder-hot-engine-bay", "Provisional: the cause is being put right."},
    {"block-30a-for-45a", "Provisional: the cause is being put right."},
    {"fed-fuse-60c", "Provisional: the cause is being put right."},
    {"rear-sub-block", "Provisional: the cause is being put right."},
    {"three-wires-bundled-published", "Provisional: the cause is being put right."},
    {"eu-van-usb-pair", "Provisional: the cause is being put right."},
    {"marine-eu-windlass-24v", "Provisional: the cause is being put right."},
    {"faa-20a-107ft-1v", "Provisional: the cause is being put right."},
    {"faa-20a-88ft-4v", "Provisional: the cause is being put right."},
    {"faa-10awg-39ft", "Provisional: the cause is being put right."},
    {"bulletin-landing-light-18awg", "Provisional: the cause is being put right."},
    {"boat-panel-breaker-fridge", "Provisional: the cause is being put right."},
    {"eu-van-inverter-300w", "Provisional: the cause is being put right."},
    {"eu-trailer-work-light-chassis", "Provisional: the cause is being put right."},
    {"eu-thin-branch-inline-fuse", "Provisional: the cause is being put right."},
    {"boat-48v-converter", "Provisional: the cause is being put right."},
    {"eu-48v-air-conditioner", "Provisional: the cause is being put right."}};

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
