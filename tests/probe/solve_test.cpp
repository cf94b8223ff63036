#include <doctest/doctest.h>

#include "probe/requests.h"

using doctest::Approx;
using requests::ask;
using requests::error;
using requests::Json;

namespace {

Json request(Json more = Json::object()) {
  Json made = {{"do", "solve"}, {"circuit", requests::circuit()}, {"fitted", {{"size", "10awg"}, {"fuse_a", 15}}}};
  for (const auto& item : more.items()) made[item.key()] = item.value();
  return made;
}

Json contact(int outlet, const char* side) { return {{"outlet", outlet}, {"side", side}}; }
Json across(int outlet, const char* with) {
  return {{"red", contact(outlet, "positive")}, {"black", contact(outlet, "negative")}, {"with", with}};
}

}  // namespace

TEST_CASE("healthy: the fuse carries the sum of the devices, each further outlet has less voltage") {
  const Json answer = ask(request());
  CHECK(answer.at("outcome") == "solved");
  const Json& outlets = answer.at("outlets");
  REQUIRE(outlets.size() == 3);
  double sum = 0.0;
  for (const Json& outlet : outlets) sum += outlet.at("current_a").get<double>();
  CHECK(answer.at("fuse_current_a").get<double>() == Approx(sum).epsilon(1e-9));
  CHECK(outlets[0].at("current_a") == 2.0);   // constant current, as rated
  CHECK(outlets[0].at("voltage_v") > outlets[1].at("voltage_v"));
  CHECK(outlets[1].at("voltage_v") > outlets[2].at("voltage_v"));
  // 36 W at whatever the voltage is.
  CHECK(outlets[1]["voltage_v"].get<double>() * outlets[1]["current_a"].get<double>() == Approx(36.0).epsilon(1e-6));
}

TEST_CASE("nothing on: an outlet shows the battery's resting voltage, 12.85 V for lead AGM, less what the meter takes") {
  const Json answer = ask(request({{"loading", {0, 0, 0}}, {"probe", Json::array({across(3, "meter")})}}));
  CHECK(answer.at("fuse_current_a") == 0.0);
  CHECK(answer.at("readings")[0].at("voltage_v").get<double>() == Approx(12.85).epsilon(1e-6));
}

TEST_CASE("a 20 ohm joint: the meter sees full voltage through it, the lamp does not") {
  const Json edits = Json::array({{{"do", "series"}, {"element", "splice"}, {"outlet", 2}, {"side", "positive"}, {"ohm", 20}}});
  const Json answer = ask(request({{"loading", {0, 0, 0}},
                                   {"edits", edits},
                                   {"probe", Json::array({across(2, "meter"), across(2, "lamp"), across(1, "lamp")})}}));
  const Json& readings = answer.at("readings");
  CHECK(readings[0].at("voltage_v").get<double>() == Approx(12.85).epsilon(1e-4));
  // 12.85 V over 20 ohm and a 28.8 ohm lamp: 12.85 * 28.8 / 48.8 = 7.58 V, joints apart.
  CHECK(readings[1].at("voltage_v").get<double>() == Approx(12.85 * 28.8 / 48.8).epsilon(0.005));
  CHECK(readings[2].at("voltage_v").get<double>() == Approx(12.85).epsilon(0.005));
}

TEST_CASE("an open black splice: outlets beyond are dead, and hang in the air; red to the battery still lights") {
  const Json edits = Json::array({{{"do", "open"}, {"element", "splice"}, {"outlet", 2}, {"side", "negative"}}});
  const Json to_battery = {{"red", contact(3, "positive")},
                           {"black", {{"element", "battery"}, {"end", "near"}}},
                           {"with", "lamp"}};
  const Json answer = ask(request({{"loading", {1, 0, 0}},
                                   {"edits", edits},
                                   {"elements", true},
                                   {"probe", Json::array({across(3, "meter"), to_battery})}}));
  CHECK(answer.at("outlets")[0].at("current_a") == 2.0);
  CHECK(answer.at("outlets")[2].at("voltage_v").is_null());
  CHECK(answer.at("readings")[0].at("voltage_v") == 0.0);
  CHECK(answer.at("readings")[1].at("voltage_v").get<double>() > 12.0);
  CHECK(answer.at("elements").size() > 30);
}

TEST_CASE("a short at the far outlet draws far more than the fuse; a swap turns the outlet's polarity") {
  const Json shorted = Json::array({{{"do", "short"}, {"from", contact(3, "positive")}, {"to", contact(3, "negative")}}});
  CHECK(ask(request({{"loading", {0, 0, 0}}, {"edits", shorted}})).at("fuse_current_a").get<double>() > 150.0);
  const Json swapped = Json::array({{{"do", "swap"},
                                     {"first", {{"element", "tail"}, {"outlet", 3}, {"side", "positive"}}},
                                     {"second", {{"element", "tail"}, {"outlet", 3}, {"side", "negative"}}}}});
  const Json answer = ask(request({{"loading", {0, 0, 0}}, {"edits", swapped}, {"probe", Json::array({across(3, "meter"), across(2, "meter")})}}));
  CHECK(answer.at("readings")[0].at("voltage_v").get<double>() == Approx(-12.85).epsilon(1e-4));
  CHECK(answer.at("readings")[1].at("voltage_v").get<double>() == Approx(12.85).epsilon(1e-4));
}

TEST_CASE("battery states: low is lower, charging is higher") {
  const auto at = [](const char* state) {
    return ask(request({{"battery", state}})).at("outlets")[0].at("voltage_v").get<double>();
  };
  CHECK(at("low") < at("resting"));
  CHECK(at("resting") < at("charging"));
}

TEST_CASE("what can not be solved is told") {
  CHECK(error(request({{"fitted", {{"size", "9awg"}, {"fuse_a", 15}}}})) == "size \"9awg\" is not known");
  CHECK(error(request({{"fitted", {{"size", "10awg"}, {"fuse_a", 0}}}})) == "fuse_a is not from 0.1 to 1000.0");
  CHECK(error(request({{"fitted", 3}})) == "\"fitted\" is not an object");
  CHECK(error(request({{"loading", {1, 1}}})) == "\"loading\" needs one number for each outlet");
  CHECK(error(request({{"loading", {1, 1, 2}}})) == "loading is not from 0.0 to 1.0");
  CHECK(error(request({{"battery", "flat"}})) == "\"battery\" is none of \"resting\", \"low\", \"charging\"");
  CHECK(error(request({{"edits", 1}})) == "edits is not a list");
  CHECK(error(request({{"edits", Json::array({1})}})) == "an edit is not an object");
  CHECK(error(request({{"edits", Json::array({{{"do", "melt"}}})}})) == "the edit's \"do\" is none of \"open\", \"series\", \"short\", \"swap\"");
  CHECK(error(request({{"edits", Json::array({{{"do", "open"}, {"element", "fuse"}, {"side", "negative"}}})}})) == "the circuit has no such element");
  CHECK(error(request({{"edits", Json::array({{{"do", "open"}, {"element", "splice"}, {"outlet", 9}}})}})) == "the circuit has no outlet of that number");
  CHECK(error(request({{"edits", Json::array({{{"do", "series"}, {"element", "fuse"}}})}})) == "key \"ohm\" is missing");
  CHECK(error(request({{"edits", Json::array({{{"do", "series"}, {"element", "fuse"}, {"ohm", -1}}})}})) == "\"ohm\" is not from 1e-05 to 1000000000.0");
  CHECK(error(request({{"probe", Json::array({{{"red", contact(0, "positive")}, {"black", contact(1, "negative")}, {"with", "meter"}}})}})) == "a point on the block needs an element");
  CHECK(error(request({{"probe", Json::array({across(1, "thumb")})}})) == "\"with\" is none of \"meter\", \"lamp\"");
  CHECK(error(request({{"probe", Json::array()}, {"wish", 1}})) == "key \"wish\" is not known here");
}
