// Files in and out: nothing is overwritten, and a bad file changes nothing.
#include <doctest/doctest.h>

#include "app/app_state.h"
#include "app/built.h"
#include "app/names.h"
#include "circuit/limits.h"
#include "document/circuit_file.h"
#include "document/vehicle_file.h"
#include "memory_host.h"
#include "screens/places.h"

using app::AppState;
using test_app::MemoryHost;

namespace {

std::vector<std::string> hostile_files() {
  const std::string good = document::write_vehicle(vehicle::demo_vehicle());
  std::vector<std::string> files{"", " ", "{}", "[]", "null", "hello", "\xEF\xBB\xBF", std::string(1, '\0'),
                                 good.substr(0, good.size() / 2), good + good, std::string(5u << 20, '['),
                                 "{\"format\": \"something else\"}"};
  std::string newer = good;
  const std::size_t version = newer.find("\"version\"");
  if (version != std::string::npos) newer.replace(newer.find_first_of("0123456789", version), 1, "999");
  files.push_back(newer);
  std::string binary;
  for (int i = 0; i < 4096; ++i) binary += static_cast<char>(i * 37);
  files.push_back(binary);
  return files;
}

}  // namespace

TEST_CASE("a file that is no circuit is refused with a reason and changes nothing") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  const auto records = host.records;
  const auto files = hostile_files();
  for (std::size_t i = 0; i < files.size(); ++i) {
    CAPTURE(i);
    state.desk().import_file("bad.json", files[i]);
    CHECK_FALSE(state.desk().import_problems().empty());
    CHECK(host.records == records);
    CHECK(state.editor().circuit().name == "Bench outlets");
    CHECK(host.addresses.back() == "circuits");
  }
  state.desk().clear_import_problems();
  CHECK(state.desk().import_problems().empty());
}

TEST_CASE("an export taken in again is added as new, never over another") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.editor().dispatch(circuit::SetName{"Fridge"});
  state.desk().export_circuit(state.editor().current().circuit);
  REQUIRE(host.files.size() == 1);
  CHECK(host.files[0].name == "fridge.branchlight.json");
  state.editor().dispatch(circuit::SetName{"Changed since"});
  state.desk().import_file("fridge.branchlight.json", host.files[0].text);
  REQUIRE(state.desk().notebook().vehicles().size() == 2);
  CHECK(state.editor().circuit().name == "Fridge");
  CHECK(state.desk().notebook().find(1)->vehicle.circuits.front().plan.name == "Changed since");
  state.desk().export_all();
  CHECK(host.files[1].name == "vehicles-2026-11-25.branchlight.json");
  state.desk().import_file("all.json", host.files[1].text);
  REQUIRE(state.desk().notebook().vehicles().size() == 4);
  CHECK(state.desk().notebook().vehicles()[0].vehicle.circuits.front().plan.name == "Fridge");
  CHECK(state.desk().notebook().vehicles()[1].vehicle.circuits.front().plan.name == "Changed since");
  state.desk().export_vehicle(1);
  CHECK(host.files[2].name == "repair-trailer.branchlight.json");
  CHECK(host.files[2].text == state.desk().notebook().find(1)->text);
}

TEST_CASE("one circuit goes out with what feeds it, what is built and its traces, and nothing of its neighbours") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.desk().duplicate_circuit(state.editor().current().circuit);
  state.editor().change(1, vehicle::AddBlock{});
  state.editor().change(1, vehicle::AddSource{vehicle::SourceKind::solar});
  vehicle::Built built = app::nothing_told(state.editor().placed().plan);
  app::tell_size_throughout(built, "10awg", vehicle::Knowledge::known);
  REQUIRE(state.editor().tell_built(built));
  state.desk().export_circuit(state.editor().current().circuit);
  const auto read = document::read_vehicles(host.files.back().text);
  REQUIRE(read.vehicles.size() == 1);
  REQUIRE(read.vehicles[0].circuits.size() == 1);
  CHECK(read.vehicles[0].circuits[0].built.has_value());
  CHECK(read.vehicles[0].blocks.size() == 1);
  CHECK(read.vehicles[0].sources.size() == 1);
}

TEST_CASE("an import takes the untouched demo's place") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  circuit::Circuit own = circuit::new_circuit(tables::GaugeSystem::awg);
  own.name = "Own";
  state.desk().import_file("own.json", document::write_circuit(own));
  REQUIRE(state.desk().notebook().vehicles().size() == 1);
  CHECK(state.editor().circuit().name == "Own");
}

TEST_CASE("a file of circuits comes in as the vehicles that they were in") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  circuit::Circuit a = circuit::demo_circuit(), b = a;
  a.place = b.place = "Van";
  b.name = "Pump";
  b.fuse_position = a.fuse_position + 1;
  state.desk().import_file("two.json", document::write_circuits({a, b}));
  CHECK(state.desk().import_problems().empty());
  REQUIRE(state.desk().notebook().vehicles().size() == 1);
  CHECK(state.editor().vehicle().circuits.size() == 2);
}

TEST_CASE("the notebook holds as many as one file may, and says so") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  state.editor().dispatch(circuit::SetName{"Mine"});
  circuit::Circuit small = circuit::new_circuit(tables::GaugeSystem::awg);
  const std::vector<circuit::Circuit> many(circuit::kMaxCircuitsInFile, small);
  state.desk().import_file("many.json", document::write_circuits(many));
  CHECK_FALSE(state.desk().import_problems().empty());   // 500 and the one that is here
  CHECK(state.desk().notebook().vehicles().size() == 1);
  const std::vector<circuit::Circuit> fits(circuit::kMaxCircuitsInFile - 1, small);
  state.desk().import_file("fits.json", document::write_circuits(fits));
  CHECK(state.desk().import_problems().empty());
  REQUIRE(state.desk().notebook().full());
  state.desk().new_vehicle(circuit::Setting::van);
  CHECK(state.desk().notebook().vehicles().size() == document::kMaxVehiclesInFile);
  CHECK_FALSE(state.messages().problem().empty());
}

TEST_CASE("names are cut between characters, and files get names any device takes") {
  CHECK(app::first_characters("héllo", 2) == "hé");
  CHECK(app::first_characters("ab", 5) == "ab");
  CHECK(app::file_stem("Bench outlets") == "bench-outlets");
  CHECK(app::file_stem("  ../../etc/passwd  ") == "etc-passwd");
  CHECK(app::file_stem("灯") == "circuit");
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  std::string wide;
  for (int i = 0; i < 40; ++i) wide += "Ŵ";
  REQUIRE(state.editor().dispatch(circuit::SetName{wide}));
  state.desk().duplicate_circuit(state.editor().current().circuit);
  CHECK(state.editor().circuit().name.ends_with("Ŵ (copy)"));
  CHECK(document::read_vehicles(host.records["vehicle/1"]).problems.empty());
}
