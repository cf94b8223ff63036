#include "sizing/judge.h"

#include <algorithm>
#include <array>
#include <memory>

#include "sizing/judgements.h"
#include "sizing/rules.h"
#include "sizing/words.h"

namespace sizing {
namespace {

using network::BatteryState;

constexpr std::array<BatteryState, 3> kStates{BatteryState::resting, BatteryState::low, BatteryState::charging};

// 1.25 x 12 A is a 15 A fuse.
units::Amperes least_fuse(const Context& context, units::Amperes design) {
  return context.fuse_need(design) * (1.0 - kRatingRounding);
}

// Solved networks of one size with one fuse, by battery state.
class Solved {
 public:
  Solved(const Context& context, const network::Fitted& fitted)
      : resting_(context.circuit, context.demand, fitted, BatteryState::resting),
        low_(context.circuit, context.demand, fitted, BatteryState::low),
        charging_(context.circuit, context.demand, fitted, BatteryState::charging) {}
  LoadingFinder& at(BatteryState state) {
    return state == BatteryState::resting ? resting_ : state == BatteryState::low ? low_ : charging_;
  }
  [[nodiscard]] std::size_t solves() const { return resting_.solves() + low_.solves() + charging_.solves(); }

 private:
  LoadingFinder resting_;
  LoadingFinder low_;
  LoadingFinder charging_;
};

struct DesignCurrent {
  WorstCase worst;
  BatteryState state = BatteryState::resting;
};
// A constant-power load draws most from a low battery, a resistive one from a charging one.
DesignCurrent design_current(Solved& solved) {
  DesignCurrent most;
  for (const BatteryState state : kStates) {
    const WorstCase here = solved.at(state).worst(Worst::total_current, 0);
    if (most.worst.loading == nullptr || here.value > most.worst.value) most = {here, state};
  }
  return most;
}

// A network solved with one fuse in it, and what may flow.
struct WithFuse {
  WithFuse(const Context& context, const network::Fitted& fitted)
      : fuse(fitted.fuse), solved(context, fitted), design(design_current(solved)) {}
  units::Amperes fuse;
  Solved solved;
  DesignCurrent design;   // points into `solved`
};

// The fuse is part of the network, so its rating and the current it must carry are found
// together: up while the solved current asks for more, once down where it asks for less.
struct FuseSearch {
  std::optional<units::Amperes> serving;   // smallest standard rating from 1.25 x the current
  std::unique_ptr<WithFuse> network;       // what stands in the network while judging
};
FuseSearch smallest_fuse(const Context& context, network::Fitted fitted) {
  const auto with = [&](units::Amperes fuse) {
    fitted.fuse = fuse;
    return std::make_unique<WithFuse>(context, fitted);
  };
  const auto need_of = [&](const WithFuse& network) {
    return standard_fuse(context.family, least_fuse(context, units::Amperes(network.design.worst.value)));
  };
  const units::Amperes largest(context.family.ratings_a.back());
  std::optional<units::Amperes> first = standard_fuse(context.family, least_fuse(context, units::Amperes(context.demand.cap_a)));
  std::unique_ptr<WithFuse> trial = with(first.value_or(largest));
  std::optional<units::Amperes> need = need_of(*trial);
  if (!first) return {need, std::move(trial)};
  if (need && *need < trial->fuse) {
    std::unique_ptr<WithFuse> smaller = with(*need);
    const std::optional<units::Amperes> again = need_of(*smaller);
    if (again && *again <= *need) return {need, std::move(smaller)};
    return {first, std::move(trial)};
  }
  while (need && *need > trial->fuse) {
    trial = with(*need);
    need = need_of(*trial);
  }
  if (!need) return {std::nullopt, with(largest)};
  return {trial->fuse, std::move(trial)};
}
FuseSearch given_fuse(const Context& context, const network::Fitted& fitted) {
  return {fitted.fuse, std::make_unique<WithFuse>(context, fitted)};
}

units::Watts lost_in_wire(const Context& context, LoadingFinder& finder, const WorstCase& at) {
  std::vector<double> below_a = at.solution->load_current_a;
  double watts = 0.0;
  for (std::size_t i = below_a.size(); i-- > 0;) {
    watts += below_a[i] * below_a[i] * finder.tree().points[i].wire_ohm;
    if (context.demand.parent[i] != kNoParent) below_a[context.demand.parent[i]] += below_a[i];
  }
  return units::Watts(watts);
}

void judge_volts(const Judging& judging, OutletsFound& found, const network::Fitted& fitted, Candidate& candidate) {
  candidate.judgements.push_back(
      judge_operating_point(judging, {found.cannot_run, found.cannot_run_low, found.unsettled}));
  candidate.judgements.push_back(judge_drop(judging, found));
  candidate.judgements.push_back(judge_device_minimum(judging, found.low_v));
  const FarShorts shorts = far_shorts(judging.context, fitted);
  candidate.judgements.push_back(judge_far_short(judging, shorts));
  candidate.judgements.push_back(judge_withstand(judging, shorts));
  candidate.judgements.push_back(judge_inner_fuses(judging, found.results));
  candidate.judgements.push_back(judge_inrush(judging));
  candidate.judgements.push_back(judge_feeder(judging));
  candidate.judgements.push_back(judge_feeder_drop(judging, fitted));
  candidate.worst_outlet = found.worst;
  candidate.worst_drop_fraction = found.results[found.worst].drop_fraction;
  candidate.worst_loading = std::move(found.worst_loading);
  candidate.outlets = std::move(found.results);
  candidate.passes = candidate.fuse.has_value() && candidate.first_failure() == nullptr;
}

// Judged with `fuse` in the network. `serving`: whether it is from 1.25 x the current up and a
// standard rating, or was given.
Candidate judge_fused(const Context& context, const tables::Conductor& size, const tables::Conductor* tail,
                      const FuseCeiling& ceiling, const FuseSearch& fuse, WarmStart& warm, Detail detail) {
  Candidate candidate;
  candidate.size = &size;
  candidate.tail = tail;
  if (ceiling.wire.value && context.zones.all[kBranchZone].has_open_runs) candidate.derated_ampacity = ceiling.wire.value->derated;
  const network::Fitted fitted{&size, tail, fuse.network->fuse};
  Solved& solved = fuse.network->solved;
  const DesignCurrent& design = fuse.network->design;
  candidate.design_current = units::Amperes(design.worst.value);
  candidate.fuse_need = context.fuse_need(candidate.design_current);
  candidate.lost_in_wire = lost_in_wire(context, solved.at(design.state), design.worst);
  const bool carries = fuse.serving && *fuse.serving >= least_fuse(context, candidate.design_current);
  const bool fuse_ok = carries && within(*fuse.serving, ceiling.most());
  if (fuse_ok) candidate.fuse = fuse.serving;

  const Judging judging{context, size, tail, ceiling, fuse.serving, carries, candidate.design_current,
                        candidate.fuse_need};
  candidate.judgements.reserve(15);
  candidate.judgements.push_back(judge_ampacity(judging));
  candidate.judgements.push_back(judge_fuse_rating(judging));
  candidate.judgements.push_back(judge_fuse_voltage(judging));
  candidate.judgements.push_back(judge_part_rating(judging));
  candidate.judgements.push_back(judge_fit(judging));
  candidate.judgements.push_back(judge_mechanical_minimum(judging));
  const std::size_t before_volts = candidate.judgements.size();
  LoadingFinder& resting = solved.at(BatteryState::resting);
  LoadingFinder& low = solved.at(BatteryState::low);
  OutletsFound quick = find_outlets(context, resting, low, warm, Search::quick, detail);
  judge_volts(judging, quick, fitted, candidate);
  if (detail == Detail::judged && candidate.fails(Criterion::inner_fuses)) {
    // What a fuse in the line carries follows from its devices' volts: bounds of those are no ground to refuse it.
    detail = Detail::every_outlet;
    candidate.judgements.resize(before_volts);
    OutletsFound told = find_outlets(context, resting, low, warm, Search::quick, detail);
    judge_volts(judging, told, fitted, candidate);
  }
  if (candidate.passes && !context.demand.all_at_once && context.demand.any_varying) {
    candidate.judgements.resize(before_volts);
    OutletsFound thorough = find_outlets(context, resting, low, warm, Search::thorough, detail);
    judge_volts(judging, thorough, fitted, candidate);
  }
  warm.solves += solved.solves();
  return candidate;
}

}  // namespace

const Judgement* Candidate::first_failure() const {
  for (const Judgement& judgement : judgements) {
    if (!judgement.passes) return &judgement;
  }
  return nullptr;
}

bool Candidate::fails(Criterion criterion) const {
  return std::any_of(judgements.begin(), judgements.end(),
                     [criterion](const Judgement& j) { return j.criterion == criterion && !j.passes; });
}

std::span<const tables::Conductor> sizes_to_judge(const circuit::Circuit& circuit) {
  const tables::Conductor* thinnest = nullptr;
  for (const circuit::Outlet& outlet : circuit.outlets) {
    if (!outlet.run.size) return tables::conductors(circuit.wiring.gauge);
    const tables::Conductor* there = tables::conductor_by_id(*outlet.run.size);
    if (thinnest == nullptr || there->area < thinnest->area) thinnest = there;
  }
  return {thinnest, 1};
}

Candidate judge_with(const Context& context, const tables::Conductor& size, std::optional<units::Amperes> fuse,
                     WarmStart& warm, Detail detail) {
  const tables::Conductor* tail = choose_tail(context, size);
  FuseCeiling ceiling;
  find_ceiling(context, size, tail, ceiling);
  if (fuse) return judge_fused(context, size, tail, ceiling, given_fuse(context, {&size, tail, *fuse}), warm, detail);

  const FuseSearch search = smallest_fuse(context, {&size, tail, units::Amperes(0.0)});
  Candidate first = judge_fused(context, size, tail, ceiling, search, warm, detail);
  if (!first.fuse || !first.fails(Criterion::inrush)) return first;
  // A fuse that a start would open is no answer: the next one that holds, within every limit.
  for (const double rating : context.family.ratings_a) {
    if (rating <= first.fuse->number() || !within(units::Amperes(rating), ceiling.most())) continue;
    Candidate larger = judge_fused(context, size, tail, ceiling,
                                   given_fuse(context, {&size, tail, units::Amperes(rating)}), warm, detail);
    if (!larger.fails(Criterion::inrush)) return larger;
  }
  return first;
}

Candidate judge_on_shelf(const Context& context, const tables::Conductor& size, WarmStart& warm) {
  const circuit::Shelf& shelf = context.circuit.shelf;
  const auto& zones = context.zones.all;
  const bool any_new = std::any_of(zones.begin(), zones.end(), [](const Zone& zone) { return zone.has_open_runs; });
  const bool size_missing = any_new && std::find(shelf.missing_sizes.begin(), shelf.missing_sizes.end(), size.id) !=
                                           shelf.missing_sizes.end();
  Candidate candidate = judge_with(context, size, std::nullopt, warm, Detail::judged);
  candidate.on_shelf = !size_missing;
  if (!candidate.fuse || shelf.missing_fuses_a.empty()) return candidate;
  // The smallest that the shop has, and no larger one: a fuse is never raised for some volts.
  const auto there = standard_fuse(context.family, *candidate.fuse, shelf.missing_fuses_a);
  if (there == candidate.fuse) return candidate;
  if (there) {
    Candidate other = judge_with(context, size, there, warm, Detail::judged);
    if (other.passes) {
      other.on_shelf = !size_missing;
      return other;
    }
  }
  candidate.on_shelf = candidate.on_shelf && !candidate.passes;
  return candidate;
}

}  // namespace sizing
