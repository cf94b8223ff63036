// Typed text to a quantity, or why not. Forgiving: decimal comma, spaces, units in any case,
// feet and inches ("10 ft 6 in", 10'6", 10.5ft), metres and centimetres. Never accepts half a
// text, an exponent, NaN, infinity, or "1,200", which two readers take for two numbers.
// A sign is accepted: whether a length may be negative is for the field's limit to say.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "units/format.h"
#include "units/quantity.h"

namespace units {

template <class T>
struct Parsed {
  std::optional<T> value;
  std::string why_not;   // "Not a number." with what is expected; empty when there is a value
};
Parsed<double> parse_number(std::string_view text);
Parsed<Metres> parse_length(std::string_view text, Preference bare_number_unit);   // bare: metres or feet
Parsed<Amperes> parse_amperes(std::string_view text);
Parsed<Watts> parse_watts(std::string_view text);
Parsed<Volts> parse_volts(std::string_view text);
Parsed<double> parse_percent(std::string_view text);       // "5" or "5 %" -> 0.05
Parsed<Celsius> parse_celsius(std::string_view text, Preference bare_number_unit);

}  // namespace units
