// Damage to a good file: cut at every byte, bytes changed at random. Never a crash, and never
// a circuit that is not valid.
#include <doctest/doctest.h>

#include <cstdlib>
#include <random>

#include "circuit/validate.h"
#include "document/circuit_file.h"
#include "files.h"

using document::read_circuits;
using document::write_circuits;

namespace {

// Valid and stable, or problems with sentences: the promise for any bytes.
bool kept_promise(const std::string& text) {
  const auto read = read_circuits(text);
  if (read.circuits.empty() == read.problems.empty()) return false;
  for (const auto& problem : read.problems) {
    if (problem.sentence.empty() || problem.allowed.empty()) return false;
  }
  for (const auto& c : read.circuits) {
    if (!circuit::validate(c).empty()) return false;
  }
  if (read.circuits.empty()) return true;
  const std::string written = write_circuits(read.circuits);
  const auto again = read_circuits(written);
  return again.circuits.size() == read.circuits.size() && write_circuits(again.circuits) == written;
}

}  // namespace

TEST_CASE("a file cut at any byte is never read as circuits, and is told to be cut short") {
  for (const auto& path : files::in_folder("version-1")) {
    CAPTURE(path.string());
    const std::string text = files::read(path);
    const std::size_t last = text.find_last_of('}');
    for (std::size_t bytes = 0; bytes <= last; ++bytes) {
      const auto read = read_circuits(text.substr(0, bytes));
      REQUIRE(read.circuits.empty());
      REQUIRE(read.problems.size() == 1);
      const std::string told = bytes == 0 ? "The file is empty." : "The file is cut short.";
      if (read.problems[0].sentence != told) {
        CAPTURE(bytes);
        CHECK(one_line(read.problems[0]) == told);
      }
    }
  }
}

TEST_CASE("bytes changed, removed, doubled and moved at random") {
  constexpr std::uint64_t kSeed = 7;
  const int rounds = std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 1'000 : 20'000;
  MESSAGE("seed ", kSeed, ", ", rounds, " rounds");
  std::mt19937_64 random(kSeed);
  std::vector<std::string> samples;
  for (const auto& path : files::in_folder("version-1")) samples.push_back(files::read(path));
  const std::string telling = "{}[]\",:0123456789-+.eE\\utrfalsn \x00\x80\xFF";
  int broken = 0;
  int still_read = 0;
  for (int round = 0; round < rounds; ++round) {
    std::string text = samples[random() % samples.size()];
    const std::size_t changes = 1 + random() % 3;
    for (std::size_t i = 0; i < changes; ++i) {
      const std::size_t at = random() % text.size();
      switch (random() % 5) {
        case 0: text[at] = static_cast<char>(random() % 256); break;
        case 1: text[at] = telling[random() % telling.size()]; break;
        case 2: text.erase(at, 1 + random() % 20); break;
        case 3: text.insert(at, text.substr(random() % text.size(), random() % 60)); break;
        default: text.insert(at, 1, telling[random() % telling.size()]); break;
      }
    }
    if (!kept_promise(text)) {
      ++broken;
      MESSAGE("round ", round, ":\n", text);
    }
    if (!read_circuits(text).circuits.empty()) ++still_read;
  }
  CHECK(broken == 0);
  CHECK(still_read > 0);  // else the changes are too rough to test anything but the parser
  MESSAGE(still_read, " of ", rounds, " were still read");
}
