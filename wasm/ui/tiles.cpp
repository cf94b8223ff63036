#include "ui/tiles.h"

#include <algorithm>
#include <cmath>

#include <imgui.h>

#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {
namespace {

constexpr float kTilesApart = 8.0F;
constexpr float kTileSide = 10.0F;
constexpr float kLeastTile = 92.0F;       // narrower, three would look like keys

float icon_size() { return std::round(icon_px(26)); }

float tile_width(std::size_t columns) {
  const auto count = static_cast<float>(columns);
  return std::floor((column().width - kTilesApart * (count - 1)) / count);
}

std::size_t columns_for(std::span<const Tile> tiles) {
  for (const std::size_t columns : {3U, 2U}) {
    const float room = tile_width(columns) - 2 * kTileSide;
    const bool fits = std::all_of(tiles.begin(), tiles.end(), [room](const Tile& tile) {
      return longest_word(tile.label, Type::text, true) <= room && longest_word(tile.figure, Type::caption, false) <= room &&
             text_height(tile.label, Type::text, true, room) < 2.5F * line_height(Type::text) &&
             text_height(tile.figure, Type::caption, false, room) < 2.5F * line_height(Type::caption);
    });
    if (fits && room + 2 * kTileSide >= kLeastTile) return columns;
  }
  return 1;
}

float words_height(const Tile& tile, float room) {
  return text_height(tile.label, Type::text, true, room) + text_height(tile.figure, Type::caption, false, room);
}

float tile_height(const Tile& tile, float width) {
  const float sign = tile.icon == Icon::none ? 0.0F : icon_size() + 6;
  return std::max(kTarget, std::round(sign + words_height(tile, width - 2 * kTileSide) + 20));
}

void paint_tile(const Tile& tile, const Rect& rect, bool under) {
  fill(rect, colour(tile.chosen ? Ink::tint : under ? Ink::pressed : Ink::card), kControlRadius);
  outline(rect, colour(tile.chosen ? Ink::accent : tile.disabled ? Ink::line : Ink::rim), kControlRadius, tile.chosen ? 2.0F : 1.0F);
  const Ink ink = tile.disabled ? Ink::muted : Ink::ink;
  const float room = rect.w - 2 * kTileSide;
  float y = rect.y + 10;
  if (tile.icon != Icon::none) {
    draw_icon(tile.icon, rect.x + kTileSide + icon_size() / 2, y + icon_size() / 2, icon_size(), colour(tile.chosen ? Ink::accent : ink), 1.75F);
    y += icon_size() + 6;
  }
  y += paint_text(tile.label, {rect.x + kTileSide, y, room, rect.h}, {.type = Type::text, .semibold = true, .ink = ink});
  paint_text(tile.figure, {rect.x + kTileSide, y, room, rect.h}, {.type = Type::caption, .ink = Ink::muted});
}

}  // namespace

std::optional<std::size_t> tile_grid(std::string_view name, std::span<const Tile> tiles) {
  if (tiles.empty()) return std::nullopt;
  ImGui::PushID(name.data(), name.data() + name.size());
  const std::size_t list = record(words_id("tiles"), {column().left, column().y, column().width, 1}, {.role = Role::list, .name = std::string(name)});
  const std::size_t columns = columns_for(tiles);
  const float width = tile_width(columns);
  std::optional<std::size_t> pressed;
  for (std::size_t first = 0; first < tiles.size(); first += columns) {
    const std::size_t here = std::min(columns, tiles.size() - first);
    float height = 0.0F;
    for (std::size_t i = first; i < first + here; ++i) height = std::max(height, tile_height(tiles[i], width));
    const Rect line = take(height, Last::block, first == 0 ? -1.0F : kTilesApart);
    if (first == 0) now().recorder.at(list).y = line.y;
    for (std::size_t i = first; i < first + here; ++i) {
      const Tile& tile = tiles[i];
      const Rect rect{line.x + static_cast<float>(i - first) * (width + kTilesApart), line.y, width, line.h};
      const std::uint32_t id = make_id(tile.label);
      const Press state = press(id, rect, tile.disabled);
      record(id, rect, {.role = Role::button, .name = tile.said.empty() ? joined(tile.label, tile.figure) : tile.said,
                        .state = (tile.chosen ? kCurrent : 0U) | (tile.disabled ? kDisabled : 0U)});
      paint_tile(tile, rect, state.held || state.hovered);
      if (state.pressed) pressed = i;
    }
  }
  now().recorder.at(list).height = column().y - now().recorder.at(list).y;
  record_end();
  ImGui::PopID();
  return pressed;
}

}  // namespace ui
