#include "ui/stepper.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "ui/icon.h"
#include "ui/keypad.h"
#include "ui/layout.h"
#include "ui/parts.h"
#include "ui/press.h"
#include "ui/row.h"
#include "ui/row_parts.h"
#include "units/parse.h"

namespace ui {
namespace {

constexpr double kHoldMs = 450.0;         // until a hold begins to repeat
constexpr double kSlowMs = 140.0;         // first repeats
constexpr double kFastMs = 70.0;
constexpr int kSlowRepeats = 8;
constexpr int kBigRepeats = 28;           // from here on ten steps at a time
constexpr float kLeastValue = 84.0F;      // width of the number between the buttons

// The next multiple of the step in that direction, so that 5.73 goes to 5.8 and not 5.83.
double stepped(const StepperOptions& o, double value, int by) {
  if (o.step <= 0.0) return value;
  const double at = value / o.step;
  constexpr double kNear = 1e-6;          // of a step: already on the multiple
  const double base = by > 0 ? std::floor(at + kNear) : std::ceil(at - kNear);
  return std::clamp((base + by) * o.step, o.low, o.high);
}

std::string number_in(const std::string& shown) {
  const std::size_t first = shown.find_first_of("0123456789-");
  if (first == std::string::npos) return {};
  return shown.substr(first, shown.find_first_not_of("0123456789.,-", first) - first);
}

// What is shown can be typed as it stands when its unit has a key.
bool ends_with_key(const StepperOptions& o) {
  return std::any_of(o.unit_keys.begin(), o.unit_keys.end(), [&o](const UnitKey& key) { return o.shown.ends_with(" " + std::string(key.label)); });
}

Read plain_number(const StepperOptions& o, std::string_view text) {
  const units::Parsed<double> number = units::parse_number(text);
  if (!number.value) return {std::nullopt, number.why_not};
  if (*number.value < o.low || *number.value > o.high) return {std::nullopt, "That is out of range."};
  return {*number.value, {}};
}

Reader reader_of(const StepperOptions& options) {
  if (options.read) return options.read;
  return [&options](std::string_view text) { return plain_number(options, text); };
}

// How many steps a held button makes this frame.
int hold_steps(std::uint32_t id, const Press& state) {
  State::Parts& p = now();
  const double time = p.frame.now_ms;
  if (!state.held) {
    if (p.hold.id == id) p.hold = {};
    return 0;
  }
  if (p.hold.id != id) {
    p.hold = {id, time, time + kHoldMs, 0};
    return 0;
  }
  if (time < p.hold.next_ms) return 0;
  ++p.hold.repeats;
  p.hold.next_ms = time + (p.hold.repeats < kSlowRepeats ? kSlowMs : kFastMs);
  return p.hold.repeats < kBigRepeats ? 1 : 10;
}

struct Side {
  std::string name;
  Icon icon;
  int sign;
};

// Minus or plus: the steps to make, and whether they belong to a hold.
struct Steps {
  int by = 0;
  bool joins = false;
};
Steps step_button(const Side& side, const Rect& rect, bool disabled) {
  const bool repeated = now().hold.repeats > 0;     // letting go after a hold is no press
  const std::uint32_t held_id = now().hold.id;
  const std::uint32_t id = make_id(side.name);
  const Press state = press(id, rect, disabled);
  record(id, rect, {.role = Role::button, .name = side.name, .state = disabled ? kDisabled : 0U});
  const int held = disabled ? 0 : hold_steps(id, state);
  fill(rect, colour(state.held || state.hovered ? Ink::pressed : Ink::card), kControlRadius);
  outline(rect, colour(disabled ? Ink::line : Ink::rim), kControlRadius);
  draw_icon(side.icon, rect.mid_x(), rect.mid_y(), icon_px(20), colour(disabled ? Ink::muted : Ink::ink), 2.4F);
  if (held > 0) return {held * side.sign, true};
  if (state.pressed && !(repeated && held_id == id)) return {side.sign, false};
  return {};
}

KeypadOptions keypad_options(std::string_view label, const StepperOptions& o) {
  KeypadOptions k;
  k.title = o.said.empty() ? std::string(label) : o.said;
  k.first_text = !o.first_text.empty() ? o.first_text : ends_with_key(o) ? o.shown : number_in(o.shown);
  k.allowed = o.allowed;
  k.unit = o.unit;
  k.read = reader_of(o);
  k.unit_keys = o.unit_keys;
  k.minus_sign = o.minus_sign;
  k.preview = o.preview;
  return k;
}

std::string keypad_name(std::uint32_t id) { return "keypad " + std::to_string(id); }

// Steps and text that came from the mirror. A bad text changes nothing: the keypad opens on it
// and says why.
std::optional<Changed> from_mirror(std::uint32_t id, const StepperOptions& o) {
  State::Parts& p = now();
  if (const int steps = p.recorder.take_steps(id); steps != 0 && !o.disabled) {
    return Changed{stepped(o, o.value, steps), {}, false};
  }
  const auto text = p.recorder.take_text(id);
  if (!text || o.disabled) return std::nullopt;
  const Read read = reader_of(o)(*text);
  if (read.value) return Changed{*read.value, *text, false};
  open_sheet(keypad_name(id));
  p.typing.text = *text;
  p.typing.wrong = read.why_not;
  return std::nullopt;
}

std::optional<Changed> changed_only(std::optional<Changed> changed, double value) {
  if (changed && changed->typed.empty() && changed->value == value) return std::nullopt;
  return changed;
}

}  // namespace

std::optional<Changed> stepper(std::string_view label, const StepperOptions& o) {
  const Scope scope(label);
  const float value_width = std::min(std::max(text_width(o.shown, Type::text, true) + 20, kLeastValue), column().width - 2 * kTarget);
  const float height = std::max(kTarget, text_height(o.shown, Type::text, true, value_width - 8) + 16);
  RowPlan plan = plan_row(label, o.sub, value_width + 2 * kTarget, height);
  if (plan.stacked) plan.control.w = plan.row.w;   // buttons at both edges, the number between
  const Rect& box = plan.control;
  const Rect value{box.x + kTarget, box.y, box.w - 2 * kTarget, box.h};
  const float top = box.mid_y() - kTarget / 2;
  const std::string said = o.said.empty() ? std::string(label) : o.said;
  const std::uint32_t id = make_id("value");
  const Press tapped = press(id, value, o.disabled);
  record(id, value, {.role = Role::spin, .name = said, .value = o.shown, .description = joined(o.sub, o.allowed),
                     .state = o.disabled ? kDisabled : 0U, .low = o.low, .high = o.high});
  if (tapped.held || tapped.hovered) fill(value, colour(Ink::pressed), kControlRadius);
  paint_row_words(plan, label, o.sub, o.disabled);
  paint_label(o.shown, {value.x + 4, value.y, value.w - 8, value.h},
              {.type = Type::text, .semibold = true, .ink = o.disabled ? Ink::muted : Ink::ink});
  std::optional<Changed> changed = from_mirror(id, o);
  const Steps less = step_button({"Less: " + said, Icon::minus, -1}, {box.x, top, kTarget, kTarget}, o.disabled || o.value <= o.low);
  const Steps more = step_button({"More: " + said, Icon::plus, 1}, {box.right() - kTarget, top, kTarget, kTarget}, o.disabled || o.value >= o.high);
  const Steps steps{less.by + more.by, less.joins || more.joins};
  if (steps.by != 0) changed = Changed{stepped(o, o.value, steps.by), {}, steps.joins};
  if (tapped.pressed) open_sheet(keypad_name(id));
  if (auto typed = keypad(keypad_name(id), keypad_options(label, o))) changed = typed;
  return changed_only(std::move(changed), o.value);
}

std::optional<Changed> number_row(std::string_view label, const StepperOptions& o) {
  const Scope scope(label);
  const float value_width = std::min(text_width(o.shown, Type::text, true) + 28, column().width);
  const float height = std::max(kTarget - 4, text_height(o.shown, Type::text, true, value_width - 24) + 16);
  const RowPlan plan = plan_row(label, o.sub, value_width, height);
  const std::string said = o.said.empty() ? std::string(label) : o.said;
  const std::uint32_t id = make_id("value");
  const Rect reach = row_reach(plan.row);
  const Press tapped = press(id, reach, o.disabled);
  record(id, reach, {.role = Role::spin, .name = said, .value = o.shown, .description = joined(o.sub, o.allowed),
                     .state = o.disabled ? kDisabled : 0U, .low = o.low, .high = o.high});
  paint_row_ground(plan, tapped.held || tapped.hovered, false);
  paint_row_words(plan, label, o.sub, o.disabled);
  fill(plan.control, colour(Ink::card), kControlRadius);
  outline(plan.control, colour(o.disabled ? Ink::line : Ink::rim), kControlRadius);
  paint_label(o.shown, {plan.control.x + 10, plan.control.y, plan.control.w - 20, plan.control.h},
              {.type = Type::text, .semibold = true, .ink = o.disabled ? Ink::muted : Ink::ink});
  std::optional<Changed> changed = from_mirror(id, o);
  if (tapped.pressed) open_sheet(keypad_name(id));
  if (auto typed = keypad(keypad_name(id), keypad_options(label, o))) changed = typed;
  return changed_only(std::move(changed), o.value);
}

}  // namespace ui
