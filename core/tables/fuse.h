// Fuse families: standard ratings, what each may break, and the published gates between
// which a fuse must open at a multiple of its rating.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "tables/citation.h"
#include "units/quantity.h"

namespace tables {

enum class FuseFamilyId { blade, mini_blade, large_blade, bolt_on, blade_high_voltage };

// At `multiple` times its rating the fuse holds for `not_before` and opens no later than
// `opens_within`; an absent time means that nothing is promised.
struct FuseGate {
  double multiple;
  std::optional<units::Seconds> not_before;
  std::optional<units::Seconds> opens_within;
  Standing standing;
};

struct FuseFamily {
  FuseFamilyId id;
  std::string_view key;              // stable key in files
  std::string_view name;             // "Blade fuse"
  units::Volts rated_voltage;        // d.c.
  units::Amperes breaking_capacity;
  std::span<const double> ratings_a; // ascending
  std::span<const FuseGate> gates;   // ascending multiple
  const Citation* citation;
};
std::span<const FuseFamily> fuse_families();
const FuseFamily& fuse_family(FuseFamilyId id);
const FuseFamily* fuse_family_by_key(std::string_view key);

// Colour word of a rating, empty where it has none or makers differ.
std::string_view fuse_colour(FuseFamilyId family, units::Amperes rating);

// Typical cold resistance of the element, nullopt when not listed; about +-20 %.
std::optional<units::Ohms> fuse_cold_resistance(FuseFamilyId family, units::Amperes rating);
const Citation& fuse_resistance_citation();

// Longest time the fuse may take at this current, by the slowest gate at or below the
// multiple (a step down between gates, never interpolated towards the fast side).
// nullopt: no gate promises that it opens at all (or the rating is not above 0).
std::optional<units::Seconds> opens_within(const FuseFamily& family, units::Amperes rating, units::Amperes current);

// Least time the fuse holds at this current, by the fastest gate at or above the multiple.
// nullopt: no gate promises that it holds for any time (or the rating is not above 0).
std::optional<units::Seconds> holds_for(const FuseFamily& family, units::Amperes rating, units::Amperes current);

}  // namespace tables
