// Tiles to start from: a sign, a name and a figure each, two or three to a line.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "ui/icon.h"

namespace ui {

struct Tile {
  std::string label{};          // "Cool box"
  std::string figure{};         // "45 W"; may be empty
  Icon icon = Icon::none;
  bool chosen = false;
  bool disabled = false;
  std::string said{};           // name for a screen reader; empty: label and figure
};
// The index of the one pressed. `name`: of the list, for a screen reader. Three to a line where
// label and figure fit on two lines each, else two, else one.
std::optional<std::size_t> tile_grid(std::string_view name, std::span<const Tile> tiles);

}  // namespace ui
