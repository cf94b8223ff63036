// What puts a fault right: steps to tick, cautions, and the re-test with the reading to expect.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "diagnosis/check.h"
#include "diagnosis/fault.h"
#include "units/quantity.h"

namespace diagnosis {

struct RemedyStep {
  std::string words;
  Act act = Act::hands;                     // the most there is, until its row says less
  bool fuse_in = true;                      // our fuse, while this step is done
  bool main_on = true;                      // false: the battery is cut off from the block
  bool minus_on = true;                     // false: the battery's own minus lead is off
  bool exposes = false;                     // bare metal comes in sight, to be proved dead
  bool proved_dead = false;                 // an earlier step proved it, and it is still so
  bool proves_dead = false;                 // this step does: tester on the part, then on a live point
  bool puts_fuse_in = false;                // into our position
  std::optional<units::Amperes> fits_fuse;  // its rating, where words may name it (names_fuse())
};

struct Retest {
  std::string words;  // "Fuse in, lamp in C: 12.5 to 12.9 V, plus on the red side."
  circuit::OutletId outlet;
  Plugged with = Plugged::nothing;  // what is plugged in at the outlet
  bool by_meter = false;            // false: watch that the device runs
  units::Volts low, high;           // by_meter: reading to expect, red lead on the contact of plus
};

struct Remedy {
  std::string id;  // stable: "remake-splice 3 -"
  RemedyKind kind = RemedyKind::look_further;
  Fault fault;        // the likeliest of those it puts right
  std::string title;  // "The black splice at C is loose."
  double minutes = 0.0;
  std::vector<std::string> cautions;
  std::vector<RemedyStep> steps;
  Retest retest;
};
// Stable key of the remedy for a fault: the same for faults that need not be told apart.
std::string remedy_id(const Fault& fault);
Remedy remedy_for(const Case& the_case, const Fault& fault);

}  // namespace diagnosis
