// The foot of a page: what a thumb needs at once stays under it, over the bar of places, while
// the rest scrolls. Only where there is room for it: a foot too tall for the window, a low window
// and two columns have none, and its widgets go into the page.
#include <algorithm>
#include <cmath>

#include <imgui.h>
#include <imgui_internal.h>

#include "ui/layer.h"
#include "ui/layout.h"
#include "ui/paint.h"
#include "ui/parts.h"
#include "ui/press.h"

namespace ui {
namespace {

constexpr float kLowestWindow = 520.0F;
constexpr float kAir = 10.0F;               // over and under its widgets
constexpr std::size_t kFeetRemembered = 64;

// The same words are another height at another width or text size.
std::uint32_t key_of(std::string_view id) {
  const Frame& f = now().frame;
  std::uint32_t key = ImHashStr(id.data(), id.size());
  for (const float measure : {f.width, f.height, static_cast<float>(f.text_scale)})
    key = ImHashData(&measure, sizeof measure, key);
  return key;
}

}  // namespace

bool foot_stands(std::string_view id, float most_of_window) {
  const State::Parts& p = now();
  if (two_columns() || p.frame.height < kLowestWindow) return false;
  const auto known = p.feet.find(key_of(id));
  return known == p.feet.end() || known->second <= (p.frame.height - p.bar_height) * most_of_window;
}

void foot_reads_here() { now().foot_reads_at = now().recorder.size(); }

void begin_foot(std::string_view id) {
  State::Parts& p = now();
  end_scrolling_part(p.body, 16.0F);
  p.body_ended = true;
  p.foot_key = key_of(id);
  p.foot_record = p.recorder.size();
  const auto known = p.feet.find(p.foot_key);
  p.foot_drawn = known == p.feet.end() ? p.foot_height : known->second;
  const Frame& f = p.frame;
  const float room = std::floor(std::min(f.width - f.safe_left - f.safe_right - 2 * kPage, kColumn));
  const float top = f.height - p.bar_height - p.foot_drawn;
  const float left = std::floor(f.safe_left + (f.width - f.safe_left - f.safe_right - room) / 2);
  fill({0, top, f.width, 1}, colour(Ink::line));
  p.region = 0;
  push_column({.left = left, .width = room, .y = top + kAir});
}

void end_foot() {
  State::Parts& p = now();
  const float height = std::round(column().y + kAir - (p.frame.height - p.bar_height - p.foot_drawn));
  pop_column();
  if (p.feet.size() >= kFeetRemembered) p.feet.clear();
  p.feet[p.foot_key] = height;
  if (p.foot_height != height || p.foot_drawn != height) p.want_frames(2);
  p.foot_height = height;
  p.foot_in_frame = true;
  if (p.foot_reads_at > 0) p.recorder.move_from(p.foot_record, p.foot_reads_at);
}

void settle_foot() {
  State::Parts& p = now();
  if (!p.foot_in_frame && p.foot_height != 0.0F) {
    p.foot_height = 0.0F;
    p.want_frames(2);
  }
  p.toast_floor -= p.foot_height;
  p.foot_in_frame = false;
  p.foot_reads_at = 0;
  p.body_ended = false;
}

}  // namespace ui
