// One check: what to do, in what state, what to mind, and the answers large and low on the page.
#include <algorithm>
#include <cmath>

#include "screens/pages.h"
#include "screens/trace_pages.h"
#include "ui/ui.h"
#include "units/expect.h"
#include "units/format.h"
#include "units/parse.h"

namespace screens {
namespace {

constexpr std::string_view kReading = "trace-reading";

ui::Read read_reading(bool ohms, std::string_view text) {
  if (!ohms) {
    const auto volts = units::parse_volts(text);
    if (!volts.value) return {std::nullopt, volts.why_not};
    return {volts.value->number(), {}};
  }
  const auto number = units::parse_number(text);
  if (!number.value) return {std::nullopt, number.why_not};
  return {*number.value, {}};
}

ui::KeypadOptions keypad_for(const diagnosis::Check& check) {
  const bool ohms = check.kind == diagnosis::CheckKind::ohms;
  ui::KeypadOptions options;
  options.title = ohms ? "Reading in ohms" : "Reading in volts";
  options.allowed = ohms ? "as the meter shows it; open: press Open instead" : "as the meter shows it, with its sign";
  options.read = [ohms](std::string_view text) { return read_reading(ohms, text); };
  options.minus_sign = !ohms;
  return options;
}

}  // namespace

void draw_trace_cautions(std::span<const std::string> cautions) {
  std::string text;
  for (const std::string& caution : cautions) text += (text.empty() ? "" : "\n") + caution;
  if (!text.empty()) ui::notice({.tone = ui::Tone::stop, .title = {}, .text = text, .action = {}});
}

namespace {

// The answers to the question, large.
std::optional<diagnosis::Answer> main_answers(const diagnosis::Check& check) {
  std::vector<ui::ButtonSpec> specs;
  for (const diagnosis::Choice& choice : check.choices) specs.push_back({.label = choice.words});
  const auto pressed = ui::button_grid(specs, true);
  return pressed ? std::optional(diagnosis::word(check.choices[*pressed].key)) : std::nullopt;
}

// A typed reading, and what to say when there is no answer.
std::optional<diagnosis::Answer> other_answers(const diagnosis::Check& check, const UndoLast& undo) {
  std::vector<ui::ButtonSpec> specs;
  if (check.takes_reading) specs.push_back({.label = "Type the reading", .kind = ui::Kind::primary});
  specs.push_back({.label = "Can't reach it"});
  specs.push_back({.label = "Not sure"});
  if (undo.offered) specs.push_back({.label = "Undo last", .icon = ui::Icon::undo});
  const auto pressed = ui::button_grid(specs);
  if (!pressed) return std::nullopt;
  const std::size_t first = check.takes_reading ? 1 : 0;
  if (*pressed == first) return diagnosis::cant_reach();
  if (*pressed == first + 1) return diagnosis::not_sure();
  if (*pressed > first + 1) *undo.pressed = true;
  else ui::open_sheet(kReading);
  return std::nullopt;
}

std::optional<diagnosis::Answer> typed_reading(const diagnosis::Check& check) {
  if (!check.takes_reading) return std::nullopt;
  const auto typed = ui::keypad(kReading, keypad_for(check));
  return typed ? std::optional(diagnosis::reading(typed->value)) : std::nullopt;
}

}  // namespace

std::optional<diagnosis::Answer> trace_answers(const diagnosis::Check& check, const UndoLast& undo) {
  std::optional<diagnosis::Answer> given = main_answers(check);
  if (!given) given = other_answers(check, undo);
  if (const auto typed = typed_reading(check)) given = typed;
  return given;
}

void draw_first(const diagnosis::Check& check) {
  if (check.first.empty()) return;
  ui::begin_card("first", {.name = "First", .tone = ui::Tone::plain});
  ui::card_title("First");
  const bool several = check.first.size() > 1;
  for (std::size_t i = 0; i < check.first.size(); ++i)
    ui::paragraph((several ? std::to_string(i + 1) + ". " : std::string()) + check.first[i]);
  ui::end_card();
}

void draw_trace_warning(const std::string& words) {
  if (!words.empty()) ui::notice({.tone = ui::Tone::stop, .title = {}, .text = words, .action = {}});
}

namespace {

void draw_check_card(const diagnosis::Check& check) {
  draw_first(check);
  ui::begin_card("check", {.name = "Check", .tone = ui::Tone::plain});
  ui::question(check.question);
  ui::announce(check.question);
  if (!check.caution.empty()) ui::pill(check.caution, ui::Tone::stop);
  ui::caption(check.state_words + (check.state_words.empty() ? "" : " · ") + minutes_words(check.minutes));
  ui::end_card();
}

// Where the answers stand: all under the thumb, or the long lists in the page with the rest there.
enum class Answers { in_foot, rest_in_foot, in_page };

Answers place_of_answers(const diagnosis::Check& check) {
  if (ui::foot_stands("all " + check.id)) return Answers::in_foot;
  constexpr float kMostForTheRest = 0.3F;   // what is pinned without the answers must not bury them
  return ui::foot_stands("rest " + check.id, kMostForTheRest) ? Answers::rest_in_foot : Answers::in_page;
}

// The page's part and the foot each have a scope of their own: the page's has to end with the page's part.
void draw_body(app::AppState& app, Memory& memory, const diagnosis::Check& check, Answers place, const UndoLast& undo,
               std::optional<diagnosis::Answer>& given) {
  const ui::Scope scope(check.id);
  ui::begin_columns();
  draw_trace_warning(app.trace_desk().trace().findings().advice.warning);
  draw_check_card(check);
  if (place == Answers::in_foot) ui::foot_reads_here();
  if (place == Answers::in_page) given = trace_answers(check, undo);
  if (place == Answers::rest_in_foot) given = main_answers(check);
  ui::next_column();
  draw_trace_sketch(app, memory, marked_by(app.trace_desk().trace().tracer().the_case(), check));
  if (ui::button("Why this check")) app.navigator().go(app::Route::at(app::Screen::trace, app::Sheet::trace_why));
  draw_trace_suspects(app);
  ui::end_columns();
}

void draw_foot(const diagnosis::Check& check, Answers place, const UndoLast& undo, std::optional<diagnosis::Answer>& given) {
  const bool all = place == Answers::in_foot;
  ui::begin_foot((all ? "all " : "rest ") + check.id);
  {
    const ui::Scope scope(check.id);
    if (all) given = main_answers(check);
    if (const auto other = other_answers(check, undo)) given = other;
  }
  ui::end_foot();
}

}  // namespace

void draw_trace_check(app::AppState& app, Memory& memory) {
  app::Trace& trace = app.trace_desk().trace();
  BRANCHLIGHT_EXPECT(trace.findings().advice.check.has_value());
  const diagnosis::Check check = *trace.findings().advice.check;
  bool undo_pressed = false;
  const UndoLast undo{trace.answers() > 0, &undo_pressed};
  const Answers place = place_of_answers(check);
  std::optional<diagnosis::Answer> given;
  draw_body(app, memory, check, place, undo, given);
  if (place != Answers::in_page) draw_foot(check, place, undo, given);
  // A sheet of its own: never within the foot, whose records move in the reading order.
  if (place != Answers::in_page)
    if (const auto typed = typed_reading(check)) given = typed;
  if (given) say_if_refused(app, trace.observe(check.id, *given));
  else if (undo_pressed) trace.undo();
}

}  // namespace screens
