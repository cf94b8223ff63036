#include "tables/part.h"

#include <algorithm>
#include <array>

#include "tables/citation_list.h"
#include "tables/conductor.h"

namespace tables {
namespace {

using units::Amperes;
using units::Ohms;
using units::SquareMillimetres;

constexpr std::nullopt_t kNoFerrule = std::nullopt;

// Wire range in mm2, current in A, resistance of a good new joint in mohm (bands from memory,
// upper half of each: crimp 0.05-0.5, ring on stud 0.05-0.3, lever or spring 0.3-1.5, tab 0.3-2).
constexpr Part part(PartKind kind, std::string_view key, std::string_view name, double smallest, double largest,
                    std::optional<double> with_ferrule, double rated_a, double milliohm, const Citation* citation,
                    bool stands_vibration = true) {
  Part result{.kind = kind,
              .key = key,
              .name = name,
              .smallest = SquareMillimetres(smallest),
              .largest_bare = SquareMillimetres(largest),
              .largest_with_ferrule = std::nullopt,
              .rated = Amperes(rated_a),
              .typical_resistance = Ohms(milliohm / 1000.0),
              .stands_vibration = stands_vibration,
              .citation = citation};
  if (with_ferrule) result.largest_with_ferrule = SquareMillimetres(*with_ferrule);
  return result;
}

// A clamp rated for 6 mm2 takes 10 AWG (5.26 mm2) bare, but a ferrule on that wire is too thick.
constexpr std::array kClamps{
    part(PartKind::clamp, "clamp-4", "Screw clamp, up to 4 mm²", 0.5, 4.0, 2.5, 20.0, 0.5, &kClampPart),
    part(PartKind::clamp, "clamp-6", "Screw clamp, up to 6 mm²", 0.5, 6.0, 4.0, 30.0, 0.5, &kClampPart),
    part(PartKind::clamp, "clamp-tab", "Push-on tab, up to 6 mm²", 0.5, 6.0, kNoFerrule, 30.0, 1.0, &kClampPart),
    part(PartKind::clamp, "clamp-16", "Screw clamp, up to 16 mm²", 2.5, 16.0, 10.0, 60.0, 0.3, &kClampPart),
    part(PartKind::clamp, "clamp-stud-50", "Stud with crimped ring, up to 50 mm²", 1.5, 50.0, kNoFerrule, 150.0, 0.2,
         &kClampPart),
    part(PartKind::clamp, "clamp-stud-120", "Large stud with crimped ring, up to 120 mm²", 6.0, 120.0, kNoFerrule,
         250.0, 0.1, &kClampPart),
};

// Ferrules belong under screws; a lever's spring wants bare strands.
constexpr std::array kSplices{
    part(PartKind::splice, "splice-crimp-red", "Red crimp splice, 0.5 to 1.5 mm²", 0.5, 1.5, kNoFerrule, 10.0, 0.5,
         &kSplicePart),
    part(PartKind::splice, "splice-crimp-blue", "Blue crimp splice, 1.5 to 2.5 mm²", 1.3, 2.5, kNoFerrule, 20.0, 0.4,
         &kSplicePart),
    part(PartKind::splice, "splice-lever-4", "Lever splice, up to 4 mm²", 0.2, 4.0, kNoFerrule, 30.0, 1.0,
         &kSplicePart),
    part(PartKind::splice, "splice-twist", "Twist-on connector, up to 6 mm²", 0.75, 6.0, kNoFerrule, 20.0, 1.0,
         &kSplicePart, false),
    part(PartKind::splice, "splice-lever-6", "Lever splice, up to 6 mm²", 0.5, 6.0, kNoFerrule, 40.0, 0.8,
         &kSplicePart),
    part(PartKind::splice, "splice-crimp-yellow", "Yellow crimp splice, 4 to 6 mm²", 3.3, 6.0, kNoFerrule, 40.0, 0.2,
         &kSplicePart),
    part(PartKind::splice, "splice-stud-50", "Bolted rings, up to 50 mm²", 1.5, 50.0, kNoFerrule, 150.0, 0.2,
         &kSplicePart),
    part(PartKind::splice, "splice-stud-120", "Large bolted rings, up to 120 mm²", 6.0, 120.0, kNoFerrule, 250.0, 0.1,
         &kSplicePart),
};

constexpr std::array kTerminals{
    part(PartKind::terminal, "tab-4.8", "Push-on tab, 4.8 mm", 0.5, 2.5, kNoFerrule, 10.0, 1.5, &kTerminalPart),
    part(PartKind::terminal, "screw-4", "Screw terminal, up to 4 mm²", 0.5, 4.0, 2.5, 20.0, 0.5, &kTerminalPart),
    part(PartKind::terminal, "tab-6.3", "Push-on tab, 6.3 mm", 0.5, 6.0, kNoFerrule, 24.0, 1.0, &kTabByWire),
    part(PartKind::terminal, "tab-9.5", "Push-on tab, 9.5 mm", 2.5, 10.0, kNoFerrule, 40.0, 0.6, &kTerminalPart),
    part(PartKind::terminal, "screw-16", "Screw terminal, up to 16 mm²", 1.5, 16.0, 10.0, 60.0, 0.3, &kTerminalPart),
    part(PartKind::terminal, "stud-50", "Stud with crimped ring, up to 50 mm²", 1.0, 50.0, kNoFerrule, 150.0, 0.2,
         &kTerminalPart),
    part(PartKind::terminal, "stud-120", "Large stud with crimped ring, up to 120 mm²", 6.0, 120.0, kNoFerrule, 250.0,
         0.1, &kTerminalPart),
};

// What sits behind the terminal. The wire range is the terminal's affair; here the widest that
// such a device's terminals come with.
constexpr std::array kOutlets{
    part(PartKind::outlet, "usb-charger", "USB charger outlet", 0.5, 6.0, 4.0, 5.0, 0.5, &kOutletPart),
    part(PartKind::outlet, "wired-small", "Light or fan wired in", 0.5, 6.0, 4.0, 15.0, 0.2, &kOutletPart),
    part(PartKind::outlet, "socket-iso4165", "Small power socket, 12 mm", 0.5, 6.0, 4.0, 12.0, 1.0, &kIso4165Socket),
    part(PartKind::outlet, "socket-lighter", "Lighter-form socket", 0.5, 6.0, 4.0, 15.0, 2.0, &kLighterSocket),
    part(PartKind::outlet, "socket-lighter-20", "Lighter-form socket marked 20 A", 0.5, 6.0, 4.0, 20.0, 2.0,
         &kOutletPart),
    part(PartKind::outlet, "connector-50", "High-current connector, 50 A", 1.5, 16.0, kNoFerrule, 50.0, 0.5,
         &kOutletPart),
    part(PartKind::outlet, "wired-medium", "Pump, fridge or heater wired in", 0.5, 16.0, 10.0, 40.0, 0.2, &kOutletPart),
    part(PartKind::outlet, "connector-120", "High-current connector, 120 A", 10.0, 50.0, kNoFerrule, 120.0, 0.3,
         &kOutletPart),
    part(PartKind::outlet, "wired-heavy", "Winch or inverter wired in", 6.0, 120.0, kNoFerrule, 250.0, 0.1,
         &kOutletPart),
};

// Current of a 6.3 mm tab by the wire crimped to it. A wire between two rows takes the row of
// the thinner wire; thinner than 18 AWG (0.5 and 0.75 mm2) takes 5 A, our choice.
struct TabRow {
  std::string_view wire;
  double amperes;
};
constexpr std::string_view kTabKey = "tab-6.3";
constexpr std::array<TabRow, 5> kTabRows{{{"18awg", 7}, {"16awg", 10}, {"14awg", 15}, {"12awg", 20}, {"10awg", 24}}};
constexpr double kThinnerTabA = 5.0;

std::optional<Amperes> current_by_wire(const Part& part, SquareMillimetres wire) {
  if (part.key != kTabKey) return std::nullopt;
  Amperes found(kThinnerTabA);
  for (const TabRow& row : kTabRows) {
    if (conductor_by_id(row.wire)->area <= wire) found = Amperes(row.amperes);
  }
  return found;
}

// 5.26 mm2 against 6: no part is decided by a rounding error.
constexpr double kAreaRounding = 1e-6;

}  // namespace

std::span<const Part> parts(PartKind kind) {
  switch (kind) {
    case PartKind::clamp: return kClamps;
    case PartKind::splice: return kSplices;
    case PartKind::terminal: return kTerminals;
    case PartKind::outlet: return kOutlets;
  }
  return {};
}

const Part* part_by_key(std::string_view key) {
  for (const PartKind kind : {PartKind::clamp, PartKind::splice, PartKind::terminal, PartKind::outlet}) {
    for (const Part& part : parts(kind)) {
      if (part.key == key) return &part;
    }
  }
  return nullptr;
}

std::vector<const Part*> splices_offered(bool moves) {
  std::vector<const Part*> offered;
  for (const Part& splice : kSplices) {
    if (splice.stands_vibration || !moves) offered.push_back(&splice);
  }
  return offered;
}

units::Amperes part_rating_with(const Part& part, units::SquareMillimetres wire) {
  const std::optional<Amperes> by_wire = current_by_wire(part, wire);
  return by_wire ? std::min(*by_wire, part.rated) : part.rated;
}

const Citation& part_rating_citation(const Part& part, units::SquareMillimetres wire) {
  const std::optional<Amperes> by_wire = current_by_wire(part, wire);
  return by_wire && *by_wire <= part.rated ? kTabByWire : *part.citation;
}

const Citation& joint_resistance_citation() { return kJointResistance; }

bool part_accepts(const Part& part, units::SquareMillimetres wire, bool ferrule) {
  if (!(wire.number() >= part.smallest.number() - kAreaRounding)) return false;
  if (!ferrule) return wire.number() <= part.largest_bare.number() + kAreaRounding;
  if (!part.largest_with_ferrule) return false;
  return wire.number() <= part.largest_with_ferrule->number() + kAreaRounding;
}

}  // namespace tables
