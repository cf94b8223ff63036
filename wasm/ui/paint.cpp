#include "ui/paint.h"

#include <algorithm>
#include <cfloat>
#include <cmath>
#include <string>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/parts.h"

namespace ui {
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

float icon_px(float at_100) { return at_100 * std::min(static_cast<float>(now().frame.text_scale), 1.5F); }

Extent measure(std::string_view text, Type type, bool semibold, float wrap_width) {
  const float limit = wrap_width > 0.0F ? wrap_width : FLT_MAX;
  Extent extent;
  for (const Line& line : wrap(text, type, semibold, limit)) {
    extent.width = std::max(extent.width, std::ceil(line_width(line.words, type, semibold)));
    extent.height += line_height(type);
  }
  return extent;
}

void on_baseline(std::string_view text, float x, float y, const Style& style, Align align) {
  if (text.empty()) return;
  const float size = imgui_size(type_px(style.type));
  ImFont* font = now().font(style.semibold);
  if (align != Align::left) {
    const float w = line_width(text, style.type, style.semibold);
    x -= align == Align::centre ? w / 2 : w;
  }
  const float ascent = font->GetFontBaked(size)->Ascent;
  ImGui::GetWindowDrawList()->AddText(font, size, {std::round(x), std::round(y - ascent)}, colour(style.ink), text.data(),
                                      text.data() + text.size());
  now().text_drawn(text, x, line_width(text, style.type, style.semibold));
}

float side_bearing(std::string_view text, Type type, bool semibold) {
  if (text.empty()) return 0.0F;
  const float size = imgui_size(type_px(type));
  const ImFontGlyph* glyph = now().font(semibold)->GetFontBaked(size)->FindGlyph(static_cast<unsigned char>(text[0]));
  return glyph == nullptr ? 0.0F : glyph->X0;
}

void line_of_text(std::string_view text, float x, float mid_y, const Style& style, Align align) {
  on_baseline(text, x, std::round(mid_y + type_px(style.type) * kCapital / 2), style, align);
}

float paint_text(std::string_view text, const Rect& rect, const Style& style, Align align) {
  const float step = line_height(style.type);
  float y = rect.y;
  for (const Line& line : wrap(text, style.type, style.semibold, rect.w)) {
    const float x = align == Align::left ? rect.x : align == Align::centre ? rect.mid_x() : rect.right();
    line_of_text(line.hyphen ? std::string(line.words) + "-" : line.words, x, y + step / 2, style, align);
    y += step;
  }
  return y - rect.y;
}

void paint_label(std::string_view text, const Rect& rect, const Style& style, Align align) {
  const float height = text_height(text, style.type, style.semibold, rect.w);
  paint_text(text, {rect.x, rect.mid_y() - height / 2, rect.w, height}, style, align);
}

}  // namespace ui
