// The rows of checks and faults: each answer's words say what its key means, and each fault is seen as the
// answer that eyes, hands or a meter would give. All typed here a second time, from what the words say to
// whoever stands at the block (common practice, no source): two that change places are noticed.
#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>
#include <set>
#include <string>

#include "diagnosis/check_row.h"
#include "diagnosis/checks.h"
#include "diagnosis/faulty.h"
#include "diagnosis/likelihood.h"
#include "diagnosis/tracer.h"

using namespace diagnosis;
using diagnosis_test::three_outlets;
using doctest::Approx;
using enum diagnosis::FaultKind;

namespace {

constexpr auto kPlus = network::Side::positive, kMinus = network::Side::negative;

// In files, and in what is shown, for a 12 V system with red and black wires: 12.8 V is a rested AGM battery (readings_test.cpp).
struct Words {
  const char* check;   // id begins so
  const char* answer;  // as files hold it
  const char* words;
};
// clang-format off
constexpr Words kWords[] = {
    {"volts contact+2 contact-2 in", "full", "About 12.8 V"},
    {"volts contact+2 contact-2 in", "between", "In between"},
    {"volts contact+2 contact-2 in", "zero", "Near 0 V"},
    {"volts contact+2 contact-2 in", "minus", "Minus"},
    {"glow contact+2 contact-2 in", "bright", "Bright"},
    {"glow contact+2 contact-2 in", "dim", "Dim"},
    {"glow contact+2 contact-2 in", "dark", "Dark"},
    {"ohms clamp+ clamp- out", "joined", "Below 5 Ω"},
    {"ohms clamp+ clamp- out", "some", "Some ohms"},
    {"ohms clamp+ clamp- out", "open", "Open"},
    {"ohms clamp+ clamp- out", "live", "Still live, hands off"},
    {"device-here 1", "works", "Works"},
    {"device-here 1", "weak", "Weak"},
    {"device-here 1", "dead", "Dead"},
    {"other-device 2", "works", "Works"},
    {"other-device 2", "weak", "Weak"},
    {"other-device 2", "dead", "Dead"},
    {"device-elsewhere", "works", "Works there"},
    {"device-elsewhere", "dead", "Dead there too"},
    {"others-work", "all", "They all work"},
    {"others-work", "some", "Some do"},
    {"others-work", "none", "None works"},
    {"wiggle 2", "steady", "No change"},
    {"wiggle 2", "flickers", "It flickers"},
    {"look-behind 2", "fine", "All looks right"},
    {"look-behind 2", "red-splice", "Red splice wrong"},
    {"look-behind 2", "black-splice", "Black splice wrong"},
    {"look-behind 2", "red-tab", "Red tab off"},
    {"look-behind 2", "black-tab", "Black tab off"},
    {"look-behind 2", "crossed-tabs", "Colours crossed at the tabs"},
    {"look-behind 2", "crossed-splice", "Colours crossed at the splices"},
    {"look-behind 2", "other-cable", "Another cable is in there"},
    {"look-behind 2", "damaged", "Cable damaged"},
    {"tug 2", "holds", "All hold"},
    {"tug 2", "red-splice", "Red splice gives"},
    {"tug 2", "black-splice", "Black splice gives"},
    {"tug 2", "red-tab", "Red tab gives"},
    {"tug 2", "black-tab", "Black tab gives"},
    {"tug 2", "live", "Still live, hands off"},
    {"read-gauge 2", "as-drawn", "As drawn"},
    {"read-gauge 2", "thinner", "Thinner"},
    {"block-alive", "yes", "Yes, as always"},
    {"block-alive", "weak", "Weakly"},
    {"block-alive", "no", "No, nothing"},
    {"fuse-look", "whole", "There, and whole"},
    {"fuse-look", "blown", "Blown"},
    {"fuse-look", "missing", "No fuse there"},
    {"fuse-look", "elsewhere", "It sits in another position"},
    {"fuse-press", "works", "Now it works"},
    {"fuse-press", "same", "No change"},
    {"fuse-swap", "works", "Now it works"},
    {"fuse-swap", "same", "Still the same"},
    {"fuse-swap", "blows-at-once", "Blows at once"},
    {"fuse-swap", "blows-later", "Blows after a while"},
    {"pull-fuse 2", "dies", "Dead now"},
    {"pull-fuse 2", "stays", "It still runs"},
    {"pull-fuse 2", "was-dead", "Nothing ran there"},
    {"neighbour-fuse n0", "works", "Now it works"},
    {"neighbour-fuse n0", "same", "No change"},
    {"tug-clamps", "holds", "Both hold"},
    {"tug-clamps", "red", "Red gives"},
    {"tug-clamps", "black", "Black gives"},
    {"tug-clamps", "live", "Still live, hands off"},
    {"main-look", "on", "On, and whole"},
    {"main-look", "off", "Off or blown"},
    {"add-up", "within", "Within the fuse"},
    {"add-up", "over", "More than the fuse"},
};
// clang-format on

double chance_of(const Tracer& tracer, const Fault& fault, const char* id, const char* answer) {
  const std::optional<Check> check = tracer.find_check(id);
  REQUIRE_MESSAGE(check.has_value(), id);
  const std::vector<double> chances = tracer.likelihood(fault, id);
  for (std::size_t c = 0; c < check->choices.size(); ++c) {
    if (answer_text(check->choices[c].key) == answer) return chances[c];
  }
  FAIL(answer, " is no answer of ", id);
  return 0.0;
}

// What somebody sees of a fault, and how likely at least. Three outlets in a chain, 1 to 3; the first dead is 2.
struct SeenAs {
  Fault fault;
  const char* check;
  const char* answer;
  double at_least;
};
// clang-format off
const SeenAs kSeen[] = {
    {{source_flat, {}, kPlus, -1}, "block-alive", "weak", 0.3},
    {{main_open, {}, kPlus, -1}, "main-look", "off", 0.9},
    {{main_open, {}, kPlus, -1}, "block-alive", "no", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "main-look", "on", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "block-alive", "yes", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "fuse-look", "blown", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "fuse-swap", "works", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "fuse-press", "same", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "others-work", "none", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "pull-fuse 2", "was-dead", 0.9},
    {{fuse_missing, {}, kPlus, -1}, "fuse-look", "missing", 0.9},
    {{fuse_elsewhere, {}, kPlus, -1}, "fuse-look", "elsewhere", 0.9},
    {{fuse_loose, {}, kPlus, -1}, "fuse-look", "whole", 0.9},
    {{fuse_loose, {}, kPlus, -1}, "fuse-press", "works", 0.6},
    {{clamp_loose, {}, kPlus, -1}, "tug-clamps", "red", 0.85},
    {{clamp_loose, {}, kMinus, -1}, "tug-clamps", "black", 0.85},
    {{clamp_loose, {}, kPlus, -1}, "tug 2", "holds", 0.9},
    {{tab_off, {2}, kPlus, -1}, "tug-clamps", "holds", 0.9},
    {{tab_off, {2}, kPlus, -1}, "look-behind 2", "red-tab", 0.85},
    {{tab_off, {2}, kMinus, -1}, "look-behind 2", "black-tab", 0.85},
    {{tab_off, {2}, kPlus, -1}, "look-behind 1", "fine", 0.9},
    {{tab_off, {2}, kPlus, -1}, "tug 2", "red-tab", 0.85},
    {{tab_off, {2}, kMinus, -1}, "tug 2", "black-tab", 0.85},
    {{tab_off, {2}, kPlus, -1}, "others-work", "all", 0.9},
    {{tab_off, {2}, kPlus, -1}, "device-here 1", "works", 0.8},
    {{tab_off, {2}, kPlus, -1}, "other-device 2", "dead", 0.9},
    {{tab_off, {2}, kPlus, -1}, "volts contact+2 contact-2 in", "zero", 0.9},
    {{tab_off, {2}, kPlus, -1}, "volts splice+2 splice-2 in", "full", 0.8},
    {{tab_off, {2}, kPlus, -1}, "glow contact+2 contact-2 in", "dark", 0.9},
    {{tab_off, {2}, kPlus, -1}, "glow splice+2 splice-2 in", "bright", 0.9},
    {{splice_open, {2}, kPlus, -1}, "look-behind 2", "red-splice", 0.7},
    {{splice_open, {2}, kMinus, -1}, "look-behind 2", "black-splice", 0.7},
    {{splice_open, {2}, kPlus, -1}, "tug 2", "red-splice", 0.85},
    {{splice_open, {2}, kMinus, -1}, "tug 2", "black-splice", 0.85},
    {{wire_open, {2}, kPlus, -1}, "others-work", "some", 0.9},
    {{wire_open, {2}, kPlus, -1}, "look-behind 2", "fine", 0.8},
    {{wire_open, {2}, kPlus, -1}, "look-behind 2", "damaged", 0.12},
    {{pair_shorted, {2}, kPlus, -1}, "fuse-swap", "blows-at-once", 0.9},
    {{pair_shorted, {2}, kPlus, -1}, "fuse-look", "blown", 0.9},
    {{pair_shorted, {2}, kPlus, -1}, "ohms clamp+ clamp- out", "joined", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "ohms clamp+ clamp- out", "open", 0.9},
    {{overload, {}, kPlus, -1}, "fuse-swap", "blows-later", 0.6},
    {{overload, {}, kPlus, -1}, "add-up", "over", 0.9},
    {{fuse_blown, {}, kPlus, -1}, "add-up", "within", 0.9},
    {{device_dead, {}, kPlus, -1}, "device-elsewhere", "dead", 0.9},
    {{tab_off, {2}, kPlus, -1}, "device-elsewhere", "works", 0.9},
    {{device_dead, {}, kPlus, -1}, "device-here 1", "dead", 0.9},
    {{device_dead, {}, kPlus, -1}, "other-device 2", "works", 0.8},
    {{device_dead, {}, kPlus, -1}, "pull-fuse 2", "dies", 0.9},
    {{device_dead, {}, kPlus, -1}, "fuse-swap", "same", 0.9},
    {{reversed_here, {2}, kPlus, -1}, "look-behind 2", "crossed-tabs", 0.8},
    {{reversed_here, {2}, kPlus, -1}, "volts contact+2 contact-2 in", "minus", 0.9},
    {{reversed_from, {2}, kPlus, -1}, "look-behind 2", "crossed-splice", 0.7},
    {{wrong_branch, {2}, kPlus, 0}, "look-behind 2", "other-cable", 0.4},
    {{wrong_branch, {2}, kPlus, 0}, "tug 2", "live", 0.9},
    {{wrong_branch, {2}, kPlus, 0}, "pull-fuse 2", "stays", 0.9},
    {{wrong_branch, {2}, kPlus, 0}, "pull-fuse 2 n0", "dies", 0.9},
    {{wrong_branch_unfused, {2}, kPlus, 0}, "look-behind 2", "other-cable", 0.4},
    {{wrong_branch_unfused, {2}, kPlus, 0}, "neighbour-fuse n0", "works", 0.8},
    {{tab_off, {2}, kPlus, -1}, "neighbour-fuse n0", "same", 0.9},
    {{wire_thin, {}, kPlus, -1}, "read-gauge 2", "thinner", 0.9},
    {{tab_off, {2}, kPlus, -1}, "read-gauge 2", "as-drawn", 0.9},
    {{opens_when_moved, {2}, kPlus, -1}, "wiggle 2", "flickers", 0.8},
    {{opens_when_moved, {2}, kPlus, -1}, "tug 2", "red-splice", 0.7},
    {{opens_when_moved, {2}, kMinus, -1}, "tug 2", "black-splice", 0.7},
    {{device_dead, {}, kPlus, -1}, "wiggle 2", "steady", 0.9},
};
// clang-format on

}  // namespace

TEST_CASE("each answer's words say what its key means, for every check") {
  const Tracer tracer(three_outlets(Symptom::one_dead, {2}));
  std::set<std::string_view> kinds, answers;
  for (const Words& row : kWords) {
    CAPTURE(row.check);
    CAPTURE(row.answer);
    const std::optional<Check> check = tracer.find_check(row.check);
    REQUIRE(check.has_value());
    const auto found = std::find_if(check->choices.begin(), check->choices.end(),
                                    [&](const Choice& choice) { return answer_text(choice.key) == row.answer; });
    REQUIRE(found != check->choices.end());
    CHECK(found->words == row.words);
    kinds.insert(check_kind_row(check->kind).key);
    answers.insert(row.answer);
  }
  CHECK(kinds.size() == kCheckKinds);
  std::size_t all = 0;
  for (const CheckKindRow& row : check_kind_rows()) all += row.answers.size();
  CHECK(std::size(kWords) == all);
  // All but `cant`, of a repair only, and `unknown`, which has no text.
  CHECK(answers.size() == kAnswerKeys - 2);
}

TEST_CASE("an answer's text is its key's own, and a text that no answer has is none") {
  for (std::size_t i = 0; i < kAnswerKeys; ++i) {
    const auto key = static_cast<AnswerKey>(i);
    if (key != AnswerKey::unknown) CHECK(answer_key(answer_text(key)) == key);
  }
  CHECK_FALSE(answer_key("").has_value());
  CHECK_FALSE(answer_key("sideways").has_value());
  CHECK(word("sideways").key == AnswerKey::unknown);
  CHECK(answer_text(AnswerKey::cant) == "cant");
}

TEST_CASE("each fault is seen as what it is") {
  const Tracer tracer(three_outlets(Symptom::one_dead, {2}));
  for (const SeenAs& row : kSeen) {
    INFO(fault_key(row.fault), ", ", row.check, ": ", row.answer);
    CHECK(chance_of(tracer, row.fault, row.check, row.answer) >= row.at_least);
  }
}

TEST_CASE("no chance is lost: every fault is seen as one of the answers of every check") {
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  const Tracer tracer(the_case);
  for (const Hypothesis& each : hypotheses(the_case)) {
    INFO(fault_key(each.fault));
    for (const Check& check : tracer.all_checks()) {
      INFO(check.id);
      const std::vector<double> chances = tracer.likelihood(each.fault, check.id);
      CHECK(std::accumulate(chances.begin(), chances.end(), 0.0) == Approx(1.0).epsilon(1e-6));
    }
  }
}

TEST_CASE("an answer is bound to its likelihood by key: its place in the list means nothing") {
  const Case the_case = three_outlets(Symptom::one_dead, {2});
  const Plant plant(the_case);
  const std::vector<Hypothesis> all = hypotheses(the_case);
  const std::vector<Check> checks = [&] {
    std::vector<Check> made = make_checks(the_case, plant);
    for (std::size_t i = 0; i < made.size(); ++i) made[i].index = static_cast<int>(i);
    return made;
  }();
  std::vector<Check> turned = checks;
  for (Check& check : turned) std::reverse(check.choices.begin(), check.choices.end());
  const Likelihood likelihood(the_case, plant, all, checks), of_turned(the_case, plant, all, turned);
  for (std::size_t h = 0; h < all.size(); h += 3) {
    Scenario scenario;
    scenario.first = static_cast<int>(h);
    scenario.edits[0] = samples_of(plant, all[h].fault).front().edits;
    Look look(plant), other(plant);
    likelihood.aim(look, scenario, 0u);
    of_turned.aim(other, scenario, 0u);
    for (std::size_t i = 0; i < checks.size(); i += 7) {
      INFO(fault_key(all[h].fault), ", check ", i);
      const Chances chances = likelihood.chances(checks[i], look), in_turn = of_turned.chances(turned[i], other);
      const std::size_t count = checks[i].choices.size();
      for (std::size_t c = 0; c < count; ++c) CHECK(chances[c] == Approx(in_turn[count - 1 - c]).epsilon(1e-12));
    }
  }
}

TEST_CASE("every prior, every rate and every minute says where it comes from") {
  for (const FaultRow& row : fault_rows()) {
    CAPTURE(row.key);
    CHECK_FALSE(row.reasoning.empty());
    for (const tables::Citation* citation : {row.citation, row.shows.citation, row.minutes_citation}) {
      REQUIRE(citation != nullptr);
      CHECK_FALSE(citation->document.empty());
    }
  }
  for (const CheckKindRow& row : check_kind_rows()) {
    CAPTURE(row.key);
    REQUIRE(row.minutes_citation != nullptr);
    CHECK_FALSE(row.minutes_citation->document.empty());
  }
}
