// Answers looked at before they are taken, and sentences that explain. Private to this room.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "diagnosis/tracer.h"

namespace diagnosis {

Receipt judge_answer(const Case& the_case, double emf_v, const Check& check, const Answer& answer);
std::string outlook_words(const Case& the_case, const Outlook& outlook);
std::string why_words(const Case& the_case, const std::vector<Outlook>& outlooks);
std::string remedy_words(double probability);
std::string evidence_words(const Case& the_case, const Check& check, const Answer& seen,
                           std::optional<double> predicted);

}  // namespace diagnosis
