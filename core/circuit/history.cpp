#include "circuit/history.h"

#include <utility>

namespace circuit {

void History::remember(Circuit before, std::string what, std::string join_key) {
  forward_.clear();
  const bool joins = !join_key.empty() && !back_.empty() && back_.back().join_key == join_key;
  if (joins) return;  // the earlier circuit is the one to go back to
  back_.push_back({std::move(before), std::move(what), std::move(join_key)});
  if (back_.size() > kMaxUndoSteps) back_.erase(back_.begin());
}

void History::end_join() {
  if (!back_.empty()) back_.back().join_key.clear();
}

bool History::can_undo() const { return !back_.empty(); }
bool History::can_redo() const { return !forward_.empty(); }
std::string History::undo_what() const { return back_.empty() ? std::string() : back_.back().what; }
std::string History::redo_what() const { return forward_.empty() ? std::string() : forward_.back().what; }

std::optional<Circuit> History::undo(const Circuit& current) {
  if (back_.empty()) return std::nullopt;
  Step step = std::move(back_.back());
  back_.pop_back();
  end_join();
  forward_.push_back({current, std::move(step.what), {}});
  return std::move(step.circuit);
}

std::optional<Circuit> History::redo(const Circuit& current) {
  if (forward_.empty()) return std::nullopt;
  Step step = std::move(forward_.back());
  forward_.pop_back();
  back_.push_back({current, std::move(step.what), {}});
  return std::move(step.circuit);
}

void History::clear() {
  back_.clear();
  forward_.clear();
}

}  // namespace circuit
