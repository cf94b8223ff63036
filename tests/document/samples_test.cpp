// Every sample of every published format version opens, and saves as the present version.
// A sample is never edited once its version is out: old files have to open for ever.
#include <doctest/doctest.h>

#include "circuit/validate.h"
#include "document/circuit_file.h"
#include "files.h"

using document::read_circuits;
using document::write_circuits;

TEST_CASE("version 1 samples open without a word and write back byte for byte") {
  static_assert(document::kFormatVersion == 1, "version 1 samples no longer come back byte for byte: say so here");
  for (const auto& path : files::in_folder("version-1")) {
    CAPTURE(path.string());
    const std::string text = files::read(path);
    const auto read = read_circuits(text);
    for (const auto& problem : read.problems) FAIL_CHECK(one_line(problem));
    REQUIRE_FALSE(read.circuits.empty());
    CHECK(write_circuits(read.circuits) == text);
  }
}

TEST_CASE("the sample with every key means what it says") {
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
  CHECK(write_circuits(read.circuits) == text);
}
