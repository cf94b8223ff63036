// Sheets over Trace: why this check, the answers so far, one to take again, a kept record, more.
#include "screens/places/trace.h"
#include "screens/trace_pages.h"
#include "ui/ui.h"
#include "units/format.h"

namespace screens {
namespace {

// True: nothing runs, and the sheet says so.
bool nothing_runs(app::AppState& app) {
  if (app.trace_desk().running()) return false;
  ui::paragraph("No trace is running on this circuit.");
  return true;
}

}  // namespace

void draw_trace_why_sheet(app::AppState& app, Memory&) {
  if (nothing_runs(app)) return;
  const diagnosis::Advice& advice = app.trace_desk().trace().findings().advice;
  if (!advice.check) return ui::paragraph("There is no check to do now.");
  ui::begin_card("why", {.name = "Why", .tone = ui::Tone::plain});
  ui::paragraph(advice.check->question);
  ui::caption(advice.kind == diagnosis::AdviceKind::check ? advice.words : "It tells the most for the minutes it takes.");
  ui::end_card();
  for (const diagnosis::Outlook& outlook : advice.outlooks) {
    const ui::Scope scope(diagnosis::answer_text(outlook.key));
    std::string words(diagnosis::answer_text(outlook.key));
    for (const diagnosis::Choice& choice : advice.check->choices)
      if (choice.key == outlook.key) words = choice.words;
    ui::begin_card("outlook", {.name = words, .tone = ui::Tone::plain});
    ui::card_title(words, outlook.probability < 0.01 ? "hardly" : units::number_text(outlook.probability * 100.0, outlook.probability < 0.095 ? 1 : 2) + " %");
    ui::caption(outlook.words);
    ui::end_card();
  }
}

void draw_trace_answers_sheet(app::AppState& app, Memory&) {
  if (nothing_runs(app)) return;
  const app::Trace& trace = app.trace_desk().trace();
  if (trace.answers() == 0) return ui::paragraph("None yet.");
  ui::begin_card("answers", {.name = "Answers", .tone = ui::Tone::plain});
  const std::vector<app::Told>& all = trace.findings().told;
  for (std::size_t i = 0; i < trace.answers() && i < all.size(); ++i) {
    const ui::Scope scope(static_cast<std::uint32_t>(i));
    const app::Told& told = all[i];
    const bool check = trace.tracer().record().entries[i].kind == diagnosis::EntryKind::check;
    if (ui::list_row(told.answer, {.sub = told.question, .chevron = check, .disabled = !check}))
      app.navigator().go(app::Route::trace_numbered(app::Sheet::trace_again, static_cast<std::uint32_t>(i + 1)));
  }
  ui::end_card();
}

void draw_trace_again_sheet(app::AppState& app, Memory&) {
  if (nothing_runs(app)) return;
  app::Trace& trace = app.trace_desk().trace();
  const std::size_t entry = app.shown().stored - 1;
  const auto& entries = trace.tracer().record().entries;
  const auto check = entry < entries.size() ? trace.tracer().find_check(entries[entry].id) : std::nullopt;
  if (!check || entry >= trace.findings().told.size()) return ui::paragraph("There is no such answer to take again.");
  draw_first(*check);
  ui::begin_card("again", {.name = "Check", .tone = ui::Tone::plain});
  ui::question(check->question);
  ui::caption(check->state_words);
  ui::paragraph("You said: " + trace.findings().told[entry].answer);
  ui::end_card();
  if (!check->caution.empty()) draw_trace_cautions(std::span(&check->caution, 1));
  const auto given = trace_answers(*check);
  if (!given) return;
  const std::string why_not = trace.retake(entry, *given);
  if (!why_not.empty()) return app.messages().say_problem(why_not);
  app.navigator().go(app::Route::at(app::Screen::trace));
}

void draw_trace_kept_sheet(app::AppState& app, Memory&) {
  const app::KeptTrace* kept = app.trace_desk().shelf().find_kept(app.shown().stored);
  if (kept == nullptr) return ui::paragraph("There is no such record with this circuit.");
  ui::begin_card("record", {.name = "Trace record", .tone = ui::Tone::plain});
  ui::question(kept->complaint);
  ui::caption(kept->date + " · " + kept->circuit);
  ui::paragraph(kept->outcome);
  ui::end_card();
  ui::begin_card("told", {.name = "Answers", .tone = ui::Tone::plain});
  for (const app::Told& told : kept->told) {
    ui::paragraph(told.answer);
    ui::caption(told.question);
  }
  ui::end_card();
  if (ui::button("Save as a text file", {.icon = ui::Icon::share})) return app.trace_desk().export_kept(app.shown().stored);
  constexpr std::string_view kForget = "forget-trace";
  if (ui::button("Delete this record")) ui::open_sheet(kForget);
  if (!ui::confirm(kForget, {.title = "Delete this record?", .text = "The circuit stays as it is. It can be put back right after.", .yes = "Delete", .no = "Keep it", .danger = true}))
    return;
  app.trace_desk().delete_kept(app.shown().stored);
}

void draw_trace_more_sheet(app::AppState& app, Memory&) {
  if (app.trace_desk().running()) {
    if (ui::button("Answers so far")) app.navigator().go(app::Route::at(app::Screen::trace, app::Sheet::trace_answers));
    if (ui::button("End this trace", {.icon = ui::Icon::close})) {
      app.trace_desk().stop();
      return app.navigator().go(app::Route::at(app::Screen::trace));
    }
    ui::caption("An ended trace is kept with the circuit, with its date and answers.");
  }
  if (app.editor().has_circuit() && ui::button("Wire and fuse there")) app.navigator().go(app::Route::at(app::Screen::trace, app::Sheet::trace_fitted));
  if (ui::button("Circuits", {.icon = ui::Icon::book})) app.navigator().go(app::Route::at(app::Screen::circuits));
  if (ui::button("Preferences")) app.navigator().go(app::Route::at(app::Screen::preferences));
}

}  // namespace screens
