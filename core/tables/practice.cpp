#include "tables/practice.h"

#include <array>

#include "tables/citation_list.h"
#include "tables/row_by_key.h"

namespace tables {
namespace {

constinit const std::array<PracticeText, 3> kUsRv{{
    {"Fuse and wire", "18 to 10 AWG have a largest fuse each, whatever the insulation.", &kRoadVehicleFuse},
    {"Place of the fuse", "Within 457 mm (18 in) of where the supply connects, in reach.", &kFusePlaceVehicle},
    {"Return", "By wire; a metal chassis may be the return where its ground points are clean and in reach.",
     &kVehicleReturn},
}};
constinit const std::array<PracticeText, 3> kUsMarine{{
    {"Fuse and wire", "The rule would allow a fuse of 150 % of the wire's figure below 50 V; not used here.",
     &kFusePlaceRule},
    {"Place of the fuse", "Within 178 mm (7 in); in a sheath within 1.0 m (40 in).", &kFusePlaceRule},
    {"Drop", "3 % for feeders, navigation lights, bilge pumps and blowers; 10 % for cabin lights.", &kDropThree},
}};
constinit const std::array<PracticeText, 3> kEuropean{{
    {"Which standard", "EN 1648-1 for caravans, EN 1648-2 for motor caravans; 230 V: HD 60364-7-721. None of their "
                       "figures is known here: ask for the standard.", &kEuropeanVehicle},
    {"Fuses", "A fuse for each circuit, near the battery, never above what its wire carries.", &kEuropeanPractice},
    {"Wire", "Fine-stranded metric wire; its current by the building table for wire in conduit.", &kEuropeanPractice},
}};
constinit const std::array<PracticeText, 3> kSmallCraft{{
    {"Thinnest wire", "A single wire longer than 200 mm is at least 1 mm²; in a sheath 0.75 mm².", &kSmallCraftRules},
    {"Support", "Held every 450 mm; the battery's wires every 300 mm.", &kSmallCraftRules},
    {"Drop", "3 % for feeders, navigation lights, bilge pumps and blowers.", &kDropThree},
}};
constinit const std::array<PracticeText, 1> kBuilding{{
    {"Fuse and wire", "Current that flows <= fuse <= what the wire carries.", &kFuseSizeRule},
}};

constinit const std::array<PracticeRow, 5> kPractices{{
    {Practice::us_rv, "us-rv", "Trailers and living vehicles, North America",
     "Low-voltage rules of the US code for park trailers, which living vehicles follow too.",
     AmpacityTableId::marine_us, true, kUsRv, &kRoadVehicleFuse},
    {Practice::us_marine, "us-marine", "Boats, US practice", "The US federal rule for boats, and the voluntary standard beside it.",
     AmpacityTableId::marine_us, false, kUsMarine, &kMarineAmpacity},
    {Practice::european_vehicle, "european-vehicle", "Living vehicles, Europe",
     "Caravans and motor caravans as built in Europe. The standard's figures were not seen: what stands here is practice.",
     AmpacityTableId::enclosed_iec, false, kEuropean, &kEuropeanVehicle},
    {Practice::small_craft, "small-craft", "Boats, international practice",
     "Small craft by the international standards. Their table of currents is not used: it is only remembered.",
     AmpacityTableId::enclosed_iec, false, kSmallCraft, &kSmallCraftRules},
    {Practice::building, "building", "Buildings", "Extra-low voltage in something that does not move.",
     AmpacityTableId::enclosed_iec, false, kBuilding, &kIecAmpacity},
}};

}  // namespace

std::span<const PracticeRow> practices() { return kPractices; }

const PracticeRow& practice(Practice id) {
  for (const PracticeRow& row : kPractices) {
    if (row.id == id) return row;
  }
  return kPractices.front();  // the strictest, should a value ever be out of range
}

const PracticeRow* practice_by_key(std::string_view key) { return row_by_key(kPractices, key); }

Practice usual_practice(Ground ground, GaugeSystem wire) {
  const bool metric = wire == GaugeSystem::metric;
  switch (ground) {
    case Ground::road: return metric ? Practice::european_vehicle : Practice::us_rv;
    case Ground::water: return metric ? Practice::small_craft : Practice::us_marine;
    case Ground::fixed: break;
  }
  return Practice::building;
}

std::optional<units::Amperes> practice_fuse_ceiling(Practice id, const Conductor& size) {
  if (!practice(id).bounds_fuse_by_wire) return std::nullopt;
  return road_vehicle_fuse_ceiling(size);
}

const Citation* practice_fuse_ceiling_citation(Practice id) {
  return practice(id).bounds_fuse_by_wire ? &kRoadVehicleFuse : nullptr;
}

}  // namespace tables
