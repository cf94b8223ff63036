// Where a check or a fault lies: as marks on the sketch, and in words.
#pragma once

#include <string>
#include <vector>

#include "diagnosis/check.h"
#include "diagnosis/fault.h"
#include "pictures/sketch_marks.h"

namespace screens {

struct Marked {
  std::vector<pictures::SketchMark> marks;
  std::string words;      // what is marked, for a screen reader: "the red splice at C; the negative bus"
  bool two_leads = false;
};
Marked marked_by(const diagnosis::Case& the_case, const diagnosis::Check& check);
// The part that is put right, never another one: a fault before the block leaves our fuse alone.
Marked marked_by(const diagnosis::Case& the_case, const diagnosis::Fault& fault);

// "Behind outlet C", "At the fuse block, position 4"; empty where it has no place.
std::string place_words(const diagnosis::Case& the_case, const diagnosis::Fault& fault);
// "about 9 minutes", "half a minute"
std::string minutes_words(double minutes);
// "52 %", "under 1 %"
std::string share_words(double probability);

}  // namespace screens
