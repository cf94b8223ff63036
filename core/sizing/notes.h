// Cautions that belong beside an answer: short, and only those that apply.
#pragma once

#include <string>
#include <vector>

#include "sizing/answer.h"
#include "sizing/context.h"

namespace sizing {

std::vector<std::string> notes_for(const Context& context, const Candidate& choice);

// What a short at the block could draw: full battery, cold feeder, nothing else in the way.
units::Amperes short_at_block(const Context& context);

}  // namespace sizing
