#include "screens/places.h"

#include <array>
#include <utility>

#include "screens/places/cards.h"
#include "screens/places/circuits.h"
#include "screens/places/preferences.h"
#include "screens/places/quick.h"
#include "screens/places/size.h"
#include "screens/places/tables.h"
#include "screens/places/trace.h"
#include "ui/ui.h"
#include "units/expect.h"

namespace screens {
namespace {

// In the order of app::Screen.
constexpr std::array kPlaces{kSizePlace,  kTracePlace,    kQuickPlace,      kTablesPlace,
                             kCardsPlace, kCircuitsPlace, kPreferencesPlace};

constexpr std::size_t index_of(app::Screen screen) { return static_cast<std::size_t>(screen); }
constexpr std::size_t index_of(app::Sheet sheet) { return static_cast<std::size_t>(sheet); }

constexpr bool each_screen_in_order() {
  if (kPlaces.size() != index_of(app::Screen::count)) return false;
  for (std::size_t i = 0; i < kPlaces.size(); ++i)
    if (index_of(kPlaces[i].id.get()) != i) return false;
  return true;
}
static_assert(each_screen_in_order(), "a Screen without a row, or out of order");

constexpr bool each_sheet_once() {
  std::array<int, index_of(app::Sheet::count)> rows{};
  for (const Place& place : kPlaces)
    for (const SheetRow& sheet : place.sheets.get()) ++rows[index_of(sheet.id.get())];
  for (std::size_t i = 0; i < rows.size(); ++i)
    if (rows[i] != (i == index_of(app::Sheet::none) ? 0 : 1)) return false;
  return true;
}
static_assert(each_sheet_once(), "a Sheet that lies over no place, or over two");

constexpr bool words_differ() {
  for (std::size_t i = 0; i < kPlaces.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (kPlaces[i].word.get() == kPlaces[j].word.get() || kPlaces[i].label.get() == kPlaces[j].label.get()) return false;
  for (const Place& place : kPlaces)
    for (const SheetRow& one : place.sheets.get())
      for (const SheetRow& other : place.sheets.get())
        if (&one != &other && one.word.get() == other.word.get()) return false;
  return true;
}
static_assert(words_differ(), "two places or two sheets of a place with one word");

constexpr bool nothing_blank() {
  for (const Place& place : kPlaces) {
    const bool filled = !place.word.get().empty() && !place.label.get().empty() && place.draw.get() != nullptr &&
                        place.is_there.get() != nullptr && place.title.get() != nullptr;
    const bool in_bar = place.in_bar && place.icon.get() != ui::Icon::none;
    const bool stood_for = !place.in_bar && place.above.get() != place.id.get();
    if (!filled || !(in_bar || stood_for)) return false;
    for (const SheetRow& sheet : place.sheets.get())
      if (sheet.title.get().empty() || sheet.draw.get() == nullptr) return false;
  }
  return true;
}
static_assert(nothing_blank(), "a row with nothing in a field that is shown or called");

// The same rows as the app knows them.
constexpr auto kAddresses = [] {
  const auto address = [](const Place& place) {
    return app::PlaceAddress{.screen = place.id, .word = place.word, .also = place.also, .key = place.key,
                             .above = place.above, .shows = place.shows, .is_there = place.is_there, .title = place.title};
  };
  return [&]<std::size_t... I>(std::index_sequence<I...>) {
    return std::array{address(kPlaces[I])...};
  }(std::make_index_sequence<kPlaces.size()>());
}();

constexpr std::size_t kSheetCount = index_of(app::Sheet::count) - 1;
constexpr auto kSheetAddresses = [] {
  std::array<app::SheetAddress, kSheetCount> all{};
  std::size_t next = 0;
  for (const Place& place : kPlaces)
    for (const SheetRow& sheet : place.sheets.get()) all[next++] = {place.id, sheet.id, sheet.word, sheet.argument};
  return all;
}();

constexpr std::size_t kInBar = [] {
  std::size_t count = 0;
  for (const Place& place : kPlaces) count += place.in_bar ? 1U : 0U;
  return count;
}();

}  // namespace

const app::Places& places() {
  static constexpr app::Places all(kAddresses, kSheetAddresses);
  return all;
}

const Place& place_of(app::Screen screen) { return kPlaces[index_of(screen)]; }

const SheetRow& sheet_of(app::Sheet wanted) {
  for (const Place& place : kPlaces)
    for (const SheetRow& sheet : place.sheets.get())
      if (sheet.id == wanted) return sheet;
  BRANCHLIGHT_EXPECT(false);   // each_sheet_once(), and Sheet::none is not asked for
  return kPlaces.front().sheets.get().front();
}

void end_page_at(app::AppState& app, app::Screen here) {
  static const auto bar = [] {
    std::array<ui::Place, kInBar> made;
    std::size_t next = 0;
    for (const Place& place : kPlaces)
      if (place.in_bar) made[next++] = {std::string(place.label.get()), place.icon};
    return made;
  }();
  const app::Screen shown = place_of(here).in_bar ? here : place_of(here).above.get();
  std::array<app::Screen, kInBar> screens{};
  std::size_t current = 0;
  std::size_t next = 0;
  for (const Place& place : kPlaces) {
    if (!place.in_bar) continue;
    if (place.id == shown) current = next;
    screens[next++] = place.id;
  }
  const auto pressed = ui::end_page(bar, current);
  if (!pressed) return;
  const app::Route wanted = app::Route::at(screens[*pressed]);
  if (app.navigator().route() == wanted) return ui::scroll_page_to_top();
  app.navigator().go(wanted);
}

}  // namespace screens
