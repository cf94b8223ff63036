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

Route Route::at_vehicle(std::uint32_t number) {
  Route route = at(Screen::circuits, Sheet::vehicle);
  route.stored = number;
  return route;
}

namespace {

Route of_vehicle(Sheet sheet, std::uint32_t vehicle, std::uint32_t part) {
  Route route = Route::at(Screen::circuits, sheet);
  route.stored = vehicle;
  route.part = part;
  return route;
}

}  // namespace

Route Route::at_circuit(CircuitRef circuit) { return of_vehicle(Sheet::stored, circuit.vehicle, circuit.circuit.number); }
Route Route::at_block(std::uint32_t vehicle, vehicle::BlockId block) { return of_vehicle(Sheet::block, vehicle, block.number); }
Route Route::at_source(std::uint32_t vehicle, vehicle::SourceId source) { return of_vehicle(Sheet::source, vehicle, source.number); }
Route Route::at_unread(std::uint32_t number) { return of_vehicle(Sheet::unread, number, 0); }

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
