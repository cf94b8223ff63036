// What a person tells before a trace begins, kept at once: the tools in hand, for every circuit; the
// outlets picked, for each. The wire and fuse that are there stand in the vehicle.
#pragma once

#include <functional>
#include <string_view>
#include <vector>

#include "app/stored_texts.h"
#include "app/trace_record.h"

namespace app {

inline constexpr std::string_view kTraceToolsKey = "trace-tools";

class TraceSetup {
 public:
  TraceSetup(Records& records, const std::vector<platform::StoredRecord>& stored);

  // The circuit that picked() is about.
  void open(CircuitRef circuit);

  [[nodiscard]] const diagnosis::Tools& tools() const { return tools_; }
  void set_tools(const diagnosis::Tools& tools);   // remembered for the next trace

  [[nodiscard]] const std::vector<circuit::OutletId>& picked() const { return picked_; }
  void pick(std::vector<circuit::OutletId> outlets);   // empty: none, once a trace began

  void forget_but(const std::function<bool(CircuitRef)>& is_there) { picked_texts_.forget_but(is_there); }

 private:
  Records& records_;
  StoredTexts picked_texts_;
  CircuitRef circuit_;
  diagnosis::Tools tools_;
  std::vector<circuit::OutletId> picked_;
};

}  // namespace app
