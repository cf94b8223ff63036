#include "app/route.h"

#include "app/places.h"

namespace app {

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

}  // namespace app
