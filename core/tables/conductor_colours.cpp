#include "tables/conductor_colours.h"

#include <array>

#include "tables/citation_list.h"
#include "tables/row_by_key.h"

namespace tables {
namespace {

constinit const std::array<ConductorColours, 6> kColours{{
    {"trailer-us", "Trailers, house side, North America", "black", "white", "black, or a colour by what it feeds",
     "white", "Black and white are also mains colours there: prove that a wire is 12 V before you touch it.",
     "rv trailer camper positive negative colour dc black white", &kColourTrailer},
    {"boat-us", "Boats, US practice", "red", "yellow", "red", "yellow (preferred) or black",
     "Older boats have black for minus, and black is live in US mains wiring.",
     "abyc positive negative colour dc boat", &kColourBoatUs},
    {"small-craft", "Small craft, international", "red", "black", "red", "black or yellow",
     "Yellow may be minus, or a light's plus in an older boat.", "positive negative colour dc boat",
     &kColourSmallCraft},
    {"vehicle-europe", "Vehicles, Europe", "red", "brown", "red, or a colour by what it feeds",
     "brown in the vehicle's own wiring, black in what was added",
     "Brown is live in European mains wiring.", "din brown minus positive negative colour dc car van camper",
     &kColourEurope},
    {"vehicle", "Road vehicles, campers", "red", "black", "red, or a colour by what it feeds",
     "black, or the chassis", "The chassis may be minus: a wire that touches it is a short.",
     "car van rv positive negative ground", &kColourVehicle},
    {"iec", "D.c. in newer installations", "red", "white", "red", "white",
     "White is minus here, and a neutral or a switched wire elsewhere.", "iec 60445 positive negative", &kColourIec},
}};

constexpr std::string_view key_of(Practice practice) {
  switch (practice) {
    case Practice::us_rv: return "trailer-us";
    case Practice::us_marine: return "boat-us";
    case Practice::european_vehicle: return "vehicle-europe";
    case Practice::small_craft: return "small-craft";
    case Practice::building: break;
  }
  return "iec";
}

const ConductorColours& of_key(std::string_view key) {
  const ConductorColours* found = row_by_key(kColours, key);
  return found != nullptr ? *found : kColours.front();
}

}  // namespace

std::span<const ConductorColours> conductor_colours() { return kColours; }

const ConductorColours* conductor_colours_by_key(std::string_view key) { return row_by_key(kColours, key); }

const ConductorColours& conductor_colours_of(Practice practice) { return of_key(key_of(practice)); }

const ConductorColours& conductor_colours_untold() { return of_key("vehicle"); }

}  // namespace tables
