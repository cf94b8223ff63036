// Wire by size, AWG and metric side by side, and what it may carry.
#include <algorithm>
#include <cmath>
#include <utility>

#include "reference/pages.h"
#include "tables/ampacity.h"
#include "tables/conductor.h"
#include "units/format.h"

namespace reference {
namespace {

using tables::GaugeSystem;
using units::Preference;

// The other list's size beside this one: the nearest by copper.
const tables::Conductor& beside(const tables::Conductor& wire) {
  const auto others = tables::conductors(wire.system == GaugeSystem::awg ? GaugeSystem::metric : GaugeSystem::awg);
  const tables::Conductor* nearest = &others.front();
  const auto off = [&](const tables::Conductor& other) { return std::fabs(std::log(other.area / wire.area)); };
  for (const tables::Conductor& other : others) {
    if (off(other) < off(*nearest)) nearest = &other;
  }
  return *nearest;
}

std::string beside_text(const tables::Conductor& wire) {
  const tables::Conductor& other = beside(wire);
  const double more = other.area / wire.area - 1.0;
  std::string text = wire_name(other.id);
  if (std::fabs(more) > 0.01) text += more > 0.0 ? ", more copper" : ", less copper";
  return text;
}

Page wire_page(Preference preference) {
  Page page{.key = "wire", .title = "Wire",
            .about = "Copper, diameter and resistance by size, AWG and metric side by side.",
            .columns = {"Size", "Copper", "Across, solid", "Ohms at 20 °C", "Nearest in the other list"},
            .rows = {}, .caution = "Cable sold by SAE gauge may hold 5 to 12 % less copper than true AWG.",
            .keywords = "wire cable conductor gauge size area cross section resistance awg mm2 table",
            .picture = {Depicts::conductor, "10awg"}};
  for (const GaugeSystem system : {GaugeSystem::awg, GaugeSystem::metric}) {
    for (const tables::Conductor& wire : tables::conductors(system)) {
      const units::Millimetres across = tables::diameter_of_area(wire.area);
      Row row = make_row(std::string(wire.id),
                         {wire_name(wire.id), with(wire.area.number(), "mm²", 3), small_length(across, preference),
                          units::ohms_per_length_text(wire.resistance_20c, preference), beside_text(wire)},
                         {wire.citation}, wire.id == "0.75mm2" ? tables::Standing::memory : wire.citation->standing,
                         system == GaugeSystem::awg ? "gauge wire cable" : "square millimetre millimeter mm2 mmq wire cable");
      row.note = "Resistance is of one conductor; a run has two.";
      row.tap = calculator_tap("drop-of-a-run", {{"wire", wire.id}}, "Drop of a run with " + wire_name(wire.id));
      row.picture = {Depicts::conductor, std::string(wire.id)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

std::string ampacity_text(tables::AmpacityTableId table, const tables::Conductor& wire, double insulation_c) {
  tables::Surroundings around;
  around.insulation = units::Celsius(insulation_c);
  const tables::AmpacityResult found = tables::ampacity(table, wire, around);
  return found.value ? units::amperes_text(found.value->derated) : std::string("table ends");
}

// Which insulation ratings have a column of their own.
std::vector<double> columns_of(tables::AmpacityTableId table) {
  if (table == tables::AmpacityTableId::marine_us) return {60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0};
  return {70.0, 90.0};
}

Page ampacity_page(const tables::AmpacityTable& table) {
  const bool marine = table.id == tables::AmpacityTableId::marine_us;
  Page page{.key = marine ? "ampacity-boat" : table.id == tables::AmpacityTableId::enclosed_iec ? "ampacity-conduit" : "ampacity-clipped",
            .title = marine ? "Ampacity: boat wire in free air"
                     : table.id == tables::AmpacityTableId::enclosed_iec ? "Ampacity: in conduit or trunking"
                                                                         : "Ampacity: clipped to a surface",
            .about = table.about, .columns = {"Size"}, .rows = {},
            .caution = "Alone, in 30 °C air. Warmer or tied together it carries less; past an end there is no figure.",
            .keywords = "ampacity current capacity carry amps how many rating insulation temperature max",
            .picture = {}};
  for (const double c : columns_of(table.id)) page.columns.push_back(number(c, 3) + " °C");
  for (const GaugeSystem system : {GaugeSystem::awg, GaugeSystem::metric}) {
    for (const tables::Conductor& wire : tables::conductors(system)) {
      std::vector<std::string> cells{wire_name(wire.id)};
      std::vector<const tables::Citation*> citations{table.citation};
      bool any = false;
      for (const double c : columns_of(table.id)) {
        cells.push_back(ampacity_text(table.id, wire, c));
        tables::Surroundings around;
        around.insulation = units::Celsius(c);
        const tables::AmpacityResult found = tables::ampacity(table.id, wire, around);
        if (!found.value) continue;
        any = true;
        if (found.value->base_citation != citations.back()) citations.push_back(found.value->base_citation);
        if (found.value->strand_factor < 1.0 && !marine) {
          if (std::find(citations.begin(), citations.end(), found.value->strand_citation) == citations.end()) {
            citations.push_back(found.value->strand_citation);
          }
        }
      }
      Row row = make_row(std::string(wire.id), std::move(cells), std::move(citations),
                         "ampacity how many amps can carry current capacity " + std::string(table.key));
      if (!any) row.note = "The table ends before this size.";
      row.tap = calculator_tap("most-current", {{"wire", wire.id}, {"table", table.key}},
                               "Most current for " + wire_name(wire.id) + " here");
      row.picture = {Depicts::conductor, std::string(wire.id)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

Page factor_page() {
  Page page{.key = "ampacity-factors", .title = "Ampacity: heat and bundling",
            .about = "What is left of a table's figure in warm air and with circuits tied together.",
            .columns = {"Where", "Boat wire, 105 °C", "Conduit, 90 °C"}, .rows = {},
            .caution = "Factors multiply. A cold place earns nothing.",
            .keywords = "derating factor correction ambient hot engine bundle group tied", .picture = {}};
  const tables::Conductor& wire = *tables::conductor_by_id("10awg");
  const auto row = [&](std::string key, std::string where, const tables::Surroundings& around, std::string keywords) {
    std::vector<std::string> cells{std::move(where)};
    std::vector<const tables::Citation*> citations;
    for (const auto& [table, insulation] : {std::pair{tables::AmpacityTableId::marine_us, 105.0},
                                            std::pair{tables::AmpacityTableId::enclosed_iec, 90.0}}) {
      tables::Surroundings here = around;
      here.insulation = units::Celsius(insulation);
      const tables::AmpacityResult found = tables::ampacity(table, wire, here);
      if (!found.value) {
        cells.push_back("no figure");
        continue;
      }
      cells.push_back("x " + number(found.value->ambient_factor * found.value->bundling_factor, 2));
      citations.push_back(around.circuits_bundled > 1 ? found.value->bundling_citation : found.value->ambient_citation);
    }
    if (citations.empty()) citations.push_back(tables::citation_by_id("ambient-correction"));
    Row made = make_row(std::move(key), std::move(cells), std::move(citations), std::move(keywords));
    made.tap = calculator_tap("most-current", {{"ambient", "", around.ambient.number()},
                                               {"bundled", "", static_cast<double>(around.circuits_bundled)},
                                               {"hot", around.hot_space ? "yes" : "no"}},
                              "Most current there");
    page.rows.push_back(std::move(made));
  };
  for (const double ambient : {30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0}) {
    tables::Surroundings around;
    around.ambient = units::Celsius(ambient);
    row("air-" + number(ambient, 2), "Air at " + units::celsius_text(around.ambient, Preference::metric) + " (" +
        units::celsius_text(around.ambient, Preference::us) + ")", around, "ambient temperature hot warm");
  }
  tables::Surroundings engine;
  engine.hot_space = true;
  row("engine-space", "Engine space", engine, "engine bay hot ambient");
  for (const int circuits : {2, 3, 4, 5, 6, 9, 12, 20}) {
    tables::Surroundings around;
    around.circuits_bundled = circuits;
    row("tied-" + std::to_string(circuits), std::to_string(circuits) + " circuits tied together", around,
        "bundle bundling grouping loom");
  }
  return page;
}

}  // namespace

std::vector<Page> wire_pages(Preference preference) {
  std::vector<Page> pages;
  pages.push_back(wire_page(preference));
  for (const tables::AmpacityTable& table : tables::ampacity_tables()) pages.push_back(ampacity_page(table));
  pages.push_back(factor_page());
  return pages;
}

}  // namespace reference
