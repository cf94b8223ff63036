#include "tables/fuse.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "reference/reference.h"

using tables::FuseFamily;
using tables::FuseFamilyId;
using units::Amperes;

namespace {

double opens_s(FuseFamilyId id, double rating_a, double multiple) {
  const auto time = tables::opens_within(tables::fuse_family(id), Amperes(rating_a), Amperes(rating_a * multiple));
  return time ? time->number() : -1.0;
}

std::vector<const FuseFamily*> every_family() {
  std::vector<const FuseFamily*> all;
  for (const FuseFamily& family : tables::fuse_families()) all.push_back(&family);
  for (const FuseFamily* family : tables::main_fuse_kinds()) {
    if (std::find(all.begin(), all.end(), family) == all.end()) all.push_back(family);
  }
  return all;
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
  for (const FuseFamily* family : every_family()) {
    for (std::size_t i = 1; i < family->ratings_a.size(); ++i) CHECK(family->ratings_a[i] > family->ratings_a[i - 1]);
  }
  same(FuseFamilyId::bolt_on, reference::read("fuses")["rows"]["main_kinds"][0]["ratings_A"]);
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
  never_faster(FuseFamilyId::bolt_on_large, rows["gates_bolt_on_60_to_500A_large"]);
  never_faster(FuseFamilyId::class_t, rows["main_kinds"][4]["gates"]);
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

TEST_CASE("What holds is never slower than the fastest figure published") {
  const auto& rows = reference::read("fuses")["rows"];
  const auto never_slower = [](FuseFamilyId id, const nlohmann::json& gates) {
    for (const auto& printed : gates) {
      if (printed["min_s"].is_null()) continue;
      const double multiple = printed["pct"].get<double>() / 100.0;
      const auto held = tables::holds_for(tables::fuse_family(id), Amperes(10), Amperes(10 * multiple));
      if (held) CHECK(held->number() <= printed["min_s"].get<double>());
    }
  };
  never_slower(FuseFamilyId::blade, rows["gates_type_C"]);
  never_slower(FuseFamilyId::mini_blade, rows["gates_type_F"]);
  never_slower(FuseFamilyId::large_blade, rows["gates_type_E"]);
  never_slower(FuseFamilyId::bolt_on, rows["gates_bolt_on_30_to_200A_strip"]);
  never_slower(FuseFamilyId::bolt_on_large, rows["gates_bolt_on_60_to_500A_large"]);
  // Typed a second time: a blade at 350 % may open after 0.04 s; past its last gate nothing is promised.
  CHECK(tables::holds_for(tables::fuse_family(FuseFamilyId::blade), Amperes(10), Amperes(35))->number() == 0.04);
  CHECK_FALSE(tables::holds_for(tables::fuse_family(FuseFamilyId::blade), Amperes(10), Amperes(70)).has_value());
}

TEST_CASE("More current never opens a fuse later") {
  for (const FuseFamily* one : every_family()) {
    const FuseFamily& family = *one;
    for (const double rating : family.ratings_a) {
      double last = 1e99;
      for (double multiple = 1.0; multiple < 12.0; multiple += 0.01) {
        const double time = opens_s(family.id, rating, multiple);
        if (time < 0.0) continue;
        CHECK(time <= last);
        last = time;
      }
      CHECK(last <= (family.resettable ? 2.0 : 1.5));
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
  CHECK(tables::fuse_colour(FuseFamilyId::blade_80v, Amperes(15)) == "blue");
  for (const auto& row : reference::read("fuses")["rows"]["colours_type_E"]) {
    const auto word = std::string(tables::fuse_colour(FuseFamilyId::large_blade, Amperes(row["rating_A"].get<double>())));
    const std::string printed = row["colour"].get<std::string>();
    CHECK(word.empty() == (printed.find("varies") != std::string::npos));
    if (!word.empty()) CHECK(printed.find(word) != std::string::npos);
  }
  // Typed a second time: 35 A brown, 100 A differs between makers.
  CHECK(tables::fuse_colour(FuseFamilyId::large_blade, Amperes(35)) == "brown");
  CHECK(tables::fuse_colour(FuseFamilyId::large_blade, Amperes(100)).empty());
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

TEST_CASE("Warm, a fuse loses more than cold: listed drops at the rating") {
  double least = 9.0, most = 0.0;
  for (const auto& row : reference::read("fuses")["rows"]["drop_and_cold_resistance"]) {
    const FuseFamily& family = tables::fuse_family(row["type"] == "C" ? FuseFamilyId::blade : FuseFamilyId::large_blade);
    const Amperes rating(row["rating_A"].get<double>());
    const auto hot = tables::fuse_hot_resistance(family, rating);
    CHECK(tables::fuse_resistance(family, rating, rating) == hot);
    CHECK(tables::fuse_resistance(family, rating, rating * 2.0) == hot);
    CHECK(tables::fuse_resistance(family, rating, Amperes(0)) == *tables::fuse_cold_resistance(family.id, rating));
    const double half = tables::fuse_resistance(family, rating, rating * 0.5).number();
    CHECK(half > tables::fuse_cold_resistance(family.id, rating)->number());
    CHECK(half < hot.number());
    if (row.contains("melt_I2t_A2s")) {
      CHECK(tables::fuse_melting_heat(family.id, rating)->number() == row["melt_I2t_A2s"].get<double>());
      // More than the least gate lets through in its least time, or the gate would be wrong.
      const auto held = tables::holds_for(family, rating, rating * 3.5);
      CHECK(row["melt_I2t_A2s"].get<double>() > std::pow(3.5 * rating.number(), 2.0) * held->number() * 0.5);
    } else {
      CHECK_FALSE(tables::fuse_melting_heat(family.id, rating).has_value());
    }
    if (!row.contains("drop_mV")) continue;
    CHECK((hot * rating).number() * 1000.0 == doctest::Approx(row["drop_mV"].get<double>()));
    const double factor = row["drop_mV"].get<double>() / (row["cold_mohm"].get<double>() * rating.number());
    least = std::min(least, factor);
    most = std::max(most, factor);
  }
  CHECK(tables::kFuseHotFactor > least);
  CHECK(tables::kFuseHotFactor < most);
  // Typed a second time: a 15 A blade drops 102 mV at 15 A; 0.2 % of 12 V more than cold.
  const FuseFamily& blade = tables::fuse_family(FuseFamilyId::blade);
  const double more = (tables::fuse_hot_resistance(blade, Amperes(15)) * Amperes(15)).number() - 0.0048 * 15;
  CHECK(more / 12.0 == doctest::Approx(0.0025).epsilon(0.05));
  for (const FuseFamily* family : every_family()) {
    for (const double rating : family->ratings_a) {
      const double drop = (tables::fuse_hot_resistance(*family, Amperes(rating)) * Amperes(rating)).number();
      CHECK(drop > 0.05);
      CHECK(drop < 0.21);
    }
    CHECK(tables::fuse_hot_resistance(*family, Amperes(0)).number() == 0.0);
  }
}

TEST_CASE("Bolted contacts are not clips") {
  const auto& rows = reference::read("fuses")["rows"]["contacts_mohm"];
  for (const FuseFamily* family : every_family()) {
    const double milliohm = family->contact_resistance.number() * 1000.0;
    const auto& band = rows[family->bolted ? 1 : 0];
    CHECK(milliohm >= band["low"].get<double>());
    CHECK(milliohm <= band["high"].get<double>());
  }
}

TEST_CASE("Main fuse kinds: what each breaks at which voltage (from memory)") {
  const auto& printed = reference::read("fuses")["rows"]["main_kinds"];
  const FuseFamilyId ids[] = {FuseFamilyId::bolt_on, FuseFamilyId::bolt_on_large, FuseFamilyId::bolt_on_marine,
                              FuseFamilyId::terminal_post, FuseFamilyId::class_t, FuseFamilyId::breaker};
  REQUIRE(printed.size() == std::size(ids));
  for (std::size_t i = 0; i < printed.size(); ++i) {
    const FuseFamily& family = tables::fuse_family(ids[i]);
    REQUIRE(family.breaking.size() == printed[i]["breaking"].size());
    for (const auto& point : printed[i]["breaking"]) {
      CHECK(tables::breaks_at(family, units::Volts(point[0].get<double>())).number() == point[1].get<double>());
    }
    CHECK(tables::breaks_at(family, family.rated_voltage + units::Volts(0.1)).number() == 0.0);
    CHECK(tables::breaks_at(family, family.rated_voltage) == family.breaking_capacity);
    CHECK(family.citation->standing == tables::Standing::memory);
  }
  for (const FuseFamily* kind : tables::main_fuse_kinds()) {
    CHECK(kind->may_be_main);
    CHECK((kind->bolted || kind->id == FuseFamilyId::large_blade));
    for (std::size_t i = 1; i < kind->breaking.size(); ++i) {
      CHECK(kind->breaking[i].up_to > kind->breaking[i - 1].up_to);
      CHECK(kind->breaking[i].breaks < kind->breaking[i - 1].breaks);
    }
  }
  // A full lithium battery of 48 V (58.4 V): only class T, and the 80 V blade in a branch.
  for (const FuseFamily* family : every_family()) {
    const bool serves = tables::breaks_at(*family, units::Volts(58.4)).number() > 0.0;
    CHECK(serves == (family->id == FuseFamilyId::class_t || family->id == FuseFamilyId::blade_80v || family->id == FuseFamilyId::bolt_on_80v));
  }
}

TEST_CASE("Families are found by key and named by the standard's form; marked fuses alone serve 48 V in a branch") {
  for (const FuseFamily& family : tables::fuse_families()) {
    const bool serves_48 = family.rated_voltage.number() >= 58.0;
    CHECK(serves_48 == (family.id == FuseFamilyId::blade_high_voltage || family.id == FuseFamilyId::blade_80v ||
                       family.id == FuseFamilyId::bolt_on_80v));
  }
  for (const FuseFamily* family : every_family()) {
    CHECK(tables::fuse_family_by_key(family->key) == family);
    CHECK(&tables::fuse_family(family->id) == family);
    CHECK(family->breaking_capacity.number() >= 1000.0);
    // One maker's words for sizes are for searching, not for showing.
    for (const char* word : {"mini", "maxi", "Mini", "Maxi"}) CHECK(tables::full_name(*family).find(word) == std::string::npos);
  }
  CHECK(tables::full_name(tables::fuse_family(FuseFamilyId::mini_blade)) == "Small blade fuse (type F)");
  CHECK(tables::fuse_family_by_key("none") == nullptr);
}
