// The rules sizing judges by that are not a row of a table: their figures and where each comes
// from. docs/sizing-rules.md tells why they were chosen.
#pragma once

#include <span>

#include "circuit/circuit.h"
#include "tables/citation.h"
#include "tables/conductor.h"
#include "units/quantity.h"

namespace sizing {

// A fuse carries at most 80 % of its rating for hours: rating >= 1.25 x the current as rated, at
// nominal voltage, and never below what such loads draw from a low or charging battery. Loads on for
// less than hours ask for their rated current: what the voltage adds to that is told in a note, and is
// never more than the fuse carries for hours (ISO 8820-3: 110 % of its rating for 100 h).
inline constexpr double kFuseMargin = 1.25;
inline constexpr double kFuseCarriesForLong = 1.10;
// A start this long is a load: wire, fuse and drop are for it.
inline constexpr units::Seconds kLongStart{60.0};
// One shorter than this asks for a larger fuse only where the fuse must open on it; where it merely
// may, a note says so.
inline constexpr units::Seconds kShortStart{1.0};
// Currents and ratings that differ by their last bits are equal: 31 A x 0.6 is right for an 18.6 A breaker.
inline constexpr double kRatingRounding = 1e-9;
constexpr bool within(units::Amperes value, units::Amperes limit) {
  return value.number() <= limit.number() * (1.0 + kRatingRounding);
}
const tables::Citation& start_citation();
const tables::Citation& fuse_margin_citation();

// The smallest of all ratings in the path bounds the fuse (IEC: In <= Iz, and the same for parts).
const tables::Citation& fuse_ceiling_citation();

// A short at the far end opens the fuse within this time, the longest for which the adiabatic
// rule below is meant.
inline constexpr units::Seconds kShortOpensWithin{5.0};
const tables::Citation& far_short_citation();

// I^2 t <= k^2 S^2; final temperature of the insulation in a short.
units::Celsius short_time_temperature(units::Celsius insulation_rating);
const tables::Citation& withstand_citation();

// Thinnest single conductor allowed in this setting.
struct MechanicalMinimum {
  units::SquareMillimetres area;
  const tables::Citation* citation;
};
MechanicalMinimum mechanical_minimum(circuit::Setting setting, tables::GaugeSystem gauge);

const tables::Citation& drop_citation();            // what the percentage is of, and usual limits
const tables::Citation& operating_point_citation();
const tables::Citation& device_minimum_citation();
const tables::Citation& fuse_voltage_citation();
const tables::Citation& vibration_citation();       // no twist-on connectors in what moves

// The widest drop that fixes() proposes by itself.
inline constexpr double kWidestUsualDrop = 0.10;

std::span<const tables::Citation* const> rule_citations();

}  // namespace sizing
