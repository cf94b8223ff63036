#include "app/route.h"

#include <array>
#include <charconv>
#include <optional>

#include "tables/conductor.h"

namespace app {
namespace {

struct SheetWord {
  Screen screen;
  Sheet sheet;
  std::string_view word;
};
constexpr std::array<SheetWord, 17> kSheets{{
    {Screen::size, Sheet::outlet, "outlet"},
    {Screen::size, Sheet::why, "why"},
    {Screen::size, Sheet::what_if, "what-if"},
    {Screen::size, Sheet::place, "place"},
    {Screen::size, Sheet::supply, "supply"},
    {Screen::size, Sheet::parts, "parts"},
    {Screen::size, Sheet::reach, "reach"},
    {Screen::size, Sheet::label, "label"},
    {Screen::size, Sheet::more, "more"},
    {Screen::preferences, Sheet::sources, "sources"},
    {Screen::trace, Sheet::trace_why, "why"},
    {Screen::trace, Sheet::trace_answers, "answers"},
    {Screen::trace, Sheet::trace_again, "again"},
    {Screen::trace, Sheet::trace_kept, "record"},
    {Screen::trace, Sheet::trace_suspect, "suspect"},
    {Screen::trace, Sheet::trace_fitted, "fitted"},
    {Screen::trace, Sheet::trace_more, "more"},
}};

struct ScreenWord {
  Screen screen;
  std::string_view word;
};
constexpr std::array<ScreenWord, 7> kScreens{{
    {Screen::size, "size"}, {Screen::circuits, "circuits"}, {Screen::preferences, "preferences"},
    {Screen::quick, "quick"}, {Screen::tables, "tables"}, {Screen::cards, "cards"},
    {Screen::trace, "trace"}}};

std::string_view screen_word(Screen screen) {
  for (const ScreenWord& known : kScreens)
    if (known.screen == screen) return known.word;
  return "size";
}

std::string_view sheet_word(Sheet sheet) {
  for (const SheetWord& known : kSheets)
    if (known.sheet == sheet) return known.word;
  return {};
}

std::string_view take_part(std::string_view& rest) {
  const std::size_t slash = rest.find('/');
  const std::string_view part = rest.substr(0, slash);
  rest = slash == std::string_view::npos ? std::string_view{} : rest.substr(slash + 1);
  return part;
}

std::optional<std::uint32_t> positive_number(std::string_view text) {
  std::uint32_t number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size() || number == 0) return std::nullopt;
  return number;
}

std::string size_from_word(std::string_view word) {
  for (const tables::GaugeSystem system : {tables::GaugeSystem::awg, tables::GaugeSystem::metric})
    for (const tables::Conductor& size : tables::conductors(system))
      if (address_word(size.id) == word) return std::string(size.id);
  return {};
}

std::optional<Route> parse_size_sheet(std::string_view word, std::string_view rest) {
  Route route;
  for (const SheetWord& known : kSheets)
    if (known.screen == Screen::size && known.word == word) route.sheet = known.sheet;
  if (route.sheet == Sheet::none) return std::nullopt;
  if (route.sheet == Sheet::outlet) {
    const auto number = positive_number(rest);
    if (!number) return std::nullopt;
    return Route::at_outlet(circuit::OutletId{*number});
  }
  if (route.sheet == Sheet::why || route.sheet == Sheet::what_if) {
    route.size = size_from_word(rest);
    const bool may_be_bare = route.sheet == Sheet::what_if && rest.empty();
    if (route.size.empty() && !may_be_bare) return std::nullopt;
    return route;
  }
  return rest.empty() ? std::optional(route) : std::nullopt;
}

// Trace's sheets with a number in the address.
bool numbered(Sheet sheet) {
  return sheet == Sheet::trace_again || sheet == Sheet::trace_kept || sheet == Sheet::trace_suspect;
}

Route parse_trace(std::string_view word, std::string_view rest) {
  const Route above = Route::at(Screen::trace);
  if (word == "start") return Route::trace_start(rest);
  for (const SheetWord& known : kSheets) {
    if (known.screen != Screen::trace || known.word != word) continue;
    if (!numbered(known.sheet)) return rest.empty() ? Route::at(Screen::trace, known.sheet) : above;
    const auto number = positive_number(rest);
    return number ? Route::trace_numbered(known.sheet, *number) : above;
  }
  return above;
}

// What is there of that name, the app looks up: an address only has a shape.
Route parse_reference(std::string_view screen, std::string_view rest) {
  const std::string_view key = take_part(rest);
  if (key.empty()) return parse_route(screen == "cards" ? "tables" : screen);
  if (screen == "cards") return rest.empty() ? Route::card(key) : Route::at(Screen::tables);
  if (screen == "quick") return Route::quick(key, rest == "how" ? Sheet::how : Sheet::none);
  if (key == "how") return Route::card(rest);
  return Route::page(key, rest);
}

}  // namespace

std::string address_word(std::string_view key) {
  std::string word(key);
  for (char& c : word)
    if (c == '/') c = '-';
  return word;
}

Route Route::at(Screen screen, Sheet sheet) {
  Route route;
  route.screen = screen;
  route.sheet = sheet;
  return route;
}

Route Route::at_outlet(circuit::OutletId outlet) {
  Route route = at(Screen::size, Sheet::outlet);
  route.outlet = outlet;
  return route;
}

Route Route::why(std::string_view conductor_id) {
  Route route = at(Screen::size, Sheet::why);
  route.size = conductor_id;
  return route;
}

Route Route::what_if(std::string_view conductor_id) {
  Route route = at(Screen::size, Sheet::what_if);
  route.size = conductor_id;
  return route;
}

Route Route::at_stored(std::uint32_t number) {
  Route route = at(Screen::circuits, Sheet::stored);
  route.stored = number;
  return route;
}

Route Route::quick(std::string_view calculator, Sheet sheet) {
  Route route = at(Screen::quick, sheet);
  route.key = calculator;
  return route;
}

Route Route::page(std::string_view page, std::string_view row) {
  Route route = at(Screen::tables, row.empty() ? Sheet::none : Sheet::row);
  route.key = page;
  route.row = address_word(row);
  return route;
}

Route Route::card(std::string_view card) {
  Route route = at(Screen::cards);
  route.key = card;
  return route;
}

Route Route::trace_start(std::string_view symptom) {
  Route route = at(Screen::trace);
  route.key = symptom;
  return route;
}

Route Route::trace_numbered(Sheet sheet, std::uint32_t number) {
  Route route = at(Screen::trace, sheet);
  route.stored = number;
  return route;
}

Route Route::parent() const {
  if (sheet == Sheet::row) return page(key);
  if (sheet == Sheet::how) return quick(key);
  if (screen == Screen::cards) return at(Screen::tables);
  if (!key.empty()) return at(screen);
  return at(sheet == Sheet::none ? Screen::size : screen);
}

Route parse_route(std::string_view text) {
  if (!text.empty() && text.front() == '#') text.remove_prefix(1);
  const std::string_view first = take_part(text);
  if (text.empty()) {
    for (const ScreenWord& known : kScreens)
      if (known.word == first) return Route::at(known.screen);
    return {};
  }
  if (first == "circuits") {
    const auto number = positive_number(text);
    return number ? Route::at_stored(*number) : Route::at(Screen::circuits);
  }
  if (first == "quick" || first == "tables" || first == "cards") return parse_reference(first, text);
  const std::string_view second = take_part(text);
  if (first == "trace") return parse_trace(second, text);
  if (first == "preferences")
    return Route::at(Screen::preferences, second == "sources" && text.empty() ? Sheet::sources : Sheet::none);
  if (first == "size") return parse_size_sheet(second, text).value_or(Route{});
  return {};
}

std::string route_text(const Route& route) {
  std::string text(screen_word(route.screen));
  if (route.screen == Screen::trace && !route.key.empty()) text += "/start";
  if (!route.key.empty()) text.append("/").append(route.key);
  switch (route.sheet) {
    case Sheet::none: return text;
    case Sheet::how: return text.append("/how");
    case Sheet::row: return text.append("/").append(route.row);
    case Sheet::stored: return text.append("/").append(std::to_string(route.stored));
    case Sheet::outlet: return text.append("/outlet/").append(std::to_string(route.outlet.number));
    default: break;
  }
  text += "/";
  text += sheet_word(route.sheet);
  if (!route.size.empty()) text.append("/").append(address_word(route.size));
  if (route.stored != 0) text.append("/").append(std::to_string(route.stored));
  return text;
}

}  // namespace app
