// Permitted continuous current by size, insulation rating and ampacity table, and the
// factors that lower it: ambient temperature and bundling. Never extrapolated: past the
// end of a table there is no value, and the answer says that the table ends.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "tables/citation.h"
#include "tables/conductor.h"
#include "tables/wire_metal.h"
#include "units/quantity.h"

namespace tables {

enum class AmpacityTableId {
  marine_us,      // 33 CFR 183.425 Table 5: single conductors in free air, 30 degC
  enclosed_iec,   // IEC 60364-5-52 method B (in conduit or trunking), 30 degC
  clipped_iec,    // IEC 60364-5-52 method C (clipped direct), 30 degC: from memory, below clipped_bs
  clipped_bs,     // BS 7671 Tables 4D1A and 4E1A, clipped direct, 30 degC: up to 9 % more than IEC prints
};

struct AmpacityTable {
  AmpacityTableId id;
  std::string_view key;        // stable key in files: "marine-us", "enclosed-iec", "clipped-iec", "clipped-bs"
  std::string_view name;       // plain words for the screen
  std::string_view about;      // one sentence: what it assumes
  const Citation* citation;
};
std::span<const AmpacityTable> ampacity_tables();
const AmpacityTable& ampacity_table(AmpacityTableId id);
const AmpacityTable* ampacity_table_by_key(std::string_view key);
// The table a circuit of this gauge system starts with: AWG and SAE marine_us, metric enclosed_iec.
// practice.h tells it by practice.
AmpacityTableId default_ampacity_table(GaugeSystem system);

// Insulation ratings offered: 60 70 75 80 90 105 125 200 degC.
std::span<const double> insulation_ratings_c();

// Where a circuit's wire lies.
struct Surroundings {
  units::Celsius ambient{30.0};       // air where the wire lies, -40 to 90
  bool hot_space = false;             // engine space: counts as at least 50 degC ambient, and under
                                      // marine_us never better than its printed engine-space factor
  units::Celsius insulation{105.0};   // rating printed on the wire
  int circuits_bundled = 1;           // circuits tied together, this one included, 1 to 20
};

// Every factor that made the figure, so that the screen can show the sum.
struct DeratedAmpacity {
  units::Amperes base;      // from the table, at 30 degC, alone, single copper wires
  double metal_factor = 1.0;    // below 1 for copper-clad aluminium
  double sheath_factor = 1.0;   // below 1 where both loaded conductors lie in one sheath
  double strand_factor = 1.0;   // fine strands under a table made for coarser wire; 1 when it is not
  double ambient_factor = 1.0;  // never above 1: a cold place earns nothing
  double bundling_factor = 1.0;
  units::Amperes derated;   // base and all the factors multiplied
  std::string row;          // the row read, e.g. "10 AWG, 105 °C"; another gauge's row where
                            // the size is not in the table but heats no more than that row's size
  const Citation* base_citation = nullptr;
  const Citation* metal_citation = nullptr;    // never null
  const Citation* sheath_citation = nullptr;   // never null
  const Citation* strand_citation = nullptr;
  const Citation* ambient_citation = nullptr;
  const Citation* bundling_citation = nullptr;
};

enum class NoAmpacity {
  table_ends,              // the size, or the count of bundled circuits, lies past the table's end
  insulation_below_table,  // no column for so low a rating
  too_hot,                 // ambient at or above the column's rating
};

struct AmpacityResult {
  std::optional<DeratedAmpacity> value;
  NoAmpacity why_not = NoAmpacity::table_ends;  // meaningful when there is no value
};
// A size without a row of its own (another list's, the thinner SAE) is read from the next smaller
// row whose wire heats as much or more.
AmpacityResult ampacity(AmpacityTableId table, const Conductor& size, const Surroundings& around,
                        WireBuild build = {});

// The circuit fuse ceiling of NEC 552.10(E)(1) for trailers and living vehicles in the US (from
// memory); nullopt for a size larger than the table has (10 AWG, 6 mm2). It binds only where that
// practice is chosen: ask practice_fuse_ceiling() in practice.h. A metric size takes the figure of the largest
// AWG with no more copper than its nominal area; 0.75 mm2 takes 5 A (both our choice).
std::optional<units::Amperes> road_vehicle_fuse_ceiling(const Conductor& size);
const Citation& road_vehicle_ceiling_citation();

}  // namespace tables
