// What a conductor is made of, and how many of them lie in one sheath. Sizes are those of
// conductor.h, in plain copper; here is what another metal makes of them.
#pragma once

#include <span>
#include <string_view>

#include "tables/citation.h"
#include "tables/conductor.h"
#include "units/quantity.h"

namespace tables {

// copper_clad_aluminium: so that what lies in a wall can be told and judged. Never recommended,
// and no size is ever proposed in it.
enum class WireMetal { copper, tinned_copper, copper_clad_aluminium };

struct WireMetalRow {
  WireMetal metal;
  std::string_view key;        // stable key in files: "copper", "tinned-copper", "copper-clad-aluminium"
  std::string_view name;
  double resistance_factor;    // times plain copper of the same size; resistance_20c() may know it finer
  double ampacity_factor;      // times the figure for copper of the same size, at most 1
  double withstand_factor;     // times adiabatic_k() of copper, at most 1
  bool recommended;
  std::string_view caution;    // empty where none is needed
  std::string_view note;
  const Citation* citation;
};
std::span<const WireMetalRow> wire_metals();
const WireMetalRow& wire_metal(WireMetal metal);
const WireMetalRow* wire_metal_by_key(std::string_view key);   // nullptr when unknown

// Of one conductor of this size and metal at 20 degC. Tinned: the tinned column of IEC 60228
// class 5 for metric sizes, the coated column of NEC Chapter 9 Table 8 for AWG; else the factor.
units::OhmsPerMetre resistance_20c(const Conductor& size, WireMetal metal);
const Citation& resistance_citation(const Conductor& size, WireMetal metal);
double ampacity_factor(WireMetal metal);

// How a wire is built. Single: red and black each by itself. Two-core: both loaded conductors in
// one sheath, so that each warms the other.
struct WireBuild {
  WireMetal metal = WireMetal::copper;
  bool two_core = false;
  friend constexpr bool operator==(const WireBuild&, const WireBuild&) = default;
};

}  // namespace tables
