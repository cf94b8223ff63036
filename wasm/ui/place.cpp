#include "ui/place.h"

#include <algorithm>
#include <cmath>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/flow.h"
#include "ui/paint.h"
#include "ui/parts.h"

namespace ui {
namespace {

// Space between two things in a column, CSS px: words sit close, controls apart, cards further.
float space_before(const Column& col, Last kind) {
  if (col.last == Last::nothing) return 0.0F;
  if (!col.card) return kGap;
  if (kind == Last::row && col.last == Last::row) return 0.0F;
  if (kind == Last::words && col.last == Last::words) return 4.0F;
  if (kind == Last::row || col.last == Last::row) return 4.0F;
  return 12.0F;
}

}  // namespace

Column& column() { return now().columns.back(); }
void push_column(const Column& column) { now().columns.push_back(column); }
void pop_column() { now().columns.pop_back(); }

float snap(float v) {
  const float ratio = now().frame.pixel_ratio;
  return std::round(v * ratio) / ratio;
}

Rect take(float height, Last kind, float space) {
  Column& col = column();
  const float before = space >= 0.0F ? (col.last == Last::nothing ? 0.0F : space) : space_before(col, kind);
  const Rect rect{col.left, snap(col.y + before), col.width, snap(height)};
  col.y = rect.bottom();
  col.last = kind;
  return rect;
}

Rect take_in_flow(float width, float height) {
  Column& col = column();
  width = std::min(width, col.width);
  if (col.flow_height > 0.0F && col.flow_x + width > col.left + col.width + 0.5F) {
    col.y += col.flow_height + kFlowGap;
    col.flow_x = col.left;
    col.flow_height = 0.0F;
  }
  const Rect rect{snap(col.flow_x), col.y, width, snap(height)};
  col.flow_x += width + kFlowGap;
  col.flow_height = std::max(col.flow_height, height);
  return rect;
}

Rect take_row(float height) {
  const bool after_row = column().last == Last::row;
  if (column().card && column().last == Last::nothing) column().y -= kCardPad - 4;   // rows bring their own air
  const Rect rect = take(height, Last::row);
  if (after_row) {
    fill({rect.x, rect.y - 0.5F, rect.w, 1.0F}, colour(Ink::line));
  }
  return rect;
}

std::uint32_t make_id(std::string_view label) {
  const ImGuiID id = ImGui::GetID(label.data(), label.data() + label.size());
  return now().recorder.unique(id);
}

std::uint32_t words_id(std::string_view kind) {
  const ImGuiID parent = ImGui::GetID(kind.data(), kind.data() + kind.size());
  const std::uint32_t count = ++column().words;
  return now().recorder.unique(ImHashData(&count, sizeof count, parent));
}

}  // namespace ui
