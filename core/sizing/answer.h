// What sizing says: the ladder of sizes, each judged, the one chosen, and why.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "circuit/circuit.h"
#include "circuit/problem.h"
#include "network/branch_network.h"
#include "tables/citation.h"
#include "tables/conductor.h"
#include "units/quantity.h"

namespace sizing {

enum class Criterion {
  ampacity,           // is there a figure for this size here, and does it carry the current
  fuse_rating,        // a standard fuse from 1.25 x the current up to the least of all ratings
  fuse_voltage,       // the fuse family is marked for this system's highest voltage
  part_rating,        // clamp, splice, terminal, outlet carry what the fuse lets through
  fit,                // clamp, splice and terminal take the wire, with the ferrule if one is used
  mechanical_minimum, // thinnest wire allowed in this setting
  operating_point,    // every load can run at all
  drop,               // at every outlet, worst loading
  device_minimum,     // device's lowest voltage, battery low, worst loading
  far_short,          // a short at the far end opens the fuse in time
  withstand,          // the wire survives until it has: I^2 t <= k^2 S^2
  inner_fuses,        // each fuse in the line carries its part and protects what lies behind it
  inrush,             // the fuse holds while a device starts
  feeder,             // main fuse, feeder, main switch, block: carry what flows; the feeder is protected
  feeder_drop,        // battery to block alone stays within the limit
};
enum class Measure { amperes, fraction, volts, seconds, ampere_squared_seconds, square_millimetres, none };

struct Judgement {
  Criterion criterion;
  bool passes = false;
  double value = 0.0;
  double limit = 0.0;
  Measure measure = Measure::none;
  std::optional<circuit::OutletId> at;    // the outlet it is worst at
  const tables::Citation* citation = nullptr;
  std::string sentence;                   // plain words, values included, both ways
};

struct OutletResult {
  circuit::OutletId id;
  units::Volts voltage;            // worst simultaneous loading, battery resting
  double drop_fraction = 0.0;      // of nominal, battery posts to device
  double drop_limit = 0.0;
  units::Volts voltage_low;        // the same with the battery low
  bool runs = true;
};

struct Candidate {
  const tables::Conductor* size = nullptr;
  const tables::Conductor* tail = nullptr;     // what goes into the outlet's terminal
  std::optional<units::Amperes> fuse;          // smallest standard rating that serves
  std::optional<units::Amperes> derated_ampacity;
  std::vector<Judgement> judgements;           // all of them, in the order of Criterion
  std::vector<OutletResult> outlets;           // by index in circuit.outlets
  double worst_drop_fraction = 0.0;
  std::size_t worst_outlet = 0;                // nearest its own limit
  network::Loading worst_loading;              // under which worst_outlet loses most
  units::Amperes design_current;               // most the whole circuit may carry at once
  units::Amperes fuse_need;                    // what the fuse must be rated at least to carry that
  units::Watts lost_in_wire;                   // at the design current
  bool on_shelf = true;
  bool passes = false;                         // every judgement passes; the shelf is apart
  [[nodiscard]] const Judgement* first_failure() const;
  [[nodiscard]] bool fails(Criterion criterion) const;
};

enum class Verdict {
  fits,          // ladder[*chosen] is the answer
  none_fits,     // no size passes; ask fixes()
  not_on_shelf,  // some size passes, the shop has none of them; ask fixes()
  no_load,       // nothing to size for yet
  invalid,       // problems tells
};

struct Answer {
  Verdict verdict = Verdict::invalid;
  std::vector<Candidate> ladder;               // ascending size
  std::optional<std::size_t> chosen;           // smallest that passes and is on the shelf
  std::optional<std::size_t> best_ignoring_shelf;
  std::optional<Judgement> set_by;             // the failure in the next smaller size
  std::string headline;                        // when nothing fits: one sentence
  std::string reason;                          // "Set by voltage drop at C with 12 A flowing. 12 AWG would lose 7.3 %."
  std::vector<std::string> notes;              // cautions that belong beside the answer
  circuit::Problems problems;
  std::size_t solves = 0;                      // networks solved on the way, for the benchmark
  [[nodiscard]] const Candidate* choice() const { return chosen ? &ladder[*chosen] : nullptr; }
};

}  // namespace sizing
