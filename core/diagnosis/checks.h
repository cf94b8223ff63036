// Every check of a case, without its words: those are made when one is shown (check_words.h). Private to this room.
#pragma once

#include <vector>

#include "diagnosis/check.h"
#include "diagnosis/plant.h"

namespace diagnosis {

std::vector<Check> make_checks(const Case& the_case, const Plant& plant);
// Both points on the red side, or both on the black: volts lost on the way.
inline bool along_one_side(const Check& check) {
  return check.kind == CheckKind::volts && check.red.side == check.black.side;
}
bool has_tools(const Check& check, const Tools& tools);
// The outlets that the complaint names, by index; all of them when it names none.
std::vector<int> complaint_outlets(const Case& the_case, const Plant& plant);

// Minutes: by itself, and what getting there adds.
struct Setup {
  State state;                               // as the last check left it
  std::vector<circuit::OutletId> drawn_out;  // outlets out of their hole by now
  std::optional<Site> site;                  // where the person is
};
double minutes_for(const Check& check, const Setup& setup, const Plant& plant);
void leave_behind(const Check& check, Setup& setup);

}  // namespace diagnosis
