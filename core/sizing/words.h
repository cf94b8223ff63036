// Plain words for sentences: sizes, places, lists. No rounding of its own: units/format does it.
#pragma once

#include <string>
#include <string_view>

#include "circuit/circuit.h"
#include "sizing/answer.h"
#include "tables/conductor.h"

namespace sizing {

std::string size_text(const tables::Conductor& size);             // "10 AWG", "2.5 mm²"
std::string fuse_text(units::Amperes rating);                     // "15 A fuse"
std::string outlet_text(std::size_t index);                       // "C"
std::string set_by_words(Criterion criterion);                    // "voltage drop", "the fuse"
std::string current_text(units::Amperes current);                 // as felt: at most three digits
std::string rough_current_text(units::Amperes current);           // for telling, not for working out: "10 A" for 9.97 A
std::string exact_current_text(units::Amperes current);           // where a product is worked out from it
std::string without_capital(std::string_view name);               // within a sentence: "blade fuse"
std::string capital(std::string sentence);                        // first letter, ASCII only

}  // namespace sizing
