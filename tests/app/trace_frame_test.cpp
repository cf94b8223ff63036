// What a trace takes as known of the open circuit, and what it does not.
#include <doctest/doctest.h>

#include "app/app_state.h"
#include "app/built.h"
#include "document/vehicle_file.h"
#include "memory_host.h"
#include "screens/places.h"

using app::AppState;
using test_app::MemoryHost;

namespace {

// A trailer with two circuits on its block, and a boat, both of no name that tells them apart.
vehicle::Vehicle pair(const std::string& name) {
  circuit::Circuit demo = circuit::demo_circuit();
  demo.place = name;
  demo.name = name + " 1";
  vehicle::Vehicle made = vehicle::around(demo);
  demo.name = name + " 2";
  return *vehicle::apply(made, vehicle::AddCircuit{made.blocks.front().id, demo}).vehicle;
}

platform::StoredRecord stored(std::uint32_t number, const vehicle::Vehicle& vehicle) {
  return {app::vehicle_key(number), document::write_vehicle(vehicle)};
}

std::vector<std::string> neighbours(const std::vector<platform::StoredRecord>& records) {
  MemoryHost host;
  AppState state(host, screens::places(), records, "trace");
  state.settle();
  std::vector<std::string> names;
  for (const diagnosis::Neighbour& each : state.trace_desk().frame().neighbours) names.push_back(each.name);
  return names;
}

}  // namespace

TEST_CASE("neighbours are the other positions of the same block, whatever the vehicles are called") {
  using Names = std::vector<std::string>;
  const vehicle::Vehicle trailer = pair("Mine"), boat = pair("Mine");
  CHECK(neighbours({stored(1, trailer), stored(2, boat)}) == Names{"Mine 2"});
  vehicle::Vehicle two_blocks = *vehicle::apply(trailer, vehicle::AddBlock{}).vehicle;
  two_blocks = *vehicle::apply(two_blocks, vehicle::PlaceCircuit{two_blocks.circuits[1].id, two_blocks.blocks[1].id, 1}).vehicle;
  CHECK(neighbours({stored(1, two_blocks)}) == Names{});
  CHECK(neighbours({{"vehicles", "next 4\n"}}) == Names{});   // with no circuit at all nobody told of any
}

TEST_CASE("what nobody told of wire and fuse is not known, whatever Size would choose") {
  using diagnosis::Knowledge;
  using diagnosis::Protection;
  MemoryHost host;
  AppState state(host, screens::places(), {stored(1, pair("Trailer"))}, "trace");
  const auto frame = [&state]() -> const diagnosis::Case& {
    state.settle();
    return state.trace_desk().frame();
  };
  const auto tell = [&state](const std::string& size, double fuse) {
    vehicle::Built built = app::nothing_told(state.editor().placed().plan);
    app::tell_size_throughout(built, size, vehicle::Knowledge::known);
    app::tell_fuse(built, units::Amperes(fuse), vehicle::Knowledge::known);
    REQUIRE(state.editor().tell_built(built));
    CHECK_FALSE(state.settled());
  };
  REQUIRE(frame().built.runs.size() == frame().circuit.outlets.size());
  for (const diagnosis::BuiltRun& run : frame().built.runs) {
    CHECK_FALSE(run.wire.has_value());
    CHECK(run.wire_known == Knowledge::unknown);
    CHECK(run.length_known == Knowledge::guessed);
  }
  CHECK_FALSE(frame().built.fuse.has_value());
  CHECK_FALSE(diagnosis::names_fuse(frame()));
  tell("10awg", 0.0);
  CHECK(diagnosis::knows_wires(frame()));
  CHECK(frame().built.runs.front().wire == "10awg");
  CHECK_FALSE(frame().built.fuse.has_value());
  CHECK(frame().built.protection == Protection::not_judged);
  tell("10awg", 15.0);
  CHECK(frame().built.protection == Protection::protects);
  CHECK(diagnosis::names_fuse(frame()));
  CHECK(diagnosis::fuse_rating_words(frame()) == "15 A");
  tell("18awg", 30.0);   // known, and no fuse for that wire
  CHECK(frame().built.protection == Protection::too_large);
  CHECK_FALSE(diagnosis::names_fuse(frame()));
  CHECK(diagnosis::fuse_words(frame()).find("30") == std::string::npos);
}

TEST_CASE("a size that the plan keeps for a run is a guess at what is there; told colours are in the words") {
  circuit::Circuit circuit = circuit::demo_circuit();
  circuit.outlets.front().run.size = "10awg";
  circuit.colours = "boat-us";
  MemoryHost host;
  AppState state(host, screens::places(), {stored(1, vehicle::around(circuit))}, "trace");
  state.settle();
  const diagnosis::Case& frame = state.trace_desk().frame();
  CHECK(frame.built.runs.front().wire_known == diagnosis::Knowledge::guessed);
  CHECK_FALSE(diagnosis::knows_wires(frame));
  CHECK(frame.minus_colour == "yellow");   // ABYC E-11: yellow preferred for DC negative
}

TEST_CASE("one run of thin wire among thick ones: the fuse does not protect it") {
  MemoryHost host;
  AppState state(host, screens::places(), {stored(1, pair("Trailer"))}, "trace");
  vehicle::Built built = app::nothing_told(state.editor().placed().plan);
  app::tell_size_throughout(built, "10awg", vehicle::Knowledge::known);
  app::tell_fuse(built, units::Amperes(15.0), vehicle::Knowledge::known);
  REQUIRE(state.editor().tell_built(built));
  state.settle();
  CHECK(diagnosis::names_fuse(state.trace_desk().frame()));
  app::tell_size(built, built.circuit.outlets.back().id, "18awg", vehicle::Knowledge::known);
  REQUIRE(state.editor().tell_built(built));
  state.settle();
  CHECK(diagnosis::knows_wires(state.trace_desk().frame()));
  CHECK_FALSE(diagnosis::names_fuse(state.trace_desk().frame()));
  app::tell_size(built, built.circuit.outlets.back().id, "10awg", vehicle::Knowledge::guessed);
  REQUIRE(state.editor().tell_built(built));
  state.settle();
  CHECK_FALSE(diagnosis::knows_wires(state.trace_desk().frame()));
  CHECK_FALSE(diagnosis::names_fuse(state.trace_desk().frame()));   // a guess names no fuse
}

TEST_CASE("a trace goes on after any change elsewhere, with every answer") {
  MemoryHost host;
  AppState state(host, screens::places(), {stored(1, pair("Trailer"))}, "trace");
  state.settle();
  REQUIRE(state.trace_desk().start(diagnosis::Symptom::all_dead, {}).empty());
  CHECK_FALSE(state.settled());
  state.settle();
  for (int i = 0; i < 3; ++i) {
    const auto& advice = state.trace_desk().trace().findings().advice;
    REQUIRE(advice.check);
    REQUIRE(state.trace_desk().trace().observe(advice.check->id, diagnosis::not_sure()).empty());
    CHECK_FALSE(state.settled());
    state.settle();
    CHECK(state.settled());
    CHECK(state.trace_desk().trace().findings().told.size() == static_cast<std::size_t>(i) + 1);
  }
  const std::string asked = state.trace_desk().trace().findings().advice.check->id;
  state.navigator().go(app::Route::at(app::Screen::preferences));
  state.settle();
  CHECK_FALSE(host.awake);
  app::Preferences other = state.settings().preferences();
  other.units = app::UnitChoice::us;
  state.settings().set_preferences(other);
  state.navigator().go(app::Route::at(app::Screen::trace));
  state.settle();
  CHECK(host.awake);
  CHECK(state.trace_desk().trace().answers() == 3);
  CHECK(state.trace_desk().trace().findings().advice.check->id == asked);
}
