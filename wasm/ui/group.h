// A group that opens in place: what it holds and what it comes to stand in its head.
//
//   if (ui::begin_group("Lights", {.count = "3", .count_said = "3 circuits", .value = "6.2 A"})) { ...; ui::end_group(); }
#pragma once

#include <string>
#include <string_view>

#include "ui/icon.h"
#include "ui/theme.h"

namespace ui {

struct GroupOptions {
  std::string count{};          // "3", in a pill behind the name; may be empty
  std::string count_said{};     // "3 circuits"; empty: as the count
  std::string value{};          // at the right: "6.2 A"
  std::string sub{};            // small, under the name
  Icon icon = Icon::none;
  Tone tone = Tone::plain;      // of the value
  bool open_at_first = false;   // after that it stays as it was left
};
// True while open: draw its content, then end_group(). Groups may stand in groups.
bool begin_group(std::string_view label, const GroupOptions& options = {});
void end_group();

}  // namespace ui
