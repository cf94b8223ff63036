// A table of figures: aligned columns while they fit, words wrapped where that is enough, else
// every row folded into lines of label and value. Nothing is ever cut. And numbered steps.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/shape.h"

namespace ui {

struct TableRow {
  std::vector<std::string> cells{};   // as the columns; the first names the row; may be empty
  std::string mark{};                 // small, at the row's name: "from memory"
  bool chosen = false;
  drawing::Ink swatch = drawing::Ink::none;   // colour of the thing itself, at the row's name
};
// The row pressed. Stands in a card of its own.
std::optional<std::size_t> table(std::string_view id, std::span<const std::string> columns,
                                 std::span<const TableRow> rows);

// One step of a list: its number in a ring, its words beside it.
void numbered(std::size_t number, std::string_view text);
// A point of a list.
void bullet(std::string_view text);

}  // namespace ui
