// The notebook through restarts, sudden stops and damaged records.
#include <algorithm>

#include <doctest/doctest.h>

#include "app/app_state.h"
#include "document/circuit_file.h"
#include "document/vehicle_file.h"
#include "memory_host.h"
#include "screens/places.h"

using app::AppState;
using test_app::MemoryHost;

namespace {

std::vector<std::string> names(const AppState& state) {
  std::vector<std::string> list;
  for (const app::Stored& stored : state.desk().notebook().vehicles()) {
    for (const vehicle::PlacedCircuit& each : stored.vehicle.circuits) list.push_back(stored.vehicle.name + ": " + each.plan.name);
  }
  return list;
}

std::string all_text(const AppState& state) {
  std::string text;
  for (const app::Stored& stored : state.desk().notebook().vehicles()) text += stored.text + "\n--\n";
  return text + "open " + (state.editor().has_circuit() ? state.editor().circuit().name : "none");
}

app::CircuitRef circuit_of(const AppState& state, std::uint32_t vehicle, std::size_t place = 0) {
  return {vehicle, state.desk().notebook().find(vehicle)->vehicle.circuits.at(place).id};
}

}  // namespace

TEST_CASE("first start shows the demo, stored at once, and the caution has not been seen") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  REQUIRE(state.editor().has_circuit());
  CHECK(state.editor().circuit().name == circuit::demo_circuit().name);
  CHECK(host.records.count("vehicle/1") == 1);
  CHECK(state.desk().notebook().is_untouched_demo(state.desk().notebook().vehicles().front()));
  CHECK_FALSE(state.settings().preferences().caution_seen);
  CHECK(host.title == "Bench outlets");
  CHECK(host.addresses == std::vector<std::string>{"size"});
}

TEST_CASE("every edit is stored before dispatch returns, in order") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  const std::size_t before = host.log.size();
  REQUIRE(state.editor().dispatch(circuit::SetName{"Awning lights"}));
  REQUIRE(host.log.size() == before + 1);
  CHECK(host.log.back().key == "vehicle/1");
  CHECK(*host.log.back().text == document::write_vehicle(state.editor().vehicle()));
  REQUIRE(state.editor().dispatch(circuit::SetDropLimit{0.03}));
  CHECK(host.log.size() == before + 2);
  // An edit that changes nothing writes nothing and is no step to undo.
  REQUIRE(state.editor().dispatch(circuit::SetDropLimit{0.03}));
  CHECK(host.log.size() == before + 2);
}

TEST_CASE("a restart with the same records gives the same notebook") {
  MemoryHost host;
  std::string before;
  {
    AppState state(host, screens::places(), {}, "");
    state.editor().dispatch(circuit::SetName{"Fridge"});
    state.desk().new_circuit();
    state.editor().dispatch(circuit::SetName{"Pump"});
    state.desk().new_vehicle(circuit::Setting::boat);
    state.desk().duplicate_circuit(circuit_of(state, 1, 1));
    state.desk().open_circuit(circuit_of(state, 1));
    before = all_text(state);
  }
  MemoryHost again;
  AppState state(again, screens::places(), host.stored(), "");
  CHECK(all_text(state) == before);
  CHECK(again.log.empty());   // reading stores nothing
  CHECK(state.editor().circuit().name == "Fridge");
}

TEST_CASE("stopped after any write, nothing that was stored is lost") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.editor().dispatch(circuit::SetName{"Fridge"});
  state.desk().new_circuit();
  state.editor().dispatch(circuit::SetName{"Pump"});
  state.editor().dispatch(circuit::AddOutlet{circuit::kBlock});
  state.desk().duplicate_circuit(circuit_of(state, 1));
  state.desk().delete_circuit(circuit_of(state, 1));
  state.desk().put_back(state.desk().notebook().deleted().back().number);
  state.desk().import_file("two.json", document::write_circuits({circuit::demo_circuit(), circuit::demo_circuit()}));
  state.desk().delete_vehicle(2);
  state.desk().put_back(state.desk().notebook().deleted().back().number);
  state.desk().delete_vehicle(2);
  state.editor().undo();
  REQUIRE(host.log.size() > 12);
  for (std::size_t writes = 0; writes <= host.log.size(); ++writes) {
    CAPTURE(writes);
    const auto records = host.stored_after(writes);
    MemoryHost again;
    AppState stopped(again, screens::places(), records, "");
    std::size_t vehicles = 0;
    for (const platform::StoredRecord& record : records) {
      if (!record.key.starts_with("vehicle/")) continue;
      ++vehicles;
      bool found = false;
      for (const app::Stored& stored : stopped.desk().notebook().vehicles())
        found = found || (app::vehicle_key(stored.number) == record.key && stored.text == record.text);
      CHECK(found);
    }
    if (vehicles > 0) {
      CHECK(stopped.desk().notebook().vehicles().size() == vehicles);
      CHECK(stopped.editor().has_circuit());
    }
    // The next vehicle takes a number that no stored one has.
    const std::size_t before = stopped.desk().notebook().vehicles().size();
    stopped.desk().duplicate_vehicle(stopped.desk().notebook().open().vehicle);
    CHECK(stopped.desk().notebook().vehicles().size() == before + 1);
  }
}

TEST_CASE("the first own circuit takes the demo's place only while it is untouched") {
  using Names = std::vector<std::string>;
  SUBCASE("untouched") {
    MemoryHost host;
    AppState state(host, screens::places(), {}, "");
    state.desk().new_circuit();
    CHECK(names(state) == Names{"My vehicle: New circuit"});
    CHECK(host.records.count("vehicle/1") == 0);
    // The own circuit was safe before the demo went.
    std::size_t stored_at = 0, removed_at = 0;
    for (std::size_t i = 0; i < host.log.size(); ++i) {
      if (host.log[i].key == "vehicle/2") stored_at = i;
      if (host.log[i].key == "vehicle/1" && !host.log[i].text) removed_at = i;
    }
    CHECK(stored_at < removed_at);
  }
  SUBCASE("edited, it stays, and is a vehicle as any other") {
    MemoryHost host;
    AppState state(host, screens::places(), {}, "");
    state.editor().dispatch(circuit::SetDropLimit{0.03});
    state.desk().new_circuit();
    CHECK(names(state) == Names{"Repair trailer: Bench outlets", "Repair trailer: New circuit"});
  }
  SUBCASE("after a restart") {
    MemoryHost host;
    { AppState state(host, screens::places(), {}, ""); }
    MemoryHost again;
    AppState state(again, screens::places(), host.stored(), "");
    state.desk().new_circuit();
    CHECK(names(state) == Names{"My vehicle: New circuit"});
  }
  SUBCASE("a copy of the demo is no demo") {
    MemoryHost host;
    AppState state(host, screens::places(), {}, "");
    state.desk().duplicate_vehicle(1);
    CHECK(names(state) == Names{"Repair trailer (copy): Bench outlets", "Repair trailer: Bench outlets"});
    state.desk().new_vehicle(circuit::Setting::van);
    CHECK(names(state) == Names{"My vehicle: New circuit", "Repair trailer (copy): Bench outlets"});
  }
}

TEST_CASE("a new circuit sits on a spare position of the open vehicle, or the reason is told") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.editor().dispatch(circuit::SetName{"Own"});
  vehicle::Block block = state.editor().vehicle().blocks.front();
  block.positions = std::max(2, state.editor().placed().position);
  REQUIRE(state.editor().change(1, vehicle::SetBlock{block}));
  const int taken = state.editor().placed().position;
  for (int i = 1; i < block.positions; ++i) state.desk().new_circuit();
  std::vector<int> positions;
  for (const auto& each : state.editor().vehicle().circuits) positions.push_back(each.position);
  std::sort(positions.begin(), positions.end());
  for (int i = 0; i < block.positions; ++i) CHECK(positions[static_cast<std::size_t>(i)] == i + 1);
  CHECK(vehicle::at_position(state.editor().vehicle(), block.id, taken)->plan.name == "Own");
  CHECK(state.messages().problem().empty());
  const std::string before = all_text(state);
  state.desk().new_circuit();
  CHECK(state.messages().problem() == "The block has no spare position. Give it more positions, or add a block.");
  CHECK(all_text(state) == before);
  REQUIRE(state.editor().change(1, vehicle::AddBlock{}));
  state.desk().new_circuit();   // the second block has room
  CHECK(state.editor().placed().block == state.editor().vehicle().blocks.back().id);
}

TEST_CASE("a record that can't be read is kept, told, exportable and never written over") {
  const std::string damaged = "{\"format\": \"branchlight-circuit\", \"vers";
  const std::vector<platform::StoredRecord> records{{"vehicle/1", document::write_vehicle(vehicle::demo_vehicle())},
                                                    {"vehicle/7", damaged}, {"vehicle/007", "x"}, {"circuit/3", damaged},
                                                    {"circuit/003", "z"}, {"other", "y"}};
  MemoryHost host;
  AppState state(host, screens::places(), records, "");
  CHECK(state.desk().notebook().vehicles().size() == 1);
  REQUIRE(state.desk().notebook().unread().size() == 2);   // of an older app, too
  for (const app::Unread& each : state.desk().notebook().unread()) {
    CHECK_FALSE(each.why.empty());
    state.desk().export_unread(each.number);
    CHECK(host.files.back().text == damaged);
  }
  CHECK(state.editor().circuit().name == "Bench outlets");
  state.desk().new_circuit();
  state.desk().export_all();
  state.desk().move_vehicle(8, 1);
  for (const test_app::Write& write : host.log) {
    for (const std::string key : {"vehicle/7", "vehicle/007", "circuit/3", "circuit/003", "other"}) CHECK(write.key != key);
  }
  CHECK(state.desk().notebook().find(8) != nullptr);   // numbers go on past it
  const app::Unread unread = state.desk().notebook().unread().front();
  state.desk().delete_unread(unread.number);
  CHECK(state.desk().notebook().unread().size() == 1);
  state.take_offer();
  CHECK(state.desk().notebook().unread().size() == 2);
  CHECK(host.records[unread.key] == damaged);
}

TEST_CASE("a notebook with only unreadable records has no open circuit and does not fall") {
  MemoryHost host;
  AppState state(host, screens::places(), {{"vehicle/3", "broken"}}, "size/outlet/1");
  CHECK_FALSE(state.editor().has_circuit());
  CHECK(host.addresses.back() == "size");
  CHECK_FALSE(state.editor().dispatch(circuit::SetName{"x"}));
  state.editor().undo();
  state.desk().new_circuit();
  CHECK(state.editor().has_circuit());
  CHECK(host.records["vehicle/3"].empty());
  CHECK(state.desk().notebook().vehicles().size() == 1);
}

TEST_CASE("a damaged index costs the order, not the vehicles") {
  const std::string text = document::write_vehicle(vehicle::demo_vehicle());
  for (const std::string index : {"", "order", "order 9 9 9\nopen 77 1\nnext 1", "order 2 x -1 99999999999999999999\nopen",
                                  "\xFF\xFE", "open 2 2", "open 1 99", "moved 1 2 3\nmoved\nmoved 1 1 zz"}) {
    CAPTURE(index);
    MemoryHost host;
    AppState state(host, screens::places(), {{"vehicle/1", text}, {"vehicle/2", text}, {"vehicles", index}}, "");
    CHECK(state.desk().notebook().vehicles().size() == 2);
    CHECK(state.editor().has_circuit());
    state.desk().duplicate_vehicle(1);
    CHECK(state.desk().notebook().find(3) != nullptr);
  }
}

TEST_CASE("deleting the last vehicle leaves an empty notebook that stays empty after a restart") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.desk().delete_vehicle(1);
  CHECK_FALSE(state.editor().has_circuit());
  CHECK_FALSE(state.editor().has_vehicle());
  REQUIRE(state.messages().toast());
  CHECK(state.messages().toast()->offer == app::Toast::Offer::put_back);
  {
    MemoryHost again;
    AppState restarted(again, screens::places(), host.stored(), "");
    CHECK_FALSE(restarted.editor().has_circuit());
  }
  state.take_offer();
  REQUIRE(state.editor().has_circuit());
  CHECK(state.editor().circuit().name == "Bench outlets");
  CHECK(host.records.count("vehicle/1") == 1);
}

TEST_CASE("a vehicle without a circuit stays, and its first circuit goes into it") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.editor().dispatch(circuit::SetPlace{"Van"});
  state.desk().delete_circuit(circuit_of(state, 1));
  CHECK_FALSE(state.editor().has_circuit());
  REQUIRE(state.editor().has_vehicle());
  state.settle();
  state.desk().new_circuit();
  CHECK(names(state) == std::vector<std::string>{"Van: New circuit"});
}

TEST_CASE("a deleted circuit comes back where it stood, by the offer or by undo, and only once") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.editor().dispatch(circuit::SetName{"First"});
  const app::CircuitRef first = circuit_of(state, 1);
  state.desk().duplicate_circuit(first);
  state.desk().duplicate_circuit(first);
  const auto before = names(state);
  state.desk().delete_circuit(first);
  CHECK(names(state).size() == before.size() - 1);
  SUBCASE("by the offer") {
    state.take_offer();
    CHECK(names(state) == before);
    CHECK(state.desk().notebook().deleted().empty());
  }
  SUBCASE("by undo") {
    state.editor().undo();
    CHECK(names(state) == before);
    CHECK(state.desk().notebook().deleted().empty());
  }
  SUBCASE("its position was taken by then: the first spare one") {
    const int position = state.desk().notebook().deleted().back().circuit->position;
    state.editor().change(1, vehicle::PlaceCircuit{circuit_of(state, 1).circuit, state.editor().placed().block, position});
    state.desk().put_back(state.desk().notebook().deleted().back().number);
    CHECK(names(state) == before);
    CHECK(state.desk().notebook().find(first)->position != position);
  }
  SUBCASE("its vehicle is gone too: the vehicle first") {
    const std::uint32_t number = state.desk().notebook().deleted().back().number;
    state.desk().delete_vehicle(1);
    state.desk().put_back(number);
    CHECK_FALSE(state.messages().problem().empty());
    state.desk().put_back(state.desk().notebook().deleted().back().number);
    state.desk().put_back(number);
    CHECK(names(state) == before);
  }
}
