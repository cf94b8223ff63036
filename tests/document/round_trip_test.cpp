// Random vehicles and circuits, written and read: the same text, so the same vehicle to the bit.
#include <doctest/doctest.h>

#include <cstdlib>

#include "document/circuit_file.h"
#include "document/vehicle_file.h"
#include "vehicle/random_vehicle.h"
#include "vehicle/validate.h"

namespace {

int rounds() { return std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 100 : 2'000; }

// Found by comparing structures and not texts: what the writer forgets, the text does not show.
bool same_planned(const circuit::Circuit& a, const circuit::Circuit& b) {
  if (a.outlets.size() != b.outlets.size() || a.name != b.name || a.next_outlet_id != b.next_outlet_id) return false;
  for (std::size_t i = 0; i < a.outlets.size(); ++i) {
    const circuit::Outlet& x = a.outlets[i];
    const circuit::Outlet& y = b.outlets[i];
    const bool same = x.id == y.id && x.name == y.name && x.point == y.point && x.fed_from == y.fed_from && x.run == y.run &&
                      x.joint == y.joint && x.devices == y.devices && x.taps == y.taps && x.drop_limit == y.drop_limit &&
                      x.outlet_part == y.outlet_part && x.terminal_part == y.terminal_part && x.rating == y.rating;
    if (!same) return false;
  }
  const circuit::Wiring& v = a.wiring;
  const circuit::Wiring& w = b.wiring;
  const bool in_hand = a.in_hand.has_value() == b.in_hand.has_value() &&
                       (!a.in_hand || (a.in_hand->size == b.in_hand->size && a.in_hand->fuse == b.in_hand->fuse));
  return in_hand && v.gauge == w.gauge && v.ampacity_table == w.ampacity_table && v.around.ambient == w.around.ambient &&
         v.around.hot_space == w.around.hot_space && v.around.insulation == w.around.insulation &&
         v.around.circuits_bundled == w.around.circuits_bundled && v.wire_temperature == w.wire_temperature &&
         v.ferrule == w.ferrule && v.splice_part == w.splice_part && v.tail == w.tail && a.drop_limit == b.drop_limit &&
         a.at_most_at_once == b.at_most_at_once && a.shelf.missing_sizes == b.shelf.missing_sizes &&
         a.shelf.missing_fuses_a == b.shelf.missing_fuses_a;
}

bool same_sources(const std::vector<vehicle::Source>& a, const std::vector<vehicle::Source>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const auto& x, const auto& y) {
    return x.id == y.id && x.kind == y.kind && x.name == y.name && x.highest == y.highest && x.most == y.most &&
           x.cable_run == y.cable_run && x.cable_size == y.cable_size && x.cable_metal == y.cable_metal && x.fuse == y.fuse &&
           x.fuse_kind == y.fuse_kind;
  });
}

bool same_blocks(const std::vector<vehicle::Block>& a, const std::vector<vehicle::Block>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const auto& x, const auto& y) {
    return x.id == y.id && x.name == y.name && x.positions == y.positions && x.rating == y.rating &&
           x.main.kind == y.main.kind && x.main.rating == y.main.rating && x.main.distance == y.main.distance &&
           x.disconnect == y.disconnect && x.feeder.run == y.feeder.run && x.feeder.size == y.feeder.size &&
           x.feeder.metal == y.feeder.metal && x.fuse_family == y.fuse_family && x.clamp_part == y.clamp_part &&
           x.clamp_rating == y.clamp_rating && x.at_most_at_once == y.at_most_at_once;
  });
}

bool same_built(const std::optional<vehicle::Built>& a, const std::optional<vehicle::Built>& b) {
  if (!a || !b) return a.has_value() == b.has_value();
  return same_planned(a->circuit, b->circuit) && a->fuse == b->fuse && a->fuse_knowledge == b->fuse_knowledge &&
         a->runs == b->runs && a->date == b->date;
}

bool same(const vehicle::Vehicle& a, const vehicle::Vehicle& b) {
  const vehicle::Battery& x = a.battery;
  const vehicle::Battery& y = b.battery;
  return a.name == b.name && a.kind == b.kind && a.practice == b.practice && a.colours == b.colours &&
         a.next_id == b.next_id && x.nominal == y.nominal && x.kind == y.kind && x.capacity_ah == y.capacity_ah &&
         x.resting == y.resting && x.low == y.low && x.internal_resistance == y.internal_resistance &&
         same_sources(a.sources, b.sources) && same_blocks(a.blocks, b.blocks) &&
         std::equal(a.circuits.begin(), a.circuits.end(), b.circuits.begin(), b.circuits.end(), [](const auto& p, const auto& q) {
           return p.id == q.id && p.block == q.block && p.position == q.position && same_planned(p.plan, q.plan) &&
                  same_built(p.built, q.built) && p.traces == q.traces;
         });
}

}  // namespace

TEST_CASE("random vehicles come back the same, field by field and byte by byte") {
  constexpr std::uint64_t kSeed = 17;
  MESSAGE("seed ", kSeed, ", ", rounds(), " files");
  random_vehicles::Engine engine(kSeed);
  std::size_t circuits = 0;
  for (int round = 0; round < rounds(); ++round) {
    std::vector<vehicle::Vehicle> made;
    for (std::size_t i = 0; i <= engine() % 3; ++i) made.push_back(random_vehicles::any(engine));
    const std::string text = document::write_vehicles(made);
    const auto read = document::read_vehicles(text);
    REQUIRE_MESSAGE(read.problems.empty(), one_line(read.problems.front()), "\n", text);
    REQUIRE(read.vehicles.size() == made.size());
    for (std::size_t i = 0; i < made.size(); ++i) {
      REQUIRE_MESSAGE(same(made[i], read.vehicles[i]), text);
      circuits += made[i].circuits.size();
    }
    REQUIRE(document::write_vehicles(read.vehicles) == text);
  }
  MESSAGE(circuits, " circuits");
}

TEST_CASE("random circuits with their supply come back the same") {
  constexpr std::uint64_t kSeed = 18;
  MESSAGE("seed ", kSeed);
  random_vehicles::Engine engine(kSeed);
  for (int round = 0; round < rounds(); ++round) {
    circuit::Circuit made = random_vehicles::any_circuit(engine);
    if (engine() % 2 == 0) made.supply.highest = made.supply.nominal * 1.2;
    const std::string text = document::write_circuit(made);
    const auto read = document::read_circuits(text);
    REQUIRE(read.circuits.size() == 1);
    const circuit::Circuit& back = read.circuits.front();
    REQUIRE(document::write_circuit(back) == text);
    REQUIRE(same_planned(made, back));
    const circuit::Supply& x = made.supply;
    const circuit::Supply& y = back.supply;
    const bool supply = x.nominal == y.nominal && x.battery == y.battery && x.resting == y.resting && x.low == y.low &&
                        x.highest == y.highest && x.internal_resistance == y.internal_resistance && x.feeder_run == y.feeder_run &&
                        x.feeder_size == y.feeder_size && x.feeder_metal == y.feeder_metal && x.main_fuse == y.main_fuse &&
                        x.main_fuse_kind == y.main_fuse_kind && x.main_fuse_distance == y.main_fuse_distance &&
                        x.disconnect == y.disconnect && x.block_rating == y.block_rating && x.beside == y.beside;
    REQUIRE(supply);
    REQUIRE(made.place == back.place);
    REQUIRE(made.fuse_position == back.fuse_position);
    REQUIRE(made.setting == back.setting);
    REQUIRE(made.practice == back.practice);
    REQUIRE(made.colours == back.colours);
    REQUIRE(made.wiring.fuse_family == back.wiring.fuse_family);
    REQUIRE(made.wiring.clamp_part == back.wiring.clamp_part);
    REQUIRE(made.wiring.clamp_rating == back.wiring.clamp_rating);
  }
}

TEST_CASE("a vehicle too large to be read back is told before it is kept, and not taken from a tight text") {
  vehicle::Vehicle made = vehicle::demo_vehicle();
  CHECK_FALSE(document::too_long_to_read(document::write_vehicle(made)));
  vehicle::PlacedCircuit& placed = made.circuits.front();
  const std::string sentence(vehicle::kMaxTextBytes, 's');
  for (std::uint32_t number = 1; number <= vehicle::kMaxTraces; ++number) {
    vehicle::TraceRecord trace{number, "2026-11-25", "Bench", sentence, {}, sentence};
    trace.told.assign(21, {sentence, sentence});
    placed.traces.push_back(trace);
  }
  REQUIRE(vehicle::validate(made).empty());
  const std::string text = document::write_vehicle(made);
  REQUIRE(text.size() > circuit::kMaxFileBytes);
  const auto problem = document::too_long_to_read(text);
  REQUIRE(problem);
  CHECK(one_line(*problem) == "With all of its circuits and traces it is larger than 4 MiB. Delete kept traces, or make two vehicles of it.");
  CHECK(document::read_vehicles(text).vehicles.empty());
  // The same with short answers in tight text: short enough to be read, too long once written.
  for (auto& trace : placed.traces) trace.told.assign(vehicle::kMaxTold, {"", ""});
  made.circuits.resize(1);
  while (made.circuits.size() < 12) {
    made.circuits.push_back(made.circuits.front());
    made.circuits.back().id = vehicle::CircuitId{made.next_id++};
    made.circuits.back().position = *vehicle::spare_position(made, made.blocks.front().id);
    made.circuits.back().traces.resize(50);
  }
  for (auto& each : made.circuits) {
    for (auto& trace : each.traces) trace.complaint = trace.outcome = "";
  }
  REQUIRE(vehicle::validate(made).empty());
  const std::string spread = document::write_vehicle(made);
  std::string tight;
  bool quoted = false;
  for (const char c : spread) {
    if (c == '"') quoted = !quoted;
    if (quoted || (c != ' ' && c != '\n')) tight += c;
  }
  REQUIRE(tight.size() < circuit::kMaxFileBytes);
  REQUIRE(spread.size() > circuit::kMaxFileBytes);
  const auto read = document::read_vehicles(tight);
  CHECK(read.vehicles.empty());
  REQUIRE(read.problems.size() == 1);
  CHECK(one_line(read.problems.front()).rfind("Vehicle 1: with all of its circuits", 0) == 0);
}
