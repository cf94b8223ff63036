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
// upper half of each: crimp 0.05-0.5, lever or spring 0.3-1.5, tab 0.3-2). Rings on studs: a good one
// takes no more than 15 mV at its rating, as IEC 60998 and 60999 ask of a new clamp (from memory).
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
              .continuous = Amperes(rated_a),
              .typical_resistance = Ohms(milliohm / 1000.0),
              .stands_vibration = stands_vibration,
              .holds_boat_pull = stands_vibration,
              .limits_itself = false,
              .wired_in = kind == PartKind::wired_in,
              .rated_power = std::nullopt,
              .citation = citation};
  if (with_ferrule) result.largest_with_ferrule = SquareMillimetres(*with_ferrule);
  return result;
}

constexpr Part for_long(Part made, double continuous_a) {
  made.continuous = Amperes(continuous_a);
  return made;
}
constexpr Part lever(Part made) {
  made.holds_boat_pull = false;
  return made;
}
constexpr Part limits_itself(Part made, double watts) {
  made.limits_itself = true;
  made.rated_power = units::Watts(watts);
  return made;
}
constexpr Part device(Part made) {
  made.wired_in = true;
  return made;
}

// A clamp rated for 6 mm2 takes 10 AWG (5.26 mm2) bare, but a ferrule on that wire is too thick.
constexpr std::array kClamps{
    part(PartKind::clamp, "clamp-4", "Screw clamp, up to 4 mm²", 0.5, 4.0, 2.5, 20.0, 0.5, &kClampPart),
    part(PartKind::clamp, "clamp-6", "Screw clamp, up to 6 mm²", 0.5, 6.0, 4.0, 30.0, 0.5, &kClampPart),
    part(PartKind::clamp, "clamp-tab", "Push-on tab, up to 6 mm²", 0.5, 6.0, kNoFerrule, 24.0, 1.0, &kTabByWire),
    part(PartKind::clamp, "clamp-16", "Screw clamp, up to 16 mm²", 2.5, 16.0, 10.0, 60.0, 0.3, &kClampPart),
    part(PartKind::clamp, "clamp-stud-50", "Stud with crimped ring, up to 50 mm²", 1.5, 50.0, kNoFerrule, 150.0, 0.1,
         &kClampPart),
    part(PartKind::clamp, "clamp-stud-120", "Large stud with crimped ring, up to 120 mm²", 6.0, 120.0, kNoFerrule,
         250.0, 0.06, &kClampPart),
};

// Ferrules belong under screws; a lever's spring wants bare strands.
constexpr std::array kSplices{
    part(PartKind::splice, "splice-crimp-red", "Red crimp splice, 0.5 to 1.5 mm²", 0.5, 1.5, kNoFerrule, 10.0, 0.5,
         &kSplicePart),
    part(PartKind::splice, "splice-crimp-blue", "Blue crimp splice, 1.5 to 2.5 mm²", 1.3, 2.5, kNoFerrule, 20.0, 0.4,
         &kSplicePart),
    lever(part(PartKind::splice, "splice-lever-4", "Lever splice, up to 4 mm²", 0.2, 4.0, kNoFerrule, 30.0, 1.0,
               &kSplicePart)),
    part(PartKind::splice, "splice-twist", "Twist-on connector, up to 6 mm²", 0.75, 6.0, kNoFerrule, 20.0, 1.0,
         &kSplicePart, false),
    lever(part(PartKind::splice, "splice-lever-6", "Lever splice, up to 6 mm²", 0.5, 6.0, kNoFerrule, 40.0, 0.8,
               &kSplicePart)),
    part(PartKind::splice, "splice-crimp-yellow", "Yellow crimp splice, 4 to 6 mm²", 3.3, 6.0, kNoFerrule, 40.0, 0.2,
         &kSplicePart),
    part(PartKind::splice, "splice-stud-50", "Bolted rings, up to 50 mm²", 1.5, 50.0, kNoFerrule, 150.0, 0.1,
         &kSplicePart),
    part(PartKind::splice, "splice-stud-120", "Large bolted rings, up to 120 mm²", 6.0, 120.0, kNoFerrule, 250.0, 0.06,
         &kSplicePart),
};

constexpr std::array kTerminals{
    part(PartKind::terminal, "tab-4.8", "Push-on tab, 4.8 mm", 0.5, 2.5, kNoFerrule, 10.0, 1.5, &kTerminalPart),
    part(PartKind::terminal, "screw-4", "Screw terminal, up to 4 mm²", 0.5, 4.0, 2.5, 20.0, 0.5, &kTerminalPart),
    part(PartKind::terminal, "tab-6.3", "Push-on tab, 6.3 mm", 0.5, 6.0, kNoFerrule, 24.0, 1.0, &kTabByWire),
    part(PartKind::terminal, "tab-9.5", "Push-on tab, 9.5 mm", 2.5, 10.0, kNoFerrule, 40.0, 0.6, &kTerminalPart),
    part(PartKind::terminal, "screw-16", "Screw terminal, up to 16 mm²", 1.5, 16.0, 10.0, 60.0, 0.3, &kTerminalPart),
    part(PartKind::terminal, "stud-50", "Stud with crimped ring, up to 50 mm²", 1.0, 50.0, kNoFerrule, 150.0, 0.1,
         &kTerminalPart),
    part(PartKind::terminal, "stud-120", "Large stud with crimped ring, up to 120 mm²", 6.0, 120.0, kNoFerrule, 250.0,
         0.06, &kTerminalPart),
};

// What sits behind the terminal. The wire range is the terminal's affair; here the widest that
// such a device's terminals come with.
// Friction contacts get hot: 10 A for long, or 80 % of what the maker marked.
constexpr std::array kOutlets{
    limits_itself(part(PartKind::outlet, "usb-charger", "USB charger outlet", 0.5, 6.0, 4.0, 5.0, 0.5, &kOutletPart),
                  60.0),
    limits_itself(part(PartKind::outlet, "usb-laptop", "USB charger outlet for laptops, 100 W", 0.5, 6.0, 4.0, 12.0, 0.5,
                       &kOutletPart), 115.0),
    device(part(PartKind::outlet, "wired-small", "Light or fan wired in", 0.5, 6.0, 4.0, 15.0, 0.2, &kOutletPart)),
    for_long(part(PartKind::outlet, "socket-iso4165", "Small power socket, 12 mm", 0.5, 6.0, 4.0, 12.0, 1.0,
                  &kIso4165Socket), 10.0),
    for_long(part(PartKind::outlet, "socket-lighter", "Lighter-form socket", 0.5, 6.0, 4.0, 15.0, 2.0, &kLighterSocket),
             10.0),
    for_long(part(PartKind::outlet, "socket-lighter-20", "Lighter-form socket marked 20 A", 0.5, 6.0, 4.0, 20.0, 2.0,
                  &kOutletPart), 16.0),
    part(PartKind::outlet, "connector-50", "High-current connector, 50 A", 1.5, 16.0, kNoFerrule, 50.0, 0.5,
         &kOutletPart),
    device(part(PartKind::outlet, "wired-medium", "Pump, fridge or heater wired in", 0.5, 16.0, 10.0, 40.0, 0.2,
                &kOutletPart)),
    part(PartKind::outlet, "connector-120", "High-current connector, 120 A", 10.0, 50.0, kNoFerrule, 120.0, 0.3,
         &kOutletPart),
    device(part(PartKind::outlet, "wired-heavy", "Winch or inverter wired in", 6.0, 120.0, kNoFerrule, 250.0, 0.06,
                &kOutletPart)),
};

// In the positive, both its joints counted. Resistances from memory: a rocker or toggle 5 to 15 mohm
// new, a relay's contact with its socket 2 to 8, a battery switch 0.1 to 0.5.
constexpr std::array kInLine{
    for_long(part(PartKind::in_line, "switch-rocker", "Rocker switch", 0.5, 4.0, kNoFerrule, 15.0, 8.0, &kInLinePart), 12.0),
    for_long(part(PartKind::in_line, "switch-toggle", "Toggle switch", 0.5, 4.0, kNoFerrule, 20.0, 6.0, &kInLinePart), 16.0),
    for_long(part(PartKind::in_line, "fuse-holder-inline", "Fuse holder in the wire, blade", 0.75, 6.0, kNoFerrule, 30.0,
                  0.4, &kInLinePart), 20.0),
    for_long(part(PartKind::in_line, "relay-30", "Relay, 30 A", 0.5, 6.0, kNoFerrule, 30.0, 4.0, &kInLinePart), 20.0),
    for_long(part(PartKind::in_line, "relay-70", "Relay, 70 A", 2.5, 10.0, kNoFerrule, 70.0, 1.5, &kInLinePart), 50.0),
    for_long(part(PartKind::in_line, "fuse-holder-inline-60", "Fuse holder in the wire, large blade", 4.0, 16.0,
                  kNoFerrule, 60.0, 0.3, &kInLinePart), 45.0),
    for_long(part(PartKind::in_line, "breaker-dc", "D.c. breaker, up to 50 A", 1.5, 16.0, kNoFerrule, 50.0, 0.2,
                  &kInLinePart), 40.0),
    for_long(part(PartKind::in_line, "disconnect-100", "Battery switch, 100 A", 4.0, 35.0, kNoFerrule, 100.0, 0.5,
                  &kInLinePart), 80.0),
    for_long(part(PartKind::in_line, "breaker-dc-200", "D.c. breaker, up to 200 A", 10.0, 70.0, kNoFerrule, 200.0, 0.2,
                  &kInLinePart), 160.0),
    for_long(part(PartKind::in_line, "disconnect-300", "Battery switch, 300 A", 16.0, 120.0, kNoFerrule, 300.0, 0.2,
                  &kInLinePart), 250.0),
};

// A device's own leads or terminals, no outlet between.
constexpr std::array kWiredIn{
    part(PartKind::wired_in, "joint-crimp-red", "Wired in, red crimp splice", 0.5, 1.5, kNoFerrule, 10.0, 0.5, &kSplicePart),
    part(PartKind::wired_in, "joint-crimp-blue", "Wired in, blue crimp splice", 1.3, 2.5, kNoFerrule, 20.0, 0.4, &kSplicePart),
    lever(part(PartKind::wired_in, "joint-lever-4", "Wired in, lever splice up to 4 mm²", 0.2, 4.0, kNoFerrule, 30.0, 1.0,
               &kSplicePart)),
    part(PartKind::wired_in, "joint-screw-4", "Wired in, screw terminal up to 4 mm²", 0.5, 4.0, 2.5, 20.0, 0.5, &kTerminalPart),
    lever(part(PartKind::wired_in, "joint-lever-6", "Wired in, lever splice up to 6 mm²", 0.5, 6.0, kNoFerrule, 40.0, 0.8,
               &kSplicePart)),
    part(PartKind::wired_in, "joint-crimp-yellow", "Wired in, yellow crimp splice", 3.3, 6.0, kNoFerrule, 40.0, 0.2, &kSplicePart),
    part(PartKind::wired_in, "joint-screw-16", "Wired in, screw terminal up to 16 mm²", 1.5, 16.0, 10.0, 60.0, 0.3, &kTerminalPart),
    part(PartKind::wired_in, "joint-stud-50", "Wired in, stud with crimped ring up to 50 mm²", 1.0, 50.0, kNoFerrule, 150.0,
         0.1, &kTerminalPart),
    part(PartKind::wired_in, "joint-stud-120", "Wired in, large stud with crimped ring up to 120 mm²", 6.0, 120.0, kNoFerrule,
         250.0, 0.06, &kTerminalPart),
};

// Current of a push-on tab by the wire crimped to it. A wire between two rows takes the row of
// the thinner wire; thinner than 18 AWG (0.5 and 0.75 mm2) takes 5 A, our choice.
struct TabRow {
  std::string_view wire;
  double amperes;
};
constexpr std::array<std::string_view, 3> kTabKeys{"tab-6.3", "clamp-tab", "tab-4.8"};
constexpr std::array<TabRow, 5> kTabRows{{{"18awg", 7}, {"16awg", 10}, {"14awg", 15}, {"12awg", 20}, {"10awg", 24}}};
constexpr double kThinnerTabA = 5.0;

std::optional<Amperes> current_by_wire(const Part& part, SquareMillimetres wire) {
  if (std::find(kTabKeys.begin(), kTabKeys.end(), part.key) == kTabKeys.end()) return std::nullopt;
  Amperes found(kThinnerTabA);
  for (const TabRow& row : kTabRows) {
    if (conductor_by_id(row.wire)->area <= wire) found = Amperes(row.amperes);
  }
  return found;
}

constexpr std::array kPartKinds{PartKind::clamp,  PartKind::splice,  PartKind::terminal,
                            PartKind::outlet, PartKind::in_line, PartKind::wired_in};

// 5.26 mm2 against 6: no part is decided by a rounding error.
constexpr double kAreaRounding = 1e-6;

}  // namespace

std::span<const Part> parts(PartKind kind) {
  switch (kind) {
    case PartKind::clamp: return kClamps;
    case PartKind::splice: return kSplices;
    case PartKind::terminal: return kTerminals;
    case PartKind::outlet: return kOutlets;
    case PartKind::in_line: return kInLine;
    case PartKind::wired_in: return kWiredIn;
  }
  return {};
}

const Part* part_by_key(std::string_view key) {
  for (const PartKind kind : kPartKinds) {
    for (const Part& part : parts(kind)) {
      if (part.key == key) return &part;
    }
  }
  return nullptr;
}

std::span<const PartKind> part_kinds() { return kPartKinds; }

std::vector<const Part*> splices_offered(bool moves, bool on_water) {
  std::vector<const Part*> offered;
  for (const Part& splice : kSplices) {
    if ((splice.stands_vibration || !moves) && (splice.holds_boat_pull || !on_water)) offered.push_back(&splice);
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
