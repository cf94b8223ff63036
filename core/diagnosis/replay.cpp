// A kept record led through again on a circuit that may have been edited since.
#include "diagnosis/tracer.h"
#include "diagnosis/words.h"

namespace diagnosis {

Replay replay(const circuit::Circuit& circuit, const network::Fitted& fitted, const Record& record, bool fuse_told) {
  std::vector<std::string> dropped;
  Case the_case{circuit, fitted, record.neighbours, record.complaint, record.tools, record.out_of_reach, fuse_told};
  std::erase_if(the_case.complaint.outlets, [&](circuit::OutletId id) {
    if (circuit::find_outlet(circuit, id) != nullptr) return false;
    dropped.push_back(joined({"The complaint named outlet ", std::to_string(id.number), ", which is gone."}));
    return true;
  });
  if (the_case.complaint.outlets.empty() && symptom_row(the_case.complaint.symptom).names_outlets) {
    the_case.complaint.symptom = Symptom::all_dead;
  }
  if (the_case.complaint.symptom == Symptom::several_dead && the_case.complaint.outlets.size() == 1) {
    the_case.complaint.symptom = Symptom::one_dead;
  }
  Tracer tracer(std::move(the_case));
  for (const Entry& entry : record.entries) {
    Receipt receipt;
    if (entry.kind == EntryKind::check) {
      receipt = tracer.observe(entry.id, entry.answer);
    } else {
      const RetestResult result = entry.answer.word == "works" ? RetestResult::works
                                  : entry.answer.word == "same" ? RetestResult::same
                                                                : RetestResult::cant;
      receipt = tracer.after_remedy(entry.id, result);
    }
    if (!receipt.taken) dropped.push_back(joined({"\"", entry.id, "\" no longer applies to this circuit."}));
  }
  return {std::move(tracer), std::move(dropped)};
}

}  // namespace diagnosis
