#include "screens/trace_place.h"

#include <cmath>

#include "units/format.h"

namespace screens {
namespace {

using diagnosis::CheckKind;
using diagnosis::FaultKind;
using diagnosis::SpotKind;
using network::Side;
using pictures::MarkPlace;
using pictures::MarkShape;
using pictures::SketchMark;

MarkPlace place_of(SpotKind kind) {
  switch (kind) {
    case SpotKind::battery_post: return MarkPlace::battery_post;
    case SpotKind::bus: return MarkPlace::bus;
    case SpotKind::fuse_feed: return MarkPlace::fuse_feed;
    case SpotKind::fuse_wire: return MarkPlace::fuse_wire;
    case SpotKind::clamp: return MarkPlace::clamp;
    case SpotKind::wire_end: return MarkPlace::wire_end;
    case SpotKind::splice: return MarkPlace::splice;
    case SpotKind::tab: return MarkPlace::tab;
    case SpotKind::lug: return MarkPlace::lug;
    case SpotKind::contact: break;
  }
  return MarkPlace::contact;
}

SketchMark lead(const diagnosis::Spot& spot, MarkShape shape) {
  return {place_of(spot.kind), spot.side == Side::positive, spot.outlet, shape};
}

SketchMark part(MarkPlace place, circuit::OutletId outlet = circuit::kBlock, bool red = true) {
  return {place, red, outlet, MarkShape::ring};
}

std::string letter(const diagnosis::Case& the_case, circuit::OutletId id) {
  for (std::size_t i = 0; i < the_case.circuit.outlets.size(); ++i)
    if (the_case.circuit.outlets[i].id == id) return circuit::outlet_letter(i);
  return "?";
}

std::string fed_from(const diagnosis::Case& the_case, circuit::OutletId id) {
  const circuit::Outlet* outlet = circuit::find_outlet(the_case.circuit, id);
  if (outlet == nullptr || outlet->fed_from == circuit::kBlock) return "the block";
  return letter(the_case, outlet->fed_from);
}

std::vector<SketchMark> parts_of(const diagnosis::Case& the_case, const diagnosis::Check& check) {
  switch (check.kind) {
    case CheckKind::device_here:
    case CheckKind::other_device:
    case CheckKind::wiggle: return {part(MarkPlace::outlet, check.outlet)};
    case CheckKind::look_behind:
    case CheckKind::tug:
    case CheckKind::read_gauge: return {part(MarkPlace::behind, check.outlet)};
    case CheckKind::block_alive:
    case CheckKind::neighbour_fuse: return {part(MarkPlace::block)};
    case CheckKind::fuse_look:
    case CheckKind::fuse_press:
    case CheckKind::fuse_swap: return {part(MarkPlace::fuse)};
    case CheckKind::pull_fuse:
      return {part(check.neighbour < 0 ? MarkPlace::fuse : MarkPlace::block), part(MarkPlace::outlet, check.outlet)};
    case CheckKind::tug_clamps: return {part(MarkPlace::clamp), part(MarkPlace::clamp, circuit::kBlock, false)};
    case CheckKind::main_look: return {part(MarkPlace::feeder)};
    case CheckKind::others_work: {
      std::vector<SketchMark> others;
      for (const circuit::Outlet& outlet : the_case.circuit.outlets) {
        bool named = false;
        for (const circuit::OutletId dead : the_case.complaint.outlets) named = named || dead == outlet.id;
        if (!named) others.push_back(part(MarkPlace::outlet, outlet.id));
      }
      return others;
    }
    case CheckKind::device_elsewhere:
    case CheckKind::add_up:
    case CheckKind::volts:
    case CheckKind::glow:
    case CheckKind::ohms: break;
  }
  return {};
}

}  // namespace

Marked marked_by(const diagnosis::Case& the_case, const diagnosis::Check& check) {
  Marked marked;
  marked.two_leads = check.kind == CheckKind::volts || check.kind == CheckKind::glow || check.kind == CheckKind::ohms;
  if (!marked.two_leads) {
    marked.marks = parts_of(the_case, check);
    return marked;
  }
  marked.marks = {lead(check.red, MarkShape::ring), lead(check.black, MarkShape::square)};
  marked.words = diagnosis::spot_words(the_case, check.red) + "; " + diagnosis::spot_words(the_case, check.black);
  return marked;
}

Marked marked_by(const diagnosis::Case& the_case, const diagnosis::Fault& fault) {
  const bool red = fault.side == Side::positive;
  const auto both = [&](MarkPlace place) {
    return std::vector<SketchMark>{part(place, fault.outlet), part(place, fault.outlet, false)};
  };
  Marked marked;
  marked.words = place_words(the_case, fault);
  switch (fault.kind) {
    case FaultKind::source_flat: marked.marks = {part(MarkPlace::battery)}; break;
    case FaultKind::main_open: marked.marks = {part(MarkPlace::feeder)}; break;
    case FaultKind::feeder_resistive: marked.marks = {part(MarkPlace::feeder, circuit::kBlock, red)}; break;
    case FaultKind::fuse_blown:
    case FaultKind::fuse_missing:
    case FaultKind::fuse_elsewhere:
    case FaultKind::fuse_loose:
    case FaultKind::overload: marked.marks = {part(MarkPlace::fuse)}; break;
    case FaultKind::clamp_loose: marked.marks = {part(MarkPlace::clamp, circuit::kBlock, red)}; break;
    case FaultKind::wire_open: marked.marks = {part(MarkPlace::run, fault.outlet, red)}; break;
    case FaultKind::splice_open:
    case FaultKind::splice_resistive:
    case FaultKind::splice_on_insulation:
    case FaultKind::opens_when_moved: marked.marks = {part(MarkPlace::splice, fault.outlet, red)}; break;
    case FaultKind::pair_shorted: marked.marks = both(MarkPlace::run); break;
    case FaultKind::tab_off: marked.marks = {part(MarkPlace::tab, fault.outlet, red)}; break;
    case FaultKind::outlet_dead: marked.marks = {part(MarkPlace::outlet, fault.outlet)}; break;
    case FaultKind::reversed_here: marked.marks = both(MarkPlace::tab); break;
    case FaultKind::reversed_from:
    case FaultKind::wrong_branch:
    case FaultKind::wrong_branch_unfused: marked.marks = both(MarkPlace::splice); break;
    case FaultKind::device_dead:
    case FaultKind::wire_thin:
    case FaultKind::none_of_these: break;
  }
  return marked;
}

std::string place_words(const diagnosis::Case& the_case, const diagnosis::Fault& fault) {
  switch (fault.kind) {
    case FaultKind::source_flat: return "At the battery";
    case FaultKind::main_open:
    case FaultKind::feeder_resistive: return "Between battery and block";
    case FaultKind::fuse_blown:
    case FaultKind::fuse_missing:
    case FaultKind::fuse_elsewhere:
    case FaultKind::fuse_loose: return "At the block, position " + std::to_string(the_case.circuit.fuse_position);
    case FaultKind::clamp_loose: return "At the block";
    case FaultKind::wire_open:
    case FaultKind::pair_shorted:
      return "Between " + fed_from(the_case, fault.outlet) + " and " + letter(the_case, fault.outlet);
    case FaultKind::outlet_dead: return "In outlet " + letter(the_case, fault.outlet);
    case FaultKind::device_dead: return "In what you plug in";
    case FaultKind::overload:
    case FaultKind::wire_thin: return "The whole circuit";
    case FaultKind::none_of_these: return {};
    default: break;
  }
  return "Behind outlet " + letter(the_case, fault.outlet);
}

std::string minutes_words(double minutes) {
  if (minutes < 0.75) return "half a minute";
  const long whole = std::lround(minutes);
  return "about " + std::to_string(whole) + (whole == 1 ? " minute" : " minutes");
}

std::string share_words(double probability) {
  if (probability < 0.01) return "under 1 %";
  if (probability > 0.99) return "over 99 %";
  return units::number_text(probability * 100.0, probability < 0.095 ? 1 : 2) + " %";
}

}  // namespace screens
