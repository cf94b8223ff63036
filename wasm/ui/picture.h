// A drawing::Picture on the page in theme inks; wider than the page it scrolls sideways.
#pragma once

#include <optional>
#include <string_view>

#include "drawing/shape.h"
#include "ui/theme.h"

namespace ui {

Type type_of(drawing::TextSize size);   // the type a picture of text size 100 % is set in

struct PictureOptions {
  double at_least = 1.0;      // least scale when shrunk to fit the width, before it scrolls
  double at_most = 1.25;      // most when there is room
  bool taps = true;
};
// The subject tapped (kind != 0), the nearest within reach of a finger.
std::optional<drawing::Subject> picture(std::string_view id, const drawing::Picture& picture,
                                        const PictureOptions& options = {});
// What lies at a point of the picture (picture units), nullopt: nothing with a subject within `reach`.
std::optional<drawing::Subject> subject_at(const drawing::Picture& picture, drawing::Point at, double reach);

}  // namespace ui
