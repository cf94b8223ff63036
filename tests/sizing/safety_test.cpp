// The property that matters: over 100,000 random circuits of every kind, nothing recommended
// breaks a limit. Each limit is worked out here a second time, not taken from the answer.
#include <doctest/doctest.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <map>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

#include "network/branch_network.h"
#include "network/solve.h"
#include "sizing/context.h"
#include "sizing/fixes.h"
#include "sizing/loading.h"
#include "sizing/random_circuit.h"
#include "sizing/reference_ampacity.h"
#include "sizing/sizing.h"

namespace {

using circuit::Circuit;
using sizing::Answer;
using sizing::Candidate;
using sizing::Verdict;

constexpr std::uint64_t kSeed = 183425;
constexpr std::size_t kBlock = 500;   // circuits per seed, so that threads may share the work

// What goes wrong is gathered as sentences; doctest's macros stay on the main thread.
struct Findings {
  std::vector<std::string> sentences;
  std::size_t fits = 0;
  std::size_t none = 0;
  std::size_t not_on_shelf = 0;
  std::size_t no_load = 0;
  std::size_t fixes_tried = 0;
  std::size_t without_fix = 0;
  void expect(bool true_one, const std::string& otherwise) {
    if (!true_one && sentences.size() < 20) sentences.push_back(otherwise);
  }
};

std::string name_of(const Circuit& circuit, const Candidate& choice, const std::string& what) {
  return what + " (" + std::string(choice.size->id) + ", fuse " +
         (choice.fuse ? std::to_string(choice.fuse->number()) : std::string("none")) + ", " +
         std::to_string(circuit.outlets.size()) + " outlets, " + std::to_string(circuit.supply.nominal.number()) + " V)";
}

// What protects each run, found here by walking from the block.
std::vector<double> fuses_before(const Circuit& circuit, const Candidate& choice) {
  std::map<circuit::OutletId, double> goes_on;   // what protects the wire that goes on from there
  std::vector<double> fuses;
  for (const circuit::Outlet& outlet : circuit.outlets) {
    const auto before = goes_on.find(outlet.fed_from);
    double fuse_a = before != goes_on.end() ? before->second : choice.fuse->number();
    double inner_a = 1e9;
    for (const circuit::InLine& part : outlet.run.in_line) {
      const bool fuse = part.kind == circuit::InLineKind::fuse || part.kind == circuit::InLineKind::breaker;
      if (fuse) inner_a = std::min(inner_a, part.rating.number());
    }
    if (inner_a < 1e9) fuse_a = inner_a;
    fuses.push_back(fuse_a);
    goes_on[outlet.id] = fuse_a;
  }
  return fuses;
}

void check_conductor(const Circuit& circuit, const Candidate& choice, const std::string& size, tables::WireBuild build,
                     double fuse_a, Findings& findings) {
  const auto derated = reference_ampacity::derated_a(circuit.wiring.ampacity_table, size, circuit.wiring.around, build);
  findings.expect(derated.has_value(), name_of(circuit, choice, "recommended past the end of a table"));
  if (derated) findings.expect(fuse_a <= *derated * (1.0 + 1e-4), name_of(circuit, choice, "fuse above the derated ampacity of " + size));
  const bool us_trailer = circuit.practice == tables::Practice::us_rv;
  const auto ceiling = reference_ampacity::road_ceiling_a(size);
  if (us_trailer && ceiling) findings.expect(fuse_a <= *ceiling, name_of(circuit, choice, "fuse above the code's limit"));
}

// Each conductor with the fuse that comes before it.
void check_wire(const Circuit& circuit, const Candidate& choice, Findings& findings) {
  const std::vector<double> fuses = fuses_before(circuit, choice);
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    const circuit::Outlet& outlet = circuit.outlets[i];
    const std::string run = outlet.run.size ? *outlet.run.size : std::string(choice.size->id);
    const std::string tail = outlet.run.size ? run : std::string(choice.tail->id);
    check_conductor(circuit, choice, run, {outlet.run.metal, outlet.run.two_core}, fuses[i], findings);
    if (outlet.joint == circuit::Joint::splice) check_conductor(circuit, choice, tail, {}, fuses[i], findings);
  }
}

void check_parts(const Circuit& circuit, const Candidate& choice, Findings& findings) {
  const circuit::Wiring& wiring = circuit.wiring;
  const auto takes = [&](const tables::Part& part, units::SquareMillimetres wire, bool ferrule, const char* what) {
    const units::SquareMillimetres largest =
        ferrule ? part.largest_with_ferrule.value_or(units::SquareMillimetres(0.0)) : part.largest_bare;
    findings.expect(wire.number() <= largest.number() + 1e-6 && wire.number() >= part.smallest.number() - 1e-6,
                    name_of(circuit, choice, std::string("wire does not go into the ") + what));
  };
  const tables::Part& clamp = *tables::part_by_key(wiring.clamp_part);
  for (const circuit::Outlet& outlet : circuit.outlets) {
    if (outlet.fed_from != circuit::kBlock) continue;
    const tables::Conductor& wire = outlet.run.size ? *tables::conductor_by_id(*outlet.run.size) : *choice.size;
    findings.expect(*choice.fuse <= wiring.clamp_rating.value_or(tables::part_rating_with(clamp, wire.area)),
                    name_of(circuit, choice, "fuse above the clamp"));
    if (!outlet.run.size) takes(clamp, wire.area, wiring.ferrule, "clamp");   // else it is in already
  }
  const std::vector<double> fuses = fuses_before(circuit, choice);
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    const circuit::Outlet& outlet = circuit.outlets[i];
    if (outlet.run.size) continue;   // that wire is in already
    if (outlet.joint == circuit::Joint::splice) {
      const tables::Part& splice = *tables::part_by_key(wiring.splice_part);
      findings.expect(fuses[i] <= splice.rated.number(), name_of(circuit, choice, "fuse above the splice"));
      takes(splice, choice.size->area, false, "splice");
      takes(splice, choice.tail->area, false, "splice (tail)");
    }
    const tables::Part& terminal = *tables::part_by_key(outlet.terminal_part);
    const tables::Conductor& goes_in = outlet.joint == circuit::Joint::splice ? *choice.tail : *choice.size;
    takes(terminal, goes_in.area, false, "terminal");
    findings.expect(fuses[i] <= tables::part_rating_with(terminal, goes_in.area).number(),
                    name_of(circuit, choice, "fuse above what a terminal carries with that wire"));
    const tables::Part& socket = *tables::part_by_key(outlet.outlet_part);
    if (socket.limits_itself || socket.wired_in) continue;
    findings.expect(fuses[i] <= outlet.rating.value_or(socket.rated).number(),
                    name_of(circuit, choice, "fuse above an outlet's rating"));
  }
  if (circuit.setting != circuit::Setting::fixed) {
    findings.expect(wiring.splice_part != "splice-twist", name_of(circuit, choice, "twist-on connector in what moves"));
  }
}

bool any_to_choose(const Circuit& circuit) {
  return std::any_of(circuit.outlets.begin(), circuit.outlets.end(), [](const auto& outlet) { return !outlet.run.size; });
}

void check_fuse_is_standard(const Circuit& circuit, const Candidate& choice, Findings& findings) {
  const auto ratings = tables::fuse_family(circuit.wiring.fuse_family).ratings_a;
  findings.expect(std::find(ratings.begin(), ratings.end(), choice.fuse->number()) != ratings.end(),
                  name_of(circuit, choice, "not a standard fuse"));
  const auto& missing = circuit.shelf.missing_fuses_a;
  findings.expect(std::find(missing.begin(), missing.end(), choice.fuse->number()) == missing.end(),
                  name_of(circuit, choice, "a fuse that the shop has not"));
  const auto& sizes = circuit.shelf.missing_sizes;
  findings.expect(!any_to_choose(circuit) || std::find(sizes.begin(), sizes.end(), choice.size->id) == sizes.end(),
                  name_of(circuit, choice, "a size that the shop has not"));
}

bool lasts(const Circuit& circuit, std::size_t place) {
  const network::LoadSlot slot = network::load_slots(circuit)[place];
  const auto& devices = circuit.outlets[slot.outlet].devices;
  return slot.device < devices.size() && devices[slot.device].use == circuit::Use::continuous;
}

// Random loadings within the cap: none may break what was promised.
void check_random_loadings(const Circuit& circuit, const Candidate& choice, random_circuits::Engine& engine,
                           Findings& findings) {
  const sizing::Demand demand(circuit);
  const network::Fitted fitted{choice.size, choice.tail, *choice.fuse};
  for (const auto state : {network::BatteryState::resting, network::BatteryState::low, network::BatteryState::charging}) {
    const network::Radial radial(circuit, fitted, state);
    for (int i = 0; i < 2; ++i) {
      network::Loading loading(demand.rated_a.size());
      double used_a = 0.0;
      for (std::size_t k = 0; k < loading.size(); ++k) {
        loading[k] = random_circuits::chance(engine, 0.5) ? 1.0 : 0.0;
        used_a += loading[k] * demand.rated_a[k];
      }
      if (used_a > demand.cap_a) {
        for (double& part : loading) part *= demand.cap_a / used_a;
      }
      const auto solved = radial.solve(loading);
      // As rated at nominal voltage, 125 % of what lasts for hours and 100 % of the rest, added up here
      // load by load; and what lasts is carried whatever the battery's voltage makes of it.
      double asked_a = 0.0, flowing_a = 0.0;
      bool all_last = true;
      for (std::size_t k = 0; k < loading.size(); ++k) {
        if (demand.rated_a[k] <= 0.0) continue;
        const bool long_one = lasts(circuit, k);
        asked_a += loading[k] * demand.rated_a[k] * (long_one ? 1.25 : 1.0);
        flowing_a += solved.load_current_a[k];
        all_last = all_last && long_one;
      }
      if (all_last) asked_a = std::max(asked_a, flowing_a);
      findings.expect(choice.fuse->number() >= asked_a * (1.0 - 1e-6),
                      name_of(circuit, choice, "fuse below what its loads ask for"));
      for (std::size_t k = 0; k < loading.size(); ++k) {
        const double drop = (solved.battery_voltage_v - solved.device_voltage_v[k]) / circuit.supply.nominal.number();
        const circuit::Outlet& outlet = circuit.outlets[demand.outlet[k]];
        const double limit = outlet.drop_limit.value_or(circuit.drop_limit);
        if (state == network::BatteryState::resting) {
          findings.expect(drop <= limit + 1e-6, name_of(circuit, choice, "a loading breaks the drop limit"));
        }
        const auto minimum = demand.load[k] != nullptr ? demand.load[k]->minimum_voltage : std::nullopt;
        if (minimum && loading[k] > 0.0 && demand.rated_a[k] > 0.0) {
          findings.expect(solved.device_voltage_v[k] >= minimum->number() - 1e-5,
                          name_of(circuit, choice, "a device gets less than its lowest voltage"));
        }
      }
    }
  }
}

// The worst loading again, through the full network with every joint of its own.
void check_full_network(const Circuit& circuit, const Candidate& choice, Findings& findings) {
  const sizing::Demand demand(circuit);
  const network::Fitted fitted{choice.size, choice.tail, *choice.fuse};
  sizing::LoadingFinder finder(circuit, demand, fitted, network::BatteryState::resting);
  const std::size_t outlet = choice.worst_outlet;
  const auto worst = finder.worst(sizing::Worst::drop, demand.point_of_outlet[outlet]);
  const network::BranchNetwork full = network::build(circuit, fitted, *worst.loading, network::BatteryState::resting);
  const network::Solution solved = network::solve(full.netlist);
  findings.expect(solved.outcome == network::Outcome::solved, name_of(circuit, choice, "the full network has no answer"));
  const auto* battery = full.find({network::Element::battery, circuit::kBlock, network::Side::positive});
  findings.expect(battery != nullptr, "no battery in the network");
  if (battery == nullptr || !solved.usable()) return;
  const auto id = circuit.outlets[outlet].id;
  const network::Branch& source = full.netlist.branch(battery->branch);
  const double posts_v = solved.between(source.to, source.from).number();
  const double device_v = solved.between(full.outlet_contact(id, network::Side::positive),
                                         full.outlet_contact(id, network::Side::negative)).number();
  const double drop = (posts_v - device_v) / circuit.supply.nominal.number();
  const double limit = circuit.outlets[outlet].drop_limit.value_or(circuit.drop_limit);
  findings.expect(drop <= limit + 1e-6, name_of(circuit, choice, "the full network breaks the drop limit"));
  findings.expect(std::abs(drop - choice.worst_drop_fraction) < 1e-5,
                  name_of(circuit, choice, "the full network and the answer differ: " + std::to_string(drop) + " against " +
                                               std::to_string(choice.worst_drop_fraction)));
}

// Every fuse and breaker between the battery and an outlet, found by walking back from it.
struct FuseBefore {
  tables::FuseFamilyId family;
  units::Amperes rating;
};
std::vector<FuseBefore> fuses_before(const Circuit& circuit, const Candidate& choice, circuit::OutletId id) {
  std::vector<FuseBefore> found{{circuit.wiring.fuse_family, *choice.fuse}};
  for (const circuit::Outlet* at = circuit::find_outlet(circuit, id); at != nullptr;
       at = circuit::find_outlet(circuit, at->fed_from)) {
    for (const circuit::InLine& part : at->run.in_line) {
      if (part.kind == circuit::InLineKind::breaker) found.push_back({tables::FuseFamilyId::breaker, part.rating});
      if (part.kind == circuit::InLineKind::fuse) found.push_back({circuit.wiring.fuse_family, part.rating});
    }
  }
  return found;
}
bool opens_in_time(const FuseBefore& fuse, double current_a) {
  const auto opens = tables::opens_within(tables::fuse_family(fuse.family), fuse.rating, units::Amperes(current_a));
  return opens && opens->number() <= 5.0;
}

// A bolted short at each outlet of the full network, battery low, wire hot: one of the fuses before it opens.
void check_far_short(const Circuit& circuit, const Candidate& choice, Findings& findings) {
  Circuit hot = circuit;
  hot.wiring.wire_temperature = std::max(circuit.wiring.around.insulation, circuit.wiring.wire_temperature);
  const network::Fitted fitted{choice.size, choice.tail, *choice.fuse};
  const network::Loading off(network::load_slots(circuit).size(), 0.0);
  const network::BranchNetwork built = network::build(hot, fitted, off, network::BatteryState::low);
  for (const circuit::Outlet& outlet : circuit.outlets) {
    network::BranchNetwork shorted = built;
    const auto bridge = shorted.netlist.bridge(shorted.outlet_contact(outlet.id, network::Side::positive),
                                               shorted.outlet_contact(outlet.id, network::Side::negative),
                                               units::Ohms(1e-4));
    const network::Solution solved = network::solve(shorted.netlist);
    const double current_a = std::abs(solved.through(bridge).number());
    const std::vector<FuseBefore> before = fuses_before(circuit, choice, outlet.id);
    const double with_bridge_a = current_a * 1.005;   // the bridge itself is not nothing
    const bool opens = std::any_of(before.begin(), before.end(),
                                   [&](const FuseBefore& fuse) { return opens_in_time(fuse, with_bridge_a); });
    findings.expect(opens, name_of(circuit, choice, "a far short opens no fuse"));
  }
}

void check_all_judged(const Circuit& circuit, const Answer& answer, Findings& findings) {
  for (const Candidate& candidate : answer.ladder) {
    findings.expect(candidate.judgements.size() == 15, name_of(circuit, candidate, "a judgement is missing"));
    bool all = candidate.fuse.has_value();
    for (std::size_t i = 0; i < candidate.judgements.size(); ++i) {
      const sizing::Judgement& judgement = candidate.judgements[i];
      findings.expect(static_cast<std::size_t>(judgement.criterion) == i, name_of(circuit, candidate, "out of order"));
      findings.expect(!judgement.sentence.empty() && judgement.sentence.back() == '.' &&
                          judgement.sentence.find("nan") == std::string::npos &&
                          judgement.sentence.find("inf") == std::string::npos,
                      name_of(circuit, candidate, "no plain sentence: " + judgement.sentence));
      findings.expect(judgement.citation != nullptr, name_of(circuit, candidate, "no citation: " + judgement.sentence));
      all = all && judgement.passes;
    }
    findings.expect(all == candidate.passes, name_of(circuit, candidate, "verdict and judgements differ"));
  }
}

void check_fixes(const Circuit& circuit, const Answer& answer, Findings& findings) {
  const tables::Conductor* in_hand = sizing::nearest_size(circuit, answer);
  if (in_hand == nullptr) return;   // the shop has no wire at all
  const sizing::Fixes fixes = sizing::fixes(circuit, *in_hand);
  if (fixes.fixes.empty()) {
    ++findings.without_fix;
    findings.expect(!fixes.why_none.empty(), "no fix and no sentence why");
  }
  for (const sizing::Fix& fix : fixes.fixes) {
    ++findings.fixes_tried;
    findings.expect(!fix.title.empty() && !fix.detail.empty(), "a fix without words");
    findings.expect(!fix.result.empty(), "a fix without its circuit");
    for (const Circuit& fixed : fix.result) {
      const Answer again = sizing::size_circuit(fixed);
      findings.expect(again.verdict == Verdict::fits,
                      "the fix \"" + fix.title + "\" gives no answer: " + again.headline);
      if (fix.kind == sizing::FixKind::next_size || again.verdict != Verdict::fits) continue;
      if (!any_to_choose(fixed)) continue;   // all its wire is there
      const auto same = std::find_if(again.ladder.begin(), again.ladder.end(),
                                     [&](const Candidate& c) { return c.size == in_hand; });
      findings.expect(same != again.ladder.end() && same->passes,
                      "the fix \"" + fix.title + "\" does not fit the wire in hand");
    }
  }
}

void check_one(std::size_t number, random_circuits::Engine& engine, Findings& findings) {
  const Circuit circuit = random_circuits::any(engine);
  const Answer answer = sizing::size_circuit(circuit);
  check_all_judged(circuit, answer, findings);
  switch (answer.verdict) {
    case Verdict::fits: {
      ++findings.fits;
      const Candidate& choice = *answer.choice();
      findings.expect(choice.passes && choice.fuse && choice.on_shelf && !answer.reason.empty() && !answer.notes.empty(),
                      name_of(circuit, choice, "an answer that is not one"));
      if (!choice.fuse) return;
      check_wire(circuit, choice, findings);
      check_parts(circuit, choice, findings);
      check_fuse_is_standard(circuit, choice, findings);
      check_random_loadings(circuit, choice, engine, findings);
      if (number % 4 == 0) check_full_network(circuit, choice, findings);
      if (number % 40 == 0) check_far_short(circuit, choice, findings);
      return;
    }
    case Verdict::none_fits:
    case Verdict::not_on_shelf:
      ++(answer.verdict == Verdict::none_fits ? findings.none : findings.not_on_shelf);
      findings.expect(!answer.headline.empty() && !answer.choice(), "no answer, and no sentence that says so");
      if (number % 20 == 0) check_fixes(circuit, answer, findings);
      return;
    case Verdict::no_load:
      ++findings.no_load;
      findings.expect(!answer.headline.empty(), "no load, and no sentence that says so");
      return;
    case Verdict::invalid: findings.expect(false, "a valid circuit is called invalid: " + answer.headline); return;
  }
}

}  // namespace

TEST_CASE("over 100,000 random circuits nothing recommended breaks a limit, and fixes fix") {
  const std::size_t blocks = (random_circuits::count(100000) + kBlock - 1) / kBlock;
  MESSAGE("seed ", kSeed, ", ", blocks * kBlock, " circuits");
  std::atomic<std::size_t> next{0};
  std::mutex mutex;
  Findings sum;
  const auto work = [&] {
    for (std::size_t block = next++; block < blocks; block = next++) {
      random_circuits::Engine engine(kSeed + block);
      Findings findings;
      for (std::size_t i = 0; i < kBlock; ++i) check_one(i, engine, findings);
      const std::scoped_lock lock(mutex);
      for (auto& sentence : findings.sentences) sum.sentences.push_back(sentence);
      sum.fits += findings.fits;
      sum.none += findings.none;
      sum.not_on_shelf += findings.not_on_shelf;
      sum.no_load += findings.no_load;
      sum.fixes_tried += findings.fixes_tried;
      sum.without_fix += findings.without_fix;
    }
  };
  (void)reference_ampacity::derated_a(tables::AmpacityTableId::marine_us, "10awg", {});     // files read once, here
  (void)reference_ampacity::derated_a(tables::AmpacityTableId::enclosed_iec, "10awg", {});
  (void)reference_ampacity::derated_a(tables::AmpacityTableId::clipped_iec, "10awg", {});
  (void)reference_ampacity::road_ceiling_a("10awg");
  std::vector<std::thread> threads;
  for (unsigned i = 0; i < std::max(1U, std::thread::hardware_concurrency()); ++i) threads.emplace_back(work);
  for (std::thread& thread : threads) thread.join();
  MESSAGE(sum.fits, " fit, ", sum.none, " fit no size, ", sum.not_on_shelf, " not on the shelf, ", sum.no_load,
          " without load; ", sum.fixes_tried, " fixes applied, ", sum.without_fix, " circuits without a single fix");
  for (std::size_t i = 0; i < std::min<std::size_t>(sum.sentences.size(), 20); ++i) FAIL_CHECK(sum.sentences[i]);
  // The inputs must be such that the test can fail: a good part fits, a good part does not.
  CHECK(sum.fits > blocks * kBlock / 10);
  CHECK(sum.none > blocks * kBlock / 20);
  CHECK(sum.fixes_tried > 0);
}
