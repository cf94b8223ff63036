// Everything the app knows between two frames, without a widget in it: its parts by name, each with
// one subject, and what ties them together. A screen takes the part that it needs.
//
// settle() comes before each frame. It works out what the frame shows; while it is drawn, the parts
// only give what is there. What a person changes in the middle of a frame is stored at once, and what
// follows from it is shown by the next.
#pragma once

#include <string_view>
#include <vector>

#include "app/editor.h"
#include "app/lookup.h"
#include "app/messages.h"
#include "app/navigator.h"
#include "app/notebook_desk.h"
#include "app/results.h"
#include "app/settings.h"
#include "app/trace_desk.h"

namespace app {

class AppState {
 public:
  // `places`: of wasm/screens; `stored`: everything the host keeps; `route`: the address after '#', maybe empty.
  AppState(platform::Host& host, const Places& places, const std::vector<platform::StoredRecord>& stored,
           std::string_view route);
  AppState(const AppState&) = delete;
  AppState& operator=(const AppState&) = delete;

  void settle();
  [[nodiscard]] bool settled() const;                // false: changed since, another frame is wanted
  // What was settled for, and so what this frame shows; Navigator::route() may be on its way elsewhere.
  [[nodiscard]] const Route& shown() const { return shown_; }
  [[nodiscard]] const Results& results() const { return results_; }
  void take_offer();                                 // of the toast, which goes

  [[nodiscard]] Messages& messages() { return messages_; }
  [[nodiscard]] const Messages& messages() const { return messages_; }
  [[nodiscard]] Settings& settings() { return settings_; }
  [[nodiscard]] const Settings& settings() const { return settings_; }
  [[nodiscard]] Lookup& lookup() { return lookup_; }
  [[nodiscard]] const Lookup& lookup() const { return lookup_; }
  [[nodiscard]] Navigator& navigator() { return navigator_; }
  [[nodiscard]] const Navigator& navigator() const { return navigator_; }
  [[nodiscard]] Editor& editor() { return editor_; }
  [[nodiscard]] const Editor& editor() const { return editor_; }
  [[nodiscard]] NotebookDesk& desk() { return desk_; }
  [[nodiscard]] const NotebookDesk& desk() const { return desk_; }
  [[nodiscard]] TraceDesk& trace_desk() { return trace_desk_; }
  [[nodiscard]] const TraceDesk& trace_desk() const { return trace_desk_; }

 private:
  // In the order in which they know of each other.
  Records records_;
  std::vector<platform::StoredRecord> start_;        // what was stored, for those below; empty afterwards
  Revision revision_;
  Messages messages_;
  Notebook notebook_;
  Settings settings_;
  Lookup lookup_;
  Navigator navigator_;
  Editor editor_;
  NotebookDesk desk_;
  TraceDesk trace_desk_;
  Results results_;
  Current settled_;
  Route shown_;
};

}  // namespace app
