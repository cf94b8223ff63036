// Keys and words of checks and spots. Private to this room, but for what check.h declares.
#pragma once

#include "diagnosis/check.h"
#include "diagnosis/plant.h"

namespace diagnosis {

std::string check_id(const Check& check);                                 // from its fields
void word_check(const Case& the_case, const Plant& plant, Check& check);  // question, state, caution, words of choices

}  // namespace diagnosis
