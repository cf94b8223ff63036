#include "diagnosis/checks.h"

#include <algorithm>

#include "diagnosis/built.h"
#include "diagnosis/check_row.h"
#include "diagnosis/check_words.h"
#include "diagnosis/judgement_constants.h"
#include "diagnosis/prove_dead.h"
#include "diagnosis/words.h"

namespace diagnosis {
namespace {

using circuit::OutletId;
using network::Side;
constexpr Side kRed = Side::positive, kBlack = Side::negative;

std::size_t sockets(const Case& the_case) {
  const auto& points = the_case.circuit.outlets;
  return static_cast<std::size_t>(std::count_if(points.begin(), points.end(), has_socket));
}

class Maker {
 public:
  Maker(const Case& the_case, const Plant& plant) : case_(the_case), plant_(plant) {}
  std::vector<Check> take() { return std::move(checks_); }

  void points(CheckKind kind, Spot red, Spot black, State state = {}) {
    Check check;
    check.kind = kind;
    check.red = red;
    check.black = black;
    check.state = state;
    check.sites = {site_of(red)};
    if (!(site_of(black) == site_of(red))) check.sites.push_back(site_of(black));
    // Volts are read from the front where a contact is probed; what lies behind must be drawn out.
    const Site parted{Location::behind, state.parted_at.value_or(circuit::kBlock)};
    if (state.parted_at && !(check.sites.back() == parted)) check.sites.push_back(parted);
    check.takes_reading = kind != CheckKind::glow;
    finish(check);
  }
  void at_outlet(CheckKind kind, OutletId outlet, State state, Location location, int neighbour = -1) {
    Check check;
    check.kind = kind;
    check.outlet = outlet;
    check.neighbour = neighbour;
    check.state = state;
    check.sites = {{location, outlet}};
    if (kind == CheckKind::pull_fuse) check.sites.push_back({Location::block, circuit::kBlock});
    finish(check);
  }
  void at_block(CheckKind kind, State state, Location location = Location::block, int neighbour = -1) {
    Check check;
    check.kind = kind;
    check.neighbour = neighbour;
    check.state = state;
    check.sites = {{location, circuit::kBlock}};
    finish(check);
  }

 private:
  void finish(Check& check) {
    const CheckKindRow& row = check_kind_row(check.kind);
    check.act = row.act;
    check.takes = row.takes;
    check.proves_dead = row.proves_dead;
    if (check.state.parted_at) {  // hands open the splices, whatever is read afterwards
      check.act = Act::hands;
      check.takes.hands_on_conductors = true;
      check.proves_dead = true;
    }
    check.id = check_id(check);
    check.minutes = row.minutes;
    if (check.kind == CheckKind::others_work) {
      const std::size_t named = complaint_outlets(case_, plant_).size();
      check.minutes += judged(Judged::each_other_min) * static_cast<double>(sockets(case_) - named);
    }
    if (check.proves_dead) check.minutes += judged(Judged::prove_dead_min);
    if (check.state.parted_at) check.minutes += judged(Judged::part_splice_min);
    if (check.sites.size() > 1 && check.act == Act::probe) check.minutes += judged(Judged::long_lead_min);
    for (const AnswerRow& answer : row.answers) {
      const Bounds bounds = answer.bounds(plant_, along_one_side(check));
      check.choices.push_back({answer.key, {}, bounds.low, bounds.high});
    }
    checks_.push_back(std::move(check));
  }

  const Case& case_;
  const Plant& plant_;
  std::vector<Check> checks_;
};

Spot at_block(SpotKind kind, Side side) { return {kind, circuit::kBlock, side}; }
const Spot kBusRed{SpotKind::bus, circuit::kBlock, kRed}, kBusBlack{SpotKind::bus, circuit::kBlock, kBlack};
const Spot kFuseFeed{SpotKind::fuse_feed, circuit::kBlock, kRed}, kFuseWire{SpotKind::fuse_wire, circuit::kBlock, kRed};

void block_points(Maker& make, CheckKind kind, State state) {
  make.points(kind, kBusRed, kBusBlack, state);
  make.points(kind, kFuseFeed, kBusBlack, state);
  make.points(kind, kFuseWire, kBusBlack, state);
  make.points(kind, at_block(SpotKind::clamp, kRed), kBusBlack, state);
  make.points(kind, kBusRed, at_block(SpotKind::clamp, kBlack), state);
  make.points(kind, at_block(SpotKind::clamp, kRed), at_block(SpotKind::clamp, kBlack), state);
  make.points(kind, at_block(SpotKind::battery_post, kRed), at_block(SpotKind::battery_post, kBlack), state);
}

// Where the wires from here on meet: the splice, or the tab where the wire goes straight to the outlet.
SpotKind bar_of(const circuit::Outlet& outlet) { return has_splice(outlet) ? SpotKind::splice : SpotKind::tab; }

// Of these, what there is at this point: a junction has splices only. A device in the socket covers its contacts.
std::vector<SpotKind> spots_at(const circuit::Outlet& outlet, const State& state,
                               std::initializer_list<SpotKind> wanted) {
  std::vector<SpotKind> there;
  for (const SpotKind what : wanted) {
    if (what == SpotKind::splice ? !has_splice(outlet) : !has_socket(outlet)) continue;
    if (what == SpotKind::contact && state.plugged == Plugged::own && state.at == outlet.id) continue;
    there.push_back(what);
  }
  return there;
}

// Across the pair, and each side against the other side's splice, which shows which of the two is dead.
void outlet_points(Maker& make, CheckKind kind, const circuit::Outlet& outlet, State state) {
  const SpotKind bar = bar_of(outlet);
  const auto spot = [&](SpotKind what, Side side) { return Spot{what, outlet.id, side}; };
  const Spot red_bar = spot(bar, kRed), black_bar = spot(bar, kBlack);
  for (const SpotKind what :
       spots_at(outlet, state, {SpotKind::contact, SpotKind::splice, SpotKind::tab, SpotKind::lug})) {
    make.points(kind, spot(what, kRed), spot(what, kBlack), state);
    if (what == bar) continue;
    make.points(kind, spot(what, kRed), black_bar, state);
    make.points(kind, red_bar, spot(what, kBlack), state);
  }
  for (const SpotKind what : {SpotKind::contact, bar}) {
    if (what != bar && spots_at(outlet, state, {what}).empty()) continue;
    make.points(kind, spot(what, kRed), kBusBlack, state);
    make.points(kind, kBusRed, spot(what, kBlack), state);
  }
}

// Volts lost along one side while a load is on: the joints tell on themselves.
void drops(Maker& make, const circuit::Outlet& outlet, State state) {
  const SpotKind bar = bar_of(outlet);
  const auto spot = [&](SpotKind what, Side side) { return Spot{what, outlet.id, side}; };
  for (const SpotKind what : spots_at(outlet, state, {SpotKind::contact, SpotKind::tab})) {
    if (what == bar) continue;
    make.points(CheckKind::volts, spot(bar, kRed), spot(what, kRed), state);
    make.points(CheckKind::volts, spot(what, kBlack), spot(bar, kBlack), state);
  }
  make.points(CheckKind::volts, kBusRed, spot(bar, kRed), state);
  make.points(CheckKind::volts, spot(bar, kBlack), kBusBlack, state);
}

void loaded_points(Maker& make, const Case& the_case, const Plant& plant, int target, Plugged plugged) {
  const OutletId id = the_case.circuit.outlets[static_cast<std::size_t>(target)].id;
  const State state{true, plugged, id, std::nullopt};
  block_points(make, CheckKind::volts, state);
  make.points(CheckKind::volts, at_block(SpotKind::battery_post, kRed), kBusRed, state);
  make.points(CheckKind::volts, kBusBlack, at_block(SpotKind::battery_post, kBlack), state);
  make.points(CheckKind::volts, kBusRed, kFuseFeed, state);
  make.points(CheckKind::volts, kFuseFeed, kFuseWire, state);
  make.points(CheckKind::volts, kFuseWire, at_block(SpotKind::clamp, kRed), state);
  make.points(CheckKind::volts, at_block(SpotKind::clamp, kBlack), kBusBlack, state);
  for (const circuit::Outlet& outlet : the_case.circuit.outlets) {
    if (!plant.feeds(plant.outlet_index(outlet.id), target)) continue;
    outlet_points(make, CheckKind::volts, outlet, state);
    drops(make, outlet, state);
  }
}

// What is plugged in there, and what is pulled to see whether it still runs.
void socket_checks(Maker& make, OutletId id, bool complained) {
  const State bare{};
  if (!complained) make.at_outlet(CheckKind::device_here, id, bare, Location::front);
  make.at_outlet(CheckKind::other_device, id, {true, Plugged::device, id, std::nullopt}, Location::front);
  make.at_outlet(CheckKind::wiggle, id, bare, Location::front);
}
void pull_checks(Maker& make, const Case& the_case, OutletId id) {
  make.at_outlet(CheckKind::pull_fuse, id, {}, Location::front);
  for (std::size_t n = 0; n < the_case.neighbours.size(); ++n) {
    if (the_case.neighbours[n].same_loom) {
      make.at_outlet(CheckKind::pull_fuse, id, {}, Location::front, static_cast<int>(n));
    }
  }
}

void outlet_checks(Maker& make, const Case& the_case, const circuit::Outlet& outlet, bool complained) {
  const OutletId id = outlet.id;
  const State bare{};
  const State fuse_out{false, Plugged::nothing, circuit::kBlock, std::nullopt};
  outlet_points(make, CheckKind::volts, outlet, bare);
  outlet_points(make, CheckKind::glow, outlet, bare);
  if (has_socket(outlet)) socket_checks(make, id, complained);
  make.at_outlet(CheckKind::look_behind, id, fuse_out, Location::behind);
  make.at_outlet(CheckKind::tug, id, fuse_out, Location::behind);
  if (has_socket(outlet)) pull_checks(make, the_case, id);
  if (!has_splice(outlet)) return;  // nothing to part
  State parted = fuse_out;
  parted.parted_at = id;
  make.points(CheckKind::ohms, at_block(SpotKind::clamp, kRed), at_block(SpotKind::clamp, kBlack), parted);
  make.points(CheckKind::glow, kFuseFeed, kFuseWire, parted);
  // The run by itself: from where it starts to its free end.
  const circuit::Outlet* before = circuit::find_outlet(the_case.circuit, outlet.fed_from);
  for (const Side side : {kRed, kBlack}) {
    const Spot start =
        before == nullptr ? at_block(SpotKind::clamp, side) : Spot{bar_of(*before), outlet.fed_from, side};
    make.points(CheckKind::ohms, start, {SpotKind::wire_end, id, side}, parted);
  }
}

}  // namespace

std::vector<int> complaint_outlets(const Case& the_case, const Plant& plant) {
  std::vector<int> named;
  for (const OutletId id : the_case.complaint.outlets) {
    if (plant.outlet_index(id) >= 0) named.push_back(plant.outlet_index(id));
  }
  if (named.empty()) {
    for (int k = 0; k < static_cast<int>(plant.outlets()); ++k) {
      if (plant.has_socket(k)) named.push_back(k);
    }
  }
  std::sort(named.begin(), named.end());
  named.erase(std::unique(named.begin(), named.end()), named.end());
  return named;
}

std::vector<Check> make_checks(const Case& the_case, const Plant& plant) {
  Maker make(the_case, plant);
  const State bare{};
  const State fuse_out{false, Plugged::nothing, circuit::kBlock, std::nullopt};
  block_points(make, CheckKind::volts, bare);
  block_points(make, CheckKind::glow, bare);
  make.points(CheckKind::ohms, at_block(SpotKind::clamp, kRed), at_block(SpotKind::clamp, kBlack), fuse_out);
  make.points(CheckKind::glow, kFuseFeed, kFuseWire, fuse_out);
  make.points(CheckKind::volts, kFuseWire, kBusBlack, fuse_out);  // live with its fuse out: fed from elsewhere

  const std::vector<int> complained = complaint_outlets(the_case, plant);
  const auto named = [&](int k) { return std::find(complained.begin(), complained.end(), k) != complained.end(); };
  for (int k = 0; k < static_cast<int>(plant.outlets()); ++k) {
    outlet_checks(make, the_case, the_case.circuit.outlets[static_cast<std::size_t>(k)], named(k));
  }
  loaded_points(make, the_case, plant, complained.front(), Plugged::lamp);
  loaded_points(make, the_case, plant, complained.front(), Plugged::device);
  if (!the_case.tools.lamp && !the_case.tools.device)
    loaded_points(make, the_case, plant, complained.front(), Plugged::own);

  make.at_block(CheckKind::block_alive, bare);
  make.at_block(CheckKind::fuse_look, bare);
  make.at_block(CheckKind::fuse_press, bare);
  make.at_block(CheckKind::fuse_swap, bare);
  make.at_block(CheckKind::tug_clamps, fuse_out);
  make.at_block(CheckKind::main_look, bare, Location::battery);
  const auto& points = the_case.circuit.outlets;
  const OutletId front = std::find_if(points.begin(), points.end(), has_socket)->id;  // problems(): there is one
  make.at_outlet(CheckKind::add_up, front, bare, Location::front);
  make.at_outlet(CheckKind::device_elsewhere, front, bare, Location::front);
  // What is printed on the wire says something only against what is taken to be there.
  const OutletId first = the_case.circuit.outlets[static_cast<std::size_t>(complained.front())].id;
  const BuiltRun* run = built_run(the_case.built, first);
  if (run != nullptr && run->wire) make.at_outlet(CheckKind::read_gauge, first, fuse_out, Location::behind);
  if (complained.size() < sockets(the_case)) {
    make.at_outlet(CheckKind::others_work, front, bare, Location::front);
  }
  for (std::size_t n = 0; n < the_case.neighbours.size(); ++n) {
    if (the_case.neighbours[n].same_loom)
      make.at_block(CheckKind::neighbour_fuse, bare, Location::block, static_cast<int>(n));
  }
  return make.take();
}

bool has_tools(const Check& check, const Tools& tools) {
  const CheckKindRow& row = check_kind_row(check.kind);
  if (row.needs != nullptr && !(tools.*row.needs)) return false;
  if (check.proves_dead && !can_prove_dead(tools)) return false;
  if (check.state.plugged == Plugged::lamp) return tools.lamp;
  if (check.state.plugged == Plugged::device) return tools.device;
  return true;
}

double minutes_for(const Check& check, const Setup& setup, const Plant& plant) {
  double minutes = check.minutes;
  if (check.state.fuse_in != setup.state.fuse_in) {
    minutes += judged(Judged::fuse_change_min);
    if (!setup.site || setup.site->location != Location::block) minutes += judged(Judged::to_block_min);
  }
  if (check.state.plugged != setup.state.plugged ||
      (check.state.plugged != Plugged::nothing && !(check.state.at == setup.state.at))) {
    minutes += judged(Judged::plug_change_min);
  }
  for (const Site& site : check.sites) {
    const bool here = setup.site && *setup.site == site;
    switch (site.location) {
      case Location::battery: minutes += here ? 0.0 : judged(Judged::to_battery_min); break;
      case Location::block: minutes += here ? 0.0 : judged(Judged::to_block_min); break;
      case Location::front: {
        const bool same = setup.site && setup.site->outlet == site.outlet && setup.site->location == Location::behind;
        minutes += here || same ? 0.0 : judged(Judged::to_outlet_min);
        break;
      }
      case Location::behind: {
        const bool out =
            std::find(setup.drawn_out.begin(), setup.drawn_out.end(), site.outlet) != setup.drawn_out.end();
        minutes += here ? 0.0 : judged(Judged::to_outlet_min);
        minutes += out ? 0.0 : judged(Judged::open_up_min);
        break;
      }
    }
  }
  if (check.sites.size() > 1 && check.act == Act::probe) {
    // The lead is as long as the way between the two.
    double away_m = 0.0;
    for (const Site& site : check.sites) {
      const int k = plant.outlet_index(site.outlet);
      if (k >= 0) away_m = std::max(away_m, plant.distance_m(k));
    }
    minutes += std::min(judged(Judged::lead_min_per_m) * away_m, judged(Judged::lead_min_at_most));
  }
  return minutes;
}

void leave_behind(const Check& check, Setup& setup) {
  setup.state = check.state;
  for (const Site& site : check.sites) {
    if (site.location == Location::behind &&
        std::find(setup.drawn_out.begin(), setup.drawn_out.end(), site.outlet) == setup.drawn_out.end()) {
      setup.drawn_out.push_back(site.outlet);
    }
  }
  if (!check.sites.empty()) setup.site = check.sites.front();
}

}  // namespace diagnosis
