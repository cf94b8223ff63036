// Model-based fault finding. A value: copy it to look ahead, keep its record to come back.
//
//   Tracer tracer(the_case);
//   while (true) {
//     const Advice advice = tracer.next();
//     if (advice.kind == AdviceKind::check)  tracer.observe(advice.check->id, answer);
//     if (advice.kind == AdviceKind::remedy) tracer.after_remedy(advice.remedy->id, RetestResult::works);
//     ...
//   }
//
// The posterior is exact Bayes over the hypotheses of fault.h, their sizes, and a set of likely
// pairs. Answers are taken as independent given the fault. Same input, same output, to the bit.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnosis/case.h"
#include "diagnosis/check.h"
#include "diagnosis/fault.h"
#include "diagnosis/record.h"
#include "diagnosis/remedy.h"

namespace diagnosis {

// One of the answers to a check, for "what would this mean".
struct Outlook {
  AnswerKey key = AnswerKey::unknown;  // the Choice's
  double probability = 0.0;            // as things stand
  std::vector<Fault> cleared;          // suspects that would fall under a tenth of what they are, likeliest first
  std::vector<Fault> raised;           // that would more than double
  std::string words;                   // "Clears the fuse and the clamps; points at the black splice at C."
};

enum class AdviceKind {
  check,        // `check`, with `outlooks`
  remedy,       // sure enough: `remedy`
  cannot_tell,  // nothing left tells the rest apart: `to_try` in that order; `remedy` is the first
  none_fits,    // the evidence contradicts every fault known here: `odd_entry`, if there is one
  finished,     // a remedy was made and the re-test was good
};
struct Advice {
  AdviceKind kind = AdviceKind::check;
  std::string words;  // one sentence that says why
  std::optional<Check> check;
  std::vector<Outlook> outlooks;  // by choice
  std::optional<Remedy> remedy;
  std::vector<Remedy> to_try;
  std::optional<std::size_t> odd_entry;  // index into record().entries: the answer to take again
  double probability = 0.0;              // of the remedy advised
  std::string warning;                   // what must stop at once, as things stand; may be empty
};

struct Evidence {
  std::size_t entry = 0;    // index into record().entries
  bool speaks_for = false;  // more than twice as likely as the average, or less than half
  std::string words;        // "Lamp in C, red splice to bus: 12.6 V seen, 12.6 V predicted."
};
struct Suspect {
  Fault fault;                // for a pair: the one still to be put right
  std::optional<Fault> with;  // second fault of a pair
  double probability = 0.0;
  std::string words;
  std::string remedy_id;
};

// blew: the fuse put in blew; that says more than that nothing changed. cant: could not be done; the suspect stays.
enum class RetestResult { works, same, blew, cant };

// What came of an answer.
struct Receipt {
  bool taken = false;
  std::string words;  // why not, or what is odd about it: "60 V is more than a 12 V circuit can have."
};

class Tracer {
 public:
  explicit Tracer(Case the_case);  // the case has no problems()
  ~Tracer();
  Tracer(const Tracer&);
  Tracer& operator=(const Tracer&);
  Tracer(Tracer&&) noexcept;
  Tracer& operator=(Tracer&&) noexcept;

  [[nodiscard]] const Case& the_case() const;
  [[nodiscard]] const Record& record() const;

  // Every check that exists for this case, tools and reach or not; and one by its id.
  [[nodiscard]] std::vector<Check> all_checks() const;
  [[nodiscard]] std::optional<Check> find_check(std::string_view id) const;

  [[nodiscard]] Advice next() const;  // computed at the first call after a change, then kept
  [[nodiscard]] std::vector<Suspect> suspects(std::size_t at_most = 8) const;  // likeliest first
  [[nodiscard]] double probability(const Fault& fault) const;                  // as single fault
  [[nodiscard]] double total() const;                                          // sum over everything: 1
  [[nodiscard]] std::vector<Evidence> evidence(const Suspect& suspect) const;
  // What the check would read under this fault, typical size; nullopt for words without a number.
  [[nodiscard]] std::optional<double> predicted(const Fault& fault, std::string_view check_id) const;
  // Probability of each of the check's choices under this fault, human error included.
  [[nodiscard]] std::vector<double> likelihood(const Fault& fault, std::string_view check_id) const;
  // Minutes from the state and place the last entry left: fuse in or out, what is plugged, the way there.
  [[nodiscard]] double minutes(const Check& check) const;

  // A reading that can not be is not taken, and the receipt says why. An odd one is taken and told.
  Receipt observe(std::string_view check_id, const Answer& answer);
  Receipt after_remedy(std::string_view remedy_id, RetestResult result);
  bool undo();                                              // false: nothing to undo
  Receipt retake(std::size_t entry, const Answer& answer);  // another answer in place of that one

 private:
  struct Work;
  std::unique_ptr<Work> work_;
};

// A kept record on a circuit that may have been edited since: what no longer applies is dropped and
// named. Circuit, what is built of it and the colours are the frame's; tools, complaint, reach and neighbours
// are the record's.
struct Replay {
  Tracer tracer;
  std::vector<std::string> dropped;  // "Measured at outlet 4, which is gone."
};
Replay replay(const Case& frame, const Record& record);

}  // namespace diagnosis
