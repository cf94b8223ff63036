// Which wire and fuse are there: read off the wire and the fuse, never taken from what Size worked
// out. What is not known is left open, and then no step names a fuse rating.
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
  } else if (!diagnosis::names_fuse(frame)) {
    ui::notice({.tone = ui::Tone::stop, .title = "This fuse is too large for this wire",
                .text = "No step will name it. Do not put one in again: Size says which fuse this wire takes.", .action = {}, .alert = true});
  } else {
    ui::notice({.tone = ui::Tone::good, .title = "This fuse protects this wire", .text = "The steps name its rating.", .action = {}});
  }
}

}  // namespace

void draw_trace_fitted_sheet(app::AppState& app) {
  const diagnosis::Case& frame = app.trace_desk().frame();
  app::FittedTold told = app.trace_desk().setup().fitted();
  bool changed = draw_wire(frame.circuit, told);
  if (draw_fuse(frame.circuit, told)) changed = true;
  draw_meaning(frame, told);
  if (changed) app.trace_desk().tell_fitted(told);
}

}  // namespace screens
