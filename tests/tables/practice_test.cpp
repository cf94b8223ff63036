// Practices and their colours: a rule binds only where its practice is chosen.
#include "tables/practice.h"

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "reference/reference.h"
#include "tables/conductor_colours.h"

using tables::GaugeSystem;
using tables::Ground;
using tables::Practice;

TEST_CASE("The US trailer code bounds a fuse only where it is chosen") {
  for (const auto& row : reference::read("low_voltage_fuse_ceilings")["rows"]) {
    const tables::Conductor& size = *tables::conductor_by_id(row["awg"].get<std::string>() + "awg");
    const auto bound = tables::practice_fuse_ceiling(Practice::us_rv, size);
    REQUIRE(bound.has_value());
    CHECK(bound->number() == row["max_overcurrent_A"].get<double>());
    for (const auto other : {Practice::us_marine, Practice::european_vehicle, Practice::small_craft, Practice::building}) {
      CHECK_FALSE(tables::practice_fuse_ceiling(other, size).has_value());
      CHECK(tables::practice_fuse_ceiling_citation(other) == nullptr);
    }
  }
  CHECK(tables::practice_fuse_ceiling_citation(Practice::us_rv)->id == "nec-552-10-e-1");
  CHECK_FALSE(tables::practice_fuse_ceiling(Practice::us_rv, *tables::conductor_by_id("8awg")).has_value());
}

TEST_CASE("Metric vans get European practice, metric boats the international one") {
  CHECK(tables::usual_practice(Ground::road, GaugeSystem::metric) == Practice::european_vehicle);
  CHECK(tables::usual_practice(Ground::road, GaugeSystem::awg) == Practice::us_rv);
  CHECK(tables::usual_practice(Ground::road, GaugeSystem::sae) == Practice::us_rv);
  CHECK(tables::usual_practice(Ground::water, GaugeSystem::awg) == Practice::us_marine);
  CHECK(tables::usual_practice(Ground::water, GaugeSystem::metric) == Practice::small_craft);
  for (const GaugeSystem system : tables::gauge_systems()) {
    CHECK(tables::usual_practice(Ground::fixed, system) == Practice::building);
    for (const Ground ground : {Ground::road, Ground::water}) {
      const auto& row = tables::practice(tables::usual_practice(ground, system));
      CHECK(row.ampacity_table == tables::default_ampacity_table(system));
    }
  }
}

TEST_CASE("Practices are found by key, and each says what it asks with a source") {
  std::set<std::string_view> keys;
  for (const tables::PracticeRow& row : tables::practices()) {
    CHECK(keys.insert(row.key).second);
    CHECK(tables::practice_by_key(row.key) == &row);
    CHECK(&tables::practice(row.id) == &row);
    CHECK_FALSE(row.texts.empty());
    CHECK(tables::citation_by_id(row.citation->id) == row.citation);
    for (const tables::PracticeText& text : row.texts) CHECK(tables::citation_by_id(text.citation->id) == text.citation);
  }
  CHECK(tables::practice_by_key("none") == nullptr);
  // Nothing that is only remembered may stand under the European standard's name.
  for (const tables::PracticeText& text : tables::practice(Practice::european_vehicle).texts) {
    if (text.citation->id == "en-1648") CHECK(text.says.find("mm²") == std::string_view::npos);
    else CHECK(text.citation->document.find("EN ") == std::string_view::npos);
  }
}

TEST_CASE("Colours by practice: black is minus here and plus there, so each row warns") {
  for (const tables::ConductorColours& row : tables::conductor_colours()) {
    CHECK(tables::conductor_colours_by_key(row.key) == &row);
    CHECK(row.plus != row.minus);
    CHECK(row.plus_words.find(row.plus) != std::string_view::npos);
    CHECK(row.minus_words.find(row.minus) != std::string_view::npos);
    CHECK_FALSE(row.caution.empty());
    CHECK(tables::citation_by_id(row.citation->id) == row.citation);
  }
  CHECK(tables::conductor_colours_by_key("none") == nullptr);
  // ABYC E-11 and IEC 60445 as remembered in the reference pack; DIN 72551 brown for minus (from memory).
  CHECK(tables::conductor_colours_of(Practice::us_marine).minus == "yellow");
  CHECK(tables::conductor_colours_of(Practice::building).minus == "white");
  CHECK(tables::conductor_colours_of(Practice::european_vehicle).minus == "brown");
  CHECK(tables::conductor_colours_of(Practice::us_rv).plus == "black");
  CHECK(tables::conductor_colours_of(Practice::us_rv).minus == "white");
  CHECK(tables::conductor_colours_of(Practice::small_craft).minus == "black");
  CHECK(tables::kTrustNoColour.find("meter") != std::string_view::npos);
}
