// Where in the app we are, as the address after '#' says it: a screen, and a sheet over it.
// "size", "size/outlet/3", "size/why/10awg", "size/what-if/12awg", "circuits/2", "preferences",
// "quick/drop-of-a-run", "tables/wire/10awg", "cards/crimp" (also "tables/how/crimp"),
// "trace", "trace/start/one-dead", "trace/record/2".
// Anything else reads as the Size screen.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "circuit/circuit.h"

namespace app {

enum class Screen : std::uint8_t { size, circuits, preferences, quick, tables, cards, trace };

enum class Sheet : std::uint8_t {
  none,
  outlet,      // size/outlet/<number>
  why,         // size/why/<conductor id>
  what_if,     // size/what-if or size/what-if/<conductor id in hand>
  place,       // size/place: where the wire lies
  supply,      // size/supply
  parts,       // size/parts
  reach,       // size/reach: the question turned round
  label,       // size/label: the circuit's name, place and fuse position
  more,        // size/more: what else can be done with this circuit
  stored,      // circuits/<number>: one stored circuit
  sources,     // preferences/sources
  how,         // quick/<calculator>/how: how it is worked out
  row,         // tables/<page>/<row>
  trace_why,   // trace/why: what each answer to this check would mean
  trace_answers,  // trace/answers: all so far
  trace_again, // trace/again/<number>: an answer to take again, from 1
  trace_kept,  // trace/record/<number>: a trace that was ended
  trace_suspect, // trace/suspect/<number>: what speaks for and against it, by rank from 1
  trace_fitted,  // trace/fitted: the wire and fuse that are there
  trace_more,  // trace/more
};

struct Route {
  Screen screen = Screen::size;
  Sheet sheet = Sheet::none;
  circuit::OutletId outlet;        // Sheet::outlet
  std::string size;                // Sheet::why, Sheet::what_if
  std::uint32_t stored = 0;        // Sheet::stored, trace_again, trace_kept: the number in the address
  std::string key;                 // calculator, page or card; empty: the list of them
  std::string row;                 // Sheet::row, as address_word() writes its key

  friend bool operator==(const Route&, const Route&) = default;

  static Route at(Screen screen, Sheet sheet = Sheet::none);
  static Route at_outlet(circuit::OutletId outlet);
  static Route why(std::string_view conductor_id);
  static Route what_if(std::string_view conductor_id);
  static Route at_stored(std::uint32_t number);
  static Route quick(std::string_view calculator, Sheet sheet = Sheet::none);
  static Route page(std::string_view page, std::string_view row = {});
  static Route card(std::string_view card);
  static Route trace_start(std::string_view symptom);         // where? and go
  static Route trace_numbered(Sheet sheet, std::uint32_t number);
  // The screen below the sheet, the list below one of it; Size below any other screen.
  [[nodiscard]] Route parent() const;
};

Route parse_route(std::string_view text);   // never fails; a leading '#' is fine
std::string route_text(const Route& route); // no '#'
// A key as one part of an address: '1/0awg' is '1-0awg', for the slash parts the address.
std::string address_word(std::string_view key);

}  // namespace app
