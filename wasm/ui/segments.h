// A bar of words side by side, one of them chosen. Private to the room.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>

#include "ui/place.h"

namespace ui {

enum class Share : std::uint8_t { even, own };   // all as wide as the widest, or each by its word

// Least width of a bar of these, with every segment a target for a finger.
float segments_width(std::span<const std::string> options, Type type, Share share);
// A new choice. Records a radio for each, by its word.
std::optional<std::size_t> segments(const Rect& bar, std::span<const std::string> options, std::size_t current, Type type, Share share);

}  // namespace ui
