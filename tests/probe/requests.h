// Requests for the probe's tests.
#pragma once

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>

#include "probe/answer_line.h"

namespace requests {

using Json = nlohmann::ordered_json;

inline std::string read(const std::string& path) {
  std::ifstream file(std::string(BRANCHLIGHT_SOURCE_DIR) + "/" + path, std::ios::binary);
  REQUIRE_MESSAGE(file.good(), path);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// The bench of the kept sample, its first run cut to where 10 AWG serves.
constexpr double kFirstRunM = 2.9;
inline Json circuit() {
  Json circuit = Json::parse(read("tests/documents/version-1/bench.json")).at("circuits").at(0);
  circuit["outlets"][0]["run_m"] = kFirstRunM;
  return circuit;
}

// The answer, which has to be one line and an object.
inline Json ask_line(const std::string& line) {
  const std::string answer = probe::answer_line(line);
  CHECK(answer.find('\n') == std::string::npos);
  Json parsed = Json::parse(answer, nullptr, false);
  REQUIRE(parsed.is_object());
  return parsed;
}
inline Json ask(const Json& request) { return ask_line(request.dump()); }
inline std::string error(const Json& request) { return ask(request).value("error", "no error"); }

}  // namespace requests
