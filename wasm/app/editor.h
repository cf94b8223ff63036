// Edits of circuits: applied or refused with the reason, stored before they return, and remembered
// for undo. Nearly all are of the open circuit.
#pragma once

#include <string>
#include <vector>

#include "app/messages.h"
#include "app/navigator.h"
#include "app/notebook.h"
#include "app/revision.h"
#include "circuit/edit.h"
#include "platform/platform.h"
#include "sizing/fixes.h"

namespace app {

class Editor {
 public:
  Editor(platform::Host& host, Notebook& notebook, Messages& messages, Navigator& navigator, Revision& revision);
  Editor(const Editor&) = delete;
  Editor& operator=(const Editor&) = delete;

  // The open circuit. Ask has_circuit() first: a person may delete all of them.
  [[nodiscard]] bool has_circuit() const { return notebook_.open() != nullptr; }
  [[nodiscard]] const circuit::Circuit& circuit() const;
  [[nodiscard]] std::uint64_t revision() const { return revision_.now(); }   // rises with every change
  [[nodiscard]] Current current() const;

  // False when refused: Messages::problem() then says why, and nothing has changed. Equal non-empty
  // join keys in a row make one undo step.
  bool dispatch(const circuit::Edit& edit, std::string join_key = {});
  void end_join();                                   // the finger left the stepper
  // Edits that belong together, as one step of undo: all or none. `what` says it: "use 10 A at outlet C".
  bool use_edits(const std::vector<circuit::Edit>& edits, const std::string& what);
  // Takes a fix over: the first circuit replaces the open one, a second becomes one of its own.
  void use_fix(const sizing::Fix& fix);
  // SetName, SetPlace or SetFusePosition of any stored circuit.
  bool relabel(std::uint32_t number, const circuit::Edit& edit, std::string join_key = {});

  [[nodiscard]] bool can_undo() const;
  [[nodiscard]] bool can_redo() const;
  [[nodiscard]] std::string undo_what() const;       // "remove outlet C"
  [[nodiscard]] std::string redo_what() const;
  void undo();
  void redo();

  // After any change of the notebook: counted, what was said before is past, and another frame is due.
  void circuits_changed();

 private:
  platform::Host& host_;
  Notebook& notebook_;
  Messages& messages_;
  Navigator& navigator_;
  Revision& revision_;
};

}  // namespace app
