// How well one colour reads upon another: relative luminance and contrast ratio as WCAG 2.2 defines them
// (from memory).
#pragma once

#include <cmath>

#include "drawing/palette.h"

inline double channel(double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); }
inline double luminance(drawing::Colour c) {
  return 0.2126 * channel(c.red / 255.0) + 0.7152 * channel(c.green / 255.0) + 0.0722 * channel(c.blue / 255.0);
}
inline double contrast(drawing::Colour a, drawing::Colour b) {
  const double la = luminance(a), lb = luminance(b);
  return (std::fmax(la, lb) + 0.05) / (std::fmin(la, lb) + 0.05);
}
