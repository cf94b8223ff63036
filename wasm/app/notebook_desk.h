// What can be done with stored circuits as a whole: opened, made, copied, deleted and put back,
// ordered, and taken out to files and in again.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "app/editor.h"
#include "app/messages.h"
#include "app/navigator.h"
#include "app/notebook.h"
#include "app/settings.h"
#include "circuit/edit.h"
#include "platform/platform.h"

namespace app {

class NotebookDesk {
 public:
  NotebookDesk(platform::Host& host, Notebook& notebook, const Settings& settings, Messages& messages,
               Navigator& navigator, Editor& editor);
  NotebookDesk(const NotebookDesk&) = delete;
  NotebookDesk& operator=(const NotebookDesk&) = delete;

  [[nodiscard]] const Notebook& notebook() const { return notebook_; }

  void open_circuit(std::uint32_t number);           // and goes to Size
  void new_circuit();
  void add_demo();
  void duplicate_circuit(std::uint32_t number);
  void delete_circuit(std::uint32_t number);
  void put_back_circuit(std::uint32_t number);
  void move_circuit(std::uint32_t number, int by);

  void export_circuit(std::uint32_t number);         // a record that can not be read goes out as it is
  void export_all();                                 // every circuit that can be read
  void ask_for_import();
  void import_file(std::string_view name, std::string_view bytes);   // told by the host
  // Why the last file was not taken in; empty when it was.
  [[nodiscard]] const circuit::Problems& import_problems() const { return import_problems_; }
  void clear_import_problems() { import_problems_.clear(); }

 private:
  // Added at the top and opened on Size; a full notebook takes no more, and says so.
  bool add(const circuit::Circuit& circuit, bool own);
  [[nodiscard]] tables::GaugeSystem usual_gauge() const;

  platform::Host& host_;
  Notebook& notebook_;
  const Settings& settings_;
  Messages& messages_;
  Navigator& navigator_;
  Editor& editor_;
  circuit::Problems import_problems_;
};

}  // namespace app
