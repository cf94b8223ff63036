// What came of the checks: a remedy with its steps, several to try in order, answers that do not
// go together, or the end.
#include <array>

#include "screens/pages.h"
#include "screens/trace_pages.h"
#include "ui/ui.h"
#include "units/format.h"

namespace screens {
namespace {

using diagnosis::RetestResult;

std::string sure_words(double probability) {
  const std::string share = units::number_text(probability >= 0.995 ? 99.0 : probability * 100.0, 2) + " %";
  if (probability >= 0.995) return "Almost certain · over 99 %";
  if (probability >= 0.95) return "Almost certain · " + share;
  if (probability >= 0.7) return "Likely · " + share;
  return probability >= 0.4 ? "Perhaps · " + share : "A guess · " + share;
}

void draw_evidence(const app::Trace& trace) {
  const auto& evidence = trace.findings().evidence;
  if (evidence.empty()) return;
  if (!ui::disclosure("What speaks for it, and against")) return;
  ui::begin_card("evidence", {.name = "Evidence", .tone = ui::Tone::plain});
  for (const diagnosis::Evidence& each : evidence) ui::caption((each.speaks_for ? "For: " : "Against: ") + each.words);
  ui::end_card();
}

void draw_steps(app::Trace& trace, const diagnosis::Remedy& remedy) {
  ui::begin_card("steps", {.name = "Put it right", .tone = ui::Tone::plain});
  ui::card_title("Put it right");
  for (std::size_t i = 0; i < remedy.steps.size(); ++i) {
    const ui::Scope scope(static_cast<std::uint32_t>(i));
    const bool on = trace.ticked(i);
    if (ui::checkbox_row(remedy.steps[i].words, on)) trace.tick(i, !on);
  }
  ui::end_card();
}

// Several that no check in hand can tell apart: the order to try, with what each takes.
void draw_order(const diagnosis::Case& the_case, std::span<const diagnosis::Remedy> to_try) {
  if (to_try.size() < 2) return;
  ui::begin_card("order", {.name = "The order to try", .tone = ui::Tone::plain});
  ui::card_title("The order to try", "re-test after each");
  for (std::size_t i = 0; i < to_try.size(); ++i) {
    const std::string place = place_words(the_case, to_try[i].fault);
    ui::fact_row(std::to_string(i + 1) + ". " + to_try[i].title, i == 0 ? "now" : "",
                 place + (place.empty() ? "" : " · ") + minutes_words(to_try[i].minutes));
  }
  ui::end_card();
}

struct Outcome {
  std::optional<RetestResult> result;
  bool undo = false;
};

// How the re-test came out: under the thumb, as the answers to a check.
Outcome draw_outcomes(const app::Trace& trace) {
  Outcome outcome;
  const ui::ButtonSpec main[] = {{.label = "It works now", .kind = ui::Kind::primary}, {.label = "Still the same"}};
  if (const auto pressed = ui::button_grid(main, true)) outcome.result = *pressed == 0 ? RetestResult::works : RetestResult::same;
  std::vector<ui::ButtonSpec> rest{{.label = "The fuse blew"}, {.label = "Can't do it here"}};
  if (trace.answers() > 0) rest.push_back({.label = "Undo last", .icon = ui::Icon::undo});
  if (const auto pressed = ui::button_grid(rest)) {
    if (*pressed < 2) outcome.result = *pressed == 0 ? RetestResult::blew : RetestResult::cant;
    else outcome.undo = true;
  }
  return outcome;
}

void draw_remedy(app::AppState& app, Memory& memory) {
  app::Trace& trace = app.trace_desk().trace();
  const diagnosis::Advice& advice = trace.findings().advice;
  const diagnosis::Remedy remedy = *advice.remedy;
  const bool alone = advice.kind == diagnosis::AdviceKind::remedy;
  ui::begin_columns();
  ui::begin_card("found", {.name = alone ? "Found" : "To try first", .tone = ui::Tone::plain});
  ui::begin_flow();
  ui::pill(sure_words(advice.probability), alone ? ui::Tone::good : ui::Tone::caution);
  ui::end_flow();
  ui::question(remedy.title);
  ui::announce(remedy.title);
  if (!alone) ui::caption(advice.words);   // alone, the pill has said as much
  ui::end_card();
  draw_trace_sketch(app, memory, marked_by(trace.tracer().the_case(), remedy.fault));
  draw_order(trace.tracer().the_case(), advice.to_try);
  draw_trace_warning(advice.warning);
  draw_trace_cautions(remedy.cautions);
  draw_steps(trace, remedy);
  ui::next_column();
  ui::begin_card("retest", {.name = "Re-test", .tone = ui::Tone::plain});
  ui::card_title("Then test it");
  ui::paragraph(remedy.retest.words);
  ui::end_card();
  Outcome outcome;
  const std::string foot = "re-test " + remedy.id;
  const bool in_foot = ui::foot_stands(foot);
  if (in_foot) ui::foot_reads_here();
  else outcome = draw_outcomes(trace);
  draw_evidence(trace);
  draw_trace_suspects(app);
  ui::end_columns();
  if (in_foot) {
    ui::begin_foot(foot);
    outcome = draw_outcomes(trace);
    ui::end_foot();
  }
  if (outcome.result) say_if_refused(app, trace.after_remedy(remedy.id, *outcome.result));
  else if (outcome.undo) trace.undo();
}

void draw_finished(app::AppState& app) {
  app::Trace& trace = app.trace_desk().trace();
  ui::begin_card("done", {.name = "Put right", .tone = ui::Tone::good});
  ui::question("It works again.");
  ui::announce("It works again.");
  const auto& kept = app.trace_desk().shelf().kept();
  if (!kept.empty()) ui::paragraph(kept.front().outcome);
  ui::caption("Kept with the circuit: " + std::to_string(trace.answers()) + " answers, dated.");
  ui::end_card();
  const bool in_foot = ui::foot_stands("done");
  if (in_foot) ui::begin_foot("done");
  const ui::ButtonSpec specs[] = {{.label = "Undo last", .icon = ui::Icon::undo}, {.label = "Done", .kind = ui::Kind::primary}};
  const auto pressed = ui::button_grid(specs, true);
  if (in_foot) ui::end_foot();
  if (!pressed) return;
  if (*pressed == 1) app.trace_desk().stop();
  else trace.undo();
}

}  // namespace

void draw_trace_ending(app::AppState& app, Memory& memory) {
  const diagnosis::Advice& advice = app.trace_desk().trace().findings().advice;
  if (advice.kind == diagnosis::AdviceKind::finished || !advice.remedy) draw_finished(app);
  else draw_remedy(app, memory);
}

void draw_trace_none_fits(app::AppState& app, Memory& memory) {
  app::Trace& trace = app.trace_desk().trace();
  const diagnosis::Advice& advice = trace.findings().advice;
  ui::begin_card("none", {.name = "These answers do not fit", .tone = ui::Tone::caution});
  ui::question(advice.words);
  ui::announce(advice.words);
  if (advice.odd_entry) {
    const app::Told& told = trace.findings().told[*advice.odd_entry];
    ui::paragraph("The odd one: " + told.question);
    ui::paragraph("You said: " + told.answer);
  }
  ui::end_card();
  if (advice.odd_entry && ui::button("Take it again", {.kind = ui::Kind::primary}))
    app.navigator().go(app::Route::trace_numbered(app::Sheet::trace_again, static_cast<std::uint32_t>(*advice.odd_entry + 1)));
  if (ui::button("All answers so far")) app.navigator().go(app::Route::at(app::Screen::trace, app::Sheet::trace_answers));
  if (advice.check) {
    ui::heading("Or go on with the next check");
    return draw_trace_check(app, memory);
  }
  if (ui::button("Undo last", {.icon = ui::Icon::undo})) {
    trace.undo();
    return;
  }
  draw_trace_cautions(std::array<std::string, 1>{"Do not run a circuit that you do not understand: leave the fuse out and have "
                                                 "somebody look at it who does this for a living."});
  draw_trace_suspects(app);
}

}  // namespace screens
