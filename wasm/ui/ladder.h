// Bars under each other with one limit mark: how each wire size does against the drop limit.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "ui/theme.h"

namespace ui {

struct LadderRow {
  std::string label{};          // "10"
  std::string unit{};           // "AWG"
  double fill = 0.0;          // length of the bar, 0 to 1; past 1 is drawn full
  std::string value{};          // "4.6 %"
  Tone tone = Tone::good;     // good: within the limit; stop: past it; caution: fails otherwise
  bool chosen = false;
  bool struck = false;        // the shop has none
  std::string note{};           // small, under the bar: "fuse would not fit"; may be empty
  std::string said{};           // whole sentence for a screen reader; empty: made of the above
};
struct LadderOptions {
  std::string left{};           // column head: "Size"
  std::string right{};          // "Drop at far outlet · limit 5 %"
  double limit = 0.5;         // where the mark stands, 0 to 1
};
std::optional<std::size_t> ladder(std::string_view id, std::span<const LadderRow> rows, const LadderOptions& options);

}  // namespace ui
