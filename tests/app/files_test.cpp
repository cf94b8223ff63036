// Files in and out: nothing is overwritten, and a bad file changes nothing.
#include <doctest/doctest.h>

#include "app/app_state.h"
#include "app/names.h"
#include "circuit/limits.h"
#include "document/circuit_file.h"
#include "memory_host.h"

using app::AppState;
using test_app::MemoryHost;

namespace {

std::vector<std::string> hostile_files() {
  const std::string good = document::write_circuit(circuit::demo_circuit());
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
  AppState state(host, {}, "");
  const auto records = host.records;
  const auto files = hostile_files();
  for (std::size_t i = 0; i < files.size(); ++i) {
    CAPTURE(i);
    state.desk().import_file("bad.json", files[i]);
    CHECK_FALSE(state.desk().import_problems().empty());
    CHECK(host.records == records);
    CHECK(state.editor().circuit().name == "Bench outlets");
    CHECK(app::route_text(state.navigator().route()) == "circuits");
  }
  state.desk().clear_import_problems();
  CHECK(state.desk().import_problems().empty());
}

TEST_CASE("an export taken in again is added as new, never over another") {
  MemoryHost host;
  AppState state(host, {}, "");
  state.editor().dispatch(circuit::SetName{"Fridge"});
  state.desk().export_circuit(1);
  REQUIRE(host.files.size() == 1);
  CHECK(host.files[0].name == "fridge.branchlight.json");
  state.editor().dispatch(circuit::SetName{"Changed since"});
  state.desk().import_file("fridge.branchlight.json", host.files[0].text);
  REQUIRE(state.desk().notebook().circuits().size() == 2);
  CHECK(state.editor().circuit().name == "Fridge");
  CHECK(state.desk().notebook().find(1)->circuit->name == "Changed since");
  state.desk().export_all();
  CHECK(host.files[1].name == "circuits-2026-11-25.branchlight.json");
  state.desk().import_file("all.json", host.files[1].text);
  CHECK(state.desk().notebook().circuits().size() == 4);
  CHECK(state.desk().notebook().circuits()[0].circuit->name == "Fridge");
  CHECK(state.desk().notebook().circuits()[1].circuit->name == "Changed since");
}

TEST_CASE("an import takes the untouched demo's place") {
  MemoryHost host;
  AppState state(host, {}, "");
  circuit::Circuit own = circuit::new_circuit(tables::GaugeSystem::awg);
  own.name = "Own";
  state.desk().import_file("own.json", document::write_circuit(own));
  REQUIRE(state.desk().notebook().circuits().size() == 1);
  CHECK(state.editor().circuit().name == "Own");
}

TEST_CASE("the notebook holds as many as one file may, and says so") {
  MemoryHost host;
  AppState state(host, {}, "");
  state.editor().dispatch(circuit::SetName{"Mine"});
  const std::vector<circuit::Circuit> many(circuit::kMaxCircuitsInFile, circuit::demo_circuit());
  const std::string file = document::write_circuits(many);
  if (file.size() <= circuit::kMaxFileBytes) {
    state.desk().import_file("many.json", file);
    CHECK_FALSE(state.desk().import_problems().empty());   // 500 and the one that is here
    CHECK(state.desk().notebook().circuits().size() == 1);
  }
  const std::vector<circuit::Circuit> fits(circuit::kMaxCircuitsInFile - 1, circuit::demo_circuit());
  state.desk().import_file("fits.json", document::write_circuits(fits));
  CHECK(state.desk().import_problems().empty());
  REQUIRE(state.desk().notebook().full());
  state.desk().new_circuit();
  CHECK(state.desk().notebook().circuits().size() == circuit::kMaxCircuitsInFile);
  CHECK_FALSE(state.messages().problem().empty());
}

TEST_CASE("names are cut between characters, and files get names any device takes") {
  CHECK(app::first_characters("héllo", 2) == "hé");
  CHECK(app::first_characters("ab", 5) == "ab");
  CHECK(app::file_stem("Bench outlets") == "bench-outlets");
  CHECK(app::file_stem("  ../../etc/passwd  ") == "etc-passwd");
  CHECK(app::file_stem("灯") == "circuit");
  MemoryHost host;
  AppState state(host, {}, "");
  std::string wide;
  for (int i = 0; i < 40; ++i) wide += "Ŵ";
  REQUIRE(state.editor().dispatch(circuit::SetName{wide}));
  state.desk().duplicate_circuit(1);
  CHECK(state.editor().circuit().name.ends_with("Ŵ (copy)"));
  CHECK(document::read_circuits(host.records["circuit/2"]).problems.empty());
}
