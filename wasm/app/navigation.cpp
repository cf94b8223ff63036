// Where we are and how we got there: AppState's part that keeps the address, the back
// gesture and the screen in step.
#include "app/app_state.h"

namespace app {

// A sheet for something that is not there (a removed outlet, another circuit's) is not opened.
Route AppState::existing(Route route) const {
  const bool about_circuit = route.screen == Screen::size && route.sheet != Sheet::none;
  if (about_circuit && !has_circuit()) return route.parent();
  if (route.sheet == Sheet::outlet && circuit::find_outlet(circuit(), route.outlet) == nullptr)
    return route.parent();
  if (!is_there(route)) {
    Route above = route.parent();
    return is_there(above) ? above : above.parent();
  }
  if (route.sheet == Sheet::stored && notebook_.find(route.stored) == nullptr) return route.parent();
  return route;
}

void AppState::show_title() {
  std::string title = "Branchlight";
  if (route_.screen == Screen::circuits) title = "Circuits";
  else if (route_.screen == Screen::preferences) title = "Preferences";
  else if (const std::string found = lookup_title(); !found.empty()) title = found;
  else if (has_circuit()) title = circuit().name;
  host_.set_title(title);
}

// After an edit the place may be gone: the address follows without a new step.
void AppState::land_on(const Route& route) {
  if (route == route_) return;
  if (step_back_to(route)) return;
  replace_route(route);
}

// Where the step before was the wanted place, it is taken back rather than another one made:
// what opened and closed a sheet leaves no trace.
bool AppState::step_back_to(const Route& route) {
  const bool was_before = trail_.size() > 1 && trail_[trail_.size() - 2] == route_text(route);
  if (!was_before || layer_step_) return false;
  trail_.pop_back();
  route_ = route;
  taking_back_ = true;
  problem_.clear();
  host_.go_back();
  show_title();
  host_.wake();
  return true;
}

void AppState::go(const Route& wanted) {
  const Route route = existing(wanted);
  if (route == route_) return;
  toast_.reset();
  if (step_back_to(route)) return;
  if (route_.sheet != Sheet::none && route.sheet == Sheet::none) return replace_route(route);
  route_ = route;
  trail_.push_back(route_text(route));
  problem_.clear();
  if (layer_step_) host_.replace_route(trail_.back());
  else host_.push_route(trail_.back());
  layer_step_ = false;
  show_title();
  host_.wake();
}

void AppState::replace_route(const Route& wanted) {
  const Route route = existing(wanted);
  if (route == route_) return;
  route_ = route;
  trail_.back() = route_text(route);
  problem_.clear();
  host_.replace_route(trail_.back());
  show_title();
  host_.wake();
}

// Steps we made are taken back through the host, so that its own back gesture and ours are
// the same thing. Where the app was opened at a sheet's address there is none to take back.
void AppState::back() {
  if (trail_.size() > 1) {
    host_.go_back();
    return;
  }
  toast_.reset();
  replace_route(route_.parent());
}

void AppState::layers_over(std::size_t count) {
  if (count > 0 && !layer_step_) {
    layer_step_ = true;
    host_.push_route(trail_.back());
  } else if (count == 0 && layer_step_) {
    layer_step_ = false;
    taking_back_ = true;
    host_.go_back();
  }
}

bool AppState::route_changed(std::string_view text) {
  if (taking_back_) {
    taking_back_ = false;
    if (text != trail_.back()) host_.replace_route(trail_.back());
    return false;
  }
  if (layer_step_) {
    layer_step_ = false;
    host_.wake();
    return true;
  }
  const Route route = existing(parse_route(text));
  const std::string address = route_text(route);
  if (!text.empty() && text.front() == '#') text.remove_prefix(1);
  if (trail_.size() > 1 && trail_[trail_.size() - 2] == text) trail_.pop_back();
  else if (trail_.back() != text) trail_.push_back(std::string(text));
  trail_.back() = address;
  if (address != text) host_.replace_route(address);
  if (!(route == route_)) {
    problem_.clear();
    toast_.reset();
  }
  route_ = route;
  show_title();
  host_.wake();
  return false;
}

}  // namespace app
