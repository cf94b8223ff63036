#include "app/trace_setup.h"

#include <utility>

namespace app {

TraceSetup::TraceSetup(Records& records, const std::vector<platform::StoredRecord>& stored)
    : records_(records), picked_texts_(records, stored, "picked"),
      tools_(read_tools(text_of(stored, kTraceToolsKey))) {}

void TraceSetup::open(CircuitRef circuit) {
  circuit_ = circuit;
  const std::string* picked = picked_texts_.find(picked_texts_.key(circuit));
  picked_ = picked != nullptr ? read_outlets(*picked) : std::vector<circuit::OutletId>{};
}

void TraceSetup::set_tools(const diagnosis::Tools& tools) {
  tools_ = tools;
  records_.store(kTraceToolsKey, write_tools(tools));
}

void TraceSetup::pick(std::vector<circuit::OutletId> outlets) {
  if (outlets == picked_) return;
  picked_ = std::move(outlets);
  const std::string key = picked_texts_.key(circuit_);
  if (picked_.empty()) picked_texts_.remove(key);
  else picked_texts_.store(key, write_outlets(picked_));
}

}  // namespace app
