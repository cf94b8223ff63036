// Undo and redo by keeping earlier circuits. Steps in the same value made in one go (a held
// stepper) join into one when they carry the same join key.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "circuit/circuit.h"

namespace circuit {

inline constexpr std::size_t kMaxUndoSteps = 100;

class History {
 public:
  // Remembers `before` as a step back; what could be redone is gone. Same non-empty key as
  // the last step, with no end_join(), undo() or redo() between: joined to it.
  void remember(Circuit before, std::string what, std::string join_key = {});
  void end_join();                       // the next step stands alone
  [[nodiscard]] bool can_undo() const;
  [[nodiscard]] bool can_redo() const;
  [[nodiscard]] std::string undo_what() const;   // "remove outlet C"; empty when nothing
  [[nodiscard]] std::string redo_what() const;
  std::optional<Circuit> undo(const Circuit& current);   // nullopt when there is nothing to take back
  std::optional<Circuit> redo(const Circuit& current);
  void clear();

 private:
  struct Step { Circuit circuit; std::string what; std::string join_key; };
  std::vector<Step> back_;      // at most kMaxUndoSteps, oldest dropped
  std::vector<Step> forward_;
};

}  // namespace circuit
