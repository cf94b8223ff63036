#include "ui/ladder.h"

#include <algorithm>
#include <cmath>
#include <string>

#include <imgui.h>

#include "ui/icon.h"
#include "ui/paint.h"
#include "ui/press.h"
#include "ui/row_parts.h"

namespace ui {
namespace {

constexpr float kLadderBar = 10.0F;
constexpr float kLeastBar = 72.0F;        // narrower says nothing: it goes under the words

struct Columns {
  float label = 0, value = 0, number = 0;
  bool stacked = false;
};

Columns columns_of(std::span<const LadderRow> rows) {
  Columns c;
  for (const LadderRow& row : rows) {
    c.number = std::max(c.number, text_width(row.label, Type::title, true));
    c.label = std::max(c.label, text_width(row.unit, Type::caption, false));
    c.value = std::max(c.value, text_width(row.value, Type::text, true));
  }
  const float mark = type_px(Type::caption) + 6;
  c.value += mark;
  c.label += c.number + 5;
  c.stacked = column().width - c.label - c.value - 28 < kLeastBar;
  return c;
}

void head(const LadderOptions& options, const Columns& c) {
  if (options.left.empty() && options.right.empty()) return;
  const float left = c.stacked ? 0.0F : c.label + 14;
  const bool beside = left > 0 && text_width(options.left, Type::caption, false) + 8 <= left &&
                      longest_word(options.right, Type::caption, false) <= column().width - left;
  const float room = beside ? column().width - left : column().width;
  const float height = text_height(options.right, Type::caption, false, room) +
                       (beside ? 0.0F : text_height(options.left, Type::caption, false, room));
  const Rect rect = take(height, Last::words);
  record(words_id("head"), rect, {.role = Role::text, .name = joined(options.left, options.right)});
  const float used = paint_text(options.left, {rect.x, rect.y, room, height}, {.type = Type::caption, .ink = Ink::muted});
  paint_text(options.right, {rect.x + (beside ? left : 0.0F), rect.y + (beside ? 0.0F : used), room, height},
             {.type = Type::caption, .ink = Ink::muted});
}

void paint_bar(const Rect& bar, const LadderRow& row, double limit) {
  fill(bar, colour(Ink::line), kLadderBar / 2);
  const float w = std::max(bar.w * static_cast<float>(std::clamp(row.fill, 0.0, 1.0)), kLadderBar);
  fill({bar.x, bar.y, w, bar.h}, colour(row.tone == Tone::plain ? Ink::muted : tone_ink(row.tone)), kLadderBar / 2);
  const float mark = std::round(bar.x + bar.w * static_cast<float>(std::clamp(limit, 0.0, 1.0)));
  // The limit stands out on both bar and fill: ink with a card-coloured edge.
  fill({mark - 2, bar.y - 4, 4, bar.h + 8}, colour(row.chosen ? Ink::tint : Ink::card));
  fill({mark - 1, bar.y - 4, 2, bar.h + 8}, colour(Ink::ink));
}

void paint_label(const LadderRow& row, float x, float mid, float number_width) {
  const float base = std::round(mid + type_px(Type::title) * kCapital / 2);
  const Ink ink = row.struck ? Ink::muted : Ink::ink;
  on_baseline(row.label, x, base, {.type = Type::title, .semibold = true, .ink = ink});
  const float w = text_width(row.label, Type::title, true);
  on_baseline(row.unit, x + number_width + 5, base, {.type = Type::caption, .ink = Ink::muted});
  if (row.struck) stroke(x - 2, mid, x + w + 2, mid, colour(ink), 2.0F);
}

void paint_value(const LadderRow& row, float right, float mid) {
  const Ink ink = row.tone == Tone::plain ? Ink::ink : tone_ink(row.tone);
  const float mark = type_px(Type::caption);
  const float w = text_width(row.value, Type::text, true);
  line_of_text(row.value, right, mid, {.type = Type::text, .semibold = true, .ink = ink}, Align::right);
  const Icon icon = row.tone == Tone::good ? Icon::check : row.tone == Tone::plain ? Icon::none : Icon::close;
  draw_icon(icon, right - w - 6 - mark / 2, mid, mark, colour(ink), 3.2F);
}

std::string said_of(const LadderRow& row) {
  if (!row.said.empty()) return row.said;
  return joined(row.label + " " + row.unit + ": " + row.value, row.note, row.struck ? "not in the shop" : "");
}

bool one_row(const LadderRow& row, const LadderOptions& options, const Columns& c) {
  const float line = std::max(line_height(Type::title), line_height(Type::text));
  const float bar_left = c.stacked ? 0.0F : c.label + 14;
  const float bar_width = c.stacked ? column().width : column().width - bar_left - c.value - 14;
  const float note_room = c.stacked ? column().width : column().width - bar_left;
  const float note = text_height(row.note, Type::caption, false, note_room);
  float height = std::max(line + 20, kTarget) + (c.stacked ? kLadderBar + 6 : 0.0F) + (note > 0 ? note : 0.0F);
  RowPlan plan;
  plan.row = take_row(std::round(height));
  const Rect reach = row_reach(plan.row);
  const std::uint32_t id = make_id(row.label + row.unit);
  const Press state = press(id, reach);
  record(id, reach, {.role = Role::button, .name = said_of(row), .state = row.chosen ? kCurrent : 0U});
  paint_row_ground(plan, state.held || state.hovered, row.chosen);
  const float mid = std::round(plan.row.y + std::max(line + 20, kTarget) / 2);
  paint_label(row, plan.row.x, mid, c.number);
  paint_value(row, plan.row.right(), mid);
  const float bar_mid = c.stacked ? mid + line / 2 + kLadderBar / 2 + 2 : mid;
  paint_bar({plan.row.x + bar_left, std::round(bar_mid - kLadderBar / 2), bar_width, kLadderBar}, row, options.limit);
  if (note > 0) {
    const float top = (c.stacked ? bar_mid + kLadderBar / 2 + 6 : mid + line / 2 + 1);
    paint_text(row.note, {plan.row.x + bar_left, top, note_room, note}, {.type = Type::caption, .ink = Ink::muted});
  }
  return state.pressed;
}

}  // namespace

std::optional<std::size_t> ladder(std::string_view id, std::span<const LadderRow> rows, const LadderOptions& options) {
  if (rows.empty()) return std::nullopt;
  ImGui::PushID(id.data(), id.data() + id.size());
  const Columns c = columns_of(rows);
  head(options, c);
  record(words_id("ladder"), {column().left, column().y, column().width, 1}, {.role = Role::list, .name = joined(options.left, options.right)});
  std::optional<std::size_t> pressed;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (one_row(rows[i], options, c)) pressed = i;
  }
  record_end();
  ImGui::PopID();
  return pressed;
}

}  // namespace ui
