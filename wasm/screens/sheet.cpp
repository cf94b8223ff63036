// Keeps the sheet on screen and the address in step: the address opens it, closing it takes
// the address back.
#include "screens/lookup.h"
#include "screens/pages.h"
#include "screens/words.h"
#include "ui/ui.h"

namespace screens {
namespace {

ui::SheetOptions outlet_head(const app::AppState& app) {
  const circuit::Circuit& circuit = app.editor().circuit();
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i)
    if (circuit.outlets[i].id == app.shown().outlet)
      return {.title = "Outlet " + circuit::outlet_letter(i), .subtitle = circuit.name, .tall = true};
  return {};
}

std::string quick_title(const std::string& key) {
  const calculators::Calculator* calculator = calculators::calculator_by_key(key);
  return calculator != nullptr ? std::string(calculator->title) : std::string();
}

ui::SheetOptions row_head(const app::AppState& app) {
  const reference::Page* page = app.lookup().book().page(app.shown().key);
  const reference::Row* row = row_at(app, app.shown());
  if (page == nullptr || row == nullptr) return {};
  return {.title = row->cells.front(), .subtitle = std::string(page->title), .tall = true};
}

ui::SheetOptions head_of(const app::AppState& app) {
  const app::Route& route = app.shown();
  const tables::Conductor* size = tables::conductor_by_id(route.size);
  const std::string in_hand = size != nullptr ? size_text(*size) : std::string();
  switch (route.sheet) {
    case app::Sheet::outlet: return outlet_head(app);
    case app::Sheet::why: return {.title = "Why " + in_hand, .subtitle = "Every check, with its source", .tall = true};
    case app::Sheet::what_if:
      if (size != nullptr) return {.title = "What if", .subtitle = "What would make it fit", .tall = true};
      return {.title = "What the shop has", .subtitle = "Mark it; the answer follows", .tall = true};
    case app::Sheet::place: return {.title = "Where the wire lies", .subtitle = {}, .tall = true};
    case app::Sheet::supply: return {.title = "Supply", .subtitle = "What feeds the fuse block", .tall = true};
    case app::Sheet::parts: return {.title = "Wire, fuse and parts", .subtitle = {}, .tall = true};
    case app::Sheet::reach: return {.title = "Wire already in hand", .subtitle = "How far, and how much", .tall = true};
    case app::Sheet::label: return {.title = "Name and place", .subtitle = {}, .tall = false};
    case app::Sheet::more: return {.title = "More", .subtitle = {}, .tall = false};
    case app::Sheet::stored: return {.title = "Circuit", .subtitle = {}, .tall = false};
    case app::Sheet::sources: return {.title = "Sources", .subtitle = "Where every figure comes from", .tall = true};
    case app::Sheet::how: return {.title = "How it is worked out", .subtitle = quick_title(route.key), .tall = true};
    case app::Sheet::row: return row_head(app);
    case app::Sheet::trace_why: return {.title = "Why this check", .subtitle = "What each answer would mean", .tall = true};
    case app::Sheet::trace_answers: return {.title = "Answers so far", .subtitle = "Tap one to take it again", .tall = true};
    case app::Sheet::trace_again: return {.title = "Take it again", .subtitle = {}, .tall = true};
    case app::Sheet::trace_kept: return {.title = "Trace record", .subtitle = {}, .tall = true};
    case app::Sheet::trace_suspect: return {.title = "Suspect", .subtitle = "What speaks for it, and against", .tall = true};
    case app::Sheet::trace_fitted: return {.title = "Wire and fuse fitted", .subtitle = "What is there, not what should be", .tall = true};
    case app::Sheet::trace_more: return {.title = "More", .subtitle = {}, .tall = false};
    case app::Sheet::none: break;
  }
  return {};
}

void draw_content(app::AppState& app, Memory& memory) {
  draw_problem(app);
  switch (app.shown().sheet) {
    case app::Sheet::outlet: return draw_outlet_sheet(app, memory);
    case app::Sheet::why: return draw_why_sheet(app);
    case app::Sheet::what_if: return draw_what_if_sheet(app);
    case app::Sheet::place: return draw_place_sheet(app);
    case app::Sheet::supply: return draw_supply_sheet(app);
    case app::Sheet::parts: return draw_parts_sheet(app);
    case app::Sheet::reach: return draw_reach_sheet(app);
    case app::Sheet::label: return draw_label_sheet(app, memory);
    case app::Sheet::more: return draw_more_sheet(app);
    case app::Sheet::stored: return draw_stored_sheet(app, memory);
    case app::Sheet::sources: return draw_sources_sheet(app);
    case app::Sheet::how: return draw_how_sheet(app);
    case app::Sheet::row: return draw_row_sheet(app);
    case app::Sheet::trace_why: return draw_trace_why_sheet(app);
    case app::Sheet::trace_answers: return draw_trace_answers_sheet(app);
    case app::Sheet::trace_again: return draw_trace_again_sheet(app);
    case app::Sheet::trace_kept: return draw_trace_kept_sheet(app);
    case app::Sheet::trace_suspect: return draw_trace_suspect_sheet(app);
    case app::Sheet::trace_fitted: return draw_trace_fitted_sheet(app);
    case app::Sheet::trace_more: return draw_trace_more_sheet(app);
    case app::Sheet::none: return;
  }
}

}  // namespace

void draw_sheet(app::AppState& app, Memory& memory) {
  const bool wanted = app.shown().sheet != app::Sheet::none;
  const std::string address = wanted ? app::route_text(app.shown()) : std::string();
  if (address != memory.open_sheet) {
    if (!memory.open_sheet.empty()) ui::close_sheet(memory.open_sheet);
    if (wanted) ui::open_sheet(address);
    memory.open_sheet = address;
    memory.sheet_leaving = false;
    memory.draft = {};
  } else if (wanted && !memory.sheet_leaving && !ui::sheet_is_open(address)) {
    memory.sheet_leaving = true;   // the host changes the address in its own time
    app.navigator().back();
    return;
  }
  if (!wanted || memory.sheet_leaving) return;
  if (!ui::begin_sheet(address, head_of(app))) return;
  draw_content(app, memory);
  ui::end_sheet();
}

}  // namespace screens
