#include "ui/picture.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <type_traits>

#include <imgui.h>
#include <imgui_internal.h>

#include "drawing/palette.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {

Type type_of(drawing::TextSize size) {
  switch (size) {
    case drawing::TextSize::caption: return Type::caption;
    case drawing::TextSize::text: return Type::text;
    case drawing::TextSize::title: return Type::title;
  }
  return Type::caption;
}
namespace {

using drawing::Point;

// From picture units to the window.
struct Map {
  float x = 0, y = 0, k = 1;
  [[nodiscard]] ImVec2 at(Point p) const { return {x + static_cast<float>(p.x) * k, y + static_cast<float>(p.y) * k}; }
  [[nodiscard]] float length(double l) const { return static_cast<float>(l) * k; }
};

std::uint32_t ink(drawing::Ink i) {
  if (i <= drawing::Ink::none) return colour(ink_of(i));
  const auto thing = drawing::colour_of(i, now().frame.dark ? drawing::Palette::night : drawing::Palette::day);
  if (!thing) return colour(Ink::card);
  return 0xFF000000U | (static_cast<std::uint32_t>(thing->blue) << 16U) | (static_cast<std::uint32_t>(thing->green) << 8U) |
         thing->red;
}

void paint(const Map& map, const drawing::Line& s) {
  const ImVec2 a = map.at(s.a), b = map.at(s.b);
  stroke(a.x, a.y, b.x, b.y, ink(s.ink), map.length(s.width));
}

void paint(const Map& map, const drawing::Circle& s) {
  ImDrawList* list = ImGui::GetWindowDrawList();
  const ImVec2 c = map.at(s.centre);
  if (s.fill != drawing::Ink::none) list->AddCircleFilled({c.x - 0.5F, c.y - 0.5F}, map.length(s.radius), ink(s.fill));
  if (s.ink != drawing::Ink::none) list->AddCircle({c.x - 0.5F, c.y - 0.5F}, map.length(s.radius), ink(s.ink), 0, map.length(s.width));
}

void paint(const Map& map, const drawing::Box& s) {
  const ImVec2 a = map.at(s.corner);
  const Rect rect{a.x, a.y, map.length(s.width), map.length(s.height)};
  if (s.fill != drawing::Ink::none) fill(rect, ink(s.fill), map.length(s.radius));
  if (s.ink != drawing::Ink::none) {
    ImGui::GetWindowDrawList()->AddRect({rect.x, rect.y}, {rect.right(), rect.bottom()}, ink(s.ink), map.length(s.radius), 0,
                                        map.length(s.line_width));
  }
}

void paint(const Map& map, const drawing::Text& s) {
  const ImVec2 at = map.at(s.at);
  ImFont* font = s.bold ? now().semibold : now().text;
  const float em = static_cast<float>(type_of(s.size)) * map.k;   // the picture's own scale sets its type
  const float size = imgui_size(em);
  const char* begin = s.text.data();
  const char* end = begin + s.text.size();
  const float width = font->CalcTextSizeA(size, FLT_MAX, 0.0F, begin, end).x;
  const float x = s.anchor == drawing::Anchor::left ? at.x : s.anchor == drawing::Anchor::centre ? at.x - width / 2 : at.x - width;
  const float baseline = std::round(at.y + em * kCapital / 2);
  ImGui::GetWindowDrawList()->AddText(font, size, {std::round(x), baseline - font->GetFontBaked(size)->Ascent}, ink(s.ink), begin, end);
}

void paint(const Map& map, const drawing::Polyline& s) {
  if (s.points.size() < 2) return;
  ImDrawList* list = ImGui::GetWindowDrawList();
  const auto path = [&] {
    for (const Point p : s.points) list->PathLineTo({map.at(p).x - 0.5F, map.at(p).y - 0.5F});
  };
  if (s.fill != drawing::Ink::none) {
    path();
    list->PathFillConcave(ink(s.fill));
  }
  if (s.ink == drawing::Ink::none) return;
  path();
  list->PathStroke(ink(s.ink), s.closed ? ImDrawFlags_Closed : ImDrawFlags_None, map.length(s.width));
}

double distance_to_segment(Point p, Point a, Point b) {
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double length2 = dx * dx + dy * dy;
  const double t = length2 > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / length2, 0.0, 1.0) : 0.0;
  return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

double distance_to_box(Point p, double x, double y, double w, double h) {
  return std::hypot(std::max({x - p.x, 0.0, p.x - x - w}), std::max({y - p.y, 0.0, p.y - y - h}));
}

double distance(Point p, const drawing::Line& s) { return distance_to_segment(p, s.a, s.b); }
double distance(Point p, const drawing::Circle& s) { return std::max(std::hypot(p.x - s.centre.x, p.y - s.centre.y) - s.radius, 0.0); }
double distance(Point p, const drawing::Box& s) { return distance_to_box(p, s.corner.x, s.corner.y, s.width, s.height); }
double distance(Point p, const drawing::Text& s) {
  const double high = static_cast<double>(type_of(s.size)), wide = high * 0.6 * static_cast<double>(s.text.size());
  const double left = s.anchor == drawing::Anchor::left ? 0.0 : s.anchor == drawing::Anchor::centre ? wide / 2 : wide;
  return distance_to_box(p, s.at.x - left, s.at.y - high / 2, wide, high);
}
double distance(Point p, const drawing::Polyline& s) {
  double least = 1e9;
  for (std::size_t i = 1; i < s.points.size(); ++i) least = std::min(least, distance_to_segment(p, s.points[i - 1], s.points[i]));
  return least;
}

void paint_all(const drawing::Picture& picture, const Map& map) {
  for (const drawing::Shape& shape : picture.shapes) {
    std::visit([&](const auto& form) { paint(map, form); }, shape.form);
  }
}

}  // namespace

std::optional<drawing::Subject> subject_at(const drawing::Picture& picture, drawing::Point at, double reach) {
  std::optional<drawing::Subject> nearest;
  double least = reach;
  for (const drawing::Shape& shape : picture.shapes) {
    if (shape.subject.kind == 0) continue;
    const double d = std::visit([at](const auto& form) { return distance(at, form); }, shape.form);
    if (d <= least) {                      // later shapes lie on top: they win a tie
      least = d;
      nearest = shape.subject;
    }
  }
  return nearest;
}

std::optional<drawing::Subject> picture(std::string_view id, const drawing::Picture& picture, const PictureOptions& options) {
  if (picture.width <= 0.0 || picture.height <= 0.0) return std::nullopt;
  State::Parts& p = now();
  const float type = static_cast<float>(p.frame.text_scale);
  const float fit = column().width / static_cast<float>(picture.width);
  const float k = std::clamp(fit, static_cast<float>(options.at_least) * type, static_cast<float>(options.at_most) * type);
  const float w = static_cast<float>(picture.width) * k, h = static_cast<float>(picture.height) * k;
  // What scrolls sideways reaches to the card's edges, and has room below for the mark that says so.
  constexpr float kMarkRoom = 10.0F;
  const bool scrolls = w > column().width + 0.5F;
  const Rect rect = take(h + (scrolls ? kMarkRoom : 0.0F), Last::block);
  const float pad = scrolls ? column().pad : 0.0F;
  const Rect view{rect.x - std::max(pad - 1, 0.0F), rect.y, rect.w + 2 * std::max(pad - 1, 0.0F), rect.h};
  ImGui::PushID(id.data(), id.data() + id.size());
  Map map{rect.x + std::max((rect.w - w) / 2, 0.0F), rect.y, k};
  const std::uint32_t picture_id = make_id("picture");
  record(picture_id, view, {.role = Role::image, .name = picture.description});
  if (scrolls) {
    ImGui::SetCursorScreenPos({view.x, view.y});
    ImGui::BeginChild("view", {view.w, view.h}, ImGuiChildFlags_None,
                      ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoBackground |
                          ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_HorizontalScrollbar);
    map.x = ImGui::GetCursorScreenPos().x + pad;
  }
  std::optional<drawing::Subject> hit;
  if (options.taps && press(picture_id, view).pressed) {
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    constexpr double kReach = 24.0;        // px: half a target
    hit = subject_at(picture, {static_cast<double>((mouse.x - map.x) / k), static_cast<double>((mouse.y - map.y) / k)}, kReach / static_cast<double>(k));
  }
  paint_all(picture, map);
  if (scrolls) {
    const ImGuiWindow* window = ImGui::GetCurrentWindow();
    ImGui::SetCursorScreenPos({map.x + w + pad, view.bottom() - 1});
    ImGui::Dummy({0, 0});
    if (window->ScrollMax.x > 0.0F) {      // how far along we are
      const float thumb = view.w * view.w / (view.w + window->ScrollMax.x);
      const float x = view.x + (view.w - thumb) * window->Scroll.x / window->ScrollMax.x;
      fill({x + pad, view.bottom() - 3, thumb - 2 * pad, 3}, faded(colour(Ink::muted), 0.45F), 1.5F);
    }
    ImGui::EndChild();
  }
  ImGui::PopID();
  return hit;
}

}  // namespace ui
