// The words of a row and the room beside them; shared by rows, steppers, choices. Private.
#pragma once

#include <string_view>

#include "ui/paint.h"
#include "ui/place.h"

namespace ui {

struct RowPlan {
  Rect row;                    // the whole, column width
  Rect words;                  // label over sub
  Rect control;                // at the right, or under the words
  float label_height = 0;
  bool stacked = false;
  bool semibold = false;       // of the label
};
// `left` and `right`: taken by a badge and a chevron, however the rest lies. The control goes under the words when they would have less than
// their longest word, or less than two fifths of the row, or more than two lines.
RowPlan plan_row(std::string_view label, std::string_view sub, float control_width, float control_height, float left = 0.0F,
                 float right = 0.0F, bool semibold = false);
void paint_row_words(const RowPlan& plan, std::string_view label, std::string_view sub, bool disabled = false);
// The surface of the whole row, to the card's edges: chosen, under a finger.
void paint_row_ground(const RowPlan& plan, bool under, bool current);
Rect row_reach(const Rect& row);   // to the card's edges

}  // namespace ui
