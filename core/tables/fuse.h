// Fuse families: standard ratings, what each may break at which voltage, the published gates
// between which a fuse must open at a multiple of its rating, and what it loses: its element,
// cold and warm, and its contacts. Families for branches, and kinds of main fuse or breaker.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "tables/citation.h"
#include "units/quantity.h"

namespace tables {

enum class FuseFamilyId {
  blade, mini_blade, large_blade, bolt_on, blade_high_voltage, blade_80v, bolt_on_80v,   // offered for a branch
  bolt_on_large, bolt_on_marine, terminal_post, class_t, breaker               // main protection only
};

// At `multiple` times its rating the fuse holds for `not_before` and opens no later than
// `opens_within`; an absent time means that nothing is promised. Of differing figures the fastest
// `not_before` and the slowest `opens_within` are kept.
struct FuseGate {
  double multiple;
  std::optional<units::Seconds> not_before;
  std::optional<units::Seconds> opens_within;
  Standing standing;
};

// Up to this voltage it breaks this current.
struct BreakingPoint {
  units::Volts up_to;
  units::Amperes breaks;
};

struct FuseFamily {
  FuseFamilyId id;
  std::string_view key;              // stable key in files
  std::string_view name;             // "Small blade fuse"
  std::string_view form;             // the standard's name of the form: "type F", "SF30"; may be empty
  units::Volts rated_voltage;        // d.c.
  units::Amperes breaking_capacity;  // at rated_voltage
  std::span<const BreakingPoint> breaking;  // ascending voltage, ends at rated_voltage
  std::span<const double> ratings_a; // ascending
  std::span<const FuseGate> gates;   // ascending multiple
  bool bolted;                       // on studs, not in clips
  bool may_be_main;
  bool resettable;                   // a breaker
  units::Ohms contact_resistance;    // both contacts together, good and new
  units::Volts element_drop;         // typical, warm, at its rating; where no rating of its own is listed
  std::string_view keywords;         // what else the trade calls it
  const Citation* citation;
};
// What a branch may be given.
std::span<const FuseFamily> fuse_families();
// What the battery's main protection may be.
std::span<const FuseFamily* const> main_fuse_kinds();
const FuseFamily& fuse_family(FuseFamilyId id);   // of either list
const FuseFamily* fuse_family_by_key(std::string_view key);   // of either list
std::string full_name(const FuseFamily& family);   // "Small blade fuse (type F)"
// The short-circuit current it may break in a system that reaches this voltage; 0 above its own.
units::Amperes breaks_at(const FuseFamily& family, units::Volts highest);

// Colour word of a rating, empty where it has none or makers differ.
std::string_view fuse_colour(FuseFamilyId family, units::Amperes rating);

// Typical cold resistance of the element, nullopt when not listed; about +-20 %.
std::optional<units::Ohms> fuse_cold_resistance(FuseFamilyId family, units::Amperes rating);
// The element warmed by its rated current: the listed drop over the rating, else the cold one by
// the factor below, else the family's typical drop. Always above 0 for a rating above 0.
units::Ohms fuse_hot_resistance(const FuseFamily& family, units::Amperes rating);
// The element carrying `current`: it warms with the square of its share of the rating, and not
// beyond it. This is what a drop is worked out with; the contacts come on top.
units::Ohms fuse_resistance(const FuseFamily& family, units::Amperes rating, units::Amperes current);
// Listed drops at the rating over cold resistance times rating: 1.31 to 1.67, mostly 1.42 to 1.47.
inline constexpr double kFuseHotFactor = 1.45;
const Citation& fuse_resistance_citation();
// Heat that melts the element (typical, adiabatic), nullopt when not listed.
std::optional<units::AmpereSquaredSeconds> fuse_melting_heat(FuseFamilyId family, units::Amperes rating);

// Longest time the fuse may take at this current, by the slowest gate at or below the
// multiple (a step down between gates, never interpolated towards the fast side).
// nullopt: no gate promises that it opens at all (or the rating is not above 0).
std::optional<units::Seconds> opens_within(const FuseFamily& family, units::Amperes rating, units::Amperes current);

// Least time the fuse holds at this current, by the fastest gate at or above the multiple: what an
// inrush must stay below.
// nullopt: no gate promises that it holds for any time (or the rating is not above 0).
std::optional<units::Seconds> holds_for(const FuseFamily& family, units::Amperes rating, units::Amperes current);

}  // namespace tables
