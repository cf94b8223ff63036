// Queries as people would type them, with what must come first.
#include "reference/search.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <string>

namespace {

struct Query {
  const char* text;
  const char* first;   // address
};

// Several answers may be right for a loose query; where so, the first is the one a person most
// likely wants (our judgement).
constexpr Query kQueries[] = {
    // Wire by size, joined, apart, turned round, misspelt
    {"10awg", "#tables/wire/10awg"}, {"10 awg", "#tables/wire/10awg"}, {"awg10", "#tables/wire/10awg"},
    {"AWG 10", "#tables/wire/10awg"}, {"#10 awg", "#tables/wire/10awg"}, {"10 gauge", "#tables/wire/10awg"},
    {"10 guage wire", "#tables/wire/10awg"}, {"10ga", "#tables/wire/10awg"}, {"1/0", "#tables/wire/1/0awg"},
    {"4/0 awg", "#tables/wire/4/0awg"}, {"2/0awg", "#tables/wire/2/0awg"}, {"18 awg", "#tables/wire/18awg"},
    {"14awg wire", "#tables/wire/14awg"}, {"2.5mm", "#tables/wire/2.5mm2"}, {"2.5 mm2", "#tables/wire/2.5mm2"},
    {"2,5 mm2", "#tables/wire/2.5mm2"}, {"2.5mm²", "#tables/wire/2.5mm2"}, {"2.5 mm^2", "#tables/wire/2.5mm2"},
    {"6mm2", "#tables/wire/6mm2"}, {"6 sqmm", "#tables/wire/6mm2"}, {"0.75mm2", "#tables/wire/0.75mm2"},
    {"120 mm2", "#tables/wire/120mm2"}, {"1.50 mm2", "#tables/wire/1.5mm2"}, {"wire", "#tables/wire"},
    // Ampacity
    {"ampacity 10awg", "#tables/ampacity-boat/10awg"}, {"how many amps 10 awg", "#tables/ampacity-boat/10awg"},
    {"ampacity factors", "#tables/ampacity-factors"}, {"engine space", "#tables/ampacity-factors/engine-space"},
    {"3 circuits bundled", "#tables/ampacity-factors/tied-3"}, {"bundling", "#tables/ampacity-factors"},
    {"clipped 4mm2", "#tables/ampacity-clipped/4mm2"}, {"conduit ampacity", "#tables/ampacity-conduit"},
    {"derating", "#quick/most-current"},
    // Fuses
    {"fuse 15a", "#tables/fuses/blade-15"}, {"15a fuse", "#tables/fuses/blade-15"}, {"15 amp fuse", "#tables/fuses/blade-15"},
    {"blue fuse", "#tables/fuses/blade-15"}, {"red fuse", "#tables/fuses/blade-10"}, {"yellow fuse", "#tables/fuses/blade-20"},
    {"tan fuse", "#tables/fuses/blade-5"}, {"7.5a fuse", "#tables/fuses/blade-7.5"}, {"7,5 amp fuse", "#tables/fuses/blade-7.5"},
    {"brown fuse", "#tables/fuses/blade-7.5"}, {"clear fuse", "#tables/fuses/blade-25"}, {"purple fuse", "#tables/fuses/blade-3"},
    {"green blade fuse", "#tables/fuses/blade-30"}, {"mini blade 10", "#tables/fuses/mini-blade-10"},
    {"mini fuse 20a", "#tables/fuses/mini-blade-20"}, {"large blade 60a", "#tables/fuses/large-blade-60"},
    {"bolted strip 100a", "#tables/fuses/bolt-on-100"}, {"100 amp fuse", "#tables/fuses/large-blade-100"},
    {"fuse colours", "#tables/fuses"}, {"fuse colors", "#tables/fuses"}, {"fuse 200%", "#tables/fuse-times/blade-200"},
    {"fuse blade 135 percent", "#tables/fuse-times/blade-135"}, {"fuse curve", "#quick/fuse-at-n-times"},
    {"breaking capacity", "#tables/fuse-kinds"}, {"fuse kinds", "#tables/fuse-kinds"},
    // On the ends of wires
    {"red crimp", "#tables/crimps/red"}, {"blue crimp", "#tables/crimps/blue"}, {"yellow crimp", "#tables/crimps/yellow"},
    {"yelow crimp", "#tables/crimps/yellow"}, {"red butt connector", "#tables/crimps/red"}, {"lever splice", "#tables/splices"},
    {"cca", "#tables/wire-metals/copper-clad-aluminium"}, {"two core", "#tables/ampacity-factors/two-core"},
    {"12 sae", "#tables/wire/12sae"}, {"brown minus", "#tables/colours/vehicle-europe"},
    {"twist on", "#tables/splices/splice-twist"}, {"6.3 tab", "#tables/tabs/6.3"}, {"6.3mm spade", "#tables/tabs/6.3"},
    {"4.8mm tab", "#tables/tabs/4.8-0.5"}, {"tab 10awg", "#tables/tabs/with-10awg"}, {"m6 ring", "#tables/rings/M6"},
    {"ring m8", "#tables/rings/M8"}, {"ring 1/4", "#tables/rings/M6"}, {"ferrule 2.5", "#tables/ferrules/2.5mm2"},
    {"ferrule 6mm2", "#tables/ferrules/6mm2"}, {"bootlace 4mm", "#tables/ferrules/4mm2"}, {"ferrul", "#tables/ferrules"},
    {"strip length", "#tables/strip"}, {"strip lever splice", "#tables/strip/lever-splice-4"},
    {"pull force 10awg", "#tables/pull/10awg"}, {"crimp strength 14 awg", "#tables/pull/14awg"},
    {"stud ring holes", "#tables/rings"}, {"splices", "#tables/splices"},
    // Outlets, colours
    {"lighter socket", "#tables/outlets/lighter"}, {"cigarette", "#tables/outlets/lighter"},
    {"cigarette socket", "#tables/outlets/lighter"}, {"cigarete lighter", "#tables/outlets/lighter"},
    {"cigar lighter polarity", "#tables/outlets/lighter"}, {"usb charger", "#tables/outlets/usb"},
    {"phone charger", "#tables/outlets/usb"}, {"iso 4165", "#tables/outlets/iso4165"}, {"outlet polarity", "#tables/outlets"},
    {"conductor colours", "#tables/colours"}, {"wire color boat", "#tables/colours/boat-us"}, {"GNYE", "#tables/colours/GNYE"},
    {"bu", "#tables/colours/BU"}, {"violet vt", "#tables/colours/VT"},
    // Batteries
    {"lifepo4 12.9", "#tables/batteries/lifepo4-20"}, {"lifepo4 13.2v", "#tables/battery-kinds/lifepo4"},
    {"agm 12.3", "#tables/batteries/lead-agm-50"}, {"flooded 12.06", "#tables/batteries/lead-flooded-25"},
    {"lithium 50%", "#tables/batteries/lifepo4-50"}, {"resting voltage battery", "#tables/batteries"},
    {"internal resistance agm", "#tables/battery-kinds/lead-agm"}, {"state of charge", "#tables/batteries"},
    // Meter, joints, drops, fuse places, cautions
    {"continuity", "#tables/meter/continuity"}, {"multimeter", "#tables/meter"}, {"continuty", "#tables/meter/continuity"},
    {"ghost voltage", "#tables/meter/ghost"}, {"test lamp", "#tables/meter/lamp"}, {"minus sign", "#tables/meter/sign"},
    {"joint resistance", "#quick/joint"}, {"corroded tab", "#tables/joints/bad"}, {"10 percent", "#tables/drop-limits/ten"},
    {"3%", "#tables/drop-limits/three"}, {"7 inch", "#tables/fuse-places/seven-inches"}, {"72 inches", "#tables/fuse-places/battery-post"},
    {"where does a fuse sit", "#tables/fuse-places"}, {"cautions", "#tables/cautions"}, {"hydrogen", "#tables/cautions/gas"},
    // Calculators
    {"voltage drop", "#quick/drop-of-a-run"}, {"drop of a run", "#quick/drop-of-a-run"}, {"volatge drop", "#quick/drop-of-a-run"},
    {"wire size", "#quick/wire-for-a-run"}, {"what size wire", "#quick/wire-for-a-run"}, {"longest run", "#quick/longest-run"},
    {"max length", "#quick/longest-run"}, {"most current", "#quick/most-current"}, {"fuse for wire", "#quick/fuse-for-a-wire"},
    {"fuse size", "#quick/fuse-for-a-wire"}, {"watts to amps", "#quick/watts-amps-volts"}, {"watt amp volt", "#quick/watts-amps-volts"},
    {"awg to mm2", "#quick/wire-sizes"}, {"convert awg", "#quick/wire-sizes"}, {"parallel", "#quick/loads-together"},
    {"series resistors", "#quick/loads-together"}, {"how long battery", "#quick/battery-run-time"},
    {"battery run time", "#quick/battery-run-time"}, {"batery runtime", "#quick/battery-run-time"}, {"peukert", "#quick/battery-run-time"},
    {"bad joint heat", "#quick/joint"}, {"short circuit current", "#quick/short-at-the-far-end"}, {"short circuit", "#quick/short-at-the-far-end"},
    {"loaded reading", "#quick/path"},
    // How-to cards
    {"how to crimp", "#tables/how/crimp"}, {"crimp a terminal", "#tables/how/crimp"}, {"strip a wire", "#tables/how/strip"},
    {"tug", "#tables/how/tug"}, {"prove dead", "#tables/how/prove-dead"}, {"label", "#tables/how/label"},
    {"look behind splice", "#tables/how/splice"}, {"drop under load", "#tables/how/drop-under-load"},
};

const reference::Book& book() {
  static const reference::Book made = reference::make_book(units::Preference::metric);
  return made;
}
const reference::SearchIndex& index() {
  static const reference::SearchIndex made(book());
  return made;
}

}  // namespace

TEST_CASE("What people type finds what they mean, first") {
  CHECK(std::size(kQueries) >= 100);
  for (const Query& query : kQueries) {
    const auto hits = index().find(query.text, 5);
    REQUIRE_MESSAGE(!hits.empty(), query.text);
    std::string others;
    for (const auto& hit : hits) others += "\n    " + hit.address + "  " + std::to_string(hit.score);
    CHECK_MESSAGE(hits.front().address == query.first, "'" << std::string(query.text) << "' wants " << std::string(query.first) << others);
  }
}

TEST_CASE("Results come as you type: each longer beginning still finds it") {
  for (const char* whole : {"lighter", "continuity", "peukert", "ferrule", "crimp", "battery"}) {
    const std::string word = whole;
    for (std::size_t n = 2; n <= word.size(); ++n) {
      CHECK_MESSAGE(!index().find(word.substr(0, n)).empty(), word.substr(0, n));
    }
  }
}

TEST_CASE("Nothing for nothing, and no more than asked for") {
  for (const char* empty : {"", " ", "---", "!?", "²²"}) (void)index().find(empty);
  CHECK(index().find("").empty());
  CHECK(index().find("--- ?!").empty());
  CHECK(index().find("xqzzyw").empty());
  CHECK(index().find("fuse", 3).size() == 3);
  CHECK(index().find("fuse", 0).empty());
}

TEST_CASE("US units find the same sizes") {
  const reference::Book us = reference::make_book(units::Preference::us);
  const reference::SearchIndex found(us);
  CHECK(found.find("10awg").front().address == "#tables/wire/10awg");
  CHECK(found.find("2.5mm").front().address == "#tables/wire/2.5mm2");
  CHECK(found.find("6.3mm tab").front().address == "#tables/tabs/6.3");
}

// A phone four times as slow as this machine still answers within a frame (16 ms) at 4 ms here;
// the aim natively is below 1 ms. Best of several runs: other programs share the machine.
TEST_CASE("A keystroke is fast") {
  double worst_ms = 0.0;
  for (const Query& query : kQueries) {
    double best_ms = 1e9;
    for (int run = 0; run < 5; ++run) {
      const auto start = std::chrono::steady_clock::now();
      (void)index().find(query.text);
      const double ms = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
      best_ms = std::min(best_ms, ms);
    }
    worst_ms = std::max(worst_ms, best_ms);
  }
  MESSAGE("slowest query " << worst_ms << " ms");
  CHECK(worst_ms < 4.0);
}
