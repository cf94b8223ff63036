#include "diagnosis/fault.h"

#include <algorithm>
#include <array>

#include "diagnosis/judgement_constants.h"
#include "diagnosis/sources.h"
#include "diagnosis/words.h"
#include "tables/row_by_key.h"

namespace diagnosis {
namespace {

using enum FaultKind;
using R = RemedyKind;
using P = PlacedAt;

using A = AnswerKey;
using D = Damage;
using E = network::Element;

// Looking behind the outlet.
constexpr Show kFine{A::fine, A::fine, A::fine, 0.0};
constexpr Show seen(AnswerKey as, double often) { return {as, as, A::fine, often}; }
constexpr Show seen_splice(double often) { return {A::plus_splice, A::minus_splice, A::fine, often}; }
constexpr Show seen_tab(double often) { return {A::plus_tab, A::minus_tab, A::fine, often}; }
// Pulling.
constexpr Show kHolds{A::holds, A::holds, A::holds, 0.0};
constexpr Show gives_splice(double often) { return {A::plus_splice, A::minus_splice, A::holds, often}; }
constexpr Show gives_tab(double often) { return {A::plus_tab, A::minus_tab, A::holds, often}; }
constexpr Show gives_clamp(double often) { return {A::plus_clamp, A::minus_clamp, A::holds, often}; }
// Looking at the fuse.
constexpr Show kWhole{A::whole, A::whole, A::whole, 0.0};
constexpr Show fuse_seen(AnswerKey as, double often, AnswerKey otherwise) { return {as, as, otherwise, often}; }
constexpr Show kBlown = fuse_seen(A::blown, 0.95, A::whole);
// Whoever adds up what is plugged in is wrong as often, whatever the fault.
constexpr double kOver = 0.95, kAddedWrong = 0.05;

constexpr DamageRow series(network::Element element, std::span<const Size> sizes) {
  return {D::series, element, sizes};
}
constexpr DamageRow ports(std::span<const Size> sizes) { return {D::splice_ports, E::splice, sizes}; }
constexpr DamageRow kNothing{D::nothing, E::device, {}};
constexpr ToldAs kAtAnOutlet{0.0, 0.0, 0.0};

// Weights are relative, per place. Joints made by hand in the dark fail before metal does; things that a
// person forgets fail before things that wear. Tokens: words.h.
// clang-format off
constexpr std::array<FaultRow, kFaultKinds> kRows{{
    // Shows: behind, tugged, fuse, flickers, main off, over, thinner, dead elsewhere. Told as: blows at once,
    // blows later, something else alive.
    {source_flat, "source-flat", "The battery is flat", P::circuit, 2.0,
     "common in a parked van, but then other things are weak too and the person rarely blames one circuit", &kPriorPractice,
     {D::weak_source, E::battery, kFlatSource}, {kFine, kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::charge_source, 30, &kMinutesEstimate},
    {main_open, "main-open", "The main fuse or main switch is open", P::circuit, 1.5,
     "a switch left off, rarely a blown main fuse", &kPriorPractice,
     series(E::main_fuse, kOpen), {kFine, kHolds, kWhole, 0.0, 0.95, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::restore_main, 5, &kMinutesEstimate},
    {feeder_resistive, "feeder-resistive", "A {side} feeder joint is bad", P::circuit_side, 0.8,
     "lugs on battery posts corrode; the whole block goes weak", &kPriorEstimate,
     series(E::feeder, kFeederJoint), {kFine, kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::remake_feeder_joint, 15, &kMinutesEstimate},
    {fuse_blown, "fuse-blown", "The fuse is blown", P::circuit, 12.0,
     "the everyday fault: a passing overload, a slipped tool", &kPriorPractice,
     series(E::fuse, kOpen), {kFine, kHolds, kBlown, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::fit_fuse, 2, &kMinutesEstimate},
    {fuse_missing, "fuse-missing", "The fuse is missing", P::circuit, 4.0,
     "pulled for work or borrowed, not put back", &kPriorPractice,
     series(E::fuse, kOpen), {kFine, kHolds, fuse_seen(A::missing, 0.98, A::whole), 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate},
     kAtAnOutlet, R::fit_fuse, 2, &kMinutesEstimate},
    {fuse_elsewhere, "fuse-elsewhere", "The fuse sits in another position", P::circuit, 4.0,
     "positions are counted wrongly on an unlabelled block", &kPriorPractice,
     series(E::fuse, kOpen), {kFine, kHolds, fuse_seen(A::elsewhere, 0.96, A::missing), 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate},
     kAtAnOutlet, R::move_fuse, 2, &kMinutesEstimate},
    {fuse_loose, "fuse-loose", "The fuse is not home in its clips", P::circuit, 3.0,
     "clips open with use and with vibration", &kPriorPractice,
     series(E::fuse_contact, kLooseClamp), {kFine, kHolds, kWhole, 0.40, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::seat_fuse, 2, &kMinutesEstimate},
    {clamp_loose, "clamp-loose", "The {side} clamp at the block is loose", P::circuit_side, 3.0,
     "a screw on strands settles; never tightened again", &kPriorPractice,
     series(E::clamp, kLooseClamp), {kFine, gives_clamp(0.92), kWhole, 0.20, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::remake_clamp, 6, &kMinutesEstimate},
    {wire_open, "wire-open", "The {side} wire from {from} to {outlet} is broken", P::run_side, 0.5,
     "copper in the middle of a run breaks only where it is crushed, drilled or bent", &kPriorEstimate,
     series(E::wire, kOpen), {seen(A::damaged, 0.15), kHolds, kWhole, 0.10, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::replace_run, 40, &kMinutesEstimate},
    {splice_open, "splice-open", "The {side} splice at {outlet} is open", P::splice_side, 2.5,
     "wires pull out of splices made in a tight space", &kPriorPractice,
     ports(kOpen), {seen_splice(0.75), gives_splice(0.92), kWhole, 0.25, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::remake_splice, 8, &kMinutesEstimate},
    {splice_resistive, "splice-resistive", "The {side} splice at {outlet} makes poor contact", P::splice_side, 2.0,
     "a few strands caught, or corroded; the usual weak outlet", &kPriorPractice,
     ports(kPoorJoint), {seen_splice(0.35), gives_splice(0.65), kWhole, 0.45, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::remake_splice, 8, &kMinutesEstimate},
    {splice_on_insulation, "splice-on-insulation", "The {side} splice at {outlet} is closed on the insulation", P::splice_side, 1.2,
     "stripped too short; beginners' fault", &kPriorEstimate,
     ports(kOpen), {seen_splice(0.70), gives_splice(0.60), kWhole, 0.10, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::remake_splice, 8, &kMinutesEstimate},
    {pair_shorted, "pair-shorted", "{Plus} and {minus} touch between {from} and {outlet}", P::run, 0.5,
     "a screw through the cable or a chafed edge", &kPriorEstimate,
     {D::shorted, E::wire, {}}, {seen(A::damaged, 0.30), kHolds, kBlown, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate},
     {0.95, 0.05, 0.0}, R::clear_short, 40, &kMinutesEstimate},
    {overload, "overload", "More is plugged in than the fuse carries", P::circuit, 3.0,
     "two heavy things at once", &kPriorPractice,
     series(E::fuse, kOpen), {kFine, kHolds, kBlown, 0.0, 0.0, kOver, 0.0, 0.0, &kNoticeEstimate}, {0.02, 0.9, 0.0},
     R::shed_load, 5, &kMinutesEstimate},
    {tab_off, "tab-off", "The {side} tab at {outlet} is off", P::socket_side, 2.0,
     "push-on tabs are knocked off when the outlet is pushed back", &kPriorPractice,
     series(E::terminal, kOpen), {seen_tab(0.92), gives_tab(0.95), kWhole, 0.10, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::refit_tab, 5, &kMinutesEstimate},
    {outlet_dead, "outlet-dead", "Outlet {outlet} is dead inside, {side} contact", P::socket_side, 0.7,
     "a contact bent or burnt by a worn plug", &kPriorEstimate,
     series(E::outlet_inside, kOpen), {kFine, kHolds, kWhole, 0.15, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::replace_outlet, 12, &kMinutesEstimate},
    {device_dead, "device-dead", "The device, or the fuse in its plug, is dead", P::circuit, 6.0,
     "the plug's own small fuse, a dead charger", &kPriorPractice,
     kNothing, {kFine, kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.0, 1.0, &kNoticeEstimate}, kAtAnOutlet,
     R::replace_device, 3, &kMinutesEstimate},
    {reversed_here, "reversed-here", "{Plus} and {minus} are changed over at {outlet}'s tabs", P::socket, 1.0,
     "two tabs alike, fitted by feel", &kPriorEstimate,
     {D::swapped, E::terminal, {}}, {seen(A::crossed_tabs, 0.85), kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate},
     kAtAnOutlet, R::swap_at_tabs, 5, &kMinutesEstimate},
    {reversed_from, "reversed-from", "{Plus} and {minus} are changed over at {outlet}'s splices", P::splice, 0.7,
     "colours lost in the dark", &kPriorEstimate,
     {D::swapped, E::splice, {}}, {seen(A::crossed_splice, 0.75), kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate},
     kAtAnOutlet, R::swap_at_splice, 9, &kMinutesEstimate},
    {wrong_branch, "wrong-branch", "From {outlet} on, the pair of {neighbour} is connected", P::run_neighbour, 0.5,
     "two pairs alike in one loom; works, but on the other fuse", &kPriorEstimate,
     {D::fed_from_neighbour, E::wire, {}}, {seen(A::other_cable, 0.45), kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate},
     {0.0, 0.0, 0.6}, R::reconnect_pair, 12, &kMinutesEstimate},
    {wrong_branch_unfused, "wrong-branch-unfused", "From {outlet} on, the pair of {neighbour} is connected, and its fuse is out",
     P::run_neighbour, 1.2, "the same, while the other branch is not in use yet: the beginner's classic", &kPriorEstimate,
     {D::fed_from_dead_neighbour, E::wire, {}}, {seen(A::other_cable, 0.45), kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate},
     {0.0, 0.0, 0.6}, R::reconnect_pair, 12, &kMinutesEstimate},
    {wire_thin, "wire-thin", "The wire is too thin for the load", P::circuit, 0.6,
     "extended with what was at hand", &kPriorEstimate,
     {D::thin_runs, E::wire, kThinWire}, {kFine, kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.95, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::thicker_wire, 90, &kMinutesEstimate},
    {opens_when_moved, "opens-when-moved", "The {side} splice at {outlet} opens when moved", P::splice_side, 0.8,
     "a loose joint that still touches", &kPriorEstimate,
     kNothing, {seen_splice(0.35), gives_splice(0.80), kWhole, 0.88, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::remake_splice, 8, &kMinutesEstimate},
    {none_of_these, "none-of-these", "Something not known here", P::circuit, 1.0,
     "there is always something else", &kPriorEstimate,
     kNothing, {kFine, kHolds, kWhole, 0.0, 0.0, kAddedWrong, 0.0, 0.0, &kNoticeEstimate}, kAtAnOutlet,
     R::look_further, 60, &kMinutesEstimate},
}};
// clang-format on

// The compiler refuses a row with a field left out; this refuses one that is left out, or empty.
constexpr bool each_fault_complete() {
  for (std::size_t i = 0; i < kRows.size(); ++i) {
    const FaultRow& row = kRows[i];
    if (static_cast<std::size_t>(row.kind) != i || row.key.empty() || row.words.empty() || row.reasoning.empty())
      return false;
    if (!(row.prior > 0.0) || !(row.repair_minutes > 0.0)) return false;
    if (row.citation == nullptr || row.minutes_citation == nullptr || row.shows.citation == nullptr) return false;
    const bool sized = row.does.damage == D::series || row.does.damage == D::splice_ports ||
                       row.does.damage == D::weak_source || row.does.damage == D::thin_runs;
    if (sized == row.does.sizes.empty()) return false;
  }
  return true;
}
static_assert(each_fault_complete());

void add_places(const Case& the_case, const FaultRow& row, std::vector<Hypothesis>& into) {
  using network::Side;
  const auto add = [&](circuit::OutletId outlet, Side side, int neighbour) {
    into.push_back({{row.kind, outlet, side, neighbour}, row.prior});
  };
  switch (row.placed_at) {
    case P::circuit: add(circuit::kBlock, Side::positive, -1); return;
    case P::circuit_side:
      add(circuit::kBlock, Side::positive, -1);
      add(circuit::kBlock, Side::negative, -1);
      return;
    default: break;
  }
  for (const circuit::Outlet& outlet : the_case.circuit.outlets) {
    if (!stands_at(row.placed_at, outlet)) continue;
    if (row.placed_at == P::run_neighbour) {
      for (std::size_t n = 0; n < the_case.neighbours.size(); ++n) {
        if (the_case.neighbours[n].same_loom) add(outlet.id, Side::positive, static_cast<int>(n));
      }
      continue;
    }
    add(outlet.id, Side::positive, -1);
    if (has_side(row.placed_at)) add(outlet.id, Side::negative, -1);
  }
}

}  // namespace

bool stands_at(PlacedAt placed, const circuit::Outlet& outlet) {
  switch (placed) {
    case P::circuit:
    case P::circuit_side: return false;
    case P::run:
    case P::run_side:
    case P::run_neighbour: return true;
    case P::splice:
    case P::splice_side: return has_splice(outlet);
    case P::socket:
    case P::socket_side: break;
  }
  return has_socket(outlet);
}

std::span<const FaultRow> fault_rows() { return kRows; }
const FaultRow& fault_row(FaultKind kind) { return kRows[static_cast<std::size_t>(kind)]; }
const FaultRow* fault_by_key(std::string_view key) { return tables::row_by_key(kRows, key); }

std::string fault_key(const Fault& fault) {
  const FaultRow& row = fault_row(fault.kind);
  std::string key(row.key);
  if (fault.outlet != circuit::kBlock) key.append(" ").append(std::to_string(fault.outlet.number));
  if (has_side(row.placed_at)) key.append(" ").push_back(side_sign(fault.side));
  if (fault.neighbour >= 0) key.append(" n").append(std::to_string(fault.neighbour));
  return key;
}

std::string fault_words(const Case& the_case, const Fault& fault) {
  const Subject subject{fault.outlet, fault.side, fault.neighbour};
  return filled(fault_row(fault.kind).words,
                [&](std::string_view token) { return token_words(the_case, subject, token); });
}

std::vector<Hypothesis> hypotheses(const Case& the_case) {
  std::vector<Hypothesis> all;
  for (const FaultRow& row : kRows) add_places(the_case, row, all);
  double sum = 0.0;
  for (const Hypothesis& each : all) sum += each.prior;
  for (Hypothesis& each : all) each.prior /= sum;
  return all;
}

}  // namespace diagnosis
