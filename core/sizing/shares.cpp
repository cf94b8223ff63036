#include "sizing/shares.h"

#include <algorithm>
#include <array>

#include "network/branch_network.h"
#include "network/solve.h"
#include "sizing/context.h"

namespace sizing {
namespace {

using network::Element;

constexpr tables::Citation kWireOnlyCitation{
    "rule-wire-only", "ABYC E-11, wire size for a voltage drop", "", "CM = K x I x L / E, K = 10.75",
    "K = 10.75 ohm circular mil per foot is copper at about 29 °C. L is the way there and back; joints, fuse and feeder "
    "are left out.", tables::Standing::seen_twice};
// K = 10.75 ohm cmil/ft in metric: 1 cmil = 5.06707e-4 mm2, 1 ft = 0.3048 m.
constexpr double kOhmSquareMillimetrePerMetre = 10.75 * 5.06707e-4 / 0.3048;

constexpr std::array<std::string_view, 5> kNames{"Feeder and main fuse", "Fuse and its holder", "Wire",
                                                 "Switches and fuses in line", "Joints and outlet"};

std::optional<ShareKind> kind_of(Element element) {
  switch (element) {
    case Element::main_fuse:
    case Element::disconnect:
    case Element::feeder:
    case Element::bus: return ShareKind::feeder;
    case Element::fuse_contact:
    case Element::fuse: return ShareKind::fuse;
    case Element::wire: return ShareKind::wire;
    case Element::in_line: return ShareKind::in_line;
    case Element::clamp:
    case Element::splice:
    case Element::tail:
    case Element::terminal:
    case Element::outlet_inside: return ShareKind::joints;
    case Element::battery:
    case Element::beside:
    case Element::device: break;
  }
  return std::nullopt;
}

// The outlets on the way to this one, itself included.
std::vector<circuit::OutletId> way_to(const circuit::Circuit& circuit, std::size_t outlet) {
  std::vector<circuit::OutletId> way;
  const circuit::Outlet* at = &circuit.outlets[outlet];
  while (at != nullptr && way.size() <= circuit.outlets.size()) {
    way.push_back(at->id);
    at = circuit::find_outlet(circuit, at->fed_from);
  }
  return way;
}

}  // namespace

VoltShares where_volts_go(const circuit::Circuit& as_told, const Candidate& candidate) {
  const circuit::Circuit circuit = with_long_starts(as_told);
  VoltShares result;
  result.outlet = candidate.worst_outlet;
  if (candidate.size == nullptr || result.outlet >= circuit.outlets.size()) return result;
  const network::Fitted fitted{candidate.size, candidate.tail, candidate.fuse.value_or(units::Amperes(0.0))};
  const network::BranchNetwork built =
      network::build(circuit, fitted, candidate.worst_loading, network::BatteryState::resting);
  const network::Solution solution = network::solve(built.netlist);
  if (!solution.usable()) return result;
  const std::vector<circuit::OutletId> way = way_to(circuit, result.outlet);
  const circuit::OutletId own = circuit.outlets[result.outlet].id;
  std::array<double, kNames.size()> lost_v{};
  const int last_tap = circuit.outlets[result.outlet].taps - 1;
  for (const auto& named : built.elements) {
    const auto kind = kind_of(named.place.element);
    if (!kind) continue;
    const circuit::OutletId at = named.place.outlet;
    if (at != circuit::kBlock && std::find(way.begin(), way.end(), at) == way.end()) continue;
    const bool of_the_outlet = named.place.element == Element::tail || named.place.element == Element::terminal ||
                               named.place.element == Element::outlet_inside;
    if (of_the_outlet && (at != own || named.place.nth != last_tap)) continue;
    const double volts = solution.between(named.near_source, named.away).number();
    lost_v[static_cast<std::size_t>(*kind)] += named.place.side == network::Side::positive ? volts : -volts;
  }
  for (std::size_t k = 0; k < kNames.size(); ++k) {
    if (lost_v[k] != 0.0) result.shares.push_back({static_cast<ShareKind>(k), kNames[k], units::Volts(lost_v[k])});
  }
  std::sort(result.shares.begin(), result.shares.end(), [](const auto& a, const auto& b) { return a.volts > b.volts; });
  const auto* battery = built.find({Element::battery, circuit::kBlock, network::Side::positive});
  result.at_battery = solution.between(battery->away, battery->near_source);
  result.at_device = solution.between(built.outlet_contact(own, network::Side::positive),
                                      built.outlet_contact(own, network::Side::negative));
  return result;
}

WireOnly wire_only_size(const circuit::Circuit& circuit, const Candidate& candidate) {
  WireOnly result;
  result.citation = &kWireOnlyCitation;
  if (candidate.outlets.empty() || candidate.worst_outlet >= circuit.outlets.size()) return result;
  const circuit::Outlet& outlet = circuit.outlets[candidate.worst_outlet];
  result.current = candidate.design_current;
  result.one_way = circuit::distance_from_block(circuit, outlet.id);
  const double limit_v = outlet.drop_limit.value_or(circuit.drop_limit) * circuit.supply.nominal.number();
  const double least_mm2 =
      kOhmSquareMillimetrePerMetre * result.current.number() * 2.0 * result.one_way.number() / limit_v;
  for (const tables::Conductor& size : tables::conductors(circuit.wiring.gauge)) {
    if (size.area.number() < least_mm2) continue;
    result.size = &size;
    break;
  }
  return result;
}

}  // namespace sizing
