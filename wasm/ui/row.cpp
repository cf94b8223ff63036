#include "ui/row.h"

#include <algorithm>
#include <cmath>

#include <imgui.h>

#include "ui/parts.h"
#include "ui/press.h"
#include "ui/row_parts.h"

namespace ui {

namespace {
constexpr float kRowAir = 10.0F;             // above and below the words
constexpr float kLeastRow = 56.0F;
}  // namespace

RowPlan plan_row(std::string_view label, std::string_view sub, float control_width, float control_height, float left, float right,
                 bool semibold) {
  RowPlan plan;
  plan.semibold = semibold;
  const float all = column().width - left - right;
  float room = all - (control_width > 0 ? control_width + 14 : 0.0F);
  const float need = std::max({longest_word(label, Type::text, semibold), longest_word(sub, Type::caption, false), all * 0.4F});
  plan.stacked = control_width > 0 && (room < need || text_height(label, Type::text, semibold, room) > 2.5F * line_height(Type::text));
  if (plan.stacked) room = all;
  plan.label_height = text_height(label, Type::text, semibold, room);
  const float words = plan.label_height + text_height(sub, Type::caption, false, room);
  const float height = plan.stacked ? words + 8 + control_height + 2 * kRowAir : std::max(words + 2 * kRowAir, control_height + 16);
  plan.row = take_row(std::max(std::round(height), kLeastRow));
  const Rect& row = plan.row;
  if (plan.stacked) {
    plan.words = {row.x + left, row.y + kRowAir, room, words};
    plan.control = {row.x + left, row.bottom() - kRowAir - control_height, std::min(control_width, all), control_height};
  } else {
    plan.words = {row.x + left, std::round(row.mid_y() - words / 2), room, words};
    plan.control = {row.right() - right - control_width, std::round(row.mid_y() - control_height / 2), control_width, control_height};
  }
  return plan;
}

Rect row_reach(const Rect& row) {
  const float pad = column().pad;
  return {row.x - pad, row.y, row.w + 2 * pad, row.h};
}

void paint_row_words(const RowPlan& plan, std::string_view label, std::string_view sub, bool disabled) {
  paint_text(label, plan.words, {.type = Type::text, .semibold = plan.semibold, .ink = disabled ? Ink::muted : Ink::ink});
  paint_text(sub, {plan.words.x, plan.words.y + plan.label_height, plan.words.w, plan.words.h},
             {.type = Type::caption, .ink = Ink::muted});
}

void paint_row_ground(const RowPlan& plan, bool under, bool current) {
  if (!under && !current) return;
  Rect reach = row_reach(plan.row);
  reach.x += 1;                            // inside the card's edge
  reach.w -= 2;
  if (column().card) {
    fill(reach, colour(current ? Ink::tint : Ink::pressed));
  } else {
    fill(reach, colour(current ? Ink::tint : Ink::pressed), kControlRadius);
  }
  if (current) fill({reach.x, reach.y, 4, reach.h}, colour(Ink::accent));
}

namespace {

float badge_room(const RowOptions& options) {
  if (options.badge.empty() && options.icon == Icon::none) return 0.0F;
  return std::round(std::max({32.0F, type_px(Type::text) * 1.8F, text_width(options.badge, Type::text, true) + 14})) + 12;
}

void paint_badge(const RowOptions& options, const RowPlan& plan) {
  const float room = badge_room(options);
  if (room <= 0) return;
  const float size = room - 12;
  const float x = plan.row.x + size / 2, y = plan.stacked ? plan.words.mid_y() : plan.row.mid_y();
  if (options.badge.empty()) {
    draw_icon(options.icon, x, y, 24, colour(options.disabled ? Ink::muted : Ink::ink), 1.9F);
    return;
  }
  disc(x, y, size / 2, colour(Ink::card));
  ring(x, y, size / 2, colour(Ink::ink), 1.75F);
  line_of_text(options.badge, x, y, {.type = Type::text, .semibold = true}, Align::centre);
}

}  // namespace

bool list_row(std::string_view label, const RowOptions& options) {
  const float chevron = options.chevron ? icon_px(18) + 4 : 0.0F;
  const float left = badge_room(options);
  const float all = column().width - left - chevron;
  const float value_width = std::min(text_width(options.value, Type::text, true) + 1, all);
  const float value_height = text_height(options.value, Type::text, true, value_width);
  const float control = options.value.empty() ? 0.0F : value_width;
  const RowPlan plan = plan_row(label, options.sub, control, value_height, left, chevron);
  const std::uint32_t id = make_id(label);
  const Rect reach = row_reach(plan.row);
  const Press state = press(id, reach, options.disabled);
  std::uint32_t flags = options.disabled ? kDisabled : 0U;
  if (options.current) flags |= kCurrent;
  const std::string name = options.said.empty() ? joined(joined(options.badge, label), options.sub, options.value) : options.said;
  record(id, reach, {.role = Role::button, .name = name, .state = flags});
  paint_row_ground(plan, state.held || state.hovered, options.current);
  paint_badge(options, plan);
  paint_row_words(plan, label, options.sub, options.disabled);
  const Ink ink = options.tone == Tone::plain ? (options.disabled ? Ink::muted : Ink::ink) : tone_ink(options.tone);
  if (!options.value.empty()) {
    paint_text(options.value, plan.control, {.type = Type::text, .semibold = true, .ink = ink}, plan.stacked ? Align::left : Align::right);
  }
  if (options.chevron) draw_icon(Icon::chevron, plan.row.right() - icon_px(5), plan.row.mid_y(), icon_px(18), colour(Ink::muted), 2.2F);
  return state.pressed;
}

bool switch_row(std::string_view label, bool on, const ToggleOptions& options) {
  constexpr float kTrack = 50.0F, kHeight = 30.0F;
  const RowPlan plan = plan_row(label, options.sub, kTrack, kHeight);
  const std::uint32_t id = make_id(label);
  const Rect reach = row_reach(plan.row);
  const Press state = press(id, reach, options.disabled);
  record(id, reach, {.role = Role::switch_, .name = std::string(label), .description = options.sub,
                     .state = (on ? kChecked : 0U) | (options.disabled ? kDisabled : 0U)});
  paint_row_ground(plan, state.held || state.hovered, false);
  paint_row_words(plan, label, options.sub, options.disabled);
  const Rect track{plan.control.x, plan.control.mid_y() - kHeight / 2, kTrack, kHeight};
  fill(track, colour(on ? Ink::accent : Ink::card), kHeight / 2);
  if (!on) outline(track, colour(Ink::rim), kHeight / 2, 2.0F);
  const float knob = on ? 11.0F : 8.0F;
  const float knob_x = on ? track.right() - 15 : track.x + 15;
  disc(knob_x, track.mid_y(), knob, colour(on ? Ink::on_accent : Ink::rim));
  if (on) draw_icon(Icon::check, knob_x, track.mid_y(), 13, colour(Ink::accent), 4.0F);
  return state.pressed;
}

bool checkbox_row(std::string_view label, bool on, const ToggleOptions& options) {
  constexpr float kBox = 24.0F;
  const RowPlan plan = plan_row(label, options.sub, 0.0F, 0.0F, kBox + 14);
  const std::uint32_t id = make_id(label);
  const Rect reach = row_reach(plan.row);
  const Press state = press(id, reach, options.disabled);
  record(id, reach, {.role = Role::checkbox, .name = std::string(label), .description = options.sub,
                     .state = (on ? kChecked : 0U) | (options.disabled ? kDisabled : 0U)});
  paint_row_ground(plan, state.held || state.hovered, false);
  const Rect box{plan.row.x, std::round(plan.row.mid_y() - kBox / 2), kBox, kBox};
  fill(box, colour(on ? Ink::good : Ink::card), 7.0F);
  if (!on) outline(box, colour(Ink::rim), 7.0F, 2.0F);
  if (on) draw_icon(Icon::check, box.mid_x(), box.mid_y() + 0.5F, 16, colour(Ink::card), 3.4F);
  paint_row_words(plan, label, options.sub, options.disabled);
  return state.pressed;
}

bool disclosure(std::string_view label, bool open_at_first, std::string_view sub) {
  State::Parts& p = now();
  const RowPlan plan = plan_row(label, sub, 20.0F, 20.0F);
  const std::uint32_t id = make_id(label);
  const Rect reach = row_reach(plan.row);
  const Press state = press(id, reach);
  bool& open = p.folded.try_emplace(id, open_at_first).first->second;
  if (state.pressed) open = !open;
  record(id, reach, {.role = Role::button, .name = std::string(label), .description = std::string(sub),
                     .state = open ? kExpanded : kCollapsed});
  paint_row_ground(plan, state.held || state.hovered, false);
  paint_row_words(plan, label, sub);
  draw_icon(open ? Icon::collapse : Icon::expand, plan.row.right() - 8, plan.row.mid_y(), 18, colour(Ink::muted), 2.2F);
  return open;
}

}  // namespace ui
