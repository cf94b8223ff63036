// What can be done with stored vehicles and their circuits as a whole: opened, made, copied, deleted and
// put back, ordered, and taken out to files and in again.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "app/editor.h"
#include "app/messages.h"
#include "app/navigator.h"
#include "app/notebook.h"
#include "app/settings.h"
#include "platform/platform.h"

namespace app {

class NotebookDesk {
 public:
  NotebookDesk(platform::Host& host, Notebook& notebook, const Settings& settings, Messages& messages,
               Navigator& navigator, Editor& editor);
  NotebookDesk(const NotebookDesk&) = delete;
  NotebookDesk& operator=(const NotebookDesk&) = delete;

  [[nodiscard]] const Notebook& notebook() const { return notebook_; }

  void open_circuit(CircuitRef circuit);             // and goes to Size
  void new_circuit();                                // in the open vehicle; where there is none, in a new one
  void new_circuit_in(std::uint32_t vehicle, vehicle::BlockId block, std::optional<int> position = std::nullopt);
  void duplicate_circuit(CircuitRef circuit);
  void delete_circuit(CircuitRef circuit);
  void move_circuit(CircuitRef circuit, int by);     // in its vehicle's list

  void new_vehicle(circuit::Setting kind);
  void add_demo();
  void duplicate_vehicle(std::uint32_t vehicle);
  void delete_vehicle(std::uint32_t vehicle);
  void move_vehicle(std::uint32_t vehicle, int by);

  void delete_unread(std::uint32_t number);
  void put_back(std::uint32_t deleted);              // the number that Notebook::deleted() has it under

  void export_circuit(CircuitRef circuit);           // with what feeds it, as a vehicle of its own
  void export_vehicle(std::uint32_t vehicle);
  void export_unread(std::uint32_t number);          // as it is
  void export_all();                                 // every vehicle that can be read
  void ask_for_import();
  void import_file(std::string_view name, std::string_view bytes);   // told by the host
  // Why the last file was not taken in; empty when it was.
  [[nodiscard]] const circuit::Problems& import_problems() const { return import_problems_; }
  void clear_import_problems() { import_problems_.clear(); }

 private:
  // Added at the top and opened on Size; a full notebook takes no more, and says so.
  bool add(const vehicle::Vehicle& vehicle, bool own);
  void add_circuit(std::uint32_t vehicle, vehicle::BlockId block, std::optional<int> position, circuit::Circuit plan);
  void offer_back(const std::string& name, std::uint32_t deleted);
  void save(const std::string& stem, const std::string& text);
  [[nodiscard]] tables::GaugeSystem usual_gauge() const;
  [[nodiscard]] std::uint32_t home() const;          // where a new circuit goes; 0: a vehicle has to be made

  platform::Host& host_;
  Notebook& notebook_;
  const Settings& settings_;
  Messages& messages_;
  Navigator& navigator_;
  Editor& editor_;
  circuit::Problems import_problems_;
};

}  // namespace app
