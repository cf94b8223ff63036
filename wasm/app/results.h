// What follows from the open circuit: worked out once for each revision, before the frame that shows
// it and only what it shows. While a frame is drawn it is only read, and an edit in the middle of a
// frame leaves it as it was until the next.
#pragma once

#include <optional>

#include "app/revision.h"
#include "app/route.h"
#include "circuit/circuit.h"
#include "sizing/answer.h"
#include "sizing/fixes.h"
#include "sizing/shares.h"

namespace app {

class Results {
 public:
  // For Size and the sheet over it. `circuit`: the open one; nullptr: there is none.
  void work_out(const Current& current, const circuit::Circuit* circuit, const Route& shown);

  [[nodiscard]] const Current& of() const { return of_; }
  [[nodiscard]] bool has_answer() const { return answer_.has_value(); }
  [[nodiscard]] const sizing::Answer& answer() const;             // ask has_answer() first
  // The size to look for fixes with where nothing fits; nullptr: none.
  [[nodiscard]] const tables::Conductor* nearest() const { return nearest_; }

  // Of the answer, on Size itself; nullptr: nothing fits.
  [[nodiscard]] const sizing::VoltShares* volts() const { return volts_ ? &*volts_ : nullptr; }
  [[nodiscard]] const sizing::WireOnly& wire_only() const { return wire_only_; }

  // Of the size in hand, on the sheets Why and What if; nullptr: there is none to judge.
  [[nodiscard]] const tables::Conductor* size_in_hand() const { return in_hand_; }
  [[nodiscard]] const sizing::Candidate* judged() const { return judged_ ? &*judged_ : nullptr; }
  [[nodiscard]] const sizing::Fixes* fixes() const { return fixes_ ? &*fixes_ : nullptr; }   // What if only

  // The wire and fuse in hand, on the sheet Reach, and what they reach.
  [[nodiscard]] const sizing::Reach* reach() const { return reach_ ? &*reach_ : nullptr; }
  [[nodiscard]] const circuit::InHand& reach_of() const { return reach_of_; }

 private:
  void follow(const Current& current);
  void judge_in_hand(const circuit::Circuit& circuit, const tables::Conductor* size, bool with_fixes);
  void follow_the_volts(const circuit::Circuit& circuit);
  void work_out_reach(const circuit::Circuit& circuit);

  Current of_;
  std::optional<sizing::Answer> answer_;
  const tables::Conductor* nearest_ = nullptr;
  std::optional<sizing::VoltShares> volts_;
  sizing::WireOnly wire_only_;
  const tables::Conductor* in_hand_ = nullptr;
  std::optional<sizing::Candidate> judged_;
  std::optional<sizing::Fixes> fixes_;
  circuit::InHand reach_of_;
  std::optional<sizing::Reach> reach_;
};

}  // namespace app
