// Edits of vehicles and their circuits: applied or refused with the reason, stored before they return,
// and remembered for undo. Nearly all are of the open circuit.
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
#include "vehicle/edit.h"

namespace app {

class Editor {
 public:
  Editor(platform::Host& host, Notebook& notebook, Messages& messages, Navigator& navigator, Revision& revision);
  Editor(const Editor&) = delete;
  Editor& operator=(const Editor&) = delete;

  // The open circuit, as its vehicle feeds it. Ask has_circuit() first: a person may delete all of them.
  [[nodiscard]] bool has_circuit() const { return notebook_.open_circuit() != nullptr; }
  [[nodiscard]] const circuit::Circuit& circuit() const;
  [[nodiscard]] const vehicle::PlacedCircuit& placed() const;   // the same in its vehicle: its plan, what is built
  // The vehicle that is open: ask has_vehicle() first. It may have no circuit.
  [[nodiscard]] bool has_vehicle() const { return notebook_.open_vehicle() != nullptr; }
  [[nodiscard]] const vehicle::Vehicle& vehicle() const;
  [[nodiscard]] std::uint64_t revision() const { return revision_.now(); }   // rises with every change
  [[nodiscard]] Current current() const { return {revision_.now(), notebook_.open()}; }

  // Of the open circuit. False when refused: Messages::problem() then says why, and nothing has changed.
  // Equal non-empty join keys in a row make one undo step.
  bool dispatch(const circuit::Edit& edit, std::string join_key = {});
  void end_join();                                   // the finger left the stepper
  // Edits of the open circuit that belong together, as one step of undo: all or none. `what` says it:
  // "use 10 A at outlet C".
  bool use_edits(const std::vector<circuit::Edit>& edits, const std::string& what);
  // Takes a fix over: the first circuit replaces the open one, a second gets a position of its own.
  void use_fix(const sizing::Fix& fix);
  // What the open circuit is told to be built of; nullopt: nothing.
  bool tell_built(std::optional<vehicle::Built> built, std::string join_key = {});
  // Of any stored vehicle, or a circuit in it.
  bool change(std::uint32_t vehicle, const vehicle::Edit& edit, std::string join_key = {});
  bool relabel(CircuitRef circuit, const circuit::Edit& edit, std::string join_key = {});

  // Steps of the open vehicle. Going back opens the circuit that was changed.
  [[nodiscard]] bool can_undo() const { return has_vehicle() && notebook_.open_vehicle()->history.can_undo(); }
  [[nodiscard]] bool can_redo() const { return has_vehicle() && notebook_.open_vehicle()->history.can_redo(); }
  [[nodiscard]] std::string undo_what() const;       // "remove outlet C"
  [[nodiscard]] std::string redo_what() const;
  void undo() { step(true); }
  void redo() { step(false); }

  // After any change of the notebook: counted, what was said before is past, and another frame is due.
  void vehicles_changed();

 private:
  bool put(const Stored& stored, vehicle::Vehicle after, std::string what, std::string join_key);
  void step(bool back);

  platform::Host& host_;
  Notebook& notebook_;
  Messages& messages_;
  Navigator& navigator_;
  Revision& revision_;
};

}  // namespace app
