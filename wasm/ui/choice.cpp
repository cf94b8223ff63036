// One of several: a segmented bar when the words fit side by side, else rows with round marks.
#include <algorithm>
#include <cmath>
#include <string>

#include <imgui.h>

#include "ui/parts.h"
#include "ui/press.h"
#include "ui/row.h"
#include "ui/row_parts.h"

namespace ui {
namespace {

constexpr float kSegmentPad = 8.0F;

// Each segment as wide as the widest needs, so that the bar is even.
float widest(std::span<const std::string> options) {
  float width = 0.0F;
  for (const std::string& option : options) width = std::max(width, text_width(option, Type::text, true));
  return width + 2 * kSegmentPad;
}

std::optional<std::size_t> segments(const Rect& bar, std::span<const std::string> options, std::size_t current) {
  std::optional<std::size_t> chosen;
  fill(bar, colour(Ink::card), kControlRadius);
  const float each = bar.w / static_cast<float>(options.size());
  ImDrawList* list = ImGui::GetWindowDrawList();
  for (std::size_t i = 0; i < options.size(); ++i) {
    const float left = snap(bar.x + each * static_cast<float>(i)), right = snap(bar.x + each * static_cast<float>(i + 1));
    const Rect rect{left, bar.y, right - left, bar.h};
    const std::uint32_t id = make_id(options[i]);
    const Press state = press(id, rect);
    record(id, rect, {.role = Role::radio, .name = options[i], .state = i == current ? kChecked : 0U});
    ImDrawFlags corners = ImDrawFlags_RoundCornersNone;
    if (i == 0) corners = ImDrawFlags_RoundCornersLeft;
    if (i + 1 == options.size()) corners = ImDrawFlags_RoundCornersRight;
    if (options.size() == 1) corners = ImDrawFlags_RoundCornersAll;
    const bool on = i == current;
    if (on || state.held || state.hovered) {
      list->AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, colour(on ? Ink::ink : Ink::pressed), kControlRadius, corners);
    } else if (i > 0 && i != current + 1) {
      fill({rect.x - 0.5F, rect.y + 10, 1, rect.h - 20}, colour(Ink::line));
    }
    line_of_text(options[i], rect.mid_x(), rect.mid_y(), {.type = Type::text, .semibold = true, .ink = on ? Ink::on_ink : Ink::ink},
                 Align::centre);
    if (state.pressed && !on) chosen = i;
  }
  outline(bar, colour(Ink::rim), kControlRadius);
  return chosen;
}

std::optional<std::size_t> rows(std::span<const std::string> options, std::size_t current, std::span<const std::string> subs) {
  constexpr float kMark = 24.0F;
  std::optional<std::size_t> chosen;
  for (std::size_t i = 0; i < options.size(); ++i) {
    const std::string sub = i < subs.size() ? subs[i] : std::string();
    const RowPlan plan = plan_row(options[i], sub, 0.0F, 0.0F, kMark + 14);
    const std::uint32_t id = make_id(options[i]);
    const Rect reach = row_reach(plan.row);
    const Press state = press(id, reach);
    const bool on = i == current;
    record(id, reach, {.role = Role::radio, .name = options[i], .description = sub, .state = on ? kChecked : 0U});
    paint_row_ground(plan, state.held || state.hovered, false);
    const Rect mark{plan.row.x, std::round(plan.row.mid_y() - kMark / 2), kMark, kMark};
    ring(mark.mid_x(), mark.mid_y(), kMark / 2, colour(on ? Ink::accent : Ink::rim), 2.0F);
    if (on) disc(mark.mid_x(), mark.mid_y(), kMark / 2 - 6, colour(Ink::accent));
    paint_row_words(plan, options[i], sub);
    if (state.pressed && !on) chosen = i;
  }
  return chosen;
}

}  // namespace

std::optional<std::size_t> choice(std::string_view label, std::span<const std::string> options, std::size_t current,
                                  const ChoiceOptions& more) {
  if (options.empty()) return std::nullopt;
  const float each = widest(options);
  const float needed = std::max(each, kTarget) * static_cast<float>(options.size());
  const float height = std::max(kTarget, line_height(Type::text) + 24);
  ImGui::PushID(label.data(), label.data() + label.size());
  const std::size_t group = record(words_id("choice"), {column().left, column().y, column().width, height},
                                   {.role = Role::group, .name = std::string(label), .description = more.sub});
  std::optional<std::size_t> chosen;
  if (!more.as_list && needed <= column().width) {
    if (more.hide_label) {
      chosen = segments(take(height, Last::block), options, current);
    } else {
      // Beside the label when it leaves the words enough room, else under it over the full width.
      const bool beside = needed <= column().width * 0.55F;
      const RowPlan plan = plan_row(label, more.sub, beside ? needed : column().width, height);
      now().recorder.at(group).y = plan.row.y;
      now().recorder.at(group).height = plan.row.h;
      paint_row_words(plan, label, more.sub);
      chosen = segments(plan.control, options, current);
    }
  } else {
    if (!more.hide_label) {
      const RowPlan plan = plan_row(label, more.sub, 0.0F, 0.0F);
      paint_text(label, plan.words, {.type = Type::text, .semibold = true});
      paint_text(more.sub, {plan.words.x, plan.words.y + plan.label_height, plan.words.w, plan.words.h},
                 {.type = Type::caption, .ink = Ink::muted});
    }
    const float top = column().y;
    chosen = rows(options, current, more.subs);
    now().recorder.at(group).y = top;
    now().recorder.at(group).height = column().y - top;
  }
  record_end();
  ImGui::PopID();
  return chosen;
}

}  // namespace ui
