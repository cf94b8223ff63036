#include "ui/share.h"

#include <algorithm>
#include <cmath>

#include "ui/icon.h"
#include "ui/paint.h"
#include "ui/press.h"
#include "ui/row_parts.h"

namespace ui {

bool share_row(std::string_view label, const ShareOptions& options) {
  constexpr float kTrough = 8.0F, kAround = 10.0F;
  const float value = text_width(options.value, Type::text, true) + 1;
  const float chevron = icon_px(18) + 4;
  const float room = column().width - value - 12 - chevron;
  const float words = text_height(label, Type::text, false, room);
  const float sub = text_height(options.sub, Type::caption, false, column().width - chevron);
  const float under = sub > 0 ? sub + 5 : 0.0F;
  RowPlan plan;
  plan.row = take_row(std::max(std::round(words + 6 + kTrough + under + 2 * kAround), kTarget));
  const std::uint32_t id = make_id(label);
  const Rect reach = row_reach(plan.row);
  const Press state = press(id, reach);
  record(id, reach, {.role = Role::button,
                     .name = options.said.empty() ? joined(label, options.value, options.sub) : options.said});
  paint_row_ground(plan, state.held || state.hovered, false);
  const Rect& row = plan.row;
  const float right = row.right() - chevron;
  paint_text(label, {row.x, row.y + kAround, room, words}, {.type = Type::text});
  line_of_text(options.value, right, row.y + kAround + line_height(Type::text) / 2, {.type = Type::text, .semibold = true}, Align::right);
  const Rect bar{row.x, std::round(row.y + kAround + words + 6), right - row.x, kTrough};
  fill(bar, colour(Ink::line), kTrough / 2);
  const float length = bar.w * static_cast<float>(std::clamp(options.share, 0.0, 1.0));
  fill({bar.x, bar.y, std::max(length, kTrough), bar.h}, colour(Ink::accent), kTrough / 2);
  paint_text(options.sub, {row.x, bar.bottom() + 5, right - row.x, sub}, {.type = Type::caption, .ink = Ink::muted});
  draw_icon(Icon::chevron, row.right() - icon_px(5), row.mid_y(), icon_px(18), colour(Ink::muted), 2.2F);
  return state.pressed;
}

}  // namespace ui
