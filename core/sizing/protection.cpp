#include "sizing/protection.h"

#include <algorithm>
#include <cmath>

#include "sizing/rules.h"
#include "units/format.h"

namespace sizing {
namespace {

std::string_view link_name(Link link) {
  switch (link) {
    case Link::wire: return "wire";
    case Link::tail: return "tail";
    case Link::clamp: return "block clamp";
    case Link::splice: return "splice";
    case Link::terminal: return "terminal";
    case Link::outlet: return "outlet";
    case Link::road_ceiling: return "road vehicle rule";
  }
  return "";
}

LinkRating weakest_terminal(const Context& context, units::SquareMillimetres wire) {
  LinkRating weakest{Link::terminal, units::Amperes(INFINITY), std::nullopt, nullptr};
  for (std::size_t i = 0; i < context.terminals.size(); ++i) {
    const units::Amperes most = tables::part_rating_with(*context.terminals[i], wire);
    if (most < weakest.most) weakest = {Link::terminal, most, i, context.terminals[i]->citation};
  }
  return weakest;
}

LinkRating weakest_outlet(const Context& context) {
  LinkRating weakest{Link::outlet, units::Amperes(INFINITY), std::nullopt, nullptr};
  for (std::size_t i = 0; i < context.sockets.size(); ++i) {
    const units::Amperes most = context.circuit.outlets[i].rating.value_or(context.sockets[i]->rated);
    if (most < weakest.most) weakest = {Link::outlet, most, i, context.sockets[i]->citation};
  }
  return weakest;
}

bool is_part(Link link) {
  return link == Link::clamp || link == Link::splice || link == Link::terminal || link == Link::outlet;
}

void add_wire(const Context& context, Link link, const tables::Conductor& size,
              const tables::AmpacityResult& ampacity, FuseCeiling& into) {
  const units::Amperes most = ampacity.value ? ampacity.value->derated : units::Amperes(0.0);
  into.links.push_back({link, most, std::nullopt, ampacity.value ? ampacity.value->base_citation : nullptr});
  if (!context.road_vehicle()) return;
  const auto ceiling = tables::road_vehicle_fuse_ceiling(size);
  if (ceiling) {
    into.links.push_back({Link::road_ceiling, *ceiling, std::nullopt, &tables::road_vehicle_ceiling_citation()});
  }
}

}  // namespace

void find_ceiling(const Context& context, const tables::Conductor& size, const tables::Conductor* tail,
                  FuseCeiling& into) {
  const circuit::Wiring& wiring = context.circuit.wiring;
  into.links.clear();
  into.links.reserve(8);
  into.wire = tables::ampacity(wiring.ampacity_table, size, wiring.around);
  add_wire(context, Link::wire, size, into.wire, into);
  const tables::Conductor& at_outlet = tail != nullptr ? *tail : size;
  if (&at_outlet != &size) {
    add_wire(context, Link::tail, at_outlet, tables::ampacity(wiring.ampacity_table, at_outlet, wiring.around), into);
  }
  into.links.push_back({Link::clamp,
                        std::min(wiring.clamp_rating.value_or(context.clamp.rated),
                                 wiring.clamp_rating.value_or(tables::part_rating_with(context.clamp, size.area))),
                        std::nullopt, context.clamp.citation});
  into.links.push_back(
      {Link::splice, tables::part_rating_with(context.splice, size.area), std::nullopt, context.splice.citation});
  into.links.push_back(weakest_terminal(context, at_outlet.area));
  into.links.push_back(weakest_outlet(context));
  into.least = nullptr;
  into.least_part = nullptr;
  for (const LinkRating& link : into.links) {
    if (into.least == nullptr || link.most < into.least->most) into.least = &link;
    if (is_part(link.link) && (into.least_part == nullptr || link.most < into.least_part->most)) {
      into.least_part = &link;
    }
  }
}

std::string link_text(const Context& context, const LinkRating& link) {
  std::string text(link_name(link.link));
  if (link.outlet && context.terminals.size() > 1) {
    text += " at ";
    text += circuit::outlet_letter(*link.outlet);
  }
  return text;
}

std::string chain_text(const Context& context, const FuseCeiling& ceiling) {
  std::string text;
  for (const LinkRating& link : ceiling.links) {
    if (!text.empty()) text += ", ";
    text += link_text(context, link) + " " + units::amperes_text(link.most);
  }
  return text;
}

std::optional<units::Amperes> standard_fuse(const tables::FuseFamily& family, units::Amperes least,
                                            const std::vector<double>& missing) {
  for (const double rating : family.ratings_a) {
    if (rating < least.number()) continue;
    const bool gone = std::any_of(missing.begin(), missing.end(),
                                  [rating](double m) { return std::abs(m - rating) < 1e-9; });
    if (!gone) return units::Amperes(rating);
  }
  return std::nullopt;
}

const tables::Conductor* choose_tail(const Context& context, const tables::Conductor& size) {
  const auto all_take = [&](const tables::Conductor& wire) {
    return std::all_of(context.terminals.begin(), context.terminals.end(), [&](const tables::Part* terminal) {
      return tables::part_accepts(*terminal, wire.area, false);
    });
  };
  const tables::Conductor* largest = nullptr;
  for (const tables::Conductor& wire : tables::conductors(size.system)) {
    if (wire.area > size.area) break;
    if (all_take(wire) && tables::part_accepts(context.splice, wire.area, false)) largest = &wire;
  }
  if (all_take(size)) return &size;
  return largest;
}

FarShort far_short(const Context& context, const network::Fitted& fitted) {
  // Resistance grows with temperature in the ratio of resistance_at(), so the hot wire needs a
  // circuit of its own only in that one field.
  circuit::Circuit hot = context.circuit;
  const units::Celsius rating = hot.wiring.around.insulation;
  if (hot.wiring.wire_temperature < rating) hot.wiring.wire_temperature = rating;
  const network::SeriesResistances series =
      network::series_resistances(hot, fitted, network::BatteryState::low);
  FarShort result;
  double most_ohm = 0.0;
  std::vector<double> to_splice(series.run_loop.size());
  for (std::size_t i = 0; i < to_splice.size(); ++i) {
    const std::size_t parent = context.demand.parent[i];
    to_splice[i] = parent == kNoParent ? (series.source + series.supply_loop).number() : to_splice[parent];
    to_splice[i] += (series.run_loop[i] + series.joint_loop[i]).number();
    const double whole = to_splice[i] + series.tail_loop[i].number();
    if (whole > most_ohm) {
      most_ohm = whole;
      result.outlet = i;
    }
  }
  result.current = series.emf / units::Ohms(most_ohm);
  return result;
}

std::optional<units::AmpereSquaredSeconds> let_through(const tables::FuseFamily& family, units::Amperes rating,
                                                       units::Amperes least) {
  const double multiple = least / rating;
  const tables::FuseGate* held = nullptr;   // the gate whose time holds at the current looked at
  double most = 0.0;
  bool promised = false;
  const auto heat = [&](double at_multiple, const tables::FuseGate& gate) {
    const double current = at_multiple * rating.number();
    return current * current * gate.opens_within->number();
  };
  for (const tables::FuseGate& gate : family.gates) {
    if (!gate.opens_within) continue;
    if (gate.multiple <= multiple) {
      promised = true;
    } else if (held != nullptr) {
      most = std::max(most, heat(gate.multiple, *held));  // just below this gate, the one before holds
    }
    held = &gate;
  }
  if (!promised) return std::nullopt;
  return units::AmpereSquaredSeconds(std::max(most, heat(held->multiple, *held)));
}

units::AmpereSquaredSeconds withstands(const tables::Conductor& size, units::Celsius insulation) {
  const double k = tables::adiabatic_k(insulation, short_time_temperature(insulation));
  const double ks = k * size.area.number();
  return units::AmpereSquaredSeconds(ks * ks);
}

}  // namespace sizing
