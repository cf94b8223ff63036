// Whose rules an installation follows: living vehicles and trailers in North America, boats by US
// or by international small-craft practice, European living vehicles, buildings. A rule of one
// practice binds only where that practice is chosen.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "tables/ampacity.h"
#include "tables/citation.h"
#include "tables/conductor.h"
#include "units/quantity.h"

namespace tables {

enum class Practice { us_rv, us_marine, european_vehicle, small_craft, building };

// What a practice asks, in words; for people, not judged by itself.
struct PracticeText {
  std::string_view what;
  std::string_view says;
  const Citation* citation;
};

struct PracticeRow {
  Practice id;
  std::string_view key;             // stable key in files: "us-rv", "us-marine", "european-vehicle", ...
  std::string_view name;
  std::string_view about;
  AmpacityTableId ampacity_table;   // where a circuit of this practice starts
  bool bounds_fuse_by_wire;         // practice_fuse_ceiling() has figures
  std::span<const PracticeText> texts;
  const Citation* citation;
};
std::span<const PracticeRow> practices();
const PracticeRow& practice(Practice id);
const PracticeRow* practice_by_key(std::string_view key);   // nullptr when unknown

// Where an installation stands, and with what wire: the practice to start with. Metric vehicles
// follow European practice, metric boats international small-craft practice.
enum class Ground { road, water, fixed };
Practice usual_practice(Ground ground, GaugeSystem wire);

// Largest fuse that the practice allows on this size whatever the ampacity; nullopt: it sets none.
// Today only us_rv does (NEC 552.10(E)(1), from memory).
std::optional<units::Amperes> practice_fuse_ceiling(Practice practice, const Conductor& size);
const Citation* practice_fuse_ceiling_citation(Practice practice);   // nullptr where it sets none

}  // namespace tables
