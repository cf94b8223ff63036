#include <doctest/doctest.h>

#include "circuit/circuit.h"
#include "document/circuit_file.h"
#include "probe/requests.h"
#include "sizing/sizing.h"

using requests::ask;
using requests::error;
using requests::Json;

TEST_CASE("size answers what the core answers for the same circuit") {
  const Json answer = ask({{"do", "size"}, {"circuit", requests::circuit()}, {"ladder", true}});
  auto read = document::read_circuits(requests::read("tests/documents/version-1/bench.json"));
  REQUIRE(read.circuits.size() == 1);
  read.circuits[0].outlets[0].run.length = units::Metres(requests::kFirstRunM);
  const sizing::Answer core = sizing::size_circuit(read.circuits[0]);
  REQUIRE(answer.at("ladder").size() == core.ladder.size());
  for (std::size_t i = 0; i < core.ladder.size(); ++i) {
    CHECK(answer["ladder"][i]["size"] == std::string(core.ladder[i].size->id));
    CHECK(answer["ladder"][i]["passes"] == core.ladder[i].passes);
    CHECK(answer["ladder"][i]["judgements"].size() == core.ladder[i].judgements.size());
  }
  CHECK(answer.contains("choice") == (core.choice() != nullptr));
  CHECK(answer.at("reason") == core.reason);
}

TEST_CASE("nothing fits: the verdict says so and fixes are given when asked for") {
  Json circuit = requests::circuit();
  circuit["outlets"][2]["run_m"] = 95;
  circuit["at_most_at_once_a"] = 400;
  circuit["outlets"][2]["load"] = {{"kind", "constant-current"}, {"rated_a", 14}};
  const Json answer = ask({{"do", "size"}, {"circuit", circuit}, {"fixes", true}});
  CHECK(answer.at("verdict") == "none fits");
  CHECK_FALSE(answer.contains("choice"));
  CHECK((answer.at("fixes").contains("why_none") || !answer.at("fixes").at("fixes").empty()));
}

TEST_CASE("no load: nothing to size for") {
  Json circuit = requests::circuit();
  for (Json& outlet : circuit["outlets"]) outlet["load"] = {{"kind", "resistive"}, {"rated_w", 0}};
  CHECK(ask({{"do", "size"}, {"circuit", circuit}}).at("verdict") == "no load");
}

TEST_CASE("a circuit that is wrong gets its sentence") {
  Json circuit = requests::circuit();
  circuit["outlets"][2]["run_m"] = -2;
  const Json answer = ask({{"do", "size"}, {"circuit", circuit}});
  CHECK(answer.at("error") == "Circuit 1, outlet C (Tyre inflator), run: length is -2 m. Give 0.05 m to 100 m.");
  REQUIRE(answer.at("problems").size() == 1);
  CHECK(error({{"do", "size"}}) == "key \"circuit\" is missing");
  CHECK(error({{"do", "size"}, {"circuit", 7}}) == "Circuit 1: this is not an object. Give an object in { }.");
  CHECK(error({{"do", "size"}, {"circuit", requests::circuit()}, {"ladder", 1}}) == "\"ladder\" is not true or false");
  CHECK(error({{"do", "size"}, {"circuit", requests::circuit()}, {"size", 1}}) == "key \"size\" is not known here");
}
