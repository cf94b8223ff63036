// What if the shop has not got it: mark the shelf, pick the size in your hand, and read what
// would make it fit, each with its exact figure.
#include <algorithm>

#include "screens/places/size.h"
#include "screens/words.h"
#include "tables/fuse.h"
#include "ui/ui.h"

namespace screens {
namespace {

std::string figure(const app::AppState& app, const sizing::Fix& fix) {
  switch (fix.measure) {
    case sizing::Measure::amperes: return units::amperes_text(units::Amperes(fix.value));
    case sizing::Measure::fraction: return units::percent_text(fix.value);
    case sizing::Measure::volts: return units::volts_text(units::Volts(fix.value));
    case sizing::Measure::none: break;
    default: break;
  }
  if (fix.kind == sizing::FixKind::run_shorter) return units::length_text(units::Metres(fix.value), app.settings().units());
  return {};
}

void draw_sizes(app::AppState& app) {
  const circuit::Circuit& circuit = app.editor().circuit();
  ui::paragraph("Wire", ui::Ink::muted);
  ui::begin_flow();
  for (const tables::Conductor& size : tables::conductors(circuit.wiring.gauge)) {
    const auto& missing = circuit.shelf.missing_sizes;
    const bool gone = std::find(missing.begin(), missing.end(), size.id) != missing.end();
    if (!ui::chip(size.size, {.on = !gone, .struck = gone,
                              .said = size_text(size) + (gone ? ", not in the shop" : ", in the shop")}))
      continue;
    circuit::Shelf shelf = circuit.shelf;
    if (gone) std::erase(shelf.missing_sizes, size.id);
    else shelf.missing_sizes.emplace_back(size.id);
    app.editor().dispatch(circuit::SetShelf{shelf});
    break;
  }
  ui::end_flow();
}

void draw_fuses(app::AppState& app) {
  const circuit::Circuit& circuit = app.editor().circuit();
  const tables::FuseFamily& family = tables::fuse_family(circuit.wiring.fuse_family);
  ui::paragraph(std::string(family.name) + ", amps", ui::Ink::muted);
  ui::begin_flow();
  for (const double rating : family.ratings_a) {
    const auto& missing = circuit.shelf.missing_fuses_a;
    const bool gone = std::find(missing.begin(), missing.end(), rating) != missing.end();
    const std::string text = trimmed(rating);
    if (!ui::chip(text, {.on = !gone, .struck = gone,
                         .said = text + " A fuse" + (gone ? ", not in the shop" : ", in the shop")}))
      continue;
    circuit::Shelf shelf = circuit.shelf;
    if (gone) std::erase(shelf.missing_fuses_a, rating);
    else shelf.missing_fuses_a.push_back(rating);
    app.editor().dispatch(circuit::SetShelf{shelf});
    break;
  }
  ui::end_flow();
}

void draw_shelf(app::AppState& app) {
  ui::begin_card("shelf", {.name = "On the shelf", .tone = ui::Tone::plain});
  ui::card_title("On the shelf", "tap what is missing");
  draw_sizes(app);
  {
    const ui::Scope scope("fuses");
    draw_fuses(app);
  }
  const circuit::Shelf& shelf = app.editor().circuit().shelf;
  if ((!shelf.missing_sizes.empty() || !shelf.missing_fuses_a.empty()) &&
      ui::button("The shop has everything", {.kind = ui::Kind::quiet}))
    app.editor().dispatch(circuit::SetShelf{{}});
  ui::end_card();
}

void draw_answer(app::AppState& app) {
  const sizing::Answer& answer = app.results().answer();
  const sizing::Candidate* choice = answer.choice();
  ui::begin_card("answer", {.name = "Answer", .tone = choice != nullptr ? ui::Tone::plain : ui::Tone::stop});
  if (choice != nullptr) {
    ui::question("Take " + size_text(*choice->size) +
                 (choice->fuse ? " and a " + units::amperes_text(*choice->fuse) + " fuse." : "."));
    ui::caption(answer.reason);
  } else if (answer.verdict == sizing::Verdict::none_fits) {
    ui::question("Nothing fits yet");
    ui::paragraph(answer.headline);
  } else {
    ui::question(answer.headline);
  }
  ui::end_card();
}

void draw_pick(app::AppState& app, const tables::Conductor& in_hand) {
  ui::begin_flow();
  for (const tables::Conductor& size : tables::conductors(app.editor().circuit().wiring.gauge))
    if (ui::chip(size.size, {.on = size.id == in_hand.id, .said = "With " + size_text(size) + " in your hand"}))
      app.navigator().replace(app::Route::what_if(size.id));
  ui::end_flow();
}

void draw_fix(app::AppState& app, const sizing::Fix& fix, std::size_t index, bool& used) {
  const ui::Scope scope(static_cast<std::uint32_t>(index));
  ui::begin_card("fix", {.name = fix.title, .tone = ui::Tone::plain});
  const std::string text = figure(app, fix);
  const std::size_t space = text.rfind(' ');
  if (text.empty()) ui::card_title(fix.title);
  else if (space == std::string::npos) ui::figure_row(fix.title, {}, text, {});
  else ui::figure_row(fix.title, {}, text.substr(0, space), text.substr(space + 1));
  ui::paragraph(fix.detail, ui::Ink::muted);
  if (!fix.result.empty() && ui::button("Use this", {.kind = ui::Kind::secondary, .said = "Use this: " + fix.title}))
    used = true;
  ui::end_card();
}

void draw_fixes(app::AppState& app, const tables::Conductor& size) {
  const ui::Scope scope("fixes");
  const sizing::Fixes& fixes = *app.results().fixes();
  const sizing::Candidate& judged = *app.results().judged();
  ui::begin_card("in-hand", {.name = "In your hand", .tone = ui::Tone::plain});
  ui::question("With " + size_text(size) + " in your hand");
  if (fixes.fixes.empty()) ui::paragraph(fixes.why_none, ui::Ink::muted);
  else if (judged.passes && judged.fuse)
    ui::paragraph("The wire fits; the shop has no " + units::amperes_text(*judged.fuse) +
                  " fuse for it. Any one of these helps.", ui::Ink::muted);
  else ui::paragraph("Any one of these makes it fit.", ui::Ink::muted);
  if (ui::disclosure("Another size in your hand")) draw_pick(app, size);
  ui::end_card();
  for (std::size_t i = 0; i < fixes.fixes.size(); ++i) {
    bool used = false;
    draw_fix(app, fixes.fixes[i], i, used);
    if (!used) continue;
    app.navigator().go(app::Route::at(app::Screen::size));
    app.editor().use_fix(fixes.fixes[i]);
    return;
  }
}

}  // namespace

// Asked about one size, its fixes come first; asked about the shop, the shelf does.
void draw_what_if_sheet(app::AppState& app, Memory&) {
  const sizing::Verdict verdict = app.results().answer().verdict;
  if (verdict == sizing::Verdict::no_load || verdict == sizing::Verdict::invalid) {
    draw_shelf(app);
    return ui::caption("Give the outlets their loads, then this shows what would fit.");
  }
  const tables::Conductor* size = app.results().size_in_hand();
  const std::uint64_t revision = app.editor().revision();
  const bool about_size = !app.shown().size.empty();
  if (about_size && size != nullptr) draw_fixes(app, *size);
  if (app.editor().revision() != revision) return;   // a fix was taken over
  draw_answer(app);
  draw_shelf(app);
  if (app.editor().revision() != revision || about_size || size == nullptr) return;
  draw_fixes(app, *size);
}

}  // namespace screens
