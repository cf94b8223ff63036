#include "app/results.h"

#include "sizing/sizing.h"

namespace app {

void Results::follow(std::uint64_t revision) {
  if (revision == revision_) return;
  revision_ = revision;
  answer_.reset();
  fixes_.clear();
  judged_.clear();
  reach_for_.reset();
  reach_.reset();
}

const sizing::Answer& Results::answer(const circuit::Circuit& circuit) {
  if (!answer_) answer_ = sizing::size_circuit(circuit);
  return *answer_;
}

const sizing::Fixes& Results::fixes(const circuit::Circuit& circuit, const tables::Conductor& size) {
  const auto known = fixes_.find(size.id);
  if (known != fixes_.end()) return known->second;
  return fixes_.emplace(std::string(size.id), sizing::fixes(circuit, size)).first->second;
}

const sizing::Candidate& Results::judge(const circuit::Circuit& circuit, const tables::Conductor& size) {
  const auto known = judged_.find(size.id);
  if (known != judged_.end()) return known->second;
  return judged_.emplace(std::string(size.id), sizing::judge(circuit, size)).first->second;
}

const sizing::Reach& Results::reach(const circuit::Circuit& circuit, const circuit::InHand& in_hand) {
  const bool known = reach_ && reach_for_ && reach_for_->size == in_hand.size && reach_for_->fuse == in_hand.fuse;
  if (!known) {
    reach_for_ = in_hand;
    reach_ = sizing::reach(circuit, in_hand);
  }
  return *reach_;
}

}  // namespace app
