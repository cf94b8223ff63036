// One of several: a segmented bar when the words fit side by side, else rows with round marks.
#include <algorithm>
#include <cmath>
#include <string>

#include <imgui.h>

#include "ui/parts.h"
#include "ui/press.h"
#include "ui/row.h"
#include "ui/row_parts.h"
#include "ui/segments.h"

namespace ui {
namespace {

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
  const float needed = segments_width(options, Type::text, Share::even);
  const float height = std::max(kTarget, line_height(Type::text) + 24);
  ImGui::PushID(label.data(), label.data() + label.size());
  const std::size_t group = record(words_id("choice"), {column().left, column().y, column().width, height},
                                   {.role = Role::group, .name = std::string(label), .description = more.sub});
  std::optional<std::size_t> chosen;
  if (!more.as_list && needed <= column().width) {
    if (more.hide_label) {
      chosen = segments(take(height, Last::block), options, current, Type::text, Share::even);
    } else {
      // Beside the label when it leaves the words enough room, else under it over the full width.
      const bool beside = needed <= column().width * 0.55F;
      const RowPlan plan = plan_row(label, more.sub, beside ? needed : column().width, height);
      now().recorder.at(group).y = plan.row.y;
      now().recorder.at(group).height = plan.row.h;
      paint_row_words(plan, label, more.sub);
      chosen = segments(plan.control, options, current, Type::text, Share::even);
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
