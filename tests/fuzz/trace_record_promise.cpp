#include "fuzz/trace_record_promise.h"

#include <cmath>

#include "app/trace_record.h"
#include "tables/conductor.h"
#include "diagnosis/tracer.h"

namespace {

// Replaying weighs every scenario anew for each answer: longer ones are read and written only.
constexpr std::size_t kReplayed = 12;

std::string broken_replay(const diagnosis::Record& record) {
  const diagnosis::Case plain = diagnosis::generic_case(tables::GaugeSystem::metric);
  diagnosis::Case asked = plain;
  asked.neighbours = record.neighbours;
  asked.complaint = record.complaint;
  asked.tools = record.tools;
  asked.out_of_reach = record.out_of_reach;
  if (!diagnosis::problems(asked).empty()) return {};   // the app refuses it in words
  const diagnosis::Replay again = diagnosis::replay(plain, record);
  if (std::abs(again.tracer.total() - 1.0) > 1e-9) return "a trace gone on with does not weigh one";
  if (again.tracer.record().entries.size() + again.dropped.size() < record.entries.size()) return "an answer lost without a word";
  return {};
}

}  // namespace

std::string broken_trace_promise(std::string_view text) {
  if (const auto running = app::read_running(text)) {
    const std::string written = app::write_running(*running);
    const auto again = app::read_running(written);
    if (!again) return "a running trace that was written is not read back";
    if (app::write_running(*again) != written) return "a running trace written twice, two texts";
    if (running->record.entries.size() <= kReplayed) {
      if (const std::string broken = broken_replay(running->record); !broken.empty()) return broken;
    }
  }
  if (const auto kept = app::read_kept(text)) {
    const std::string written = app::write_kept(*kept);
    const auto again = app::read_kept(written);
    if (!again) return "a kept trace that was written is not read back";
    if (app::write_kept(*again) != written) return "a kept trace written twice, two texts";
  }
  const app::FittedTold fitted = app::read_fitted(text);
  if (!fitted.size.empty() && tables::conductor_by_id(fitted.size) == nullptr) return "a wire is fitted that is in no table";
  if (!(fitted.fuse_a >= 0.0 && fitted.fuse_a <= 1000.0)) return "a fuse is fitted that is none";
  const diagnosis::Tools tools = app::read_tools(text);
  if (!(app::read_tools(app::write_tools(tools)) == tools)) return "tools, written, are not read back";
  return {};
}
