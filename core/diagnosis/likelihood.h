// How likely each answer to a check is under a scenario: the reading from the plant with the
// instrument in place, meter tolerance, the spread of what is not known, and human error.
// Private to this room.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "diagnosis/check.h"
#include "diagnosis/plant.h"
#include "diagnosis/scenario.h"

namespace diagnosis {

inline constexpr std::size_t kMaxChoices = 10;
using Chances = std::array<double, kMaxChoices>;   // by choice; the rest 0

// One answer in about thirty is wrong: the wrong clip, the wrong outlet, a slip of the thumb. Then any
// other answer is as likely.
inline constexpr double kHumanError = 0.03;

// One scenario made ready: its faults that are still there, and the circuit under them.
struct Look {
  explicit Look(const Plant& plant) : view(plant), mended(plant) {}
  View view, mended;             // mended: the fuse or its clips put right, for the checks that do so
  Edits edits;
  Fault faults[2];
  std::size_t count = 0;
  bool spread = false;
  bool unknown = false;          // none_of_these
  // Volts at which a device was last judged, and how: most outlets see one of a few values.
  struct Judged { double volts = -1e300; Chances chances{}; };
  std::array<Judged, 4> judged{};
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

class Likelihood {
 public:
  // The case and the plant stay where they are for as long as this lives.
  // `checks`: those that will be asked about, each with its index.
  Likelihood(const Case& the_case, const Plant& plant, const std::vector<Hypothesis>& hypotheses,
             const std::vector<Check>& checks);

  // `repaired`: bit 0 the first fault, bit 1 the second, put right before this check.
  void aim(Look& look, const Scenario& scenario, unsigned repaired) const;
  Chances chances(const Check& check, Look& look) const;
  // The same to a sixtieth of battery volts, for ranking checks only: many times as fast.
  Chances coarse_chances(const Check& check, Look& look) const;
  // Density of a typed reading over what could be typed, times the width of a word, so that it
  // compares with chances(): only ratios between scenarios matter.
  double density(const Check& check, Look& look, double typed) const;
  // The reading predicted; nullopt where the answer has no number.
  std::optional<double> value(const Check& check, Look& look) const;
  // How likely somebody with this fault comes with this complaint.
  double complaint(Look& look) const;
  // How likely the failed device, or a good one, runs at an outlet.
  double works(Look& look, int outlet, bool own_device) const;

 private:
  // What a check needs of the plant, looked up once.
  struct Plan {
    Bench bench;
    std::size_t slot = View::kPlain;
    int red = 0, black = 0;    // nodes; of the outlet's contacts where the check is at an outlet
    int outlet = -1;
    bool drop = false;
    bool own = false;          // the failed device is the load, and takes what it takes there
  };
  Plan plan_of(const Check& check);
  const Plan& plan(const Check& check) const { return plans_[static_cast<std::size_t>(check.index)]; }
  double device_volts(Look& look, int outlet, const Appliance& appliance) const;
  double volts_read(const Plan& plan, Look& look) const;
  double device_volts(Look& look, const Plan& plan, int outlet, const Appliance& appliance) const;
  double sigma(double value, double scale, bool spread) const;
  Chances by_range(CheckKind kind, double value, bool spread, bool drop) const;
  Chances by_fault(const Check& check, const Fault& fault) const;
  Chances by_words(const Check& check, Look& look) const;
  Chances swap_fuse(Look& look) const;
  Chances pull_fuse(const Check& check, Look& look) const;
  Chances runs(Look& look, double volts, bool dead_anyway) const;      // works, weak, dead
  double works_mended(Look& look, network::Element element) const;
  double complaint_at(Look& look, Symptom symptom, int outlet) const;
  static Chances with_human_error(const Chances& made, std::size_t choices);

  const Case& case_;
  const Plant& plant_;
  const std::vector<Hypothesis>& hypotheses_;
  std::vector<int> complained_;
  std::vector<Plan> plans_;      // by check
  std::vector<Bench> benches_;   // by slot
  std::vector<Chances> volts_[2], glow_[2];   // coarse: by spread, by step of the reading
};

}  // namespace diagnosis
