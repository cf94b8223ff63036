// Colours of plus and minus by practice. A colour is a hint, never a proof: vehicles are rewired,
// and black is minus in one and plus in the next.
#pragma once

#include <span>
#include <string_view>

#include "tables/citation.h"
#include "tables/practice.h"

namespace tables {

struct ConductorColours {
  std::string_view key;          // stable key in files: "trailer-us", "boat-us", "vehicle-europe", ...
  std::string_view where;
  std::string_view plus;         // one colour for a sentence: "red"
  std::string_view minus;        // "yellow"
  std::string_view plus_words;   // all that is usual: "red, or a colour by what it feeds"
  std::string_view minus_words;
  std::string_view caution;      // what this practice is mistaken for
  std::string_view keywords;
  const Citation* citation;
};
std::span<const ConductorColours> conductor_colours();
const ConductorColours* conductor_colours_by_key(std::string_view key);   // nullptr when unknown
// The row to start with; what this vehicle really has may be another one.
const ConductorColours& conductor_colours_of(Practice practice);
// Where nobody told whose practice holds: red and black, as most wires have it.
const ConductorColours& conductor_colours_untold();

// Said wherever a colour is named.
inline constexpr std::string_view kTrustNoColour = "Colours are a hint: prove plus and minus with the meter.";

}  // namespace tables
