#include "ui/button.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "ui/flow.h"
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

void paint_button(const ButtonSpec& spec, const Rect& rect, const Press& state, Type type, float side) {
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
  const float room = rect.w - 2 * side - icon_room(spec.icon);
  const float words = std::min(text_width(spec.label, type, true), room);
  const float left = rect.mid_x() - (words + icon_room(spec.icon)) / 2;
  if (spec.icon != Icon::none) draw_icon(spec.icon, left + kIcon / 2, rect.mid_y(), kIcon, colour(ink), 2.2F);
  paint_label(spec.label, {left + icon_room(spec.icon), rect.y, std::max(words, room > words ? words + 1 : words), rect.h},
              {.type = type, .semibold = true, .ink = ink});
}

bool draw(const ButtonSpec& spec, const Rect& rect, Type type = Type::text, float side = kSide) {
  const std::uint32_t id = make_id(spec.label);
  const Press state = press(id, rect, spec.disabled);
  std::uint32_t flags = spec.disabled ? kDisabled : 0U;
  if (spec.kind == Kind::primary) flags |= kPrimary;
  record(id, rect, {.role = Role::button, .name = spec.said.empty() ? spec.label : spec.said, .state = flags});
  paint_button(spec, rect, state, type, side);
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
  if (flow) place_chips();
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

namespace {

constexpr float kGridGap = 8.0F;
constexpr float kGridSide = 10.0F;
constexpr float kBig = 58.0F;             // least height of an answer

// How the cells of a grid are set, all alike.
struct Grid {
  std::size_t columns = 1;
  Type type = Type::text;
  float least = kTarget;
};

float cell_width(std::size_t columns) {
  const auto count = static_cast<float>(columns);
  return std::floor((column().width - kGridGap * (count - 1)) / count);
}

// Do all words fit in so many columns, on at most so many lines?
bool grid_fits(std::span<const ButtonSpec> specs, std::size_t columns, Type type, float lines) {
  const float width = cell_width(columns);
  return std::all_of(specs.begin(), specs.end(), [&](const ButtonSpec& spec) {
    const float room = width - 2 * kGridSide - icon_room(spec.icon);
    return longest_word(spec.label, type, true) <= room &&
           text_height(spec.label, type, true, room) <= (lines + 0.5F) * line_height(type);
  });
}

Grid grid_of(std::span<const ButtonSpec> specs, bool big) {
  const float least = big ? kBig : kTarget;
  const Type large = big ? Type::title : Type::text;
  for (const Type type : {large, Type::text}) {
    if (specs.size() <= 3 && grid_fits(specs, specs.size(), type, 1)) return {specs.size(), type, least};
    if (grid_fits(specs, 2, type, 1)) return {2, type, least};
  }
  return {grid_fits(specs, 2, Type::text, 2) ? 2U : 1U, Type::text, least};
}

// Which one takes a whole line of two; the count of the specs when none does.
std::size_t alone_in(std::span<const ButtonSpec> specs, const Grid& grid) {
  if (grid.columns != 2 || specs.size() % 2 == 0) return specs.size();
  return specs.front().kind == Kind::primary ? 0 : specs.size() - 1;
}

}  // namespace

std::optional<std::size_t> button_grid(std::span<const ButtonSpec> specs, bool big) {
  if (specs.empty()) return std::nullopt;
  const Grid grid = grid_of(specs, big);
  const std::size_t alone = alone_in(specs, grid);
  std::optional<std::size_t> pressed;
  for (std::size_t i = 0; i < specs.size();) {
    const std::size_t here = i == alone ? 1 : std::min(grid.columns, specs.size() - i);
    const float width = cell_width(here);
    float height = grid.least;
    for (std::size_t k = i; k < i + here; ++k) {
      const float room = width - 2 * kGridSide - icon_room(specs[k].icon);
      height = std::max(height, std::round(text_height(specs[k].label, grid.type, true, room) + 16));
    }
    const Rect row = take(height, Last::block, i == 0 ? -1.0F : kGridGap);
    for (std::size_t k = 0; k < here; ++k) {
      const Rect rect{row.x + static_cast<float>(k) * (width + kGridGap), row.y, width, row.h};
      if (draw(specs[i + k], rect, grid.type, kGridSide)) pressed = i + k;
    }
    i += here;
  }
  return pressed;
}

void pill(std::string_view text, Tone tone) {
  const float mark = std::round(type_px(Type::caption));
  const float words = text_width(text, Type::caption, true);
  const float width = std::min(words + mark + 22, column().width);
  const float room = width - mark - 22 + 1;
  const float height = text_height(text, Type::caption, true, room) + 8;
  if (column().flow) place_chips();
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
