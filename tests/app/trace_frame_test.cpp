// What a trace takes as known of the open circuit, and what it does not.
#include <doctest/doctest.h>

#include "app/app_state.h"
#include "document/circuit_file.h"
#include "memory_host.h"

using app::AppState;
using test_app::MemoryHost;

namespace {

platform::StoredRecord stored(std::uint32_t number, const std::string& place, int position) {
  circuit::Circuit circuit = circuit::demo_circuit();
  circuit.name = "Circuit " + std::to_string(number);
  circuit.place = place;
  circuit.fuse_position = position;
  return {app::circuit_key(number), document::write_circuit(circuit)};
}

std::vector<std::string> neighbours(const std::vector<platform::StoredRecord>& records) {
  MemoryHost host;
  AppState state(host, records, "trace");
  state.settle();
  std::vector<std::string> names;
  for (const diagnosis::Neighbour& each : state.trace_desk().frame().neighbours) names.push_back(each.name);
  return names;
}

}  // namespace

TEST_CASE("neighbours are other positions of the same place, and no place is not the same place") {
  using Names = std::vector<std::string>;
  CHECK(neighbours({stored(1, "Trailer", 1), stored(2, "Trailer", 2), stored(3, "Boat", 3), {"notebook", "order 1 2 3\nopen 1\n"}}) == Names{"Circuit 2"});
  CHECK(neighbours({stored(1, "Trailer", 1), stored(2, "Trailer", 1), {"notebook", "order 1 2\nopen 1\n"}}) == Names{});
  CHECK(neighbours({stored(1, "", 1), stored(2, "", 2), {"notebook", "order 1 2\nopen 1\n"}}) == Names{});
  CHECK(neighbours({{"notebook", "next 4\n"}}) == Names{});   // with no circuit at all nobody told of any
}

TEST_CASE("what nobody told of wire and fuse is not known, whatever Size would choose") {
  using diagnosis::Knowledge;
  using diagnosis::Protection;
  const std::vector<platform::StoredRecord> records{stored(1, "Trailer", 1), {"notebook", "order 1\nopen 1\n"}};
  MemoryHost host;
  AppState state(host, records, "trace");
  const auto frame = [&state]() -> const diagnosis::Case& {
    state.settle();
    return state.trace_desk().frame();
  };
  REQUIRE(frame().built.runs.size() == frame().circuit.outlets.size());
  for (const diagnosis::BuiltRun& run : frame().built.runs) {
    CHECK_FALSE(run.wire.has_value());
    CHECK(run.wire_known == Knowledge::unknown);
  }
  CHECK_FALSE(frame().built.fuse.has_value());
  CHECK_FALSE(diagnosis::names_fuse(frame()));
  state.trace_desk().tell_fitted({"10awg", 0.0});
  CHECK_FALSE(state.settled());
  CHECK(diagnosis::knows_wires(frame()));
  CHECK(frame().built.runs.front().wire == "10awg");
  CHECK_FALSE(frame().built.fuse.has_value());
  CHECK(frame().built.protection == Protection::not_judged);
  state.trace_desk().tell_fitted({"10awg", 15.0});
  CHECK(frame().built.protection == Protection::protects);
  CHECK(diagnosis::names_fuse(frame()));
  CHECK(diagnosis::fuse_rating_words(frame()) == "15 A");
  state.trace_desk().tell_fitted({"18awg", 30.0});   // known, and no fuse for that wire
  CHECK(frame().built.protection == Protection::too_large);
  CHECK_FALSE(diagnosis::names_fuse(frame()));
  CHECK(diagnosis::fuse_words(frame()).find("30") == std::string::npos);
}

TEST_CASE("a size that the plan keeps for a run is a guess at what is there; told colours are in the words") {
  circuit::Circuit circuit = circuit::demo_circuit();
  circuit.outlets.front().run.size = "10awg";
  circuit.colours = "boat-us";
  MemoryHost host;
  AppState state(host, {{app::circuit_key(1), document::write_circuit(circuit)}, {"notebook", "order 1\nopen 1\n"}}, "trace");
  state.settle();
  const diagnosis::Case& frame = state.trace_desk().frame();
  CHECK(frame.built.runs.front().wire_known == diagnosis::Knowledge::guessed);
  CHECK_FALSE(diagnosis::knows_wires(frame));
  CHECK(frame.minus_colour == "yellow");   // ABYC E-11: yellow preferred for DC negative
}

TEST_CASE("a trace goes on after any change elsewhere, with every answer") {
  MemoryHost host;
  AppState state(host, {stored(1, "Trailer", 1), {"notebook", "order 1\nopen 1\n"}}, "trace");
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
