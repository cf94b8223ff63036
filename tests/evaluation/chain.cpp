#include "evaluation/chain.h"

namespace evaluation {
namespace {

using diagnosis::Check;
using diagnosis::CheckKind;
using diagnosis::Spot;
using diagnosis::SpotKind;
using enum diagnosis::FaultKind;

Spot block(SpotKind kind, Side side) { return {kind, circuit::kBlock, side}; }

}  // namespace

Chain::Chain(const diagnosis::Case& the_case)
    : case_(the_case), plant_(case_), all_(diagnosis::make_checks(case_, plant_)),
      target_(case_.complaint.outlets.empty() ? case_.circuit.outlets.back().id : case_.complaint.outlets.front()) {
  for (OutletId at = target_; at != circuit::kBlock; at = circuit::find_outlet(case_.circuit, at)->fed_from) {
    path_.insert(path_.begin(), at);
  }
}

std::string Chain::word_of(const Check& check, const diagnosis::Answer& answer) {
  if (answer.kind == diagnosis::AnswerKind::word) return std::string(diagnosis::answer_text(answer.key));
  if (answer.kind != diagnosis::AnswerKind::reading) return {};
  for (const diagnosis::Choice& choice : check.choices) {
    if (!choice.low && !choice.high) continue;   // no word of a reading
    if (answer.reading >= choice.low.value_or(-1e300) && answer.reading <= choice.high.value_or(1e300)) {
      return std::string(diagnosis::answer_text(choice.key));
    }
  }
  return {};
}

const Check* Chain::find(CheckKind kind, OutletId outlet, int neighbour) const {
  for (const Check& check : all_) {
    const bool at_outlet = kind == CheckKind::look_behind || kind == CheckKind::tug || kind == CheckKind::wiggle ||
                           kind == CheckKind::other_device || kind == CheckKind::pull_fuse;
    if (check.kind == kind && check.neighbour == neighbour && (!at_outlet || check.outlet == outlet)) return &check;
  }
  return nullptr;
}

// Readings under a lamp or a device where there is one: a bare meter sees no bad joint.
std::vector<Check> Chain::reading(const Spot& red, const Spot& black) const {
  using diagnosis::Plugged;
  std::vector<Check> found;
  const auto wanted = case_.tools.lamp ? Plugged::lamp : case_.tools.device ? Plugged::device : Plugged::nothing;
  for (const bool loaded : {true, false}) {
    for (const Check& check : all_) {
      const bool here = check.red == red && check.black == black && check.state.fuse_in && !check.state.parted_at;
      if (!here) continue;
      const bool volts = check.kind == CheckKind::volts && case_.tools.meter &&
                         check.state.plugged == (loaded ? wanted : Plugged::nothing);
      const bool glow = check.kind == CheckKind::glow && !case_.tools.meter && !loaded;
      if ((volts || glow) && found.empty()) found.push_back(check);
    }
  }
  return found;
}

std::vector<Point> Chain::red_points() const {
  const Spot bus_black = block(SpotKind::bus, Side::negative), bar_black{SpotKind::splice, target_, Side::negative};
  const auto at = [&](SpotKind kind, OutletId outlet) { return Spot{kind, outlet, Side::positive}; };
  std::vector<Point> points;
  points.push_back({reading(block(SpotKind::battery_post, Side::positive), block(SpotKind::battery_post, Side::negative)),
                    {{source_flat}}});
  points.push_back({reading(block(SpotKind::bus, Side::positive), bus_black),
                    {{main_open}, {feeder_resistive, circuit::kBlock, Side::positive},
                     {feeder_resistive, circuit::kBlock, Side::negative}}});
  points.push_back({reading(block(SpotKind::fuse_feed, Side::positive), bus_black), {{fuse_loose}}});
  points.push_back({reading(block(SpotKind::fuse_wire, Side::positive), bus_black), {{fuse_blown}, {fuse_elsewhere}, {fuse_loose}}});
  points.push_back({reading(block(SpotKind::clamp, Side::positive), bus_black), {{clamp_loose}}});
  add_path(points, Side::positive);
  points.push_back({reading(at(SpotKind::tab, target_), bar_black), {{splice_open, target_, Side::positive}}});
  points.push_back({reading(at(SpotKind::lug, target_), bar_black), {{tab_off, target_, Side::positive}}});
  points.push_back({reading(at(SpotKind::contact, target_), bar_black), {{outlet_dead, target_, Side::positive}}});
  return points;
}

std::vector<Point> Chain::black_points() const {
  const Spot bar_red{SpotKind::splice, target_, Side::positive};
  const auto at = [&](SpotKind kind) { return Spot{kind, target_, Side::negative}; };
  std::vector<Point> points;
  points.push_back({reading(block(SpotKind::bus, Side::positive), block(SpotKind::clamp, Side::negative)),
                    {{clamp_loose, circuit::kBlock, Side::negative}}});
  add_path(points, Side::negative);
  points.push_back({reading(bar_red, at(SpotKind::tab)), {{splice_open, target_, Side::negative}}});
  points.push_back({reading(bar_red, at(SpotKind::lug)), {{tab_off, target_, Side::negative}}});
  points.push_back({reading(bar_red, at(SpotKind::contact)), {{outlet_dead, target_, Side::negative}}});
  return points;
}

void Chain::add_path(std::vector<Point>& points, Side side) const {
  OutletId before = circuit::kBlock;
  for (const OutletId outlet : path_) {
    const Spot bar{SpotKind::splice, outlet, side};
    Point point;
    point.checks = side == Side::positive ? reading(bar, block(SpotKind::bus, Side::negative))
                                          : reading(block(SpotKind::bus, Side::positive), bar);
    point.before_it = {{splice_open, outlet, side}};
    if (before != circuit::kBlock) point.before_it.push_back({splice_open, before, side});
    point.before_it.push_back({wire_open, outlet, side});
    points.push_back(point);
    before = outlet;
  }
}

}  // namespace evaluation
