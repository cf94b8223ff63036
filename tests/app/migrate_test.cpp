// Records of version 1 into vehicles: whole, at any moment of being stopped, and on a full device.
#include <algorithm>
#include <fstream>
#include <sstream>

#include <doctest/doctest.h>

#include "app/app_state.h"
#include "app/migrate.h"
#include "app/trace_record.h"
#include "app/vehicle_index.h"
#include "document/circuit_file.h"
#include "memory_host.h"
#include "screens/places.h"

using app::AppState;
using test_app::MemoryHost;
using Records = std::vector<platform::StoredRecord>;

namespace {

circuit::Circuit named(const std::string& name, const std::string& place, int position) {
  circuit::Circuit made = circuit::demo_circuit();
  made.name = name;
  made.place = place;
  made.fuse_position = position;
  return made;
}

const std::string kRunning = "symptom all-dead\ntools meter\n";
const std::string kKept = "date 2026-11-20\ncircuit Bench\ncomplaint Nothing works\ntold Is it on?\tYes\noutcome The fuse was blown.\n";

// What an app of version 1 left: two circuits in a van, one of no place, one that can not be read.
Records version_1() {
  return {{"circuit/1", document::write_circuit(named("Bench", "Van", 1))},
          {"circuit/2", document::write_circuit(named("Pump", "Van", 2))},
          {"circuit/5", document::write_circuit(named("Lights", "", 1))},
          {"circuit/7", "{ damaged"},
          {"fitted/1", "size 10awg\nfuse 15\n"},
          {"notebook", "order 2 7 1 5\nopen 1\nnext 8\n"},
          {"picked/2", "1 2"},
          {"preferences", "caution-seen yes\n"},
          {"trace/1", kRunning},
          {"trace/1/2", kKept},
          {"trace/1/3", kKept},
          {"trace/1/4", kKept + "newer than this app\n"},
          {"trace/0", kRunning},
          {"trace/0/1", kKept}};
}

void start_from(MemoryHost& host, const Records& records) {
  for (const platform::StoredRecord& each : records) host.before_log[each.key] = host.records[each.key] = each.text;
}

// Every circuit of version_1() that can be read, with all that belongs to it.
void check_whole(const AppState& state) {
  const auto& vehicles = state.desk().notebook().vehicles();
  REQUIRE(vehicles.size() == 2);
  const vehicle::Vehicle& van = vehicles[0].vehicle;
  CHECK(van.name == "Van");
  REQUIRE(van.circuits.size() == 2);
  CHECK(van.circuits[0].plan.name == "Pump");
  CHECK(van.circuits[1].plan.name == "Bench");
  CHECK(van.circuits[0].position == 2);
  CHECK(van.circuits[1].position == 1);
  CHECK(vehicles[1].vehicle.circuits.at(0).plan.name == "Lights");
  REQUIRE(van.circuits[1].built);
  CHECK(van.circuits[1].built->fuse == units::Amperes(15.0));
  CHECK(van.circuits[1].built->circuit.outlets.front().run.size == "10awg");
  REQUIRE(van.circuits[1].traces.size() == 2);
  CHECK(van.circuits[1].traces[0].number == 2);
  CHECK(van.circuits[1].traces[0].told.at(0).answer == "Yes");
  CHECK(state.editor().circuit().name == "Bench");
  REQUIRE(state.desk().notebook().unread().size() == 1);
  CHECK(state.desk().notebook().unread()[0].key == "circuit/7");
  // Seen through the vehicle, each circuit is what it was.
  const circuit::Circuit bench = vehicle::circuit_of(van, van.circuits[1].id);
  circuit::Circuit alone = bench;
  alone.supply.beside = units::Amperes(0.0);   // its neighbour's, which is new
  CHECK(document::write_circuit(alone) == document::write_circuit(named("Bench", "Van", 1)));
}

}  // namespace

TEST_CASE("circuits of version 1 are vehicles now, with what was fitted, traced and picked") {
  MemoryHost host;
  start_from(host, version_1());
  AppState state(host, screens::places(), version_1(), "trace");
  check_whole(state);
  state.settle();
  CHECK(state.trace_desk().running());
  CHECK(state.trace_desk().shelf().kept().size() == 2);
  state.desk().open_circuit({1, state.desk().notebook().find(1)->vehicle.circuits[0].id});
  state.navigator().go(app::Route::at(app::Screen::trace));
  state.settle();
  CHECK(state.trace_desk().setup().picked().size() == 2);
  // Nothing old has left the device before the new is seen to be there.
  for (const platform::StoredRecord& each : version_1()) {
    if (each.key != "trace/0") CHECK(host.records.count(each.key) == 1);
  }
}

TEST_CASE("the old records go at the next start, and only those that arrived") {
  MemoryHost host;
  start_from(host, version_1());
  { AppState state(host, screens::places(), version_1(), ""); }
  MemoryHost next;
  start_from(next, host.stored());
  AppState state(next, screens::places(), next.stored(), "");
  check_whole(state);
  for (const std::string key : {"circuit/1", "circuit/2", "circuit/5", "fitted/1", "notebook", "picked/2", "trace/1", "trace/1/2", "trace/1/3"})
    CHECK_MESSAGE(next.records.count(key) == 0, key);
  CHECK(next.records["circuit/7"] == "{ damaged");
  CHECK(next.records.count("trace/1/4") == 1);   // a newer app's
  CHECK(next.records["trace/0/1"] == kKept);
  MemoryHost third;
  AppState again(third, screens::places(), next.stored(), "");
  check_whole(again);
  CHECK(third.log.empty());
}

TEST_CASE("stopped after any write of two starts, every circuit is there once") {
  MemoryHost first;
  start_from(first, version_1());
  { AppState state(first, screens::places(), version_1(), ""); }
  REQUIRE(first.log.size() >= 5);
  for (std::size_t writes = 0; writes <= first.log.size(); ++writes) {
    CAPTURE(writes);
    MemoryHost second;
    start_from(second, first.stored_after(writes));
    AppState state(second, screens::places(), second.stored(), "");
    check_whole(state);
    for (std::size_t then = 0; then <= second.log.size(); ++then) {
      CAPTURE(then);
      MemoryHost third;
      start_from(third, second.stored_after(then));
      AppState last(third, screens::places(), third.stored(), "");
      check_whole(last);
    }
  }
}

TEST_CASE("a vehicle that never got to a full device is made again from what it came from") {
  MemoryHost host;
  start_from(host, version_1());
  host.on_full = [](std::string_view) {};   // nothing is stored at all
  { AppState state(host, screens::places(), version_1(), ""); check_whole(state); }
  MemoryHost next;
  start_from(next, host.stored());
  { AppState state(next, screens::places(), next.stored(), ""); check_whole(state); }
  // And when only the vehicle's own record is missing.
  Records lost;
  for (const platform::StoredRecord& each : next.stored()) {
    if (each.key != "vehicle/1") lost.push_back(each);
  }
  MemoryHost third;
  start_from(third, lost);
  AppState state(third, screens::places(), lost, "");
  std::vector<std::string> names;
  for (const app::Stored& stored : state.desk().notebook().vehicles()) {
    for (const auto& placed : stored.vehicle.circuits) names.push_back(placed.plan.name);
  }
  std::sort(names.begin(), names.end());
  CHECK(names == std::vector<std::string>{"Bench", "Lights", "Pump"});
}

TEST_CASE("a vehicle that was deleted stays deleted, and an old circuit that was edited since comes in anew") {
  MemoryHost host;
  start_from(host, version_1());
  {
    AppState state(host, screens::places(), version_1(), "");
    state.desk().delete_vehicle(2);
  }
  Records records = host.stored();
  for (platform::StoredRecord& each : records) {
    if (each.key == "circuit/1") each.text = document::write_circuit(named("Edited in an old tab", "Van", 1));
  }
  MemoryHost next;
  start_from(next, records);
  AppState state(next, screens::places(), records, "");
  const auto& vehicles = state.desk().notebook().vehicles();
  REQUIRE(vehicles.size() == 2);
  CHECK(vehicles[0].vehicle.circuits.at(0).plan.name == "Edited in an old tab");
  CHECK(vehicles[1].vehicle.circuits.size() == 2);
  CHECK(next.records.count("circuit/5") == 0);
}

TEST_CASE("an empty notebook of version 1 stays empty, and its demo is still the demo") {
  {
    MemoryHost host;
    AppState state(host, screens::places(), {{"notebook", "order\nopen 0\nnext 4\n"}}, "");
    CHECK_FALSE(state.editor().has_circuit());
  }
  MemoryHost host;
  AppState state(host, screens::places(), {{"circuit/1", document::write_circuit(circuit::demo_circuit())}, {"notebook", "order 1\nopen 1\ndemo 1\nnext 2\n"}}, "");
  CHECK(state.desk().notebook().has_untouched_demo());
}

TEST_CASE("every sample of version 1 comes in") {
  for (const std::string name : {"bench.json", "every-key.json"}) {
    CAPTURE(name);
    std::ifstream file(std::string(BRANCHLIGHT_SOURCE_DIR) + "/tests/documents/version-1/" + name);
    std::stringstream text;
    text << file.rdbuf();
    REQUIRE_FALSE(text.str().empty());
    MemoryHost host;
    AppState state(host, screens::places(), {{"circuit/4", text.str()}}, "");
    CHECK(state.desk().notebook().unread().empty());
    REQUIRE(state.editor().has_circuit());
    const auto read = document::read_circuits(text.str());
    CHECK(state.editor().circuit().name == read.circuits.at(0).name);
    CHECK(state.editor().circuit().outlets.size() == read.circuits.at(0).outlets.size());
  }
}

TEST_CASE("records of any bytes neither fall nor cost another's") {
  const std::string good = document::write_circuit(named("Bench", "Van", 1));
  for (const std::string text : {"", "\xFF\xFE", "null", "[]", "moved 1 1 1", "size\nfuse nan\n", "order 1 1 1\nopen 1\n"}) {
    for (const std::string key : {"notebook", "vehicles", "fitted/1", "trace/1", "trace/1/1", "picked/1", "circuit/2", "vehicle/1", "trace/0", "running/1/2"}) {
      CAPTURE(text);
      CAPTURE(key);
      MemoryHost host;
      const Records records{{"circuit/1", good}, {key, text}};
      start_from(host, records);
      AppState state(host, screens::places(), records, "trace");
      state.settle();
      CHECK(state.editor().has_circuit());
      CHECK(state.editor().circuit().name == "Bench");
    }
  }
}
