// Which wire and fuse are there, where they are not what Size worked out: read off the wire and
// the fuse. What is not known is left open, and then no step names a fuse rating.
#include "screens/pages.h"
#include "screens/words.h"
#include "tables/fuse.h"
#include "ui/ui.h"

namespace screens {
namespace {

constexpr std::string_view kUnknown = "I don't know";

bool draw_wire(const circuit::Circuit& circuit, app::FittedTold& told) {
  bool changed = false;
  ui::begin_card("wire", {.name = "Wire", .tone = ui::Tone::plain});
  ui::card_title("Wire", std::string(tables::gauge_system_suffix(circuit.wiring.gauge)) + ", as printed on it");
  ui::begin_flow();
  for (const tables::Conductor& size : tables::conductors(circuit.wiring.gauge)) {
    if (!ui::chip(size.size, {.on = size.id == told.size, .said = "Wire " + size_text(size)})) continue;
    told.size = std::string(size.id);
    changed = true;
  }
  if (ui::chip(kUnknown, {.on = told.size.empty(), .said = "Wire: I don't know"})) {
    told.size.clear();
    changed = true;
  }
  ui::end_flow();
  ui::end_card();
  return changed;
}

bool draw_fuse(const circuit::Circuit& circuit, app::FittedTold& told) {
  bool changed = false;
  ui::begin_card("fuse", {.name = "Fuse", .tone = ui::Tone::plain});
  ui::card_title("Fuse", "amps, as printed on it");
  const ui::Scope scope("fuse");
  ui::begin_flow();
  for (const double rating : tables::fuse_family(circuit.wiring.fuse_family).ratings_a) {
    const std::string text = trimmed(rating);
    if (!ui::chip(text, {.on = rating == told.fuse_a, .said = "Fuse " + text + " A"})) continue;
    told.fuse_a = rating;
    changed = true;
  }
  if (ui::chip(kUnknown, {.on = told.fuse_a <= 0.0, .said = "Fuse: I don't know"})) {
    told.fuse_a = 0.0;
    changed = true;
  }
  ui::end_flow();
  ui::end_card();
  return changed;
}

// What follows: a rating is named in the steps, or why none is.
void draw_meaning(const diagnosis::Case& frame, const app::FittedTold& told) {
  if (told.size.empty() || told.fuse_a <= 0.0) {
    ui::notice({.tone = ui::Tone::caution, .title = "No step will name a fuse rating",
                .text = "It takes both the wire and the fuse to say that one protects the other. Go by the label on the block.",
                .action = {}});
  } else if (!frame.fuse_told) {
    ui::notice({.tone = ui::Tone::stop, .title = "This fuse is too large for this wire",
                .text = "No step will name it. Do not put one in again: Size says which fuse this wire takes.", .action = {}, .alert = true});
  } else {
    ui::notice({.tone = ui::Tone::good, .title = "This fuse protects this wire", .text = "The steps name its rating.", .action = {}});
  }
}

}  // namespace

void draw_trace_fitted_sheet(app::AppState& app) {
  app::Trace& trace = app.trace();
  const diagnosis::Case frame = trace.frame();
  const bool sized = app.has_circuit() && app.answer().choice() != nullptr;
  std::optional<app::FittedTold> told = trace.fitted_told_now();
  if (sized) {
    const std::string as_sized = "As Size says: " + size_text(*app.answer().choice()->size) + ", " +
                                 (app.answer().choice()->fuse ? units::amperes_text(*app.answer().choice()->fuse) : "no fuse fits");
    const std::string names[] = {as_sized, "Something else, or not known"};
    if (const auto chosen = ui::choice("What is fitted?", names, told ? 1 : 0, {.sub = {}, .hide_label = false, .as_list = true}))
      return trace.tell_fitted(*chosen == 0 ? std::nullopt : std::optional(app::FittedTold{}));
    if (!told) return ui::caption("Read it off the wire and the fuse if somebody else may have fitted them.");
  }
  app::FittedTold now = told.value_or(app::FittedTold{});
  bool changed = draw_wire(frame.circuit, now);
  if (draw_fuse(frame.circuit, now)) changed = true;
  draw_meaning(frame, now);
  if (changed) trace.tell_fitted(now);
}

}  // namespace screens
