// Rows of a card: words at the left, a control or value at the right; the control goes under
// the words where the line is too narrow. A fine line parts a row from the row before.
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

struct RowOptions {
  std::string sub{};            // small, under the label
  std::string value{};          // at the right
  std::string badge{};          // letter in a circle at the left ("A"), as in the sketch
  Icon icon = Icon::none;     // at the left, in place of a badge
  bool chevron = true;
  bool current = false;       // tinted, with an edge
  bool disabled = false;
  Tone tone = Tone::plain;    // of the value
  std::string said{};           // name for a screen reader; empty: label, sub and value
};
bool list_row(std::string_view label, const RowOptions& options = {});   // true when pressed

struct ToggleOptions {
  std::string sub{};
  bool disabled = false;
};
// True when pressed; the caller flips.
bool switch_row(std::string_view label, bool on, const ToggleOptions& options = {});
bool checkbox_row(std::string_view label, bool on, const ToggleOptions& options = {});

struct ChoiceOptions {
  std::string sub{};
  bool hide_label = false;    // still said
  bool as_list = false;       // one under the other even where they would fit
  std::span<const std::string> subs = {};   // under each option, only as a list
};
// One of several: side by side when they fit, else a list with round marks. Gives a new choice.
std::optional<std::size_t> choice(std::string_view label, std::span<const std::string> options,
                                  std::size_t current, const ChoiceOptions& more = {});

// A part that folds; remembers whether it is open. True while open: draw its content then.
bool disclosure(std::string_view label, bool open_at_first = false, std::string_view sub = {});

}  // namespace ui
