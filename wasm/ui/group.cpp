#include "ui/group.h"

#include <algorithm>
#include <cmath>

#include <imgui.h>

#include "ui/parts.h"
#include "ui/press.h"
#include "ui/row_parts.h"

namespace ui {
namespace {

constexpr float kInset = 14.0F;           // of the content, behind its line at the left

float pill_width(const std::string& count) {
  return count.empty() ? 0.0F : std::max(text_width(count, Type::caption, true) + 16, line_height(Type::caption) + 4);
}

// The count, and the value behind it, at the right; under the words where the line is too narrow.
struct Figures {
  float count = 0.0F, value = 0.0F, height = 0.0F;
  [[nodiscard]] float gap() const { return count > 0 && value > 0 ? 10.0F : 0.0F; }
  [[nodiscard]] float width() const { return count + gap() + value; }
};

Figures figures_of(const GroupOptions& options, float most) {
  Figures figures;
  figures.count = pill_width(options.count);
  if (!options.value.empty()) figures.value = std::min(text_width(options.value, Type::text, true) + 1, most - figures.count - 10);
  figures.height = std::max(text_height(options.value, Type::text, true, figures.value), figures.count > 0 ? line_height(Type::caption) + 4 : 0.0F);
  return figures;
}

void paint_figures(const GroupOptions& options, const Figures& figures, const Rect& rect) {
  if (figures.count > 0) {
    const float height = line_height(Type::caption) + 4;
    fill({rect.x, std::round(rect.mid_y() - height / 2), figures.count, height}, colour(Ink::pressed), height / 2);
    line_of_text(options.count, rect.x + figures.count / 2, rect.mid_y(), {.type = Type::caption, .semibold = true, .ink = Ink::muted}, Align::centre);
  }
  if (figures.value <= 0) return;
  paint_label(options.value, {rect.x + figures.count + figures.gap(), rect.y, figures.value, rect.h},
              {.type = Type::text, .semibold = true, .ink = tone_ink(options.tone)}, Align::left);
}

std::string said_of(std::string_view label, const GroupOptions& options) {
  return joined(joined(label, options.count_said.empty() ? options.count : options.count_said), options.sub, options.value);
}

}  // namespace

bool begin_group(std::string_view label, const GroupOptions& options) {
  State::Parts& p = now();
  const float chevron = icon_px(18) + 6;
  const float left = options.icon == Icon::none ? 0.0F : icon_px(24) + 12;
  const Figures figures = figures_of(options, column().width - left - chevron);
  const RowPlan plan = plan_row(label, options.sub, figures.width(), figures.height, left, chevron, true);
  const std::uint32_t id = make_id(label);
  const Rect reach = row_reach(plan.row);
  const Press state = press(id, reach);
  bool& open = p.folded.try_emplace(id, options.open_at_first).first->second;
  if (state.pressed) open = !open;
  record(id, reach, {.role = Role::button, .name = said_of(label, options), .state = open ? kExpanded : kCollapsed});
  paint_row_ground(plan, state.held || state.hovered, false);
  const float icon = icon_px(24);
  if (left > 0) draw_icon(options.icon, plan.row.x + icon / 2, plan.words.mid_y(), icon, colour(Ink::ink), 1.9F);
  paint_row_words(plan, label, options.sub);
  paint_figures(options, figures, plan.control);
  draw_icon(open ? Icon::collapse : Icon::expand, plan.row.right() - icon_px(18) / 2, plan.row.mid_y(), icon_px(18), colour(Ink::muted), 2.2F);
  if (!open) return false;
  p.groups.push_back(record(words_id("group"), {plan.row.x, plan.row.bottom(), plan.row.w, 1}, {.role = Role::group, .name = std::string(label)}));
  ImGui::PushID(label.data(), label.data() + label.size());
  const Column outer = column();
  push_column({.left = outer.left + kInset, .width = outer.width - kInset, .y = outer.y, .last = Last::row, .card = outer.card});
  return true;
}

void end_group() {
  State::Parts& p = now();
  const float bottom = column().y;
  pop_column();
  Column& outer = column();
  fill({outer.left + 1, outer.y + 2, 2, std::max(bottom - outer.y - 4, 0.0F)}, colour(Ink::rim), 1.0F);
  p.recorder.at(p.groups.back()).height = bottom - outer.y;
  p.groups.pop_back();
  outer.y = bottom;
  outer.last = Last::row;
  ImGui::PopID();
  record_end();
}

}  // namespace ui
