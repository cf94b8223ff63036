// What a person tells before a trace begins, kept at once: the tools in hand, for every circuit; the
// wire and fuse that are there and the outlets picked, for each.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "app/stored_texts.h"
#include "app/trace_record.h"

namespace app {

inline constexpr std::string_view kTraceToolsKey = "trace-tools";

class TraceSetup {
 public:
  TraceSetup(Records& records, const std::vector<platform::StoredRecord>& stored);

  // The circuit that fitted() and picked() are about.
  void open(std::uint32_t circuit);

  [[nodiscard]] const diagnosis::Tools& tools() const { return tools_; }
  void set_tools(const diagnosis::Tools& tools);   // remembered for the next trace

  [[nodiscard]] const FittedTold& fitted() const { return fitted_; }   // what was not told is not known
  void tell_fitted(const FittedTold& fitted);

  [[nodiscard]] const std::vector<circuit::OutletId>& picked() const { return picked_; }
  void pick(std::vector<circuit::OutletId> outlets);   // empty: none, once a trace began

  void forget_circuits_but(const std::vector<std::uint32_t>& numbers);

 private:
  Records& records_;
  StoredTexts fitted_texts_;
  StoredTexts picked_texts_;
  std::uint32_t circuit_ = 0;
  diagnosis::Tools tools_;
  FittedTold fitted_;
  std::vector<circuit::OutletId> picked_;
};

}  // namespace app
