// A row with a bar: what part of the whole it has, in figures and as a length.
#pragma once

#include <string>
#include <string_view>

namespace ui {

struct ShareOptions {
  std::string value{};          // "52 %", at the right
  double share = 0.0;           // length of the bar, 0 to 1
  std::string sub{};            // small, under the bar
  std::string said{};           // name for a screen reader; empty: label, value and sub
};
bool share_row(std::string_view label, const ShareOptions& options);   // true when pressed

}  // namespace ui
