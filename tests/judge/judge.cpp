#include "judge/judge.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>

namespace judge {
namespace {

constexpr double kSlack = 1e-6;
constexpr double kNoLimit = 1e18;
// Fuse makers' notes and NEC 210.20: 125 % of what lasts for hours, 100 % of the rest.
constexpr double kLasting = 1.25;
// ISO 8820-3: a blade fuse carries 110 % of its rating for 100 hours.
constexpr double kCarriesForLong = 1.1;
// Where a load's current follows its volts, or a cap chooses among loads, another fair sum may differ by so much.
constexpr double kCurrentBand = 0.02;
constexpr double kShortWithin = 5.0;   // s, the range of the adiabatic rule
constexpr double kShortStart = 1.0;    // s, common practice
constexpr double kBarePiece = 0.1785;  // m, 33 CFR 183.455: 7 in

bool above(double value, double limit) { return value > limit * (1 + kSlack); }

// Guards before and in each run.
struct Guarded {
  double least = kNoLimit;   // of all on the way from the block, the run's own included
  double nearest = 0;        // the last of them
  double before = kNoLimit;  // least of those before this run
  double nearest_before = 0;
  int behind = -1;  // the outlet whose run has the nearest guard; -1: the circuit's fuse
};

class Judge {
 public:
  Judge(const Circuit& circuit, const Choice& choice, View view, bool first_only)
      : circuit_(circuit), choice_(choice), view_(view), first_only_(first_only) {}

  std::vector<Finding> run() {
    guards();
    const std::array<std::function<void()>, 9> rules{
        [this] { fuse_itself(); }, [this] { thickness(); }, [this] { fit(); },
        [this] { protection(); },  [this] { parts(); },     [this] { supply(); },
        [this] { currents(); },    [this] { volts(); },     [this] { shorts(); }};
    for (const auto& rule : rules) {
      rule();
      if (first_only_ && !found_.empty()) break;
    }
    return std::move(found_);
  }

 private:
  [[nodiscard]] bool kind() const { return view_ == View::sure_fault; }
  void find(What what, int outlet, double value, double limit) { found_.push_back({what, outlet, value, limit}); }
  [[nodiscard]] std::size_t count() const { return circuit_.outlets.size(); }
  [[nodiscard]] const Outlet& at(std::size_t i) const { return circuit_.outlets[i]; }
  [[nodiscard]] bool chooses() const {
    return std::any_of(circuit_.outlets.begin(), circuit_.outlets.end(),
                       [](const Outlet& o) { return !o.there_already; });
  }
  [[nodiscard]] double mm2(const std::string& size) const {
    return nominal_mm2({circuit_.gauge, size, Metal::copper, false});
  }

  void guards() {
    guarded_.resize(count());
    for (std::size_t i = 0; i < count(); ++i) {
      const bool first = at(i).fed_from < 0;
      const Guarded* from = first ? nullptr : &guarded_[static_cast<std::size_t>(at(i).fed_from)];
      Guarded& here = guarded_[i];
      here.before = first ? choice_.fuse : from->least;
      here.nearest_before = first ? choice_.fuse : from->nearest;
      here.least = here.before;
      double own = kNoLimit;
      for (const InLine& part : at(i).in_line) {
        if (part.kind != InLineKind::contact) own = std::min(own, part.amps);
      }
      here.least = std::min(here.least, own);
      here.nearest = own < kNoLimit ? own : here.nearest_before;
      here.behind = own < kNoLimit ? static_cast<int>(i) : first ? -1 : from->behind;
    }
  }
  // By the kind reading the least of all guards on the way stops the current; by the harsh one the nearest has to.
  [[nodiscard]] double guard(std::size_t i) const { return kind() ? guarded_[i].least : guarded_[i].nearest; }

  void fuse_itself() {
    const auto& made = ratings(circuit_.fuse_kind);
    if (std::find(made.begin(), made.end(), choice_.fuse) == made.end()) find(What::fuse_not_made, -1, choice_.fuse, 0);
    const double sees = kind() ? circuit_.supply.nominal : circuit_.supply.highest;
    if (above(sees, made_for_volts(circuit_.fuse_kind)))
      find(What::fuse_volts, -1, sees, made_for_volts(circuit_.fuse_kind));
  }

  void thickness() {
    if (!chooses()) return;
    const double least = least_mm2(circuit_.vehicle, circuit_.gauge, view_);
    bool tails = false;
    for (const Outlet& outlet : circuit_.outlets)
      tails = tails || (outlet.spliced && !outlet.only_joins && !outlet.there_already);
    const double thinnest =
        tails && !choice_.tail.empty() ? std::min(mm2(choice_.size), mm2(choice_.tail)) : mm2(choice_.size);
    if (thinnest < least) find(What::too_thin, -1, thinnest, least);
  }

  void fit() {
    if (circuit_.splice.kind == JointKind::twisted && circuit_.vehicle != Vehicle::fixed) {
      const bool any = std::any_of(circuit_.outlets.begin(), circuit_.outlets.end(),
                                   [](const Outlet& o) { return o.spliced || o.only_joins; });
      if (any || !kind()) find(What::does_not_fit, -1, 0, 0);
    }
    if (!chooses()) return;
    const double run = mm2(choice_.size);
    const double tail = choice_.tail.empty() ? run : mm2(choice_.tail);
    for (std::size_t i = 0; i < count(); ++i) {
      const Outlet& outlet = at(i);
      if (outlet.there_already) continue;
      const int who = static_cast<int>(i);
      if (outlet.fed_from < 0) {
        if (!takes(circuit_.clamp, run, circuit_.ferrule)) find(What::does_not_fit, who, run, circuit_.clamp.most_mm2);
      } else {
        const Outlet& before = at(static_cast<std::size_t>(outlet.fed_from));
        if ((before.spliced || before.only_joins) && !takes(circuit_.splice, run, false))
          find(What::does_not_fit, who, run, circuit_.splice.most_mm2);
      }
      if ((outlet.spliced || outlet.only_joins) && !takes(circuit_.splice, run, false))
        find(What::does_not_fit, who, run, circuit_.splice.most_mm2);
      if (outlet.only_joins) continue;
      const double goes_in = outlet.spliced ? tail : run;
      if (outlet.spliced && !takes(circuit_.splice, tail, false))
        find(What::does_not_fit, who, tail, circuit_.splice.most_mm2);
      if (!takes(outlet.terminal, goes_in, false)) find(What::does_not_fit, who, goes_in, outlet.terminal.most_mm2);
    }
  }

  void wire(std::size_t i, const Wire& wire) {
    const double bears = carries(wire, circuit_.place, view_);
    if (above(guard(i), bears)) find(What::unprotected_wire, static_cast<int>(i), guard(i), bears);
    if (!circuit_.us_trailer_code) return;
    const auto ceiling = trailer_fuse(wire, view_);
    if (ceiling && above(guard(i), *ceiling)) find(What::unprotected_wire, static_cast<int>(i), guard(i), *ceiling);
  }
  void protection() {
    for (std::size_t i = 0; i < count(); ++i) {
      wire(i, run_wire(circuit_, static_cast<int>(i), choice_.size));
      if (at(i).spliced && !at(i).only_joins) wire(i, tail_wire(circuit_, static_cast<int>(i), choice_));
    }
  }

  void part(std::size_t i, double guard, double amps) {
    if (above(guard, amps)) find(What::part_too_small, static_cast<int>(i), guard, amps);
  }
  void parts() {
    for (std::size_t i = 0; i < count(); ++i) {
      const Outlet& outlet = at(i);
      const double run = nominal_mm2(run_wire(circuit_, static_cast<int>(i), choice_.size));
      if (outlet.fed_from < 0) part(i, choice_.fuse, part_amps(circuit_.clamp, run));
      if (outlet.spliced || outlet.only_joins) part(i, guard(i), part_amps(circuit_.splice, run));
      double through = kind() ? guarded_[i].before : guarded_[i].nearest_before;
      for (const InLine& item : outlet.in_line) {
        if (item.kind == InLineKind::contact) part(i, kind() ? guarded_[i].least : through, item.amps);
        else through = guard(i);
      }
      if (outlet.only_joins) continue;
      const double in_terminal = outlet.spliced ? nominal_mm2(tail_wire(circuit_, static_cast<int>(i), choice_)) : run;
      part(i, guard(i), part_amps(outlet.terminal, in_terminal));
      if (!outlet.bounds_itself) part(i, guard(i), outlet.point.amps);
    }
  }

  void supply() {
    const Supply& s = circuit_.supply;
    if (s.main_amps <= 0) return;  // has to be told: judge_answer
    const double bears = carries(s.feeder, s.feeder_place, view_);
    if (s.feeder_metres > 0 && above(s.main_amps, bears)) find(What::feeder_unprotected, -1, s.main_amps, bears);
  }

  // Loads that follow the volts, or a cap that chooses: the sum is not one number.
  [[nodiscard]] double band() const {
    bool follows = circuit_.at_most_amps > 0;
    for (const Outlet& outlet : circuit_.outlets)
      for (const Device& device : outlet.devices) follows = follows || (device.law != Law::current && device.amps > 0);
    if (!follows) return 1;
    return kind() ? 1 - kCurrentBand : 1 + kCurrentBand;
  }
  [[nodiscard]] const Device& device(const Load& load) const {
    return at(static_cast<std::size_t>(load.outlet)).devices[static_cast<std::size_t>(load.device)];
  }
  [[nodiscard]] double margin(const Load& load) const { return device(load).lasting ? kLasting : 1.0; }
  // What a rated ampere becomes at the battery's volts.
  [[nodiscard]] double grows(const Load& load, double volts) const {
    const double part = volts / circuit_.supply.nominal;
    switch (device(load).law) {
      case Law::power: return 1 / part;
      case Law::resistive: return part;
      case Law::current: break;
    }
    return 1;
  }

  // The harsh reading of a fuse: what is rated, more by a quarter of what lasts or by what that draws beyond its
  // rating, the loads that last taken as those that are on; and at the most that flows no more than 110 % of its
  // rating.
  struct Sums {
    double rated = 0, most = 0, lasting = 0, lasting_most = 0;
  };
  static double harsh_need(const Sums& sums) {
    const double added = std::max((kLasting - 1) * sums.lasting, sums.lasting_most - sums.lasting);
    return std::max(sums.rated + added, sums.most / kCarriesForLong);
  }
  [[nodiscard]] Sums harsh_sums(double most_amps) const {
    Sums sums;
    double all = 0;
    for (const Load& load : net_.loads) {
      all += load.amps;
      if (device(load).lasting) sums.lasting += load.amps;
    }
    sums.rated = circuit_.at_most_amps > 0 ? std::min(all, circuit_.at_most_amps) : all;
    sums.lasting = std::min(sums.lasting, sums.rated);
    sums.most = most_amps;
    sums.lasting_most = sums.rated <= 0 ? 0 : sums.lasting * std::max(1.0, most_amps / sums.rated);
    return sums;
  }

  // Behind guard or fuse: all outlets whose way leads through run `from`; -1: all.
  [[nodiscard]] bool behind(int outlet, int from) const {
    for (int o = outlet; o >= 0; o = at(static_cast<std::size_t>(o)).fed_from) {
      if (o == from) return true;
    }
    return from < 0;
  }

  struct Most {
    double amps = 0;  // that flow
    double need = 0;  // rating that carries them
  };
  // Over the battery's three states, with the loads on that weigh most.
  Most most_behind(int from) {
    Most most;
    for (const double volts : {circuit_.supply.low, circuit_.supply.resting, circuit_.supply.highest}) {
      for (const bool by_need : {true, false}) {
        std::vector<double> at(net_.loads.size(), volts);  // what each load gets: the far ones draw otherwise
        for (int round = 0; round < (circuit_.at_most_amps > 0 ? 3 : 1); ++round) {
          std::vector<double> worth;
          for (std::size_t l = 0; l < at.size(); ++l) {
            const Load& load = net_.loads[l];
            worth.push_back(!behind(load.outlet, from) ? -1 : grows(load, at[l]) * (by_need ? margin(load) : 1.0));
          }
          const Volts solved = solve(circuit_, net_, volts, spend(net_, circuit_.at_most_amps, worth));
          if (!solved.settled) break;  // told by volts()
          Most here;
          for (std::size_t l = 0; l < at.size(); ++l) {
            at[l] = solved.at[static_cast<std::size_t>(net_.loads[l].node)];
            if (!behind(net_.loads[l].outlet, from)) continue;
            here.amps += solved.drawn[l];
            // The margin goes with what is rated: the sum may exceed it while the battery charges.
            here.need += solved.drawn[l] / grows(net_.loads[l], at[l]) * margin(net_.loads[l]);
          }
          most.amps = std::max(most.amps, here.amps);
          most.need = std::max(most.need, here.need);
        }
        if (circuit_.at_most_amps <= 0) break;
      }
    }
    most.amps *= band();
    most.need *= band();
    most.need = std::max(most.need, most.amps / kCarriesForLong);
    if (!kind() && from < 0) most.need = std::max(most.need, harsh_need(harsh_sums(most.amps)));
    return most;
  }

  void currents() {
    net_ = build(circuit_, choice_, circuit_.metal_c, view_);
    const Most most = most_behind(-1);
    if (above(most.need, choice_.fuse)) find(What::fuse_too_small, -1, most.need, choice_.fuse);
    const Supply& s = circuit_.supply;
    const double total = most.amps + s.beside_amps;
    if (s.main_amps > 0 && above(total, s.main_amps)) find(What::main_fuse_too_small, -1, total, s.main_amps);
    const double bears = carries(s.feeder, s.feeder_place, view_);
    if (s.feeder_metres > 0 && above(total, bears)) find(What::feeder_overloaded, -1, total, bears);
    for (const double amps : {s.switch_amps, s.block_amps}) {
      if (amps > 0 && above(total, amps)) find(What::switch_or_block_too_small, -1, total, amps);
    }
    overloaded(most.amps);
    for (std::size_t i = 0; i < count(); ++i) {
      const bool guarded = std::any_of(at(i).in_line.begin(), at(i).in_line.end(),
                                       [](const InLine& part) { return part.kind != InLineKind::contact; });
      if (!guarded) continue;
      Most inner = most_behind(static_cast<int>(i));
      if (!kind()) inner.need = std::max(inner.need, most_ever(static_cast<int>(i)));
      if (above(inner.need, guarded_[i].nearest))
        find(What::inner_fuse_too_small, static_cast<int>(i), inner.need, guarded_[i].nearest);
    }
    starts(most.amps);
  }

  // A wire carries what flows through it; by the harsh reading, behind the circuit's fuse, all that flows there.
  void overloaded(double all_amps) {
    for (std::size_t i = 0; i < count(); ++i) {
      const double bears = carries(run_wire(circuit_, static_cast<int>(i), choice_.size), circuit_.place, view_);
      if (!kind() && guarded_[i].behind < 0 && above(all_amps, bears))
        find(What::wire_overloaded, static_cast<int>(i), all_amps, bears);
      if (!kind()) continue;
      const double own = most_behind(static_cast<int>(i)).amps;
      if (above(own, bears)) find(What::wire_overloaded, static_cast<int>(i), own, bears);
    }
  }

  // The harsh reading for a fuse in the line: each device at the most it ever takes, whatever the battery's state.
  [[nodiscard]] double most_ever(int from) const {
    const Volts low = solve(circuit_, net_, circuit_.supply.low, std::vector<double>(net_.loads.size(), 1));
    Sums sums;
    double growth = 1;
    for (const Load& load : net_.loads) {
      if (load.amps <= 0 || !behind(load.outlet, from)) continue;
      const double at = low.settled ? low.at[static_cast<std::size_t>(load.node)] : 0.5 * circuit_.supply.nominal;
      const bool power = device(load).law == Law::power;
      const double volts =
          power ? std::min(at, circuit_.supply.low) : std::max(circuit_.supply.highest, circuit_.supply.nominal);
      const double most = load.amps * grows(load, volts);
      growth = std::max(growth, most / load.amps);
      sums.rated += load.amps;
      sums.most += most;
      if (!device(load).lasting) continue;
      sums.lasting += load.amps;
      sums.lasting_most += most;
    }
    const double cap = circuit_.at_most_amps > 0 ? circuit_.at_most_amps : kNoLimit;
    sums = {std::min(sums.rated, cap), std::min(sums.most, cap * growth), std::min(sums.lasting, cap),
            std::min(sums.lasting_most, cap * growth)};
    return band() * harsh_need(sums);
  }

  void starts(double all_amps) {
    for (std::size_t i = 0; i < count(); ++i) {
      for (const Device& device : at(i).devices) {
        if (device.start_amps <= 0 || device.amps <= 0 || starts_long(device)) continue;
        if (kind()) {  // the start alone has surely opened the fuse before it is over
          const double opens = opens_within_s(circuit_.fuse_kind, choice_.fuse, device.start_amps, View::surely_right);
          if (opens >= 0 && opens <= device.start_s)
            find(What::opens_on_start, static_cast<int>(i), device.start_s, opens);
          continue;
        }
        const double peak = std::max(0.0, all_amps - device.amps) + std::max(device.amps, device.start_amps);
        const double holds = holds_s(circuit_.fuse_kind, choice_.fuse, peak);
        const double opens = opens_within_s(circuit_.fuse_kind, choice_.fuse, peak, View::surely_right);
        // What is over within a second is a matter for a note, unless the fuse must open on it.
        if (device.start_s < kShortStart && (opens < 0 || opens > device.start_s)) continue;
        if (holds < device.start_s) find(What::opens_on_start, static_cast<int>(i), device.start_s, holds);
      }
    }
  }

  void volts() {
    const Supply& s = circuit_.supply;
    std::vector<double> all(net_.loads.size(), 1);
    const bool capped = circuit_.at_most_amps > 0;
    Volts resting, low;
    if (!capped) {
      resting = solve(circuit_, net_, s.resting, all);
      low = solve(circuit_, net_, s.low, all);
    }
    for (std::size_t i = 0; i < count(); ++i) {
      double needs = 0, has = 0;
      for (const Device& device : at(i).devices) {
        has += counted_amps(device);
        if (device.amps > 0) needs = std::max(needs, device.least_volts);
      }
      if (has <= 0 && kind()) continue;  // by the harsh reading the limit holds where nothing is connected yet
      const int end = net_.end[i];
      if (capped) {
        resting = worst_for(end, s.resting);
        low = worst_for(end, s.low);
      }
      volts_at(i, resting, low, needs);
      if (first_only_ && !found_.empty()) return;
    }
  }
  // The cap spent on what shares most of the way with node `end`, by what it really draws.
  [[nodiscard]] Volts worst_for(int end, double battery_volts) const {
    const auto shared = shared_ohms(net_, end);
    std::vector<double> at(shared.size(), battery_volts);
    Volts worst;
    for (int round = 0; round < 2; ++round) {
      std::vector<double> worth;
      for (std::size_t l = 0; l < shared.size(); ++l) worth.push_back(shared[l] * grows(net_.loads[l], at[l]));
      Volts here = solve(circuit_, net_, battery_volts, spend(net_, circuit_.at_most_amps, worth));
      if (!here.settled) return here;
      for (std::size_t l = 0; l < shared.size(); ++l) at[l] = here.at[static_cast<std::size_t>(net_.loads[l].node)];
      const auto e = static_cast<std::size_t>(end), p = static_cast<std::size_t>(net_.posts);
      if (round == 0 || here.at[p] - here.at[e] > worst.at[p] - worst.at[e]) worst = std::move(here);
    }
    return worst;
  }
  void volts_at(std::size_t i, const Volts& resting, const Volts& low, double needs) {
    const Supply& s = circuit_.supply;
    const auto end = static_cast<std::size_t>(net_.end[i]);
    const int who = static_cast<int>(i);
    if (!resting.settled || (!kind() && !low.settled)) return find(What::cannot_run, who, 0, 0);
    const double lost = (resting.at[static_cast<std::size_t>(net_.posts)] - resting.at[end]) / s.nominal;
    if (above(lost, at(i).drop_limit)) find(What::drop, who, lost, at(i).drop_limit);
    if (!low.settled) return;
    if (needs > 0 && above(needs, low.at[end])) find(What::device_volts, who, low.at[end], needs);
  }

  // Some fuse on the way ends a short at each far end within 5 s, before the wire's insulation is harmed.
  void shorts() {
    const double hot = std::max(circuit_.metal_c, kind() ? circuit_.metal_c : circuit_.place.insulation_c);
    const Net net = build(circuit_, choice_, hot, view_);
    const auto amps = short_amps(net, circuit_.supply.low);
    for (std::size_t i = 0; i < count(); ++i) {
      const double opens = opens_within_s(circuit_.fuse_kind, choice_.fuse, amps[i], view_);
      const bool ends = opens >= 0 && opens <= kShortWithin;
      if (!ends && !inner_ends(i, amps[i])) find(What::short_not_ended, static_cast<int>(i), opens, kShortWithin);
      // A short further on flows through this run too, and is smaller and longer. The harsh reading holds each wire to
      // the longest short behind the same fuse, on another branch too.
      double heat = 0;
      for (std::size_t far = 0; far < count() && heat >= 0; ++far) {
        const bool shares_fuse = !kind() && fuse_before(far, guarded_[i].behind);
        if (!shares_fuse && !behind(static_cast<int>(far), static_cast<int>(i))) continue;
        const double there = heat_to(far, amps[far]);
        heat = there < 0 ? there : std::max(heat, there);
      }
      const Wire run = run_wire(circuit_, static_cast<int>(i), choice_.size);
      // Nothing hangs on a junction, so it has no tail.
      for (const Wire& wire : {run, at(i).only_joins ? run : tail_wire(circuit_, static_cast<int>(i), choice_)}) {
        const double stands = withstands(wire, circuit_.place.insulation_c, view_);
        if (heat < 0 || above(heat, stands)) {
          find(What::short_too_hot, static_cast<int>(i), heat, stands);
          break;
        }
      }
    }
  }
  // The fuse of outlet `by` (-1: the circuit's) stands before this outlet.
  [[nodiscard]] bool fuse_before(std::size_t outlet, int by) const {
    int fuse = guarded_[outlet].behind;
    while (fuse != by && fuse >= 0) {
      const int from = at(static_cast<std::size_t>(fuse)).fed_from;
      fuse = from < 0 ? -1 : guarded_[static_cast<std::size_t>(from)].behind;
    }
    return fuse == by;
  }
  template <class Each>
  void inner_fuses(std::size_t outlet, const Each& each) const {
    for (int o = static_cast<int>(outlet); o >= 0; o = at(static_cast<std::size_t>(o)).fed_from) {
      for (const InLine& part : at(static_cast<std::size_t>(o)).in_line) {
        if (part.kind != InLineKind::contact)
          each(part.kind == InLineKind::fuse ? circuit_.fuse_kind : FuseKind::breaker, part.amps);
      }
    }
  }
  [[nodiscard]] bool inner_ends(std::size_t outlet, double amps) const {
    bool ends = false;
    inner_fuses(outlet, [&](FuseKind made, double rating) {
      const double opens = opens_within_s(made, rating, amps, view_);
      ends = ends || (opens >= 0 && opens <= kShortWithin);
    });
    return ends;
  }
  [[nodiscard]] double heat_to(std::size_t outlet, double amps) const {
    double heat = lets_through(circuit_.fuse_kind, choice_.fuse, amps, view_);
    inner_fuses(outlet, [&](FuseKind made, double rating) {
      const double inner = lets_through(made, rating, amps, view_);
      if (inner >= 0 && (heat < 0 || inner < heat)) heat = inner;
    });
    return heat;
  }

  const Circuit& circuit_;
  const Choice& choice_;
  View view_;
  bool first_only_;
  std::vector<Guarded> guarded_;
  Net net_;
  std::vector<Finding> found_;
};

// The tail that goes with a size: the size itself where every terminal takes it, else the largest thinner one that all
// terminals and the splice take. Empty: none does.
std::string tail_for(const Circuit& circuit, const std::string& size) {
  const auto mm2 = [&](const std::string& name) { return nominal_mm2({circuit.gauge, name, Metal::copper, false}); };
  const auto all_take = [&](double area) {
    return std::all_of(circuit.outlets.begin(), circuit.outlets.end(), [&](const Outlet& o) {
      return o.only_joins || o.there_already || !o.spliced || takes(o.terminal, area, false);
    });
  };
  if (all_take(mm2(size))) return size;
  std::string best;
  for (const std::string& name : sizes(circuit.gauge)) {
    if (mm2(name) > mm2(size)) break;
    if (all_take(mm2(name)) && takes(circuit.splice, mm2(name), false)) best = name;
  }
  return best;
}

template <class List, class Item>
bool holds(const List& list, const Item& item) {
  return std::find(list.begin(), list.end(), item) != list.end();
}

bool surely_right(const Circuit& circuit, const Choice& choice) {
  return judge(circuit, choice, View::surely_right, true).empty();
}

double rated_sum(const Circuit& circuit) {
  double sum = 0;
  for (const Outlet& outlet : circuit.outlets)
    for (const Device& device : outlet.devices) sum += counted_amps(device);
  return circuit.at_most_amps > 0 ? std::min(sum, circuit.at_most_amps) : sum;
}

bool too_small(const Circuit& circuit, const Choice& choice, View view) {
  const auto found = judge(circuit, choice, view, false);
  return std::any_of(found.begin(), found.end(), [](const Finding& finding) {
    return finding.what == What::fuse_too_small || finding.what == What::opens_on_start;
  });
}

// The smallest fuse on sale that carries the load and holds its starts, up to `most`, when this size is surely right
// with it; 0: it is not. (A larger one for the sake of millivolts is no answer but a fix, as the rules have it.)
double legal_fuse(const Circuit& circuit, const std::string& size, double most) {
  Choice choice{size, tail_for(circuit, size), 0};
  if (choice.tail.empty()) return 0;
  for (const double rating : ratings(circuit.fuse_kind)) {
    if (rating > most) break;
    if (rating < 0.8 * rated_sum(circuit) || holds(circuit.not_on_sale_fuses, rating)) continue;
    choice.fuse = rating;
    const auto found = judge(circuit, choice, View::surely_right, true);
    if (found.empty()) return rating;
    const bool small = found.front().what == What::fuse_too_small || found.front().what == What::opens_on_start;
    if (!small || !too_small(circuit, choice, View::sure_fault)) return 0;
  }
  return 0;
}

void not_believable(const Circuit& circuit, std::vector<Finding>& found) {
  std::vector<const Part*> parts{&circuit.clamp, &circuit.splice};
  for (const Outlet& outlet : circuit.outlets) {
    if (outlet.only_joins) continue;
    parts.push_back(&outlet.terminal);
    parts.push_back(&outlet.point);
  }
  for (const Part* part : parts) {
    if (!ohms_believable(*part))
      found.push_back({What::ohms_not_believable, static_cast<int>(part->kind), part->ohms, 0});
  }
  for (const Outlet& outlet : circuit.outlets)
    for (const InLine& part : outlet.in_line)
      if (!in_line_believable(part)) found.push_back({What::ohms_not_believable, -1, part.ohms, 0});
}

// What no choice of wire and fuse mends has to be said in words beside the answer.
void not_told(const Circuit& circuit, const Answer& answer, std::vector<Finding>& found) {
  const Supply& s = circuit.supply;
  const auto missing = [&](bool told, int which) {
    if (!told) found.push_back({What::not_told, which, 0, 0});
  };
  if (s.main_amps <= 0) missing(answer.tells_no_main_fuse, 0);
  if (s.main_amps > 0 && s.main_metres_from_post > kBarePiece && s.feeder_metres > 0)
    missing(answer.tells_bare_piece, 1);
  if (s.main_amps > 0 && above(s.nominal, main_volts(s.main_kind, View::sure_fault)))
    missing(answer.tells_main_volts, 6);
  const double inside =
      s.inside_ohms + 2 * s.feeder_metres * ohms_per_metre(s.feeder, 90, View::surely_right) + 4 * s.ring_ohms + 0.002;
  const double amps = s.resting / inside;
  const double main = s.main_amps > 0 ? breaks_amps(s.main_kind, s.nominal, View::sure_fault) : 0;
  if (amps > breaks_amps(circuit.fuse_kind, s.nominal, View::sure_fault) && amps > main)
    missing(answer.tells_no_breaking, 2);
  bool clad = s.feeder.metal == Metal::clad, chassis = false;
  for (const Outlet& outlet : circuit.outlets) {
    clad = clad || outlet.wire.metal == Metal::clad;
    chassis = chassis || outlet.chassis_return;
  }
  if (clad) missing(answer.tells_clad, 3);
  if (chassis) missing(answer.tells_chassis, 4);
  if (chassis && (circuit.vehicle == Vehicle::boat || circuit.vehicle == Vehicle::fixed)) missing(false, 5);
}

}  // namespace

const char* words(What what) {
  static constexpr std::array<const char*, static_cast<std::size_t>(What::count)> names{
      "wire not protected",
      "wire overloaded",
      "feeder not protected",
      "feeder overloaded",
      "main fuse too small",
      "main switch or block too small",
      "not told",
      "fuse too small",
      "no such fuse",
      "fuse not for these volts",
      "fuse in the line too small",
      "fuse opens on a start",
      "part too small",
      "wire does not fit",
      "wire too thin there",
      "drop above its limit",
      "device gets too few volts",
      "no operating point",
      "short not ended in time",
      "short harms the wire",
      "planning ohms outside the published band",
      "a thinner wire is right",
      "a smaller fuse is right",
      "something fits"};
  return names.at(static_cast<std::size_t>(what));
}

std::vector<Finding> judge(const Circuit& circuit, const Choice& choice, View view, bool first_only) {
  return Judge(circuit, choice, view, first_only).run();
}

std::vector<Finding> judge_answer(const Circuit& circuit, const Answer& answer) {
  if (!answer.fits) return {};
  std::vector<Finding> found = judge(circuit, {answer.size, answer.tail, answer.fuse}, View::sure_fault, false);
  not_believable(circuit, found);
  not_told(circuit, answer, found);
  return found;
}

std::vector<Finding> beaten(const Circuit& circuit, const Answer& answer) {
  std::vector<Finding> found;
  const auto& all = sizes(circuit.gauge);
  const bool chooses =
      std::any_of(circuit.outlets.begin(), circuit.outlets.end(), [](const Outlet& o) { return !o.there_already; });
  const auto try_size = [&](std::size_t i, double most, What what) {
    if (chooses && holds(circuit.not_on_sale_sizes, all[i])) return false;
    const double fuse = legal_fuse(circuit, all[i], most);
    if (fuse <= 0) return false;
    found.push_back({what, static_cast<int>(i), fuse, answer.fuse});
    return true;
  };
  if (!answer.fits) {
    for (std::size_t i = 0; i < (chooses ? all.size() : 1); ++i) {
      if (try_size(i, kNoLimit, What::something_fits)) return found;
    }
    return found;
  }
  for (std::size_t i = 0; chooses && i < all.size() && all[i] != answer.size; ++i) {
    if (try_size(i, answer.fuse, What::smaller_wire)) break;
  }
  for (const double rating : ratings(circuit.fuse_kind)) {
    if (rating >= answer.fuse) break;
    if (rating < 0.8 * rated_sum(circuit) || holds(circuit.not_on_sale_fuses, rating)) continue;
    if (!surely_right(circuit, {answer.size, answer.tail, rating})) continue;
    found.push_back({What::smaller_fuse, -1, rating, answer.fuse});
    break;
  }
  return found;
}

}  // namespace judge
