// What must hold for any screen, whatever is on it.
#pragma once

#include <doctest/doctest.h>

#include <set>

#include "app_walker.h"
#include "document/vehicle_file.h"
#include "ui/parts.h"

// No text runs out of its place, no widget out of the window, everything pressed has a name and
// an identity of its own.
inline void check_layout(AppWalker& walker) {
  for (const std::string& words : walker.shell().widgets().parts().cut) FAIL_CHECK("cut: " << words);
  std::set<std::uint32_t> ids;
  for (const ui::Record& r : walker.records()) {
    if (r.role == ui::Role::end) continue;
    CAPTURE(r.name);
    const bool operated = r.role == ui::Role::button || r.role == ui::Role::link || r.role == ui::Role::checkbox ||
                          r.role == ui::Role::switch_ || r.role == ui::Role::radio || r.role == ui::Role::spin ||
                          r.role == ui::Role::textbox;
    if (operated) {
      CHECK_FALSE(r.name.empty());
      CHECK(ids.insert(r.id).second);
      if (r.role == ui::Role::spin) CHECK_FALSE(r.value.empty());
    }
    if (r.role == ui::Role::image || r.width <= 0) continue;   // a picture may be wider and scroll
    if (operated) CHECK(r.x >= -1.0F);
    if (operated) CHECK(r.x + r.width <= walker.around.width + 1.0F);
  }
}

// The first circuit of this vehicle as it is stored now, seen with all that it has from there.
inline circuit::Circuit stored_circuit(const AppWalker& walker, const std::string& vehicle) {
  const auto found = walker.host.records.find("vehicle/" + vehicle);
  REQUIRE(found != walker.host.records.end());
  const document::VehiclesRead read = document::read_vehicles(found->second);
  REQUIRE(read.vehicles.size() == 1);
  REQUIRE_FALSE(read.vehicles.front().circuits.empty());
  return vehicle::circuit_of(read.vehicles.front(), read.vehicles.front().circuits.front().id);
}
