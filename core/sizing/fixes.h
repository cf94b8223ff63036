// What would make it fit with a given size in hand: each fix changes one thing, holds the
// rest, and carries the circuits that result. Every fix, applied, gives an answer (a test
// applies them all).
#pragma once

#include <string>
#include <vector>

#include "circuit/circuit.h"
#include "sizing/answer.h"

namespace sizing {

// larger_fuse: the circuit that results does without the smaller ratings, as if the shop lacked them.
enum class FixKind {
  carry_less, run_shorter, more_drop, larger_fuse, feeder, other_part, other_fuse_family, split, next_size
};

struct Fix {
  FixKind kind;
  double value = 0.0;            // A, m or fraction by kind; the exact limit, rounded to the safe side
  Measure measure = Measure::none;
  std::string title;             // "Carry less"
  std::string detail;            // "Whole circuit at once; fit a 10 A fuse."
  std::vector<circuit::Circuit> result;  // one circuit, or two for split
};
// `size_id`: the conductor in hand. Empty result: nothing of these helps, and `why` says so.
struct Fixes {
  const tables::Conductor* size = nullptr;
  std::vector<Fix> fixes;
  std::string why_none;
};
Fixes fixes(const circuit::Circuit& circuit, const tables::Conductor& size);
// The size to offer fixes for when nothing fits: the largest on the shelf that the parts take.
const tables::Conductor* nearest_size(const circuit::Circuit& circuit, const Answer& answer);

// The question turned round: this wire and this fuse, how far and how much.
struct Reach {
  bool fuse_protects_wire = false;
  std::string fuse_sentence;               // why (not)
  units::Amperes largest_fuse{0.0};        // largest standard rating this wire and these parts allow; 0: none
  units::Amperes most_current{0.0};        // at these lengths, within every limit; 0: none
  units::Metres longest_run{0.0};          // far outlet from the block, runs in proportion, at this current
  std::vector<std::string> notes;
};
Reach reach(const circuit::Circuit& circuit, const circuit::InHand& in_hand);

}  // namespace sizing
