// A kept record led through again on a circuit that may have been edited since.
#include "diagnosis/tracer.h"
#include "diagnosis/words.h"

namespace diagnosis {

Replay replay(const Case& frame, const Record& record) {
  std::vector<std::string> dropped;
  Case the_case = frame;
  the_case.neighbours = record.neighbours;
  the_case.complaint = record.complaint;
  the_case.tools = record.tools;
  the_case.out_of_reach = record.out_of_reach;
  std::erase_if(the_case.complaint.outlets, [&](circuit::OutletId id) {
    const circuit::Outlet* outlet = circuit::find_outlet(frame.circuit, id);
    if (outlet != nullptr && has_socket(*outlet)) return false;
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
      const RetestResult result = entry.answer.key == AnswerKey::works           ? RetestResult::works
                                  : entry.answer.key == AnswerKey::same          ? RetestResult::same
                                  : entry.answer.key == AnswerKey::blows_at_once ? RetestResult::blew
                                                                                 : RetestResult::cant;
      receipt = tracer.after_remedy(entry.id, result);
    }
    if (!receipt.taken) dropped.push_back(joined({"\"", entry.id, "\" no longer applies to this circuit."}));
  }
  return {std::move(tracer), std::move(dropped)};
}

}  // namespace diagnosis
