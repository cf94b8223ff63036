// One row in full: every figure, how sure it is, its sources, and what it is good for.
#include "screens/lookup.h"
#include "screens/places/tables.h"
#include "ui/ui.h"

namespace screens {
namespace {

void draw_figures(const reference::Page& page, const reference::Row& row) {
  ui::begin_card("figures", {.name = "Figures", .tone = ui::Tone::plain});
  for (std::size_t i = 1; i < row.cells.size() && i < page.columns.size(); ++i)
    if (!row.cells[i].empty()) ui::fact_row(page.columns[i], row.cells[i]);
  if (!row.note.empty()) ui::paragraph(row.note, ui::Ink::muted);
  ui::end_card();
}

void use(app::AppState& app, const circuit::Edit& edit) {
  const std::string what = circuit::describe(app.editor().circuit(), edit);
  app.navigator().go(app::Route::at(app::Screen::size));
  app.editor().use_edits({edit}, what);
}

// A button for what the row fills in, another for what it sets in the open circuit.
void draw_taps(app::AppState& app, const reference::Tap& tap) {
  const bool calculates = !tap.calculator.empty();
  if (calculates && ui::button(tap.label, {.kind = ui::Kind::primary, .icon = ui::Icon::sums})) return open_calculator(app, tap);
  if (tap.into == reference::Tap::Into::nothing || !app.editor().has_circuit()) return;
  const auto edit = reference::edit_for(tap, app.editor().circuit());
  if (!edit || !circuit::apply(app.editor().circuit(), *edit).circuit) return;
  const std::string label = calculates ? "Use in my circuit" : tap.label;
  if (ui::button(label, {.kind = calculates ? ui::Kind::secondary : ui::Kind::primary})) use(app, *edit);
}

}  // namespace

void draw_row_sheet(app::AppState& app, Memory&) {
  const reference::Page* page = app.lookup().book().page(app.shown().key);
  const reference::Row* row = row_at(app, app.shown());
  if (page == nullptr || row == nullptr) return;
  draw_figures(*page, *row);
  draw_plate(app, row->picture);
  draw_taps(app, row->tap);
  ui::begin_card("sources", {.name = "Sources", .tone = ui::Tone::plain});
  ui::begin_flow();
  draw_standing(row->standing);
  ui::end_flow();
  draw_citations(row->citations);
  ui::end_card();
  if (!page->caution.empty())
    ui::notice({.tone = ui::Tone::caution, .title = {}, .text = std::string(page->caution), .action = {}});
}

}  // namespace screens
