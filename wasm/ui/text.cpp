#include "ui/text.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "ui/figure.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {
namespace {

void words(std::string_view text, const Style& style, const Said& said, float space = -1.0F) {
  if (text.empty()) return;
  const float height = text_height(text, style.type, style.semibold, column().width);
  const Rect rect = take(height, Last::words, space);
  record(words_id("words"), rect, said);
  paint_text(text, rect, style);
}

// Height of one answer set in `width`: its unit goes under the number when both do not fit.
struct AnswerSize {
  float caption = 0, number = 0, unit = 0;
  [[nodiscard]] float all() const { return caption + number + unit; }
};

// How the figure of an answer is set in `width`: on one line, "28 ft 3 in" in smaller type if it
// must be; else its unit goes under the number.
struct Setting {
  Type big = Type::answer;
  bool one_line = true;
};
Setting setting_of(const Answer& a, float width, Type unit) {
  for (const Type big : {Type::answer, Type::question}) {
    const Figure figure(a.number, a.unit, big, unit);
    if (figure.width() <= width) return {big, true};
    if (!figure.goes_on()) break;
  }
  return {Type::answer, false};
}

AnswerSize answer_size(const Answer& a, float width, Type unit) {
  AnswerSize size;
  size.caption = text_height(a.caption, Type::caption, false, width);
  const Setting setting = setting_of(a, width, unit);
  if (setting.one_line) {
    size.number = line_height(setting.big);
  } else {
    size.number = text_height(a.number, Type::answer, true, width);
    size.unit = text_height(a.unit, unit, false, width);
  }
  return size;
}

void paint_answer(const Answer& a, const Rect& rect, Align align, Type unit) {
  const AnswerSize size = answer_size(a, rect.w, unit);
  paint_text(a.caption, {rect.x, rect.y, rect.w, size.caption}, {.type = Type::caption, .ink = Ink::muted}, align);
  const Ink ink = tone_ink(a.tone);
  const float top = rect.y + size.caption;
  const Setting setting = setting_of(a, rect.w, unit);
  if (setting.one_line) {
    const Figure figure(a.number, a.unit, setting.big, unit);
    const float left = align == Align::right ? rect.right() - figure.width() : rect.x;
    figure.paint(left, std::round(top + line_height(setting.big) / 2 + type_px(setting.big) * kCapital / 2), ink);
    return;
  }
  paint_text(a.number, {rect.x, top, rect.w, size.number}, {.type = Type::answer, .semibold = true, .ink = ink}, align);
  paint_text(a.unit, {rect.x, top + size.number, rect.w, size.unit}, {.type = unit, .ink = Ink::muted}, align);
}

std::string said_answer(const Answer& a) {
  std::string said = a.number;
  if (!a.unit.empty()) said += " " + a.unit;
  return a.caption.empty() ? said : a.caption + ": " + said;
}

void one_answer(const Answer& a, const Rect& rect, Align align, Type unit, bool announce) {
  record(words_id("answer"), rect, {.role = announce ? Role::status : Role::text, .name = said_answer(a)});
  paint_answer(a, rect, align, unit);
}

}  // namespace

void heading(std::string_view text, int level) {
  const Type type = level <= 2 ? Type::title : Type::text;
  words(text, {.type = type, .semibold = true}, {.role = Role::heading, .name = std::string(text), .level = static_cast<std::uint8_t>(level)},
        column().card ? -1.0F : 20.0F);
}

void question(std::string_view text) {
  words(text, {.type = Type::question, .semibold = true}, {.role = Role::heading, .name = std::string(text), .level = 2});
}

void paragraph(std::string_view text, Ink ink) {
  words(text, {.type = Type::text, .ink = ink}, {.role = Role::text, .name = std::string(text)});
}

void caption(std::string_view text, Ink ink) {
  words(text, {.type = Type::caption, .ink = ink}, {.role = Role::text, .name = std::string(text)});
}

void card_title(std::string_view text, std::string_view remark) {
  const float remark_width = text_width(remark, Type::caption, false);
  const bool beside = remark.empty() || text_width(text, Type::text, true) + 12 + remark_width <= column().width;
  if (!beside) {
    words(text, {.type = Type::text, .semibold = true}, {.role = Role::heading, .name = std::string(text), .level = 2});
    caption(remark);
    return;
  }
  const float height = text_height(text, Type::text, true, column().width);
  const Rect rect = take(height, Last::words);
  record(words_id("title"), rect, {.role = Role::heading, .name = std::string(text), .level = 2});
  paint_text(text, rect, {.type = Type::text, .semibold = true});
  if (remark.empty()) return;
  record(words_id("remark"), rect, {.role = Role::text, .name = std::string(remark)});
  line_of_text(remark, rect.right(), rect.mid_y(), {.type = Type::caption, .ink = Ink::muted}, Align::right);
}

void answers(std::span<const Answer> answers, bool announce) {
  constexpr float kBetween = 20.0F;
  // Two side by side; with smaller units where that makes room.
  for (const Type unit : {Type::title, Type::text}) {
    if (answers.size() != 2) break;
    const auto natural = [unit](const Answer& a) {
      return std::max(Figure(a.number, a.unit, Type::answer, unit).width(), text_width(a.caption, Type::caption, false));
    };
    const float right_width = natural(answers[1]) + 1;
    const float left_width = column().width - right_width - kBetween;
    if (natural(answers[0]) > left_width) continue;
    const float height = std::max(answer_size(answers[0], left_width, unit).all(), answer_size(answers[1], right_width, unit).all());
    const Rect rect = take(height, Last::words);
    one_answer(answers[0], {rect.x, rect.y, left_width, height}, Align::left, unit, announce);
    one_answer(answers[1], {rect.right() - right_width, rect.y, right_width, height}, Align::right, unit, announce);
    return;
  }
  for (const Answer& a : answers) {
    const Rect rect = take(answer_size(a, column().width, Type::title).all(), Last::words);
    one_answer(a, rect, Align::left, Type::title, announce);
  }
}

void answer(const Answer& answer, bool announce) { answers(std::span<const Answer>(&answer, 1), announce); }

void figure_row(std::string_view label, std::string_view sub, std::string_view number, std::string_view unit) {
  const Figure figure(number, unit, Type::question, Type::text);
  const float figure_width = figure.width();
  float room = column().width - figure_width - 16;
  const bool stacked = room < std::max(longest_word(label, Type::text, true), longest_word(sub, Type::caption, false)) || room < 96;
  if (stacked) room = column().width;
  const float label_height = text_height(label, Type::text, true, room);
  const float words_height = label_height + text_height(sub, Type::caption, false, room);
  const float figure_height = line_height(Type::question);
  const float height = stacked ? words_height + figure_height + 4 : std::max(words_height, figure_height);
  const Rect rect = take(height, Last::words);
  const std::string said_figure = std::string(number) + (unit.empty() ? "" : " ") + std::string(unit);
  record(words_id("figure"), rect, {.role = Role::text, .name = joined(label, sub) + ": " + said_figure});
  const float top = stacked ? rect.y : std::round(rect.mid_y() - words_height / 2);
  paint_text(label, {rect.x, top, room, label_height}, {.type = Type::text, .semibold = true});
  paint_text(sub, {rect.x, top + label_height, room, height}, {.type = Type::caption, .ink = Ink::muted});
  const float mid = stacked ? rect.bottom() - figure_height / 2 : rect.mid_y();
  figure.paint(stacked ? rect.x : rect.right() - figure_width, std::round(mid + type_px(Type::question) * kCapital / 2), Ink::ink);
}

void fact_row(std::string_view label, std::string_view value, std::string_view sub) {
  const float value_width = text_width(value, Type::text, true);
  float room = column().width - value_width - 16;
  const bool stacked = room < std::max({longest_word(label, Type::text, false), longest_word(sub, Type::caption, false), 72.0F});
  if (stacked) room = column().width;
  const float label_height = text_height(label, Type::text, false, room);
  const float words_height = label_height + text_height(sub, Type::caption, false, room);
  const float value_height = text_height(value, Type::text, true, stacked ? room : value_width + 1);
  const float height = (stacked ? words_height + value_height + 2 : std::max(words_height, value_height)) + 20;
  const Rect rect = take_row(std::max(height, 44.0F));
  record(words_id("fact"), rect, {.role = Role::text, .name = joined(label, sub) + ": " + std::string(value)});
  const float top = std::round(stacked ? rect.y + 10 : rect.mid_y() - words_height / 2);
  paint_text(label, {rect.x, top, room, label_height}, {.type = Type::text});
  paint_text(sub, {rect.x, top + label_height, room, height}, {.type = Type::caption, .ink = Ink::muted});
  if (stacked) {
    paint_text(value, {rect.x, top + words_height + 2, room, value_height}, {.type = Type::text, .semibold = true});
  } else {
    paint_text(value, {rect.right() - value_width - 1, std::round(rect.mid_y() - value_height / 2), value_width + 1, value_height},
               {.type = Type::text, .semibold = true}, Align::right);
  }
}

void announce(std::string_view text) {
  record(words_id("announce"), {column().left, column().y, 1, 1}, {.role = Role::status, .name = std::string(text)});
}

}  // namespace ui
