#include "ui/bars.h"

#include <algorithm>
#include <cmath>

#include "ui/icon.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {
namespace {

constexpr float kBar = 8.0F;

std::string said_of(const Bar& bar) {
  return bar.said.empty() ? joined(bar.label + ": " + bar.value, bar.sub) : bar.said;
}

// Label and value on one line where they fit, else the value under the label; gives the height.
struct Words {
  float label = 0.0F, sub = 0.0F, value = 0.0F;
  float room = 0.0F;            // of label and sub
  bool stacked = false;
  [[nodiscard]] float height() const { return stacked ? label + sub + value : std::max(label + sub, value); }
};

Words words_of(std::string_view label, std::string_view sub, std::string_view value, float mark) {
  Words words;
  const float value_width = text_width(value, Type::text, true) + mark;
  words.room = column().width - value_width - 14;
  words.stacked = words.room < std::max({longest_word(label, Type::text, false), longest_word(sub, Type::caption, false),
                                         column().width * 0.4F}) ||
                  text_height(label, Type::text, false, words.room) > 2.5F * line_height(Type::text);
  if (words.stacked) words.room = column().width;
  words.label = text_height(label, Type::text, false, words.room);
  words.sub = text_height(sub, Type::caption, false, words.room);
  words.value = text_height(value, Type::text, true, words.stacked ? words.room - mark : value_width);
  return words;
}

void paint_value(const Bar& bar, const Words& words, const Rect& rect, float mark) {
  const Ink ink = tone_ink(bar.tone);
  const float top = words.stacked ? rect.y + words.label + words.sub : rect.y;
  const float mid = top + line_height(Type::text) / 2;
  const float width = text_width(bar.value, Type::text, true);
  const float left = words.stacked ? rect.x + mark : rect.right() - width;
  if (mark > 0) draw_icon(Icon::warning, left - mark / 2 - 2, mid, mark - 6, colour(ink), 2.6F);
  paint_text(bar.value, {left, top, words.stacked ? words.room - mark : width + 1, words.value}, {.type = Type::text, .semibold = true, .ink = ink});
}

void one_bar(const Bar& bar) {
  const float mark = bar.tone == Tone::stop || bar.tone == Tone::caution ? std::round(type_px(Type::caption)) + 8 : 0.0F;
  const Words words = words_of(bar.label, bar.sub, bar.value, mark);
  const Rect rect = take(words.height() + 4 + kBar, Last::words, 12.0F);
  record(words_id("bar"), rect, {.role = Role::text, .name = said_of(bar)});
  const float used = paint_text(bar.label, {rect.x, rect.y, words.room, words.label}, {.type = Type::text});
  paint_text(bar.sub, {rect.x, rect.y + used, words.room, words.sub}, {.type = Type::caption, .ink = Ink::muted});
  paint_value(bar, words, rect, mark);
  const Rect trough{rect.x, rect.bottom() - kBar, rect.w, kBar};
  fill(trough, colour(Ink::line), kBar / 2);
  const float length = trough.w * static_cast<float>(std::clamp(bar.fill, 0.0, 1.0));
  if (length <= 0.0F) return;
  fill({trough.x, trough.y, std::max(length, kBar), kBar}, colour(bar.tone == Tone::plain ? Ink::accent : tone_ink(bar.tone)), kBar / 2);
}

void total_line(const BarsOptions& options) {
  const float width = text_width(options.total_value, Type::text, true);
  const bool stacked = width + 14 + longest_word(options.total, Type::text, true) > column().width;
  const float room = stacked ? column().width : column().width - width - 14;
  const float label = text_height(options.total, Type::text, true, room);
  const Rect rect = take(label + (stacked ? line_height(Type::text) : 0.0F) + 10, Last::words, 10.0F);
  fill({rect.x, rect.y, rect.w, 1}, colour(Ink::line));
  record(words_id("total"), rect, {.role = Role::text, .name = options.total + ": " + options.total_value});
  paint_text(options.total, {rect.x, rect.y + 10, room, label}, {.type = Type::text, .semibold = true});
  paint_text(options.total_value, {rect.x, stacked ? rect.y + 10 + label : rect.y + 10, rect.w, rect.h}, {.type = Type::text, .semibold = true},
             stacked ? Align::left : Align::right);
}

}  // namespace

void bar_list(std::string_view name, std::span<const Bar> bars, const BarsOptions& options) {
  const std::size_t list = record(words_id("bars"), {column().left, column().y, column().width, 1}, {.role = Role::list, .name = std::string(name)});
  const float top = column().y;
  for (const Bar& bar : bars) one_bar(bar);
  if (!options.total_value.empty()) total_line(options);
  now().recorder.at(list).height = column().y - top;
  record_end();
}

}  // namespace ui
