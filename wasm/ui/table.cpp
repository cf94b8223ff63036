#include "ui/table.h"

#include <algorithm>
#include <cmath>

#include <imgui.h>

#include "drawing/palette.h"
#include "ui/layout.h"
#include "ui/parts.h"
#include "ui/press.h"
#include "ui/row_parts.h"

namespace ui {
namespace {

constexpr float kColumnsApart = 14.0F;         // columns
constexpr float kClose = 7.0F;            // where many columns stand
constexpr float kTableAir = 12.0F;             // above and below a row's words
constexpr float kMostLines = 3.0F;        // of one cell, before rows are folded; beside many others 2

// The colour of the thing itself, as paint: a small plate before the row's name.
float swatch_room(const TableRow& row) {
  if (row.swatch == drawing::Ink::none) return 0.0F;
  return std::round(type_px(Type::text) * 1.1F) + 8;
}
void paint_swatch(const TableRow& row, float x, float mid_y) {
  const auto paint = drawing::colour_of(row.swatch, now().frame.dark ? drawing::Palette::night : drawing::Palette::day);
  if (!paint) return;
  const float size = swatch_room(row) - 8;
  const Rect rect{x, std::round(mid_y - size / 2), size, size};
  fill(rect, 0xFF000000U | (static_cast<std::uint32_t>(paint->blue) << 16U) | (static_cast<std::uint32_t>(paint->green) << 8U) | paint->red, 4.0F);
  outline(rect, colour(Ink::rim), 4.0F);
}

// A number is read from its right end, words from their left.
bool is_figure(std::string_view text) {
  if (text.starts_with("x ")) return true;
  if (text.find(", ") != std::string_view::npos) return false;
  return !text.empty() && (text.front() == '-' || (text.front() >= '0' && text.front() <= '9'));
}

struct TableColumn {
  float natural = 0;          // widest cell on one line
  float least = 0;            // its longest word
  float head = 0;             // its name on one line
  float width = 0;
  float left = 0;
  bool figures = true;
};

// Words where figures stand ("table ends") are small: they must not widen the column.
constexpr Style kAside{.type = Type::caption, .semibold = false, .ink = Ink::muted};
Style cell_style(std::size_t column) { return {.type = Type::text, .semibold = column == 0, .ink = Ink::ink}; }
constexpr Style kMark{.type = Type::caption, .semibold = false, .ink = Ink::muted};
constexpr Style kHead{.type = Type::caption, .semibold = false, .ink = Ink::muted};

std::string_view cell(const TableRow& row, std::size_t column) {
  return column < row.cells.size() ? std::string_view(row.cells[column]) : std::string_view{};
}

std::vector<TableColumn> measured(std::span<const std::string> names, std::span<const TableRow> rows) {
  std::vector<TableColumn> columns(names.size());
  for (std::size_t c = 0; c < names.size(); ++c) {
    TableColumn& each = columns[c];
    each.least = longest_word(names[c], Type::caption, false);
    each.head = text_width(names[c], Type::caption, false);
    each.natural = each.least;
    std::size_t figures = 0, filled = 0;
    for (const TableRow& row : rows) {
      const std::string_view text = cell(row, c);
      if (text.empty()) continue;
      ++filled;
      figures += is_figure(text) ? 1U : 0U;
      if (c > 0 && !is_figure(text)) continue;
      each.natural = std::max(each.natural, text_width(text, Type::text, c == 0) + (c == 0 ? swatch_room(row) : 0.0F));
      if (c == 0) each.least = std::max(each.least, longest_word(text, Type::text, true) + swatch_room(row));
      if (c == 0 && !row.mark.empty()) each.least = std::max(each.least, longest_word(row.mark, Type::caption, false));
    }
    each.figures = c > 0 && 2 * figures >= filled && figures > 0;
    // Words in a column of figures ("table ends") may wrap; in one of words they have their width.
    for (const TableRow& row : rows) {
      const std::string_view text = cell(row, c);
      if (c == 0 || text.empty() || is_figure(text)) continue;
      each.least = std::max(each.least, longest_word(text, each.figures ? Type::caption : Type::text, false));
      each.natural = std::max(each.natural, each.figures ? each.least : text_width(text, Type::text, false));
    }
    // A short figure with its unit stays on one line.
    if (each.figures) each.least = std::max(each.least, std::min(each.natural, 96.0F * static_cast<float>(now().frame.text_scale)));
    if (c == 0) each.least = std::max(each.least, std::min(each.natural, 88.0F * static_cast<float>(now().frame.text_scale)));
  }
  return columns;
}

Style style_in(const TableColumn& place, std::size_t column, std::string_view text) {
  return place.figures && !is_figure(text) ? kAside : cell_style(column);
}

// True when the columns fit side by side; sets where each stands.
bool fit(std::vector<TableColumn>& columns, std::span<const TableRow> rows, float between) {
  // Each column is rounded up to whole pixels.
  const float room = column().width - between * static_cast<float>(columns.size() - 1) - static_cast<float>(columns.size());
  float natural = 0.0F, least = 0.0F;
  for (const TableColumn& each : columns) {
    natural += each.natural;
    least += each.least;
  }
  if (least > room) return false;
  // A name stands on two lines where there is room for it, on one where there is more.
  for (const float part : {0.65F, 1.0F}) {
    for (TableColumn& each : columns) {
      const float more = each.head * part - each.natural;
      if (more <= 0.0F || natural + more > room) continue;
      each.natural += more;
      natural += more;
    }
  }
  const float wish = natural - least;
  const float share = natural <= room || wish <= 0.0F ? 1.0F : (room - least) / wish;
  const float spare = natural <= room ? (room - natural) / static_cast<float>(std::max<std::size_t>(columns.size() - 1, 1)) : 0.0F;
  float x = column().left;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    TableColumn& each = columns[c];
    each.width = std::floor(each.least + (each.natural - each.least) * share) + 1.0F;
    // Room to spare goes before a column of figures, behind one of words.
    const bool after_figures = c > 0 && columns[c - 1].figures;
    if (c > 0 && (each.figures || after_figures)) x += spare;
    each.left = x;
    x += each.width + between + (c > 0 && !each.figures && !after_figures ? spare : 0.0F);
    if (c == 0 && columns.size() > 1 && !columns[1].figures && spare > 0.0F) x += std::min(spare, between);
  }
  const float most = (columns.size() > 3 ? 2.0F : kMostLines) * line_height(Type::text) + 0.5F;
  for (const TableRow& row : rows)
    for (std::size_t c = 0; c < columns.size(); ++c)
      if (text_height(cell(row, c), style_in(columns[c], c, cell(row, c)).type, c == 0, columns[c].width - (c == 0 ? swatch_room(row) : 0.0F)) > most) return false;
  return x - between <= column().left + column().width + 1.0F;
}

std::string said(std::span<const std::string> names, const TableRow& row) {
  std::string text(cell(row, 0));
  for (std::size_t c = 1; c < names.size(); ++c)
    if (!cell(row, c).empty()) text += ", " + names[c] + ": " + std::string(cell(row, c));
  return row.mark.empty() ? text : text + ", " + row.mark;
}

// The ground, the press and the record of one row.
bool take_press(const Rect& rect, std::string name, bool chosen) {
  const std::uint32_t id = make_id("row");
  const Rect reach = row_reach(rect);
  const Press state = press(id, reach);
  record(id, reach, {.role = Role::button, .name = std::move(name), .state = chosen ? kCurrent : 0U});
  RowPlan plan;
  plan.row = rect;
  paint_row_ground(plan, state.held || state.hovered, chosen);
  return state.pressed;
}

void head(std::span<const std::string> names, const std::vector<TableColumn>& columns) {
  float height = 0.0F;
  std::string all;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    height = std::max(height, text_height(names[c], Type::caption, false, columns[c].width));
    all += (c > 0 ? ", " : "Columns: ") + names[c];
  }
  const Rect rect = take_row(height + 16);
  record(words_id("columns"), rect, {.role = Role::text, .name = all});
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const float own = text_height(names[c], Type::caption, false, columns[c].width);
    paint_text(names[c], {columns[c].left, rect.bottom() - 8 - own, columns[c].width, own}, kHead,
               columns[c].figures ? Align::right : Align::left);
  }
}

// What has no column of its own: under the row, with its name.
std::string line_below(std::span<const std::string> names, std::size_t columns, const TableRow& row) {
  if (columns >= names.size() || cell(row, columns).empty()) return {};
  return names[columns] + ": " + std::string(cell(row, columns));
}

bool aligned_row(std::span<const std::string> names, const std::vector<TableColumn>& columns, const TableRow& row) {
  float height = 0.0F;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    float own = text_height(cell(row, c), style_in(columns[c], c, cell(row, c)).type, c == 0, columns[c].width - (c == 0 ? swatch_room(row) : 0.0F));
    if (c == 0) own += text_height(row.mark, Type::caption, false, columns[c].width);
    height = std::max(height, own);
  }
  const std::string below = line_below(names, columns.size(), row);
  const float below_height = below.empty() ? 0.0F : text_height(below, Type::caption, false, column().width) + 2;
  const Rect rect = take_row(std::max(height + below_height + 2 * kTableAir, kTarget));
  const bool pressed = take_press(rect, said(names, row), row.chosen);
  const float mid = rect.mid_y() - below_height / 2;
  if (!below.empty()) paint_text(below, {rect.x, std::round(mid + height / 2 + 2), rect.w, below_height}, kMark);
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const TableColumn& each = columns[c];
    const Style style = style_in(each, c, cell(row, c));
    const float inset = c == 0 ? swatch_room(row) : 0.0F;
    const float words = text_height(cell(row, c), style.type, c == 0, each.width - inset);
    const float mark = c == 0 ? text_height(row.mark, Type::caption, false, each.width) : 0.0F;
    const float top = std::round(mid - (words + mark) / 2);
    if (c == 0) paint_swatch(row, each.left, top + line_height(Type::text) / 2);
    paint_text(cell(row, c), {each.left + inset, top, each.width - inset, words}, style, each.figures ? Align::right : Align::left);
    if (mark > 0) paint_text(row.mark, {each.left, top + words, each.width, mark}, kMark);
  }
  return pressed;
}

// Label and value of every cell fit half the width: folded rows take two at a time.
constexpr float kGutter = 24.0F;
bool pairs_fit(std::span<const std::string> names, std::span<const TableRow> rows) {
  const float half = (column().width - kGutter) / 2;
  for (const TableRow& row : rows)
    for (std::size_t c = 1; c < names.size(); ++c)
      if (text_width(names[c], Type::caption, false) + 8 + text_width(cell(row, c), Type::text, false) > half) return false;
  return true;
}

// One line of a folded row: label and value beside each other, or the value under its label.
struct FoldedLine {
  float height = 0;
  float label = 0;
  bool stacked = false;
};
FoldedLine folded_line(std::string_view name, std::string_view value) {
  const float room = column().width;
  FoldedLine line;
  line.stacked = text_width(name, Type::caption, false) + kColumnsApart + text_width(value, Type::text, false) > room;
  line.label = text_height(name, Type::caption, false, room);
  line.height = line.stacked ? line.label + text_height(value, Type::text, false, room) + 4 : line_height(Type::text);
  return line;
}

// The folded row's cells two by two.
void paint_pairs(std::span<const std::string> names, const TableRow& row, float left, float y) {
  const float half = (column().width - kGutter) / 2;
  bool right = false;
  for (std::size_t c = 1; c < names.size(); ++c) {
    if (cell(row, c).empty()) continue;
    const float x = left + (right ? half + kGutter : 0.0F);
    const float mid = y + line_height(Type::text) / 2 + 1;
    line_of_text(names[c], x, mid, kHead);
    line_of_text(cell(row, c), x + half, mid, cell_style(c), Align::right);
    if (right) y += line_height(Type::text) + 2;
    right = !right;
  }
}

float pairs_height(std::span<const std::string> names, const TableRow& row) {
  std::size_t filled = 0;
  for (std::size_t c = 1; c < names.size(); ++c) filled += cell(row, c).empty() ? 0U : 1U;
  return static_cast<float>((filled + 1) / 2) * (line_height(Type::text) + 2);
}

bool folded_row(std::span<const std::string> names, const TableRow& row, bool pairs) {
  const float room = column().width;
  const float inset = swatch_room(row);
  const float title = text_height(cell(row, 0), Type::text, true, room - inset);
  const float mark = text_height(row.mark, Type::caption, false, room);
  float height = title + mark;
  if (pairs) height += pairs_height(names, row);
  for (std::size_t c = 1; c < names.size() && !pairs; ++c)
    if (!cell(row, c).empty()) height += folded_line(names[c], cell(row, c)).height + 2;
  const Rect rect = take_row(std::max(height + 2 * kTableAir, kTarget));
  const bool pressed = take_press(rect, said(names, row), row.chosen);
  float y = rect.y + kTableAir;
  paint_swatch(row, rect.x, y + line_height(Type::text) / 2);
  paint_text(cell(row, 0), {rect.x + inset, y, room - inset, title}, cell_style(0));
  y += title;
  paint_text(row.mark, {rect.x, y, room, mark}, kMark);
  y += mark;
  if (pairs) paint_pairs(names, row, rect.x, y);
  for (std::size_t c = 1; c < names.size() && !pairs; ++c) {
    const std::string_view value = cell(row, c);
    if (value.empty()) continue;
    const FoldedLine line = folded_line(names[c], value);
    y += 2;
    if (line.stacked) {
      paint_text(names[c], {rect.x, y, room, line.label}, kHead);
      paint_text(value, {rect.x, y + line.label, room, line.height - line.label}, cell_style(c));
    } else {
      line_of_text(names[c], rect.x, y + line.height / 2, kHead);
      line_of_text(value, rect.right(), y + line.height / 2, cell_style(c), Align::right);
    }
    y += line.height;
  }
  return pressed;
}

}  // namespace

std::optional<std::size_t> table(std::string_view id, std::span<const std::string> columns,
                                 std::span<const TableRow> rows) {
  if (columns.empty()) return std::nullopt;
  const Scope scope(id);
  std::vector<TableColumn> places = measured(columns, rows);
  bool side_by_side = fit(places, rows, kColumnsApart);
  // Words in the last column go under their row before columns stand close, and that before all is folded.
  if (!side_by_side && places.size() > 3 && !places.back().figures) {
    places.pop_back();
    side_by_side = fit(places, rows, kColumnsApart);
  }
  if (!side_by_side && places.size() > 3) side_by_side = fit(places, rows, kClose);
  if (side_by_side) head(columns, places);
  const bool pairs = !side_by_side && columns.size() > 2 && pairs_fit(columns, rows);
  std::optional<std::size_t> pressed;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Scope own(static_cast<std::uint32_t>(i));
    if (side_by_side ? aligned_row(columns, places, rows[i]) : folded_row(columns, rows[i], pairs)) pressed = i;
  }
  return pressed;
}

void numbered(std::size_t number, std::string_view text) {
  const std::string figure = std::to_string(number);
  const float size = std::round(std::max(28.0F, type_px(Type::text) * 1.8F));
  const float left = size + 12;
  const float words = text_height(text, Type::text, false, column().width - left);
  const Rect rect = take_row(std::max(words, size) + 2 * kTableAir);
  record(words_id("step"), rect, {.role = Role::text, .name = figure + ". " + std::string(text)});
  // The number stands by the first line.
  const float first = rect.y + kTableAir + (words > size ? line_height(Type::text) / 2 : size / 2);
  const float mid = std::max(first, rect.y + kTableAir / 2 + size / 2);
  ring(rect.x + size / 2, mid, size / 2 - 1, colour(Ink::accent), 1.75F);
  line_of_text(figure, rect.x + size / 2, mid, {.type = Type::text, .semibold = true, .ink = Ink::accent}, Align::centre);
  const float top = words > size ? rect.y + kTableAir : std::round(mid - words / 2);
  paint_text(text, {rect.x + left, top, rect.w - left, words}, {.type = Type::text});
}

void bullet(std::string_view text) {
  const float left = std::round(type_px(Type::text) * 1.1F);
  const float words = text_height(text, Type::text, false, column().width - left);
  const Rect rect = take(words, Last::words);
  record(words_id("point"), rect, {.role = Role::text, .name = std::string(text)});
  disc(rect.x + left * 0.3F, rect.y + line_height(Type::text) / 2, type_px(Type::text) * 0.14F, colour(Ink::muted));
  paint_text(text, {rect.x + left, rect.y, rect.w - left, words}, {.type = Type::text});
}

}  // namespace ui
