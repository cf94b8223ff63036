// Tinned copper by IEC 60228 and NEC Table 8, the thinner SAE areas, copper-clad aluminium.
#include "tables/wire_metal.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "reference/reference.h"
#include "tables/wire.h"

using tables::Conductor;
using tables::GaugeSystem;
using tables::WireMetal;

namespace {

double ohm_per_km(const Conductor& size, WireMetal metal) { return tables::resistance_20c(size, metal).number() * 1000.0; }

}  // namespace

TEST_CASE("SAE areas as listed, less copper than the AWG of the same number") {
  int listed = 0;
  for (const auto& row : reference::read("sae_copper")["rows"]) {
    const std::string size = row["size"].get<std::string>();
    const Conductor& sae = wire(size + "sae");
    // One circular mil is pi/4 mil^2, 0.00050670748 mm2 by GNU units.
    CHECK(sae.area.number() == doctest::Approx(row["circular_mils"].get<double>() * 0.00050670748).epsilon(1e-6));
    const double share = sae.area / wire(size + "awg").area;
    CHECK(share < 0.98);
    CHECK(share > 0.88);
    CHECK(sae.resistance_20c.number() * sae.area.number() == doctest::Approx(1.02 / 58.0).epsilon(1e-9));
    ++listed;
  }
  CHECK(listed == static_cast<int>(tables::conductors(GaugeSystem::sae).size()));
  // Seen on a marine supplier's page: 12 SAE has 5833 circular mils, true 12 AWG 6530.
  CHECK(wire("12sae").area / wire("12awg").area == doctest::Approx(5833.0 / 6530.0).epsilon(1e-3));
  CHECK(tables::gauge_system_suffix(GaugeSystem::sae) == "SAE");
  CHECK(wire("12sae").citation->standing == tables::Standing::memory);
}

TEST_CASE("Tinned: the tinned column of IEC 60228 class 5, the coated one of NEC Table 8 (from memory)") {
  int metric = 0;
  for (const auto& row : reference::read("metric_copper")["rows"]) {
    for (const Conductor& size : tables::conductors(GaugeSystem::metric)) {
      if (std::fabs(size.area.number() - row["area_mm2"].get<double>()) > 1e-9) continue;
      CHECK(ohm_per_km(size, WireMetal::tinned_copper) == doctest::Approx(row["class5_tinned"].get<double>()).epsilon(1e-12));
      CHECK(tables::resistance_citation(size, WireMetal::tinned_copper).id == "iec-60228-class-5-tinned");
      ++metric;
    }
  }
  CHECK(metric == 14);
  int awg = 0;
  for (const auto& row : reference::read("awg_copper")["rows"]) {
    const Conductor* size = tables::conductor_by_id(row["awg"].get<std::string>() + "awg");
    if (size == nullptr) continue;
    const auto hot = tables::resistance_at(tables::resistance_20c(*size, WireMetal::tinned_copper), units::Celsius(75.0));
    const double printed = row["r75_stranded_coated_ohm_per_kft"].get<double>() / 304.8;
    CHECK_MESSAGE(std::fabs(hot.number() / printed - 1.0) < 0.007, row["awg"]);
    ++awg;
  }
  CHECK(awg == 15);
  // Typed a second time: 2.5 mm2 8.21 ohm/km; 10 AWG coated 1.29 ohm/kft at 75 degC.
  CHECK(ohm_per_km(wire("2.5mm2"), WireMetal::tinned_copper) == doctest::Approx(8.21));
  CHECK(ohm_per_km(wire("12sae"), WireMetal::tinned_copper) == doctest::Approx(1.04 * ohm_per_km(wire("12sae"), WireMetal::copper)));
}

TEST_CASE("Every metal: plain copper has the least resistance, tinned a few per cent more, clad aluminium much more") {
  for (const GaugeSystem system : tables::gauge_systems()) {
    for (const Conductor& size : tables::conductors(system)) {
      CHECK(tables::resistance_20c(size, WireMetal::copper) == size.resistance_20c);
      const double tinned = tables::resistance_20c(size, WireMetal::tinned_copper) / size.resistance_20c;
      CHECK_MESSAGE(tinned > 1.015, size.id);
      CHECK_MESSAGE(tinned < 1.065, size.id);
    }
  }
  // ASTM B566 class 10A (from memory): 0.02743 ohm mm2/m against 1/58; and no worse than aluminium of
  // 61 % (ASTM B230, from memory).
  const double clad = tables::wire_metal(WireMetal::copper_clad_aluminium).resistance_factor;
  CHECK(clad >= 0.02743 * 58.0);
  CHECK(clad == doctest::Approx(1.0 / 0.61).epsilon(0.005));
  // The heat is not above copper's, and k not above aluminium's: IEC 60364-5-54 gives 76 against 115
  // and 94 against 143 (from memory).
  const auto& row = tables::wire_metal(WireMetal::copper_clad_aluminium);
  CHECK(row.ampacity_factor * row.ampacity_factor * row.resistance_factor <= 1.0);
  CHECK(row.withstand_factor <= 76.0 / 115.0);
  CHECK(row.withstand_factor <= 94.0 / 143.0);
  CHECK(row.withstand_factor > 0.6);
}

TEST_CASE("Copper-clad aluminium is never recommended and always warned of") {
  int recommended = 0;
  for (const tables::WireMetalRow& row : tables::wire_metals()) {
    CHECK(tables::wire_metal_by_key(row.key) == &row);
    CHECK(&tables::wire_metal(row.metal) == &row);
    CHECK(row.recommended == (row.metal != WireMetal::copper_clad_aluminium));
    CHECK(row.recommended == row.caution.empty());
    CHECK(tables::ampacity_factor(row.metal) == row.ampacity_factor);
    CHECK(row.ampacity_factor <= 1.0);
    recommended += row.recommended ? 1 : 0;
  }
  CHECK(recommended == 2);
  CHECK(tables::wire_metal_by_key("aluminium") == nullptr);
}
