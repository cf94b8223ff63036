// What lies under a finger: the same shapes that were drawn are asked.
#pragma once

#include "drawing/measure.h"
#include "drawing/shape.h"

namespace drawing {

// Subject of the nearest shape within `finger_radius` of `point`; of two as near, the one
// drawn later. Boxes and circles count as filled. Shapes without a subject are passed over.
// Subject{} (kind 0) when nothing is near, or when the point is not a number.
Subject hit_test(const Picture& picture, Point point, double finger_radius, const TextWidth& text_width = {});

}  // namespace drawing
