#include "tables/fuse.h"

#include <array>

#include "tables/citation_list.h"
#include "tables/row_by_key.h"

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
constexpr std::array kLargeRatings{20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0, 100.0};
constexpr std::array k80VoltRatings{3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0};
constexpr std::array kBoltOnRatings{30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 100.0, 125.0, 150.0, 175.0, 200.0};
constexpr std::array kBoltOnLargeRatings{60.0, 80.0, 100.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 275.0,
                                         300.0, 325.0, 350.0, 400.0, 425.0, 500.0};
constexpr std::array kBoltOnMarineRatings{35.0, 40.0, 50.0, 60.0, 80.0, 100.0, 130.0, 150.0, 175.0, 200.0, 225.0,
                                          250.0, 275.0, 300.0};
constexpr std::array kTerminalPostRatings{30.0, 40.0, 50.0, 60.0, 75.0, 80.0, 90.0, 100.0, 125.0, 150.0, 175.0,
                                          200.0, 225.0, 250.0, 300.0};
constexpr std::array kClassTRatings{30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0, 110.0, 125.0, 150.0, 175.0,
                                    200.0, 225.0, 250.0, 300.0, 350.0, 400.0};
constexpr std::array kBreakerRatings{25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0, 120.0, 135.0,
                                     150.0, 175.0, 200.0};

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

constexpr std::array kBoltOnLargeGates{
    gate(1.00, kFourHours, kNone, Standing::memory),
    gate(1.35, 120.0, 1800.0, Standing::memory),
    gate(2.00, 1.0, 15.0, Standing::memory),
    gate(3.50, 0.3, 5.0, Standing::memory),
    gate(5.00, 0.1, 1.0, Standing::memory),
};
constexpr std::array kBoltOnMarineGates{
    gate(1.00, kFourHours, kNone, Standing::memory),
    gate(1.35, 60.0, 3600.0, Standing::memory),
    gate(2.00, 1.0, 60.0, Standing::memory),
    gate(3.50, 0.2, 8.0, Standing::memory),
    gate(6.00, 0.05, 1.5, Standing::memory),
};
constexpr std::array kTerminalPostGates{
    gate(1.00, kFourHours, kNone, Standing::memory),
    gate(1.35, 60.0, 1800.0, Standing::memory),
    gate(2.00, 1.0, 60.0, Standing::memory),
    gate(3.50, 0.2, 7.0, Standing::memory),
    gate(6.00, 0.04, 1.0, Standing::memory),
};
// Its standard allows 135 % for two hours and 200 % for minutes; above that it is fast.
constexpr std::array kClassTGates{
    gate(1.00, kFourHours, kNone, Standing::memory),
    gate(1.35, 10.0, 7200.0, Standing::memory),
    gate(2.00, 1.0, 720.0, Standing::memory),
    gate(5.00, 0.01, 1.0, Standing::memory),
    gate(10.0, kNone, 0.1, Standing::memory),
};
constexpr std::array kBreakerGates{
    gate(1.00, kFourHours, kNone, Standing::memory),
    gate(1.35, 60.0, 3600.0, Standing::memory),
    gate(2.00, 8.0, 120.0, Standing::memory),
    gate(4.00, 1.0, 20.0, Standing::memory),
    gate(6.00, 0.4, 8.0, Standing::memory),
    gate(10.0, kNone, 2.0, Standing::memory),
};

constexpr BreakingPoint breaks(double volts, double amperes) { return {Volts(volts), Amperes(amperes)}; }
constexpr std::array kBreaks32{breaks(32.0, 1000.0)};
constexpr std::array kBreaks58{breaks(58.0, 1000.0)};
constexpr std::array kBreaks80{breaks(80.0, 1000.0)};
constexpr std::array kBreaksMarine{breaks(32.0, 6000.0)};
constexpr std::array kBreaksPost{breaks(14.0, 10000.0), breaks(32.0, 5000.0), breaks(58.0, 2000.0)};
constexpr std::array kBreaksClassT{breaks(125.0, 20000.0)};
constexpr std::array kBreaksBreaker{breaks(16.0, 3000.0), breaks(32.0, 1500.0)};

// Contacts: both together. Clips of the medium blade 0.5 to 3 mohm (from memory; smaller clips
// more, larger ones less), two lugs on studs 0.05 to 0.3 mohm each.
constexpr units::Ohms milliohm(double value) { return units::Ohms(value / 1000.0); }
constexpr FuseFamily family(FuseFamilyId id, std::string_view key, std::string_view name, std::string_view form,
                            std::span<const BreakingPoint> breaking, std::span<const double> ratings,
                            std::span<const FuseGate> gates, units::Ohms contacts, double element_drop_v,
                            std::string_view keywords, const Citation* citation) {
  return {.id = id,
          .key = key,
          .name = name,
          .form = form,
          .rated_voltage = breaking.back().up_to,
          .breaking_capacity = breaking.back().breaks,
          .breaking = breaking,
          .ratings_a = ratings,
          .gates = gates,
          .bolted = false,
          .may_be_main = false,
          .resettable = false,
          .contact_resistance = contacts,
          .element_drop = Volts(element_drop_v),
          .keywords = keywords,
          .citation = citation};
}
constexpr FuseFamily bolted(FuseFamily made) {
  made.bolted = true;
  made.may_be_main = true;
  return made;
}
constexpr FuseFamily main_too(FuseFamily made) {
  made.may_be_main = true;
  return made;
}
constexpr FuseFamily resettable(FuseFamily made) {
  made.resettable = true;
  return made;
}

using Id = FuseFamilyId;
constinit const std::array<FuseFamily, 12> kFamilies{{
    family(Id::blade, "blade", "Blade fuse", "type C", kBreaks32, kMediumRatings, kMediumGates, milliohm(1.0), 0.095,
           "medium standard regular push in", &kBladeFuse),
    family(Id::mini_blade, "mini-blade", "Small blade fuse", "type F", kBreaks32, kMiniRatings, kMiniGates,
           milliohm(1.5), 0.12, "mini miniature push in", &kMiniBladeFuse),
    main_too(family(Id::large_blade, "large-blade", "Large blade fuse", "type E", kBreaks32, kLargeRatings, kLargeGates,
                    milliohm(0.6), 0.09, "maxi high current push in", &kLargeBladeFuse)),
    // Remembered as 1000 to 2000 A at 32 to 58 V by maker: the lowest of each.
    bolted(family(Id::bolt_on, "bolt-on", "Bolted strip fuse", "SF30", kBreaks32, kBoltOnRatings, kBoltOnGates,
                  milliohm(0.2), 0.09, "bolt on strip stud high current m5 midi", &kBoltOnFuse)),
    family(Id::blade_high_voltage, "blade-58v", "Blade fuse marked 58 V", "type C body", kBreaks58, kMiniRatings,
           kMiniGates, milliohm(1.0), 0.12, "48 volt push in", &kHighVoltageBladeFuse),
    family(Id::blade_80v, "blade-80v", "Blade fuse marked 80 V", "type C body", kBreaks80, k80VoltRatings, kMiniGates,
           milliohm(1.0), 0.12, "48 volt lithium push in", &k80VoltBladeFuse),
    bolted(family(Id::bolt_on_80v, "bolt-on-80v", "Bolted strip fuse marked 80 V", "SF30 body", kBreaks80, kBoltOnRatings,
                  kBoltOnGates, milliohm(0.2), 0.09, "bolt on strip stud 48 volt lithium inverter", &k80VoltBoltOnFuse)),
    bolted(family(Id::bolt_on_large, "bolt-on-large", "Large bolted strip fuse", "SF51", kBreaks32, kBoltOnLargeRatings,
                  kBoltOnLargeGates, milliohm(0.2), 0.09, "bolt on strip stud high current m8 mega main", &kBoltOnFuse)),
    bolted(family(Id::bolt_on_marine, "bolt-on-marine", "Marine bolted strip fuse", "", kBreaksMarine,
                  kBoltOnMarineRatings, kBoltOnMarineGates, milliohm(0.2), 0.08, "bolt on strip stud boat main",
                  &kMarineStripFuse)),
    bolted(family(Id::terminal_post, "terminal-post", "Terminal-post fuse", "", kBreaksPost, kTerminalPostRatings,
                  kTerminalPostGates, milliohm(0.2), 0.08, "battery post cube stud single bolt main boat",
                  &kTerminalPostFuse)),
    bolted(family(Id::class_t, "class-t", "Class T fuse", "UL 248-15", kBreaksClassT, kClassTRatings, kClassTGates,
                  milliohm(0.2), 0.08, "lithium bank main high breaking", &kClassTFuse)),
    resettable(bolted(family(Id::breaker, "breaker-main", "D.c. circuit breaker", "", kBreaksBreaker, kBreakerRatings,
                             kBreakerGates, milliohm(0.2), 0.20, "breaker thermal reset switch main", &kBreaker))),
}};
constexpr std::size_t kForBranches = 7;

constinit const std::array<const FuseFamily*, 7> kMainKinds{&kFamilies[3], &kFamilies[7], &kFamilies[8], &kFamilies[9],
                                                            &kFamilies[10], &kFamilies[11], &kFamilies[2]};

// Colours of medium and small blades and their kin for higher voltage.
struct Colour {
  double rating_a;
  std::string_view word;
};
constexpr std::array<Colour, 12> kBladeColours{{{1.0, "black"}, {2.0, "grey"}, {3.0, "violet"}, {4.0, "pink"},
                                                {5.0, "tan"}, {7.5, "brown"}, {10.0, "red"}, {15.0, "blue"},
                                                {20.0, "yellow"}, {25.0, "clear"}, {30.0, "green"},
                                                {40.0, "orange"}}};  // 35 A varies

// Large blades, from memory: 25, 70 and 100 A vary by maker.
constexpr std::array<Colour, 7> kLargeColours{{{20.0, "yellow"}, {30.0, "green"}, {35.0, "brown"}, {40.0, "orange"},
                                               {50.0, "red"}, {60.0, "blue"}, {80.0, "clear"}}};

struct Element {
  double rating_a;
  double cold_milliohm;
  double drop_mv;    // at its rating, warm; 0: not listed
  double melts_a2s;  // 0: not listed
};
constexpr std::array<Element, 12> kMediumElements{{
    {1.0, 123.0, 176.0, 0.0}, {2.0, 53.5, 141.0, 0.0},  {3.0, 31.1, 137.0, 0.0}, {4.0, 22.8, 133.0, 0.0},
    {5.0, 17.85, 128.0, 0.0}, {7.5, 10.91, 116.0, 0.0}, {10.0, 7.7, 109.0, 0.0}, {15.0, 4.8, 102.0, 0.0},
    {20.0, 3.38, 98.0, 0.0},  {25.0, 2.52, 92.0, 0.0},  {30.0, 1.97, 84.0, 0.0}, {40.0, 1.44, 96.0, 3300.0},
}};
constexpr std::array<Element, 3> kLargeElements{{{30.0, 1.9, 0.0, 4100.0}, {35.0, 1.7, 0.0, 6000.0},
                                                 {40.0, 1.4, 75.0, 8500.0}}};

std::span<const Element> elements(FuseFamilyId family) {
  if (family == FuseFamilyId::blade) return kMediumElements;
  if (family == FuseFamilyId::large_blade) return kLargeElements;
  return {};
}

std::span<const Colour> colours(FuseFamilyId family) {
  switch (family) {
    case FuseFamilyId::blade:
    case FuseFamilyId::mini_blade:
    case FuseFamilyId::blade_high_voltage:
    case FuseFamilyId::blade_80v: return kBladeColours;
    case FuseFamilyId::large_blade: return kLargeColours;
    case FuseFamilyId::bolt_on:
    case FuseFamilyId::bolt_on_80v:
    case FuseFamilyId::bolt_on_large:
    case FuseFamilyId::bolt_on_marine:
    case FuseFamilyId::terminal_post:
    case FuseFamilyId::class_t:
    case FuseFamilyId::breaker: break;
  }
  return {};
}

// Ratings are typed or picked from the list, never computed: they match to a rounding error.
bool same_rating(double a, double b) { return a - b < 1e-6 && b - a < 1e-6; }

const Element* element(FuseFamilyId family, units::Amperes rating) {
  for (const Element& row : elements(family)) {
    if (same_rating(row.rating_a, rating.number())) return &row;
  }
  return nullptr;
}

}  // namespace

std::span<const FuseFamily> fuse_families() { return std::span(kFamilies).first(kForBranches); }
std::span<const FuseFamily* const> main_fuse_kinds() { return kMainKinds; }

const FuseFamily& fuse_family(FuseFamilyId id) {
  for (const FuseFamily& family : kFamilies) {
    if (family.id == id) return family;
  }
  return kFamilies.front();
}

const FuseFamily* fuse_family_by_key(std::string_view key) { return row_by_key(kFamilies, key); }

std::string full_name(const FuseFamily& family) {
  std::string text(family.name);
  if (!family.form.empty()) text.append(" (").append(family.form).append(")");
  return text;
}

units::Amperes breaks_at(const FuseFamily& family, units::Volts highest) {
  for (const BreakingPoint& point : family.breaking) {
    if (highest <= point.up_to) return point.breaks;
  }
  return units::Amperes(0.0);
}

std::string_view fuse_colour(FuseFamilyId family, units::Amperes rating) {
  for (const Colour& colour : colours(family)) {
    if (same_rating(colour.rating_a, rating.number())) return colour.word;
  }
  return {};
}

std::optional<units::Ohms> fuse_cold_resistance(FuseFamilyId family, units::Amperes rating) {
  const Element* listed = element(family, rating);
  if (listed == nullptr) return std::nullopt;
  return milliohm(listed->cold_milliohm);
}

units::Ohms fuse_hot_resistance(const FuseFamily& family, units::Amperes rating) {
  if (!(rating > units::Amperes(0.0))) return units::Ohms(0.0);
  const Element* listed = element(family.id, rating);
  if (listed == nullptr) return family.element_drop / rating;
  if (listed->drop_mv > 0.0) return Volts(listed->drop_mv / 1000.0) / rating;
  return milliohm(listed->cold_milliohm) * kFuseHotFactor;
}

units::Ohms fuse_resistance(const FuseFamily& family, units::Amperes rating, units::Amperes current) {
  const units::Ohms hot = fuse_hot_resistance(family, rating);
  const units::Ohms cold = fuse_cold_resistance(family.id, rating).value_or(hot / kFuseHotFactor);
  if (!(rating > units::Amperes(0.0)) || !(current > units::Amperes(0.0))) return cold;
  const double share = current < rating ? current / rating : 1.0;
  return cold + (hot - cold) * (share * share);
}

std::optional<units::AmpereSquaredSeconds> fuse_melting_heat(FuseFamilyId family, units::Amperes rating) {
  const Element* listed = element(family, rating);
  if (listed == nullptr || !(listed->melts_a2s > 0.0)) return std::nullopt;
  return units::AmpereSquaredSeconds(listed->melts_a2s);
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
