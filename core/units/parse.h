// Typed text to a number of a measure, or why not. Forgiving: decimal comma, spaces, units in any
// case, feet and inches ("10 ft 6 in", 10'6", 10.5ft), metres and centimetres. Never accepts half
// a text, an exponent, NaN, infinity, or "1,200", which two readers take for two numbers.
// A sign is accepted: whether a length may be negative is for the field's limit to say.
#pragma once

#include <cstdint>

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "units/format.h"
#include "units/measure.h"
#include "units/quantity.h"

namespace units {

struct Typed {
  std::optional<double> core;          // in the measure's core unit
  Measure measure = Measure::count;    // of those offered, the one that the unit names
  bool unit_told = false;              // false: a bare number, taken in the shown unit
  std::string why_not;                 // "Not a length. Type it as 3.2 m." ; empty when there is a value
};
Typed read(std::string_view text, Measure measure, Preference preference);
// A field that takes either of several ("5 A" or "60 W"): a bare number is of the first.
Typed read(std::string_view text, std::span<const Measure> offered, Preference preference);

// The same at doors that ask for a quantity.
template <class T>
struct Parsed {
  std::optional<T> value;
  std::string why_not;   // empty when there is a value
};
Parsed<double> parse_number(std::string_view text);
Parsed<Volts> parse_volts(std::string_view text);
Parsed<double> parse_percent(std::string_view text);       // "5" or "5 %" -> 0.05

// Digits and nothing else, as the app's own records and addresses write a number.
std::optional<std::uint32_t> parse_whole(std::string_view digits);

}  // namespace units
