#include "tables/fuse.h"

#include <array>

#include "tables/citation_list.h"

namespace tables {
namespace {

using units::Amperes;
using units::Seconds;
using units::Volts;

// 'holds' is the least time, 'opens' the most. Where editions or copies differ the slowest
// opening is kept; the note of each family's citation tells the others.
constexpr FuseGate gate(double multiple, std::optional<double> holds_s, std::optional<double> opens_s,
                        Standing standing) {
  FuseGate result{multiple, std::nullopt, std::nullopt, standing};
  if (holds_s) result.not_before = Seconds(*holds_s);
  if (opens_s) result.opens_within = Seconds(*opens_s);
  return result;
}
constexpr std::nullopt_t kNone = std::nullopt;
constexpr double kHundredHours = 360000.0;
constexpr double kFourHours = 14400.0;

constexpr std::array kMediumRatings{1.0, 2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0};
constexpr std::array kMiniRatings{2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0};
constexpr std::array kLargeRatings{20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0};
constexpr std::array kBoltOnRatings{30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 100.0, 125.0, 150.0, 175.0, 200.0};

// Medium blade. 1.6 and 2.0 were seen for a 10 A fuse, 1.0, 2.0, 3.5 and 6.0 for 35 and 40 A;
// the other ratings are from memory, and a gate stands for the whole family.
constexpr std::array kMediumGates{
    gate(1.00, kHundredHours, kNone, Standing::seen),
    gate(1.35, 0.75, 1800.0, Standing::memory),  // 120, 600 or 1800 s by edition
    gate(1.60, 0.25, 50.0, Standing::seen),
    gate(2.00, 0.15, 5.0, Standing::seen_twice),
    gate(3.50, 0.04, 0.5, Standing::seen),       // 0.25 s in some editions
    gate(6.00, kNone, 0.15, Standing::seen),     // 0.1 s up to 30 A, from memory
};
constexpr std::array kMiniGates{
    gate(1.00, kHundredHours, kNone, Standing::memory),
    gate(1.35, 0.75, 1800.0, Standing::memory),
    gate(1.60, 0.25, 50.0, Standing::memory),
    gate(2.00, 0.15, 5.0, Standing::memory),
    gate(3.50, 0.04, 0.5, Standing::memory),
    gate(6.00, kNone, 0.15, Standing::memory),   // 0.1 s remembered; kept as slow as the medium blade
};
constexpr std::array kLargeGates{
    gate(1.00, kHundredHours, kNone, Standing::seen),
    gate(1.35, 60.0, 1800.0, Standing::seen),
    gate(2.00, 2.0, 60.0, Standing::memory),     // 50 s seen, 60 s in other copies
    gate(3.50, 0.2, 7.0, Standing::seen),
    gate(6.00, 0.04, 1.0, Standing::seen),
};
constexpr std::array kBoltOnGates{
    gate(1.00, kFourHours, kNone, Standing::memory),
    gate(1.35, 120.0, 1800.0, Standing::memory),
    gate(2.00, 1.0, 15.0, Standing::memory),
    gate(3.50, 0.3, 5.0, Standing::memory),
    gate(6.00, 0.1, 1.0, Standing::memory),
};

constinit const std::array<FuseFamily, 5> kFamilies{{
    {FuseFamilyId::blade, "blade", "Blade fuse", Volts(32.0), Amperes(1000.0), kMediumRatings, kMediumGates,
     &kBladeFuse},
    {FuseFamilyId::mini_blade, "mini-blade", "Mini blade fuse", Volts(32.0), Amperes(1000.0), kMiniRatings,
     kMiniGates, &kMiniBladeFuse},
    {FuseFamilyId::large_blade, "large-blade", "Large blade fuse", Volts(32.0), Amperes(1000.0), kLargeRatings,
     kLargeGates, &kLargeBladeFuse},
    // Remembered as 1000 to 2000 A at 32 to 58 V by maker: the lowest of each.
    {FuseFamilyId::bolt_on, "bolt-on", "Bolted strip fuse", Volts(32.0), Amperes(1000.0), kBoltOnRatings,
     kBoltOnGates, &kBoltOnFuse},
    {FuseFamilyId::blade_high_voltage, "blade-58v", "Blade fuse marked 58 V", Volts(58.0), Amperes(1000.0),
     kMiniRatings, kMiniGates, &kHighVoltageBladeFuse},
}};

// Colours of medium and mini blades and their 58 V kin; large blades differ between makers.
struct Colour {
  double rating_a;
  std::string_view word;
};
constexpr std::array<Colour, 12> kBladeColours{{{1.0, "black"}, {2.0, "grey"}, {3.0, "violet"}, {4.0, "pink"},
                                                {5.0, "tan"}, {7.5, "brown"}, {10.0, "red"}, {15.0, "blue"},
                                                {20.0, "yellow"}, {25.0, "clear"}, {30.0, "green"},
                                                {40.0, "orange"}}};  // 35 A varies

struct ColdResistance {
  double rating_a;
  double milliohm;
};
constexpr std::array<ColdResistance, 12> kMediumCold{{{1.0, 123.0}, {2.0, 53.5}, {3.0, 31.1}, {4.0, 22.8},
                                                      {5.0, 17.85}, {7.5, 10.91}, {10.0, 7.7}, {15.0, 4.8},
                                                      {20.0, 3.38}, {25.0, 2.52}, {30.0, 1.97}, {40.0, 1.44}}};
constexpr std::array<ColdResistance, 3> kLargeCold{{{30.0, 1.9}, {35.0, 1.7}, {40.0, 1.4}}};

std::span<const ColdResistance> cold_resistances(FuseFamilyId family) {
  switch (family) {
    case FuseFamilyId::blade: return kMediumCold;
    case FuseFamilyId::large_blade: return kLargeCold;
    case FuseFamilyId::mini_blade:
    case FuseFamilyId::bolt_on:
    case FuseFamilyId::blade_high_voltage: break;
  }
  return {};
}

bool has_blade_colours(FuseFamilyId family) {
  return family == FuseFamilyId::blade || family == FuseFamilyId::mini_blade ||
         family == FuseFamilyId::blade_high_voltage;
}

// Ratings are typed or picked from the list, never computed: they match to a rounding error.
bool same_rating(double a, double b) { return a - b < 1e-6 && b - a < 1e-6; }

}  // namespace

std::span<const FuseFamily> fuse_families() { return kFamilies; }

const FuseFamily& fuse_family(FuseFamilyId id) {
  for (const FuseFamily& family : kFamilies) {
    if (family.id == id) return family;
  }
  return kFamilies.front();
}

const FuseFamily* fuse_family_by_key(std::string_view key) {
  for (const FuseFamily& family : kFamilies) {
    if (family.key == key) return &family;
  }
  return nullptr;
}

std::string_view fuse_colour(FuseFamilyId family, units::Amperes rating) {
  if (!has_blade_colours(family)) return {};
  for (const Colour& colour : kBladeColours) {
    if (same_rating(colour.rating_a, rating.number())) return colour.word;
  }
  return {};
}

std::optional<units::Ohms> fuse_cold_resistance(FuseFamilyId family, units::Amperes rating) {
  for (const ColdResistance& row : cold_resistances(family)) {
    if (same_rating(row.rating_a, rating.number())) return units::Ohms(row.milliohm / 1000.0);
  }
  return std::nullopt;
}

const Citation& fuse_resistance_citation() { return kFuseResistance; }

std::optional<units::Seconds> opens_within(const FuseFamily& family, units::Amperes rating, units::Amperes current) {
  if (!(rating > units::Amperes(0.0))) return std::nullopt;
  const double multiple = current / rating;
  std::optional<units::Seconds> slowest;
  for (const FuseGate& step : family.gates) {
    if (step.opens_within && multiple >= step.multiple) slowest = step.opens_within;
  }
  return slowest;
}

std::optional<units::Seconds> holds_for(const FuseFamily& family, units::Amperes rating, units::Amperes current) {
  if (!(rating > units::Amperes(0.0))) return std::nullopt;
  const double multiple = current / rating;
  for (const FuseGate& step : family.gates) {
    if (multiple <= step.multiple) return step.not_before;
  }
  return std::nullopt;
}

}  // namespace tables
