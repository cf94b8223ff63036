// How wide words are and how they break into lines. Private to the room.
#pragma once

#include <string_view>
#include <vector>

#include "ui/theme.h"

namespace ui {

float imgui_size(float em_px);      // ImGui measures a font from ascender to descender, CSS by the em: the size to ask ImGui for
float line_height(Type type);       // CSS px, with leading
float line_width(std::string_view line, Type type, bool semibold);   // not wrapped, not rounded
float text_width(std::string_view text, Type type, bool semibold);   // of the longest line, not wrapped
float longest_word(std::string_view text, Type type, bool semibold);

struct Line {
  std::string_view words;
  bool hyphen = false;              // to be drawn behind them: a word is parted here
};
// Lines break at blanks, never between a figure and its unit where another blank serves. A word
// breaks only when it alone is wider than the line: at its own hyphen, else between syllables,
// else, where it has none, where the line is full.
std::vector<Line> wrap(std::string_view text, Type type, bool semibold, float width);
float text_height(std::string_view text, Type type, bool semibold, float width);

}  // namespace ui
