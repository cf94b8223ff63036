// One search over pages, rows, calculators and cards, with its results as they are typed.
#include "app/names.h"
#include "screens/lookup.h"
#include "screens/pages.h"
#include "ui/ui.h"

namespace screens {
namespace {

constexpr std::size_t kMostHits = 20;
constexpr std::size_t kLongest = 80;      // code points kept of what is typed

ui::Icon icon_of(reference::HitKind kind) {
  switch (kind) {
    case reference::HitKind::calculator: return ui::Icon::sums;
    case reference::HitKind::card: return ui::Icon::steps;
    case reference::HitKind::page:
    case reference::HitKind::row: break;
  }
  return ui::Icon::table;
}

std::string_view kind_word(reference::HitKind kind) {
  switch (kind) {
    case reference::HitKind::page: return "table";
    case reference::HitKind::row: return "row";
    case reference::HitKind::calculator: return "calculator";
    case reference::HitKind::card: return "how to";
  }
  return {};
}

void ask(app::AppState& app, Memory& memory) {
  Found& found = memory.found;
  const reference::SearchIndex& index = app.lookup().search_index();
  if (found.query == memory.search && found.index == &index) return;
  found.query = memory.search;
  found.index = &index;
  found.hits = index.find(memory.search, kMostHits);
}

void draw_hits(app::AppState& app, Memory& memory) {
  const std::size_t count = memory.found.hits.size();
  std::string told = count == 1 ? "1 found" : std::to_string(count) + " found";
  if (count == kMostHits) told = "The nearest " + std::to_string(kMostHits);
  ui::begin_card("found", {.name = "Found", .tone = ui::Tone::plain});
  if (count == 0) {
    ui::question("Nothing found");
    ui::paragraph("Try a size, a part or a rating: 10 AWG, red crimp, 15 A fuse.", ui::Ink::muted);
    told = "Nothing found";
  } else {
    ui::caption(told);
  }
  ui::announce(told);
  for (std::size_t i = 0; i < count; ++i) {
    const reference::Hit& hit = memory.found.hits[i];
    const ui::Scope scope(static_cast<std::uint32_t>(i));
    const std::string said = hit.title + ", " + std::string(kind_word(hit.kind)) + ", " + hit.detail;
    if (!ui::list_row(hit.title, {.sub = hit.detail, .icon = icon_of(hit.kind), .said = said})) continue;
    app.navigator().go(app.navigator().places().read(hit.address));
    break;
  }
  ui::end_card();
  if (ui::button("Clear the search", {.kind = ui::Kind::secondary, .icon = ui::Icon::close})) memory.search.clear();
}

bool blank(const std::string& text) { return text.find_first_not_of(' ') == std::string::npos; }

}  // namespace

bool draw_search(app::AppState& app, Memory& memory) {
  const auto typed = ui::text_field("Search", {.value = memory.search,
                                               .placeholder = "Search: 10 AWG, red crimp, strip",
                                               .error = {},
                                               .hide_label = true});
  if (typed) memory.search = app::first_characters(*typed, kLongest);
  if (blank(memory.search)) return false;
  ask(app, memory);
  draw_hits(app, memory);
  return true;
}

}  // namespace screens
