// What goes on the end of a wire: crimp colours, tabs, rings, ferrules, how much insulation to
// take off, and the pull a finished crimp must hold. Typical figures: the marking on the part
// in the hand goes first.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "tables/citation.h"
#include "units/quantity.h"

namespace tables {

struct CrimpColour {
  std::string_view colour;              // "red"
  units::SquareMillimetres smallest;
  units::SquareMillimetres largest;
  std::string_view awg;                 // "22 to 16"
  units::Millimetres strip_low;         // insulation to take off
  units::Millimetres strip_high;
  std::string_view note;
  const Citation* citation;             // colour and range
  const Citation* strip_citation;
};
std::span<const CrimpColour> crimp_colours();   // red, blue, yellow

struct TabSize {
  std::string_view key;                 // "6.3"
  units::Millimetres width;
  units::Millimetres thickness;
  std::string_view use;
  const Citation* citation;
};
std::span<const TabSize> tab_sizes();           // ascending width, then thickness

struct RingHole {
  std::string_view stud;                // "M6"
  std::string_view inch;                // "1/4 in", "#10"; empty where there is none near
  units::Millimetres hole;
  const Citation* citation;
};
std::span<const RingHole> ring_holes();         // ascending

struct Ferrule {
  units::SquareMillimetres wire;
  std::string_view colour;
  units::Millimetres sleeve;            // usual length of the metal sleeve
  units::Millimetres strip;             // the sleeve and about 2 mm for its collar
  const Citation* citation;             // colour
  const Citation* strip_citation;       // sleeve
};
std::span<const Ferrule> ferrules();            // ascending

// Where a wire goes in without a terminal.
struct StripLength {
  std::string_view key;                 // "lever-splice-6"
  std::string_view what;
  units::Millimetres low;
  units::Millimetres high;
  std::string_view note;
  const Citation* citation;
};
std::span<const StripLength> strip_lengths();
// How much to take off for a part of part.h; nullptr where its terminal or maker tells.
const StripLength* strip_length_of_part(std::string_view part_key);

struct PullForce {
  std::string_view awg;                 // "10"
  std::optional<double> boat_n;         // newton, held for one minute; nullopt: not in that table
  std::optional<double> terminal_n;     // newton, terminal makers' sheets
  const Citation* boat_citation;
  const Citation* terminal_citation;
};
std::span<const PullForce> pull_forces();       // thin to thick
inline constexpr double kNewtonsPerPoundForce = 4.4482216152605;

}  // namespace tables
