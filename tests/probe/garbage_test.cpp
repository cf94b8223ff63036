// Any line gets one line back, an object, and never stops the program.
#include <doctest/doctest.h>

#include <cstdlib>
#include <random>

#include "circuit/limits.h"
#include "probe/requests.h"

using requests::ask;
using requests::ask_line;
using requests::Json;

TEST_CASE("lines that are no request are told so") {
  CHECK(ask_line("").at("error") == "the line is not a JSON object");
  CHECK(ask_line("nonsense").at("error") == "the line is not a JSON object");
  CHECK(ask_line("[]").at("error") == "the line is not a JSON object");
  CHECK(ask_line("{}").at("error") == "key \"do\" is missing");
  CHECK(ask_line("{\"do\": 3}").at("error") == "\"do\" is not a text");
  CHECK(ask_line("{\"do\": \"fly\"}").at("error") == "\"do\" is none of \"size\", \"solve\", \"trace\", \"check document\"");
  CHECK(ask_line("{\"do\": \"\xFF\"}").at("error") == "the line is not a JSON object");
  CHECK(ask_line(std::string("{\"do\"\0}", 8)).at("error") == "the line is not a JSON object");
  CHECK(ask_line(std::string(1'000'000, '[')).at("error") == "the request is nested too deep");
  CHECK(ask_line(std::string(1'000'000, '{')).contains("error"));
  CHECK(ask_line(std::string(3 * circuit::kMaxFileBytes, ' ')).at("error") == "the line is too long");
}

TEST_CASE("check document says valid or why not") {
  const Json good = ask({{"do", "check document"}, {"text", requests::read("tests/documents/version-1/export-of-three.json")}});
  CHECK(good.at("valid") == true);
  std::size_t circuits = 0;
  for (const Json& vehicle : good.at("vehicles")) circuits += vehicle.at("circuits").size();
  CHECK(circuits == 3);
  CHECK(good.at("problems").empty());
  const Json bad = ask({{"do", "check document"}, {"text", "{"}});
  CHECK(bad.at("valid") == false);
  CHECK(bad.at("problems")[0].at("sentence") == "The file is cut short.");
  CHECK(ask({{"do", "check document"}, {"text", 1}}).at("error") == "\"text\" is not a text");
  CHECK(ask({{"do", "check document"}}).at("error") == "key \"text\" is missing");
}

TEST_CASE("random bytes, and good requests damaged at random") {
  constexpr std::uint64_t kSeed = 5;
  const int rounds = std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 150 : 3'000;
  MESSAGE("seed ", kSeed);
  std::mt19937_64 random(kSeed);
  const Json element = {{"element", "splice"}, {"outlet", 2}, {"side", "negative"}};
  const Json point = {{"outlet", 2}, {"side", "positive"}};
  const std::string solve =
      Json{{"do", "solve"},
           {"circuit", requests::circuit()},
           {"fitted", {{"size", "10awg"}, {"fuse_a", 15}}},
           {"loading", {1, 0.5, 0}},
           {"battery", "low"},
           {"edits", Json::array({{{"do", "series"}, {"element", "splice"}, {"outlet", 2}, {"ohm", 0.5}},
                                  {{"do", "short"}, {"from", point}, {"to", element}, {"ohm", 1e-3}},
                                  {{"do", "swap"}, {"first", element}, {"second", element}}})},
           {"probe", Json::array({{{"red", point}, {"black", element}, {"with", "lamp"}}})}}
          .dump();
  REQUIRE_FALSE(ask_line(solve).contains("error"));
  const std::string size = Json{{"do", "size"}, {"circuit", requests::circuit()}}.dump();
  const std::string trace =
      Json{{"do", "trace"},
           {"circuit", requests::circuit()},
           {"tools", {"meter", "lamp"}},
           {"symptom", "one-dead"},
           {"outlets", {2}},
           {"neighbours", Json::array({{{"name", "Lights"}, {"fuse_position", 2}}})},
           {"out_of_reach", {"behind 3"}},
           {"told", Json::array({{{"check", "fuse-look"}, {"answer", "blown"}},
                                 {{"check", "volts contact+2 contact-2 in"}, {"reading", -12.6}},
                                 {{"remedy", "fit-fuse"}, {"result", "same"}}})},
           {"list_checks", true}}
          .dump();
  REQUIRE_FALSE(ask_line(trace).contains("error"));
  const std::string telling = "{}[]\",:0123456789-.eE\\ntrue";
  int answered = 0;
  for (int round = 0; round < rounds; ++round) {
    std::string line;
    if (round % 10 == 0) {
      line.resize(random() % 200);
      for (char& c : line) c = static_cast<char>(random() % 256);
    } else {
      line = round % 4 == 0 ? size : round % 4 == 1 ? trace : solve;
      for (std::size_t i = 0; i < 1 + random() % 2; ++i) {
        const std::size_t at = random() % line.size();
        if (random() % 2 == 0) line[at] = telling[random() % telling.size()];
        else line.erase(at, 1 + random() % 4);
      }
    }
    if (!ask_line(line).contains("error")) ++answered;
  }
  CHECK(answered > 0);  // some damage leaves a request that means something: those paths run too
}
