// Where in the app we are: a place, and a sheet over it. How that is written as an address,
// app/places.h knows.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

#include "app/circuit_ref.h"

namespace app {

// Those of the bar first, in its order. Each has its row in wasm/screens/places/: one without does not compile.
enum class Screen : std::uint8_t { size, trace, quick, tables, cards, circuits, preferences, count };

// Each stands in the row of the place that it lies over: one that does not, or twice, does not compile.
enum class Sheet : std::uint8_t {
  none,
  outlet,      // of Size: one outlet
  why,         // one size, judged
  what_if,     // what the shop has, and what would make it fit
  place,       // where the wire lies
  supply,
  parts,
  reach,       // the question turned round
  label,       // the circuit's name, and its place in the vehicle
  built,       // what is there of it
  more,        // what else can be done with this circuit
  trace_why,   // of Trace: what each answer to this check would mean
  trace_answers,  // all so far
  trace_again, // an answer to take again, by number from 1
  trace_kept,  // a trace that was ended, by number
  trace_suspect,  // what speaks for and against it, by rank from 1
  trace_fitted,   // the wire and fuse that are there
  trace_more,
  how,         // of Quick: how it is worked out
  row,         // of Tables: one row in full
  vehicle,     // of Circuits: one vehicle, by its number
  stored,      // one circuit: its vehicle's number and its own
  block,       // one fuse block, in the same way
  source,      // one source
  unread,      // a record that can not be read, by number
  sources,     // of Preferences
  count,
};

struct Route {
  Screen screen = Screen::size;
  Sheet sheet = Sheet::none;
  circuit::OutletId outlet;        // Sheet::outlet
  std::string size;                // Sheet::why, Sheet::what_if: a conductor's id, or empty
  std::uint32_t stored = 0;        // a number in the address: of a vehicle, an answer, a record, a rank
  std::uint32_t part = 0;          // a second: what it is of that vehicle
  std::string key;                 // calculator, page, card or symptom; empty: the list of them
  std::string row;                 // Sheet::row, as address_word() writes its key

  // Sheet::stored: which circuit.
  [[nodiscard]] CircuitRef circuit() const { return {stored, vehicle::CircuitId{part}}; }
  friend bool operator==(const Route&, const Route&) = default;

  static Route at(Screen screen, Sheet sheet = Sheet::none);
  static Route at_outlet(circuit::OutletId outlet);
  static Route why(std::string_view conductor_id);
  static Route what_if(std::string_view conductor_id);
  static Route at_vehicle(std::uint32_t number);
  static Route at_circuit(CircuitRef circuit);
  static Route at_block(std::uint32_t vehicle, vehicle::BlockId block);
  static Route at_source(std::uint32_t vehicle, vehicle::SourceId source);
  static Route at_unread(std::uint32_t number);
  static Route quick(std::string_view calculator, Sheet sheet = Sheet::none);
  static Route page(std::string_view page, std::string_view row = {});
  static Route card(std::string_view card);
  static Route trace_start(std::string_view symptom);         // where? and go
  static Route trace_numbered(Sheet sheet, std::uint32_t number);
};

}  // namespace app
