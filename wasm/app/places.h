// The places of the app as far as addresses go, and the addresses themselves: read, written, and what
// lies below each. The rows come from wasm/screens, one file a place; here is what they mean.
//
//   size                     a place
//   quick/drop-of-a-run      a place with a key: a calculator, a page, a card
//   trace/start/one-dead     the same after a word of its own
//   size/outlet/3            a sheet over it, with what it is about
//   quick/drop-of-a-run/how  a sheet over a place with a key
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "app/route.h"

namespace app {

class Notebook;
class Lookup;

// What follows a place's word in an address, before any sheet.
enum class KeyForm : std::uint8_t {
  none,
  listed,     // nothing, or a key: the list, or one of it
  always,     // a key
  started,    // nothing, or "start/" and a key
};

// What follows a sheet's word.
enum class Argument : std::uint8_t {
  none,
  outlet,     // Route::outlet
  size,       // Route::size
  maybe_size, // that or nothing
  number,     // Route::stored, from 1
  pair,       // Route::stored and Route::part, both from 1
  row,        // Route::row
};

// What is worked out before a place is drawn.
enum class Work : std::uint8_t { nothing, sizing, book, trace };

// What a place may look at, to say whether a thing of its is there and what it is called.
struct Contents {
  const Notebook& notebook;
  Lookup& lookup;
};

struct PlaceAddress {
  Screen screen;
  std::string_view word;
  std::string_view also;                // another beginning that means the same: "tables/how"; empty: none
  KeyForm key;
  Screen above;                         // where back leads, where no step led here
  Work shows;
  bool (*is_there)(const Contents& contents, const Route& route);
  std::string (*title)(const Contents& contents, const Route& route);   // of the page in the browser
};

struct SheetAddress {
  Screen over = Screen::size;
  Sheet sheet = Sheet::none;
  std::string_view word{};              // empty: the argument follows the place at once
  Argument argument = Argument::none;
};

class Places {
 public:
  // `places` in the order of Screen, one for each.
  constexpr Places(std::span<const PlaceAddress> places, std::span<const SheetAddress> sheets)
      : places_(places), sheets_(sheets) {}

  [[nodiscard]] const PlaceAddress& at(Screen screen) const { return places_[static_cast<std::size_t>(screen)]; }
  // Never fails: an address that means nothing is read as the nearest place above it, at last as Size.
  // A leading '#' is fine. What is there of that key or number, is_there() tells: an address only has a shape.
  [[nodiscard]] Route read(std::string_view address) const;
  [[nodiscard]] std::string address(const Route& route) const;   // no '#'
  // The place below the sheet, the list below one of it, the place above any other.
  [[nodiscard]] Route parent(const Route& route) const;

 private:
  [[nodiscard]] const PlaceAddress* place_in(std::string_view& rest) const;
  [[nodiscard]] std::optional<Route> with_sheet(const Route& place, std::string_view rest) const;

  std::span<const PlaceAddress> places_;
  std::span<const SheetAddress> sheets_;
};

// A key as one part of an address: '1/0awg' is '1-0awg', for the slash parts the address.
std::string address_word(std::string_view key);

}  // namespace app
