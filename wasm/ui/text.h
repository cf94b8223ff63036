// Words on the page. All wrap; every one is in the records.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "ui/theme.h"

namespace ui {

void heading(std::string_view text, int level = 2);        // section heading on the page (level 2, 3)
void question(std::string_view text);                      // 22 px: the one thing this card says
void paragraph(std::string_view text, Ink ink = Ink::ink);
void caption(std::string_view text, Ink ink = Ink::muted); // the small print: reasons, sources
// Title at the left of a card, a remark at the right ("10 AWG, with 10 % spare").
void card_title(std::string_view text, std::string_view remark = {});

// Big number with its unit: "10" "AWG · 5.3 mm²". Said as "Wire, red and black: 10 AWG".
struct Answer {
  std::string caption{};
  std::string number{};
  std::string unit{};
  Tone tone = Tone::plain;
};
// One, or two side by side (the last at the right edge); stacked where they do not fit. With
// `announce`, a screen reader says a change.
void answers(std::span<const Answer> answers, bool announce = true);
void answer(const Answer& answer, bool announce = true);
// A card's line with the figure at the right: "Carry less / whole circuit, at once" 10.2 A.
void figure_row(std::string_view label, std::string_view sub, std::string_view number, std::string_view unit);
// A line with plain value at the right: "Fuse" "15 A blade, blue".
void fact_row(std::string_view label, std::string_view value, std::string_view sub = {});

// Said by a screen reader when it changes, nothing drawn.
void announce(std::string_view text);

// Size of text as drawn, for those who lay out themselves.
struct Extent { float width = 0.0F, height = 0.0F; };
Extent measure(std::string_view text, Type type, bool semibold = false, float wrap_width = 0.0F);

}  // namespace ui
