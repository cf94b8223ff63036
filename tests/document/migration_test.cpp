// Files of version 1 become vehicles and lose nothing: every field of every circuit is what
// circuit_of() gives. Kept samples, and random files.
#include <doctest/doctest.h>

#include <cstdlib>
#include <nlohmann/json.hpp>
#include <set>

#include "circuit/validate.h"
#include "document/json_schema.h"
#include "document/version_1.h"
#include "document/vehicle_file.h"
#include "files.h"
#include "vehicle/gather.h"
#include "vehicle/validate.h"

using document::read_vehicles;
using document::write_vehicles;
using version_1::as_it_was;

namespace {

// The circuits of a file of version 1, as they were and as they are in vehicles; and what is
// written of those, read back.
void holds_all_of(const std::string& text, const std::vector<circuit::Circuit>& circuits) {
  const auto read = read_vehicles(text);
  for (const auto& problem : read.problems) FAIL_CHECK(one_line(problem));
  REQUIRE(read.from_version == 1);
  REQUIRE(read.where.size() == circuits.size());
  std::size_t placed = 0;
  for (const auto& each : read.vehicles) {
    CHECK(vehicle::validate(each).empty());
    placed += each.circuits.size();
  }
  CHECK(placed == circuits.size());
  std::set<std::pair<std::size_t, std::uint32_t>> places;
  for (std::size_t i = 0; i < circuits.size(); ++i) {
    const auto& where = read.where[i];
    REQUIRE(where.vehicle < read.vehicles.size());
    const vehicle::Vehicle& in = read.vehicles[where.vehicle];
    REQUIRE(find_circuit(in, where.circuit) != nullptr);
    places.insert({where.vehicle, where.circuit.number});
    const circuit::Circuit seen = as_it_was(vehicle::circuit_of(in, where.circuit), circuits[i]);
    CHECK(document::write_circuit(seen) == document::write_circuit(circuits[i]));
  }
  CHECK(places.size() == circuits.size());
  const std::string written = write_vehicles(read.vehicles);
  const auto again = read_vehicles(written);
  CHECK(again.problems.empty());
  CHECK(again.from_version == 2);
  CHECK(again.where.empty());
  CHECK(write_vehicles(again.vehicles) == written);
}

}  // namespace

TEST_CASE("every kept sample of version 1 is whole as vehicles") {
  for (const auto& path : files::in_folder("version-1")) {
    CAPTURE(path.string());
    const std::string text = files::read(path);
    const auto circuits = document::read_circuits(text);
    REQUIRE_FALSE(circuits.circuits.empty());
    holds_all_of(text, circuits.circuits);
  }
}

TEST_CASE("random files of version 1 are whole as vehicles") {
  constexpr std::uint64_t kSeed = 20261126;
  const int rounds = std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 50 : 1'000;
  MESSAGE("seed ", kSeed, ", ", rounds, " files");
  random_vehicles::Engine engine(kSeed);
  const nlohmann::json schema = files::schema("circuit-v1.schema.json");
  std::size_t circuits_seen = 0;
  std::size_t shared = 0;
  for (int round = 0; round < rounds; ++round) {
    std::vector<circuit::Circuit> circuits;
    const std::size_t count = 1 + engine() % 8;
    while (circuits.size() < count) {
      circuit::Circuit next = version_1::told_in_version_1(random_vehicles::any_circuit(engine));
      if (engine() % 3 == 0) next.place.clear();
      // Most share place, supply and block with the one before, as people copied them.
      if (!circuits.empty() && engine() % 3 != 0) {
        const circuit::Circuit& like = circuits.back();
        next.place = like.place;
        next.setting = like.setting;
        next.supply = like.supply;
        next.wiring.fuse_family = like.wiring.fuse_family;
        next.wiring.clamp_part = like.wiring.clamp_part;
        next.wiring.clamp_rating = like.wiring.clamp_rating;
        if (engine() % 2 == 0) next.fuse_position = like.fuse_position;   // the same position twice
        if (engine() % 4 == 0) next.supply.main_fuse = units::Amperes(30.0);
      }
      if (circuit::validate(next).empty()) circuits.push_back(std::move(next));
    }
    const std::string text = version_1::text_of(circuits);
    REQUIRE(json_schema::violation(schema, nlohmann::json::parse(text)) == "");
    holds_all_of(text, circuits);
    circuits_seen += circuits.size();
    shared += circuits.size() - read_vehicles(text).vehicles.size();
  }
  CHECK(shared > circuits_seen / 10);   // else nothing was gathered
  MESSAGE(circuits_seen, " circuits, ", shared, " of them joined another's vehicle");
}

TEST_CASE("the export of three: which circuit went where") {
  const auto read = read_vehicles(files::read(files::documents() / "version-1/export-of-three.json"));
  REQUIRE(read.where.size() == 3);
  const auto circuits = document::read_circuits(files::read(files::documents() / "version-1/export-of-three.json"));
  for (std::size_t i = 0; i < 3; ++i) {
    const auto* placed = find_circuit(read.vehicles[read.where[i].vehicle], read.where[i].circuit);
    REQUIRE(placed != nullptr);
    CHECK(placed->plan.name == circuits.circuits[i].name);
    CHECK(placed->position == circuits.circuits[i].fuse_position);
  }
}

TEST_CASE("the most that a file of version 1 could hold is taken") {
  SUBCASE("500 circuits of one place, all on one position") {
    holds_all_of(version_1::text_of(std::vector<circuit::Circuit>(circuit::kMaxCircuitsInFile, circuit::demo_circuit())),
                 std::vector<circuit::Circuit>(circuit::kMaxCircuitsInFile, circuit::demo_circuit()));
  }
  SUBCASE("circuits of the most outlets and load side by side, more than one vehicle holds") {
    circuit::Circuit large = circuit::demo_circuit();
    while (large.outlets.size() < circuit::kMaxOutlets) {
      circuit::Outlet more = large.outlets.back();
      more.id = circuit::OutletId{large.next_outlet_id++};
      more.devices.front().load = {circuit::LoadKind::constant_current, false, 300.0, {}};
      large.outlets.push_back(more);
    }
    large.at_most_at_once.reset();
    std::vector<circuit::Circuit> circuits;
    for (int position = 1; position <= 12; ++position) {
      circuits.push_back(large);
      circuits.back().fuse_position = position;
    }
    holds_all_of(version_1::text_of(circuits), circuits);
  }
}

TEST_CASE("a circuit that tells what a vehicle works out is refused there, and named") {
  circuit::Circuit told = circuit::demo_circuit();
  told.supply.beside = units::Amperes(4.0);
  const auto read = read_vehicles(document::write_circuits({circuit::demo_circuit(), told}));
  CHECK(read.vehicles.empty());
  REQUIRE(read.problems.size() == 1);
  CHECK(one_line(read.problems.front()) ==
        "Circuit 2, supply: a vehicle tells what is drawn beside a circuit by its other circuits. Take out \"beside_a\".");
}

TEST_CASE("what version 1 kept as fitted becomes what is built") {
  const circuit::Circuit plan = circuit::demo_circuit();
  vehicle::Vehicle made = vehicle::demo_vehicle();
  const vehicle::CircuitId id = made.circuits.front().id;
  const auto built = [&](const std::string& size, double fuse) {
    made.circuits.front().built = vehicle::built_from_v1(vehicle::circuit_of(made, id), size, units::Amperes(fuse));
    for (const auto& problem : vehicle::validate(made)) FAIL_CHECK(one_line(problem));
    return *made.circuits.front().built;
  };
  const vehicle::Built both = built("12awg", 15.0);
  CHECK(both.fuse == units::Amperes(15.0));
  CHECK(both.fuse_knowledge == vehicle::Knowledge::known);
  REQUIRE(both.runs.size() == plan.outlets.size());
  for (std::size_t i = 0; i < both.runs.size(); ++i) {
    CHECK(both.runs[i].outlet == plan.outlets[i].id);
    CHECK(both.runs[i].size == vehicle::Knowledge::known);
    CHECK(both.runs[i].length == vehicle::Knowledge::guessed);
    CHECK(both.circuit.outlets[i].run.size == "12awg");
    CHECK(both.circuit.outlets[i].run.length == plan.outlets[i].run.length);
  }
  const vehicle::Built neither = built("", 0.0);
  CHECK(neither.fuse_knowledge == vehicle::Knowledge::unknown);
  CHECK(neither.runs.front().size == vehicle::Knowledge::unknown);
  CHECK_FALSE(neither.circuit.outlets.front().run.size.has_value());
  CHECK(built("12awg", 900.0).fuse_knowledge == vehicle::Knowledge::unknown);   // no branch fuse
  CHECK(built("12awg", 0.1).fuse == units::Amperes(0.0));
}
