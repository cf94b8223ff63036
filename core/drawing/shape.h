// A picture as plain data: shapes that carry what they mean (ink) and what they depict
// (subject), never a colour. The core turns a picture into SVG text, the app into its own
// drawing, and a tap asks the same list what lies under the finger.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace drawing {

struct Point { double x = 0.0; double y = 0.0; };   // CSS px, y downwards

// After `none`: colours of real things (a fuse's body, insulation, copper), the same by day and
// by night; on paper greys by their lightness, so the word stands beside them. on_light and
// on_dark are for text upon them: on_swatch() picks.
enum class Ink {
  text, muted, line, positive, negative, accent, good, caution, stop, card, ground, none,
  swatch_black, swatch_brown, swatch_red, swatch_orange, swatch_yellow, swatch_green, swatch_blue, swatch_violet,
  swatch_grey, swatch_white, swatch_pink, swatch_tan, swatch_turquoise, swatch_copper, swatch_metal,
  on_light, on_dark,
};
enum class Anchor { left, centre, right };
enum class TextSize { caption, text, title };

struct Line { Point a; Point b; double width = 1.0; Ink ink = Ink::line; };
struct Circle { Point centre; double radius = 1.0; double width = 1.0; Ink ink = Ink::line; Ink fill = Ink::none; };
struct Box { Point corner; double width = 0.0; double height = 0.0; double radius = 0.0;
             double line_width = 1.0; Ink ink = Ink::line; Ink fill = Ink::none; };
struct Text { Point at; std::string text; Anchor anchor = Anchor::centre; TextSize size = TextSize::caption;
              bool bold = false; Ink ink = Ink::text; };   // `at`: half the height of the line
struct Polyline { std::vector<Point> points; double width = 1.0; Ink ink = Ink::line; bool closed = false; Ink fill = Ink::none; };

// What a shape stands for, so that a tap or a test can ask; 0: nothing in particular.
struct Subject {
  std::uint32_t kind = 0;     // pictures give their own meaning
  std::uint32_t number = 0;
  friend constexpr bool operator==(const Subject&, const Subject&) = default;
};
struct Shape {
  std::variant<Line, Circle, Box, Text, Polyline> form;
  Subject subject;
};
struct Picture {
  double width = 0.0;
  double height = 0.0;
  double text_scale = 1.0;     // the person's text size, already in every place; multiplies size_px()
  std::vector<Shape> shapes;
  std::string description;     // the whole picture in words, for a screen reader
};

}  // namespace drawing
