// Everything the app knows between two frames, without a widget in it: the notebook, the open
// circuit's answer, the person's preferences, where we are, and what there is to say. A screen
// reads it and hands edits back through dispatch(); each change is stored before dispatch()
// returns.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/notebook.h"
#include "app/preferences.h"
#include "app/quick_inputs.h"
#include "app/records.h"
#include "app/results.h"
#include "app/route.h"
#include "app/trace.h"
#include "circuit/edit.h"
#include "platform/platform.h"
#include "reference/search.h"
#include "units/format.h"

namespace app {

// One line at the foot of the screen, until the next change, the next screen, or dismissed.
struct Toast {
  enum class Offer : std::uint8_t { none, undo_edit, put_back, put_back_trace };
  std::string text;                 // "Outlet C removed."
  Offer offer = Offer::none;
  std::uint32_t number = 0;         // put_back: the deleted circuit
};

class AppState {
 public:
  AppState(platform::Host& host, const std::vector<platform::StoredRecord>& stored, std::string_view route);
  AppState(const AppState&) = delete;
  AppState& operator=(const AppState&) = delete;

  // The open circuit. Ask has_circuit() first: a person may delete all of them.
  [[nodiscard]] bool has_circuit() const { return notebook_.open() != nullptr; }
  [[nodiscard]] const circuit::Circuit& circuit() const;
  [[nodiscard]] std::uint64_t revision() const { return revision_; }   // rises with every change
  // Applies, stores, remembers for undo. False when refused: problem() then says why, and
  // nothing has changed. Equal non-empty join keys in a row make one undo step.
  bool dispatch(const circuit::Edit& edit, std::string join_key = {});
  void end_join();                                   // the finger left the stepper
  [[nodiscard]] const std::string& problem() const { return problem_; }   // empty when none
  void clear_problem() { problem_.clear(); }
  void say_problem(std::string sentence);            // from a screen's own field
  [[nodiscard]] bool can_undo() const;
  [[nodiscard]] bool can_redo() const;
  [[nodiscard]] std::string undo_what() const;       // "remove outlet C"
  [[nodiscard]] std::string redo_what() const;
  void undo();
  void redo();

  // What follows from the open circuit.
  const sizing::Answer& answer();
  const sizing::Fixes& fixes(const tables::Conductor& size);
  const sizing::Candidate& judge(const tables::Conductor& size);
  const sizing::Reach& reach(const circuit::InHand& in_hand);
  // Takes a fix over: the first circuit replaces the open one, a second becomes one of its own.
  void use_fix(const sizing::Fix& fix);

  // Applies edits that belong together as one step of undo, all or none, and says so. False
  // when one was refused: problem() then says why.
  bool use_edits(const std::vector<circuit::Edit>& edits, const std::string& what);

  // Quick calculators: what was asked last, kept from start to start.
  [[nodiscard]] calculators::Values quick_values(const calculators::Calculator& calculator) const;
  void set_quick_values(const calculators::Calculator& calculator, const calculators::Values& values);

  // The reference pages in the person's units, and the search over them; made when first asked for.
  const reference::Book& book() const;
  const reference::SearchIndex& search_index() const;

  // The trace of the open circuit, or of a generic one when none is open.
  Trace& trace();
  void delete_trace(std::uint32_t number);           // a kept one of the open circuit; offered back
  void export_trace(std::uint32_t number);           // the same, as a page of plain text
  // The screen must not go dark while somebody lies under a van. Told to the host when it changes.
  void stay_awake(bool awake);

  // The notebook.
  [[nodiscard]] const Notebook& notebook() const { return notebook_; }
  void open_circuit(std::uint32_t number);           // and goes to Size
  void new_circuit();
  void duplicate_circuit(std::uint32_t number);
  // SetName, SetPlace or SetFusePosition of any stored circuit.
  bool relabel_circuit(std::uint32_t number, const circuit::Edit& edit, std::string join_key = {});
  void delete_circuit(std::uint32_t number);
  void put_back_circuit(std::uint32_t number);
  void move_circuit(std::uint32_t number, int by);
  void add_demo();
  void export_circuit(std::uint32_t number);         // a record that can not be read goes out as it is
  void export_all();                                 // every circuit that can be read
  void ask_for_import();
  void import_file(std::string_view name, std::string_view bytes);
  // Why the last file was not taken in; empty when it was.
  [[nodiscard]] const circuit::Problems& import_problems() const { return import_problems_; }
  [[nodiscard]] const std::string& import_name() const { return import_name_; }
  void clear_import_problems() { import_problems_.clear(); }

  // Preferences.
  [[nodiscard]] const Preferences& preferences() const { return preferences_; }
  void set_preferences(Preferences preferences);
  void surroundings_changed(const platform::Surroundings& surroundings);
  [[nodiscard]] const platform::Surroundings& surroundings() const { return surroundings_; }
  [[nodiscard]] bool dark() const;
  [[nodiscard]] units::Preference units() const;

  // Where we are.
  [[nodiscard]] const Route& route() const { return route_; }
  void go(const Route& route);                       // a step the back gesture takes back
  void replace_route(const Route& route);            // no step: the sheet turns into another
  void back();                                       // closes the sheet, then the screen
  // Told by the host. True: the back gesture was for what lies over the sheet or screen (a
  // keypad, a question), which is to be closed; we stay where we are.
  bool route_changed(std::string_view text);
  // How many such layers are open now: the first gets a step of its own for the back gesture.
  void layers_over(std::size_t count);

  // What there is to say.
  [[nodiscard]] const std::optional<Toast>& toast() const { return toast_; }
  [[nodiscard]] std::uint64_t toast_serial() const { return toast_serial_; }   // another toast, another serial
  void take_toast_offer();
  void dismiss_toast() { toast_.reset(); }
  [[nodiscard]] std::string store_trouble() const { return records_.trouble(); }
  void store_failed(std::string_view key, std::string_view why);
  void retry_store();
  [[nodiscard]] bool update_waiting() const { return update_waiting_; }
  void set_update_waiting() { update_waiting_ = true; }

 private:
  void changed();
  void say(std::string text, Toast::Offer offer = Toast::Offer::none, std::uint32_t number = 0);
  void land_on(const Route& route);
  bool step_back_to(const Route& route);
  [[nodiscard]] Route existing(Route route) const;
  [[nodiscard]] bool is_there(const Route& route) const;   // the calculator, page, row or card
  [[nodiscard]] std::string lookup_title() const;          // of what of those is shown; empty: none
  void show_title();
  bool edit_stored(std::uint32_t number, const circuit::Edit& edit, std::string join_key);

  platform::Host& host_;
  Records records_;
  Notebook notebook_;
  Preferences preferences_;
  platform::Surroundings surroundings_;
  Results results_;
  QuickInputs quick_;
  Trace trace_;
  bool awake_ = false;
  struct Lookup {
    explicit Lookup(units::Preference preference) : book(reference::make_book(preference)), index(book) {}
    reference::Book book;
    reference::SearchIndex index;
  };
  const Lookup& lookup() const;
  mutable std::unique_ptr<Lookup> lookup_;
  std::uint64_t revision_ = 1;
  std::string problem_;
  Route route_;
  std::vector<std::string> trail_;    // addresses we stepped through, the current one last
  bool layer_step_ = false;           // the host's last step is a layer's, with the same address
  bool taking_back_ = false;          // we asked the host to drop that step; its news is no news
  std::optional<Toast> toast_;
  std::uint64_t toast_serial_ = 0;
  circuit::Problems import_problems_;
  std::string import_name_;
  bool update_waiting_ = false;
};

// At most `most` code points of `text`, never half of one.
std::string first_characters(std::string_view text, std::size_t most);
// "bench-outlets": what a file may be called on any device.
std::string file_stem(std::string_view name);

}  // namespace app
