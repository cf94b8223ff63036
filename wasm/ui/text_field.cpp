#include "ui/text_field.h"

#include <algorithm>
#include <cmath>

#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {

std::optional<std::string> text_field(std::string_view label, const TextFieldOptions& options) {
  State::Parts& p = now();
  constexpr float kInside = 12.0F;
  const float room = column().width - 2 * kInside;
  if (!options.hide_label) {
    const Rect above = take(text_height(label, Type::caption, false, column().width) + 4, Last::block);
    paint_text(label, above, {.type = Type::caption, .ink = Ink::muted});
  }
  const std::string& words = options.value.empty() ? options.placeholder : options.value;
  const float height = std::max(kTarget + 2, text_height(words, Type::text, false, room) + 24);
  const Rect box = take(height, Last::block, options.hide_label ? -1.0F : 0.0F);
  const std::uint32_t id = make_id(label);
  const Press state = press(id, box);
  p.fields.push_back(id);
  const bool wrong = !options.error.empty();
  record(id, box, {.role = Role::textbox, .name = std::string(label), .value = options.value, .description = options.error,
                   .state = wrong ? kInvalid : 0U});
  const bool focused = p.recorder.focused == id || p.focus_wanted == id;
  fill(box, colour(state.held || state.hovered ? Ink::pressed : Ink::card), kControlRadius);
  outline(box, colour(wrong ? Ink::stop : focused ? Ink::accent : Ink::rim), kControlRadius, wrong || focused ? 2.0F : 1.0F);
  paint_label(words, {box.x + kInside, box.y, room, box.h}, {.type = Type::text, .ink = options.value.empty() ? Ink::muted : Ink::ink},
              Align::left);
  if (wrong) {
    const Rect under = take(text_height(options.error, Type::caption, true, column().width), Last::words, 4.0F);
    record(words_id("wrong"), under, {.role = Role::alert, .name = options.error});
    paint_text(options.error, under, {.type = Type::caption, .semibold = true, .ink = Ink::stop});
  }
  auto text = p.recorder.take_text(id);
  if (text && *text == options.value) text.reset();
  if (text) p.want_frames(2);
  return text;
}

}  // namespace ui
