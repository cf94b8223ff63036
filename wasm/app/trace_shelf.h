// The traces of a circuit as they are stored: the one that runs, which a closed page goes on with,
// and those that were ended.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/revision.h"
#include "app/stored_texts.h"
#include "app/trace_record.h"

namespace app {

class TraceShelf {
 public:
  TraceShelf(Records& records, const std::vector<platform::StoredRecord>& stored);

  // The circuit that all below is about; kNoCircuit: traced without one.
  void open(std::uint32_t circuit);

  [[nodiscard]] const std::string* running() const;   // as stored; nullptr: none
  void store_running(const RunningTrace& trace);
  void drop_running();
  void put_running_aside();           // one that this app can not read: never written over

  [[nodiscard]] const std::vector<KeptTrace>& kept() const { return kept_; }   // newest first
  [[nodiscard]] const KeptTrace* find_kept(std::uint32_t number) const;        // nullptr: none
  std::uint32_t keep(KeptTrace trace);   // gives it a number, and gives that back
  void forget(std::uint32_t number);
  bool put_back_forgotten();          // the last one, until the app ends; false: there is none

  void forget_circuits_but(const std::vector<std::uint32_t>& numbers) { texts_.forget_circuits_but(numbers); }

 private:
  [[nodiscard]] std::string running_key() const { return texts_.key(circuit_); }
  [[nodiscard]] std::string kept_key(std::uint32_t number) const;
  void read_kept_traces();

  StoredTexts texts_;
  std::uint32_t circuit_ = kNoCircuit;
  std::vector<KeptTrace> kept_;
  std::string forgotten_key_, forgotten_text_;
};

}  // namespace app
