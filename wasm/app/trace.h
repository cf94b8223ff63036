// A trace that runs: what was answered, and what follows from it. Stored at every step, so that a
// closed page goes on where it was.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/trace_record.h"
#include "app/trace_shelf.h"
#include "diagnosis/tracer.h"

namespace app {

// What follows from the answers, as worked out before the frame that shows it.
struct Findings {
  diagnosis::Advice advice;
  std::vector<diagnosis::Suspect> suspects;        // likeliest first
  std::vector<diagnosis::Evidence> evidence;       // for and against the remedy advised
  std::vector<diagnosis::Evidence> of_suspect;     // for and against the suspect whose sheet is open
  std::vector<Told> told;                          // every answer so far, in words
};

class Trace {
 public:
  // A new one: the case has its complaint and tools, and no problems.
  Trace(platform::Host& host, TraceShelf& shelf, diagnosis::Case begun);
  // One to go on with, on a circuit that may have been edited since. `frame`: a case without
  // complaint and tools, and without problems.
  Trace(platform::Host& host, TraceShelf& shelf, const diagnosis::Case& frame, const RunningTrace& stored);
  Trace(const Trace&) = delete;
  Trace& operator=(const Trace&) = delete;

  [[nodiscard]] const diagnosis::Tracer& tracer() const { return tracer_; }
  [[nodiscard]] std::size_t answers() const { return tracer_.record().entries.size(); }
  [[nodiscard]] std::string complaint_words() const;                    // "Outlet C is dead"
  [[nodiscard]] const std::string& remark() const { return remark_; }   // about the last answer; may be empty
  // Answers that the edited circuit has no place for.
  [[nodiscard]] const std::vector<std::string>& dropped() const { return dropped_; }
  void dropped_read();               // goes on without them

  // Each gives why it was not taken; empty when it was.
  std::string observe(std::string_view check_id, const diagnosis::Answer& answer);
  std::string retake(std::size_t entry, const diagnosis::Answer& answer);
  std::string after_remedy(std::string_view remedy_id, diagnosis::RetestResult result);
  bool undo();
  [[nodiscard]] bool ticked(std::size_t step) const;   // of the remedy on screen
  void tick(std::size_t step, bool on);
  void end();                        // kept when anything was answered, and no longer the one that runs

  // Before a frame. `suspect`: the rank of the one whose evidence is shown.
  void settle(std::optional<std::size_t> suspect);
  [[nodiscard]] bool settled() const { return settled_; }   // false: answered since
  [[nodiscard]] const Findings& findings() const { return findings_; }

 private:
  Trace(platform::Host& host, TraceShelf& shelf, diagnosis::Replay again, const RunningTrace& stored);
  void changed();                    // after an answer: stores it; what follows is worked out before the next frame
  void store();
  void work_out();
  [[nodiscard]] Told told(std::size_t entry) const;
  [[nodiscard]] std::string remedy_title(std::string_view remedy_id) const;
  std::uint32_t keep(std::string outcome);

  platform::Host& host_;
  TraceShelf& shelf_;
  diagnosis::Tracer tracer_;
  std::vector<std::string> dropped_;
  std::string remark_;
  std::vector<std::size_t> ticked_;
  std::uint32_t kept_as_ = 0;        // ended well: the number of its kept record
  bool settled_ = false;
  Findings findings_;
  std::optional<std::size_t> suspect_;   // whose evidence stands in findings_
};

// What was answered, in words: "About 12.6 V", "11.9 V", "Can't reach it".
std::string answer_words(const diagnosis::Check& check, const diagnosis::Answer& answer);

}  // namespace app
