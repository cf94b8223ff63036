// The remedies, one row a kind: what it takes, its steps in order, its cautions. A row that leaves anything
// out does not compile. Private to this room, but for tests.
#pragma once

#include <span>
#include <string_view>

#include "diagnosis/check.h"
#include "diagnosis/fault.h"

namespace diagnosis {

// What a step makes of the circuit; it holds from this step on.
enum class Then {
  as_before,
  fuse_out,  // our fuse is pulled, or was found out
  fuse_in,   // a fuse goes into our position: whatever was proved dead is so no more
  main_off,  // block and feeder are cut off from the battery
  main_on,
  proves_dead,  // `words` names the part: tester on it, then on a live point
};
struct StepRow {
  Act act;
  Then then;
  std::string_view words;  // tokens: words.h, and fuse_back, prove_open, rest_low
};
struct RemedyRow {
  RemedyKind kind;
  std::string_view key;  // stable in files: "remake-splice"
  bool by_side;          // done for one side at its place; else for both as one
  Takes takes;           // of any of its steps; live_circuit: a step by hand or tool is done on live parts
  bool in_the_supply;    // hands at the block or before it, where only the main switch makes dead
  std::span<const StepRow> steps;
  std::span<const std::string_view> cautions;
};

std::span<const RemedyRow> remedy_rows();  // in the order of RemedyKind
const RemedyRow& remedy_row(RemedyKind kind);

}  // namespace diagnosis
