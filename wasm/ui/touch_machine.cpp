#include "ui/touch_machine.h"

#include <algorithm>
#include <cfloat>
#include <cmath>

#include <imgui.h>
#include <imgui_internal.h>

namespace ui {
namespace {

constexpr float kSlop = 9.0F;            // px a finger may wander and still tap
constexpr double kRestMs = 90.0;         // rest after which the thing under the finger goes down
constexpr double kStillMs = 60.0;        // a finger that stood still this long before lifting flings nothing
constexpr double kSpeedSpanMs = 100.0;
constexpr float kLeastFling = 60.0F;     // px per s
constexpr float kFlingEnd = 20.0F;
constexpr double kFlingTau = 0.325;      // s, friction of the coast
constexpr double kWheelTau = 0.06;       // s

void mouse_at(float x, float y) {
  ImGuiIO& io = ImGui::GetIO();
  io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
  io.AddMousePosEvent(x, y);
}

void button(bool down) {
  ImGuiIO& io = ImGui::GetIO();
  io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
  io.AddMouseButtonEvent(0, down);
}

void leave() { mouse_at(-FLT_MAX, -FLT_MAX); }

float along(const ImVec2& v, int axis) { return axis == 1 ? v.y : v.x; }

// The window that scrolls along the axis, from what lies at the point outwards; null: none.
ImGuiWindow* scroller_at(float x, float y, int axis) {
  ImGuiWindow* window = nullptr;
  ImGui::FindHoveredWindowEx({x, y}, false, &window, nullptr);
  for (; window != nullptr; window = window->ParentWindow) {
    if (along(window->ScrollMax, axis) > 0.0F) return window;
    if ((window->Flags & ImGuiWindowFlags_ChildWindow) == 0) break;
  }
  return nullptr;
}

// Scrolls within the ends; false when an end was met. ImGui scrolls by whole px: `carry` keeps the
// rest for the next time, or small steps would add up to something else than the finger's way.
bool scroll(ImGuiWindow* window, int axis, float by, float& carry) {
  const float want = along(window->Scroll, axis) + by + carry;
  const float got = std::clamp(std::round(want), 0.0F, along(window->ScrollMax, axis));
  carry = want - got;
  const bool within = std::fabs(carry) <= 0.5F;
  if (!within) carry = 0.0F;
  // SetScroll takes effect in Begin; move it now too, so that steps within one frame add up.
  if (axis == 1) {
    ImGui::SetScrollY(window, got);
    window->Scroll.y = got;
  } else {
    ImGui::SetScrollX(window, got);
    window->Scroll.x = got;
  }
  return within;
}

}  // namespace

bool TouchMachine::touch(Touch phase, int finger, float x, float y, double time_ms) {
  by_touch_ = true;
  if (phase == Touch::start) {
    if (state_ != Is::idle) return false;      // a second finger
    finger_ = finger;
    start_x_ = last_x_ = x;
    start_y_ = last_y_ = y;
    start_ms_ = time_ms;
    sample_count_ = 0;
    wheel_left_ = 0;
    if (fling_) {                              // catching a coast is no tap, but may drag on
      fling_ = false;
      state_ = Is::pan;
      remember(time_ms, axis_ == 1 ? y : x);
      return false;
    }
    state_ = Is::waiting;
    mouse_at(x, y);
    return false;
  }
  if (state_ == Is::idle || finger != finger_) return false;
  if (phase == Touch::move) {
    const float dx = x - start_x_, dy = y - start_y_;
    if ((state_ == Is::waiting || state_ == Is::held) && dx * dx + dy * dy > kSlop * kSlop) begin_pan(x, y, time_ms);
    if (state_ == Is::pan) {
      pending_ -= axis_ == 1 ? y - last_y_ : x - last_x_;
      remember(time_ms, axis_ == 1 ? y : x);
    }
    last_x_ = x;
    last_y_ = y;
    return false;
  }
  const Is was = state_;
  state_ = Is::idle;
  if (was == Is::pan && phase == Touch::end) {
    velocity_ = -speed(time_ms);
    fling_ = std::fabs(velocity_) > kLeastFling;
    fling_ms_ = 0;
  }
  const bool tap = phase == Touch::end && (was == Is::waiting || was == Is::held);
  if (tap && was == Is::waiting) button(true);
  if (tap) {
    button(false);
    leave();
  } else if (was == Is::held) {                // cancelled: away first, so that lifting presses nothing
    leave();
    button(false);
  } else if (was == Is::waiting) {
    leave();
  }
  return tap;
}

void TouchMachine::begin_pan(float x, float y, double time_ms) {
  const bool was_held = state_ == Is::held;
  const float dx = x - start_x_, dy = y - start_y_;
  const int axis = std::fabs(dy) >= std::fabs(dx) ? 1 : 0;
  ImGuiWindow* window = scroller_at(start_x_, start_y_, axis);
  axis_ = axis;
  if (window == nullptr && axis == 0) {        // nothing goes sideways here: a slanted drag still scrolls
    window = scroller_at(start_x_, start_y_, 1);
    axis_ = 1;
  }
  leave();
  if (was_held) button(false);
  carry_ = 0;
  state_ = window != nullptr ? Is::pan : Is::nothing;
  window_ = window != nullptr ? window->ID : 0;
  pending_ = 0;
  // The content lags the finger by the slop only, however late this first move came.
  const float k = kSlop / std::sqrt(dx * dx + dy * dy);
  last_x_ = start_x_ + dx * k;
  last_y_ = start_y_ + dy * k;
  sample_count_ = 0;
  remember(std::min(start_ms_ + 1.0, time_ms), axis_ == 1 ? last_y_ : last_x_);
}

void TouchMachine::remember(double time_ms, float at) {
  if (sample_count_ == samples_.size()) {
    std::move(samples_.begin() + 1, samples_.end(), samples_.begin());
    --sample_count_;
  }
  samples_[sample_count_++] = {time_ms, at};
}

float TouchMachine::speed(double now_ms) const {
  std::size_t first = 0;
  while (first < sample_count_ && now_ms - samples_[first].time_ms > kSpeedSpanMs) ++first;
  if (sample_count_ - first < 2 || now_ms - samples_[sample_count_ - 1].time_ms > kStillMs) return 0.0F;
  const double span = samples_[sample_count_ - 1].time_ms - samples_[first].time_ms;
  if (span < 8.0) return 0.0F;
  return static_cast<float>(static_cast<double>(samples_[sample_count_ - 1].at - samples_[first].at) / span * 1000.0);
}

void TouchMachine::wheel(float x, float y, float dx, float dy) {
  const int axis = std::fabs(dx) > std::fabs(dy) ? 0 : 1;
  ImGuiWindow* window = scroller_at(x, y, axis);
  if (window == nullptr) return;
  if (window->ID != wheel_window_ || axis != wheel_axis_) wheel_left_ = 0;
  wheel_window_ = window->ID;
  wheel_axis_ = axis;
  wheel_left_ += axis == 1 ? dy : dx;
  fling_ = false;
}

void TouchMachine::scroll_by(std::uint32_t window, float dy) {
  if (window != wheel_window_ || wheel_axis_ != 1) wheel_left_ = 0;
  wheel_window_ = window;
  wheel_axis_ = 1;
  wheel_left_ += dy;
  fling_ = false;
}

void TouchMachine::before_frame(double now_ms) {
  if (state_ == Is::waiting && now_ms - start_ms_ >= kRestMs) {
    state_ = Is::held;
    button(true);
  }
}

void TouchMachine::after_new_frame(double now_ms, bool smooth) {
  if (fling_) {
    const double seconds = fling_ms_ > 0 ? std::clamp((now_ms - fling_ms_) / 1000.0, 0.0, 0.1) : 1.0 / 60.0;
    fling_ms_ = now_ms;
    const double decay = std::exp(-seconds / kFlingTau);
    pending_ += static_cast<float>(velocity_ * kFlingTau * (1.0 - decay));
    velocity_ = static_cast<float>(velocity_ * decay);
    if (std::fabs(velocity_) < kFlingEnd) fling_ = false;
  }
  if (pending_ != 0.0F) {
    ImGuiWindow* window = ImGui::FindWindowByID(window_);
    if (window == nullptr || !window->WasActive || !scroll(window, axis_, pending_, carry_)) fling_ = false;
    pending_ = 0;
  }
  if (wheel_left_ != 0.0F) {
    const double seconds = wheel_ms_ > 0 ? std::clamp((now_ms - wheel_ms_) / 1000.0, 0.001, 0.1) : 1.0 / 60.0;
    float step = wheel_left_;
    if (smooth && std::fabs(wheel_left_) > 1.0F) step *= static_cast<float>(1.0 - std::exp(-seconds / kWheelTau));
    wheel_left_ -= step;
    wheel_ms_ = wheel_left_ != 0.0F ? now_ms : 0.0;
    ImGuiWindow* window = ImGui::FindWindowByID(wheel_window_);
    if (window == nullptr || !window->WasActive || !scroll(window, wheel_axis_, step, carry_)) wheel_left_ = 0;
    if (wheel_left_ == 0.0F) wheel_ms_ = 0;
  }
}

bool TouchMachine::wants_frame() const {
  return state_ == Is::waiting || fling_ || pending_ != 0.0F || wheel_left_ != 0.0F;
}

void TouchMachine::stop() {
  fling_ = false;
  pending_ = 0;
  wheel_left_ = 0;
}

}  // namespace ui
