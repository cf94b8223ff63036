// What is computed from the open circuit, each once per revision and only when a screen asks.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "circuit/circuit.h"
#include "sizing/answer.h"
#include "sizing/fixes.h"

namespace app {

class Results {
 public:
  // Forgets everything when the revision is another one.
  void follow(std::uint64_t revision);
  const sizing::Answer& answer(const circuit::Circuit& circuit);
  const sizing::Fixes& fixes(const circuit::Circuit& circuit, const tables::Conductor& size);
  const sizing::Candidate& judge(const circuit::Circuit& circuit, const tables::Conductor& size);
  const sizing::Reach& reach(const circuit::Circuit& circuit, const circuit::InHand& in_hand);

 private:
  std::uint64_t revision_ = 0;
  std::optional<sizing::Answer> answer_;
  std::map<std::string, sizing::Fixes, std::less<>> fixes_;        // by conductor id
  std::map<std::string, sizing::Candidate, std::less<>> judged_;
  std::optional<circuit::InHand> reach_for_;
  std::optional<sizing::Reach> reach_;
};

}  // namespace app
