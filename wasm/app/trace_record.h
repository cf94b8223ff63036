// A trace as it is stored: the running one, that a closed page goes on with, and those that were
// ended, in plain words that stay true when the circuit is edited later. Lines "word rest".
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnosis/record.h"
#include "vehicle/vehicle.h"

namespace app {

// "running/<vehicle>/<circuit>"; "running/0/0" is the plain circuit.
struct RunningTrace {
  diagnosis::Record record;
  std::vector<std::size_t> ticked;      // steps of the remedy on screen that are done
  std::uint32_t kept_as = 0;            // ended: the number of its kept trace; 0: still running
};
std::string write_running(const RunningTrace& trace);
std::optional<RunningTrace> read_running(std::string_view text);   // nullopt: not a trace of ours

// Ended ones are kept in their vehicle. Those of the plain circuit are records "trace/0/<number>".
using Told = vehicle::ToldAnswer;
using KeptTrace = vehicle::TraceRecord;
// Cut to what a vehicle keeps of one: vehicle/validate.h.
KeptTrace clipped(KeptTrace trace);
std::string write_kept(const KeptTrace& trace);
std::string readable_text(const KeptTrace& trace);   // a page to hand on: lines of plain words
std::optional<KeptTrace> read_kept(std::string_view text);

// What version 1 kept as fitted: one wire and the fuse, as read off them by the person.
struct FittedTold {
  std::string size;                     // a conductor's id; empty: not known
  double fuse_a = 0.0;                  // 0: not known
  friend bool operator==(const FittedTold&, const FittedTold&) = default;
};
FittedTold read_fitted(std::string_view text);   // what can not be read is not known

// "picked/<vehicle>/<circuit>": outlets by number, "1 3". What can not be read is none.
std::string write_outlets(const std::vector<circuit::OutletId>& outlets);
std::vector<circuit::OutletId> read_outlets(std::string_view text);

std::string write_tools(const diagnosis::Tools& tools);   // "meter lamp"
diagnosis::Tools read_tools(std::string_view words);      // unknown words are passed over

}  // namespace app
