#include "ui/keypad.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "ui/figure.h"
#include "ui/icon.h"
#include "ui/layout.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"
#include "ui/text.h"

namespace ui {
namespace {

constexpr std::size_t kLongest = 24;      // characters typed
constexpr float kKeyGap = 8.0F;
constexpr int kRows = 4, kColumns = 4;

struct Key {
  std::string face;          // drawn; empty: the icon
  std::string said;
  std::string does;          // text typed; "back", "clear", "ok", or a unit
  Icon icon = Icon::none;
  const UnitKey* unit = nullptr;
};

bool ends_with_unit(std::string_view text, std::string_view unit) { return !unit.empty() && text.ends_with(unit); }

void trim(std::string& text) {
  while (!text.empty() && text.back() == ' ') text.pop_back();
}

// Takes a whole unit off the end, if one stands there.
bool drop_unit(std::string& text, const std::vector<UnitKey>& units, bool in_place_only) {
  const UnitKey* longest = nullptr;
  for (const UnitKey& unit : units) {
    if (in_place_only && !unit.in_place) continue;
    if (ends_with_unit(text, unit.label) && (longest == nullptr || unit.label.size() > longest->label.size())) longest = &unit;
  }
  if (longest == nullptr) return false;
  text.resize(text.size() - longest->label.size());
  trim(text);
  return true;
}

void put_unit(std::string& text, const UnitKey& unit, const std::vector<UnitKey>& units) {
  trim(text);
  if (unit.in_place) drop_unit(text, units, true);
  if (text.empty() || ends_with_unit(text, unit.label)) return;
  text += ' ';
  text += unit.label;
}

void put_character(std::string& text, const std::string& character) {
  if (text.size() + character.size() > kLongest) return;
  const std::size_t number = text.find_last_of(' ') == std::string::npos ? 0 : text.find_last_of(' ') + 1;
  if (character == "." && text.find('.', number) != std::string::npos) return;
  if (character == "-") {                  // changes the sign, wherever it is pressed
    if (text.starts_with('-')) {
      text.erase(0, 1);
    } else {
      text.insert(0, "-");
    }
    return;
  }
  const bool after_unit = !text.empty() && (std::isalpha(static_cast<unsigned char>(text.back())) != 0);
  if (after_unit) text += " ";
  text += character;
}

void back(std::string& text, const std::vector<UnitKey>& units) {
  trim(text);
  if (text.empty() || drop_unit(text, units, false)) return;
  while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0U) == 0x80U) text.pop_back();
  if (!text.empty()) text.pop_back();
  trim(text);
}

// One key's effect on what is typed. False for "ok", which is the caller's.
bool type(const Key& key, const KeypadOptions& options, Typing& typing) {
  if (key.does == "ok") return false;
  const bool edits = key.does == "back" || key.unit != nullptr || key.does == "-";
  if (typing.untouched) typing.text = edits ? options.first_text : std::string();
  typing.untouched = false;
  typing.wrong.clear();
  if (key.unit != nullptr) {
    put_unit(typing.text, *key.unit, options.unit_keys);
  } else if (key.does == "back") {
    back(typing.text, options.unit_keys);
  } else if (key.does == "clear") {
    typing.text.clear();
  } else {
    put_character(typing.text, key.does);
  }
  return true;
}

std::vector<Key> digit_keys(const KeypadOptions& options) {
  std::vector<Key> keys;
  for (const char* digit : {"1", "2", "3", "4", "5", "6", "7", "8", "9"}) keys.push_back({digit, digit, digit});
  keys.push_back({".", "Decimal point", "."});
  keys.push_back({"0", "0", "0"});
  if (options.minus_sign) {
    keys.push_back({"\u2212", "Minus", "-"});
  } else {
    keys.push_back({"C", "Clear", "clear"});
  }
  return keys;
}

bool draw_key(const Key& key, const Rect& rect) {
  const std::uint32_t id = make_id(key.said);
  const Press state = press(id, rect);
  const bool ok = key.does == "ok";
  record(id, rect, {.role = Role::button, .name = key.said, .state = ok ? kPrimary : 0U});
  const bool digit = key.face.size() == 1 && key.face[0] >= '0' && key.face[0] <= '9';
  const Ink ground = ok ? Ink::accent : key.unit != nullptr ? Ink::tint : digit || key.does == "." ? Ink::card : Ink::pressed;
  fill(rect, colour(!ok && (state.held || state.hovered) ? Ink::pressed : ground), kControlRadius);
  if (ok && state.held) fill(rect, 0x30000000U, kControlRadius);
  if (!ok) outline(rect, colour(Ink::line), kControlRadius);
  const Ink ink = ok ? Ink::on_accent : key.unit != nullptr ? Ink::accent : Ink::ink;
  if (key.icon != Icon::none) draw_icon(key.icon, rect.mid_x(), rect.mid_y(), icon_px(26), colour(ink), 1.9F);
  const bool short_face = digit || text_width(key.face, Type::question, true) <= rect.w - 8;
  line_of_text(key.face, rect.mid_x(), rect.mid_y(), {.type = short_face ? Type::question : Type::text, .semibold = true, .ink = ink},
               Align::centre);
  return state.pressed;
}

// What would follow from what stands there, if it is good.
std::string previewed(const KeypadOptions& options, const std::string& shown) {
  if (!options.preview || !options.read) return {};
  const Read read = options.read(shown);
  return read.value ? options.preview(*read.value) : std::string();
}

// A bare number gets its unit at once, so that "5" is seen to be 5 m before OK.
std::string unit_beside(const KeypadOptions& options, const std::string& shown) {
  const bool bare = !shown.empty() && shown.find_first_not_of("0123456789.,-") == std::string::npos;
  return bare ? options.unit : std::string();
}

// The number being typed, large, in a box; what is allowed or what is wrong under it.
void display(const KeypadOptions& options, const Typing& typing) {
  const std::string shown = typing.untouched && typing.text.empty() ? options.first_text : typing.text;
  const std::string whole = unit_beside(options, shown).empty() ? shown : shown + " " + options.unit;
  const Split split = split_figure(whole);
  const float room = column().width - 32;
  Type size = Type::answer;
  if (Figure(split.number, split.unit, size, Type::title).width() > room) size = Type::question;
  const Figure figure(split.number, split.unit, size, size == Type::answer ? Type::title : Type::text);
  const bool one_line = figure.width() <= room;
  const float words = std::max(one_line ? 0.0F : text_height(whole, size, true, room), line_height(size));
  const Rect box = take(words + 16, Last::block);
  const bool wrong = !typing.wrong.empty();
  fill(box, colour(Ink::card), kControlRadius);
  outline(box, colour(wrong ? Ink::stop : Ink::accent), kControlRadius, 2.0F);
  record(words_id("typed"), box, {.role = Role::status, .name = whole.empty() ? std::string("Nothing typed") : whole});
  const Ink ink = typing.untouched ? Ink::muted : Ink::ink;
  if (one_line) figure.paint(box.x + 16, std::round(box.mid_y() + type_px(size) * kCapital / 2), ink);
  else paint_label(whole, {box.x + 16, box.y, room, box.h}, {.type = size, .semibold = true, .ink = ink}, Align::left);
  if (wrong) {
    const float height = text_height(typing.wrong, Type::text, true, column().width);
    const Rect rect = take(height, Last::words, 8.0F);
    record(words_id("wrong"), rect, {.role = Role::alert, .name = joined(typing.wrong, options.allowed.empty() ? "" : "Allowed: " + options.allowed)});
    paint_text(typing.wrong, rect, {.type = Type::text, .semibold = true, .ink = Ink::stop});
  }
  if (const std::string follows = wrong ? std::string() : previewed(options, shown); !follows.empty()) {
    const Rect rect = take(text_height(follows, Type::text, true, column().width), Last::words, 8.0F);
    record(words_id("follows"), rect, {.role = Role::status, .name = follows});
    paint_text(follows, rect, {.type = Type::text, .semibold = true});
  }
  if (!options.allowed.empty()) {
    const std::string allowed = "Allowed: " + options.allowed;
    const Rect rect = take(text_height(allowed, Type::caption, false, column().width), Last::words, wrong ? 2.0F : 8.0F);
    record(words_id("allowed"), rect, {.role = Role::text, .name = allowed});
    paint_text(allowed, rect, {.type = Type::caption, .ink = Ink::muted});
  }
}

float key_height() {
  const float room = now().frame.height < 620.0F ? kTarget : 58.0F;
  return std::max(room, line_height(Type::question) + 16);
}

// Draws the grid; gives the key pressed.
std::optional<Key> key_grid(const KeypadOptions& options) {
  std::optional<Key> pressed;
  const float height = key_height();
  const Rect grid = take(height * kRows + kKeyGap * (kRows - 1), Last::block, 12.0F);
  const float each = std::floor((grid.w - kKeyGap * (kColumns - 1)) / kColumns);
  const auto cell = [&](int col, int row, int rows) {
    return Rect{grid.x + static_cast<float>(col) * (each + kKeyGap), grid.y + static_cast<float>(row) * (height + kKeyGap), each,
                height * static_cast<float>(rows) + kKeyGap * static_cast<float>(rows - 1)};
  };
  const std::vector<Key> digits = digit_keys(options);
  for (std::size_t i = 0; i < digits.size(); ++i) {
    if (draw_key(digits[i], cell(static_cast<int>(i % 3), static_cast<int>(i / 3), 1))) pressed = digits[i];
  }
  const Key back_key{"", "Delete last", "back", Icon::backspace};
  if (draw_key(back_key, cell(3, 0, 1))) pressed = back_key;
  // Units fill the column from the top; OK takes what is left of it, or a row of its own.
  const int units = static_cast<int>(std::min<std::size_t>(options.unit_keys.size(), 3));
  for (int i = 0; i < units; ++i) {
    const UnitKey& unit = options.unit_keys[static_cast<std::size_t>(i)];
    const std::string face(unit.label);
    const Key key{face, face, "unit", Icon::none, &unit};
    if (draw_key(key, cell(3, 1 + i, 1))) pressed = key;
  }
  const Key ok{"OK", "OK", "ok"};
  const Rect ok_place = units < 3 ? cell(3, 1 + units, 3 - units) : take(height, Last::block, kKeyGap);
  if (draw_key(ok, ok_place)) pressed = ok;
  return pressed;
}

// Under each other; side by side in a low window, so that OK is seen without scrolling.
std::optional<Key> number_and_keys(const KeypadOptions& options, const Typing& typing) {
  const Frame& f = now().frame;
  if (f.height >= 480.0F || column().width < 520.0F) {
    display(options, typing);
    return key_grid(options);
  }
  const Column all = column();
  push_column({.left = all.left, .width = all.width * 0.38F, .y = all.y});
  display(options, typing);
  const float left_end = column().y;
  pop_column();
  push_column({.left = all.left + all.width * 0.38F + 16, .width = all.width * 0.62F - 16, .y = all.y});
  const auto pressed = key_grid(options);
  const float right_end = column().y;
  pop_column();
  column().y = std::max(left_end, right_end);
  column().last = Last::block;
  return pressed;
}

std::optional<Changed> accept(const KeypadOptions& options, Typing& typing) {
  const std::string text = typing.untouched && typing.text.empty() ? options.first_text : typing.text;
  const Read read = options.read ? options.read(text) : Read{std::nullopt, "Nothing can be typed here."};
  if (read.value) return Changed{*read.value, text, false};
  typing.text = text;
  typing.wrong = read.why_not.empty() ? "That is not a number." : read.why_not;
  now().want_frames(2);
  return std::nullopt;
}

}  // namespace

std::optional<Changed> keypad(std::string_view name, const KeypadOptions& options) {
  if (!sheet_is_open(name)) return std::nullopt;
  State::Parts& p = now();
  const bool on_top = p.sheets.back().name == name;
  std::optional<Key> pressed;
  std::optional<Changed> changed;
  if (on_top) {
    for (const std::string& typed : p.typing.keys) {
      const Key key{typed, typed, typed};
      if (!type(key, options, p.typing) && !changed) changed = accept(options, p.typing);
    }
  }
  if (begin_sheet(name, {.title = options.title})) {
    pressed = number_and_keys(options, p.typing);
    end_sheet();
  }
  if (pressed) {
    p.want_frames(2);
    if (!type(*pressed, options, p.typing)) changed = accept(options, p.typing);
  }
  if (changed) close_sheet(name);
  return changed;
}

}  // namespace ui
