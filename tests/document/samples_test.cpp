// Every sample of every published format version opens, and saves as the present version.
// A sample is never edited once its version is out: old files have to open for ever.
#include <doctest/doctest.h>

#include "circuit/validate.h"
#include "document/circuit_file.h"
#include "document/vehicle_file.h"
#include "files.h"

using document::read_circuits;
using document::write_circuits;

TEST_CASE("version 1 samples open without a word and write back byte for byte but for the version") {
  static_assert(document::kFormatVersion == 2, "say here how samples of the version before come back");
  for (const auto& path : files::in_folder("version-1")) {
    CAPTURE(path.string());
    std::string text = files::read(path);
    const auto read = read_circuits(text);
    for (const auto& problem : read.problems) FAIL_CHECK(one_line(problem));
    REQUIRE_FALSE(read.circuits.empty());
    CHECK(read.from_version == 1);
    const std::string version = "\"version\": 1,";
    text.replace(text.find(version), version.size(), "\"version\": 2,");
    CHECK(write_circuits(read.circuits) == text);
  }
}

TEST_CASE("version 2 samples open without a word and write back byte for byte") {
  for (const auto& path : files::in_folder("version-2")) {
    CAPTURE(path.string());
    const std::string text = files::read(path);
    if (path.filename() == "circuits.json") {
      const auto read = read_circuits(text);
      for (const auto& problem : read.problems) FAIL_CHECK(one_line(problem));
      CHECK(read.from_version == 2);
      CHECK(write_circuits(read.circuits) == text);
      continue;
    }
    const auto read = document::read_vehicles(text);
    for (const auto& problem : read.problems) FAIL_CHECK(one_line(problem));
    REQUIRE_FALSE(read.vehicles.empty());
    CHECK(read.from_version == 2);
    CHECK(document::write_vehicles(read.vehicles) == text);
    CHECK_FALSE(read_circuits(text).problems.empty());   // it holds vehicles
  }
}

TEST_CASE("the version 1 sample with every key means what it says") {
  const auto read = read_circuits(files::read(files::documents() / "version-1/every-key.json"));
  REQUIRE(read.circuits.size() == 1);
  const circuit::Circuit& c = read.circuits[0];
  CHECK(c.name == "Küche & <Bad> \"12\" \\ 🔌");
  CHECK(c.place.empty());
  CHECK(c.fuse_position == 99);
  CHECK(c.setting == circuit::Setting::boat);
  CHECK(c.supply.nominal == units::Volts(48));
  CHECK(c.supply.battery == "lifepo4");
  CHECK(c.supply.resting == units::Volts(53.1));
  CHECK(c.supply.low == units::Volts(47.9));
  CHECK(c.supply.feeder_run == units::Metres(0));
  CHECK(c.supply.feeder_size == "35mm2");
  CHECK(c.supply.main_fuse == units::Amperes(0));
  CHECK(c.wiring.gauge == tables::GaugeSystem::metric);
  CHECK(c.wiring.ampacity_table == tables::AmpacityTableId::clipped_iec);
  CHECK(c.wiring.around.ambient == units::Celsius(-12.5));
  CHECK(c.wiring.around.hot_space);
  CHECK(c.wiring.around.insulation == units::Celsius(90));
  CHECK(c.wiring.around.circuits_bundled == 7);
  CHECK(c.wiring.wire_temperature == units::Celsius(1.0 / 3.0));
  CHECK(c.wiring.fuse_family == tables::FuseFamilyId::blade_high_voltage);
  CHECK(c.wiring.clamp_part == "clamp-6");
  CHECK(c.wiring.clamp_rating == units::Amperes(32.5));
  CHECK(c.wiring.ferrule);
  CHECK(c.wiring.splice_part == "splice-lever-6");
  CHECK(c.wiring.tail == units::Metres(0));
  CHECK(c.drop_limit == 0.05);
  CHECK_FALSE(c.at_most_at_once.has_value());
  REQUIRE(c.outlets.size() == 4);
  CHECK(c.outlets[0].devices.front().load.kind == circuit::LoadKind::resistive);
  CHECK(c.outlets[0].devices.front().load.rating_in_watts);
  CHECK(c.outlets[0].devices.front().load.rating == 99.95);
  CHECK(c.outlets[0].devices.front().load.minimum_voltage == units::Volts(40.1));
  CHECK(c.outlets[1].devices.front().load.kind == circuit::LoadKind::constant_power);
  CHECK_FALSE(c.outlets[1].devices.front().load.rating_in_watts);
  CHECK(c.outlets[1].devices.front().load.rating == 0.1 + 0.2);
  CHECK(c.outlets[1].drop_limit == 0.2);
  CHECK(c.outlets[2].id == circuit::OutletId{3});
  CHECK(c.outlets[2].fed_from == circuit::OutletId{1});
  CHECK(c.outlets[2].rating == units::Amperes(12));
  CHECK(c.outlets[3].fed_from == circuit::kBlock);
  CHECK(c.outlets[3].devices.front().load.rating == 0.0);
  CHECK(c.shelf.missing_sizes == std::vector<std::string>{"2.5mm2", "10awg"});
  CHECK(c.shelf.missing_fuses_a == std::vector<double>{7.5, 15.0});
  REQUIRE(c.in_hand.has_value());
  CHECK(c.in_hand->size == "4mm2");
  CHECK(c.in_hand->fuse == units::Amperes(0.5));
  CHECK(c.next_outlet_id == 1000);
}

TEST_CASE("a byte order mark, other line ends, other spacing and other key order are all read") {
  const std::string text = files::read(files::documents() / "version-1/bench.json");
  CHECK(read_circuits("\xEF\xBB\xBF" + text).circuits.size() == 1);
  std::string windows;
  std::string tight;
  for (const char c : text) {
    windows += c == '\n' ? "\r\n" : std::string(1, c);
    if (c != '\n') tight += c;
  }
  CHECK(read_circuits(windows).circuits.size() == 1);
  CHECK(read_circuits(tight).circuits.size() == 1);
  const std::string version = "\"version\": 1,";
  std::string turned = text;
  turned.erase(turned.find(version), version.size());
  turned.insert(turned.find("\"format\""), version);
  const auto read = read_circuits(turned);
  REQUIRE(read.circuits.size() == 1);
  CHECK(write_circuits(read.circuits) == write_circuits(read_circuits(text).circuits));
}

TEST_CASE("what version 2 leaves out means what it always did") {
  const auto read = document::read_vehicles(files::read(files::documents() / "version-2/small.json"));
  REQUIRE(read.vehicles.size() == 1);
  const vehicle::Vehicle& v = read.vehicles[0];
  CHECK_FALSE(v.practice.has_value());
  CHECK(v.colours.empty());
  CHECK(v.battery.capacity_ah == 0.0);
  CHECK_FALSE(v.battery.resting.has_value());
  CHECK_FALSE(v.battery.low.has_value());
  CHECK_FALSE(v.battery.internal_resistance.has_value());
  CHECK(v.sources.empty());
  REQUIRE(v.blocks.size() == 1);
  CHECK_FALSE(v.blocks[0].rating.has_value());
  CHECK_FALSE(v.blocks[0].disconnect.has_value());
  CHECK_FALSE(v.blocks[0].clamp_rating.has_value());
  CHECK_FALSE(v.blocks[0].at_most_at_once.has_value());
  CHECK(v.blocks[0].feeder.metal == tables::WireMetal::copper);
  REQUIRE(v.circuits.size() == 1);
  CHECK_FALSE(v.circuits[0].built.has_value());
  CHECK(v.circuits[0].traces.empty());
  const circuit::Outlet& o = v.circuits[0].plan.outlets.at(1);
  CHECK(o.point == circuit::PointKind::outlet);
  CHECK_FALSE(o.run.size.has_value());
  CHECK(o.run.metal == tables::WireMetal::copper);
  CHECK_FALSE(o.run.two_core);
  CHECK(o.run.back == circuit::ReturnPath::wire);
  CHECK(o.run.in_line.empty());
  CHECK(o.joint == circuit::Joint::splice);
  CHECK(o.taps == 1);
  CHECK_FALSE(o.drop_limit.has_value());
  CHECK_FALSE(o.rating.has_value());
  REQUIRE(o.devices.size() == 1);
  CHECK(o.devices[0].name.empty());
  CHECK(o.devices[0].preset.empty());
  CHECK(o.devices[0].use == circuit::Use::continuous);
  CHECK_FALSE(o.devices[0].inrush.has_value());
  CHECK_FALSE(o.devices[0].own_fuse.has_value());
  const auto everything = document::read_vehicles(files::read(files::documents() / "version-2/everything.json"));
  REQUIRE(everything.vehicles.size() == 1);
  CHECK(everything.vehicles[0].sources.at(1).cable_metal == tables::WireMetal::copper);
  CHECK(everything.vehicles[0].sources.at(1).fuse_kind == tables::FuseFamilyId::blade);
  const vehicle::Built& built = everything.vehicles[0].circuits.at(1).built.value();
  CHECK(built.date.empty());
  CHECK(built.fuse == units::Amperes(0.0));
  const auto circuits = read_circuits(files::read(files::documents() / "version-2/circuits.json"));
  REQUIRE(circuits.circuits.size() == 2);
  const circuit::Supply& supply = circuits.circuits[1].supply;
  CHECK_FALSE(supply.highest.has_value());
  CHECK_FALSE(supply.internal_resistance.has_value());
  CHECK(supply.feeder_metal == tables::WireMetal::copper);
  CHECK(supply.main_fuse_kind == tables::FuseFamilyId::bolt_on);
  CHECK(supply.main_fuse_distance == units::Metres(0.15));
  CHECK_FALSE(supply.disconnect.has_value());
  CHECK_FALSE(supply.block_rating.has_value());
  CHECK(supply.beside == units::Amperes(0.0));
}

TEST_CASE("the version 2 sample with everything means what it says") {
  const auto read = document::read_vehicles(files::read(files::documents() / "version-2/everything.json"));
  REQUIRE(read.vehicles.size() == 1);
  const vehicle::Vehicle& v = read.vehicles[0];
  CHECK(v.name == "Werkstatt & <Anhänger> \"2\" \\ 🔌");
  CHECK(v.kind == circuit::Setting::trailer);
  CHECK(v.practice == tables::Practice::european_vehicle);
  CHECK(v.colours == "vehicle-europe");
  CHECK(v.battery.nominal == units::Volts(24));
  CHECK(v.battery.kind == "lifepo4");
  CHECK(v.battery.capacity_ah == 200.5);
  CHECK(v.battery.resting == units::Volts(26.6));
  CHECK(v.battery.low == units::Volts(24.2));
  CHECK(v.battery.internal_resistance == units::Ohms(0.012));
  REQUIRE(v.sources.size() == 2);
  CHECK(v.sources[0].id == vehicle::SourceId{2});
  CHECK(v.sources[0].kind == vehicle::SourceKind::alternator);
  CHECK(v.sources[0].name == "Alternator");
  CHECK(v.sources[0].highest == units::Volts(28.8));
  CHECK(v.sources[0].most == units::Amperes(80));
  CHECK(v.sources[0].cable_run == units::Metres(4.25));
  CHECK(v.sources[0].cable_size == "25mm2");
  CHECK(v.sources[0].cable_metal == tables::WireMetal::tinned_copper);
  CHECK(v.sources[0].fuse == units::Amperes(100));
  CHECK(v.sources[0].fuse_kind == tables::FuseFamilyId::bolt_on);
  CHECK(v.sources[1].kind == vehicle::SourceKind::solar);
  REQUIRE(v.blocks.size() == 2);
  const vehicle::Block& block = v.blocks[0];
  CHECK(block.id == vehicle::BlockId{1});
  CHECK(block.name == "Bench block");
  CHECK(block.positions == 12);
  CHECK(block.rating == units::Amperes(100));
  CHECK(block.main.kind == tables::FuseFamilyId::bolt_on);
  CHECK(block.main.rating == units::Amperes(80));
  CHECK(block.main.distance == units::Metres(0.12));
  CHECK(block.disconnect == units::Amperes(275));
  CHECK(block.feeder.run == units::Metres(1.4));
  CHECK(block.feeder.size == "16mm2");
  CHECK(block.feeder.metal == tables::WireMetal::copper_clad_aluminium);
  CHECK(block.fuse_family == tables::FuseFamilyId::blade);
  CHECK(block.clamp_part == "clamp-16");
  CHECK(block.clamp_rating == units::Amperes(32.5));
  CHECK(block.at_most_at_once == units::Amperes(60));
  REQUIRE(v.circuits.size() == 2);
  CHECK(v.circuits[1].id == vehicle::CircuitId{6});
  CHECK(v.circuits[1].block == vehicle::BlockId{4});
  CHECK(v.circuits[1].position == 5);
  CHECK(v.next_id == 7);
  const circuit::Circuit& plan = v.circuits[0].plan;
  CHECK(plan.name == "Bench");
  CHECK(plan.wiring.gauge == tables::GaugeSystem::sae);
  CHECK(plan.wiring.ferrule);
  CHECK(plan.at_most_at_once == units::Amperes(12));
  CHECK(plan.in_hand->size == "12sae");
  CHECK(plan.next_outlet_id == 12);
  REQUIRE(plan.outlets.size() == 4);
  CHECK(plan.outlets[0].point == circuit::PointKind::junction);
  CHECK(plan.outlets[0].devices.empty());
  CHECK(plan.outlets[0].run.size == "10sae");
  CHECK(plan.outlets[0].run.metal == tables::WireMetal::tinned_copper);
  REQUIRE(plan.outlets[0].run.in_line.size() == 2);
  CHECK(plan.outlets[0].run.in_line[0] == circuit::InLine{circuit::InLineKind::toggle, units::Amperes(20)});
  CHECK(plan.outlets[0].run.in_line[1] == circuit::InLine{circuit::InLineKind::relay, units::Amperes(30)});
  CHECK(plan.outlets[1].point == circuit::PointKind::sub_block);
  CHECK(plan.outlets[1].run.two_core);
  CHECK(plan.outlets[2].run.back == circuit::ReturnPath::chassis);
  CHECK(plan.outlets[2].run.in_line.at(0).kind == circuit::InLineKind::breaker);
  CHECK(plan.outlets[2].joint == circuit::Joint::direct);
  const circuit::Device& device = plan.outlets[2].devices.at(0);
  CHECK(device.name == "Tyre inflator");
  CHECK(device.preset == "compressor");
  CHECK(device.load == circuit::Load{circuit::LoadKind::constant_power, true, 99.95, units::Volts(21)});
  CHECK(device.use == circuit::Use::momentary);
  CHECK(device.inrush == circuit::Inrush{units::Amperes(22.5), units::Seconds(0.4)});
  CHECK(device.own_fuse == units::Amperes(10));
  REQUIRE(plan.outlets[3].devices.size() == 2);
  CHECK(plan.outlets[3].devices[0].use == circuit::Use::intermittent);
  CHECK(plan.outlets[3].devices[1].name == "Tablet");
  CHECK(plan.outlets[3].run.in_line.at(0) == circuit::InLine{circuit::InLineKind::fuse, units::Amperes(7.5)});
  CHECK(v.circuits[1].plan.outlets.at(0).taps == 12);
  const vehicle::Built& built = v.circuits[0].built.value();
  CHECK(built.date == "2026-11-25");
  CHECK(built.fuse == units::Amperes(15));
  CHECK(built.fuse_knowledge == vehicle::Knowledge::known);
  REQUIRE(built.runs.size() == 4);
  CHECK(built.runs[1] == vehicle::BuiltRun{{7}, vehicle::Knowledge::guessed, vehicle::Knowledge::guessed});
  CHECK(built.runs[2] == vehicle::BuiltRun{{3}, vehicle::Knowledge::known, vehicle::Knowledge::unknown});
  CHECK(built.runs[3] == vehicle::BuiltRun{{4}, vehicle::Knowledge::unknown, vehicle::Knowledge::guessed});
  CHECK(built.circuit.outlets.at(1).run.size == "12awg");
  CHECK(built.circuit.outlets.at(1).run.length == units::Metres(0.4));
  REQUIRE(v.circuits[0].traces.size() == 2);
  const vehicle::TraceRecord& trace = v.circuits[0].traces[0];
  CHECK(trace.number == 1);
  CHECK(trace.date == "2026-11-24");
  CHECK(trace.circuit == "Bench outlets");
  CHECK(trace.complaint == "One outlet is dead: C");
  REQUIRE(trace.told.size() == 2);
  CHECK(trace.told[0].question == "Do the other outlets of this circuit work?");
  CHECK(trace.told[0].answer == "All of them");
  CHECK(trace.outcome == "The red tab at C was loose. Works again.");
}
