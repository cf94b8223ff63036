// Fuses: ratings and colours, opening times, what they break, where they sit.
#include "reference/pages.h"
#include "tables/ampacity.h"
#include "tables/conductor.h"
#include "tables/fact.h"
#include "tables/fuse.h"

namespace reference {
namespace {

std::string key_of(const tables::FuseFamily& family, double rating) {
  return std::string(family.key) + "-" + number(rating, 3);
}

Page rating_page() {
  Page page{.key = "fuses", .title = "Fuses: ratings and colours",
            .about = "Standard ratings by kind, the colour moulded on them, and what each may break.",
            .columns = {"Fuse", "Colour", "Cold", "Up to", "Breaks"}, .rows = {},
            .caution = "Never a larger fuse to stop one from blowing. Colours are from memory: read the number.",
            .keywords = "fuse rating colour blade bolt mini maxi", .picture = {Depicts::fuse, "blade:15"}};
  for (const tables::FuseFamily& family : tables::fuse_families()) {
    for (const double rating : family.ratings_a) {
      const units::Amperes amperes(rating);
      const std::string colour(tables::fuse_colour(family.id, amperes));
      const auto cold = tables::fuse_cold_resistance(family.id, amperes);
      std::vector<const tables::Citation*> citations{family.citation};
      if (cold) citations.push_back(&tables::fuse_resistance_citation());
      Row row = make_row(key_of(family, rating),
                         {std::string(family.name) + ", " + units::amperes_text(amperes),
                          colour.empty() ? std::string("varies") : colour, cold ? units::ohms_text(*cold) : std::string(),
                          units::volts_text(family.rated_voltage), units::amperes_text(family.breaking_capacity)},
                         std::move(citations), tables::Standing::memory,
                         colour + (colour == "tan" ? " beige" : colour == "clear" ? " white natural transparent" :
                                   colour == "violet" ? " purple" : colour == "grey" ? " gray" : "") + " amp");
      if (colour.empty()) row.note = "Makers differ in colour: read the number on it.";
      row.tap = calculator_tap("fuse-at-n-times", {{"family", family.key}, {"fuse", "", rating}},
                               "How soon a " + units::amperes_text(amperes) + " fuse opens");
      row.picture = {Depicts::fuse, std::string(family.key) + ":" + number(rating, 3)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

Page gate_page() {
  Page page{.key = "fuse-times", .title = "Fuses: how soon they open",
            .about = "At a multiple of its rating a fuse holds at least and opens at most so long: the slowest figures known.",
            .columns = {"At", "Holds at least", "Opens within"}, .rows = {},
            .caution = "Typical gates: check the fuse's own curve. Near its rating a fuse may never open.",
            .keywords = "fuse curve time current gate percent blow slow fast overload", .picture = {Depicts::fuse_gates, "blade"}};
  for (const tables::FuseFamily& family : tables::fuse_families()) {
    for (const tables::FuseGate& gate : family.gates) {
      const int percent = static_cast<int>(gate.multiple * 100.0 + 0.5);
      Row row = make_row(std::string(family.key) + "-" + std::to_string(percent),
                         {std::string(family.name) + ", " + std::to_string(percent) + " %",
                          gate.not_before ? units::seconds_text(*gate.not_before) : std::string("no promise"),
                          gate.opens_within ? units::seconds_text(*gate.opens_within) : std::string("no promise")},
                         {family.citation}, gate.standing, "time to blow open overload times " + number(gate.multiple, 3) + "x");
      row.tap = calculator_tap("fuse-at-n-times", {{"family", family.key}, {"times", "", gate.multiple},
                                                   {"fuse", "", family.ratings_a[family.ratings_a.size() / 2]}},
                               "At " + number(gate.multiple, 3) + " times its rating");
      row.picture = {Depicts::fuse_gates, std::string(family.key)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

Page family_page() {
  Page page{.key = "fuse-kinds", .title = "Fuses: kinds",
            .about = "What each kind is made for.", .columns = {"Kind", "Ratings", "Up to", "Breaks"}, .rows = {},
            .caution = "The main fuse must break what the battery can deliver: several thousand amperes.",
            .keywords = "fuse kind type family strip bolt maxi mini breaking capacity voltage", .picture = {}};
  for (const tables::FuseFamily& family : tables::fuse_families()) {
    Row row = make_row(std::string(family.key),
                       {std::string(family.name), range_text(family.ratings_a.front(), family.ratings_a.back(), "A"),
                        units::volts_text(family.rated_voltage), units::amperes_text(family.breaking_capacity)},
                       {family.citation},
                       family.id == tables::FuseFamilyId::bolt_on ? "bolt on strip stud high current" : "blade push in");
    row.tap.into = Tap::Into::fuse_family;
    row.tap.value_key = family.key;
    row.tap.label = "Use this kind in my circuit";
    row.picture = {Depicts::fuse, std::string(family.key) + ":" + number(family.ratings_a[family.ratings_a.size() / 2], 3)};
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page ceiling_page() {
  Page page{.key = "thin-wire-fuses", .title = "Largest fuse for thin wire on the road",
            .about = "In road vehicles the fuse for thin wire is bounded, whatever its insulation.",
            .columns = {"Wire", "Fuse at most"}, .rows = {}, .caution = "From memory: check your local rule.",
            .keywords = "fuse ceiling maximum van trailer rv camper wire", .picture = {}};
  for (const auto system : {tables::GaugeSystem::awg, tables::GaugeSystem::metric}) {
    for (const tables::Conductor& wire : tables::conductors(system)) {
      const auto most = tables::road_vehicle_fuse_ceiling(wire);
      if (!most) continue;
      Row row = make_row(std::string(wire.id), {wire_name(wire.id), units::amperes_text(*most)},
                         {&tables::road_vehicle_ceiling_citation()}, "fuse maximum road");
      row.tap = calculator_tap("fuse-for-a-wire", {{"wire", wire.id}}, "Fuse for " + wire_name(wire.id));
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

}  // namespace

std::vector<Page> fuse_pages(units::Preference) {
  std::vector<Page> pages;
  pages.push_back(rating_page());
  pages.push_back(gate_page());
  pages.push_back(family_page());
  pages.push_back(ceiling_page());
  return pages;
}

}  // namespace reference
