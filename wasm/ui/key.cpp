// Hardware keys: close, type into the keypad, scroll; Tab, Enter and Space where no mirror has
// the focus (the host decides what it forwards).
#include <array>
#include <cctype>
#include <string_view>

#include "ui/parts.h"

namespace ui {
namespace {

struct Typed {
  std::string_view code;
  std::string_view text;
};
constexpr std::array<Typed, 10> kSigns{{
    {"Period", "."}, {"NumpadDecimal", "."}, {"Comma", "."}, {"NumpadComma", "."}, {"Minus", "-"},
    {"NumpadSubtract", "-"}, {"Backspace", "back"}, {"Delete", "back"}, {"Enter", "ok"}, {"NumpadEnter", "ok"},
}};

// "Digit4", "Numpad4", "KeyA": what it types; empty: nothing of ours.
std::string typed_by(std::string_view code) {
  for (const Typed& sign : kSigns) {
    if (sign.code == code) return std::string(sign.text);
  }
  for (const std::string_view prefix : {"Digit", "Numpad"}) {
    if (code.size() == prefix.size() + 1 && code.starts_with(prefix) && code.back() >= '0' && code.back() <= '9') {
      return std::string(1, code.back());
    }
  }
  return {};
}

struct Scroll {
  std::string_view code;
  float lines;                 // of 48 px; pages are many
};
constexpr std::array<Scroll, 6> kScrolls{{
    {"ArrowDown", 1}, {"ArrowUp", -1}, {"PageDown", 10}, {"PageUp", -10}, {"Home", -10000}, {"End", 10000},
}};

bool scroll_or_step(State::Parts& p, std::string_view code) {
  const Record* record = p.recorder.focus_visible ? p.recorder.find(p.recorder.focused) : nullptr;
  for (const Scroll& scroll : kScrolls) {
    if (scroll.code != code) continue;
    if (record != nullptr && record->role == Role::spin && (code == "ArrowUp" || code == "ArrowDown")) {
      const auto kind = code == "ArrowUp" ? Action::Kind::step_up : Action::Kind::step_down;
      p.recorder.queue({.id = record->id, .kind = kind, .text = {}});
    } else if (p.top_body != 0) {
      p.touch.scroll_by(p.top_body, scroll.lines * 48.0F);
    }
    return true;
  }
  return false;
}

}  // namespace

void State::key(std::string_view dom_code, bool down, bool shift) {
  if (!down) return;
  Parts& p = *parts_;
  p.want_frames(2);
  if (dom_code == "Escape") {
    close_top_sheet();
    return;
  }
  if (dom_code == "Tab") {
    p.recorder.move_focus(shift ? -1 : 1);
    return;
  }
  const bool enter = dom_code == "Enter" || dom_code == "NumpadEnter";
  if ((enter || dom_code == "Space") && p.recorder.focus_visible && p.recorder.find(p.recorder.focused) != nullptr) {
    p.recorder.queue({.id = p.recorder.focused, .kind = Action::Kind::press, .text = {}});
    return;
  }
  if (scroll_or_step(p, dom_code)) return;
  if (std::string typed = typed_by(dom_code); !typed.empty()) p.typing.keys.push_back(std::move(typed));
}

}  // namespace ui
