// Circuits as version 1 could tell them, and their text as its writer made it.
#pragma once

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "document/circuit_file.h"
#include "vehicle/random_vehicle.h"
#include "vehicle/vehicle.h"

namespace version_1 {

// One device at an outlet, one wire throughout, a splice everywhere; no word that came later.
inline circuit::Circuit told_in_version_1(circuit::Circuit circuit) {
  circuit.practice.reset();
  circuit.colours.clear();
  const circuit::Supply all = circuit.supply;
  circuit.supply = circuit::Supply{};
  circuit.supply.nominal = all.nominal;
  circuit.supply.battery = all.battery;
  circuit.supply.resting = all.resting;
  circuit.supply.low = all.low;
  circuit.supply.feeder_run = all.feeder_run;
  circuit.supply.main_fuse = all.main_fuse;
  const auto old_size = [](std::string size) { return size.find("sae") == std::string::npos ? size : "10awg"; };
  circuit.supply.feeder_size = old_size(all.feeder_size);
  if (circuit.wiring.gauge == tables::GaugeSystem::sae) circuit.wiring.gauge = tables::GaugeSystem::awg;
  if (circuit.wiring.ampacity_table == tables::AmpacityTableId::clipped_bs) circuit.wiring.ampacity_table = tables::AmpacityTableId::clipped_iec;
  std::erase_if(circuit.shelf.missing_sizes, [](const std::string& size) { return size.find("sae") != std::string::npos; });
  if (circuit.in_hand) circuit.in_hand->size = old_size(circuit.in_hand->size);
  for (circuit::Outlet& outlet : circuit.outlets) {
    const units::Metres length = outlet.run.length;
    outlet.run = circuit::Run{};
    outlet.run.length = length;
    outlet.point = circuit::PointKind::outlet;
    outlet.joint = circuit::Joint::splice;
    outlet.taps = 1;
    outlet.devices.resize(1);
    const circuit::Load load = outlet.devices.front().load;
    outlet.devices.front() = circuit::Device{};
    outlet.devices.front().load = load;
  }
  return circuit;
}

// Version 2 leaves out what version 1 did not know, so that only the number differs; the schema of
// version 1 is asked in the tests whether that is so.
inline std::string text_of(const std::vector<circuit::Circuit>& circuits) {
  std::string text = document::write_circuits(circuits);
  const std::string now = "\"version\": 2,";
  const std::size_t at = text.find(now);
  REQUIRE(at != std::string::npos);
  return text.replace(at, now.size(), "\"version\": 1,");
}

// What a vehicle knows better than version 1 did: what the others draw, and the name of a place
// that had none.
inline circuit::Circuit as_it_was(circuit::Circuit seen, const circuit::Circuit& before) {
  if (before.place.empty()) {
    CHECK(seen.place == before.name);
    seen.place.clear();
  }
  seen.supply.beside = units::Amperes(0.0);
  return seen;
}

}  // namespace version_1
