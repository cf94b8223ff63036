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
  fuse_out,   // our fuse is pulled, or was found out
  fuse_in,    // a fuse goes into our position: whatever was proved dead is so no more
  main_off,   // block and feeder are cut off from the battery
  minus_off,  // and the battery's own minus lead is off: nothing of it can be shorted to the vehicle
  main_on,
  exposes,      // bare metal comes in sight: what was proved dead before does not count for it
  proves_dead,  // `words` names the part, see prove_dead.h
};
struct StepRow {
  Act act;
  Then then;
  std::string_view words;  // tokens: words.h, and fuse_back, prove_open, rest_low
};
// Where the hands go, seen from the battery. At the block the feed stud and the other positions stay live with
// our fuse out; before it, nothing but the minus lead makes dead.
enum class Supply { beyond_the_fuse, at_the_block, before_the_block };
// After a new fuse blew nothing that only puts in another is advised: what blew it comes first.
enum class FuseWork { none, only_a_fuse, removes_what_blew_it };
struct RemedyRow {
  RemedyKind kind;
  std::string_view key;  // stable in files: "remake-splice"
  bool by_side;          // done for one side at its place; else for both as one
  Takes takes;           // of any of its steps; live_circuit: a step by hand or tool is done on live parts
  Supply supply;         // what has to be off besides our fuse
  FuseWork fuse;
  std::span<const StepRow> steps;
  std::span<const std::string_view> cautions;
};

std::span<const RemedyRow> remedy_rows();  // in the order of RemedyKind
const RemedyRow& remedy_row(RemedyKind kind);

}  // namespace diagnosis
