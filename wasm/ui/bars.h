// Parts of a whole as bars under each other: where the volts go. Read, not pressed.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "ui/theme.h"

namespace ui {

struct Bar {
  std::string label{};          // "Wire, block to C"
  double fill = 0.0;            // length, 0 to 1; outside of it is drawn at the end
  std::string value{};          // "0.31 V"
  std::string sub{};            // small, under the label; may be empty
  Tone tone = Tone::plain;      // stop or caution: the one that is too much
  std::string said{};           // "Wire, block to C: 0.31 V, half of it"; empty: label, value and sub
};
struct BarsOptions {
  std::string total{};          // last line, without a bar: "Together"
  std::string total_value{};    // "0.60 V"
};
// `name`: what the bars are parts of, for a screen reader.
void bar_list(std::string_view name, std::span<const Bar> bars, const BarsOptions& options = {});

}  // namespace ui
