// Quantities as people write them: rounded as the trade rounds, unit after a space, a real
// minus sign never (plain '-', so that it can be typed back). All rounding for people is here.
// Never an exponent, never "-0". Not a number shows as "?", infinity as "∞".
#pragma once

#include <string>
#include <string_view>

#include "units/quantity.h"

namespace units {

enum class Preference { metric, us };

std::string volts_text(Volts v);               // "12.2 V", "12.0 V", as a meter reads; below 1 V "0.36 V"
std::string amperes_text(Amperes i);           // "15 A", "7.5 A", "0.3 A": three significant digits, or whole
std::string watts_text(Watts p);
std::string ohms_text(Ohms r);                 // "3.3 mΩ", "28.8 Ω"
std::string seconds_text(Seconds t);           // "0.15 s", "10 min"
std::string percent_text(double fraction);     // 0.046 -> "4.6 %"
std::string celsius_text(Celsius t, Preference preference);        // "50 °C", "122 °F"
std::string length_text(Metres l, Preference preference);          // "3.2 m", "0.08 m" ; "10 ft 6 in", "9 in"
std::string short_length_text(Metres l, Preference preference);    // "75 mm", "3 in"
std::string area_text(SquareMillimetres a);    // "5.3 mm²", "107 mm²"
std::string ohms_per_length_text(OhmsPerMetre r, Preference preference);   // "3.28 mΩ/m", "1 mΩ/ft"
std::string gauge_text(double awg);            // "10 AWG"; "1/0 AWG" for 0; between two sizes "10.4"
std::string number_text(double number, int significant_digits);    // no trailing zeros, no exponent, no "-0"

}  // namespace units
