#include "app/navigator.h"

namespace app {

Navigator::Navigator(platform::Host& host, const Places& places, const Contents& contents, Messages& messages,
                     std::string_view start)
    : host_(host), places_(places), contents_(contents), messages_(messages), route_(existing(places.read(start))),
      trail_{places.address(route_)} {
  if (start != trail_.back()) host_.replace_route(trail_.back());
  show_title();
}

// What is not there (a removed outlet, another circuit's) is not opened: what it would lie over is.
Route Navigator::existing(Route route) const {
  while (!places_.at(route.screen).is_there(contents_, route)) {
    const Route below = places_.parent(route);
    if (below == route) break;
    route = below;
  }
  return route;
}

void Navigator::show_title() { host_.set_title(places_.at(route_.screen).title(contents_, route_)); }

void Navigator::leave_what_is_gone() {
  const Route route = existing(route_);
  if (route == route_) return;
  if (step_back_to(route)) return;
  replace(route);
}

// Going to where we came from takes the last step back instead of making another: a sheet that was
// opened and closed leaves no step.
bool Navigator::step_back_to(const Route& route) {
  const bool was_before = trail_.size() > 1 && trail_[trail_.size() - 2] == places_.address(route);
  if (!was_before || layer_step_) return false;
  trail_.pop_back();
  route_ = route;
  taking_back_ = true;
  messages_.clear_problem();
  host_.go_back();
  show_title();
  host_.wake();
  return true;
}

void Navigator::go(const Route& wanted) {
  const Route route = existing(wanted);
  if (route == route_) return;
  messages_.dismiss_toast();
  if (step_back_to(route)) return;
  if (route_.sheet != Sheet::none && route.sheet == Sheet::none) return replace(route);
  route_ = route;
  trail_.push_back(places_.address(route));
  messages_.clear_problem();
  if (layer_step_) host_.replace_route(trail_.back());
  else host_.push_route(trail_.back());
  layer_step_ = false;
  show_title();
  host_.wake();
}

void Navigator::replace(const Route& wanted) {
  const Route route = existing(wanted);
  if (route == route_) return;
  route_ = route;
  trail_.back() = places_.address(route);
  messages_.clear_problem();
  host_.replace_route(trail_.back());
  show_title();
  host_.wake();
}

// Steps we made are taken back through the host, so that its own back gesture and ours are
// the same thing. Where the app was opened at a sheet's address there is none to take back.
void Navigator::back() {
  if (trail_.size() > 1) {
    host_.go_back();
    return;
  }
  messages_.dismiss_toast();
  replace(places_.parent(route_));
}

void Navigator::layers_over(std::size_t count) {
  if (count > 0 && !layer_step_) {
    layer_step_ = true;
    host_.push_route(trail_.back());
  } else if (count == 0 && layer_step_) {
    layer_step_ = false;
    taking_back_ = true;
    host_.go_back();
  }
}

bool Navigator::route_changed(std::string_view text) {
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
  const Route route = existing(places_.read(text));
  const std::string address = places_.address(route);
  if (!text.empty() && text.front() == '#') text.remove_prefix(1);
  if (trail_.size() > 1 && trail_[trail_.size() - 2] == text) trail_.pop_back();
  else if (trail_.back() != text) trail_.push_back(std::string(text));
  trail_.back() = address;
  if (address != text) host_.replace_route(address);
  if (!(route == route_)) {
    messages_.clear_problem();
    messages_.dismiss_toast();
  }
  route_ = route;
  show_title();
  host_.wake();
  return false;
}

}  // namespace app
