// Circuits: the vehicles in the notebook, and what each is made of.
#pragma once

#include "app/notebook.h"
#include "screens/place.h"

namespace screens {

void draw_circuits_screen(app::AppState& app, Memory& memory);
void draw_vehicle_sheet(app::AppState& app, Memory& memory);
void draw_stored_sheet(app::AppState& app, Memory& memory);
void draw_block_sheet(app::AppState& app, Memory& memory);
void draw_source_sheet(app::AppState& app, Memory& memory);
void draw_unread_sheet(app::AppState& app, Memory& memory);

namespace circuits_place {

inline bool is_there(const app::Contents& contents, const app::Route& route) {
  const app::Stored* stored = contents.notebook.find(route.stored);
  switch (route.sheet) {
    case app::Sheet::vehicle: return stored != nullptr;
    case app::Sheet::stored: return contents.notebook.find(route.circuit()) != nullptr;
    case app::Sheet::block: return stored != nullptr && vehicle::find_block(stored->vehicle, vehicle::BlockId{route.part}) != nullptr;
    case app::Sheet::source: return stored != nullptr && vehicle::find_source(stored->vehicle, vehicle::SourceId{route.part}) != nullptr;
    case app::Sheet::unread: return contents.notebook.find_unread(route.stored) != nullptr;
    default: return true;
  }
}

inline std::string title(const app::Contents&, const app::Route&) { return "Circuits"; }

inline const vehicle::Vehicle& of(const app::AppState& app) { return app.desk().notebook().find(app.shown().stored)->vehicle; }

inline ui::SheetOptions vehicle_head(const app::AppState& app) {
  return {.title = of(app).name, .subtitle = "Battery, fuse blocks, circuits", .tall = true};
}

inline ui::SheetOptions stored_head(const app::AppState& app) {
  return {.title = vehicle::find_circuit(of(app), app.shown().circuit().circuit)->plan.name, .subtitle = of(app).name, .tall = false};
}

inline ui::SheetOptions block_head(const app::AppState& app) {
  return {.title = vehicle::find_block(of(app), vehicle::BlockId{app.shown().part})->name, .subtitle = of(app).name, .tall = true};
}

inline ui::SheetOptions source_head(const app::AppState& app) {
  return {.title = vehicle::find_source(of(app), vehicle::SourceId{app.shown().part})->name, .subtitle = of(app).name, .tall = true};
}

}  // namespace circuits_place

inline constexpr SheetRow kCircuitsSheets[] = {
    {.id = app::Sheet::vehicle, .word = "", .argument = app::Argument::number, .title = "Vehicle", .subtitle = "",
     .tall = true, .head = circuits_place::vehicle_head, .draw = draw_vehicle_sheet},
    {.id = app::Sheet::stored, .word = "circuit", .argument = app::Argument::pair, .title = "Circuit", .subtitle = "",
     .tall = false, .head = circuits_place::stored_head, .draw = draw_stored_sheet},
    {.id = app::Sheet::block, .word = "block", .argument = app::Argument::pair, .title = "Fuse block", .subtitle = "",
     .tall = true, .head = circuits_place::block_head, .draw = draw_block_sheet},
    {.id = app::Sheet::source, .word = "source", .argument = app::Argument::pair, .title = "Source", .subtitle = "",
     .tall = true, .head = circuits_place::source_head, .draw = draw_source_sheet},
    {.id = app::Sheet::unread, .word = "unread", .argument = app::Argument::number, .title = "Record that can't be read",
     .subtitle = "", .tall = false, .head = nullptr, .draw = draw_unread_sheet},
};

inline constexpr Place kCircuitsPlace{.id = app::Screen::circuits,
                                      .label = "Circuits",
                                      .icon = ui::Icon::book,
                                      .in_bar = false,
                                      .word = "circuits",
                                      .also = "",
                                      .key = app::KeyForm::none,
                                      .above = app::Screen::size,
                                      .shows = app::Work::nothing,
                                      .is_there = circuits_place::is_there,
                                      .title = circuits_place::title,
                                      .draw = draw_circuits_screen,
                                      .sheets = kCircuitsSheets};

}  // namespace screens
