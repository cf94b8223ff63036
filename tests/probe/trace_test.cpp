// The core's tracing through the probe: the same answers as the core gives, and strict requests.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "diagnosis/tracer.h"
#include "document/circuit_file.h"
#include "probe/requests.h"

using requests::ask;
using requests::error;
using requests::Json;

namespace {

Json trace(const char* symptom, std::vector<int> outlets) {
  return {{"do", "trace"}, {"circuit", requests::circuit()}, {"tools", {"meter", "spare fuse"}},
          {"symptom", symptom}, {"outlets", outlets}};
}
Json told(const char* check, Json answer) {
  return {{"check", check}, {answer.is_number() ? "reading" : "answer", answer}};
}

// The same case by the core's own doors.
diagnosis::Case core_case(diagnosis::Symptom symptom, std::vector<circuit::OutletId> outlets) {
  auto read = document::read_circuits(requests::read("tests/documents/version-1/bench.json"));
  REQUIRE(read.circuits.size() == 1);
  read.circuits[0].outlets[0].run.length = units::Metres(requests::kFirstRunM);
  diagnosis::Case made;
  made.circuit = read.circuits[0];
  made.built = diagnosis::built_throughout(made.circuit, {tables::conductor_by_id("10awg"), nullptr, units::Amperes(15.0)},
                                           diagnosis::Knowledge::known, diagnosis::Protection::protects);
  made.complaint = {symptom, std::move(outlets)};
  made.tools.meter = made.tools.spare_fuse = true;
  return made;
}

}  // namespace

TEST_CASE("trace answers what the core answers, answer by answer") {
  Json request = trace("one-dead", {2});
  request["suspects"] = 10'000;
  request["fitted"] = {{"size", "10awg"}, {"fuse_a", 15}};
  diagnosis::Tracer core(core_case(diagnosis::Symptom::one_dead, {{2}}));
  for (int step = 0; step < 6; ++step) {
    const Json answer = ask(request);
    CAPTURE(answer.value("error", "no error"));
    const diagnosis::Advice advice = core.next();
    REQUIRE(answer.contains("check") == advice.check.has_value());
    const std::vector<diagnosis::Suspect> suspects = core.suspects(10'000);
    REQUIRE(answer.at("suspects").size() == suspects.size());
    double sum = 0.0;
    for (std::size_t i = 0; i < suspects.size(); ++i) {
      CHECK(answer["suspects"][i]["fault"] == diagnosis::fault_key(suspects[i].fault));
      CHECK(std::fabs(answer["suspects"][i]["probability"].get<double>() - suspects[i].probability) < 1e-9);
      sum += answer["suspects"][i]["probability"].get<double>();
    }
    CHECK(std::fabs(sum - 1.0) < 1e-6);
    if (!advice.check) break;
    CHECK(answer["check"]["id"] == advice.check->id);
    for (std::size_t i = 0; i < suspects.size(); ++i) {
      const Json& result = answer["check"]["results"][i];
      const auto predicted = core.predicted(suspects[i].fault, advice.check->id);
      REQUIRE(result.contains("predicted") == predicted.has_value());
      if (predicted && std::isfinite(*predicted)) CHECK(std::fabs(result["predicted"].get<double>() - *predicted) < 1e-8);
      double chances = 0.0;
      for (const auto& chance : result["answers"].items()) chances += chance.value().get<double>();
      CHECK(std::fabs(chances - 1.0) < 1e-6);
    }
    const std::string word(diagnosis::answer_text(advice.check->choices.back().key));
    REQUIRE(core.observe(advice.check->id, diagnosis::word(word)).taken);
    request["told"].push_back({{"check", advice.check->id}, {"answer", word}});
  }
  CHECK(request["told"].size() >= 2);
}

TEST_CASE("readings that can not be are told and passed over, and the trace goes on") {
  Json request = trace("one-dead", {2});
  const char* at_b = "volts contact+2 contact-2 in";
  const Json before = ask(request);
  request["told"] = Json::array({told(at_b, 60.0), told(at_b, "sideways"), told("volts moon+ moon-", "full"),
                                 told("ohms clamp+ clamp- out", -3.0), told("fuse-look", 12.6),
                                 {{"remedy", "hope"}, {"result", "same"}}});
  const Json after = ask(request);
  REQUIRE(after.at("receipts").size() == 6);
  for (const Json& receipt : after["receipts"]) {
    CHECK(receipt.at("taken") == false);
    CHECK_FALSE(receipt.at("words").get<std::string>().empty());
  }
  CHECK(after["receipts"][0]["words"].get<std::string>().find("60.0 V is more than a 12 V circuit can have") == 0);
  CHECK(after.at("suspects") == before.at("suspects"));
  request["told"] = Json::array({told(at_b, -12.6)});
  const Json minus = ask(request);
  CHECK(minus["receipts"][0]["taken"] == true);
  CHECK(minus["receipts"][0]["words"].get<std::string>().find("minus") != std::string::npos);
  CHECK(minus["suspects"][0]["fault"].get<std::string>().find("reversed") == 0);
}

TEST_CASE("a blown fuse: the remedy with its steps, the re-test, and what comes after it") {
  Json request = trace("all-dead", {});
  request["told"] = Json::array({told("fuse-look", "blown"), told("add-up", "within"), told("fuse-swap", "works")});
  const Json found = ask(request);
  REQUIRE(found.at("advice") == "remedy");
  CHECK(found["remedy"]["remedy"] == "fit-fuse");
  CHECK(found["probability"].get<double>() > 0.9);
  CHECK(found["remedy"]["steps"].size() >= 2);
  CHECK_FALSE(found["remedy"]["cautions"].empty());
  CHECK_FALSE(found["remedy"]["retest"]["words"].get<std::string>().empty());
  request["told"].push_back({{"remedy", "fit-fuse"}, {"result", "works"}});
  CHECK(ask(request).at("advice") == "finished");
  request["told"].back()["result"] = "same";
  const Json again = ask(request);
  CHECK(again.at("advice") != "finished");
  CHECK((again.contains("check") || again.contains("remedy")));
}

TEST_CASE("with nothing in reach it says that it can not tell, and gives the order to try") {
  Json request = trace("one-dead", {2});
  request["tools"] = Json::array();
  request["out_of_reach"] = {"battery", "block", "front 1", "behind 1", "front 2", "behind 2", "front 3", "behind 3"};
  Json answer = ask(request);
  for (int step = 0; step < 12 && answer.at("advice") == "check"; ++step) {
    CHECK(answer["check"]["sites"].empty());
    request["told"].push_back({{"check", answer["check"]["id"]}, {"answer", "not sure"}});
    answer = ask(request);
  }
  REQUIRE(answer.at("advice") == "cannot tell");
  REQUIRE(answer.at("to_try").size() > 1);
  CHECK(answer["to_try"][0]["remedy"] == answer["remedy"]["remedy"]);
}

TEST_CASE("answers that no fault explains: it says so and names the odd one by its place in the list") {
  Json request = trace("one-dead", {2});
  Json list = Json::array();
  list.push_back(told("volts moon+ moon-", "full"));   // not taken: places in the list stay
  list.push_back(told("fuse-look", "blown"));
  for (const char* zero : {"volts fuse-wire bus- in", "volts clamp+ clamp- in", "volts contact+1 contact-1 in",
                           "volts splice+2 splice-2 in", "volts tab+1 tab-1 in"}) list.push_back(told(zero, "zero"));
  list.push_back(told("volts splice+1 splice-1 in", "full"));
  for (const char* minus : {"volts bus+ clamp- in", "volts bus+ splice-1 in", "volts fuse-feed bus- in"}) list.push_back(told(minus, "minus"));
  list.push_back(told("block-alive", "no"));
  request["told"] = list;
  const Json answer = ask(request);
  CHECK(answer.at("advice") == "none fits");
  CHECK_FALSE(answer.at("words").get<std::string>().empty());
  if (answer.contains("odd")) {
    CHECK(answer["odd"].get<std::size_t>() > 0);
    CHECK(answer["odd"].get<std::size_t>() < list.size());
    CHECK(answer["receipts"][answer["odd"].get<std::size_t>()]["taken"] == true);
  }
}

TEST_CASE("wire and fuse: as told, or unknown and then no rating in any words") {
  Json request = trace("all-dead", {});
  request["told"] = Json::array({told("fuse-look", "blown"), told("add-up", "within"), told("fuse-swap", "works")});
  const Json nothing = ask(request);   // sizing would choose 15 A for this circuit
  CHECK(nothing.at("fitted") == Json{{"size", nullptr}, {"fuse_a", nullptr}, {"fuse", "not judged"}});
  CHECK(nothing.dump().find(" A fuse") == std::string::npos);
  request["fitted"] = {{"size", "14awg"}, {"fuse_a", 7.5}};
  const Json as_told = ask(request);
  CHECK(as_told.at("fitted") == Json{{"size", "14awg"}, {"fuse_a", 7.5}, {"fuse", "protects the wire"}});
  CHECK(as_told.dump().find("7.5 A") != std::string::npos);
  request["fitted"] = {{"size", "18awg"}, {"fuse_a", 30}};
  const Json too_large = ask(request);
  CHECK(too_large.at("fitted").at("fuse") == "too large");
  CHECK(too_large.dump().find("30 A") == std::string::npos);
  request["fitted"] = {{"size", "14awg"}};
  const Json unknown = ask(request);
  CHECK(unknown.at("fitted").at("fuse_a").is_null());
  CHECK(unknown.dump().find(" A fuse") == std::string::npos);
}

TEST_CASE("every check is listed, and each can be answered in its own words") {
  Json request = trace("several-dead", {2, 3});
  request["neighbours"] = Json::array({{{"name", "Lights"}, {"fuse_position", 2}}, {{"name", "Pump"}, {"fuse_position", 7}, {"same_loom", false}}});
  request["list_checks"] = true;
  const Json answer = ask(request);
  REQUIRE(answer.at("checks").size() > 50);
  Json all = Json::array();
  for (const Json& check : answer["checks"]) {
    REQUIRE(check.at("answers").size() >= 2);
    CHECK_FALSE(check.at("question").get<std::string>().empty());
    if (all.size() < 150) all.push_back({{"check", check["id"]}, {"answer", check["answers"][0]["answer"]}});
  }
  request["told"] = all;
  const Json told = ask(request);   // kept: a loop over a part of what is not, reads what is gone
  for (const Json& receipt : told.at("receipts")) CHECK(receipt.at("taken") == true);
}

TEST_CASE("a request to trace is strict") {
  Json bad = trace("one-dead", {2});
  bad["symptoms"] = 1;
  CHECK(error(bad) == "key \"symptoms\" is not known here");
  CHECK(error({{"do", "trace"}, {"circuit", requests::circuit()}}) == "key \"symptom\" is missing");
  CHECK(error(trace("haunted", {})).find("\"symptom\" is none of \"one-dead\", \"several-dead\"") == 0);
  CHECK(error(trace("one-dead", {9})) == "the circuit has no outlet of that number");
  CHECK(error(trace("one-dead", {})) == "Complaint: no outlet is named. Say which outlet it is.");
  Json blind = trace("volts-but-dead", {2});
  blind["tools"] = {"lamp"};
  CHECK(error(blind).find("no meter is in hand") != std::string::npos);
  const auto with = [](const char* key, Json value) {
    Json request = trace("one-dead", {2});
    request[key] = std::move(value);
    return error(request);
  };
  CHECK(with("tools", {"hammer"}) == "a tool is none of \"meter\", \"lamp\", \"device\", \"spare fuse\"");
  CHECK(with("generic", "awg") == "\"circuit\" and \"generic\" do not go together");
  CHECK(with("out_of_reach", {"behind 9"}).find("a site is") == 0);
  CHECK(with("suspects", 1.5) == "\"suspects\" is not a whole number");
  CHECK(with("neighbours", Json::array({{{"name", "Lights"}}})) == "key \"fuse_position\" is missing");
  CHECK(with("neighbours", Json::array({{{"name", "Lights"}, {"fuse_position", 4}}})) == "a neighbour sits at this circuit's own fuse position");
  CHECK(with("fitted", {{"fuse_a", 15}}) == "key \"size\" is missing");
  CHECK(with("told", Json::array({{{"check", "fuse-look"}}})) == "a check needs an \"answer\" or a \"reading\"");
  CHECK(with("told", Json::array({{{"check", "fuse-look"}, {"answer", "whole"}, {"sure", true}}})) == "key \"sure\" is not known here");
  CHECK(with("told", Json::array({{{"remedy", "fit-fuse"}}})) == "key \"result\" is missing");
  CHECK(with("told", Json::array({{{"check", "fuse-look"}, {"reading", "a lot"}}})) == "\"reading\" is not a number");
}
