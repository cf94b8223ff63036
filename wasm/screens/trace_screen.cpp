// Trace: find why an outlet is dead, one check at a time.
#include "screens/pages.h"
#include "screens/places.h"
#include "screens/places/trace.h"
#include "screens/trace_pages.h"
#include "ui/ui.h"

namespace screens {
namespace {

using diagnosis::AdviceKind;

std::string subtitle(const app::Trace& trace) {
  const std::size_t answers = trace.answers();
  const std::string so_far = std::to_string(answers) + (answers == 1 ? " answer" : " answers");
  switch (trace.findings().advice.kind) {
    case AdviceKind::check: return "Check " + std::to_string(answers + 1);
    case AdviceKind::remedy: return "Found after " + so_far;
    case AdviceKind::cannot_tell: return "After " + so_far;
    case AdviceKind::none_fits: return so_far + " that do not fit";
    case AdviceKind::finished: return "Put right";
  }
  return {};
}

ui::PageOptions head(const app::AppState& app) {
  if (!app.shown().key.empty())
    return {.title = "Where?", .subtitle = std::string(diagnosis::symptom_by_key(app.shown().key)->words), .title_opens = false,
            .title_hint = {}, .back = true, .more = false};
  if (app.trace_desk().running())
    return {.title = app.trace_desk().trace().complaint_words(), .subtitle = subtitle(app.trace_desk().trace()), .title_opens = false, .title_hint = {}, .back = false, .more = true};
  return {.title = app.editor().has_circuit() ? app.editor().circuit().name : "Trace",
          .subtitle = app.editor().has_circuit() ? "Trace: find the fault" : "No circuit saved: a plain one of three outlets",
          .title_opens = true, .title_hint = "Open the circuits", .back = false, .more = true};
}

void draw_dropped(app::Trace& trace) {
  if (trace.dropped().empty()) return;
  std::string text;
  for (const std::string& each : trace.dropped()) text += (text.empty() ? "" : "\n") + each;
  if (ui::notice({.tone = ui::Tone::caution, .title = "The circuit was edited. These answers no longer count:", .text = text,
                  .action = "Go on without them", .alert = true}))
    trace.dropped_read();
}

void draw_running(app::AppState& app, Memory& memory) {
  app::Trace& trace = app.trace_desk().trace();
  draw_dropped(trace);
  if (!trace.remark().empty())
    ui::notice({.tone = ui::Tone::caution, .title = {}, .text = trace.remark(), .action = {}, .alert = true});
  switch (trace.findings().advice.kind) {
    case AdviceKind::check: return draw_trace_check(app, memory);
    case AdviceKind::none_fits: return draw_trace_none_fits(app, memory);
    case AdviceKind::remedy:
    case AdviceKind::cannot_tell:
    case AdviceKind::finished: return draw_trace_ending(app, memory);
  }
}

}  // namespace

void say_if_refused(app::AppState& app, const std::string& why_not) {
  if (why_not.empty()) app.messages().clear_problem();
  else app.messages().say_problem(why_not);
  ui::scroll_page_to_top();
}

void draw_trace_screen(app::AppState& app, Memory& memory) {
  const bool where = !app.shown().key.empty();
  const bool running = app.trace_desk().running();
  const ui::PageEvents events = ui::begin_page(where ? "trace-where" : running ? "trace" : "trace-start", head(app));
  if (events.title) app.navigator().go(app::Route::at(app::Screen::circuits));
  if (events.back) app.navigator().back();
  if (events.more) app.navigator().go(app::Route::at(app::Screen::trace, app::Sheet::trace_more));
  draw_messages(app);
  if (where) draw_trace_where(app, memory);
  else if (running) draw_running(app, memory);
  else draw_trace_start(app);
  end_page_at(app, app::Screen::trace);
}

}  // namespace screens
