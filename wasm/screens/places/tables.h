// Tables: the reference pages, as a list and one by one, and each row in full.
#pragma once

#include <algorithm>

#include "screens/lookup.h"
#include "screens/place.h"

namespace screens {

void draw_tables_screen(app::AppState& app, Memory& memory);    // the list, or one page
void draw_row_sheet(app::AppState& app, Memory& memory);

namespace tables_place {

inline bool is_there(const app::Contents& contents, const app::Route& route) {
  if (route.key.empty()) return true;
  const reference::Page* page = contents.lookup.make_book().page(route.key);
  if (page == nullptr || route.sheet != app::Sheet::row) return page != nullptr;
  return std::any_of(page->rows.begin(), page->rows.end(),
                     [&](const reference::Row& row) { return app::address_word(row.key) == route.row; });
}

inline std::string title(const app::Contents& contents, const app::Route& route) {
  const reference::Page* page = route.key.empty() ? nullptr : contents.lookup.make_book().page(route.key);
  return page != nullptr ? std::string(page->title) : "Tables";
}

inline ui::SheetOptions row_head(const app::AppState& app) {
  const reference::Page* page = app.lookup().book().page(app.shown().key);
  const reference::Row* row = row_at(app, app.shown());
  if (page == nullptr || row == nullptr) return {};
  return {.title = row->cells.front(), .subtitle = std::string(page->title), .tall = true};
}

}  // namespace tables_place

inline constexpr SheetRow kTablesSheets[] = {
    {.id = app::Sheet::row, .word = "", .argument = app::Argument::row, .title = "Row", .subtitle = "",
     .tall = true, .head = tables_place::row_head, .draw = draw_row_sheet},
};

inline constexpr Place kTablesPlace{.id = app::Screen::tables,
                                    .label = "Tables",
                                    .icon = ui::Icon::table,
                                    .in_bar = true,
                                    .word = "tables",
                                    .also = "",
                                    .key = app::KeyForm::listed,   // a page
                                    .above = app::Screen::size,
                                    .shows = app::Work::book,
                                    .is_there = tables_place::is_there,
                                    .title = tables_place::title,
                                    .draw = draw_tables_screen,
                                    .sheets = kTablesSheets};

}  // namespace screens
