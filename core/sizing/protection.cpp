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
    case Link::wire_there: return "wire in the wall";
    case Link::tail: return "tail";
    case Link::clamp: return "block clamp";
    case Link::splice: return "splice";
    case Link::terminal: return "terminal";
    case Link::outlet: return "outlet";
    case Link::in_line: return "switch or relay";
    case Link::practice_ceiling: return "code's limit for that wire";
  }
  return "";
}

bool is_part(Link link) {
  return link == Link::clamp || link == Link::splice || link == Link::terminal || link == Link::outlet ||
         link == Link::in_line;
}

// Collects the links of one zone; of each kind only the weakest.
class Ceiling {
 public:
  Ceiling(const Context& context, const tables::Conductor& size, const tables::Conductor* tail, FuseCeiling& into)
      : context_(context), size_(size), tail_(tail != nullptr ? *tail : size), into_(into) {}

  void wires(const Zone& zone) {
    const circuit::Circuit& circuit = context_.circuit;
    into_.wire = run_ampacity(circuit, size_, tables::WireMetal::copper, false);
    for (const std::size_t i : zone.outlets) {
      const circuit::Run& run = circuit.outlets[i].run;
      const tables::Conductor* there = run.size ? tables::conductor_by_id(*run.size) : nullptr;
      if (there != nullptr) {
        wire(Link::wire_there, *there, run_ampacity(circuit, *there, run.metal, run.two_core), i);
      } else {
        const bool plain = run.metal == tables::WireMetal::copper && !run.two_core;
        const tables::AmpacityResult own = plain ? into_.wire : run_ampacity(circuit, size_, run.metal, run.two_core);
        wire(Link::wire, size_, own, std::nullopt);
        if (!plain && own.value && into_.wire.value && own.value->derated < into_.wire.value->derated) into_.wire = own;
      }
      const bool tailed = circuit.outlets[i].point == circuit::PointKind::outlet && there == nullptr &&
                          circuit.outlets[i].joint == circuit::Joint::splice && &tail_ != &size_;
      if (tailed) wire(Link::tail, tail_, run_ampacity(circuit, tail_, tables::WireMetal::copper, false), std::nullopt);
    }
  }

  void parts(const Zone& zone, std::size_t zone_index) {
    const circuit::Circuit& circuit = context_.circuit;
    for (const std::size_t i : zone.outlets) {
      const circuit::Outlet& outlet = circuit.outlets[i];
      const tables::Conductor* there = outlet.run.size ? tables::conductor_by_id(*outlet.run.size) : nullptr;
      const tables::Conductor& run = there != nullptr ? *there : size_;
      const tables::Conductor& at_terminal = wire_at_terminal(outlet, size_, &tail_);
      if (outlet.joint == circuit::Joint::splice || outlet.point != circuit::PointKind::outlet) {
        add({Link::splice, tables::part_rating_with(context_.splice, run.area), std::nullopt, context_.splice.citation});
      }
      in_line(outlet, i, zone_index);
      if (outlet.point != circuit::PointKind::outlet) continue;
      add({Link::terminal, tables::part_rating_with(*context_.terminals[i], at_terminal.area), i, context_.terminals[i]->citation});
      // An outlet that limits itself, and what is wired in, carry their own load and no more.
      if (context_.limits_itself(i)) continue;
      add({Link::outlet, outlet.rating.value_or(context_.sockets[i]->rated), i, context_.sockets[i]->citation});
    }
  }

  // A push-on tab carries by the wire crimped to it: the thinnest of those that leave the block counts.
  void clamp() {
    const circuit::Circuit& circuit = context_.circuit;
    const std::optional<units::Amperes>& marked = circuit.wiring.clamp_rating;
    for (const circuit::Outlet& outlet : circuit.outlets) {
      if (outlet.fed_from != circuit::kBlock) continue;
      const tables::Conductor& wire = outlet.run.size ? *tables::conductor_by_id(*outlet.run.size) : size_;
      add({Link::clamp, marked.value_or(tables::part_rating_with(context_.clamp, wire.area)), std::nullopt,
           context_.clamp.citation});
    }
  }

  void finish() {
    into_.least = nullptr;
    into_.least_part = nullptr;
    for (const LinkRating& link : into_.links) {
      if (into_.least == nullptr || link.most < into_.least->most) into_.least = &link;
      if (is_part(link.link) && (into_.least_part == nullptr || link.most < into_.least_part->most)) {
        into_.least_part = &link;
      }
    }
  }

 private:
  void add(const LinkRating& link) {
    for (LinkRating& known : into_.links) {
      if (known.link != link.link) continue;
      if (link.most < known.most) known = link;
      return;
    }
    into_.links.push_back(link);
  }

  void wire(Link link, const tables::Conductor& size, const tables::AmpacityResult& ampacity,
            std::optional<std::size_t> outlet) {
    const units::Amperes most = ampacity.value ? ampacity.value->derated : units::Amperes(0.0);
    add({link, most, outlet, ampacity.value ? ampacity.value->base_citation : nullptr});
    // A code's ceilings bind only where that code was chosen.
    const auto& practice = context_.circuit.practice;
    if (!practice) return;
    if (const auto ceiling = tables::practice_fuse_ceiling(*practice, size)) {
      add({Link::practice_ceiling, *ceiling, std::nullopt, tables::practice_fuse_ceiling_citation(*practice)});
    }
  }

  // Switches and relays. One that comes before the fuse of its run belongs to the zone before.
  void in_line(const circuit::Outlet& outlet, std::size_t index, std::size_t zone_index) {
    const Zone& zone = context_.zones.all[zone_index];
    const bool begins_here = zone.begins_at == index;
    bool behind = !begins_here;
    for (const circuit::InLine& part : outlet.run.in_line) {
      if (circuit::is_overcurrent_protection(part)) behind = true;
      else if (behind) add({Link::in_line, part.rating, index, &fuse_ceiling_citation()});
    }
  }

  const Context& context_;
  const tables::Conductor& size_;
  const tables::Conductor& tail_;
  FuseCeiling& into_;
};

// What stands in a run before that run's own fuse, for the zone that ends there.
void parts_before_inner_fuses(const Context& context, std::size_t zone, FuseCeiling& into) {
  for (const Zone& inner : context.zones.all) {
    if (!inner.begins_at || inner.inside != zone) continue;
    for (const circuit::InLine& part : context.circuit.outlets[*inner.begins_at].run.in_line) {
      if (circuit::is_overcurrent_protection(part)) break;
      into.links.push_back({Link::in_line, part.rating, inner.begins_at, &fuse_ceiling_citation()});
    }
  }
}

}  // namespace

tables::AmpacityResult run_ampacity(const circuit::Circuit& circuit, const tables::Conductor& size,
                                    tables::WireMetal metal, bool two_core) {
  return tables::ampacity(circuit.wiring.ampacity_table, size, circuit.wiring.around, {metal, two_core});
}

void find_ceiling(const Context& context, const tables::Conductor& size, const tables::Conductor* tail,
                  FuseCeiling& into, std::size_t zone_index) {
  const Zone& zone = context.zones.all[zone_index];
  into.links.clear();
  into.links.reserve(10);
  Ceiling ceiling(context, size, tail, into);
  ceiling.wires(zone);
  if (zone_index == kBranchZone) ceiling.clamp();
  ceiling.parts(zone, zone_index);
  parts_before_inner_fuses(context, zone_index, into);
  ceiling.finish();
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
  // Wire that is there already goes into its own terminals.
  const auto all_take = [&](const tables::Conductor& wire) {
    for (std::size_t i = 0; i < context.terminals.size(); ++i) {
      const circuit::Outlet& outlet = context.circuit.outlets[i];
      const bool open = outlet.point == circuit::PointKind::outlet && !outlet.run.size &&
                        outlet.joint == circuit::Joint::splice;
      if (open && !tables::part_accepts(*context.terminals[i], wire.area, false)) return false;
    }
    return true;
  };
  const tables::Conductor* largest = nullptr;
  for (const tables::Conductor& wire : tables::conductors(size.system)) {
    if (wire.area > size.area) break;
    if (all_take(wire) && tables::part_accepts(context.splice, wire.area, false)) largest = &wire;
  }
  if (all_take(size)) return &size;
  return largest;
}

const tables::Conductor& wire_at_terminal(const circuit::Outlet& outlet, const tables::Conductor& size,
                                          const tables::Conductor* tail) {
  if (outlet.run.size) return *tables::conductor_by_id(*outlet.run.size);
  return outlet.joint == circuit::Joint::splice && tail != nullptr ? *tail : size;
}

std::vector<std::optional<FarShort>> far_shorts(const Context& context, const network::Fitted& fitted) {
  // Resistance grows with temperature in the ratio of resistance_at(), so the hot wire needs a
  // circuit of its own only in that one field.
  circuit::Circuit hot = context.circuit;
  const units::Celsius rating = hot.wiring.around.insulation;
  if (hot.wiring.wire_temperature < rating) hot.wiring.wire_temperature = rating;
  const network::Tree tree = network::tree_of(hot, fitted, network::BatteryState::low);
  std::vector<std::optional<FarShort>> least(context.zones.all.size());
  std::vector<double> to_point(tree.points.size());
  for (std::size_t i = 0; i < to_point.size(); ++i) {
    const network::TreePoint& point = tree.points[i];
    to_point[i] = point.parent == network::kNoPoint ? tree.source_ohm + tree.supply_ohm : to_point[point.parent];
    to_point[i] += point.path_ohm;
    const FarShort here{point.outlet, units::Amperes(tree.emf_v / (to_point[i] + point.tail_ohm))};
    std::optional<FarShort>& far = least[context.zones.of_outlet[point.outlet]];
    if (!far || here.current < far->current) far = here;
  }
  return least;
}

std::vector<FuseBefore> fuses_before(const Context& context, std::size_t zone, units::Amperes branch_fuse) {
  std::vector<FuseBefore> fuses;
  for (std::size_t z = zone; z != kBranchZone; z = context.zones.all[z].inside) {
    // Of several in one run each may be the first to open.
    for (const circuit::InLine& part : context.circuit.outlets[*context.zones.all[z].begins_at].run.in_line) {
      if (!circuit::is_overcurrent_protection(part)) continue;
      const bool breaker = part.kind == circuit::InLineKind::breaker;
      fuses.push_back({breaker ? &tables::fuse_family(tables::FuseFamilyId::breaker) : &context.family, part.rating});
    }
  }
  fuses.push_back({&context.family, branch_fuse});
  return fuses;
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

units::AmpereSquaredSeconds withstands(const tables::Conductor& size, units::Celsius insulation,
                                       tables::WireMetal metal) {
  const double k = tables::adiabatic_k(insulation, short_time_temperature(insulation)) *
                   tables::wire_metal(metal).withstand_factor;
  const double ks = k * size.area.number();
  return units::AmpereSquaredSeconds(ks * ks);
}

}  // namespace sizing
