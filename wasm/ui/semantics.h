// Everything drawn this frame, as a person who can not see the canvas needs it: role, name,
// value, state and place, in reading order. The page mirrors the list into real elements,
// headless tests press things by it, and a widget that is not in it does not exist.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace ui {

enum class Role : std::uint8_t {
  heading,      // level in `level`
  text,
  button,
  link,         // an entry of the bar of places
  checkbox,     // checked
  switch_,      // checked
  radio,        // checked; one of a group
  spin,         // a number with steps: value, low, high; set by text
  textbox,      // value; edited by a real field of the page over the canvas
  image,        // a picture with its description as name
  dialog,       // a sheet; everything until its end lies in it
  list,         // rows until its end lie in it
  group,        // a card or labelled set, until its end
  navigation,   // the bar of places, until its end
  status,       // text announced when it changes
  alert,        // text announced at once
  end,          // closes the last dialog, list, group or navigation
};

enum StateFlag : std::uint32_t {
  kChecked = 1U << 0U,
  kDisabled = 1U << 1U,
  kCurrent = 1U << 2U,     // the place we are in
  kExpanded = 1U << 3U,
  kCollapsed = 1U << 4U,
  kInvalid = 1U << 5U,
  kPrimary = 1U << 6U,
};

struct Record {
  std::uint32_t id = 0;       // stable from frame to frame while the widget is the same
  Role role = Role::text;
  std::uint8_t level = 0;     // headings 1 to 3
  std::uint32_t state = 0;
  float x = 0, y = 0, width = 0, height = 0;   // CSS px in the window
  std::uint32_t region = 0;   // id of the scroll region it moves with; 0: none
  double low = 0, high = 0;   // spin
  std::string name{};
  std::string value{};          // spin: as shown ("12 A"); textbox: the text
  std::string description{};    // further words; empty when none
};

// What came back from the page or a test, to be taken by the widget it is for.
struct Action {
  enum class Kind : std::uint8_t { press, set_text, step_up, step_down, focus, blur };
  std::uint32_t id = 0;
  Kind kind = Kind::press;
  std::string text{};
};

}  // namespace ui
