#include "ui/paint.h"

#include <algorithm>
#include <cctype>
#include <cfloat>
#include <cmath>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/parts.h"

namespace ui {
namespace {

ImFont* font_of(bool semibold) { return semibold ? now().semibold : now().text; }

float leading(Type type) {
  switch (type) {
    case Type::caption: return 1.38F;
    case Type::text: return 1.40F;
    case Type::title: return 1.28F;
    case Type::question: return 1.25F;
    case Type::answer: return 1.10F;
  }
  return 1.4F;
}

float width_of(std::string_view line, Type type, bool semibold) {
  if (line.empty()) return 0.0F;
  return font_of(semibold)->CalcTextSizeA(imgui_size(type_px(type)), FLT_MAX, 0.0F, line.data(), line.data() + line.size()).x;
}

// A figure and its unit stay on one line: no break at a blank between a digit and a short word
// that is no word ("5.3 mm²", "12 V"; "7 to" may break).
bool glued(std::string_view line, std::size_t blank) {
  if (blank == 0 || line[blank - 1] < '0' || line[blank - 1] > '9') return false;
  const std::string_view unit = line.substr(blank + 1, line.find(' ', blank + 1) - blank - 1);
  for (const std::string_view known : {"V", "A", "W", "m", "mm", "mm²", "%", "AWG", "°C", "°F", "ft", "in", "Ω", "mΩ", "s", "min"}) {
    if (unit.starts_with(known) && (unit.size() == known.size() || std::ispunct(static_cast<unsigned char>(unit[known.size()])) != 0)) return true;
  }
  return false;
}

// Bytes of `line` that fit the width: up to a blank if one serves, else as many characters as fit.
std::size_t fitting(std::string_view line, Type type, bool semibold, float width) {
  std::size_t best = 0, second = 0;          // second: a break between figure and unit
  for (std::size_t at = line.find(' '); at != std::string_view::npos; at = line.find(' ', at + 1)) {
    if (width_of(line.substr(0, at), type, semibold) > width) break;
    (glued(line, at) ? second : best) = at;
  }
  if (best == 0) best = second;
  if (best > 0) return best;
  std::size_t fits = 0;
  for (std::size_t at = 1; at <= line.size(); ++at) {
    const bool inside = at < line.size() && (static_cast<unsigned char>(line[at]) & 0xC0U) == 0x80U;   // whole characters
    if (inside) continue;
    if (fits > 0 && width_of(line.substr(0, at), type, semibold) > width) break;
    fits = at;
    if (at < line.size() && line[at] == ' ') break;
  }
  return fits;
}

void wrap_paragraph(std::string_view line, Type type, bool semibold, float width, std::vector<std::string_view>& lines) {
  do {
    const bool fits = width >= FLT_MAX || width_of(line, type, semibold) <= width;
    const std::size_t used = fits ? line.size() : fitting(line, type, semibold, width);
    lines.push_back(line.substr(0, used));
    line.remove_prefix(used);
    while (!line.empty() && line.front() == ' ') line.remove_prefix(1);
  } while (!line.empty());
}

}  // namespace

void fill(const Rect& rect, std::uint32_t colour, float radius) {
  ImGui::GetWindowDrawList()->AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, colour, radius);
}

void outline(const Rect& rect, std::uint32_t colour, float radius, float width) {
  // Inside the rectangle, so that a 1 px line is not cut by the window's edge.
  const float in = width / 2;
  ImGui::GetWindowDrawList()->AddRect({rect.x + in - 0.5F, rect.y + in - 0.5F},
                                      {rect.right() - in + 0.5F, rect.bottom() - in + 0.5F}, colour, radius, 0, width);
}

void disc(float x, float y, float radius, std::uint32_t colour) {
  ImGui::GetWindowDrawList()->AddCircleFilled({x - 0.5F, y - 0.5F}, radius, colour);
}

void ring(float x, float y, float radius, std::uint32_t colour, float width) {
  ImGui::GetWindowDrawList()->AddCircle({x - 0.5F, y - 0.5F}, radius - width / 2, colour, 0, width);
}

void stroke(float x0, float y0, float x1, float y1, std::uint32_t colour, float width) {
  ImGui::GetWindowDrawList()->AddLine({x0 - 0.5F, y0 - 0.5F}, {x1 - 0.5F, y1 - 0.5F}, colour, width);
}

std::uint32_t faded(std::uint32_t colour, float alpha) {
  const auto a = static_cast<std::uint32_t>(std::lround(static_cast<float>(colour >> 24U) * alpha));
  return (colour & 0x00FFFFFFU) | (a << 24U);
}

float imgui_size(float em_px) {
  constexpr float kHeightOverEm = 1.2102F;   // (ascender - descender) / unitsPerEm of our fonts' hhea table
  // Whole px: glyphs are baked at whole sizes, anything else is resampled and blurs.
  return std::round(em_px * kHeightOverEm);
}

float icon_px(float at_100) { return at_100 * std::min(static_cast<float>(now().frame.text_scale), 1.5F); }

float line_height(Type type) { return std::round(type_px(type) * leading(type)); }

float text_width(std::string_view text, Type type, bool semibold) {
  float widest = 0.0F;
  for (const std::string_view line : wrap(text, type, semibold, FLT_MAX)) {
    widest = std::max(widest, width_of(line, type, semibold));
  }
  return std::ceil(widest);
}

float longest_word(std::string_view text, Type type, bool semibold) {
  float widest = 0.0F;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(" \n"), text.size());
    widest = std::max(widest, width_of(text.substr(0, end), type, semibold));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return std::ceil(widest);
}

std::vector<std::string_view> wrap(std::string_view text, Type type, bool semibold, float width) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    wrap_paragraph(text.substr(0, end), type, semibold, width, lines);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

float text_height(std::string_view text, Type type, bool semibold, float width) {
  return static_cast<float>(wrap(text, type, semibold, width).size()) * line_height(type);
}

Extent measure(std::string_view text, Type type, bool semibold, float wrap_width) {
  const float limit = wrap_width > 0.0F ? wrap_width : FLT_MAX;
  Extent extent;
  for (const std::string_view line : wrap(text, type, semibold, limit)) {
    extent.width = std::max(extent.width, std::ceil(width_of(line, type, semibold)));
    extent.height += line_height(type);
  }
  return extent;
}

void on_baseline(std::string_view text, float x, float y, const Style& style, Align align) {
  if (text.empty()) return;
  const float size = imgui_size(type_px(style.type));
  ImFont* font = font_of(style.semibold);
  if (align != Align::left) {
    const float w = width_of(text, style.type, style.semibold);
    x -= align == Align::centre ? w / 2 : w;
  }
  const float ascent = font->GetFontBaked(size)->Ascent;
  ImGui::GetWindowDrawList()->AddText(font, size, {std::round(x), std::round(y - ascent)}, colour(style.ink), text.data(),
                                      text.data() + text.size());
  now().text_drawn(text, x, width_of(text, style.type, style.semibold));
}

float side_bearing(std::string_view text, Type type, bool semibold) {
  if (text.empty()) return 0.0F;
  const float size = imgui_size(type_px(type));
  const ImFontGlyph* glyph = font_of(semibold)->GetFontBaked(size)->FindGlyph(static_cast<unsigned char>(text[0]));
  return glyph == nullptr ? 0.0F : glyph->X0;
}

void line_of_text(std::string_view text, float x, float mid_y, const Style& style, Align align) {
  on_baseline(text, x, std::round(mid_y + type_px(style.type) * kCapital / 2), style, align);
}

float paint_text(std::string_view text, const Rect& rect, const Style& style, Align align) {
  const float step = line_height(style.type);
  float y = rect.y;
  for (const std::string_view line : wrap(text, style.type, style.semibold, rect.w)) {
    const float x = align == Align::left ? rect.x : align == Align::centre ? rect.mid_x() : rect.right();
    line_of_text(line, x, y + step / 2, style, align);
    y += step;
  }
  return y - rect.y;
}

void paint_label(std::string_view text, const Rect& rect, const Style& style, Align align) {
  const float height = text_height(text, style.type, style.semibold, rect.w);
  paint_text(text, {rect.x, rect.mid_y() - height / 2, rect.w, height}, style, align);
}

}  // namespace ui
