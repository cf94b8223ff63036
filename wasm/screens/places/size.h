// Size: wire and fuse of the open circuit, and the sheets on which it is edited.
#pragma once

#include "screens/place.h"
#include "screens/words.h"

namespace screens {

void draw_size_screen(app::AppState& app, Memory& memory);
void draw_outlet_sheet(app::AppState& app, Memory& memory);
void draw_why_sheet(app::AppState& app, Memory& memory);
void draw_what_if_sheet(app::AppState& app, Memory& memory);
void draw_place_sheet(app::AppState& app, Memory& memory);
void draw_supply_sheet(app::AppState& app, Memory& memory);
void draw_parts_sheet(app::AppState& app, Memory& memory);
void draw_reach_sheet(app::AppState& app, Memory& memory);
void draw_label_sheet(app::AppState& app, Memory& memory);
void draw_built_sheet(app::AppState& app, Memory& memory);
void draw_more_sheet(app::AppState& app, Memory& memory);

namespace size_place {

inline ui::SheetOptions outlet_head(const app::AppState& app) {
  const circuit::Circuit& circuit = app.editor().circuit();
  return {.title = "Outlet " + letter_of(circuit, app.shown().outlet), .subtitle = circuit.name, .tall = true};
}

inline ui::SheetOptions why_head(const app::AppState& app) {
  const tables::Conductor* size = tables::conductor_by_id(app.shown().size);
  return {.title = "Why " + (size != nullptr ? size_text(*size) : std::string()),
          .subtitle = "Every check, with its source", .tall = true};
}

inline ui::SheetOptions what_if_head(const app::AppState& app) {
  if (tables::conductor_by_id(app.shown().size) != nullptr)
    return {.title = "What if", .subtitle = "What would make it fit", .tall = true};
  return {.title = "What the shop has", .subtitle = "Mark it; the answer follows", .tall = true};
}

inline bool is_there(const app::Contents& contents, const app::Route& route) {
  const circuit::Circuit* open = contents.notebook.open_circuit();
  if (route.sheet == app::Sheet::none) return true;
  if (open == nullptr) return false;
  return route.sheet != app::Sheet::outlet || circuit::find_outlet(*open, route.outlet) != nullptr;
}

inline std::string title(const app::Contents& contents, const app::Route&) {
  const circuit::Circuit* open = contents.notebook.open_circuit();
  return open != nullptr ? open->name : "Branchlight";
}

}  // namespace size_place

inline constexpr SheetRow kSizeSheets[] = {
    {.id = app::Sheet::outlet, .word = "outlet", .argument = app::Argument::outlet, .title = "Outlet", .subtitle = "",
     .tall = true, .head = size_place::outlet_head, .draw = draw_outlet_sheet},
    {.id = app::Sheet::why, .word = "why", .argument = app::Argument::size, .title = "Why",
     .subtitle = "Every check, with its source", .tall = true, .head = size_place::why_head, .draw = draw_why_sheet},
    {.id = app::Sheet::what_if, .word = "what-if", .argument = app::Argument::maybe_size, .title = "What if",
     .subtitle = "", .tall = true, .head = size_place::what_if_head, .draw = draw_what_if_sheet},
    {.id = app::Sheet::place, .word = "place", .argument = app::Argument::none, .title = "Where the wire lies",
     .subtitle = "", .tall = true, .head = nullptr, .draw = draw_place_sheet},
    {.id = app::Sheet::supply, .word = "supply", .argument = app::Argument::none, .title = "Supply",
     .subtitle = "What feeds the fuse block", .tall = true, .head = nullptr, .draw = draw_supply_sheet},
    {.id = app::Sheet::parts, .word = "parts", .argument = app::Argument::none, .title = "Wire, fuse and parts",
     .subtitle = "", .tall = true, .head = nullptr, .draw = draw_parts_sheet},
    {.id = app::Sheet::reach, .word = "reach", .argument = app::Argument::none, .title = "Wire already in hand",
     .subtitle = "How far, and how much", .tall = true, .head = nullptr, .draw = draw_reach_sheet},
    {.id = app::Sheet::label, .word = "label", .argument = app::Argument::none, .title = "Name and place",
     .subtitle = "", .tall = true, .head = nullptr, .draw = draw_label_sheet},
    {.id = app::Sheet::built, .word = "built", .argument = app::Argument::none, .title = "What is there",
     .subtitle = "As it was wired, not as planned", .tall = true, .head = nullptr, .draw = draw_built_sheet},
    {.id = app::Sheet::more, .word = "more", .argument = app::Argument::none, .title = "More",
     .subtitle = "", .tall = false, .head = nullptr, .draw = draw_more_sheet},
};

inline constexpr Place kSizePlace{.id = app::Screen::size,
                                  .label = "Size",
                                  .icon = ui::Icon::ruler,
                                  .in_bar = true,
                                  .word = "size",
                                  .also = "",
                                  .key = app::KeyForm::none,
                                  .above = app::Screen::size,
                                  .shows = app::Work::sizing,
                                  .is_there = size_place::is_there,
                                  .title = size_place::title,
                                  .draw = draw_size_screen,
                                  .sheets = kSizeSheets};

}  // namespace screens
