#include "tables/wire_metal.h"

#include <array>

#include "tables/citation_list.h"
#include "tables/row_by_key.h"

namespace tables {
namespace {

// Copper-clad aluminium: ASTM B566 class 10A has 0.02743 ohm mm2/m (from memory), 1.59 times
// copper. Cheap cable may hold less copper than that, but cannot be worse than the aluminium
// inside: 61 % of copper's conductivity, 1/0.61 = 1.64. The heat I^2 R allowed is the same, so
// the current is 1/sqrt(1.64) = 0.78 of copper's. Short-time withstand: aluminium's k by
// IEC 60364-5-54 Annex A is 148 sqrt(ln(1 + (Tf - Ti)/(228 + Ti))), 0.66 of copper's; less is taken.
constinit const std::array<WireMetalRow, 3> kMetals{{
    {WireMetal::copper, "copper", "Plain copper", 1.0, 1.0, 1.0, true, "", "The usual wire.", &kCopper},
    {WireMetal::tinned_copper, "tinned-copper", "Tinned copper", 1.04, 1.0, 1.0, true, "",
     "Stands damp and salt: the usual wire on boats. A little more resistance; published ampacities make no difference.",
     &kTinnedCopper},
    {WireMetal::copper_clad_aluminium, "copper-clad-aluminium", "Copper-clad aluminium", 1.64, 0.78, 0.65, false,
     "Not for fixed wiring that moves or gets damp: it carries less, breaks when bent, creeps out of clamps and "
     "corrodes at every cut end. Replace it with copper.",
     "Silver where it is cut or scraped, light in the hand. Judged with the figures of plain aluminium, the worst it can be.",
     &kCopperClad},
}};

// IEC 60228 Table 3, class 5, tinned, mohm/m.
struct Tinned {
  std::string_view size;
  double value;
};
constexpr std::array<Tinned, 14> kTinnedMetric{{
    {"0.75mm2", 26.7}, {"1mm2", 20.0},  {"1.5mm2", 13.7}, {"2.5mm2", 8.21},  {"4mm2", 5.09},
    {"6mm2", 3.39},    {"10mm2", 1.95}, {"16mm2", 1.24},  {"25mm2", 0.795},  {"35mm2", 0.565},
    {"50mm2", 0.393},  {"70mm2", 0.277}, {"95mm2", 0.210}, {"120mm2", 0.164},
}};
// NEC Chapter 9 Table 8, stranded: coated over uncoated as printed (from memory), ohm/kft at 75 degC.
struct Coated {
  std::string_view size;
  double coated;
  double uncoated;
};
constexpr std::array<Coated, 15> kCoatedAwg{{
    {"18awg", 8.45, 7.95},     {"16awg", 5.29, 4.99},     {"14awg", 3.26, 3.14},   {"12awg", 2.05, 1.98},
    {"10awg", 1.29, 1.24},     {"8awg", 0.809, 0.778},    {"6awg", 0.510, 0.491},  {"4awg", 0.321, 0.308},
    {"3awg", 0.254, 0.245},    {"2awg", 0.201, 0.194},    {"1awg", 0.160, 0.154},  {"1/0awg", 0.127, 0.122},
    {"2/0awg", 0.101, 0.0967}, {"3/0awg", 0.0797, 0.0766}, {"4/0awg", 0.0626, 0.0608},
}};

units::OhmsPerMetre tinned_20c(const Conductor& size) {
  for (const Tinned& row : kTinnedMetric) {
    if (row.size == size.id) return units::OhmsPerMetre(row.value / 1000.0);
  }
  for (const Coated& row : kCoatedAwg) {
    if (row.size == size.id) return size.resistance_20c * (row.coated / row.uncoated);
  }
  return size.resistance_20c * wire_metal(WireMetal::tinned_copper).resistance_factor;
}

}  // namespace

std::span<const WireMetalRow> wire_metals() { return kMetals; }

const WireMetalRow& wire_metal(WireMetal metal) {
  for (const WireMetalRow& row : kMetals) {
    if (row.metal == metal) return row;
  }
  return kMetals.back();  // the worst, should a value ever be out of range
}

const WireMetalRow* wire_metal_by_key(std::string_view key) { return row_by_key(kMetals, key); }

units::OhmsPerMetre resistance_20c(const Conductor& size, WireMetal metal) {
  if (metal == WireMetal::tinned_copper) return tinned_20c(size);
  return size.resistance_20c * wire_metal(metal).resistance_factor;
}

const Citation& resistance_citation(const Conductor& size, WireMetal metal) {
  if (metal == WireMetal::copper) return *size.citation;
  if (metal == WireMetal::tinned_copper && size.system == GaugeSystem::metric) return kTinnedMetricCopper;
  return *wire_metal(metal).citation;
}

double ampacity_factor(WireMetal metal) { return wire_metal(metal).ampacity_factor; }

}  // namespace tables
