// One check: what to do, in what state, what to mind, and the answers large and low on the page.
#include <algorithm>
#include <cmath>

#include "screens/pages.h"
#include "screens/trace_pages.h"
#include "ui/ui.h"
#include "units/format.h"
#include "units/parse.h"

namespace screens {
namespace {

constexpr std::string_view kReading = "trace-reading";
constexpr std::size_t kSuspectsShown = 4;
// From here on the sketch takes more than half of a phone: it goes under the answers.
constexpr std::size_t kTallSketch = 7;

std::string minutes_words(double minutes) {
  if (minutes < 0.75) return "half a minute";
  const long whole = std::lround(minutes);
  return "about " + std::to_string(whole) + (whole == 1 ? " minute" : " minutes");
}

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

std::optional<diagnosis::Answer> trace_answers(const diagnosis::Check& check) {
  std::optional<diagnosis::Answer> given;
  std::vector<ui::ButtonSpec> specs;
  for (const diagnosis::Choice& choice : check.choices) specs.push_back({.label = choice.words});
  if (check.takes_reading) specs.push_back({.label = "Type the reading", .kind = ui::Kind::primary});
  // Two side by side, as large as a thumb wants them.
  for (std::size_t i = 0; i < specs.size(); i += 2) {
    const ui::Scope scope(static_cast<std::uint32_t>(i));
    const auto pressed = ui::buttons(std::span(specs).subspan(i, std::min<std::size_t>(2, specs.size() - i)));
    if (!pressed) continue;
    if (i + *pressed < check.choices.size()) given = diagnosis::word(check.choices[i + *pressed].key);
    else ui::open_sheet(kReading);
  }
  if (check.takes_reading)
    if (const auto typed = ui::keypad(kReading, keypad_for(check))) given = diagnosis::reading(typed->value);
  const ui::ButtonSpec rest[] = {{.label = "Can't reach it", .kind = ui::Kind::quiet}, {.label = "Not sure", .kind = ui::Kind::quiet}};
  if (const auto pressed = ui::buttons(rest)) given = *pressed == 0 ? diagnosis::cant_reach() : diagnosis::not_sure();
  return given;
}

void draw_trace_suspects(app::AppState& app) {
  const auto& suspects = app.trace().suspects();
  if (suspects.empty()) return;
  ui::begin_card("suspects", {.name = "Suspects", .tone = ui::Tone::plain});
  ui::card_title("Suspects");
  std::size_t shown = 0;
  for (const diagnosis::Suspect& suspect : suspects) {
    if (shown++ == kSuspectsShown) break;
    const std::string share = units::number_text(suspect.probability * 100.0, suspect.probability < 0.095 ? 1 : 2) + " %";
    ui::fact_row(suspect.words, suspect.probability < 0.01 ? "< 1 %" : share,
                 suspect.with ? "with: " + diagnosis::fault_words(app.trace().tracer().the_case(), *suspect.with) : "");
  }
  ui::end_card();
}

void draw_trace_check(app::AppState& app, Memory& memory) {
  app::Trace& trace = app.trace();
  const diagnosis::Check check = *trace.advice().check;
  const bool tall = trace.frame().circuit.outlets.size() >= kTallSketch;
  ui::begin_columns();
  if (!tall) draw_trace_sketch(app, memory, check.sites);
  ui::begin_card("check", {.name = "Check", .tone = ui::Tone::plain});
  ui::question(check.question);
  ui::announce(check.question);
  ui::caption(check.state_words + (check.state_words.empty() ? "" : " · ") + minutes_words(check.minutes));
  ui::end_card();
  if (!check.caution.empty()) draw_trace_cautions(std::span(&check.caution, 1));
  std::optional<diagnosis::Answer> given;
  {
    const ui::Scope scope(check.id);
    given = trace_answers(check);
    if (trace.answers() > 0 && ui::button("Undo last", {.icon = ui::Icon::undo})) {
      trace.undo();
      return ui::next_column(), ui::end_columns();
    }
  }
  ui::next_column();
  if (tall) draw_trace_sketch(app, memory, check.sites);
  draw_trace_suspects(app);
  if (ui::button("Why this check")) app.go(app::Route::at(app::Screen::trace, app::Sheet::trace_why));
  ui::end_columns();
  if (given) say_if_refused(app, trace.observe(check.id, *given));
}

}  // namespace screens
