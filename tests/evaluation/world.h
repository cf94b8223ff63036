// The truth of one broken-down installation: what is really fitted, what is really wrong, and what
// would really be read. Built on network::build() and network::solve() with fault edits written here;
// nothing of the tracing engine's physics is used, so that neither hides the other's mistakes.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "diagnosis/case.h"
#include "diagnosis/check.h"
#include "diagnosis/fault.h"
#include "diagnosis/remedy.h"
#include "evaluation/draw.h"

namespace evaluation {

inline constexpr double kOpen = std::numeric_limits<double>::infinity();   // ohms of a joint that parted

using circuit::OutletId;
using network::Side;

// Which of a splice's wires is the bad one.
enum class Port { from_source, to_tab, onward };

// What is really wrong. The kinds are those of diagnosis/fault.h; sizes and ports are drawn here.
struct TrueFault {
  diagnosis::FaultKind kind = diagnosis::FaultKind::none_of_these;
  OutletId outlet = circuit::kBlock;
  Side side = Side::positive;
  int neighbour = -1;          // index in Case::neighbours
  Port port = Port::from_source;
  OutletId onward = circuit::kBlock;   // Port::onward: whose wire it is
  double ohm = 0.0;            // more in series; infinity: open
  double size = 1.0;           // share of the emf left, times the wire's resistance, times the fuse's rating
  double size2 = 1.0;          // times the battery's internal resistance
};

// What the person has made of the circuit for one look at it.
struct Setup {
  bool fuse_in = true;                       // as it was found, which may be blown or not there
  bool new_fuse = false;                     // a good one, pressed home
  bool pressed = false;                      // the old one, pressed home
  OutletId parted_at = circuit::kBlock;
  std::optional<OutletId> load_at;           // one thing plugged in
  network::Branch load;                      // its law
  std::vector<bool> neighbour_out, neighbour_in;   // by neighbour: fuse pulled, or put in
  bool all_usual_loads = false;              // and what overloads it
  bool moved = false;                        // a joint that opens when moved is open now
};

// What a device does at a voltage: thresholds as fractions of nominal.
struct Device {
  network::Branch law;
  double works_from = 0.88, weak_from = 0.5;
  bool either_way = false;    // runs with plus and minus changed over
};
enum class Runs { dead, weak, works };

// What the case tells of wire and fuse, which is what is there: one size throughout.
network::Fitted fitted_in(const diagnosis::Case& the_case);

class World {
 public:
  // Resistances and battery are spread about what `the_case` says; `engine` draws them.
  World(const diagnosis::Case& the_case, std::vector<TrueFault> faults, Engine& engine);
  // Everything exactly as the tables say, the battery resting, the neighbours' fuses in.
  World(const diagnosis::Case& the_case, std::vector<TrueFault> faults);

  [[nodiscard]] const diagnosis::Case& the_case() const { return case_; }
  [[nodiscard]] const std::vector<TrueFault>& faults() const { return faults_; }
  [[nodiscard]] const TrueFault& fault() const { return faults_.front(); }
  [[nodiscard]] double fuse_a() const { return fitted_in(case_).fuse.number(); }
  [[nodiscard]] double emf_v() const { return emf_v_; }
  [[nodiscard]] double nominal_v() const { return case_.circuit.supply.nominal.number(); }

  // Voltage of `red` over `black` with `ohm` between the leads (infinity never: a meter has 10 Mohm).
  [[nodiscard]] double across(const Setup& setup, const diagnosis::Spot& red, const diagnosis::Spot& black,
                              double ohm) const;
  // What the lamp has across it: a filament's resistance goes with its heat.
  [[nodiscard]] double lamp_volts(const Setup& setup, const diagnosis::Spot& red, const diagnosis::Spot& black) const;
  // What a meter on ohms shows; nullopt when volts spoil the reading.
  [[nodiscard]] std::optional<double> ohms(const Setup& setup, const diagnosis::Spot& red,
                                           const diagnosis::Spot& black) const;
  // A device in an outlet of this circuit, of a neighbour (index), or of the rest of the block (-1).
  [[nodiscard]] Runs runs(const Setup& setup, OutletId at, const Device& device) const;
  [[nodiscard]] Runs runs_elsewhere(const Setup& setup, int neighbour, const Device& device) const;
  // Amperes that would flow through a whole fuse in our position.
  [[nodiscard]] double fuse_current_a(Setup setup) const;
  // Most volts any bare metal at this site has against the battery's negative post.
  [[nodiscard]] double live_volts(const Setup& setup, const diagnosis::Site& site) const;

  [[nodiscard]] Device device_of(OutletId outlet) const;   // what is usually plugged in there
  [[nodiscard]] Device good_device() const;                // a charger with a light
  [[nodiscard]] bool device_is_dead() const;               // the failed one itself
  [[nodiscard]] bool neighbour_fused(int neighbour) const { return neighbour_fused_[static_cast<std::size_t>(neighbour)]; }

  [[nodiscard]] bool on_the_way(OutletId outlet, OutletId to) const;   // or the same
  // Does the current to this outlet pass the fault's joint?
  [[nodiscard]] bool passes(const TrueFault& fault, OutletId to) const;

  // The installation after a remedy was carried out as told. False: it put nothing right.
  bool repair(const diagnosis::Remedy& remedy);
  // Every outlet has its volts the right way round, the fuse holds, and each fuse feeds its own.
  [[nodiscard]] bool sound() const;

 private:
  struct Net;
  void spread(Engine& engine);
  void add_neighbours(Engine* engine);
  [[nodiscard]] Net build(const Setup& setup) const;
  void apply(const TrueFault& fault, const Setup& setup, Net& net) const;
  void set_up(const Setup& setup, Net& net) const;
  void spoil_fuse(const TrueFault& fault, const Setup& setup, Net& net) const;

  diagnosis::Case case_;
  std::vector<TrueFault> faults_;
  network::BranchNetwork base_;             // healthy, spread
  std::vector<network::Branch> branches_;   // of base_, with neighbours behind them
  std::size_t nodes_ = 0;
  double emf_v_ = 12.6;
  struct Line { std::size_t fuse, red, black; };   // branches of a neighbour; `to` of red and black: its outlet
  std::vector<Line> lines_;                 // by neighbour, then one that the case does not tell of
  std::vector<bool> neighbour_fused_;
};

// Does this remedy, carried out at its place, put this fault right by what hands do there?
bool puts_right(const diagnosis::Remedy& remedy, const TrueFault& fault);

}  // namespace evaluation
