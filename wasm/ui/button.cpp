#include "ui/button.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "ui/layout.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"
#include "ui/text.h"

namespace ui {
namespace {

constexpr float kSide = 16.0F;            // between words and edge
constexpr float kIcon = 20.0F;

struct Look {
  Ink fill;
  Ink words;
  bool filled;
  bool edged;
};

Look look_of(Kind kind) {
  switch (kind) {
    case Kind::primary: return {Ink::accent, Ink::on_accent, true, false};
    case Kind::danger: return {Ink::stop, Ink::on_accent, true, false};
    case Kind::quiet: return {Ink::card, Ink::accent, false, false};
    case Kind::secondary: break;
  }
  return {Ink::card, Ink::ink, true, true};
}

float icon_room(Icon icon) { return icon == Icon::none ? 0.0F : kIcon + 8; }

float button_height(std::string_view label, Icon icon, float width) {
  const float words = text_height(label, Type::text, true, width - 2 * kSide - icon_room(icon));
  return std::max(kTarget, std::round(words + 24));
}

void paint_button(const ButtonSpec& spec, const Rect& rect, const Press& state) {
  const Look look = look_of(spec.kind);
  const bool under = state.held || state.hovered;
  if (look.filled) {
    const std::uint32_t surface = colour(under && look.edged ? Ink::pressed : look.fill);
    fill(rect, spec.disabled && !look.edged ? faded(surface, 0.45F) : surface, kControlRadius);
    if (state.held && !look.edged) fill(rect, 0x30000000U, kControlRadius);
  } else if (under) {
    fill(rect, colour(Ink::pressed), kControlRadius);
  }
  if (look.edged) outline(rect, colour(spec.disabled ? Ink::line : Ink::rim), kControlRadius);
  const Ink ink = spec.disabled && (look.edged || !look.filled) ? Ink::muted : look.words;
  const float room = rect.w - 2 * kSide - icon_room(spec.icon);
  const float words = std::min(text_width(spec.label, Type::text, true), room);
  const float left = rect.mid_x() - (words + icon_room(spec.icon)) / 2;
  if (spec.icon != Icon::none) draw_icon(spec.icon, left + kIcon / 2, rect.mid_y(), kIcon, colour(ink), 2.2F);
  paint_label(spec.label, {left + icon_room(spec.icon), rect.y, std::max(words, room > words ? words + 1 : words), rect.h},
              {.type = Type::text, .semibold = true, .ink = ink});
}

bool draw(const ButtonSpec& spec, const Rect& rect) {
  const std::uint32_t id = make_id(spec.label);
  const Press state = press(id, rect, spec.disabled);
  std::uint32_t flags = spec.disabled ? kDisabled : 0U;
  if (spec.kind == Kind::primary) flags |= kPrimary;
  record(id, rect, {.role = Role::button, .name = spec.said.empty() ? spec.label : spec.said, .state = flags});
  paint_button(spec, rect, state);
  return state.pressed;
}

float natural_width(std::string_view label, Icon icon) {
  return std::max(text_width(label, Type::text, true) + 2 * kSide + icon_room(icon) + 1, kTarget);
}

}  // namespace

bool button(std::string_view label, const ButtonOptions& options) {
  const ButtonSpec spec{std::string(label), options.kind, options.icon, options.disabled, options.said};
  const bool flow = column().flow;
  const float width = options.full_width && !flow ? column().width : std::min(natural_width(label, options.icon), column().width);
  const float height = button_height(label, options.icon, width);
  Rect rect = flow ? take_in_flow(width, height) : take(height, Last::block);
  rect.w = width;
  return draw(spec, rect);
}

std::optional<std::size_t> buttons(std::span<const ButtonSpec> specs) {
  constexpr float kBetween = 10.0F;
  if (specs.empty()) return std::nullopt;
  const auto count = static_cast<float>(specs.size());
  const float each = std::floor((column().width - kBetween * (count - 1)) / count);
  const bool beside = std::all_of(specs.begin(), specs.end(), [each](const ButtonSpec& s) {
    return text_width(s.label, Type::text, true) <= each - 2 * kSide - icon_room(s.icon);
  });
  std::optional<std::size_t> pressed;
  if (beside) {
    const Rect row = take(button_height(specs[0].label, specs[0].icon, each), Last::block);
    for (std::size_t i = 0; i < specs.size(); ++i) {
      const Rect rect{row.x + static_cast<float>(i) * (each + kBetween), row.y, each, row.h};
      if (draw(specs[i], rect)) pressed = i;
    }
    return pressed;
  }
  for (std::size_t i = 0; i < specs.size(); ++i) {
    const float space = i == 0 ? -1.0F : 8.0F;
    if (draw(specs[i], take(button_height(specs[i].label, specs[i].icon, column().width), Last::block, space))) pressed = i;
  }
  return pressed;
}

void begin_flow() {
  Column& col = column();
  const Rect at = take(0.0F, Last::block, col.last == Last::words ? 8.0F : -1.0F);
  col.flow = true;
  col.flow_x = at.x;
  col.flow_height = 0.0F;
}

void end_flow() {
  Column& col = column();
  col.y += col.flow_height;
  col.flow = false;
}

bool chip(std::string_view label, const ChipOptions& options) {
  const float width = std::max(text_width(label, Type::text, true) + 24, 52.0F);
  const float height = std::max(kTarget, text_height(label, Type::text, true, std::min(width, column().width) - 24) + 20);
  Rect rect = column().flow ? take_in_flow(width, height) : take(height, Last::block);
  rect.w = std::min(width, column().width);
  const std::uint32_t id = make_id(label);
  const Press state = press(id, rect, options.disabled);
  record(id, rect, {.role = Role::checkbox, .name = options.said.empty() ? std::string(label) : options.said,
                    .state = (options.on ? kChecked : 0U) | (options.disabled ? kDisabled : 0U)});
  const bool under = state.held || state.hovered;
  fill(rect, colour(options.on ? Ink::ink : under ? Ink::pressed : Ink::card), kControlRadius);
  if (!options.on) outline(rect, colour(Ink::rim), kControlRadius);
  if (options.on && under) fill(rect, 0x28808080U, kControlRadius);
  const Ink ink = options.on ? Ink::on_ink : options.struck || options.disabled ? Ink::muted : Ink::ink;
  paint_label(label, {rect.x + 12, rect.y, rect.w - 24 + 1, rect.h}, {.type = Type::text, .semibold = true, .ink = ink});
  if (options.struck) {
    const float half = text_width(label, Type::text, true) / 2 + 4;
    stroke(rect.mid_x() - half, std::round(rect.mid_y()), rect.mid_x() + half, std::round(rect.mid_y()), colour(ink), 2.0F);
  }
  return state.pressed;
}

void pill(std::string_view text, Tone tone) {
  const float mark = std::round(type_px(Type::caption));
  const float words = text_width(text, Type::caption, true);
  const float width = std::min(words + mark + 22, column().width);
  const float room = width - mark - 22 + 1;
  const float height = text_height(text, Type::caption, true, room) + 8;
  Rect rect = column().flow ? take_in_flow(width, height) : take(height, Last::words, 8.0F);
  rect.w = width;
  record(words_id("pill"), rect, {.role = Role::text, .name = std::string(text)});
  const bool plain = tone == Tone::plain;
  fill(rect, colour(plain ? Ink::pressed : tone_tint(tone)), 8.0F);
  const Ink ink = plain ? Ink::muted : tone_ink(tone);
  const Icon icon = tone == Tone::good ? Icon::check : tone == Tone::caution ? Icon::warning : tone == Tone::stop ? Icon::stop : Icon::minus;
  draw_icon(icon, rect.x + 8 + mark / 2, rect.mid_y(), mark, colour(ink), 3.2F);
  paint_label(text, {rect.x + 8 + mark + 6, rect.y, room, rect.h}, {.type = Type::caption, .semibold = true, .ink = ink}, Align::left);
}

bool notice(const NoticeOptions& options) {
  begin_card("notice" + options.title, {.name = options.title, .tone = options.tone});
  const Ink ink = tone_ink(options.tone);
  const float mark = std::round(type_px(Type::title) * 1.1F);
  const float indent = options.tone == Tone::plain || column().width < 200 ? 0.0F : mark + 10;
  const float room = column().width - indent;
  const float title = text_height(options.title, Type::text, true, room);
  const float words = text_height(options.text, Type::text, false, room);
  const float space = title > 0 && words > 0 ? 2.0F : 0.0F;
  const Rect rect = take(title + space + words, Last::words);
  if (indent > 0) {
    const Icon icon = options.tone == Tone::good ? Icon::check : options.tone == Tone::caution ? Icon::warning : Icon::stop;
    draw_icon(icon, rect.x + mark / 2, rect.y + line_height(Type::text) / 2, mark, colour(ink), 2.2F);
  }
  const Role role = options.alert ? Role::alert : Role::text;
  record(words_id("notice"), rect, {.role = role, .name = joined(options.title, options.text)});
  paint_text(options.title, {rect.x + indent, rect.y, room, title}, {.type = Type::text, .semibold = true, .ink = ink});
  paint_text(options.text, {rect.x + indent, rect.y + title + space, room, words},
             {.type = Type::text, .ink = options.tone == Tone::plain ? Ink::muted : ink});
  const bool pressed = !options.action.empty() && button(options.action);
  end_card();
  return pressed;
}

}  // namespace ui
