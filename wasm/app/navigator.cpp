#include "app/navigator.h"

#include <algorithm>

#include "calculators/calculator.h"
#include "diagnosis/case.h"

namespace app {

Navigator::Navigator(platform::Host& host, const Notebook& notebook, Lookup& lookup, Messages& messages,
                     std::string_view start)
    : host_(host), notebook_(notebook), lookup_(lookup), messages_(messages), route_(existing(parse_route(start))),
      trail_{route_text(route_)} {
  if (start != trail_.back()) host_.replace_route(trail_.back());
  show_title();
}

// A sheet for something that is not there (a removed outlet, another circuit's) is not opened.
Route Navigator::existing(Route route) const {
  const Stored* open = notebook_.open();
  const bool about_circuit = route.screen == Screen::size && route.sheet != Sheet::none;
  if (about_circuit && open == nullptr) return route.parent();
  if (route.sheet == Sheet::outlet && circuit::find_outlet(*open->circuit, route.outlet) == nullptr)
    return route.parent();
  if (!is_there(route)) {
    Route above = route.parent();
    return is_there(above) ? above : above.parent();
  }
  if (route.sheet == Sheet::stored && notebook_.find(route.stored) == nullptr) return route.parent();
  return route;
}

bool Navigator::is_there(const Route& route) const {
  if (route.key.empty()) return route.screen != Screen::cards;
  if (route.screen == Screen::trace) return diagnosis::symptom_by_key(route.key) != nullptr;
  if (route.screen == Screen::quick) return calculators::calculator_by_key(route.key) != nullptr;
  if (route.screen == Screen::cards) return lookup_.make_book().card(route.key) != nullptr;
  if (route.screen != Screen::tables) return true;
  const reference::Page* page = lookup_.make_book().page(route.key);
  if (page == nullptr || route.sheet != Sheet::row) return page != nullptr;
  return std::any_of(page->rows.begin(), page->rows.end(),
                     [&](const reference::Row& row) { return address_word(row.key) == route.row; });
}

std::string Navigator::title() const {
  const Stored* open = notebook_.open();
  switch (route_.screen) {
    case Screen::size: return open != nullptr ? open->circuit->name : "Branchlight";
    case Screen::circuits: return "Circuits";
    case Screen::preferences: return "Preferences";
    case Screen::trace: return "Trace";
    case Screen::quick:
      if (const auto* calculator = calculators::calculator_by_key(route_.key)) return std::string(calculator->title);
      return "Quick";
    case Screen::tables:
      if (route_.key.empty()) return "Tables";
      if (const reference::Page* page = lookup_.make_book().page(route_.key)) return std::string(page->title);
      return "Tables";
    case Screen::cards:
      if (const reference::Card* card = lookup_.make_book().card(route_.key)) return std::string(card->title);
      return "Tables";
  }
  return "Branchlight";
}

void Navigator::show_title() { host_.set_title(title()); }

void Navigator::leave_what_is_gone() {
  const Route route = existing(route_);
  if (route == route_) return;
  if (step_back_to(route)) return;
  replace(route);
}

// Going to where we came from takes the last step back instead of making another: a sheet that was
// opened and closed leaves no step.
bool Navigator::step_back_to(const Route& route) {
  const bool was_before = trail_.size() > 1 && trail_[trail_.size() - 2] == route_text(route);
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
  trail_.push_back(route_text(route));
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
  trail_.back() = route_text(route);
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
  replace(route_.parent());
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
  const Route route = existing(parse_route(text));
  const std::string address = route_text(route);
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
