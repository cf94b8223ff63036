// Things to press. True (or the index) once per press: by finger, mouse, key or mirror.
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

enum class Kind : std::uint8_t { secondary, primary, quiet, danger };

struct ButtonOptions {
  Kind kind = Kind::secondary;
  Icon icon = Icon::none;
  bool disabled = false;
  bool full_width = true;     // in a card or page; false: as wide as its words (also within a flow)
  std::string said{};           // name for a screen reader where it differs ("Remove outlet C")
};
bool button(std::string_view label, const ButtonOptions& options = {});

struct ButtonSpec {
  std::string label{};
  Kind kind = Kind::secondary;
  Icon icon = Icon::none;
  bool disabled = false;
  std::string said{};
};
// Side by side, equally wide; one under the other where the words do not fit.
std::optional<std::size_t> buttons(std::span<const ButtonSpec> specs);
// Many under the thumb: three in a line where their words fit, else two, on two lines of words
// where they must, else one under the other. Of an odd number the primary one, or the last, takes
// a whole line. `big`: higher, in larger letters where they fit: the answers to a question.
std::optional<std::size_t> button_grid(std::span<const ButtonSpec> specs, bool big = false);

// A flow: pills, chips and narrow buttons one after the other, wrapping. Chips fill its width.
void begin_flow();
void end_flow();

struct ChipOptions {
  bool on = false;
  bool struck = false;        // drawn struck through (the shop has none)
  bool disabled = false;
  std::string said{};           // "10 AWG, in the shop"
};
// A toggle of its own (checkbox to a screen reader). True when pressed; the caller flips.
bool chip(std::string_view label, const ChipOptions& options);

// Words with a mark and a tint, not pressed: "Wire is protected".
void pill(std::string_view text, Tone tone);

struct NoticeOptions {
  Tone tone = Tone::caution;
  std::string title{};
  std::string text{};
  std::string action{};         // a button under the text; empty: none
  bool alert = false;         // said at once by a screen reader
};
// A tinted card of its own (never within a card). True when its action was pressed.
bool notice(const NoticeOptions& options);

}  // namespace ui
