// The how-to cards, each opened from the list of Tables.
#pragma once

#include "app/lookup.h"
#include "screens/place.h"

namespace screens {

void draw_card_screen(app::AppState& app, Memory& memory);

namespace cards_place {

inline bool is_there(const app::Contents& contents, const app::Route& route) {
  return !route.key.empty() && contents.lookup.make_book().card(route.key) != nullptr;
}

inline std::string title(const app::Contents& contents, const app::Route& route) {
  const reference::Card* card = contents.lookup.make_book().card(route.key);
  return card != nullptr ? std::string(card->title) : "Tables";
}

}  // namespace cards_place

inline constexpr Place kCardsPlace{.id = app::Screen::cards,
                                   .label = "How to",
                                   .icon = ui::Icon::steps,
                                   .in_bar = false,
                                   .word = "cards",
                                   .also = "tables/how",
                                   .key = app::KeyForm::always,   // a card
                                   .above = app::Screen::tables,
                                   .shows = app::Work::book,
                                   .is_there = cards_place::is_there,
                                   .title = cards_place::title,
                                   .draw = draw_card_screen,
                                   .sheets = std::span<const SheetRow>{}};

}  // namespace screens
