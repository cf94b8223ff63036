#include "app/results.h"

#include "sizing/sizing.h"
#include "tables/fuse.h"
#include "units/expect.h"

namespace app {
namespace {

bool has_ladder(const sizing::Answer& answer) {
  return answer.verdict != sizing::Verdict::no_load && answer.verdict != sizing::Verdict::invalid;
}

// The size whose fixes are shown: the address names it, else the one just under the answer, else the
// thickest the shop has.
const tables::Conductor* what_if_size(const circuit::Circuit& circuit, const sizing::Answer& answer,
                                      const tables::Conductor* nearest, const Route& shown) {
  const tables::Conductor* named = tables::conductor_by_id(shown.size);
  if (named != nullptr && named->system == circuit.wiring.gauge) return named;
  if (!answer.chosen) return nearest;
  return *answer.chosen > 0 ? answer.ladder[*answer.chosen - 1].size : nullptr;
}

// What was told, else the answer, else a common wire and fuse.
circuit::InHand start_in_hand(const circuit::Circuit& circuit, const sizing::Candidate* choice) {
  if (circuit.in_hand) return *circuit.in_hand;
  const auto ratings = tables::fuse_family(circuit.wiring.fuse_family).ratings_a;
  circuit::InHand in_hand;
  in_hand.size = choice != nullptr ? std::string(choice->size->id)
                                   : std::string(tables::conductors(circuit.wiring.gauge)[2].id);
  in_hand.fuse = choice != nullptr && choice->fuse ? *choice->fuse : units::Amperes(ratings[ratings.size() / 2]);
  return in_hand;
}

}  // namespace

const sizing::Answer& Results::answer() const {
  BRANCHLIGHT_EXPECT(answer_.has_value());
  return *answer_;
}

void Results::follow(const Current& current) {
  if (current == of_) return;
  *this = Results();
  of_ = current;
}

void Results::work_out(const Current& current, const circuit::Circuit* circuit, const Route& shown) {
  follow(current);
  if (circuit == nullptr) return;
  if (!answer_) {
    answer_ = sizing::size_circuit(*circuit);
    nearest_ = sizing::nearest_size(*circuit, *answer_);
  }
  if (answer_->verdict == sizing::Verdict::invalid) return;
  switch (shown.sheet) {
    case Sheet::why: return judge_in_hand(*circuit, tables::conductor_by_id(shown.size), false);
    case Sheet::what_if:
      return judge_in_hand(*circuit, has_ladder(*answer_) ? what_if_size(*circuit, *answer_, nearest_, shown) : nullptr, true);
    case Sheet::reach: return work_out_reach(*circuit);
    default: return follow_the_volts(*circuit);
  }
}

void Results::follow_the_volts(const circuit::Circuit& circuit) {
  const sizing::Candidate* choice = answer_->choice();
  if (volts_ || choice == nullptr) return;
  volts_ = sizing::where_volts_go(circuit, *choice);
  wire_only_ = sizing::wire_only_size(circuit, *choice);
}

void Results::judge_in_hand(const circuit::Circuit& circuit, const tables::Conductor* size, bool with_fixes) {
  if (size != in_hand_) {
    in_hand_ = size;
    judged_.reset();
    fixes_.reset();
  }
  if (size == nullptr) return;
  if (!judged_) judged_ = sizing::judge(circuit, *size);
  if (with_fixes && !fixes_) fixes_ = sizing::fixes(circuit, *size);
}

void Results::work_out_reach(const circuit::Circuit& circuit) {
  if (reach_) return;
  reach_of_ = start_in_hand(circuit, answer_->choice());
  reach_ = sizing::reach(circuit, reach_of_);
}

}  // namespace app
