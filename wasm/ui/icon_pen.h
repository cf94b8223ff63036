// What icons are drawn with. Private to the room.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <numbers>

#include <imgui.h>

#include "ui/icon.h"

namespace ui {

inline constexpr float kPi = std::numbers::pi_v<float>;

// Drawn in a square from -12 to 12, as on paper with 24 lines.
class Pen {
 public:
  Pen(float x, float y, float size, std::uint32_t colour, float weight)
      : x_(x), y_(y), k_(size / 24.0F), colour_(colour), weight_(weight), list_(ImGui::GetWindowDrawList()) {}

  void line(std::initializer_list<ImVec2> points, bool closed = false) const {
    for (const ImVec2 p : points) list_->PathLineTo(at(p));
    list_->PathStroke(colour_, closed ? ImDrawFlags_Closed : ImDrawFlags_None, weight_);
    // Round ends and corners.
    for (const ImVec2 p : points) list_->AddCircleFilled(at(p), weight_ / 2 - 0.15F, colour_);
  }
  void dot(ImVec2 p, float radius) const { list_->AddCircleFilled(at(p), radius * k_, colour_); }
  void arc(ImVec2 centre, float radius, float from, float to) const {
    list_->PathArcTo(at(centre), radius * k_, from, to);
    list_->PathStroke(colour_, ImDrawFlags_None, weight_);
  }

 private:
  [[nodiscard]] ImVec2 at(ImVec2 p) const { return {x_ + p.x * k_, y_ + p.y * k_}; }
  float x_, y_, k_;
  std::uint32_t colour_;
  float weight_;
  ImDrawList* list_;
};

// Devices and parts; nothing for other icons.
void draw_thing(const Pen& pen, Icon icon);

}  // namespace ui
