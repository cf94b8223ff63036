#include "evaluation/installation.h"

#include <algorithm>
#include <array>
#include <limits>

#include "circuit/validate.h"
#include "sizing/sizing.h"

namespace evaluation {
namespace {

using circuit::Circuit;
using circuit::Outlet;
using diagnosis::Complaint;
using diagnosis::FaultKind;
using diagnosis::Symptom;
using enum diagnosis::FaultKind;

struct Weight {
  FaultKind kind;
  double weight;               // at one place
  std::string_view reasoning;  // our estimate, all of them
};
constexpr std::array<Weight, diagnosis::kFaultKinds - 1> kWeights{{
    {source_flat, 3.0, "left on overnight; but the whole van tells, so few blame one circuit"},
    {main_open, 2.0, "a master switch somebody else turned"},
    {feeder_resistive, 0.7, "lugs on a post: few of them, bolted, sometimes green"},
    {fuse_blown, 14.0, "first thing anybody finds: a slip, a worn plug, a start-up surge"},
    {fuse_missing, 3.0, "taken out for the work, or for another circuit"},
    {fuse_elsewhere, 3.0, "block counted from the wrong end"},
    {fuse_loose, 3.0, "clips spread, or pushed in askew"},
    {clamp_loose, 2.5, "fine strands settle under a screw within weeks"},
    {wire_open, 0.4, "copper itself seldom parts: crushed, or cut by a drill"},
    {splice_open, 2.5, "made blind behind a panel, then pulled back into the hole"},
    {splice_resistive, 2.0, "three strands in, the rest beside it; or damp"},
    {splice_on_insulation, 1.5, "stripped too short: the beginner's joint"},
    {pair_shorted, 0.5, "a screw through the loom, a sharp edge"},
    {overload, 3.0, "the inflator and the heater at once"},
    {tab_off, 2.2, "slides off as the outlet goes back in"},
    {outlet_dead, 0.7, "spring contact bent, burnt or cheap"},
    {device_dead, 6.0, "the small fuse in the plug, a frayed lead"},
    {reversed_here, 0.8, "two tabs that look alike"},
    {reversed_from, 0.6, "colours guessed by the light of a phone"},
    {wrong_branch, 0.5, "two pairs out of one loom; noticed late, because it works"},
    {wrong_branch_unfused, 1.0, "the same before the other circuit is in use"},
    {wire_thin, 0.7, "made longer with what lay about"},
    {opens_when_moved, 0.8, "touching, not held"},
}};

std::string name_of(std::size_t k) { return "Place " + std::to_string(k + 1); }

void add_outlets(Engine& engine, Circuit& made, std::size_t most) {
  const std::size_t count = 1 + index_below(engine, most);
  const bool tree = chance(engine, 0.3);
  const double blocks = made.supply.nominal.number() / 12.0;
  made.outlets.clear();
  for (std::size_t k = 0; k < count; ++k) {
    Outlet outlet;
    outlet.id = OutletId{static_cast<std::uint32_t>(k + 1)};
    outlet.name = name_of(k);
    outlet.fed_from = OutletId{static_cast<std::uint32_t>(tree ? index_below(engine, k + 1) : k)};
    outlet.run.length = units::Metres(k == 0 ? log_uniform(engine, 0.5, 6.0) : log_uniform(engine, 0.3, 3.0));
    outlet.devices.front().load.kind = static_cast<circuit::LoadKind>(index_below(engine, 3));
    outlet.devices.front().load.rating = log_uniform(engine, 0.5, 6.0) / blocks;
    if (chance(engine, 0.15)) {
      outlet.devices.front().load.minimum_voltage = units::Volts(made.supply.nominal.number() * uniform(engine, 0.83, 0.92));
    }
    made.outlets.push_back(outlet);
  }
  made.next_outlet_id = static_cast<std::uint32_t>(count + 1);
}

Circuit draw_circuit(Engine& engine, std::size_t most) {
  static constexpr std::array<std::string_view, 3> kBatteries{"lead-flooded", "lead-agm", "lifepo4"};
  Circuit made =
      circuit::new_circuit(chance(engine, 0.5) ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  made.name = "Evaluation";
  made.setting = static_cast<circuit::Setting>(index_below(engine, 4));
  made.fuse_position = static_cast<int>(1 + index_below(engine, 6));
  made.supply.nominal = units::Volts(chance(engine, 0.85) ? 12.0 : 24.0);
  made.supply.battery = std::string(one_of(engine, kBatteries));
  made.supply.feeder_run = units::Metres(log_uniform(engine, 0.3, 3.0));
  if (chance(engine, 0.1)) made.supply.main_fuse = units::Amperes(0.0);
  made.wiring.tail = units::Metres(uniform(engine, 0.05, 0.2));
  add_outlets(engine, made, most);
  return made;
}

// Size and fuse as sizing would have it; sometimes the next fuse down, which is what was in the drawer.
std::optional<network::Fitted> fit(const Circuit& circuit) {
  const sizing::Answer answer = sizing::size_circuit(circuit);
  const sizing::Candidate* choice = answer.choice();
  if (choice == nullptr || !choice->fuse) return std::nullopt;
  return network::Fitted{choice->size, choice->tail, *choice->fuse};
}

void add_neighbours(Engine& engine, diagnosis::Case& made) {
  static constexpr std::array<std::string_view, 3> kNames{"Cabin lights", "Water pump", "Awning"};
  const std::size_t count = index_below(engine, 4);
  int position = made.circuit.fuse_position;
  for (std::size_t n = 0; n < count; ++n) {
    made.neighbours.push_back({std::string(kNames[n]), ++position, chance(engine, 0.6), {}});
  }
}

diagnosis::Tools draw_tools(Engine& engine, Kit kit) {
  diagnosis::Tools tools;
  tools.spare_fuse = chance(engine, 0.6);
  tools.meter = kit == Kit::meter;
  tools.lamp = kit == Kit::lamp || (kit == Kit::meter && chance(engine, 0.3));
  tools.device = kit == Kit::device_only || chance(engine, 0.6);
  return tools;
}

void draw_size(Engine& engine, const Circuit& circuit, TrueFault& fault) {
  switch (fault.kind) {
    case source_flat:
      fault.size = uniform(engine, 0.70, 0.93);
      fault.size2 = log_uniform(engine, 3.0, 30.0);
      break;
    case feeder_resistive: fault.ohm = log_uniform(engine, 0.1, 5.0); break;
    case fuse_loose:
    case clamp_loose: fault.ohm = chance(engine, 0.5) ? kOpen : log_uniform(engine, 1.0, 200.0); break;
    case splice_resistive: fault.ohm = log_uniform(engine, 0.3, 200.0); break;
    case wire_thin: fault.size = log_uniform(engine, 4.0, 20.0); break;
    case overload: fault.size = uniform(engine, 1.35, 2.5); break;
    default: break;
  }
  if (fault.kind != splice_open && fault.kind != splice_resistive && fault.kind != splice_on_insulation &&
      fault.kind != opens_when_moved) {
    return;
  }
  const auto beyond = circuit::fed_by(circuit, fault.outlet);
  const double which = uniform(engine, 0.0, 1.0);
  fault.port = which < 0.45 ? Port::from_source : Port::to_tab;
  if (which > 0.75 && !beyond.empty()) {
    fault.port = Port::onward;
    fault.onward = circuit.outlets[one_of(engine, beyond)].id;
  }
}

// Every place a kind can stand at, with its weight.
std::vector<std::pair<TrueFault, double>> every_fault(const diagnosis::Case& the_case) {
  std::vector<std::pair<TrueFault, double>> all;
  for (const Weight& row : kWeights) {
    if (row.kind == main_open && !(the_case.circuit.supply.main_fuse.number() > 0.0)) continue;
    TrueFault fault;
    fault.kind = row.kind;
    const auto both_sides = [&] {
      for (const Side side : {Side::positive, Side::negative}) {
        fault.side = side;
        all.emplace_back(fault, row.weight);
      }
    };
    const auto placed = diagnosis::fault_row(row.kind).placed_at;
    if (placed == diagnosis::PlacedAt::circuit) all.emplace_back(fault, row.weight);
    if (placed == diagnosis::PlacedAt::circuit_side) both_sides();
    for (const Outlet& outlet : the_case.circuit.outlets) {   // all of them spliced outlets here
      if (!diagnosis::stands_at(placed, outlet)) continue;
      fault.outlet = outlet.id;
      if (placed != diagnosis::PlacedAt::run_neighbour) {
        if (diagnosis::has_side(placed)) both_sides();
        else all.emplace_back(fault, row.weight);
        continue;
      }
      for (std::size_t n = 0; n < the_case.neighbours.size(); ++n) {
        fault.neighbour = static_cast<int>(n);
        if (the_case.neighbours[n].same_loom) all.emplace_back(fault, row.weight);
      }
    }
  }
  return all;
}

TrueFault draw_fault(Engine& engine, const diagnosis::Case& the_case) {
  const auto all = every_fault(the_case);
  double sum = 0.0;
  for (const auto& [fault, weight] : all) sum += weight;
  double left = uniform(engine, 0.0, sum);
  TrueFault drawn = all.back().first;
  for (const auto& [fault, weight] : all) {
    left -= weight;
    if (left < 0.0) {
      drawn = fault;
      break;
    }
  }
  draw_size(engine, the_case.circuit, drawn);
  return drawn;
}

bool joint_that_works_loose(const TrueFault& fault) {
  return fault.kind == splice_resistive || ((fault.kind == clamp_loose || fault.kind == fuse_loose) && fault.ohm < kOpen);
}

// What is found when everything is tried, or only the place where it was first noticed.
Complaint of_dead(const std::vector<OutletId>& dead, std::size_t outlets, OutletId first, Engine& engine) {
  if (!chance(engine, 0.55)) return {Symptom::one_dead, {first}};   // did not try the others
  if (dead.size() == outlets && (outlets > 1 || chance(engine, 0.5))) {
    return {Symptom::all_dead, chance(engine, 0.5) ? dead : std::vector<OutletId>{}};
  }
  return {dead.size() > 1 ? Symptom::several_dead : Symptom::one_dead, dead};
}

std::optional<Complaint> of_wrong_branch(const World& world, Engine& engine) {
  const TrueFault& fault = world.fault();
  if (fault.kind == wrong_branch_unfused && chance(engine, 0.65)) return std::nullopt;   // told by what is dead
  Setup setup;
  setup.neighbour_out.assign(world.the_case().neighbours.size(), true);
  if (world.runs_elsewhere(setup, fault.neighbour, world.good_device()) == Runs::dead) return std::nullopt;
  return Complaint{Symptom::something_else_alive, {}};
}

}  // namespace

std::string kit_name(Kit kit) {
  return kit == Kit::meter ? "meter" : kit == Kit::lamp ? "lamp only" : "a device with a light";
}

double true_prior(FaultKind kind) {
  for (const Weight& row : kWeights) {
    if (row.kind == kind) return row.weight;
  }
  return 0.0;
}

std::optional<Complaint> complaint_of(const World& world, const diagnosis::Tools& tools, Engine& engine) {
  const Circuit& circuit = world.the_case().circuit;
  const TrueFault& fault = world.fault();
  if (fault.kind == wrong_branch || fault.kind == wrong_branch_unfused) {
    const auto complaint = of_wrong_branch(world, engine);
    if (complaint || fault.kind == wrong_branch) return complaint;
  }
  if (fault.kind == pair_shorted && chance(engine, 0.6)) {
    if (world.fuse_current_a({}) < 3.0 * world.fuse_a()) return std::nullopt;
    return Complaint{Symptom::blows_at_once, {}};
  }
  if (fault.kind == overload && chance(engine, 0.6)) return Complaint{Symptom::blows_later, {}};
  std::vector<OutletId> dead, weak;
  Setup as_found;
  as_found.moved = fault.kind == opens_when_moved;
  for (const Outlet& outlet : circuit.outlets) {
    const Runs runs = world.runs(as_found, outlet.id, world.device_of(outlet.id));
    if (runs == Runs::dead) dead.push_back(outlet.id);
    if (runs == Runs::weak) weak.push_back(outlet.id);
  }
  if (world.device_is_dead()) dead = {one_of(engine, circuit.outlets).id};
  if (dead.empty() && weak.empty()) return std::nullopt;
  const OutletId first = one_of(engine, dead.empty() ? weak : dead);
  if (fault.kind == opens_when_moved || (joint_that_works_loose(fault) && chance(engine, 0.05))) {
    return Complaint{Symptom::only_when_moved, {first}};
  }
  if (dead.empty()) return Complaint{Symptom::weak, chance(engine, 0.55) ? weak : std::vector<OutletId>{first}};
  const diagnosis::Spot red{diagnosis::SpotKind::contact, first, Side::positive};
  const diagnosis::Spot black{diagnosis::SpotKind::contact, first, Side::negative};
  const double volts = world.across({}, red, black, 10e6);
  if (volts < -0.8 * world.nominal_v() && chance(engine, tools.meter ? 0.6 : 0.15)) {
    return Complaint{Symptom::reversed, {first}};
  }
  if (volts > 0.97 * world.emf_v() && tools.meter && chance(engine, 0.3)) {
    return Complaint{Symptom::volts_but_dead, {first}};
  }
  if (world.device_is_dead()) return Complaint{Symptom::one_dead, {first}};
  return of_dead(dead, circuit.outlets.size(), first, engine);
}

Breakdown draw_breakdown(Engine& engine, Kit kit, std::size_t most_outlets, double pair_share) {
  for (;;) {
    diagnosis::Case made;
    made.circuit = draw_circuit(engine, most_outlets);
    if (!circuit::validate(made.circuit).empty()) continue;
    const auto fitted = fit(made.circuit);
    if (!fitted) continue;
    made.built = diagnosis::built_throughout(made.circuit, *fitted, diagnosis::Knowledge::known, diagnosis::Protection::protects);
    add_neighbours(engine, made);
    made.tools = draw_tools(engine, kit);
    for (int attempt = 0; attempt < 20; ++attempt) {
      std::vector<TrueFault> faults{draw_fault(engine, made)};
      if (chance(engine, pair_share)) faults.push_back(draw_fault(engine, made));
      World world(made, faults, engine);
      const auto complaint = complaint_of(world, made.tools, engine);
      if (!complaint) continue;
      diagnosis::Case told = made;
      told.complaint = *complaint;
      return {told, world};
    }
  }
}

}  // namespace evaluation
