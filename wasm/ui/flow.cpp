// Things one after the other, wrapping. Chips fill the width: how wide each is can be known only
// when all have been told, so that they are laid out and drawn at the end of the flow. Until then
// a finger is asked about where the chip stood in the frame before.
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "ui/button.h"
#include "ui/flow.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {
namespace {

constexpr float kChipSide = 12.0F;
constexpr float kLeastChip = 52.0F;

float natural_width(std::string_view label) {
  return std::min(std::max(text_width(label, Type::text, true) + 2 * kChipSide, kLeastChip), column().width);
}

float chip_height(std::string_view label, float width) {
  return std::max(kTarget, text_height(label, Type::text, true, width - 2 * kChipSide) + 20);
}

void paint_chip(const FlowChip& chip, const Rect& rect) {
  const bool under = chip.under;
  fill(rect, colour(chip.on ? Ink::ink : under ? Ink::pressed : Ink::card), kControlRadius);
  if (!chip.on) outline(rect, colour(Ink::rim), kControlRadius);
  if (chip.on && under) fill(rect, 0x28808080U, kControlRadius);
  const Ink ink = chip.on ? Ink::on_ink : chip.struck || chip.disabled ? Ink::muted : Ink::ink;
  paint_label(chip.label, {rect.x + kChipSide, rect.y, rect.w - 2 * kChipSide + 1, rect.h}, {.type = Type::text, .semibold = true, .ink = ink});
  if (!chip.struck) return;
  const float half = text_width(chip.label, Type::text, true) / 2 + 4;
  stroke(rect.mid_x() - half, std::round(rect.mid_y()), rect.mid_x() + half, std::round(rect.mid_y()), colour(ink), 2.0F);
}

using Lines = std::vector<std::size_t>;   // how many on each

Lines lines_of(std::span<const float> natural, float width) {
  Lines lines;
  float used = width;
  for (const float each : natural) {
    if (used + kFlowGap + each > width + 0.5F) {
      lines.push_back(0);
      used = -kFlowGap;
    }
    used += kFlowGap + each;
    ++lines.back();
  }
  return lines;
}

// All alike in columns, the last line not much shorter than the others; no lines where that takes
// more of them than each in its own width.
Lines even_lines(std::span<const float> natural, float width, std::size_t at_most) {
  const float widest = *std::max_element(natural.begin(), natural.end());
  const auto most = std::max<std::size_t>(1, static_cast<std::size_t>((width + kFlowGap + 0.5F) / (widest + kFlowGap)));
  const std::size_t count = (natural.size() + most - 1) / most;
  if (count > at_most) return {};
  const std::size_t each = (natural.size() + count - 1) / count;
  Lines lines;
  for (std::size_t left = natural.size(); left > 0; left -= lines.back()) lines.push_back(std::min(each, left));
  return lines;
}

}  // namespace

std::vector<float> chip_widths(std::span<const float> natural, float width) {
  std::vector<float> widths(natural.begin(), natural.end());
  if (natural.size() < 2) return widths;
  const Lines own = lines_of(natural, width);
  if (const Lines even = even_lines(natural, width, own.size()); !even.empty()) {
    const auto columns = static_cast<float>(even.front());
    std::fill(widths.begin(), widths.end(), (width - kFlowGap * (columns - 1)) / columns);
    return widths;
  }
  constexpr float kTooShort = 0.3F;         // of the width: a last line as short as this stays as it is
  std::size_t first = 0;
  for (std::size_t line = 0; line < own.size(); first += own[line], ++line) {
    float used = kFlowGap * static_cast<float>(own[line] - 1);
    for (std::size_t i = first; i < first + own[line]; ++i) used += natural[i];
    if (line + 1 == own.size() && used < kTooShort * width) break;
    const float more = (width - used) / static_cast<float>(own[line]);
    for (std::size_t i = first; i < first + own[line]; ++i) widths[i] += more;
  }
  return widths;
}

void place_chips() {
  State::Parts& p = now();
  if (p.chips.empty()) return;
  std::vector<float> natural;
  for (const FlowChip& chip : p.chips) natural.push_back(natural_width(chip.label));
  const std::vector<float> widths = chip_widths(natural, column().width);
  std::vector<FlowChip> chips = std::move(p.chips);
  p.chips.clear();
  for (std::size_t i = 0; i < chips.size(); ++i) {
    const Rect rect = take_in_flow(widths[i], chip_height(chips[i].label, widths[i]));
    paint_chip(chips[i], rect);
    Record& said = p.recorder.at(chips[i].record);
    said.x = rect.x;
    said.y = rect.y;
    said.width = rect.w;
    said.height = rect.h;
    p.chip_places[chips[i].id] = {rect.x - p.flow_start.x, rect.y - p.flow_start.y, rect.w, rect.h};
  }
}

void begin_flow() {
  Column& col = column();
  const Rect at = take(0.0F, Last::block, col.last == Last::words ? 8.0F : -1.0F);
  col.flow = true;
  col.flow_x = at.x;
  col.flow_height = 0.0F;
  now().flow_start = at;
}

void end_flow() {
  place_chips();
  Column& col = column();
  col.y += col.flow_height;
  col.flow = false;
}

bool chip(std::string_view label, const ChipOptions& options) {
  State::Parts& p = now();
  const std::uint32_t id = make_id(label);
  const bool flow = column().flow;
  const float width = natural_width(label);
  Rect rect = flow ? Rect{p.flow_start.x, p.flow_start.y, 0, 0} : take(chip_height(label, width), Last::block);
  if (!flow) rect.w = width;
  if (const auto before = p.chip_places_before.find(id); flow && before != p.chip_places_before.end()) {
    rect = {rect.x + before->second.x, rect.y + before->second.y, before->second.w, before->second.h};
  }
  const Press state = press(id, rect, options.disabled);
  const std::size_t said = record(id, rect, {.role = Role::checkbox, .name = options.said.empty() ? std::string(label) : options.said,
                                             .state = (options.on ? kChecked : 0U) | (options.disabled ? kDisabled : 0U)});
  FlowChip chip{id, said, std::string(label), options.on, options.struck, options.disabled, state.held || state.hovered};
  if (flow) p.chips.push_back(std::move(chip));
  else paint_chip(chip, rect);
  return state.pressed;
}

}  // namespace ui
