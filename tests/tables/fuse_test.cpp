#include "tables/fuse.h"

#include <doctest/doctest.h>

#include <string>

#include "reference/reference.h"

using tables::FuseFamily;
using tables::FuseFamilyId;
using units::Amperes;

namespace {

double opens_s(FuseFamilyId id, double rating_a, double multiple) {
  const auto time = tables::opens_within(tables::fuse_family(id), Amperes(rating_a), Amperes(rating_a * multiple));
  return time ? time->number() : -1.0;
}

}  // namespace

TEST_CASE("Ratings are those published, ascending") {
  const auto& types = reference::read("fuses")["rows"]["types"];
  const auto same = [](FuseFamilyId id, const nlohmann::json& printed) {
    const auto ratings = tables::fuse_family(id).ratings_a;
    REQUIRE(ratings.size() == printed.size());
    for (std::size_t i = 0; i < ratings.size(); ++i) CHECK(ratings[i] == printed[i].get<double>());
  };
  same(FuseFamilyId::blade, types[0]["ratings_A"]);
  same(FuseFamilyId::mini_blade, types[1]["ratings_A"]);
  same(FuseFamilyId::large_blade, types[2]["ratings_A"]);
  for (const FuseFamily& family : tables::fuse_families()) {
    for (std::size_t i = 1; i < family.ratings_a.size(); ++i) CHECK(family.ratings_a[i] > family.ratings_a[i - 1]);
  }
}

TEST_CASE("No gate is faster than any figure published for it") {
  // The app may be slower than a copy (editions differ), never faster.
  const auto& rows = reference::read("fuses")["rows"];
  const auto never_faster = [](FuseFamilyId id, const nlohmann::json& gates) {
    for (const auto& printed : gates) {
      if (printed["max_s"].is_null()) continue;
      const double multiple = printed["pct"].get<double>() / 100.0;
      CHECK(opens_s(id, 10.0, multiple) >= printed["max_s"].get<double>());
      CHECK(opens_s(id, 10.0, multiple) <= 3.01 * printed["max_s"].get<double>());
    }
  };
  never_faster(FuseFamilyId::blade, rows["gates_type_C"]);
  never_faster(FuseFamilyId::mini_blade, rows["gates_type_F"]);
  never_faster(FuseFamilyId::blade_high_voltage, rows["gates_type_C"]);
  never_faster(FuseFamilyId::large_blade, rows["gates_type_E"]);
  never_faster(FuseFamilyId::bolt_on, rows["gates_bolt_on_30_to_200A_strip"]);
  // Typed a second time: medium blade 135 % 1800 s in the slowest edition, 350 % 0.5 s, 600 % 0.15 s.
  CHECK(opens_s(FuseFamilyId::blade, 15.0, 1.35) == 1800.0);
  CHECK(opens_s(FuseFamilyId::blade, 15.0, 3.5) == 0.5);
  CHECK(opens_s(FuseFamilyId::blade, 15.0, 6.0) == 0.15);
}

TEST_CASE("Between gates the slower one holds, below the first nothing is promised") {
  CHECK(opens_s(FuseFamilyId::blade, 10.0, 1.0) == -1.0);
  CHECK(opens_s(FuseFamilyId::blade, 10.0, 1.349) == -1.0);
  CHECK(opens_s(FuseFamilyId::blade, 10.0, 1.999) == 50.0);
  CHECK(opens_s(FuseFamilyId::blade, 10.0, 2.0) == 5.0);
  CHECK(opens_s(FuseFamilyId::blade, 10.0, 100.0) == 0.15);
  const FuseFamily& blade = tables::fuse_family(FuseFamilyId::blade);
  CHECK_FALSE(tables::opens_within(blade, Amperes(0), Amperes(100)).has_value());
  CHECK_FALSE(tables::opens_within(blade, Amperes(-5), Amperes(100)).has_value());
}

TEST_CASE("More current never opens a fuse later") {
  for (const FuseFamily& family : tables::fuse_families()) {
    for (const double rating : family.ratings_a) {
      double last = 1e99;
      for (double multiple = 1.0; multiple < 12.0; multiple += 0.01) {
        const double time = opens_s(family.id, rating, multiple);
        if (time < 0.0) continue;
        CHECK(time <= last);
        last = time;
      }
      CHECK(last < 2.0);
    }
    for (std::size_t i = 0; i < family.gates.size(); ++i) {
      const tables::FuseGate& gate = family.gates[i];
      CHECK((gate.not_before || gate.opens_within));
      if (gate.not_before && gate.opens_within) CHECK(*gate.not_before < *gate.opens_within);
      if (i > 0) CHECK(gate.multiple > family.gates[i - 1].multiple);
    }
  }
}

TEST_CASE("What is only remembered is not called a standard's") {
  const FuseFamily& bolt_on = tables::fuse_family(FuseFamilyId::bolt_on);
  CHECK(bolt_on.citation->standing == tables::Standing::memory);
  for (const tables::FuseGate& gate : bolt_on.gates) CHECK(gate.standing == tables::Standing::memory);
  CHECK(bolt_on.citation->document.find("ISO") == std::string_view::npos);
  CHECK(bolt_on.citation->note.find("not checked") != std::string_view::npos);
}

TEST_CASE("Colours as moulded on blade fuses (from memory), empty where makers differ") {
  for (const auto& row : reference::read("fuses")["rows"]["colours_type_C_F"]) {
    const auto word = std::string(tables::fuse_colour(FuseFamilyId::blade, Amperes(row["rating_A"].get<double>())));
    if (row["rating_A"] == 35) {
      CHECK(word.empty());
    } else {
      REQUIRE_FALSE(word.empty());
      CHECK(row["colour"].get<std::string>().find(word) != std::string::npos);
    }
  }
  CHECK(tables::fuse_colour(FuseFamilyId::mini_blade, Amperes(15)) == "blue");
  CHECK(tables::fuse_colour(FuseFamilyId::large_blade, Amperes(40)).empty());
  CHECK(tables::fuse_colour(FuseFamilyId::bolt_on, Amperes(100)).empty());
  CHECK(tables::fuse_colour(FuseFamilyId::blade, Amperes(12)).empty());
}

TEST_CASE("Cold resistances as listed") {
  int listed = 0;
  for (const auto& row : reference::read("fuses")["rows"]["drop_and_cold_resistance"]) {
    const auto id = row["type"] == "C" ? FuseFamilyId::blade : FuseFamilyId::large_blade;
    const Amperes rating(row["rating_A"].get<double>());
    const auto ohms = tables::fuse_cold_resistance(id, rating);
    REQUIRE(ohms.has_value());
    CHECK(ohms->number() * 1000.0 == doctest::Approx(row["cold_mohm"].get<double>()));
    // Cold, every element drops 55 to 125 mV at its rating: a slip of a digit would not.
    const double drop_v = (*ohms * rating).number();
    CHECK(drop_v > 0.055);
    CHECK(drop_v < 0.125);
    ++listed;
  }
  CHECK(listed == 15);
  CHECK_FALSE(tables::fuse_cold_resistance(FuseFamilyId::blade, Amperes(35)).has_value());
}

TEST_CASE("Families are found by key; 58 V fuses alone serve 48 V") {
  for (const FuseFamily& family : tables::fuse_families()) {
    CHECK(tables::fuse_family_by_key(family.key) == &family);
    CHECK(&tables::fuse_family(family.id) == &family);
    CHECK(family.breaking_capacity.number() >= 1000.0);
    const bool serves_48 = family.rated_voltage.number() >= 58.0;
    CHECK(serves_48 == (family.id == FuseFamilyId::blade_high_voltage));
  }
  CHECK(tables::fuse_family_by_key("none") == nullptr);
}
