// A request to trace, read: the case, what was answered so far, and what is asked for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "diagnosis/tracer.h"
#include "probe/request.h"

namespace probe {

// Wire and fuse as told; what was not is not known.
struct Fitted {
  const tables::Conductor* size = nullptr;
  const tables::Conductor* tail = nullptr;   // nullptr: as size
  std::optional<units::Amperes> fuse;
};

// One item of "told": a check with its answer, or a remedy with its re-test.
struct Said {
  bool remedy = false;
  std::string id;
  diagnosis::Answer answer;
  diagnosis::RetestResult result = diagnosis::RetestResult::same;
};

struct TraceRequest {
  diagnosis::Case the_case;
  Fitted fitted;
  std::vector<Said> told;
  std::size_t suspects = 8;   // at most
  bool list_checks = false;
};

// Refuses what is no request, and a case that can not be traced.
TraceRequest read_trace_request(const Json& request);

}  // namespace probe
