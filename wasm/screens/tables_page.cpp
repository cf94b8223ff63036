// One reference page: its picture, its rows, where they come from.
#include <algorithm>

#include "drawing/palette.h"
#include "screens/lookup.h"
#include "screens/pages.h"
#include "screens/places.h"
#include "ui/ui.h"

namespace screens {
namespace {

bool from_memory(const reference::Row& row) { return row.standing == tables::Standing::memory; }

// The unit that every figure of a column has; empty: none, or not the same.
std::string unit_of(const reference::Page& page, std::size_t column) {
  std::string unit;
  for (const reference::Row& row : page.rows) {
    if (column >= row.cells.size()) continue;
    const std::string& text = row.cells[column];
    if (text.empty() || text.front() < '0' || text.front() > '9') continue;
    const std::size_t space = text.find(' ');
    const std::string own = space == std::string::npos ? std::string() : text.substr(space + 1);
    if (own.empty() || own.find_first_of(" 0123456789") != std::string::npos) return {};
    if (!unit.empty() && own != unit) return {};
    unit = own;
  }
  return unit;
}

// Told once at the head of a column rather than in each of its figures.
struct Laid {
  std::vector<std::string> columns;
  std::vector<ui::TableRow> rows;
  std::string unit;                // of all of them
};
Laid with_units_on_top(const reference::Page& page) {
  Laid laid;
  laid.columns = page.columns;
  for (const reference::Row& row : page.rows) laid.rows.push_back({.cells = row.cells});
  std::vector<std::string> units(page.columns.size());
  bool same = page.columns.size() > 2;
  for (std::size_t c = 1; c < page.columns.size(); ++c) {
    units[c] = unit_of(page, c);
    same = same && !units[c].empty() && units[c] == units[1];
  }
  if (same) laid.unit = units[1];
  for (std::size_t c = 1; c < page.columns.size(); ++c) {
    if (units[c].empty()) continue;
    if (!same) laid.columns[c] += ", " + units[c];
    for (ui::TableRow& row : laid.rows)
      if (c < row.cells.size() && row.cells[c].ends_with(" " + units[c]))
        row.cells[c].resize(row.cells[c].size() - units[c].size() - 1);
  }
  return laid;
}

// Where a row is about a thing with a colour of its own, that colour.
drawing::Ink swatch_of(const reference::Row& row) {
  using reference::Depicts;
  const Depicts what = row.picture.what;
  if (what != Depicts::fuse && what != Depicts::crimp && what != Depicts::ferrule && what != Depicts::colour)
    return drawing::Ink::none;
  for (const std::string& cell : row.cells)
    if (const drawing::Ink ink = drawing::swatch(cell); ink != drawing::Ink::none) return ink;
  return drawing::Ink::none;
}

void draw_rows(app::AppState& app, const reference::Page& page, bool all_from_memory) {
  Laid laid = with_units_on_top(page);
  for (std::size_t i = 0; i < page.rows.size(); ++i) laid.rows[i].swatch = swatch_of(page.rows[i]);
  for (std::size_t i = 0; i < page.rows.size(); ++i)
    if (!all_from_memory && from_memory(page.rows[i])) laid.rows[i].mark = "from memory";
  ui::begin_card("rows", {.name = std::string(page.title), .tone = ui::Tone::plain});
  if (!laid.unit.empty()) ui::caption("Figures in " + laid.unit + ".");
  if (const auto pressed = ui::table("rows", laid.columns, laid.rows))
    app.navigator().go(app::Route::page(page.key, page.rows[*pressed].key));
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
  if (events.back) app.navigator().back();
  draw_messages(app);
  const bool all = !page.rows.empty() && std::all_of(page.rows.begin(), page.rows.end(), from_memory);
  if (all)
    ui::notice({.tone = ui::Tone::caution, .title = "From memory",
                .text = "Each row has a figure that was not read in a source. Tap it to see which, and check the maker's first.", .action = {}});
  ui::begin_columns();
  if (!ui::two_columns()) draw_plate(app, page.picture);
  draw_rows(app, page, all);
  ui::next_column();
  if (ui::two_columns()) draw_plate(app, page.picture);
  ui::caption(sources_of(page));
  if (!page.caution.empty())
    ui::notice({.tone = ui::Tone::caution, .title = {}, .text = std::string(page.caution), .action = {}});
  ui::end_columns();
  end_page_at(app, app::Screen::tables);
}

}  // namespace screens
