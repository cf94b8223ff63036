// Vehicles, their blocks and sources, and what is there: told as a person tells it, by role and name.
#include "circuits.h"
#include "sizing/shares.h"
#include "sizing/sizing.h"
#include "support.h"
#include "units/format.h"

using ui::Role;

namespace {

void look_at(AppWalker& walker, const std::string& route) {
  walker.resize(412, 2600);
  walker.host.records["preferences"] = "caution-seen yes\n";
  std::vector<platform::StoredRecord> stored = screens_test::two_vehicles(screens_test::demo());
  stored.push_back({"preferences", "caution-seen yes\n"});
  walker.start(stored, route);
}

vehicle::Vehicle stored_vehicle(const AppWalker& walker, const std::string& number) {
  const auto found = walker.host.records.find("vehicle/" + number);
  REQUIRE(found != walker.host.records.end());
  const document::VehiclesRead read = document::read_vehicles(found->second);
  REQUIRE(read.vehicles.size() == 1);
  return read.vehicles.front();
}

}  // namespace

TEST_CASE("a vehicle: its kind, a second block, a charger with its fuse, and back") {
  AppWalker walker;
  look_at(walker, "circuits");
  REQUIRE_MESSAGE(walker.press("Vehicle Repair trailer"), walker.all());
  REQUIRE(walker.press(Role::radio, "Van"));
  CHECK(stored_vehicle(walker, "2").kind == circuit::Setting::van);
  REQUIRE(walker.press("Add a fuse block"));
  REQUIRE(stored_vehicle(walker, "2").blocks.size() == 2);
  REQUIRE(walker.press("Add a source"));
  REQUIRE(walker.press("Add: Mains charger"));
  CHECK(walker.shows("No fuse is told at the battery's end"));
  check_layout(walker);
  REQUIRE(walker.set(Role::spin, "Fuse at the battery", "30"));
  CHECK_FALSE(walker.shows("No fuse is told at the battery's end"));
  REQUIRE(walker.set(Role::spin, "Highest volts", "15.2"));
  const vehicle::Vehicle told = stored_vehicle(walker, "2");
  REQUIRE(told.sources.size() == 1);
  CHECK(told.sources.front().fuse == units::Amperes(30.0));
  CHECK(vehicle::highest_voltage(told).number() == doctest::Approx(15.2));
  REQUIRE(walker.press("Remove Mains charger"));
  CHECK(stored_vehicle(walker, "2").sources.empty());
  CHECK(walker.address() == "circuits");
}

TEST_CASE("a block: a circuit on a spare position, the feeder of both, and what both draw together") {
  AppWalker walker;
  look_at(walker, "circuits/block/2/1");
  INFO(walker.all());
  CHECK(walker.shows("Bench outlets"));
  REQUIRE(walker.press("11 spare"));
  REQUIRE(walker.press(Role::checkbox, "New circuit on position 7"));
  CHECK(walker.address() == "size");
  CHECK(walker.shows("fuse position 7"));
  const vehicle::Vehicle both = stored_vehicle(walker, "2");
  REQUIRE(both.circuits.size() == 2);
  CHECK(both.circuits.back().position == 7);
  REQUIRE(walker.go("circuits/block/2/1"));
  REQUIRE(walker.set(Role::spin, "Battery to block", "3.5 m"));
  CHECK(stored_vehicle(walker, "2").blocks.front().feeder.run.number() == doctest::Approx(3.5));
  for (const auto& each : stored_vehicle(walker, "2").circuits)
    CHECK(vehicle::circuit_of(stored_vehicle(walker, "2"), each.id).supply.feeder_run.number() == doctest::Approx(3.5));
  check_layout(walker);
}

TEST_CASE("the fuse position: a spare one, or one that changes places") {
  AppWalker walker;
  look_at(walker, "size/more");
  REQUIRE(walker.press("New circuit"));
  REQUIRE(walker.go("size/label"));
  REQUIRE_MESSAGE(walker.press("Fuse block"), walker.all());
  REQUIRE_MESSAGE(walker.press(Role::radio, "Position 4"), walker.all());
  const vehicle::Vehicle now = stored_vehicle(walker, "2");
  REQUIRE(now.circuits.size() == 2);
  CHECK(now.circuits[0].plan.name == "Bench outlets");
  CHECK(now.circuits[0].position == 1);
  CHECK(now.circuits[1].position == 4);
  check_layout(walker);
}

TEST_CASE("what is there: as planned in one tap, then one run that differs, and the plan that follows it") {
  AppWalker walker;
  look_at(walker, "size");
  REQUIRE(walker.press("What is there"));
  INFO(walker.all());
  REQUIRE(walker.press("Built as planned: 10 AWG, 15 A"));
  CHECK(walker.shows("This fuse protects this wire"));
  const auto built = [&walker] { return *stored_vehicle(walker, "2").circuits.front().built; };
  for (const vehicle::BuiltRun& run : built().runs) CHECK(run.size == vehicle::Knowledge::known);
  REQUIRE(walker.press("To C"));
  REQUIRE(walker.press(Role::checkbox, "Wire to C 12 AWG"));
  CHECK(built().circuit.outlets.back().run.size == "12awg");
  REQUIRE(walker.set(Role::spin, "Length of the wire to C", "1.6 m"));
  CHECK(built().circuit.outlets.back().run.length.number() == doctest::Approx(1.6));
  CHECK(built().runs.back().length == vehicle::Knowledge::known);
  // The plan is as it was, until it is told to follow.
  CHECK(stored_circuit(walker, "2").outlets.back().run.length.number() == doctest::Approx(1.0));
  REQUIRE(walker.press("Plan with this wire: it stays, and Size works out the rest"));
  CHECK(stored_circuit(walker, "2").outlets.back().run.size == "12awg");
  CHECK(stored_circuit(walker, "2").outlets.back().run.length.number() == doctest::Approx(1.6));
  check_layout(walker);
  // An outlet that the plan has later is told of, and taken over as not known.
  REQUIRE(walker.go("size/outlet/3"));
  REQUIRE(walker.press("Add an outlet after C"));
  REQUIRE(walker.go("size/built"));
  CHECK(walker.shows("The plan has other outlets by now"));
  REQUIRE(walker.press("Take the plan's outlets over"));
  REQUIRE(built().runs.size() == 4);
  CHECK(built().runs.back().size == vehicle::Knowledge::unknown);
  CHECK(built().circuit.outlets[2].run.size == "12awg");
  CHECK(walker.shows("Trace will name no fuse rating"));
}

TEST_CASE("a full block says what to do, and nothing is made") {
  AppWalker walker;
  look_at(walker, "circuits/block/2/1");
  REQUIRE(walker.set(Role::spin, "Positions", "4"));
  for (int i = 0; i < 3; ++i) {
    REQUIRE(walker.go("size/more"));
    REQUIRE(walker.press("New circuit"));
  }
  const std::string before = walker.host.records["vehicle/2"];
  REQUIRE(walker.go("size/more"));
  REQUIRE(walker.press("New circuit"));
  CHECK_MESSAGE(walker.shows("The block has no spare position. Give it more positions, or add a block."), walker.all());
  CHECK(walker.host.records["vehicle/2"] == before);
}

TEST_CASE("a device by its kind: one tap gives what it draws and its name, one undo takes it back") {
  AppWalker walker;
  look_at(walker, "size/outlet/3");
  REQUIRE(walker.press("Add an outlet after C"));
  const auto outlet = [&walker] { return stored_circuit(walker, "2").outlets.back(); };
  CHECK(outlet().devices.front().load.rating == 0.0);
  check_layout(walker);
  REQUIRE_MESSAGE(walker.press("Cool box, compressor"), walker.all());
  CHECK(outlet().name == "Cool box, compressor");
  CHECK(outlet().devices.front().preset == "cool-box");
  CHECK(outlet().devices.front().load.rating == 45.0);
  CHECK(outlet().devices.front().load.rating_in_watts);
  CHECK(outlet().devices.front().load.kind == circuit::LoadKind::constant_power);
  CHECK(outlet().devices.front().inrush.has_value());
  check_layout(walker);
  REQUIRE(walker.press("Kind of device"));
  REQUIRE(walker.press("Other kinds"));
  REQUIRE(walker.press("Windlass"));
  CHECK(outlet().devices.front().load.rating == 800.0);
  CHECK(outlet().devices.front().use == circuit::Use::momentary);
  CHECK(outlet().name == "Cool box, compressor");   // a name that is there stays
  REQUIRE(walker.go("size/more"));
  REQUIRE(walker.press("Undo"));
  CHECK(outlet().devices.front().preset == "cool-box");
}

TEST_CASE("where the volts go: the parts add up to what is lost, and a table of the wire alone stands beside") {
  AppWalker walker;
  look_at(walker, "size");
  REQUIRE_MESSAGE(walker.press("Where the volts go"), walker.all());
  INFO(walker.all());
  CHECK(walker.shows("of what is lost"));
  CHECK(walker.shows("A table that counts the wire alone says"));
  check_layout(walker);
  const circuit::Circuit circuit = stored_circuit(walker, "2");
  const sizing::Answer answer = sizing::size_circuit(circuit);
  const sizing::VoltShares went = sizing::where_volts_go(circuit, *answer.choice());
  double sum = 0.0;
  for (const sizing::VoltShare& share : went.shares) {
    sum += share.volts.number();
    CHECK(walker.shows(units::number_text(share.volts.number(), 2) + " V"));
  }
  CHECK(sum == doctest::Approx((went.at_battery - went.at_device).number()).epsilon(1e-6));
}
