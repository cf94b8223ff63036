// Wire by size, AWG and metric side by side, and what it may carry.
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "reference/pages.h"
#include "tables/ampacity.h"
#include "tables/conductor.h"
#include "tables/practice.h"
#include "tables/wire_metal.h"
#include "units/format.h"

namespace reference {
namespace {

using tables::GaugeSystem;
using units::Preference;

// The other list's size beside this one: the nearest by copper.
const tables::Conductor& beside(const tables::Conductor& wire) {
  const auto others = tables::conductors(wire.system == GaugeSystem::metric ? GaugeSystem::awg : GaugeSystem::metric);
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

std::string_view size_words(GaugeSystem system) {
  switch (system) {
    case GaugeSystem::awg: return "gauge wire cable";
    case GaugeSystem::metric: return "square millimetre millimeter mm2 mmq wire cable";
    case GaugeSystem::sae: return "primary vehicle automotive wire cable thin";
  }
  return {};
}

Page wire_page(Preference preference) {
  Page page{.key = "wire", .title = "Wire",
            .about = "Copper, diameter and resistance by size: AWG, metric, and the thinner SAE sizes of vehicle cable.",
            .columns = {"Size", "Copper", "Across, solid", "Ohms at 20 °C", "Nearest in the other list"},
            .rows = {}, .caution = "Cable sold by SAE number holds 3 to 11 % less copper than AWG: read what is printed on it.",
            .keywords = "wire cable conductor gauge size area cross section resistance awg mm2 table",
            .picture = {Depicts::conductor, "10awg"}};
  for (const GaugeSystem system : tables::gauge_systems()) {
    for (const tables::Conductor& wire : tables::conductors(system)) {
      const units::Millimetres across = tables::diameter_of_area(wire.area);
      Row row = make_row(std::string(wire.id),
                         {wire_name(wire.id), with(wire.area.number(), "mm²", 3), small_length(across, preference),
                          units::ohms_per_length_text(wire.resistance_20c, preference), beside_text(wire)},
                         {wire.citation}, wire.id == "0.75mm2" ? tables::Standing::memory : wire.citation->standing,
                         std::string(size_words(system)));
      row.note = "Resistance is of one conductor, plain copper; a run has two. Tinned: " +
                 units::ohms_per_length_text(tables::resistance_20c(wire, tables::WireMetal::tinned_copper), preference);
      const tables::Citation& tinned = tables::resistance_citation(wire, tables::WireMetal::tinned_copper);
      row.note += tinned.standing == tables::Standing::memory ? ", from memory." : ".";
      row.citations.push_back(&tinned);
      // The calculators offer AWG and metric sizes.
      if (system != GaugeSystem::sae) {
        row.tap = calculator_tap("drop-of-a-run", {{"wire", wire.id}}, "Drop of a run with " + wire_name(wire.id));
      }
      row.picture = {Depicts::conductor, std::string(wire.id)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

Page metal_page() {
  Page page{.key = "wire-metals", .title = "What wire is made of", .about = "Against plain copper of the same size.",
            .columns = {"Metal", "Resistance", "Carries", "Take it"}, .rows = {},
            .caution = "Aluminium under a thin copper skin is sold as cheap cable: scrape a strand and look.",
            .keywords = "metal copper tinned aluminium material wire", .picture = {}};
  for (const tables::WireMetalRow& metal : tables::wire_metals()) {
    Row row = make_row(std::string(metal.key),
                       {std::string(metal.name), "x " + number(metal.resistance_factor, 3), "x " + number(metal.ampacity_factor, 2),
                        metal.recommended ? "yes" : "no"},
                       {metal.citation}, metal.recommended ? "tinned copper marine" : "cca aluminum clad cheap fake");
    row.note = std::string(metal.note);
    if (!metal.caution.empty()) row.note += " " + std::string(metal.caution);
    page.rows.push_back(std::move(row));
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

struct AmpacityPage {
  tables::AmpacityTableId table;
  std::string_view key;
  std::string_view title;
};
constexpr std::array<AmpacityPage, 4> kAmpacityPages{{
    {tables::AmpacityTableId::marine_us, "ampacity-boat", "Ampacity: boat wire in free air"},
    {tables::AmpacityTableId::enclosed_iec, "ampacity-conduit", "Ampacity: in conduit or trunking"},
    {tables::AmpacityTableId::clipped_iec, "ampacity-clipped", "Ampacity: clipped to a surface"},
    {tables::AmpacityTableId::clipped_bs, "ampacity-clipped-british", "Ampacity: clipped, British figures"},
}};

Page ampacity_page(const AmpacityPage& which) {
  const tables::AmpacityTable& table = tables::ampacity_table(which.table);
  const bool marine = table.id == tables::AmpacityTableId::marine_us;
  Page page{.key = which.key, .title = which.title,
            .about = table.about, .columns = {"Size"}, .rows = {},
            .caution = "Alone, in 30 °C air. Warmer or tied together it carries less; past an end there is no figure.",
            .keywords = "ampacity current capacity carry amps how many rating insulation temperature max",
            .picture = {}};
  for (const double c : columns_of(table.id)) page.columns.push_back(number(c, 3) + " °C");
  for (const GaugeSystem system : tables::gauge_systems()) {
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
      if (system != GaugeSystem::sae) {
        row.tap = calculator_tap("most-current", {{"wire", wire.id}, {"table", table.key}},
                                 "Most current for " + wire_name(wire.id) + " here");
      }
      row.picture = {Depicts::conductor, std::string(wire.id)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

// What both loaded conductors in one sheath leave of the figure for single wires: a range over the sizes.
Row two_core_row() {
  std::vector<std::string> cells{"Both wires in one sheath"};
  std::vector<const tables::Citation*> citations;
  for (const auto& [table, insulation] : {std::pair{tables::AmpacityTableId::marine_us, 105.0},
                                          std::pair{tables::AmpacityTableId::enclosed_iec, 90.0}}) {
    tables::Surroundings around;
    around.insulation = units::Celsius(insulation);
    double least = 1.0, most = 0.0;
    for (const tables::Conductor& wire : tables::conductors(tables::GaugeSystem::metric)) {
      const auto found = tables::ampacity(table, wire, around, {.metal = tables::WireMetal::copper, .two_core = true});
      if (!found.value) continue;
      least = std::min(least, found.value->sheath_factor);
      most = std::max(most, found.value->sheath_factor);
      if (citations.empty() || citations.back() != found.value->sheath_citation) citations.push_back(found.value->sheath_citation);
    }
    cells.push_back(most - least < 0.005 ? "x " + number(least, 2) : "x " + number(least, 2) + " to " + number(most, 2));
  }
  Row row = make_row("two-core", std::move(cells), std::move(citations), "two core duplex jacketed sheathed cable twin");
  row.note = "By size. Each conductor warms the other.";
  return row;
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
  page.rows.push_back(two_core_row());
  return page;
}

Page practice_page() {
  Page page{.key = "practices", .title = "Whose rules", .about = "What each practice asks. A rule binds where its practice holds.",
            .columns = {"Practice", "About", "It asks"}, .rows = {},
            .caution = "A guide, not the rule: your local code and licensed practice come first.",
            .keywords = "practice rule code standard law iso en abyc nec europe us boat van", .picture = {}};
  for (const tables::PracticeRow& practice : tables::practices()) {
    for (std::size_t i = 0; i < practice.texts.size(); ++i) {
      const tables::PracticeText& text = practice.texts[i];
      Row row = make_row(std::string(practice.key) + "-" + std::to_string(i + 1),
                         {std::string(practice.name), std::string(text.what), std::string(text.says)}, {text.citation},
                         "practice rule code");
      row.note = std::string(practice.about);
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

}  // namespace

std::vector<Page> wire_pages(Preference preference) {
  std::vector<Page> pages;
  pages.push_back(wire_page(preference));
  for (const AmpacityPage& page : kAmpacityPages) pages.push_back(ampacity_page(page));
  pages.push_back(factor_page());
  pages.push_back(metal_page());
  pages.push_back(practice_page());
  return pages;
}

}  // namespace reference
