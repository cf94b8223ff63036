// The answers to each kind of request.
#pragma once

#include "probe/request.h"

namespace probe {

Json size_answer(const Json& request);
Json solve_answer(const Json& request);
Json trace_answer(const Json& request);
Json check_document_answer(const Json& request);
Json problems_json(const circuit::Problems& problems);

}  // namespace probe
