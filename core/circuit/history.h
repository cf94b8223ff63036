// Undo and redo by keeping earlier states of a document. Steps in the same value made in one go
// (a held stepper) join into one when they carry the same join key.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "circuit/circuit.h"

namespace circuit {

inline constexpr std::size_t kMaxUndoSteps = 100;

template <class State>
class HistoryOf {
 public:
  // Remembers `before` as a step back; what could be redone is gone. Same non-empty key as
  // the last step, with no end_join(), undo() or redo() between: joined to it.
  void remember(State before, std::string what, std::string join_key = {}) {
    forward_.clear();
    const bool joins = !join_key.empty() && !back_.empty() && back_.back().join_key == join_key;
    if (joins) return;  // the earlier state is the one to go back to
    back_.push_back({std::move(before), std::move(what), std::move(join_key)});
    if (back_.size() > kMaxUndoSteps) back_.erase(back_.begin());
  }
  void end_join() {                      // the next step stands alone
    if (!back_.empty()) back_.back().join_key.clear();
  }
  [[nodiscard]] bool can_undo() const { return !back_.empty(); }
  [[nodiscard]] bool can_redo() const { return !forward_.empty(); }
  // "remove outlet C"; empty when nothing
  [[nodiscard]] std::string undo_what() const { return back_.empty() ? std::string() : back_.back().what; }
  [[nodiscard]] std::string redo_what() const { return forward_.empty() ? std::string() : forward_.back().what; }
  // nullopt when there is nothing to take back
  std::optional<State> undo(const State& current) { return step(back_, forward_, current); }
  std::optional<State> redo(const State& current) { return step(forward_, back_, current); }
  void clear() {
    back_.clear();
    forward_.clear();
  }

 private:
  struct Step { State state; std::string what; std::string join_key; };
  std::optional<State> step(std::vector<Step>& from, std::vector<Step>& to, const State& current) {
    if (from.empty()) return std::nullopt;
    Step taken = std::move(from.back());
    from.pop_back();
    end_join();
    to.push_back({current, std::move(taken.what), {}});
    return std::move(taken.state);
  }
  std::vector<Step> back_;      // at most kMaxUndoSteps, oldest dropped
  std::vector<Step> forward_;
};

using History = HistoryOf<Circuit>;

}  // namespace circuit
