// Every malformed file is answered with the one sentence that stands beside it in
// tests/documents/malformed/expected.txt, and never with a circuit.
#include <doctest/doctest.h>

#include <map>
#include <sstream>

#include "circuit/limits.h"
#include "document/circuit_file.h"
#include "document/vehicle_file.h"
#include "files.h"

namespace {

std::map<std::string, std::string> expected() {
  std::istringstream lines(files::read(files::documents() / "malformed/expected.txt"));
  std::map<std::string, std::string> sentences;
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() || line[0] == '#') continue;
    const std::size_t tab = line.find('\t');
    REQUIRE(tab != std::string::npos);
    sentences[line.substr(0, tab)] = line.substr(tab + 1);
  }
  return sentences;
}

std::string only_problem(const std::string& text) {
  const auto read = document::read_circuits(text);
  CHECK(read.circuits.empty());
  REQUIRE(read.problems.size() == 1);
  return one_line(read.problems[0]);
}

std::string first_problem_of_vehicles(const std::string& text) {
  const auto read = document::read_vehicles(text);
  CHECK(read.vehicles.empty());
  REQUIRE_FALSE(read.problems.empty());
  return one_line(read.problems[0]);
}

}  // namespace

TEST_CASE("each malformed file has its sentence") {
  const auto sentences = expected();
  CHECK(sentences.size() >= 110);
  std::size_t seen = 0;
  for (const auto& path : files::in_folder("malformed")) {
    const std::string name = path.filename().string();
    CAPTURE(name);
    REQUIRE(sentences.count(name) == 1);
    const std::string text = files::read(path);
    CHECK(first_problem_of_vehicles(text) == sentences.at(name));
    // A file of circuits is answered the same by both readers.
    if (name.rfind("vehicle-", 0) != 0 && name != "circuits-for-a-vehicle.json") CHECK(only_problem(text) == sentences.at(name));
    ++seen;
  }
  CHECK(seen == sentences.size());
}

TEST_CASE("500 outlets in a file: one sentence") {
  const std::string text = files::read(files::documents() / "version-1/bench.json");
  const std::string third = "\"id\": 3";
  const std::size_t begin = text.rfind('\n', text.find(third)) + 1;
  const std::size_t end = text.find('\n', begin);
  const std::string line = text.substr(begin, end - begin);
  std::string more;
  for (int id = 4; id <= 500; ++id) {
    std::string copy = line;
    more += ",\n" + copy.replace(copy.find(third), third.size(), "\"id\": " + std::to_string(id));
  }
  std::string long_text = text;
  long_text.insert(end, more);
  const std::string next = "\"next_outlet_id\": 4";
  long_text.replace(long_text.find(next), next.size(), "\"next_outlet_id\": 501");
  CHECK(only_problem(long_text) == "Circuit 1: the circuit has 500 outlets. Give at most 300 outlets in one circuit.");
}

TEST_CASE("too large a file is told before it is read") {
  CHECK(only_problem(std::string(circuit::kMaxFileBytes + 1, '[')) ==
        "The file is larger than 4 MiB. Open a file that Branchlight saved.");
  std::string many = "[0";
  while (many.size() < circuit::kMaxFileBytes - 2) many += ",0";
  CHECK(only_problem(many + "]") == "The file holds more than 500000 values. Open a file that Branchlight saved.");
}

TEST_CASE("of many problems, the first twenty are told") {
  std::string text = files::read(files::documents() / "version-1/bench.json");
  const std::size_t list = text.find("\"outlets\": [") + 12;
  std::string numbers;
  for (int i = 0; i < 1000; ++i) numbers += "7,";
  text.insert(list, numbers);
  const auto read = document::read_circuits(text);
  CHECK(read.circuits.empty());
  CHECK(read.problems.size() == 20);
}
