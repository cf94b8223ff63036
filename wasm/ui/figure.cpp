#include "ui/figure.h"

#include <cmath>

namespace ui {
namespace {

bool is_number(std::string_view word) {
  return !word.empty() && word.find_first_not_of("0123456789.,") == std::string_view::npos;
}

// The word and what follows its blank.
std::pair<std::string_view, std::string_view> first_word(std::string_view text) {
  const std::size_t blank = text.find(' ');
  if (blank == std::string_view::npos) return {text, {}};
  return {text.substr(0, blank), text.substr(blank + 1)};
}

}  // namespace

Split split_figure(std::string_view text) {
  const auto [number, unit] = first_word(text);
  return {number, unit};
}

Figure::Figure(std::string_view number, std::string_view unit, Type big, Type small) : big_(big), small_(small) {
  const float gap = std::round(type_px(big) * 0.16F);
  runs_.push_back({number, true, 0.0F});
  const auto [larger, rest] = first_word(unit);
  const auto [further, smaller] = first_word(rest);
  if (!is_number(further) || smaller.find(' ') != std::string_view::npos) {
    if (!unit.empty()) runs_.push_back({unit, false, gap});
    return;
  }
  runs_.push_back({larger, false, gap});
  runs_.push_back({further, true, 2.0F * gap});
  if (!smaller.empty()) runs_.push_back({smaller, false, gap});
}

float Figure::width() const {
  float width = -side_bearing(runs_.front().text, big_, true);
  for (const Run& run : runs_) width += run.before + text_width(run.text, type_of(run), run.number);
  return width;
}

void Figure::paint(float left, float baseline, Ink number, Ink unit) const {
  float x = left - side_bearing(runs_.front().text, big_, true);
  for (const Run& run : runs_) {
    x += run.before;
    on_baseline(run.text, x, baseline, {.type = type_of(run), .semibold = run.number, .ink = run.number ? number : unit});
    x += text_width(run.text, type_of(run), run.number);
  }
}

}  // namespace ui
