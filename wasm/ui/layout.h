// The frame round the widgets: page, columns, cards, sheets, toast. Widgets fill the width of
// what they stand in, one under the other; nothing is ever cut, it wraps or stacks.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "ui/icon.h"
#include "ui/theme.h"

namespace ui {

// Widgets made inside get ids of their own: one Scope per row of a list.
class Scope {
 public:
  explicit Scope(std::uint32_t number);
  explicit Scope(std::string_view name);
  ~Scope();
  Scope(const Scope&) = delete;
  Scope& operator=(const Scope&) = delete;
};

// ---- page: header, scrolling body, bar of places

struct Place {
  std::string name{};           // "Size"
  Icon icon = Icon::ruler;
};
struct PageOptions {
  std::string title{};          // heading level 1
  std::string subtitle{};
  bool title_opens = false;   // the title is a button (notebook): shows a small mark
  std::string title_hint{};     // what it opens, for a screen reader
  bool back = false;          // arrow at the left
  bool more = true;           // "..." at the right, named "More"
};
struct PageEvents {
  bool title = false;
  bool back = false;
  bool more = false;
};
// `id`: each screen its own, so that each keeps its scroll position.
PageEvents begin_page(std::string_view id, const PageOptions& options);
// Ends the body and draws the bar of places; gives the place pressed. No places: no bar.
std::optional<std::size_t> end_page(std::span<const Place> places = {}, std::size_t current = 0);
void scroll_page_to_top();

// A foot under the scrolling body, over the bar of places: what a thumb needs at once. Between
// the last widget of the body and end_page:
//   if (ui::foot_stands("answers")) { ui::begin_foot("answers"); ...; ui::end_foot(); }
// foot_stands: false in two columns, in a low window, and for a foot that proved too tall for the
// window; its widgets belong in the body then. `id`: another one for other content.
bool foot_stands(std::string_view id, float most_of_window = 0.54F);   // the page must stay in sight above it
void begin_foot(std::string_view id);
void end_foot();
void foot_reads_here();       // where in the reading order the foot comes; else after the body

// Two columns of cards in a window of kTwoColumns and more, else one after the other. Call
// begin_columns, the left cards, next_column, the right cards, end_columns.
void begin_columns();
void next_column();
void end_columns();
bool two_columns();           // what begin_columns will do now
float width();                // what the next widget gets, CSS px
void gap(float px = kGap);    // extra space before the next widget

// ---- cards

struct CardOptions {
  std::string name{};           // of the group for a screen reader; empty: none said
  Tone tone = Tone::plain;    // tinted with a coloured edge
};
void begin_card(std::string_view id, const CardOptions& options = {});
void end_card();
void divider();               // a fine line across the card; rows draw their own between them

// ---- sheets: modal, over the page; the page under it is inert and leaves the records.
// Opened by name, drawn while open:
//   if (ui::button("Settings")) ui::open_sheet("settings");
//   if (ui::begin_sheet("settings", {.title = "Settings"})) { ...; ui::end_sheet(); }
// Call begin_sheet after end_page, or within another sheet for one on top. A sheet that is not
// drawn in a frame is closed.

struct SheetOptions {
  std::string title{};
  std::string subtitle{};
  bool tall = false;          // full height even when its content is short
};
void open_sheet(std::string_view name);
void close_sheet(std::string_view name);      // and those on top of it
bool sheet_is_open(std::string_view name);
bool begin_sheet(std::string_view name, const SheetOptions& options);
void end_sheet();

struct ConfirmOptions {
  std::string title{};          // "Delete Bench outlets?"
  std::string text{};           // what happens, and that it can be undone
  std::string yes = "Delete";
  std::string no = "Keep it";
  bool danger = true;
};
// Opened with open_sheet(name). True once, when the answer is yes.
bool confirm(std::string_view name, const ConfirmOptions& options);

// ---- toast: one line over the bar of places, with an action; leaves after a while (10 s).
void show_toast(std::string text, std::string action = {}, std::uint32_t token = 0);
void hide_toast();
std::optional<std::uint32_t> take_toast_action();   // the token, once, when its action was pressed

}  // namespace ui
