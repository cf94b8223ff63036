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

namespace app {

// "trace/<circuit number>": 0 is the generic circuit.
struct RunningTrace {
  diagnosis::Record record;
  std::vector<std::size_t> ticked;      // steps of the remedy on screen that are done
  std::uint32_t kept_as = 0;            // ended: the number of its kept trace; 0: still running
};
std::string write_running(const RunningTrace& trace);
std::optional<RunningTrace> read_running(std::string_view text);   // nullopt: not a trace of ours

// "trace/<circuit number>/<number>"
struct Told {
  std::string question;
  std::string answer;
};
struct KeptTrace {
  std::uint32_t number = 0;             // in its key
  std::string date;                     // "2026-11-25"
  std::string circuit;                  // its name then
  std::string complaint;                // "One outlet is dead: C"
  std::vector<Told> told;
  std::string outcome;                  // one sentence
};
std::string write_kept(const KeptTrace& trace);
std::string readable_text(const KeptTrace& trace);   // a page to hand on: lines of plain words
std::optional<KeptTrace> read_kept(std::string_view text);

// "fitted/<circuit number>": the wire and fuse that are there, as read off them by the person. What
// is not told is not known, whatever Size would choose: no step then names a fuse rating.
struct FittedTold {
  std::string size;                     // a conductor's id; empty: not known
  double fuse_a = 0.0;                  // 0: not known
  friend bool operator==(const FittedTold&, const FittedTold&) = default;
};
std::string write_fitted(const FittedTold& fitted);
FittedTold read_fitted(std::string_view text);   // what can not be read is not known

// "picked/<circuit number>": outlets by number, "1 3". What can not be read is none.
std::string write_outlets(const std::vector<circuit::OutletId>& outlets);
std::vector<circuit::OutletId> read_outlets(std::string_view text);

std::string write_tools(const diagnosis::Tools& tools);   // "meter lamp"
diagnosis::Tools read_tools(std::string_view words);      // unknown words are passed over

}  // namespace app
