#include "diagnosis/plant.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/built.h"
#include "diagnosis/judgement_constants.h"
#include "network/probe.h"

namespace diagnosis {
namespace {

using network::Element;
using network::Side;

constexpr std::size_t at(int index) { return static_cast<std::size_t>(index); }

// Pairs of nodes in order: post, then the away end of each element.
enum Pair : int { post, main_fuse, feeder, bus, fuse_contact, fuse, clamp, first_outlet };
constexpr int kPairsPerOutlet = 5;  // wire, splice, tail, terminal, outlet_inside
constexpr int red(int pair) { return 2 * pair; }
constexpr int black(int pair) { return 2 * pair + 1; }

int pair_of(Element element, int outlet) {
  const int own = first_outlet + kPairsPerOutlet * outlet;
  switch (element) {
    case Element::battery: return post;
    case Element::main_fuse:
    case Element::disconnect: return main_fuse;  // one after the other in the same wire
    case Element::feeder: return feeder;
    case Element::bus: return bus;
    case Element::fuse_contact: return fuse_contact;
    case Element::fuse: return fuse;
    case Element::clamp: return clamp;
    case Element::in_line:
    case Element::wire: return own;
    case Element::splice: return own + 1;
    case Element::tail: return own + 2;
    case Element::terminal: return own + 3;
    case Element::outlet_inside:
    case Element::beside:
    case Element::device: break;
  }
  return own + 4;
}
int node_of(Element element, int outlet, Side side) {
  return 2 * pair_of(element, outlet) + (side == Side::positive ? 0 : 1);
}

Appliance appliance_of(const circuit::Load& load, units::Volts nominal) {
  network::LoadLaw law = network::load_law(load, nominal);
  if (law.law == network::Law::open) {
    circuit::Load one_ampere = load;
    one_ampere.rating_in_watts = false;
    one_ampere.rating = 1.0;
    law = network::load_law(one_ampere, nominal);
  }
  return {law};
}

}  // namespace

Appliance drawing(double amperes, double nominal_v) { return {{network::Law::resistance, nominal_v / amperes}}; }

double Potentials::load_volts(int red_node, int black_node, double ohm, bool one_way) const {
  const int a = part[at(red_node)], b = part[at(black_node)];
  const bool forward = a == 1 && b == 0, backward = a == 0 && b == 1;
  if (!forward && !backward) return 0.0;
  if (backward && one_way) return -emf_v;
  const double v = emf_v * ohm / (source_ohm + path_ohm[at(red_node)] + path_ohm[at(black_node)] + ohm);
  return forward ? v : -v;
}

double Potentials::appliance_volts(int red_node, int black_node, const Appliance& appliance) const {
  const int a = part[at(red_node)], b = part[at(black_node)];
  if (a == 0 && b == 1) return -emf_v;
  if (a != 1 || b != 0) return 0.0;
  return appliance.load.volts_behind(emf_v, source_ohm + path_ohm[at(red_node)] + path_ohm[at(black_node)]);
}

double Appliance::ohm_at(double volts) const {
  const double held = std::max(volts, load.fold_v);
  return held / load.current_a(held);
}

void View::aim(const Edits& edits) {
  edits_ = edits;
  ++aimed_;
}

const Potentials& View::at(std::size_t slot, const Bench& bench) {
  if (slot >= solved_.size()) solved_.resize(slot + 1);  // plain is slot 0: there from now on
  Solved& here = solved_[slot];
  if (here.aimed != aimed_) {
    here.aimed = aimed_;
    if (bench.only_loaded() && slot != kPlain) {
      here.potentials = plain();  // the same wires, only something plugged in
      plant_->energise(bench, here.potentials);
    } else {
      plant_->solve(bench, edits_.all(), here.potentials);
    }
  }
  return here.potentials;
}

double Potentials::ohms(int a, int b) const {
  if (part[at(a)] != part[at(b)]) return kOpenOhm;
  double common = 0.0;  // of the two ways to the root
  std::vector<int> up;
  for (int n = a; n >= 0; n = parent[at(n)]) up.push_back(n);
  for (int n = b; n >= 0; n = parent[at(n)]) {
    if (std::find(up.begin(), up.end(), n) != up.end()) {
      common = path_ohm[at(n)];
      break;
    }
  }
  return path_ohm[at(a)] + path_ohm[at(b)] - 2.0 * common;
}

Plant::Plant(const Case& the_case) {
  const circuit::Circuit& circuit = the_case.circuit;
  const network::BranchNetwork built = network::build(circuit, fitted_of(the_case), {}, network::BatteryState::resting);
  const int pairs = first_outlet + kPairsPerOutlet * static_cast<int>(circuit.outlets.size());
  parent_.assign(at(2 * pairs), -1);
  ohm_.assign(at(2 * pairs), 0.0);
  nominal_v_ = circuit.supply.nominal.number();
  lamp_ohm_ = network::lamp_hot_resistance(circuit.supply.nominal).number();
  test_device_ = drawing(judged(Judged::test_device_a), nominal_v_);
  for (const circuit::Outlet& outlet : circuit.outlets) {
    ids_.push_back(outlet.id);
    sockets_.push_back(diagnosis::has_socket(outlet) ? 1 : 0);
  }
  for (int pair = main_fuse; pair < first_outlet; ++pair) {
    parent_[at(red(pair))] = red(pair - 1);
    parent_[at(black(pair))] = black(pair - 1);
  }
  for (int k = 0; k < static_cast<int>(ids_.size()); ++k) {
    const circuit::Outlet& outlet = circuit.outlets[at(k)];
    parent_outlet_.push_back(outlet_index(outlet.fed_from));
    const int own = pair_of(Element::wire, k);
    const int from = parent_outlet_.back() < 0 ? int{clamp} : pair_of(Element::splice, parent_outlet_.back());
    for (int step = 0; step < kPairsPerOutlet; ++step) {
      const int before = step == 0 ? from : own + step - 1;
      parent_[at(red(own + step))] = red(before);
      parent_[at(black(own + step))] = black(before);
    }
    const circuit::Load load = outlet.devices.empty() ? circuit::Load{} : outlet.devices.front().load;
    device_.push_back(appliance_of(load, circuit.supply.nominal));
    distance_m_.push_back(circuit::distance_from_block(circuit, outlet.id).number());
  }
  add_elements(the_case, built);
  // A neighbour's line to here: taken as our own wire over the same way, its fuse and clamp as ours.
  for (int k = 0; k < static_cast<int>(ids_.size()); ++k) {
    double line = ohm_[at(red(fuse))] + ohm_[at(red(fuse_contact))] + ohm_[at(red(clamp))];
    for (int o = k; o >= 0; o = parent_outlet_[at(o)]) line += ohm_[at(node_of(Element::wire, o, Side::positive))];
    line_ohm_.push_back(line);
  }
}

// Each run and tail gets the wire that is built there; switches in the line and a chassis are no wire.
void Plant::add_elements(const Case& the_case, const network::BranchNetwork& built) {
  wire_spread_ = diagnosis::wire_spread(the_case);
  wire_ohm_.assign(ids_.size(), 0.0);
  std::vector<WireFactors> factors;
  for (const circuit::OutletId id : ids_) factors.push_back(wire_factors(the_case, id));
  for (const auto& [place, id, near_source, away] : built.elements) {
    const network::Branch& branch = built.netlist.branch(id);
    if (place.element == Element::device || place.element == Element::beside) continue;
    if (place.element == Element::battery) {
      emf_v_ = branch.emf_v;
      source_ohm_ = branch.value;
      continue;
    }
    const int k = outlet_index(place.outlet);
    double ohm = branch.value;
    if (place.element == Element::tail) ohm *= factors[at(k)].tail;
    const bool chassis = place.side == Side::negative && k >= 0 &&
                         the_case.circuit.outlets[at(k)].run.back == circuit::ReturnPath::chassis;
    if (place.element == Element::wire && !chassis) wire_ohm_[at(k)] += ohm *= factors[at(k)].run;
    ohm_[at(node_of(place.element, k, place.side))] += ohm;
  }
  for (int k = 0; k < static_cast<int>(ids_.size()); ++k) {
    if (parent_outlet_[at(k)] >= 0) wire_ohm_[at(k)] += wire_ohm_[at(parent_outlet_[at(k)])];
  }
}

int Plant::outlet_index(circuit::OutletId id) const {
  const auto found = std::find(ids_.begin(), ids_.end(), id);
  return found == ids_.end() ? -1 : static_cast<int>(found - ids_.begin());
}

bool Plant::feeds(int outlet, int other) const {
  for (int o = other; o >= 0; o = parent_outlet_[at(o)]) {
    if (o == outlet) return true;
  }
  return false;
}

int Plant::contact(int outlet, Side side) const { return node_of(Element::outlet_inside, outlet, side); }

int Plant::node(const Spot& spot, bool fuse_in) const {
  const int k = outlet_index(spot.outlet);
  switch (spot.kind) {
    case SpotKind::battery_post: return node_of(Element::battery, -1, spot.side);
    case SpotKind::bus: return node_of(Element::bus, -1, spot.side);
    case SpotKind::fuse_feed: return fuse_in ? red(fuse_contact) : red(bus);
    case SpotKind::fuse_wire: return red(fuse);
    case SpotKind::clamp: return node_of(Element::clamp, -1, spot.side);
    case SpotKind::wire_end: return node_of(Element::wire, k, spot.side);
    case SpotKind::splice: return node_of(Element::splice, k, spot.side);
    case SpotKind::tab: return node_of(Element::tail, k, spot.side);
    case SpotKind::lug: return node_of(Element::terminal, k, spot.side);
    case SpotKind::contact: break;
  }
  return node_of(Element::outlet_inside, k, spot.side);
}

// Behind the blown fuse the red wires hang loose. The short joins them to the black wire: their parents are
// turned round, so that the way to a post leads through the short.
void Plant::lay_short(int outlet, Potentials& at_now) const {
  const int r = node_of(Element::wire, outlet, Side::positive);
  const int b = node_of(Element::wire, outlet, Side::negative);
  int below = b;
  double ohm_below = judged(Judged::short_ohm);
  for (int n = r; n >= 0;) {
    const int above = at_now.parent[at(n)];
    const double ohm_above = at_now.path_ohm[at(n)];  // still the element's own here
    at_now.parent[at(n)] = below;
    at_now.path_ohm[at(n)] = ohm_below;
    if (above < 0 || std::isinf(ohm_above)) break;
    below = n;
    ohm_below = ohm_above;
    n = above;
  }
}

void Plant::apply(const Edit& edit, const Bench& bench, Potentials& now, double& emf_v, double& source_ohm) const {
  const int node = edit.kind == EditKind::series ? node_of(edit.element, edit.outlet, edit.side) : 0;
  switch (edit.kind) {
    case EditKind::series:
      if (edit.element == Element::battery) source_ohm += edit.ohm;
      else now.path_ohm[at(node)] += edit.ohm;
      return;
    case EditKind::swap: {
      const int r = node_of(edit.element, edit.outlet, Side::positive);
      std::swap(now.parent[at(r)], now.parent[at(r + 1)]);
      std::swap(now.path_ohm[at(r)], now.path_ohm[at(r + 1)]);
      return;
    }
    case EditKind::refeed: {
      const int r = node_of(Element::wire, edit.outlet, Side::positive);
      const bool live = edit.neighbour == bench.neighbour_switched ? bench.neighbour_in : edit.live;
      now.parent[at(r)] = red(bus);
      now.parent[at(r + 1)] = black(bus);
      now.path_ohm[at(r)] = live ? edit.ohm : kOpenOhm;
      now.path_ohm[at(r + 1)] = edit.ohm;
      return;
    }
    case EditKind::weak_source:
      emf_v *= edit.emf_factor;
      source_ohm *= edit.factor;
      return;
    case EditKind::thin_runs:
      for (int k = 0; k < static_cast<int>(ids_.size()); ++k) {
        const int r = node_of(Element::wire, k, Side::positive);
        now.path_ohm[at(r)] *= edit.factor;
        now.path_ohm[at(r + 1)] *= edit.factor;
      }
      return;
    case EditKind::short_pair: return;  // after the rest: see solve()
  }
}

void Plant::solve(const Bench& bench, std::span<const Edit> edits, Potentials& now) const {
  const int nodes = static_cast<int>(parent_.size());
  double emf_v = emf_v_, source_ohm = source_ohm_;
  now.parent = parent_;
  now.path_ohm = ohm_;
  now.part.assign(at(nodes), -1);
  int shorted = -1;
  for (const Edit& edit : edits) {
    apply(edit, bench, now, emf_v, source_ohm);
    if (edit.kind == EditKind::short_pair) shorted = edit.outlet;
  }
  // A fuse put in on a short is blown a moment later.
  if (!bench.fuse_in) now.path_ohm[at(red(fuse_contact))] = kOpenOhm;
  if (!bench.fuse_in || shorted >= 0) now.path_ohm[at(red(fuse))] = kOpenOhm;
  if (bench.parted_at >= 0) {
    now.path_ohm[at(node_of(Element::splice, bench.parted_at, Side::positive))] = kOpenOhm;
    now.path_ohm[at(node_of(Element::splice, bench.parted_at, Side::negative))] = kOpenOhm;
  }
  if (shorted >= 0) lay_short(shorted, now);
  now.emf_v = emf_v;
  now.source_ohm = source_ohm;

  // Parts and ways to their roots. Parents stand before children, but for what a short turned round.
  std::vector<int>& waiting = now.waiting;
  waiting.clear();
  for (int first = 0; first < nodes; ++first) {
    int n = first;
    while (now.part[at(n)] < 0) {
      const int up = now.parent[at(n)];
      if (up < 0 || std::isinf(now.path_ohm[at(n)])) {
        now.part[at(n)] = n == red(post) ? 1 : n == black(post) ? 0 : n + 2;
        now.path_ohm[at(n)] = 0.0;
        now.parent[at(n)] = -1;
        break;
      }
      if (now.part[at(up)] >= 0) {
        now.part[at(n)] = now.part[at(up)];
        now.path_ohm[at(n)] += now.path_ohm[at(up)];
        break;
      }
      waiting.push_back(n);
      n = up;
    }
    while (!waiting.empty()) {
      n = waiting.back();
      waiting.pop_back();
      const int up = now.parent[at(n)];
      now.part[at(n)] = now.part[at(up)];
      now.path_ohm[at(n)] += now.path_ohm[at(up)];
    }
  }
  energise(bench, now);
}

// Voltages once parts and ways are known.
void Plant::energise(const Bench& bench, Potentials& now) const {
  const int nodes = static_cast<int>(parent_.size());
  const double emf_v = now.emf_v, source_ohm = now.source_ohm;
  now.voltage_v.assign(at(nodes), 0.0);
  now.loaded.assign(at(nodes), 0);
  now.load_v = 0.0;
  double current_a = 0.0;  // out of the red post
  const int a = bench.load_red, b = bench.load_black;
  const int part_a = bench.with_load ? now.part[at(a)] : -1, part_b = bench.with_load ? now.part[at(b)] : -1;
  const bool forward = part_a == 1 && part_b == 0;
  if (bench.with_load && (forward || (part_a == 0 && part_b == 1 && !bench.one_way))) {
    current_a = emf_v / (source_ohm + now.path_ohm[at(a)] + now.path_ohm[at(b)] + bench.load_ohm);
    now.load_v = (forward ? 1.0 : -1.0) * current_a * bench.load_ohm;
    for (const int end : {a, b}) {
      for (int n = end; n >= 0; n = now.parent[at(n)]) now.loaded[at(n)] = 1;
    }
  } else if (bench.with_load && bench.one_way && part_a == 0 && part_b == 1) {
    now.load_v = -emf_v;
  }
  const double top_v = emf_v - current_a * source_ohm;
  for (int n = 0; n < nodes; ++n) {
    const int part = now.part[at(n)];
    if (part > 1) continue;
    if (current_a == 0.0) {
      now.voltage_v[at(n)] = part == 1 ? top_v : 0.0;
      continue;
    }
    const int before = now.parent[at(n)];
    if (now.loaded[at(n)] == 0 && before >= 0 && before < n) {
      now.voltage_v[at(n)] = now.voltage_v[at(before)];
      continue;
    }
    int on = n;  // where its way to the post joins the loop
    while (now.loaded[at(on)] == 0 && now.parent[at(on)] >= 0) on = now.parent[at(on)];
    const double drop_v = current_a * now.path_ohm[at(on)];
    now.voltage_v[at(n)] = part == 1 ? top_v - drop_v : drop_v;
  }
  // A load without current joins a floating part to where its other end is.
  if (bench.with_load && part_a != part_b && (part_a > 1) != (part_b > 1)) {
    const int held = part_a > 1 ? b : a, loose = part_a > 1 ? part_a : part_b;
    for (int n = 0; n < nodes; ++n) {
      if (now.part[at(n)] != loose) continue;
      now.part[at(n)] = now.part[at(held)];
      now.voltage_v[at(n)] = now.voltage_v[at(held)];
    }
  }
}

}  // namespace diagnosis
