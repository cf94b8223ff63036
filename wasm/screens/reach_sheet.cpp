// The question turned round: this wire and this fuse are here; how far and how much?
#include "screens/places/size.h"
#include "screens/words.h"
#include "tables/fuse.h"
#include "ui/ui.h"

namespace screens {
namespace {

bool draw_wire(app::AppState& app, circuit::InHand in_hand) {
  ui::card_title("Wire", std::string(tables::gauge_system_suffix(app.editor().circuit().wiring.gauge)));
  bool edited = false;
  ui::begin_flow();
  for (const tables::Conductor& size : tables::conductors(app.editor().circuit().wiring.gauge)) {
    if (edited || !ui::chip(size.size, {.on = size.id == in_hand.size, .said = "Wire " + size_text(size)})) continue;
    in_hand.size = std::string(size.id);
    app.editor().dispatch(circuit::SetInHand{in_hand});
    edited = true;
  }
  ui::end_flow();
  return edited;
}

bool draw_fuse(app::AppState& app, circuit::InHand in_hand) {
  const tables::FuseFamily& family = tables::fuse_family(app.editor().circuit().wiring.fuse_family);
  ui::card_title("Fuse", "amps");
  bool edited = false;
  const ui::Scope scope("fuse");
  ui::begin_flow();
  for (const double rating : family.ratings_a) {
    const std::string text = trimmed(rating);
    if (edited || !ui::chip(text, {.on = rating == in_hand.fuse.number(), .said = "Fuse " + text + " A"})) continue;
    in_hand.fuse = units::Amperes(rating);
    app.editor().dispatch(circuit::SetInHand{in_hand});
    edited = true;
  }
  ui::end_flow();
  return edited;
}

void draw_result(const app::AppState& app, const sizing::Reach& reach) {
  ui::begin_card("protected", {.name = "Fuse and wire", .tone = reach.fuse_protects_wire ? ui::Tone::good : ui::Tone::stop});
  ui::question(reach.fuse_protects_wire ? "The fuse protects the wire" : "The fuse does not protect the wire");
  ui::paragraph(reach.fuse_sentence);
  ui::end_card();
  ui::begin_card("reach", {.name = "How far and how much", .tone = ui::Tone::plain});
  const bool any_fuse = reach.largest_fuse > units::Amperes{0.0};
  ui::fact_row("Largest fuse", any_fuse ? units::amperes_text(reach.largest_fuse) : "none", "for this wire and these parts");
  const bool carries = reach.most_current > units::Amperes{0.0};
  ui::fact_row("Most at once", carries ? units::amperes_text(reach.most_current) : "nothing", "at the lengths you gave");
  const bool reaches = reach.longest_run > units::Metres{0.0};
  ui::fact_row("Longest run", reaches ? units::length_text(reach.longest_run, app.settings().units()) : "none",
               "block to the far outlet, at the loads you gave");
  for (const std::string& note : reach.notes) ui::caption(note);
  ui::end_card();
}

}  // namespace

void draw_reach_sheet(app::AppState& app, Memory&) {
  if (app.results().reach() == nullptr) return;
  const circuit::InHand in_hand = app.results().reach_of();
  draw_result(app, *app.results().reach());
  ui::begin_card("hand", {.name = "In your hand", .tone = ui::Tone::plain});
  if (!draw_wire(app, in_hand)) draw_fuse(app, in_hand);
  ui::end_card();
}

}  // namespace screens
