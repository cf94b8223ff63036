// Edits, refusals, undo across circuits, and a store that fails.
#include <doctest/doctest.h>

#include <random>

#include "app/app_state.h"
#include "document/circuit_file.h"
#include "memory_host.h"

using app::AppState;
using test_app::MemoryHost;

TEST_CASE("a refused edit says why in one line and changes nothing") {
  MemoryHost host;
  AppState state(host, {}, "");
  const std::string before = document::write_circuit(state.circuit());
  const std::size_t writes = host.log.size();
  const circuit::OutletId a = state.circuit().outlets.front().id;
  const circuit::Edit bad[] = {
      circuit::SetRun{a, units::Metres(-2.0)}, circuit::SetRun{a, units::Metres(std::nan(""))},
      circuit::SetName{""}, circuit::SetName{std::string(41, 'W')}, circuit::SetName{"\xC3\x28"},
      circuit::SetDropLimit{5.0}, circuit::SetAtMostAtOnce{units::Amperes(0.0)},
      circuit::FeedOutletFrom{a, state.circuit().outlets.back().id}, circuit::RemoveOutlet{circuit::OutletId{99}}};
  for (const circuit::Edit& edit : bad) {
    CAPTURE(edit.index());
    CHECK_FALSE(state.dispatch(edit));
    CHECK_FALSE(state.problem().empty());
    CHECK(state.problem().find('\n') == std::string::npos);
  }
  CHECK(document::write_circuit(state.circuit()) == before);
  CHECK(host.log.size() == writes);
  CHECK_FALSE(state.can_undo());
  CHECK(state.dispatch(circuit::SetName{"Good"}));
  CHECK(state.problem().empty());
}

TEST_CASE("undo and redo belong to each circuit") {
  MemoryHost host;
  AppState state(host, {}, "");
  state.dispatch(circuit::SetName{"One"});
  state.duplicate_circuit(1);
  CHECK_FALSE(state.can_undo());
  state.dispatch(circuit::SetName{"Two"});
  state.open_circuit(1);
  state.undo();
  CHECK(state.circuit().name == "Bench outlets");
  state.open_circuit(2);
  CHECK(state.circuit().name == "Two");
  state.undo();
  CHECK(state.circuit().name == "One (copy)");
  state.redo();
  CHECK(state.circuit().name == "Two");
  state.open_circuit(1);
  state.redo();
  CHECK(state.circuit().name == "One");
  CHECK(host.records["circuit/1"] == document::write_circuit(state.circuit()));
}

TEST_CASE("steps of one held finger are one step to undo") {
  MemoryHost host;
  AppState state(host, {}, "");
  const circuit::OutletId a = state.circuit().outlets.front().id;
  const double run = state.circuit().outlets.front().run.length.number();
  for (int i = 1; i <= 5; ++i) state.dispatch(circuit::SetRun{a, units::Metres(run + 0.1 * i)}, "run/1");
  state.end_join();
  state.dispatch(circuit::SetRun{a, units::Metres(9.0)}, "run/1");
  state.undo();
  CHECK(state.circuit().outlets.front().run.length.number() == doctest::Approx(run + 0.5));
  state.undo();
  CHECK(state.circuit().outlets.front().run.length.number() == doctest::Approx(run));
  CHECK_FALSE(state.can_undo());
}

TEST_CASE("removing an outlet closes its sheet and offers it back") {
  MemoryHost host;
  AppState state(host, {}, "");
  const circuit::OutletId b = state.circuit().outlets[1].id;
  state.go(app::Route::at_outlet(b));
  state.dispatch(circuit::RemoveOutlet{b});
  CHECK(app::route_text(state.route()) == "size");
  REQUIRE(state.toast());
  CHECK(state.toast()->offer == app::Toast::Offer::undo_edit);
  state.take_toast_offer();
  CHECK(circuit::find_outlet(state.circuit(), b) != nullptr);
}

TEST_CASE("results follow the circuit") {
  MemoryHost host;
  AppState state(host, {}, "");
  REQUIRE(state.answer().choice() != nullptr);
  const double area = state.answer().choice()->size->area.number();
  state.dispatch(circuit::SetAtMostAtOnce{units::Amperes(1.0)});
  REQUIRE(state.answer().choice() != nullptr);
  CHECK(state.answer().choice()->size->area.number() < area);
  state.undo();
  CHECK(state.answer().choice()->size->area.number() == area);
  // Another circuit with its own answer, though the edit count may be alike.
  state.new_circuit();
  CHECK(state.answer().verdict == sizing::Verdict::no_load);
}

TEST_CASE("a fix taken over can be undone, and a split makes a second circuit") {
  MemoryHost host;
  AppState state(host, {}, "");
  state.dispatch(circuit::SetName{"Bench"});
  sizing::Fix split;
  split.kind = sizing::FixKind::split;
  split.title = "Split";
  split.result = {circuit::demo_circuit(), circuit::demo_circuit()};
  split.result[0].name = "Bench 1";
  split.result[1].name = "Bench 2";
  state.use_fix(split);
  CHECK(state.circuit().name == "Bench 1");
  CHECK(state.notebook().circuits().size() == 2);
  CHECK(state.notebook().open()->number == 1);
  state.undo();
  CHECK(state.circuit().name == "Bench");
}

TEST_CASE("a store that fails is told until it is solved, and nothing typed is lost") {
  MemoryHost host;
  AppState state(host, {}, "");
  std::vector<std::string> refused;
  host.on_full = [&](std::string_view key) { refused.emplace_back(key); };
  state.dispatch(circuit::SetName{"Kept in memory"});
  for (const std::string& key : refused) state.store_failed(key, "the device is full.");
  CHECK(state.store_trouble() == "Not saved: the device is full.");
  refused.clear();
  state.retry_store();
  REQUIRE(refused == std::vector<std::string>{"circuit/1"});
  state.store_failed("circuit/1", "the device is full");
  CHECK_FALSE(state.store_trouble().empty());
  host.on_full = nullptr;
  // The next write of anything takes what failed along.
  state.set_preferences(state.preferences());
  CHECK(state.store_trouble().empty());
  CHECK(host.records["circuit/1"] == document::write_circuit(state.circuit()));
}

TEST_CASE("a failed removal is tried again too") {
  MemoryHost host;
  AppState state(host, {}, "");
  host.on_full = [](std::string_view) {};
  state.delete_circuit(1);
  state.store_failed("circuit/1", "busy");
  host.on_full = nullptr;
  state.retry_store();
  CHECK(host.records.count("circuit/1") == 0);
  CHECK(state.store_trouble().empty());
}

TEST_CASE("random edits: what is stored is always what is shown") {
  constexpr unsigned kSeed = 20261125;
  MESSAGE("seed " << kSeed);
  std::mt19937_64 random(kSeed);
  MemoryHost host;
  AppState state(host, {}, "");
  for (int step = 0; step < 400; ++step) {
    const auto& outlets = state.circuit().outlets;
    const circuit::OutletId id = outlets.empty() ? circuit::kBlock : outlets[random() % outlets.size()].id;
    switch (random() % 8) {
      case 0: state.dispatch(circuit::AddOutlet{id}); break;
      case 1: state.dispatch(circuit::InsertOutlet{id}); break;
      case 2: state.dispatch(circuit::RemoveOutlet{id}); break;
      case 3: state.dispatch(circuit::SetRun{id, units::Metres(static_cast<double>(random() % 1200) / 10.0)}); break;
      case 4: state.undo(); break;
      case 5: state.redo(); break;
      case 6: state.dispatch(circuit::SetDropLimit{static_cast<double>(random() % 30) / 100.0}); break;
      default: state.dispatch(circuit::MoveOutlet{id, random() % 2 == 0 ? 1 : -1}); break;
    }
    REQUIRE(host.records["circuit/1"] == document::write_circuit(state.circuit()));
  }
  MemoryHost again;
  AppState restarted(again, host.stored(), "");
  CHECK(document::write_circuit(restarted.circuit()) == document::write_circuit(state.circuit()));
}
