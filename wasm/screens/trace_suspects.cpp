// Who is suspected, how much, and what speaks for and against each.
#include "screens/places/trace.h"
#include "screens/trace_pages.h"
#include "ui/ui.h"

namespace screens {
namespace {

constexpr std::size_t kSuspectsShown = 5;

std::string place_line(const diagnosis::Case& the_case, const diagnosis::Suspect& suspect) {
  std::string line = place_words(the_case, suspect.fault);
  if (suspect.with) line += (line.empty() ? "With: " : " · with: ") + diagnosis::fault_words(the_case, *suspect.with);
  return line;
}

void draw_evidence(std::span<const diagnosis::Evidence> evidence, bool for_it, std::string_view title) {
  bool any = false;
  for (const diagnosis::Evidence& each : evidence) any = any || each.speaks_for == for_it;
  if (!any) return;
  ui::begin_card(title, {.name = std::string(title), .tone = ui::Tone::plain});
  ui::card_title(title);
  for (const diagnosis::Evidence& each : evidence)
    if (each.speaks_for == for_it) ui::paragraph(each.words);
  ui::end_card();
}

}  // namespace

void draw_trace_suspects(app::AppState& app) {
  const app::Trace& trace = app.trace_desk().trace();
  const auto& suspects = trace.findings().suspects;
  if (suspects.empty()) return;
  const diagnosis::Case& the_case = trace.tracer().the_case();
  ui::begin_card("suspects", {.name = "Suspects", .tone = ui::Tone::plain});
  ui::card_title("Suspects", "likeliest first");
  for (std::size_t i = 0; i < std::min(suspects.size(), kSuspectsShown); ++i) {
    const ui::Scope scope(static_cast<std::uint32_t>(i));
    const diagnosis::Suspect& suspect = suspects[i];
    if (ui::share_row(suspect.words, {.value = share_words(suspect.probability), .share = suspect.probability,
                                      .sub = place_line(the_case, suspect)}))
      app.navigator().go(app::Route::trace_numbered(app::Sheet::trace_suspect, static_cast<std::uint32_t>(i + 1)));
  }
  double rest = 1.0;
  for (std::size_t i = 0; i < std::min(suspects.size(), kSuspectsShown); ++i) rest -= suspects[i].probability;
  if (rest >= 0.005) ui::caption("All others together: " + share_words(rest));
  ui::end_card();
}

void draw_trace_suspect_sheet(app::AppState& app, Memory&) {
  const std::size_t rank = app.shown().stored - 1;
  if (!app.trace_desk().running() || rank >= app.trace_desk().trace().findings().suspects.size())
    return ui::paragraph("There is no such suspect now.");
  const app::Trace& trace = app.trace_desk().trace();
  const diagnosis::Suspect& suspect = trace.findings().suspects[rank];
  const diagnosis::FaultRow& row = diagnosis::fault_row(suspect.fault.kind);
  ui::begin_card("suspect", {.name = "Suspect", .tone = ui::Tone::plain});
  ui::question(suspect.words);
  ui::fact_row("How likely now", share_words(suspect.probability));
  const std::string place = place_line(trace.tracer().the_case(), suspect);
  if (!place.empty()) ui::fact_row("Where", place);
  ui::fact_row("To put it right", minutes_words(row.repair_minutes));
  ui::caption("Suspected from the start because: " + std::string(row.reasoning) + ".");
  ui::end_card();
  const auto& evidence = trace.findings().of_suspect;
  draw_evidence(evidence, true, "Speaks for it");
  draw_evidence(evidence, false, "Speaks against it");
  if (evidence.empty())
    ui::paragraph(trace.answers() == 0 ? "Nothing is answered yet: this is our estimate of how often it happens."
                                       : "No answer so far tells it from the others: it stands where it stood.",
                  ui::Ink::muted);
}

}  // namespace screens
