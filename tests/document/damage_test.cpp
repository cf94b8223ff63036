// Damage to a good file: cut at every byte, bytes changed at random. Never a crash, and never
// a vehicle that is not valid.
#include <doctest/doctest.h>

#include <cstdlib>
#include <random>

#include <nlohmann/json.hpp>

#include "document/json_schema.h"
#include "document/vehicle_file.h"
#include "files.h"
#include "fuzz/file_promise.h"

using document::read_vehicles;
using document::write_vehicles;

namespace {

std::vector<std::string> samples() {
  std::vector<std::string> texts;
  for (const char* folder : {"version-1", "version-2"}) {
    for (const auto& path : files::in_folder(folder)) {
      if (path.filename() != "circuits.json") texts.push_back(files::read(path));   // no vehicle takes all of it
    }
  }
  return texts;
}

}  // namespace

TEST_CASE("a file cut at any byte is never read, and is told to be cut short") {
  for (const std::string& text : samples()) {
    const std::size_t last = text.find_last_of('}');
    for (std::size_t bytes = 0; bytes <= last; ++bytes) {
      const auto read = read_vehicles(text.substr(0, bytes));
      REQUIRE(read.vehicles.empty());
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
  const std::vector<std::string> good = samples();
  const nlohmann::json now = files::schema("vehicle.schema.json");
  const std::string telling = "{}[]\",:0123456789-+.eE\\utrfalsn \x00\x80\xFF";
  int broken = 0;
  int still_read = 0;
  for (int round = 0; round < rounds; ++round) {
    std::string text = good[random() % good.size()];
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
    for (const std::string& wrong : {broken_vehicle_promise(text), broken_circuit_promise(text)}) {
      if (wrong.empty()) continue;
      ++broken;
      MESSAGE("round ", round, ", ", wrong, ":\n", text);
    }
    const auto read = read_vehicles(text);
    if (read.vehicles.empty()) continue;
    ++still_read;
    // What the reader takes, its schema describes; version 1's keys are all of version 2's.
    if (read.from_version != document::kFormatVersion) continue;
    const std::string wrong = json_schema::violation(now, nlohmann::json::parse(text.substr(text.find('{')), nullptr, false));
    CHECK_MESSAGE(wrong.empty(), wrong, ":\n", text);
  }
  CHECK(broken == 0);
  CHECK(still_read > rounds / 100);  // else the changes are too rough to test anything but the parser
  MESSAGE(still_read, " of ", rounds, " were still read");
}
