// Every check of a case, with its words. Private to this room.
#pragma once

#include <vector>

#include "diagnosis/check.h"
#include "diagnosis/plant.h"

namespace diagnosis {

std::vector<Check> make_checks(const Case& the_case, const Plant& plant);
// Both points on the red side, or both on the black: volts lost on the way.
inline bool along_one_side(const Check& check) { return check.kind == CheckKind::volts && check.red.side == check.black.side; }
bool has_tools(const Check& check, const Tools& tools);
// The outlets that the complaint names, by index; all of them when it names none.
std::vector<int> complaint_outlets(const Case& the_case, const Plant& plant);

// Minutes, all our estimate from doing: by itself, and what getting there adds.
struct Setup {
  State state;                                // as the last check left it
  std::vector<circuit::OutletId> drawn_out;   // outlets out of their hole by now
  std::optional<Site> site;                   // where the person is
};
double minutes_for(const Check& check, const Setup& setup, const Plant& plant);
void leave_behind(const Check& check, Setup& setup);

// Ranges behind the words. Fractions: of the battery's resting volts for volts, of nominal for the rest.
inline constexpr double kFullFrom = 0.93, kZeroBelow = 0.04;         // volts
inline constexpr double kNoDropBelow = 0.008;                        // volts along one side, red to red
inline constexpr double kBrightFrom = 0.80, kDimFrom = 0.20;         // lamp
inline constexpr double kWorksFrom = 0.88, kWeakFrom = 0.45;         // device
inline constexpr double kJoinedBelowOhm = 5.0, kOpenFromOhm = 1e5;   // meter on ohms

}  // namespace diagnosis
