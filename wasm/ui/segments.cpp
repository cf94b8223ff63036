#include "ui/segments.h"

#include <algorithm>

#include <imgui.h>

#include "ui/paint.h"
#include "ui/press.h"

namespace ui {
namespace {

constexpr float kSegmentPad = 8.0F, kTightPad = 5.0F;

float least(const std::string& option, Type type, Share share) {
  const float pad = share == Share::own ? kTightPad : kSegmentPad;
  return std::max(text_width(option, type, true) + 2 * pad, kTarget);
}

ImDrawFlags corners_of(std::size_t i, std::size_t count) {
  if (count == 1) return ImDrawFlags_RoundCornersAll;
  if (i == 0) return ImDrawFlags_RoundCornersLeft;
  return i + 1 == count ? ImDrawFlags_RoundCornersRight : ImDrawFlags_RoundCornersNone;
}

}  // namespace

float segments_width(std::span<const std::string> options, Type type, Share share) {
  float all = 0.0F, widest = 0.0F;
  for (const std::string& option : options) {
    all += least(option, type, share);
    widest = std::max(widest, least(option, type, share));
  }
  return share == Share::own ? all : widest * static_cast<float>(options.size());
}

std::optional<std::size_t> segments(const Rect& bar, std::span<const std::string> options, std::size_t current, Type type, Share share) {
  std::optional<std::size_t> chosen;
  fill(bar, colour(Ink::card), kControlRadius);
  const float even = bar.w / static_cast<float>(options.size());
  const float more = (bar.w - segments_width(options, type, share)) / static_cast<float>(options.size());
  float begins = bar.x;
  for (std::size_t i = 0; i < options.size(); ++i) {
    const float ends = begins + (share == Share::own ? least(options[i], type, share) + more : even);
    const float left = snap(begins), right = snap(ends);
    begins = ends;
    const Rect rect{left, bar.y, right - left, bar.h};
    const std::uint32_t id = make_id(options[i]);
    const Press state = press(id, rect);
    record(id, rect, {.role = Role::radio, .name = options[i], .state = i == current ? kChecked : 0U});
    const bool on = i == current;
    if (on || state.held || state.hovered) {
      ImGui::GetWindowDrawList()->AddRectFilled({rect.x, rect.y}, {rect.right(), rect.bottom()}, colour(on ? Ink::ink : Ink::pressed),
                                                kControlRadius, corners_of(i, options.size()));
    } else if (i > 0 && i != current + 1) {
      fill({rect.x - 0.5F, rect.y + 10, 1, rect.h - 20}, colour(Ink::line));
    }
    line_of_text(options[i], rect.mid_x(), rect.mid_y(), {.type = type, .semibold = true, .ink = on ? Ink::on_ink : Ink::ink}, Align::centre);
    if (state.pressed && !on) chosen = i;
  }
  outline(bar, colour(Ink::rim), kControlRadius);
  return chosen;
}

}  // namespace ui
