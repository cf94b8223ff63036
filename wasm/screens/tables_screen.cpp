// Tables: every reference page and how-to card by what it is about, under one search.
#include <array>

#include "screens/lookup.h"
#include "screens/pages.h"
#include "screens/places.h"
#include "screens/places/tables.h"
#include "ui/ui.h"

namespace screens {
namespace {

constexpr std::array<std::string_view, 10> kWire{"wire", "ampacity-boat", "ampacity-conduit", "ampacity-clipped",
                                                 "ampacity-clipped-british", "ampacity-factors", "wire-metals",
                                                 "drop-limits", "colours", "practices"};
constexpr std::array<std::string_view, 5> kFuses{"fuses", "fuse-times", "fuse-kinds", "thin-wire-fuses", "fuse-places"};
constexpr std::array<std::string_view, 11> kJointPages{"splices", "crimps", "tabs",   "rings",  "ferrules", "strip",
                                                   "pull",    "clamps", "joints", "in-line", "wired-in"};
constexpr std::array<std::string_view, 3> kBattery{"batteries", "battery-kinds", "outlets"};
constexpr std::array<std::string_view, 2> kMeter{"meter", "cautions"};
constexpr std::array<Group, 5> kPageGroups{{{"Wire", kWire},
                                        {"Fuses", kFuses},
                                        {"Joints", kJointPages},
                                        {"Battery and outlets", kBattery},
                                        {"Meter and cautions", kMeter}}};

void draw_pages(app::AppState& app, const Group& group) {
  ui::begin_card(group.name, {.name = std::string(group.name), .tone = ui::Tone::plain});
  ui::card_title(group.name);
  for (const std::string_view key : group.keys) {
    const reference::Page* page = app.lookup().book().page(key);
    if (page == nullptr) continue;
    if (ui::list_row(page->title, {.sub = std::string(page->about)})) app.navigator().go(app::Route::page(key));
  }
  ui::end_card();
}

void draw_how_to(app::AppState& app) {
  ui::begin_card("how-to", {.name = "How to", .tone = ui::Tone::plain});
  ui::card_title("How to");
  for (const reference::Card& card : app.lookup().book().cards)
    if (ui::list_row(card.title, {.sub = std::string(card.when)})) app.navigator().go(app::Route::card(card.key));
  ui::end_card();
}

void draw_all_pages(app::AppState& app, Memory& memory) {
  const ui::PageEvents events =
      ui::begin_page("tables", {.title = "Tables", .subtitle = "Works with no signal", .back = false, .more = true});
  if (events.more) app.navigator().go(app::Route::at(app::Screen::preferences));
  draw_messages(app);
  if (!draw_search(app, memory)) {
    ui::begin_columns();
    for (std::size_t i = 0; i < kPageGroups.size(); ++i) {
      if (i == 2) ui::next_column();
      if (i == 2 && ui::two_columns()) draw_how_to(app);
      draw_pages(app, kPageGroups[i]);
    }
    if (!ui::two_columns()) draw_how_to(app);
    ui::end_columns();
  }
  end_page_at(app, app::Screen::tables);
}

}  // namespace

std::span<const Group> page_groups() { return kPageGroups; }

void draw_tables_screen(app::AppState& app, Memory& memory) {
  const reference::Page* page = app.lookup().book().page(app.shown().key);
  if (page == nullptr) draw_all_pages(app, memory);
  else draw_page(app, *page);
}

}  // namespace screens
