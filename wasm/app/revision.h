// What is current: everything worked out or laid out remembers the Current that it was made for, and
// is made again when that is another one.
#pragma once

#include <cstdint>

#include "app/circuit_ref.h"

namespace app {

struct Current {
  std::uint64_t revision = 0;           // 0: none yet
  CircuitRef circuit;                   // the open one
  friend bool operator==(const Current&, const Current&) = default;
};

// Counts the changes of what is shown: of circuits, and of what they are shown in.
class Revision {
 public:
  [[nodiscard]] std::uint64_t now() const { return now_; }
  void raise() { ++now_; }

 private:
  std::uint64_t now_ = 1;
};

}  // namespace app
