// Fuses: ratings and colours, opening times, what they break, where they sit.
#include <algorithm>

#include "reference/pages.h"
#include "tables/ampacity.h"
#include "tables/conductor.h"
#include "tables/fact.h"
#include "tables/fuse.h"
#include "tables/practice.h"

namespace reference {
namespace {

std::string key_of(const tables::FuseFamily& family, double rating) {
  return std::string(family.key) + "-" + number(rating, 3);
}

// Branch families first, then the kinds of main fuse that are not among them.
std::vector<const tables::FuseFamily*> every_family() {
  std::vector<const tables::FuseFamily*> all;
  for (const tables::FuseFamily& family : tables::fuse_families()) all.push_back(&family);
  for (const tables::FuseFamily* kind : tables::main_fuse_kinds()) {
    if (std::find(all.begin(), all.end(), kind) == all.end()) all.push_back(kind);
  }
  return all;
}

bool for_a_branch(const tables::FuseFamily& family) {
  const auto all = tables::fuse_families();
  return &family >= all.data() && &family < all.data() + all.size();
}

std::string title_of(const tables::FuseFamily& family) {
  return tables::full_name(family) + (for_a_branch(family) ? "" : " as main fuse");
}

std::string_view other_colour_words(std::string_view colour) {
  if (colour == "tan") return " beige";
  if (colour == "clear") return " white natural transparent";
  if (colour == "violet") return " purple";
  return colour == "grey" ? " gray" : "";
}

Page rating_page() {
  Page page{.key = "fuses", .title = "Fuses: ratings and colours",
            .about = "Standard ratings by kind, the colour moulded on them, and what the element loses at its rating.",
            .columns = {"Fuse", "Colour", "Cold", "Loses, warm", "Up to"}, .rows = {},
            .caution = "Never a larger fuse to stop one from blowing. Colours are from memory: read the number.",
            .keywords = "fuse rating colour blade bolt mini maxi", .picture = {Depicts::fuse, "blade:15"}};
  for (const tables::FuseFamily* family : every_family()) {
    for (const double rating : family->ratings_a) {
      const units::Amperes amperes(rating);
      const std::string colour(tables::fuse_colour(family->id, amperes));
      const auto cold = tables::fuse_cold_resistance(family->id, amperes);
      const double drop_mv = (tables::fuse_hot_resistance(*family, amperes) * amperes).number() * 1000.0;
      Row row = make_row(key_of(*family, rating),
                         {title_of(*family) + ", " + units::amperes_text(amperes),
                          colour.empty() ? std::string("varies") : colour, cold ? units::ohms_text(*cold) : std::string(),
                          with(drop_mv, "mV", 2), units::volts_text(family->rated_voltage)},
                         {family->citation, &tables::fuse_resistance_citation()}, tables::Standing::memory,
                         colour + std::string(other_colour_words(colour)) + " amp " + std::string(family->keywords));
      row.note = "Element at its rating, without its contacts.";
      if (colour.empty()) row.note += " Makers differ in colour: read the number on it.";
      // The calculator offers what a branch may have.
      if (for_a_branch(*family)) {
        row.tap = calculator_tap("fuse-at-n-times", {{"family", family->key}, {"fuse", "", rating}},
                                 "How soon a " + units::amperes_text(amperes) + " fuse opens");
      }
      row.picture = {Depicts::fuse, std::string(family->key) + ":" + number(rating, 3)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

Page gate_page() {
  Page page{.key = "fuse-times", .title = "Fuses: how soon they open",
            .about = "At a multiple of its rating a fuse holds at least, by the fastest figure known, and opens at most, by the slowest.",
            .columns = {"At", "Holds at least", "Opens within"}, .rows = {},
            .caution = "Typical gates: check the fuse's own curve. Near its rating a fuse may never open.",
            .keywords = "fuse curve time current gate percent blow slow fast overload", .picture = {Depicts::fuse_gates, "blade"}};
  for (const tables::FuseFamily* each : every_family()) {
    const tables::FuseFamily& family = *each;
    for (const tables::FuseGate& gate : family.gates) {
      const int percent = static_cast<int>(gate.multiple * 100.0 + 0.5);
      Row row = make_row(std::string(family.key) + "-" + std::to_string(percent),
                         {title_of(family) + ", " + std::to_string(percent) + " %",
                          gate.not_before ? units::seconds_text(*gate.not_before) : std::string("no promise"),
                          gate.opens_within ? units::seconds_text(*gate.opens_within) : std::string("no promise")},
                         {family.citation}, gate.standing, "time to blow open overload times " + number(gate.multiple, 3) + "x");
      if (for_a_branch(family)) row.tap = calculator_tap("fuse-at-n-times", {{"family", family.key}, {"times", "", gate.multiple},
                                                   {"fuse", "", family.ratings_a[family.ratings_a.size() / 2]}},
                               "At " + number(gate.multiple, 3) + " times its rating");
      row.picture = {Depicts::fuse_gates, std::string(family.key)};
      page.rows.push_back(std::move(row));
    }
  }
  return page;
}

std::string breaks_text(const tables::FuseFamily& family) {
  std::string text;
  for (const tables::BreakingPoint& point : family.breaking) {
    if (!text.empty()) text += "; ";
    text += units::amperes_text(point.breaks);
    if (family.breaking.size() > 1) text += " to " + units::volts_text(point.up_to);
  }
  return text;
}

Page family_page() {
  Page page{.key = "fuse-kinds", .title = "Fuses: kinds",
            .about = "What each kind is made for: branches, and the battery's main fuse.",
            .columns = {"Kind", "Ratings", "Up to", "Breaks", "Contacts"}, .rows = {},
            .caution = "The main fuse must break what the battery can deliver: several thousand amperes. Read its marking.",
            .keywords = "fuse kind type family strip bolt maxi mini breaking capacity voltage main", .picture = {}};
  for (const tables::FuseFamily* each : every_family()) {
    const tables::FuseFamily& family = *each;
    Row row = make_row(std::string(family.key),
                       {tables::full_name(family), range_text(family.ratings_a.front(), family.ratings_a.back(), "A"),
                        units::volts_text(family.rated_voltage), breaks_text(family), units::ohms_text(family.contact_resistance)},
                       {family.citation, &tables::fuse_resistance_citation()}, std::string(family.keywords));
    if (family.may_be_main) row.note = "May be the main fuse where it breaks the battery's short circuit.";
    if (for_a_branch(family)) {
      row.tap.into = Tap::Into::fuse_family;
      row.tap.value_key = family.key;
      row.tap.label = "Use this kind in my circuit";
    }
    row.picture = {Depicts::fuse, std::string(family.key) + ":" + number(family.ratings_a[family.ratings_a.size() / 2], 3)};
    page.rows.push_back(std::move(row));
  }
  return page;
}

Page ceiling_page() {
  Page page{.key = "thin-wire-fuses", .title = "Largest fuse for thin wire, US trailers",
            .about = "The US code for trailers bounds the fuse for thin wire, whatever its insulation. Elsewhere it does not bind.",
            .columns = {"Wire", "Fuse at most"}, .rows = {}, .caution = "From memory: check your local rule.",
            .keywords = "fuse ceiling maximum van trailer rv camper wire", .picture = {}};
  for (const auto system : tables::gauge_systems()) {
    for (const tables::Conductor& wire : tables::conductors(system)) {
      const auto most = tables::practice_fuse_ceiling(tables::Practice::us_rv, wire);
      if (!most) continue;
      Row row = make_row(std::string(wire.id), {wire_name(wire.id), units::amperes_text(*most)},
                         {&tables::road_vehicle_ceiling_citation()}, "fuse maximum road");
      if (system != tables::GaugeSystem::sae) row.tap = calculator_tap("fuse-for-a-wire", {{"wire", wire.id}}, "Fuse for " + wire_name(wire.id));
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
