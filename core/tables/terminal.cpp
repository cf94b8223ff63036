#include "tables/terminal.h"

#include <array>

#include "tables/citation_list.h"

namespace tables {
namespace {

using units::Millimetres;
using units::SquareMillimetres;

constexpr std::array<CrimpColour, 3> kCrimps{{
    {"red", SquareMillimetres(0.5), SquareMillimetres(1.5), "22 to 16", Millimetres(6), Millimetres(7),
     "Some makers stop red at 18 AWG.", &kCrimpColour, &kStripLength},
    {"blue", SquareMillimetres(1.5), SquareMillimetres(2.5), "16 to 14", Millimetres(6), Millimetres(7), "",
     &kCrimpColour, &kStripLength},
    {"yellow", SquareMillimetres(4.0), SquareMillimetres(6.0), "12 to 10", Millimetres(7), Millimetres(9),
     "Some makers print 2.5 to 6 mm² for yellow.", &kCrimpColour, &kStripLength},
}};

constexpr TabSize tab(std::string_view key, double width, double thickness, std::string_view use) {
  return {key, Millimetres(width), Millimetres(thickness), use, &kTabSize};
}
constexpr std::array kTabs{
    tab("2.8-0.5", 2.8, 0.5, "small switches, speakers"), tab("2.8", 2.8, 0.8, "small switches, relays"),
    tab("4.8-0.5", 4.8, 0.5, "lamps, small outlets"),     tab("4.8", 4.8, 0.8, "lamps, small outlets"),
    tab("6.3", 6.3, 0.8, "most outlets, switches and relays"), tab("9.5", 9.5, 1.2, "large relays, heaters"),
};

constexpr RingHole ring(std::string_view stud, std::string_view inch, double hole, const Citation* citation) {
  return {stud, inch, Millimetres(hole), citation};
}
constexpr std::array kRings{
    ring("M3", "", 3.2, &kRingHoleMemory),          ring("M3.5", "#6", 3.7, &kRingHoleMemory),
    ring("M4", "#8", 4.3, &kRingHoleMemory),        ring("M5", "#10", 5.3, &kRingHole),
    ring("M6", "1/4 in", 6.4, &kRingHole),          ring("M8", "5/16 in", 8.4, &kRingHoleMemory),
    ring("M10", "3/8 in", 10.5, &kRingHoleMemory),  ring("M12", "1/2 in", 13.0, &kRingHoleMemory),
};

constexpr Ferrule ferrule(double wire, std::string_view colour, double sleeve, const Citation* citation) {
  constexpr double kCollarMm = 2.0;
  return {SquareMillimetres(wire), colour, Millimetres(sleeve), Millimetres(sleeve + kCollarMm), citation, &kStripLength};
}
constexpr std::array kFerrules{
    ferrule(0.5, "white", 8, &kFerruleColour),   ferrule(0.75, "grey", 8, &kFerruleColour),
    ferrule(1.0, "red", 8, &kFerruleColour),     ferrule(1.5, "black", 8, &kFerruleColour),
    ferrule(2.5, "blue", 8, &kFerruleColour),    ferrule(4.0, "grey", 10, &kFerruleColour),
    ferrule(6.0, "yellow", 12, &kFerruleColour), ferrule(10.0, "red", 12, &kFerruleColour),
    ferrule(16.0, "blue", 12, &kFerruleColour),  ferrule(25.0, "yellow", 16, &kFerruleColour),
    ferrule(35.0, "red", 16, &kLargeFerruleColour), ferrule(50.0, "blue", 20, &kLargeFerruleColour),
};

constexpr std::array<StripLength, 5> kStrips{{
    {"lever-splice-4", "Lever splice, up to 4 mm²", Millimetres(10), Millimetres(12),
     "The gauge moulded on the splice goes first.", &kStripLength},
    {"lever-splice-6", "Lever splice, up to 6 mm²", Millimetres(12), Millimetres(14),
     "The gauge moulded on the splice goes first.", &kStripLength},
    {"screw-clamp", "Screw clamp, bare strands", Millimetres(8), Millimetres(10),
     "To the back of the clamp, no strand outside.", &kStripLength},
    {"spring-clamp", "Spring clamp", Millimetres(9), Millimetres(11), "The gauge printed beside it goes first.",
     &kStripLength},
    {"bare-ring-or-tab", "Crimped ring or tab without a sleeve", Millimetres(5), Millimetres(9),
     "Its barrel's length and up to 1 mm more.", &kStripLength},
}};
struct PartStrip {
  std::string_view part;
  std::string_view strip;
};
constexpr std::array<PartStrip, 11> kPartStrips{{
    {"splice-lever-4", "lever-splice-4"}, {"splice-lever-6", "lever-splice-6"}, {"joint-lever-4", "lever-splice-4"},
    {"joint-lever-6", "lever-splice-6"},  {"clamp-4", "screw-clamp"},           {"clamp-6", "screw-clamp"},
    {"clamp-16", "screw-clamp"},          {"screw-4", "screw-clamp"},           {"screw-16", "screw-clamp"},
    {"joint-screw-4", "screw-clamp"},     {"joint-screw-16", "screw-clamp"},
}};

// From pounds as the tables print them. The boat table is in one source's memory only.
constexpr PullForce pull(std::string_view awg, std::optional<double> boat_lbf, std::optional<double> terminal_lbf) {
  PullForce row{awg, std::nullopt, std::nullopt, &kPullBoat, &kPullTerminal};
  if (boat_lbf) row.boat_n = *boat_lbf * kNewtonsPerPoundForce;
  if (terminal_lbf) row.terminal_n = *terminal_lbf * kNewtonsPerPoundForce;
  return row;
}
constexpr std::nullopt_t kNotListed = std::nullopt;
constexpr std::array kPulls{
    pull("22", kNotListed, 8),    pull("20", kNotListed, 13),   pull("18", 10, 20),           pull("16", 15, 30),
    pull("14", 30, 50),           pull("12", 35, 70),           pull("10", 40, 80),           pull("8", 45, 90),
    pull("6", 50, 100),           pull("4", 70, 140),           pull("3", 80, kNotListed),    pull("2", 90, 180),
    pull("1", 100, kNotListed),   pull("1/0", 125, 250),        pull("2/0", 150, 300),        pull("3/0", 175, kNotListed),
    pull("4/0", 225, kNotListed),
};

}  // namespace

std::span<const CrimpColour> crimp_colours() { return kCrimps; }
std::span<const TabSize> tab_sizes() { return kTabs; }
std::span<const RingHole> ring_holes() { return kRings; }
std::span<const Ferrule> ferrules() { return kFerrules; }
std::span<const StripLength> strip_lengths() { return kStrips; }
const StripLength* strip_length_of_part(std::string_view part_key) {
  for (const PartStrip& row : kPartStrips) {
    if (row.part != part_key) continue;
    for (const StripLength& strip : kStrips) {
      if (strip.key == row.strip) return &strip;
    }
  }
  return nullptr;
}
std::span<const PullForce> pull_forces() { return kPulls; }

}  // namespace tables
