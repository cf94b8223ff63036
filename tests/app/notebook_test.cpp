// The notebook through restarts, sudden stops and damaged records.
#include <doctest/doctest.h>

#include "app/app_state.h"
#include "document/circuit_file.h"
#include "memory_host.h"

using app::AppState;
using test_app::MemoryHost;

namespace {

std::vector<std::string> names(const AppState& state) {
  std::vector<std::string> list;
  for (const app::Stored& stored : state.desk().notebook().circuits())
    list.push_back(stored.readable() ? stored.circuit->name : "unreadable");
  return list;
}

std::string all_text(const AppState& state) {
  std::string text;
  for (const app::Stored& stored : state.desk().notebook().circuits()) text += stored.text + "\n--\n";
  return text + "open " + (state.editor().has_circuit() ? state.editor().circuit().name : "none");
}

}  // namespace

TEST_CASE("first start shows the demo, stored at once, and the caution has not been seen") {
  MemoryHost host;
  AppState state(host, {}, "");
  REQUIRE(state.editor().has_circuit());
  CHECK(state.editor().circuit().name == circuit::demo_circuit().name);
  CHECK(host.records.count("circuit/1") == 1);
  CHECK(state.desk().notebook().is_untouched_demo(state.desk().notebook().circuits().front()));
  CHECK_FALSE(state.settings().preferences().caution_seen);
  CHECK(host.title == "Bench outlets");
  CHECK(host.addresses == std::vector<std::string>{"size"});
}

TEST_CASE("every edit is stored before dispatch returns, in order") {
  MemoryHost host;
  AppState state(host, {}, "");
  const std::size_t before = host.log.size();
  REQUIRE(state.editor().dispatch(circuit::SetName{"Awning lights"}));
  REQUIRE(host.log.size() == before + 1);
  CHECK(host.log.back().key == "circuit/1");
  CHECK(*host.log.back().text == document::write_circuit(state.editor().circuit()));
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
    AppState state(host, {}, "");
    state.editor().dispatch(circuit::SetName{"Fridge"});
    state.desk().new_circuit();
    state.editor().dispatch(circuit::SetName{"Pump"});
    state.desk().duplicate_circuit(2);
    state.desk().open_circuit(1);
    before = all_text(state);
  }
  MemoryHost again;
  AppState state(again, host.stored(), "");
  CHECK(all_text(state) == before);
  CHECK(again.log.empty());   // reading stores nothing
  CHECK(state.editor().circuit().name == "Fridge");
}

TEST_CASE("stopped after any write, no circuit that was stored is lost") {
  MemoryHost host;
  AppState state(host, {}, "");
  state.editor().dispatch(circuit::SetName{"Fridge"});
  state.desk().new_circuit();
  state.editor().dispatch(circuit::SetName{"Pump"});
  state.editor().dispatch(circuit::AddOutlet{state.editor().circuit().outlets.back().id});
  state.desk().duplicate_circuit(2);
  state.desk().delete_circuit(1);
  state.desk().put_back_circuit(1);
  state.desk().import_file("two.json", document::write_circuits({circuit::demo_circuit(), circuit::demo_circuit()}));
  state.desk().delete_circuit(2);
  state.editor().undo();
  REQUIRE(host.log.size() > 12);
  for (std::size_t writes = 0; writes <= host.log.size(); ++writes) {
    CAPTURE(writes);
    const auto records = host.stored_after(writes);
    MemoryHost again;
    AppState stopped(again, records, "");
    std::size_t circuits = 0;
    for (const platform::StoredRecord& record : records) {
      if (!record.key.starts_with("circuit/")) continue;
      ++circuits;
      bool found = false;
      for (const app::Stored& stored : stopped.desk().notebook().circuits())
        found = found || (app::circuit_key(stored.number) == record.key && stored.text == record.text);
      CHECK(found);
    }
    if (circuits > 0) {
      CHECK(stopped.desk().notebook().circuits().size() == circuits);
      CHECK(stopped.editor().has_circuit());
    }
    // The next circuit takes a number that no stored one has.
    const std::size_t before = stopped.desk().notebook().circuits().size();
    stopped.desk().duplicate_circuit(stopped.desk().notebook().open()->number);
    CHECK(stopped.desk().notebook().circuits().size() == before + 1);
  }
}

TEST_CASE("the first own circuit takes the demo's place only while it is untouched") {
  SUBCASE("untouched") {
    MemoryHost host;
    AppState state(host, {}, "");
    state.desk().new_circuit();
    CHECK(names(state) == std::vector<std::string>{"New circuit"});
    CHECK(host.records.count("circuit/1") == 0);
    // The own circuit was safe before the demo went.
    std::size_t stored_at = 0, removed_at = 0;
    for (std::size_t i = 0; i < host.log.size(); ++i) {
      if (host.log[i].key == "circuit/2") stored_at = i;
      if (host.log[i].key == "circuit/1" && !host.log[i].text) removed_at = i;
    }
    CHECK(stored_at < removed_at);
  }
  SUBCASE("edited, it stays") {
    MemoryHost host;
    AppState state(host, {}, "");
    state.editor().dispatch(circuit::SetDropLimit{0.03});
    state.desk().new_circuit();
    CHECK(names(state) == std::vector<std::string>{"New circuit", "Bench outlets"});
  }
  SUBCASE("after a restart") {
    MemoryHost host;
    { AppState state(host, {}, ""); }
    MemoryHost again;
    AppState state(again, host.stored(), "");
    state.desk().new_circuit();
    CHECK(names(state) == std::vector<std::string>{"New circuit"});
  }
  SUBCASE("a copy of the demo is no demo") {
    MemoryHost host;
    AppState state(host, {}, "");
    state.desk().duplicate_circuit(1);
    CHECK(names(state) == std::vector<std::string>{"Bench outlets (copy)", "Bench outlets"});
    state.desk().new_circuit();
    CHECK(names(state) == std::vector<std::string>{"New circuit", "Bench outlets (copy)"});
  }
}

TEST_CASE("a record that can't be read is kept, told, exportable and never written over") {
  const std::string damaged = "{\"format\": \"branchlight-circuit\", \"vers";
  const std::vector<platform::StoredRecord> records{
      {"circuit/1", document::write_circuit(circuit::demo_circuit())}, {"circuit/7", damaged}, {"circuit/007", "x"}, {"other", "y"}};
  MemoryHost host;
  AppState state(host, records, "");
  REQUIRE(state.desk().notebook().circuits().size() == 2);
  const app::Stored* bad = state.desk().notebook().find(7);
  REQUIRE(bad != nullptr);
  CHECK_FALSE(bad->readable());
  CHECK_FALSE(bad->why_unreadable.empty());
  CHECK(state.editor().circuit().name == "Bench outlets");
  state.desk().open_circuit(7);
  CHECK(state.editor().circuit().name == "Bench outlets");
  CHECK_FALSE(state.messages().problem().empty());
  state.desk().export_circuit(7);
  REQUIRE(host.files.size() == 1);
  CHECK(host.files.front().text == damaged);
  state.desk().new_circuit();
  state.desk().export_all();
  state.desk().move_circuit(7, 1);
  for (const test_app::Write& write : host.log) {
    CHECK(write.key != "circuit/7");
    CHECK(write.key != "circuit/007");
    CHECK(write.key != "other");
  }
  CHECK(state.desk().notebook().find(8) != nullptr);   // numbers go on past it
}

TEST_CASE("a notebook with only unreadable records has no open circuit and does not fall") {
  MemoryHost host;
  AppState state(host, {{"circuit/3", "broken"}}, "size/outlet/1");
  CHECK_FALSE(state.editor().has_circuit());
  CHECK(app::route_text(state.navigator().route()) == "size");
  CHECK_FALSE(state.editor().dispatch(circuit::SetName{"x"}));
  state.editor().undo();
  state.desk().new_circuit();
  CHECK(state.editor().has_circuit());
  CHECK(state.desk().notebook().circuits().size() == 2);
}

TEST_CASE("a damaged notebook record costs the order, not the circuits") {
  const std::string text = document::write_circuit(circuit::demo_circuit());
  for (const std::string index : {"", "order", "order 9 9 9\nopen 77\nnext 1", "order 2 x -1 99999999999999999999\nopen", "\xFF\xFE", "open 2 2"}) {
    CAPTURE(index);
    MemoryHost host;
    AppState state(host, {{"circuit/1", text}, {"circuit/2", text}, {"notebook", index}}, "");
    CHECK(state.desk().notebook().circuits().size() == 2);
    CHECK(state.editor().has_circuit());
    state.desk().duplicate_circuit(1);
    CHECK(state.desk().notebook().find(3) != nullptr);
  }
}

TEST_CASE("deleting the last circuit leaves an empty notebook that stays empty after a restart") {
  MemoryHost host;
  AppState state(host, {}, "");
  state.desk().delete_circuit(1);
  CHECK_FALSE(state.editor().has_circuit());
  REQUIRE(state.messages().toast());
  CHECK(state.messages().toast()->offer == app::Toast::Offer::put_back);
  {
    MemoryHost again;
    AppState restarted(again, host.stored(), "");
    CHECK_FALSE(restarted.editor().has_circuit());
  }
  state.take_offer();
  REQUIRE(state.editor().has_circuit());
  CHECK(state.editor().circuit().name == "Bench outlets");
  CHECK(host.records.count("circuit/1") == 1);
}

TEST_CASE("a deleted circuit comes back where it stood, with its undo steps") {
  MemoryHost host;
  AppState state(host, {}, "");
  state.editor().dispatch(circuit::SetName{"First"});
  state.desk().duplicate_circuit(1);
  state.desk().duplicate_circuit(1);
  const auto before = names(state);
  state.desk().delete_circuit(1);
  CHECK(names(state).size() == before.size() - 1);
  state.desk().put_back_circuit(1);
  CHECK(names(state) == before);
  state.desk().open_circuit(1);
  CHECK(state.editor().can_undo());
}
