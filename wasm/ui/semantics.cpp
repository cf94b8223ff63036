#include "ui/semantics.h"

#include <algorithm>
#include <cstddef>
#include <utility>

#include "ui/recorder.h"

namespace ui {

bool opens(Role role) {
  return role == Role::dialog || role == Role::list || role == Role::group || role == Role::navigation;
}

bool can_focus(const Record& record) {
  if ((record.state & kDisabled) != 0U) return false;
  switch (record.role) {
    case Role::button:
    case Role::link:
    case Role::checkbox:
    case Role::switch_:
    case Role::radio:
    case Role::spin:
    case Role::textbox: return true;
    default: return false;
  }
}

void Recorder::begin_frame() {
  building_.clear();
  ids_.clear();
}

std::size_t Recorder::add(Record record) {
  building_.push_back(std::move(record));
  return building_.size() - 1;
}

void Recorder::move_from(std::size_t first, std::size_t to) {
  if (to >= first || first >= building_.size()) return;
  const auto at = [this](std::size_t index) { return building_.begin() + static_cast<std::ptrdiff_t>(index); };
  std::rotate(at(to), at(first), building_.end());
}

void Recorder::end() {
  Record record;
  record.role = Role::end;
  building_.push_back(std::move(record));
}

void Recorder::end_frame(std::optional<std::pair<std::size_t, std::size_t>> dialog, std::size_t over) {
  finished_.clear();
  if (dialog) {
    for (std::size_t i = 0; i < building_.size(); ++i) {
      const bool inside = i >= dialog->first && i < dialog->second;
      const bool above = i >= over;
      const bool announced = building_[i].role == Role::status || building_[i].role == Role::alert;
      if (inside || above || announced) finished_.push_back(building_[i]);
    }
  } else {
    finished_.swap(building_);
  }
  // Nobody took it in two frames: the widget is gone.
  for (Waiting& waiting : actions_) ++waiting.frames;
  std::erase_if(actions_, [](const Waiting& waiting) { return waiting.frames >= 2; });
}

const Record* Recorder::find(std::uint32_t id) const {
  const auto found = std::find_if(finished_.begin(), finished_.end(), [id](const Record& r) { return r.id == id; });
  return id == 0 || found == finished_.end() ? nullptr : &*found;
}

std::uint32_t Recorder::unique(std::uint32_t id) {
  while (id == 0 || std::find(ids_.begin(), ids_.end(), id) != ids_.end()) id = id * 31U + 17U;
  ids_.push_back(id);
  return id;
}

void Recorder::queue(Action action) {
  const bool press = action.kind == Action::Kind::press;
  if (press || action.kind == Action::Kind::focus) scroll_to = action.id;
  actions_.push_back({std::move(action), 0});
}

bool Recorder::take_press(std::uint32_t id) {
  return std::erase_if(actions_, [id](const Waiting& waiting) {
           return waiting.action.id == id && waiting.action.kind == Action::Kind::press;
         }) > 0;
}

std::optional<std::string> Recorder::take_text(std::uint32_t id) {
  std::optional<std::string> text;
  std::erase_if(actions_, [&](Waiting& waiting) {
    if (waiting.action.id != id || waiting.action.kind != Action::Kind::set_text) return false;
    text = std::move(waiting.action.text);
    return true;
  });
  return text;
}

int Recorder::take_steps(std::uint32_t id) {
  int steps = 0;
  std::erase_if(actions_, [&](const Waiting& waiting) {
    const bool up = waiting.action.kind == Action::Kind::step_up;
    const bool down = waiting.action.kind == Action::Kind::step_down;
    if (waiting.action.id != id || !(up || down)) return false;
    steps += up ? 1 : -1;
    return true;
  });
  return steps;
}

void Recorder::take_focus_actions() {
  std::erase_if(actions_, [&](const Waiting& waiting) {
    if (waiting.action.kind == Action::Kind::focus) {
      focused = waiting.action.id;
      focus_visible = true;
      return true;
    }
    if (waiting.action.kind == Action::Kind::blur) {
      if (focused == waiting.action.id) focused = 0;
      return true;
    }
    return false;
  });
}

void Recorder::move_focus(int by) {
  std::vector<std::uint32_t> stops;
  for (const Record& record : finished_) {
    if (can_focus(record)) stops.push_back(record.id);
  }
  if (stops.empty()) return;
  const auto here = std::find(stops.begin(), stops.end(), focused);
  const auto count = static_cast<std::ptrdiff_t>(stops.size());
  std::ptrdiff_t next = by > 0 ? 0 : count - 1;
  if (here != stops.end()) next = ((here - stops.begin()) + by + count) % count;
  focused = stops[static_cast<std::size_t>(next)];
  focus_visible = true;
  scroll_to = focused;
}

}  // namespace ui
