// The traces of a circuit as they are stored: the one that runs, which a closed page goes on with, and
// those that were ended, which are kept in its vehicle.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "app/notebook.h"
#include "app/stored_texts.h"
#include "app/trace_record.h"

namespace app {

class TraceShelf {
 public:
  TraceShelf(Records& records, Notebook& notebook, const std::vector<platform::StoredRecord>& stored);

  // The circuit that all below is about; kNoCircuit: traced without one.
  void open(CircuitRef circuit);

  [[nodiscard]] const std::string* running() const;   // as stored; nullptr: none
  void store_running(const RunningTrace& trace);
  void drop_running();
  void put_running_aside();           // one that this app can not read: never written over

  [[nodiscard]] const std::vector<KeptTrace>& kept() const { return kept_; }   // newest first
  [[nodiscard]] const KeptTrace* find_kept(std::uint32_t number) const;        // nullptr: none
  std::uint32_t keep(KeptTrace trace);   // gives it a number, and gives that back; 0: its vehicle is full
  void forget(std::uint32_t number);
  bool put_back_forgotten();          // the last one, until the app ends; false: there is none

  void forget_but(const std::function<bool(CircuitRef)>& is_there) { running_.forget_but(is_there); }

 private:
  [[nodiscard]] std::string running_key() const { return running_.key(circuit_); }
  void read_kept_traces();
  void read_loose();
  std::uint32_t keep_loose(KeptTrace trace);
  bool change(const vehicle::Edit& edit);

  Notebook& notebook_;
  StoredTexts running_;
  StoredTexts loose_;                 // ended ones of the plain circuit
  CircuitRef circuit_;
  std::vector<KeptTrace> kept_;
  struct Forgotten {
    CircuitRef circuit;
    KeptTrace trace;
  };
  std::optional<Forgotten> forgotten_;
};

}  // namespace app
