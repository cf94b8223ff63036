// One reference page: its picture, its rows, where they come from.
#include <algorithm>

#include "screens/lookup.h"
#include "screens/pages.h"
#include "screens/places.h"
#include "ui/ui.h"

namespace screens {
namespace {

bool from_memory(const reference::Row& row) { return row.standing == tables::Standing::memory; }

void draw_rows(app::AppState& app, const reference::Page& page, bool all_from_memory) {
  std::vector<ui::TableRow> rows;
  for (const reference::Row& row : page.rows)
    rows.push_back({row.cells, !all_from_memory && from_memory(row) ? "from memory" : "", false});
  ui::begin_card("rows", {.name = std::string(page.title), .tone = ui::Tone::plain});
  if (const auto pressed = ui::table("rows", page.columns, rows))
    app.go(app::Route::page(page.key, page.rows[*pressed].key));
  ui::end_card();
}

// Each document once, in the order of the rows.
std::string sources_of(const reference::Page& page) {
  constexpr std::size_t kTold = 4;
  std::vector<std::string_view> documents;
  for (const reference::Row& row : page.rows)
    for (const tables::Citation* citation : row.citations)
      if (std::find(documents.begin(), documents.end(), citation->document) == documents.end())
        documents.push_back(citation->document);
  std::string text = "Sources: ";
  for (std::size_t i = 0; i < documents.size() && i < kTold; ++i) text.append(i > 0 ? "; " : "").append(documents[i]);
  if (documents.size() > kTold) text += "; and " + std::to_string(documents.size() - kTold) + " more";
  return text + ". Tap a row for its own, and for how sure it is.";
}

}  // namespace

void draw_page(app::AppState& app, const reference::Page& page) {
  const ui::PageEvents events = ui::begin_page(
      "tables/" + std::string(page.key),
      {.title = std::string(page.title), .subtitle = std::string(page.about), .back = true, .more = false});
  if (events.back) app.back();
  draw_messages(app);
  const bool all = !page.rows.empty() && std::all_of(page.rows.begin(), page.rows.end(), from_memory);
  if (all)
    ui::notice({.tone = ui::Tone::caution, .title = "From memory",
                .text = "Nobody looked these figures up yet. Check them before you rely on them.", .action = {}});
  draw_plate(app, page.picture);
  draw_rows(app, page, all);
  ui::caption(sources_of(page));
  if (!page.caution.empty())
    ui::notice({.tone = ui::Tone::caution, .title = {}, .text = std::string(page.caution), .action = {}});
  end_page_at(app, app::Screen::tables);
}

}  // namespace screens
