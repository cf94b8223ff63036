// Edits, refusals, undo across circuits, and a store that fails.
#include <doctest/doctest.h>

#include <random>

#include "app/app_state.h"
#include "document/vehicle_file.h"
#include "memory_host.h"
#include "screens/places.h"

using app::AppState;
using test_app::MemoryHost;

TEST_CASE("a refused edit says why in one line and changes nothing") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  const std::string before = document::write_vehicle(state.editor().vehicle());
  const std::size_t writes = host.log.size();
  const circuit::OutletId a = state.editor().circuit().outlets.front().id;
  const circuit::Edit bad[] = {
      circuit::SetRun{a, units::Metres(-2.0)}, circuit::SetRun{a, units::Metres(std::nan(""))},
      circuit::SetName{""}, circuit::SetName{std::string(41, 'W')}, circuit::SetName{"\xC3\x28"},
      circuit::SetDropLimit{5.0}, circuit::SetAtMostAtOnce{units::Amperes(0.0)},
      circuit::FeedOutletFrom{a, state.editor().circuit().outlets.back().id}, circuit::RemoveOutlet{circuit::OutletId{99}}};
  for (const circuit::Edit& edit : bad) {
    CAPTURE(edit.index());
    CHECK_FALSE(state.editor().dispatch(edit));
    CHECK_FALSE(state.messages().problem().empty());
    CHECK(state.messages().problem().find('\n') == std::string::npos);
  }
  CHECK(document::write_vehicle(state.editor().vehicle()) == before);
  CHECK(host.log.size() == writes);
  CHECK_FALSE(state.editor().can_undo());
  CHECK(state.editor().dispatch(circuit::SetName{"Good"}));
  CHECK(state.messages().problem().empty());
}

TEST_CASE("undo and redo are of the open vehicle, and open the circuit that was changed") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  const app::CircuitRef one = state.editor().current().circuit;
  state.editor().dispatch(circuit::SetName{"One"});
  state.desk().duplicate_circuit(one);
  const app::CircuitRef two = state.editor().current().circuit;
  CHECK(two.vehicle == one.vehicle);
  state.editor().dispatch(circuit::SetName{"Two"});
  state.desk().open_circuit(one);
  CHECK(state.editor().undo_what() == "rename the circuit");
  state.editor().undo();
  CHECK(state.editor().current().circuit == two);
  CHECK(state.editor().circuit().name == "One (copy)");
  state.editor().redo();
  CHECK(state.editor().circuit().name == "Two");
  state.editor().undo();
  state.editor().undo();
  CHECK(state.editor().current().circuit == one);
  CHECK(state.editor().vehicle().circuits.size() == 1);
  state.editor().undo();
  CHECK(state.editor().circuit().name == "Bench outlets");
  CHECK_FALSE(state.editor().can_undo());
  for (int i = 0; i < 3; ++i) state.editor().redo();
  CHECK(state.editor().vehicle().circuits.size() == 2);
  CHECK(vehicle::circuit_of(state.editor().vehicle(), two.circuit).name == "Two");
  // Another vehicle has steps of its own.
  state.desk().new_vehicle(circuit::Setting::boat);
  CHECK_FALSE(state.editor().can_undo());
  CHECK(host.records["vehicle/2"] == document::write_vehicle(state.editor().vehicle()));
}

TEST_CASE("a number is never given twice, not even after undo") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  const app::CircuitRef first = state.editor().current().circuit;
  state.desk().duplicate_circuit(first);
  const app::CircuitRef copy = state.editor().current().circuit;
  state.editor().undo();
  state.desk().duplicate_circuit(first);
  CHECK(state.editor().current().circuit.circuit != copy.circuit);
}

TEST_CASE("a trace that was kept stays when the plan goes a step back") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "trace");
  state.editor().dispatch(circuit::SetName{"One"});
  state.settle();
  REQUIRE(state.trace_desk().start(diagnosis::Symptom::all_dead, {}).empty());
  state.settle();
  REQUIRE(state.trace_desk().trace().observe(state.trace_desk().trace().findings().advice.check->id, diagnosis::not_sure()).empty());
  state.settle();
  state.trace_desk().stop();
  REQUIRE(state.editor().placed().traces.size() == 1);
  CHECK(state.editor().undo_what() == "rename the circuit");
  state.editor().undo();
  CHECK(state.editor().circuit().name == "Bench outlets");
  CHECK(state.editor().placed().traces.size() == 1);
}

TEST_CASE("steps of one held finger are one step to undo") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  const circuit::OutletId a = state.editor().circuit().outlets.front().id;
  const double run = state.editor().circuit().outlets.front().run.length.number();
  for (int i = 1; i <= 5; ++i) state.editor().dispatch(circuit::SetRun{a, units::Metres(run + 0.1 * i)}, "run/1");
  state.editor().end_join();
  state.editor().dispatch(circuit::SetRun{a, units::Metres(9.0)}, "run/1");
  state.editor().undo();
  CHECK(state.editor().circuit().outlets.front().run.length.number() == doctest::Approx(run + 0.5));
  state.editor().undo();
  CHECK(state.editor().circuit().outlets.front().run.length.number() == doctest::Approx(run));
  CHECK_FALSE(state.editor().can_undo());
}

TEST_CASE("removing an outlet closes its sheet and offers it back") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  const circuit::OutletId b = state.editor().circuit().outlets[1].id;
  state.navigator().go(app::Route::at_outlet(b));
  state.editor().dispatch(circuit::RemoveOutlet{b});
  CHECK(screens::places().address(state.navigator().route()) == "size");
  REQUIRE(state.messages().toast());
  CHECK(state.messages().toast()->offer == app::Toast::Offer::undo_edit);
  state.take_offer();
  CHECK(circuit::find_outlet(state.editor().circuit(), b) != nullptr);
}

TEST_CASE("results follow the circuit") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  const auto choice = [&state] {
    state.settle();
    return state.results().answer().choice();
  };
  REQUIRE(choice() != nullptr);
  const double area = choice()->size->area.number();
  state.editor().dispatch(circuit::SetAtMostAtOnce{units::Amperes(1.0)});
  REQUIRE(choice() != nullptr);
  CHECK(choice()->size->area.number() < area);
  state.editor().undo();
  CHECK(choice()->size->area.number() == area);
  // Another circuit with its own answer, though the edit count may be alike.
  state.desk().new_circuit();
  state.settle();
  CHECK(state.results().answer().verdict == sizing::Verdict::no_load);
}

TEST_CASE("what is worked out is what the frame shows, and an edit in its middle waits for the next") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "preferences");
  CHECK_FALSE(state.settled());
  state.settle();
  CHECK(state.settled());
  CHECK_FALSE(state.results().has_answer());
  state.navigator().go(app::Route::at(app::Screen::size));
  CHECK_FALSE(state.settled());
  CHECK(state.shown().screen == app::Screen::preferences);
  state.settle();
  REQUIRE(state.results().has_answer());
  CHECK(state.results().judged() == nullptr);
  state.navigator().go(app::Route::what_if("12awg"));
  state.settle();
  REQUIRE(state.results().size_in_hand() != nullptr);
  CHECK(state.results().size_in_hand()->id == "12awg");
  CHECK(state.results().judged() != nullptr);
  CHECK(state.results().fixes() != nullptr);
  CHECK(state.results().reach() == nullptr);
  const sizing::Answer* before = &state.results().answer();
  const auto outlets = before->choice()->outlets.size();
  state.editor().dispatch(circuit::AddOutlet{state.editor().circuit().outlets.back().id});
  CHECK_FALSE(state.settled());
  CHECK(state.results().answer().choice()->outlets.size() == outlets);
  state.settle();
  CHECK(state.settled());
  CHECK(state.results().answer().choice()->outlets.size() == outlets + 1);
}

TEST_CASE("a fix taken over can be undone, and a split makes a second circuit") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.editor().dispatch(circuit::SetName{"Bench"});
  sizing::Fix split;
  split.kind = sizing::FixKind::split;
  split.title = "Split";
  split.result = {circuit::demo_circuit(), circuit::demo_circuit()};
  split.result[0].name = "Bench 1";
  split.result[1].name = "Bench 2";
  state.editor().use_fix(split);
  CHECK(state.editor().circuit().name == "Bench 1");
  REQUIRE(state.editor().vehicle().circuits.size() == 2);
  // Each on a position of its own of the same block.
  const auto& circuits = state.editor().vehicle().circuits;
  CHECK(circuits[0].block == circuits[1].block);
  CHECK(circuits[0].position != circuits[1].position);
  CHECK(circuits[1].plan.name == "Bench 2");
  state.editor().undo();
  CHECK(state.editor().circuit().name == "Bench");
  CHECK(state.editor().vehicle().circuits.size() == 1);
}

TEST_CASE("a store that fails is told until it is solved, and nothing typed is lost") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  std::vector<std::string> refused;
  host.on_full = [&](std::string_view key) { refused.emplace_back(key); };
  state.editor().dispatch(circuit::SetName{"Kept in memory"});
  for (const std::string& key : refused) state.messages().store_failed(key, "the device is full.");
  CHECK(state.messages().store_trouble() == "Not saved: the device is full.");
  refused.clear();
  state.messages().retry_store();
  REQUIRE(refused == std::vector<std::string>{"vehicle/1"});
  state.messages().store_failed("vehicle/1", "the device is full");
  CHECK_FALSE(state.messages().store_trouble().empty());
  host.on_full = nullptr;
  // The next write of anything takes what failed along.
  state.settings().set_preferences(state.settings().preferences());
  CHECK(state.messages().store_trouble().empty());
  CHECK(host.records["vehicle/1"] == document::write_vehicle(state.editor().vehicle()));
}

TEST_CASE("a failed removal is tried again too") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  host.on_full = [](std::string_view) {};
  state.desk().delete_vehicle(1);
  state.messages().store_failed("vehicle/1", "busy");
  host.on_full = nullptr;
  state.messages().retry_store();
  CHECK(host.records.count("vehicle/1") == 0);
  CHECK(state.messages().store_trouble().empty());
}

TEST_CASE("random edits: what is stored is always what is shown") {
  constexpr unsigned kSeed = 20261125;
  MESSAGE("seed " << kSeed);
  std::mt19937_64 random(kSeed);
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  for (int step = 0; step < 400; ++step) {
    const auto& outlets = state.editor().circuit().outlets;
    const circuit::OutletId id = outlets.empty() ? circuit::kBlock : outlets[random() % outlets.size()].id;
    switch (random() % 8) {
      case 0: state.editor().dispatch(circuit::AddOutlet{id}); break;
      case 1: state.editor().dispatch(circuit::InsertOutlet{id}); break;
      case 2: state.editor().dispatch(circuit::RemoveOutlet{id}); break;
      case 3: state.editor().dispatch(circuit::SetRun{id, units::Metres(static_cast<double>(random() % 1200) / 10.0)}); break;
      case 4: state.editor().undo(); break;
      case 5: state.editor().redo(); break;
      case 6: state.editor().dispatch(circuit::SetDropLimit{static_cast<double>(random() % 30) / 100.0}); break;
      default: state.editor().dispatch(circuit::MoveOutlet{id, random() % 2 == 0 ? 1 : -1}); break;
    }
    REQUIRE(host.records["vehicle/1"] == document::write_vehicle(state.editor().vehicle()));
  }
  MemoryHost again;
  AppState restarted(again, screens::places(), host.stored(), "");
  CHECK(document::write_vehicle(restarted.editor().vehicle()) == document::write_vehicle(state.editor().vehicle()));
}
