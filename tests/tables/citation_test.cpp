// Every figure points at a citation, every citation is registered and says something.
#include "tables/citation.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

#include "tables/ampacity.h"
#include "tables/conductor.h"
#include "tables/fuse.h"
#include "tables/part.h"
#include "tables/supply.h"

namespace {

void check_registered(const tables::Citation* citation) {
  REQUIRE(citation != nullptr);
  CHECK_MESSAGE(tables::citation_by_id(citation->id) == citation, citation->id);
}

}  // namespace

TEST_CASE("No citation is empty and no id is used twice") {
  std::set<std::string_view> ids;
  for (const tables::Citation* citation : tables::all_citations()) {
    CHECK(ids.insert(citation->id).second);
    CHECK_FALSE(citation->id.empty());
    CHECK_FALSE(citation->document.empty());
    CHECK_FALSE(citation->where.empty());
    CHECK_FALSE(citation->note.empty());
    CHECK_FALSE(tables::standing_text(citation->standing).empty());
    // What is only remembered says so in words, too.
    if (citation->standing == tables::Standing::memory) {
      const std::string all = std::string(citation->note) + std::string(citation->document);
      CHECK_MESSAGE((all.find("memory") != std::string::npos), citation->id);
    }
  }
  CHECK(ids.size() > 25);
  CHECK(tables::citation_by_id("no such") == nullptr);
  CHECK(tables::standing_text(tables::Standing::memory) == "from memory");
}

TEST_CASE("Every table leads to a registered citation") {
  for (const auto system : tables::gauge_systems()) {
    for (const tables::Conductor& size : tables::conductors(system)) {
      check_registered(size.citation);
      for (const tables::WireMetalRow& row : tables::wire_metals()) {
        check_registered(row.citation);
        check_registered(&tables::resistance_citation(size, row.metal));
      }
      for (const tables::AmpacityTable& table : tables::ampacity_tables()) {
        for (const double rating : tables::insulation_ratings_c()) {
          for (const bool hot : {false, true}) {
            tables::Surroundings around;
            around.insulation = units::Celsius(rating);
            around.hot_space = hot;
            const auto result = tables::ampacity(table.id, size, around);
            if (!result.value) continue;
            check_registered(result.value->base_citation);
            check_registered(result.value->strand_citation);
            check_registered(result.value->metal_citation);
            check_registered(result.value->sheath_citation);
            check_registered(result.value->ambient_citation);
            check_registered(result.value->bundling_citation);
          }
        }
      }
    }
  }
  for (const tables::AmpacityTable& table : tables::ampacity_tables()) check_registered(table.citation);
  for (const tables::FuseFamily& family : tables::fuse_families()) check_registered(family.citation);
  for (const tables::FuseFamily* kind : tables::main_fuse_kinds()) check_registered(kind->citation);
  for (const tables::BatteryKind& kind : tables::battery_kinds()) check_registered(kind.citation);
  for (const auto kind : tables::part_kinds()) {
    for (const tables::Part& part : tables::parts(kind)) {
      check_registered(part.citation);
      check_registered(&tables::part_rating_citation(part, part.largest_bare));
    }
  }
  check_registered(&tables::road_vehicle_ceiling_citation());
  check_registered(&tables::fuse_resistance_citation());
  check_registered(&tables::joint_resistance_citation());
}
