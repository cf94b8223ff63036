// Stranded copper conductors: three ladders of sizes, AWG 18 to 4/0, metric 0.75 to 120 mm2, and
// the thinner SAE sizes of vehicle cable, 18 to 4/0. A size is copper by default; what else it
// may be made of stands in wire_metal.h.
//
// Resistance is for ONE conductor. A run has a red and a black wire, so the loop is
// twice the one-way length.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "tables/citation.h"
#include "units/quantity.h"

namespace tables {

// sae: vehicle cable of SAE J1127 and J1128. The number is that of AWG, the copper is 3 to 11 %
// less; it is met in walls and on reels of primary wire.
enum class GaugeSystem { awg, metric, sae };
std::span<const GaugeSystem> gauge_systems();

struct Conductor {
  GaugeSystem system;
  std::string_view id;              // stable key in files: "10awg", "1/0awg", "2.5mm2", "12sae"
  std::string_view size;            // as printed on the wire: "10", "1/0", "2.5"
  units::SquareMillimetres area;    // AWG: by ASTM B258; metric: nominal; SAE: least area
  // Plain copper. AWG and SAE: IEC 60028 copper + 2 % lay; metric: IEC 60228 class 5 maximum.
  units::OhmsPerMetre resistance_20c;
  const Citation* citation;
};

// Ascending area. AWG: 18 16 14 12 10 8 6 4 3 2 1 1/0 2/0 3/0 4/0. SAE: the same without 3.
std::span<const Conductor> conductors(GaugeSystem system);
const Conductor* conductor_by_id(std::string_view id);  // nullptr when unknown
std::string_view gauge_system_suffix(GaugeSystem system);  // "AWG", "mm²", "SAE"

// R(T) = R20 * (1 + 0.00393 (T - 20)), IEC 60028; checked over -40 to 200 degC.
units::OhmsPerMetre resistance_at(units::OhmsPerMetre at_20c, units::Celsius conductor);

// Round wire by ASTM B258 for any gauge, 1/0 to 4/0 being 0 to -3, and back.
units::Millimetres awg_diameter(double gauge);
double awg_of_diameter(units::Millimetres diameter);
units::SquareMillimetres area_of_diameter(units::Millimetres diameter);
units::Millimetres diameter_of_area(units::SquareMillimetres area);
// A solid round copper conductor at 20 degC by IEC 60028; stranded wire has about 2 % more.
units::OhmsPerMetre solid_copper_20c(units::SquareMillimetres area);

// Short-time withstand constant k in A s^0.5 / mm2 of the adiabatic rule I^2 t <= k^2 S^2,
// from the conductor's starting and final temperature (IEC 60364-5-54 Annex A formula).
double adiabatic_k(units::Celsius start, units::Celsius final);

}  // namespace tables
