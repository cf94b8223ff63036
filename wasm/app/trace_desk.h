// Tracing at the open circuit, or at a plain one where none is open: what is told before, the trace
// that runs, those that were ended, and the screen kept awake.
#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "app/messages.h"
#include "app/navigator.h"
#include "app/notebook.h"
#include "app/revision.h"
#include "app/settings.h"
#include "app/trace.h"
#include "app/trace_frame.h"
#include "app/trace_setup.h"
#include "app/trace_shelf.h"

namespace app {

class TraceDesk {
 public:
  TraceDesk(platform::Host& host, Records& records, Notebook& notebook, const Settings& settings,
            Messages& messages, Navigator& navigator, const std::vector<platform::StoredRecord>& stored);
  TraceDesk(const TraceDesk&) = delete;
  TraceDesk& operator=(const TraceDesk&) = delete;

  // Before a frame that shows Trace: follows the open circuit, and works out what it shows. All below
  // is of the circuit then. A trace that runs goes on with the circuit as it is now.
  void settle(const Current& current, const Route& shown);
  void rest();                              // a frame shows something else: the screen may go dark
  [[nodiscard]] bool settled() const;       // false: something was answered since

  [[nodiscard]] const diagnosis::Case& frame() const { return frame_; }
  [[nodiscard]] const circuit::Problems& problems() const { return problems_; }   // why it can not be traced
  [[nodiscard]] const TraceSetup& setup() const { return setup_; }
  void set_tools(const diagnosis::Tools& tools) { setup_.set_tools(tools); }
  void pick(std::vector<circuit::OutletId> outlets) { setup_.pick(std::move(outlets)); }

  // Why not, in a sentence; empty when it began. One that runs is ended and kept first.
  std::string start(diagnosis::Symptom symptom, std::vector<circuit::OutletId> outlets);
  void stop();                              // kept when anything was answered
  [[nodiscard]] bool running() const { return trace_ != nullptr; }
  [[nodiscard]] Trace& trace();             // ask running() first
  [[nodiscard]] const Trace& trace() const;
  // One was left off here that this app can not read. It is never written over: a new one puts it aside.
  [[nodiscard]] bool unreadable() const { return unreadable_; }

  [[nodiscard]] const TraceShelf& shelf() const { return shelf_; }   // the kept ones of this circuit
  void delete_kept(std::uint32_t number);   // offered back
  void put_back_kept();
  void export_kept(std::uint32_t number);   // as a page of plain text

 private:
  void follow(const Current& current);
  void keep_awake(bool awake);

  platform::Host& host_;
  Notebook& notebook_;
  const Settings& settings_;
  Messages& messages_;
  Navigator& navigator_;
  TraceShelf shelf_;
  TraceSetup setup_;
  Current of_;                              // what all this is of
  diagnosis::Case frame_;
  circuit::Problems problems_;
  std::unique_ptr<Trace> trace_;
  bool unreadable_ = false;
  bool awake_ = false;
};

}  // namespace app
