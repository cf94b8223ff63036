// What one check shows under one scenario: the reading from the plant with the instrument in place and how far
// it may be off, or how likely each thing is to be seen. The chance of an answer is a function of it
// (check_row.h). Private to this room.
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "diagnosis/check.h"
#include "diagnosis/fault.h"
#include "diagnosis/plant.h"
#include "diagnosis/scenario.h"

namespace diagnosis {

// How likely a device runs, runs weakly, or shows nothing.
struct Runs {
  double works = 0.0, weak = 0.0, dead = 0.0;
};

// One scenario made ready: its faults that are still there, and the circuit under them.
struct Look {
  explicit Look(const Plant& plant) : view(plant), mended(plant) {}
  View view, mended;  // mended: the fuse or its clips put right, for the checks that do so
  Edits edits;
  Fault faults[2];
  std::size_t count = 0;
  bool spread = false;
  bool unknown = false;  // none_of_these
  // Volts at which a device was last judged, and how: most outlets see one of a few values.
  struct JudgedRuns {
    double volts = -1e300, wire_v = 0.0;
    Runs runs;
  };
  std::array<JudgedRuns, 4> judged_runs{};
  std::size_t next_judged = 0;
  // Does another branch's fuse matter here?
  [[nodiscard]] bool fed_by(int neighbour) const {
    for (const Edit& edit : edits.all()) {
      if (edit.kind == EditKind::refeed && edit.neighbour == neighbour) return true;
    }
    return false;
  }
  [[nodiscard]] bool has(FaultKind kind) const {
    return (count > 0 && faults[0].kind == kind) || (count > 1 && faults[1].kind == kind);
  }
};

// What a check needs of the plant, looked up once.
struct Plan {
  Bench bench;
  std::size_t slot = View::kPlain;
  int red = 0, black = 0;  // nodes of the two points
  int outlet = -1;         // of a check at an outlet
  int far_outlet = -1;     // whose wires the current of the check goes through
  bool drop = false;       // along one side
  bool own = false;        // the failed device is the load, and takes what it takes there
};

struct Sight {
  const Plant& plant;
  const std::vector<int>& complained;  // outlets that the complaint names, by index; never empty
  const Check& check;
  const Plan& plan;
  Look& look;
};

struct Seen {
  double value = 0.0;  // V or ohm: volts, glow, ohms
  double sigma = 0.0;  // V
  // Everything else: what may be seen, and how likely. What is not listed is not seen.
  struct Share {
    AnswerKey key;
    double share;
  };
  std::array<Share, 4> shares{};
  std::size_t count = 0;
  Seen& add(AnswerKey key, double share) {
    for (std::size_t i = 0; i < count; ++i) {
      if (shares[i].key != key) continue;
      shares[i].share += share;
      return *this;
    }
    shares[count++] = {key, share};
    return *this;
  }
  [[nodiscard]] double share_of(AnswerKey key) const {
    for (std::size_t i = 0; i < count; ++i) {
      if (shares[i].key == key) return shares[i].share;
    }
    return 0.0;
  }
};

// One for each row of checks.
Seen see_volts(const Sight& sight);
Seen see_glow(const Sight& sight);
Seen see_ohms(const Sight& sight);
Seen see_device_here(const Sight& sight);
Seen see_other_device(const Sight& sight);
Seen see_device_elsewhere(const Sight& sight);
Seen see_others(const Sight& sight);
Seen see_wiggle(const Sight& sight);
Seen see_behind(const Sight& sight);
Seen see_tug(const Sight& sight);
Seen see_gauge(const Sight& sight);
Seen see_block(const Sight& sight);
Seen see_fuse(const Sight& sight);
Seen see_press(const Sight& sight);
Seen see_swap(const Sight& sight);
Seen see_pull(const Sight& sight);
Seen see_neighbour_fuse(const Sight& sight);
Seen see_tug_clamps(const Sight& sight);
Seen see_main(const Sight& sight);
Seen see_add_up(const Sight& sight);

// Volts of a check of two points, or ohms.
double value_read(const Sight& sight);
// Volts that the wires take from it while something is on; 0 where all wires are known.
double wire_volts(const Sight& sight);
// Normal distribution, up to x.
double below(double x);
// How far a reading of `value` may be off: meter, battery, sizes, loads, and wires that are not known, which
// take `wire_v` of the volts.
double sigma_of(const Plant& plant, double value, bool spread, double wire_v);
// What is plugged in at an outlet gets so many volts; `own`: the failed device, else the good one.
double device_volts(const Plant& plant, const Potentials& at, int outlet, const Appliance& appliance);
Runs device_runs(const Plant& plant, Look& look, int outlet, double volts, const Appliance& appliance,
                 bool dead_anyway);

}  // namespace diagnosis
