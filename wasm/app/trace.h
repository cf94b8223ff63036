// The trace of the circuit that is open: begun, answered, taken back, ended; stored at every step
// through the host, so that a closed page goes on where it was. The tracer is computed once per
// answer and only asked here.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/records.h"
#include "app/trace_record.h"
#include "diagnosis/tracer.h"

namespace app {

inline constexpr std::string_view kTraceToolsKey = "trace-tools";
inline constexpr std::string_view kFittedPrefix = "fitted/";
inline constexpr std::uint32_t kGenericCircuit = 0;   // in the keys: no circuit was open

class Trace {
 public:
  Trace(platform::Host& host, Records& records, const std::vector<platform::StoredRecord>& stored);

  // Which circuit: its number, the text it is stored as, and a case without complaint and tools. A
  // running trace is replayed on it; what no longer applies is told by dropped().
  [[nodiscard]] bool follows(std::uint32_t number, std::string_view text) const;
  void follow(std::uint32_t number, std::string_view text, diagnosis::Case frame);

  [[nodiscard]] const diagnosis::Case& frame() const { return frame_; }
  // Why this circuit can not be traced; empty when it can.
  [[nodiscard]] circuit::Problems frame_problems() const;
  // What the person told of the wire and fuse that are there; nullopt: as Size worked out.
  [[nodiscard]] std::optional<FittedTold> fitted(std::uint32_t number) const;
  [[nodiscard]] std::optional<FittedTold> fitted_told_now() const { return fitted(number_); }
  [[nodiscard]] bool fitted_told() const { return fitted(number_).has_value(); }
  void tell_fitted(const std::optional<FittedTold>& fitted);   // of this circuit; the answers so far are weighed again
  [[nodiscard]] const diagnosis::Tools& tools() const { return tools_; }
  void set_tools(const diagnosis::Tools& tools);   // remembered for the next trace

  // Why not, in a sentence; empty when it began. One that runs is ended and kept first.
  std::string start(diagnosis::Symptom symptom, std::vector<circuit::OutletId> outlets);
  void stop();                                      // kept when anything was answered

  [[nodiscard]] bool running() const { return tracer_.has_value(); }
  // While running:
  [[nodiscard]] const diagnosis::Tracer& tracer() const { return *tracer_; }
  [[nodiscard]] const diagnosis::Advice& advice() const { return advice_; }
  [[nodiscard]] const std::vector<diagnosis::Suspect>& suspects() const { return suspects_; }
  [[nodiscard]] const std::vector<diagnosis::Evidence>& evidence() const { return evidence_; }   // of the remedy's
  const std::vector<diagnosis::Evidence>& evidence_for(std::size_t rank);   // of suspects()[rank]; worked out once
  [[nodiscard]] const std::vector<std::string>& dropped() const { return dropped_; }
  void dropped_read() { dropped_.clear(); }
  [[nodiscard]] const std::string& remark() const { return remark_; }   // about the last answer; may be empty
  [[nodiscard]] std::size_t answers() const { return tracer_->record().entries.size(); }
  [[nodiscard]] Told told(std::size_t entry) const;
  [[nodiscard]] std::string complaint_words() const;                    // "Outlet C is dead"

  // Each gives why it was not taken; empty when it was.
  std::string observe(std::string_view check_id, const diagnosis::Answer& answer);
  std::string retake(std::size_t entry, const diagnosis::Answer& answer);
  std::string after_remedy(std::string_view remedy_id, diagnosis::RetestResult result);
  bool undo();
  [[nodiscard]] bool ticked(std::size_t step) const;
  void tick(std::size_t step, bool on);

  [[nodiscard]] const std::vector<KeptTrace>& kept() const { return kept_; }   // of this circuit, newest first
  [[nodiscard]] const KeptTrace* find_kept(std::uint32_t number) const;
  void forget(std::uint32_t number);
  bool put_back_forgotten();          // the last one, until the app ends; false: there is none
  // At the start: what belongs to circuits that are gone goes with them.
  void forget_circuits_but(const std::vector<std::uint32_t>& numbers);
  // A trace was left off here that this app can not read. It is never written over: a new one
  // puts it aside first.
  [[nodiscard]] bool unreadable() const { return unreadable_; }

 private:
  void put_unreadable_aside();
  [[nodiscard]] std::string running_key() const;
  [[nodiscard]] std::string kept_key(std::uint32_t number) const;
  void store(const std::string& key, std::string text);
  void remove(const std::string& key);
  void read_kept_traces();
  void replay_running(const RunningTrace& stored);
  void changed();                     // after an answer: computes and stores
  void compute();
  std::uint32_t keep(std::string outcome);
  void unkeep();
  [[nodiscard]] std::string remedy_title(std::string_view remedy_id) const;

  platform::Host& host_;
  Records& records_;
  std::map<std::string, std::string, std::less<>> texts_;   // every record of ours
  diagnosis::Tools tools_;
  bool following_ = false;
  std::uint32_t number_ = kGenericCircuit;
  std::string text_;
  diagnosis::Case frame_;
  std::optional<diagnosis::Tracer> tracer_;
  diagnosis::Advice advice_;
  std::vector<diagnosis::Suspect> suspects_;
  std::vector<diagnosis::Evidence> evidence_;
  std::optional<std::size_t> evidence_rank_;
  std::vector<diagnosis::Evidence> evidence_of_rank_;
  std::vector<std::string> dropped_;
  std::string remark_;
  std::vector<std::size_t> ticked_;
  std::uint32_t kept_as_ = 0;
  std::vector<KeptTrace> kept_;
  bool unreadable_ = false;
  std::string forgotten_key_, forgotten_text_;
};

// Does this fuse protect this wire, by the rules of Size? False where one of them is not known.
bool protects(const circuit::Circuit& circuit, const FittedTold& told);

// What was answered, in words: "About 12.6 V", "11.9 V", "Can't reach it".
std::string answer_words(const diagnosis::Check& check, const diagnosis::Answer& answer);

}  // namespace app
