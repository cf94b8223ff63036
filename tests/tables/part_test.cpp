#include "tables/part.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <set>
#include <string>

#include "reference/reference.h"
#include "tables/conductor.h"
#include "tables/terminal.h"

using tables::Part;
using tables::PartKind;
using units::SquareMillimetres;

namespace {

// What every branch goes through; parts in the line have contacts that move and are judged apart.
constexpr std::array kEveryBranch{PartKind::clamp, PartKind::splice, PartKind::terminal, PartKind::outlet, PartKind::wired_in};

const Part& part(const char* key) {
  const Part* found = tables::part_by_key(key);
  REQUIRE_MESSAGE(found != nullptr, key);
  return *found;
}
SquareMillimetres area(const char* id) { return tables::conductor_by_id(id)->area; }

}  // namespace

TEST_CASE("Parts ascend, are found by key, and make sense") {
  std::set<std::string_view> keys;
  for (const PartKind kind : kEveryBranch) {
    const auto list = tables::parts(kind);
    for (std::size_t i = 0; i < list.size(); ++i) {
      const Part& one = list[i];
      CHECK(one.kind == kind);
      CHECK(keys.insert(one.key).second);
      CHECK(tables::part_by_key(one.key) == &one);
      CHECK(one.smallest < one.largest_bare);
      CHECK(one.rated.number() > 0.0);
      CHECK(one.typical_resistance.number() >= 5e-5);
      CHECK(one.typical_resistance.number() <= 2e-3);  // 'good' by the rule of thumb in joints.json
      CHECK(one.continuous <= one.rated);
      CHECK(one.continuous.number() >= 0.6 * one.rated.number());
      CHECK(one.limits_itself == one.rated_power.has_value());
      CHECK_FALSE(one.name.empty());
      if (one.largest_with_ferrule) CHECK(*one.largest_with_ferrule <= one.largest_bare);
      if (i > 0) CHECK(one.largest_bare >= list[i - 1].largest_bare);
    }
  }
  for (const char* key : {"clamp-6", "clamp-16", "clamp-stud-50", "splice-lever-4", "splice-lever-6", "splice-stud-120",
                          "tab-6.3", "tab-9.5", "screw-16", "socket-lighter", "socket-iso4165", "usb-charger"}) {
    CHECK_MESSAGE(keys.count(key) == 1, key);
  }
}

TEST_CASE("A 10 AWG wire fits a 6 mm2 clamp bare, not with a ferrule") {
  CHECK(tables::part_accepts(part("clamp-6"), area("10awg"), false));
  CHECK_FALSE(tables::part_accepts(part("clamp-6"), area("10awg"), true));
  CHECK(tables::part_accepts(part("clamp-6"), area("12awg"), true));
  CHECK(tables::part_accepts(part("clamp-6"), area("6mm2"), false));
  CHECK(tables::part_accepts(part("clamp-6"), area("4mm2"), true));
  CHECK_FALSE(tables::part_accepts(part("clamp-6"), area("8awg"), false));
  CHECK_FALSE(tables::part_accepts(part("splice-lever-4"), area("10awg"), false));
  CHECK(tables::part_accepts(part("splice-lever-4"), area("12awg"), false));
  CHECK_FALSE(tables::part_accepts(part("splice-lever-6"), area("12awg"), true));  // levers take no ferrule
  CHECK_FALSE(tables::part_accepts(part("clamp-16"), area("18awg"), false));       // too thin to hold
}

TEST_CASE("Crimp colours hold the wires they are sold for (seen twice)") {
  CHECK(tables::part_accepts(part("splice-crimp-red"), area("18awg"), false));
  CHECK(tables::part_accepts(part("splice-crimp-red"), area("1.5mm2"), false));
  CHECK(tables::part_accepts(part("splice-crimp-blue"), area("16awg"), false));
  CHECK(tables::part_accepts(part("splice-crimp-blue"), area("14awg"), false));
  CHECK(tables::part_accepts(part("splice-crimp-yellow"), area("12awg"), false));
  CHECK(tables::part_accepts(part("splice-crimp-yellow"), area("10awg"), false));
  CHECK_FALSE(tables::part_accepts(part("splice-crimp-yellow"), area("14awg"), false));
  CHECK_FALSE(tables::part_accepts(part("splice-crimp-blue"), area("12awg"), false));
}

TEST_CASE("Crimp colours say what they hold (tests/reference/terminals.json: seen twice)") {
  const auto& rows = reference::read("terminals")["rows"]["insulated_crimp_colours"];
  REQUIRE(rows.size() == tables::crimp_colours().size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const tables::CrimpColour& ours = tables::crimp_colours()[i];
    CHECK(ours.colour == rows[i]["colour"].get<std::string>());
    double low = 0.0, high = 0.0;
    REQUIRE(std::sscanf(rows[i]["mm2"].get<std::string>().c_str(), "%lf-%lf", &low, &high) == 2);
    CHECK(ours.smallest.number() == low);
    CHECK(ours.largest.number() == high);
    int thin = 0, thick = 0, our_thin = 0, our_thick = 0;
    REQUIRE(std::sscanf(rows[i]["awg"].get<std::string>().c_str(), "%d-%d", &thin, &thick) == 2);
    REQUIRE(std::sscanf(std::string(ours.awg).c_str(), "%d to %d", &our_thin, &our_thick) == 2);
    CHECK(our_thin == thin);
    CHECK(our_thick == thick);
  }
}

TEST_CASE("Nothing that moves is offered a twist-on connector") {
  for (const Part* splice : tables::splices_offered(true)) CHECK(splice->stands_vibration);
  const auto fixed = tables::splices_offered(false);
  CHECK(fixed.size() == tables::parts(PartKind::splice).size());
  CHECK(std::any_of(fixed.begin(), fixed.end(), [](const Part* p) { return p->key == "splice-twist"; }));
  CHECK_FALSE(part("splice-twist").stands_vibration);
}

TEST_CASE("A 6.3 mm tab carries what its wire allows (UL 310, from memory, lower ends)") {
  const Part& tab = part("tab-6.3");
  const auto rating = [&](const char* id) { return tables::part_rating_with(tab, area(id)).number(); };
  CHECK(rating("18awg") == 7);
  CHECK(rating("16awg") == 10);
  CHECK(rating("14awg") == 15);
  CHECK(rating("12awg") == 20);
  CHECK(rating("10awg") == 24);
  CHECK(rating("0.75mm2") == 5);
  CHECK(rating("1.5mm2") == 10);
  CHECK(rating("6mm2") == 24);
  CHECK(tables::part_rating_with(part("screw-16"), area("18awg")) == part("screw-16").rated);
  CHECK(tables::part_rating_citation(tab, area("12awg")).id == "ul-310-tab-current");
  // The block's tab and the narrow one go by the wire too: 16 AWG carries 10 A on each, 18 AWG 7 A.
  for (const char* key : {"clamp-tab", "tab-4.8"}) {
    CHECK(tables::part_rating_with(part(key), area("16awg")).number() == 10);
    CHECK(tables::part_rating_with(part(key), area("18awg")).number() == 7);
    CHECK(tables::part_rating_citation(part(key), area("18awg")).id == "ul-310-tab-current");
  }
  CHECK(tables::part_rating_with(part("clamp-tab"), area("10awg")).number() == 24);
  CHECK(tables::part_rating_with(part("tab-4.8"), area("14awg")).number() == 10);
  double last = 0.0;
  for (double mm2 = 0.5; mm2 < 8.0; mm2 += 0.01) {
    const double now = tables::part_rating_with(tab, SquareMillimetres(mm2)).number();
    CHECK(now >= last);
    last = now;
  }
}

TEST_CASE("There are parts for circuits from 1 to 200 A") {
  for (double current = 1.0; current <= 200.0; current += 1.0) {
    for (const PartKind kind : kEveryBranch) {
      const auto list = tables::parts(kind);
      CHECK(std::any_of(list.begin(), list.end(), [&](const Part& p) { return p.rated.number() >= current; }));
    }
  }
}

TEST_CASE("Outlets by what is published of them") {
  for (const auto& row : reference::read("outlets")["rows"]) {
    if (row["type"] == "ISO 4165") CHECK(part("socket-iso4165").rated.number() == row["max_A"].get<double>());
  }
  // Lighter-form: 10 to 20 A (from memory).
  CHECK(part("socket-lighter").rated.number() >= 10.0);
  CHECK(part("socket-lighter").rated.number() <= 20.0);
}

TEST_CASE("What flows for long, what limits itself, and what is wired in") {
  // Reference pack: treat a socket as a 10 A branch unless the maker says otherwise.
  CHECK(part("socket-lighter").continuous.number() == 10);
  CHECK(part("socket-iso4165").continuous.number() == 10);
  CHECK(part("socket-lighter-20").continuous.number() == 16);   // marked: 80 %
  CHECK(part("clamp-6").continuous == part("clamp-6").rated);
  for (const Part& outlet : tables::parts(PartKind::outlet)) {
    const bool charger = outlet.key.starts_with("usb-");
    CHECK(outlet.limits_itself == charger);
    CHECK(outlet.wired_in == outlet.key.starts_with("wired-"));
    // What it takes at 10.5 V, where devices stop, still is within its rating.
    if (charger) CHECK(outlet.rated_power->number() / 10.5 <= outlet.rated.number() * 1.15);
    if (charger) CHECK(outlet.rated_power->number() / 12.0 <= outlet.rated.number());
  }
  for (const Part& joint : tables::parts(PartKind::wired_in)) CHECK(joint.wired_in);
}

TEST_CASE("Parts in the line: rated, with a current for long, losing less than a service limit") {
  std::set<std::string_view> keys;
  for (const Part& one : tables::parts(PartKind::in_line)) {
    CHECK(keys.insert(one.key).second);
    CHECK(tables::part_by_key(one.key) == &one);
    CHECK(one.smallest < one.largest_bare);
    CHECK(one.continuous < one.rated);
    CHECK(one.continuous.number() >= 0.6 * one.rated.number());
    // Vehicle service practice (from memory): a switch loses at most 0.3 V.
    const double drop = (one.typical_resistance * one.rated).number();
    CHECK(drop > 0.005);
    CHECK(drop < 0.3);
    CHECK(one.citation->standing == tables::Standing::memory);
  }
  for (const char* key : {"switch-rocker", "switch-toggle", "relay-30", "breaker-dc", "fuse-holder-inline", "disconnect-100"}) {
    CHECK_MESSAGE(keys.count(key) == 1, key);
  }
}

TEST_CASE("On the water only splices that may hold the pull: no levers, no twist-on") {
  const auto offered = tables::splices_offered(true, true);
  CHECK_FALSE(offered.empty());
  for (const Part* splice : offered) {
    CHECK(splice->key.find("lever") == std::string_view::npos);
    CHECK(splice->key != "splice-twist");
  }
  // IEC 60999-1 asks 80 N of a 6 mm2 clamping unit (from memory), boats 178 N of 10 AWG (terminals.json).
  for (const tables::PullForce& pull : tables::pull_forces()) {
    if (pull.awg == "10") CHECK(*pull.boat_n > 80.0);
  }
}

TEST_CASE("Strip lengths: 8 to 10 mm in a clamp, 12 to 14 in a 6 mm2 lever, a ferrule's sleeve and 2 mm (from memory)") {
  const auto strip = [](const char* key) {
    const tables::StripLength* found = tables::strip_length_of_part(key);
    REQUIRE_MESSAGE(found != nullptr, key);
    return std::pair{found->low.number(), found->high.number()};
  };
  CHECK(strip("clamp-6") == std::pair{8.0, 10.0});
  CHECK(strip("splice-lever-6") == std::pair{12.0, 14.0});
  CHECK(strip("splice-lever-4") == std::pair{10.0, 12.0});
  CHECK(tables::strip_length_of_part("tab-6.3") == nullptr);
  for (const tables::Ferrule& ferrule : tables::ferrules()) CHECK((ferrule.strip - ferrule.sleeve).number() == 2.0);
}
