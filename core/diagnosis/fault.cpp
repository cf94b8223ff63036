#include "diagnosis/fault.h"

#include <algorithm>
#include <array>

#include "diagnosis/sources.h"
#include "diagnosis/words.h"

namespace diagnosis {
namespace {

using enum FaultKind;
using R = RemedyKind;
using P = PlacedAt;

// Relative weights, per place. {side} red or black, {outlet} its letter, {from} what feeds it,
// {neighbour} the other branch. Joints made by hand in the dark fail before metal does; things that
// a person forgets fail before things that wear.
constexpr std::array<FaultRow, kFaultKinds> kRows{{
    {source_flat, "source-flat", "The battery is flat", P::circuit, 2.0,
     "common in a parked van, but then other things are weak too and the person rarely blames one circuit", R::charge_source, 30, &kPriorPractice},
    {main_open, "main-open", "The main fuse or main switch is open", P::circuit, 1.5,
     "a switch left off, rarely a blown main fuse", R::restore_main, 5, &kPriorPractice},
    {feeder_resistive, "feeder-resistive", "A {side} feeder joint is bad", P::circuit_side, 0.8,
     "lugs on battery posts corrode; the whole block goes weak", R::remake_feeder_joint, 15, &kPriorEstimate},
    {fuse_blown, "fuse-blown", "The fuse is blown", P::circuit, 12.0,
     "the everyday fault: a passing overload, a slipped tool", R::fit_fuse, 2, &kPriorPractice},
    {fuse_missing, "fuse-missing", "The fuse is missing", P::circuit, 4.0,
     "pulled for work or borrowed, not put back", R::fit_fuse, 2, &kPriorPractice},
    {fuse_elsewhere, "fuse-elsewhere", "The fuse sits in another position", P::circuit, 4.0,
     "positions are counted wrongly on an unlabelled block", R::move_fuse, 2, &kPriorPractice},
    {fuse_loose, "fuse-loose", "The fuse is not home in its clips", P::circuit, 3.0,
     "clips open with use and with vibration", R::seat_fuse, 2, &kPriorPractice},
    {clamp_loose, "clamp-loose", "The {side} clamp at the block is loose", P::circuit_side, 3.0,
     "a screw on strands settles; never tightened again", R::remake_clamp, 6, &kPriorPractice},
    {wire_open, "wire-open", "The {side} wire from {from} to {outlet} is broken", P::outlet_side, 0.5,
     "copper in the middle of a run breaks only where it is crushed, drilled or bent", R::replace_run, 40, &kPriorEstimate},
    {splice_open, "splice-open", "The {side} splice at {outlet} is open", P::outlet_side, 2.5,
     "wires pull out of splices made in a tight space", R::remake_splice, 8, &kPriorPractice},
    {splice_resistive, "splice-resistive", "The {side} splice at {outlet} makes poor contact", P::outlet_side, 2.0,
     "a few strands caught, or corroded; the usual weak outlet", R::remake_splice, 8, &kPriorPractice},
    {splice_on_insulation, "splice-on-insulation", "The {side} splice at {outlet} is closed on the insulation",
     P::outlet_side, 1.2, "stripped too short; beginners' fault", R::remake_splice, 8, &kPriorEstimate},
    {pair_shorted, "pair-shorted", "Red and black touch between {from} and {outlet}", P::outlet, 0.5,
     "a screw through the cable or a chafed edge", R::clear_short, 40, &kPriorEstimate},
    {overload, "overload", "More is plugged in than the fuse carries", P::circuit, 3.0,
     "two heavy things at once", R::shed_load, 5, &kPriorPractice},
    {tab_off, "tab-off", "The {side} tab at {outlet} is off", P::outlet_side, 2.0,
     "push-on tabs are knocked off when the outlet is pushed back", R::refit_tab, 5, &kPriorPractice},
    {outlet_dead, "outlet-dead", "Outlet {outlet} is dead inside, {side} contact", P::outlet_side, 0.7,
     "a contact bent or burnt by a worn plug", R::replace_outlet, 12, &kPriorEstimate},
    {device_dead, "device-dead", "The device, or the fuse in its plug, is dead", P::circuit, 6.0,
     "the plug's own small fuse, a dead charger", R::replace_device, 3, &kPriorPractice},
    {reversed_here, "reversed-here", "Red and black are changed over at {outlet}'s tabs", P::outlet, 1.0,
     "two tabs alike, fitted by feel", R::swap_at_tabs, 5, &kPriorEstimate},
    {reversed_from, "reversed-from", "Red and black are changed over at {outlet}'s splices", P::outlet, 0.7,
     "colours lost in the dark", R::swap_at_splice, 9, &kPriorEstimate},
    {wrong_branch, "wrong-branch", "From {outlet} on, the pair of {neighbour} is connected", P::outlet_neighbour, 0.5,
     "two pairs alike in one loom; works, but on the other fuse", R::reconnect_pair, 12, &kPriorEstimate},
    {wrong_branch_unfused, "wrong-branch-unfused",
     "From {outlet} on, the pair of {neighbour} is connected, and its fuse is out", P::outlet_neighbour, 1.2,
     "the same, while the other branch is not in use yet: the beginner's classic", R::reconnect_pair, 12, &kPriorEstimate},
    {wire_thin, "wire-thin", "The wire is too thin for the load", P::circuit, 0.6,
     "extended with what was at hand", R::thicker_wire, 90, &kPriorEstimate},
    {opens_when_moved, "opens-when-moved", "The {side} splice at {outlet} opens when moved", P::outlet_side, 0.8,
     "a loose joint that still touches", R::remake_splice, 8, &kPriorEstimate},
    {none_of_these, "none-of-these", "Something not known here", P::circuit, 1.0,
     "there is always something else", R::look_further, 60, &kPriorEstimate},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < kRows.size(); ++i) {
    if (static_cast<std::size_t>(kRows[i].kind) != i || !(kRows[i].prior > 0.0) || kRows[i].citation == nullptr) return false;
  }
  return true;
}
static_assert(in_order());

void replace_all(std::string& text, std::string_view what, std::string_view with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size())) {
    text.replace(at, what.size(), with);
  }
}

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
    if (row.placed_at == P::outlet_neighbour) {
      for (std::size_t n = 0; n < the_case.neighbours.size(); ++n) {
        if (the_case.neighbours[n].same_loom) add(outlet.id, Side::positive, static_cast<int>(n));
      }
      continue;
    }
    add(outlet.id, Side::positive, -1);
    if (row.placed_at == P::outlet_side) add(outlet.id, Side::negative, -1);
  }
}

}  // namespace

std::span<const FaultRow> fault_rows() { return kRows; }
const FaultRow& fault_row(FaultKind kind) { return kRows[static_cast<std::size_t>(kind)]; }
const FaultRow* fault_by_key(std::string_view key) {
  const auto* found = std::find_if(kRows.begin(), kRows.end(), [&](const FaultRow& r) { return r.key == key; });
  return found == kRows.end() ? nullptr : found;
}
const tables::Citation& prior_citation() { return kPriorEstimate; }

std::string fault_key(const Fault& fault) {
  const FaultRow& row = fault_row(fault.kind);
  std::string key(row.key);
  if (fault.outlet != circuit::kBlock) key.append(" ").append(std::to_string(fault.outlet.number));
  if (row.placed_at == P::circuit_side || row.placed_at == P::outlet_side) key.append(" ").push_back(side_sign(fault.side));
  if (fault.neighbour >= 0) key.append(" n").append(std::to_string(fault.neighbour));
  return key;
}

std::string fault_words(const Case& the_case, const Fault& fault) {
  std::string text(fault_row(fault.kind).words);
  replace_all(text, "{side}", side_words(fault.side));
  replace_all(text, "{outlet}", letter_of(the_case, fault.outlet));
  replace_all(text, "{from}", fed_from_words(the_case, fault.outlet));
  replace_all(text, "{neighbour}", neighbour_words(the_case, fault.neighbour));
  return text;
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
