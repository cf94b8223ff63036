#include "app/places.h"

#include "app/lines.h"
#include "tables/conductor.h"

namespace app {
namespace {

constexpr std::string_view kStart = "start";

std::string size_from_word(std::string_view word) {
  for (const tables::GaugeSystem system : tables::gauge_systems())
    for (const tables::Conductor& size : tables::conductors(system))
      if (address_word(size.id) == word) return std::string(size.id);
  return {};
}

bool read_pair(std::string_view text, Route& route) {
  const auto first = counted_number(take_part(text, '/'));
  const auto second = counted_number(text);
  route.stored = first.value_or(0);
  route.part = second.value_or(0);
  return first && second;
}

// False: it does not go with this sheet.
bool read_argument(Argument argument, std::string_view text, Route& route) {
  const auto number = counted_number(text);
  switch (argument) {
    case Argument::none: return text.empty();
    case Argument::outlet: route.outlet = circuit::OutletId{number.value_or(0)}; return number.has_value();
    case Argument::number: route.stored = number.value_or(0); return number.has_value();
    case Argument::size: route.size = size_from_word(text); return !route.size.empty();
    case Argument::maybe_size: route.size = size_from_word(text); return text.empty() || !route.size.empty();
    case Argument::pair: return read_pair(text, route);
    case Argument::row: route.row = address_word(text); return !text.empty();
  }
  return false;
}

std::string argument_text(Argument argument, const Route& route) {
  switch (argument) {
    case Argument::none: break;
    case Argument::outlet: return std::to_string(route.outlet.number);
    case Argument::number: return std::to_string(route.stored);
    case Argument::pair: return std::to_string(route.stored) + "/" + std::to_string(route.part);
    case Argument::size:
    case Argument::maybe_size: return address_word(route.size);
    case Argument::row: return route.row;
  }
  return {};
}

void add_part(std::string& address, std::string_view part) {
  if (!part.empty()) address.append("/").append(part);
}

// The key, taken off the rest of the address. False: the address ends at the place.
bool take_key(KeyForm form, std::string_view& rest, Route& route) {
  std::string_view after = rest;
  switch (form) {
    case KeyForm::none: return true;
    case KeyForm::started:
      if (take_part(after, '/') != kStart) return true;
      route.key = after;
      rest = {};
      return false;
    case KeyForm::listed:
    case KeyForm::always: route.key = take_part(rest, '/'); break;
  }
  return !route.key.empty();
}

}  // namespace

std::string address_word(std::string_view key) {
  std::string word(key);
  for (char& c : word)
    if (c == '/') c = '-';
  return word;
}

// Takes the place's word off, too.
const PlaceAddress* Places::place_in(std::string_view& rest) const {
  for (const PlaceAddress& place : places_) {
    const bool also = !place.also.empty() && rest.starts_with(place.also) && rest.size() > place.also.size() &&
                      rest[place.also.size()] == '/';
    if (!also) continue;
    rest.remove_prefix(place.also.size() + 1);
    return &place;
  }
  const std::string_view word = take_part(rest, '/');
  for (const PlaceAddress& place : places_)
    if (place.word == word) return &place;
  return nullptr;
}

std::optional<Route> Places::with_sheet(const Route& place, std::string_view rest) const {
  for (const SheetAddress& each : sheets_) {
    if (each.over != place.screen) continue;
    std::string_view text = rest;
    if (!each.word.empty() && take_part(text, '/') != each.word) continue;
    Route route = place;
    route.sheet = each.sheet;
    if (read_argument(each.argument, text, route)) return route;
  }
  return std::nullopt;
}

Route Places::read(std::string_view address) const {
  if (!address.empty() && address.front() == '#') address.remove_prefix(1);
  const PlaceAddress* place = place_in(address);
  if (place == nullptr) return {};
  Route route = Route::at(place->screen);
  if (address.empty() || !take_key(place->key, address, route) || address.empty()) return route;
  return with_sheet(route, address).value_or(route);
}

std::string Places::address(const Route& route) const {
  const PlaceAddress& place = at(route.screen);
  std::string text(place.word);
  if (place.key == KeyForm::started && !route.key.empty()) add_part(text, kStart);
  add_part(text, route.key);
  for (const SheetAddress& each : sheets_) {
    if (each.over != route.screen || each.sheet != route.sheet) continue;
    add_part(text, each.word);
    add_part(text, argument_text(each.argument, route));
  }
  return text;
}

Route Places::parent(const Route& route) const {
  const PlaceAddress& place = at(route.screen);
  Route below = Route::at(route.screen);
  if (route.sheet != Sheet::none) {
    below.key = route.key;
    return below;
  }
  return route.key.empty() || place.key == KeyForm::always ? Route::at(place.above) : below;
}

}  // namespace app
