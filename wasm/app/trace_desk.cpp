#include "app/trace_desk.h"

#include <optional>
#include <utility>

#include "app/names.h"
#include "units/expect.h"

namespace app {
namespace {

circuit::Problems problems_of(const diagnosis::Case& frame) {
  diagnosis::Case any = frame;
  any.complaint = {diagnosis::Symptom::all_dead, {}};
  return diagnosis::problems(any);
}

std::optional<std::size_t> suspect_in(const Route& shown) {
  return shown.sheet == Sheet::trace_suspect ? std::optional<std::size_t>(shown.stored - 1) : std::nullopt;
}

}  // namespace

TraceDesk::TraceDesk(platform::Host& host, Records& records, Notebook& notebook, const Settings& settings,
                     Messages& messages, Navigator& navigator, const std::vector<platform::StoredRecord>& stored)
    : host_(host), notebook_(notebook), settings_(settings), messages_(messages), navigator_(navigator),
      shelf_(records, notebook, stored), setup_(records, stored) {
  const auto is_there = [&notebook](CircuitRef circuit) { return notebook.may_have(circuit); };
  shelf_.forget_but(is_there);
  setup_.forget_but(is_there);
}

void TraceDesk::settle(const Current& current, const Route& shown) {
  if (!(current == of_)) follow(current);
  if (trace_) trace_->settle(suspect_in(shown));
  keep_awake(running());
}

void TraceDesk::rest() { keep_awake(false); }

bool TraceDesk::settled() const { return trace_ == nullptr || trace_->settled(); }

void TraceDesk::follow(const Current& current) {
  of_ = current;
  trace_.reset();
  shelf_.open(current.circuit);
  setup_.open(current.circuit);
  frame_ = trace_frame(notebook_, current.circuit, settings_.units());
  problems_ = problems_of(frame_);
  const std::string* text = shelf_.running();
  const auto stored = text != nullptr ? read_running(*text) : std::nullopt;
  unreadable_ = text != nullptr && !stored;
  // With problems it is shown why, and it goes on when the circuit is right again.
  if (stored && problems_.empty()) trace_ = std::make_unique<Trace>(host_, shelf_, frame_, *stored);
}

void TraceDesk::keep_awake(bool awake) {
  if (awake == awake_) return;
  awake_ = awake;
  host_.keep_awake(awake);
}

std::string TraceDesk::start(diagnosis::Symptom symptom, std::vector<circuit::OutletId> outlets) {
  diagnosis::Case begun = frame_;
  begun.complaint = {symptom, std::move(outlets)};
  begun.tools = setup_.tools();
  const circuit::Problems problems = diagnosis::problems(begun);
  if (!problems.empty()) return circuit::one_line(problems.front());
  if (unreadable_) shelf_.put_running_aside();
  unreadable_ = false;
  stop();
  trace_ = std::make_unique<Trace>(host_, shelf_, std::move(begun));
  setup_.pick({});
  return {};
}

void TraceDesk::stop() {
  if (trace_) trace_->end();
  trace_.reset();
  host_.wake();
}

Trace& TraceDesk::trace() {
  BRANCHLIGHT_EXPECT(trace_ != nullptr);   // else: ask running() first
  return *trace_;
}

const Trace& TraceDesk::trace() const {
  BRANCHLIGHT_EXPECT(trace_ != nullptr);
  return *trace_;
}

void TraceDesk::delete_kept(std::uint32_t number) {
  if (shelf_.find_kept(number) == nullptr) return;
  shelf_.forget(number);
  navigator_.go(Route::at(Screen::trace));
  messages_.say("The record is deleted.", Toast::Offer::put_back_trace);
}

void TraceDesk::put_back_kept() {
  if (shelf_.put_back_forgotten()) messages_.say("The record is back.");
}

void TraceDesk::export_kept(std::uint32_t number) {
  const KeptTrace* kept = shelf_.find_kept(number);
  if (kept == nullptr) return;
  const std::string name = "trace-" + file_stem(kept->circuit) + "-" + kept->date + ".txt";
  host_.save_file(name, "text/plain", readable_text(*kept));
  messages_.say("Saved as " + name + ".");
}

}  // namespace app
