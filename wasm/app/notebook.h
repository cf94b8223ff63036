// The stored circuits: each its own record "circuit/<number>", so that a damaged one takes no
// other with it, and a record "notebook" with their order, the open one and the demo's mark.
// A record that can not be read is kept as it is, byte for byte, and listed with the reason.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/records.h"
#include "circuit/circuit.h"
#include "circuit/history.h"
#include "circuit/problem.h"

namespace app {

struct Stored {
  std::uint32_t number = 0;                  // in its key; never given twice
  std::optional<circuit::Circuit> circuit;   // nullopt: the record can not be read
  std::string text;                          // the record as stored
  std::string why_unreadable;
  circuit::History history;
  [[nodiscard]] bool readable() const { return circuit.has_value(); }
};

struct Deleted {
  Stored stored;
  std::size_t place = 0;    // where it stood
};

class Notebook {
 public:
  // Reads what is stored. With nothing stored at all, the demo circuit is put in.
  Notebook(Records& records, const std::vector<platform::StoredRecord>& stored);

  [[nodiscard]] const std::vector<Stored>& circuits() const { return circuits_; }
  [[nodiscard]] const Stored* find(std::uint32_t number) const;
  [[nodiscard]] const Stored* open() const { return find(open_); }   // nullptr: none that can be read
  [[nodiscard]] bool is_untouched_demo(const Stored& stored) const;
  [[nodiscard]] bool full() const;   // holds kMaxCircuitsInFile

  bool open(std::uint32_t number);   // false when there is none, or it can not be read
  // Adds a circuit at the top and opens it. An untouched demo makes room when `own`.
  std::uint32_t add(const circuit::Circuit& circuit, bool own);
  void add_all(const std::vector<circuit::Circuit>& circuits);        // in their order, on top
  // Replaces the open circuit; false when nothing changed (the text would be the same).
  bool replace_open(const circuit::Circuit& circuit);
  bool replace(std::uint32_t number, const circuit::Circuit& circuit);
  circuit::History* history(std::uint32_t number);

  void remove(std::uint32_t number);                 // keeps it in deleted() until the app ends
  [[nodiscard]] const std::vector<Deleted>& deleted() const { return deleted_; }   // newest last
  bool put_back(std::uint32_t number);
  void move(std::uint32_t number, int by);           // in the list

 private:
  Stored* find_mutable(std::uint32_t number);
  void read_record(const platform::StoredRecord& record);
  void read_index(std::string_view text);
  void put_in_demo();
  void store(const Stored& stored);
  void store_index();
  void make_room_for_own();
  void open_first_readable();
  std::uint32_t insert(const circuit::Circuit& circuit, std::size_t place);

  Records& records_;
  std::vector<Stored> circuits_;
  std::vector<Deleted> deleted_;
  std::uint32_t open_ = 0;
  std::uint32_t demo_ = 0;           // the circuit put in at first start; 0: none, or changed since
  std::uint32_t next_number_ = 1;
};

std::string circuit_key(std::uint32_t number);
inline constexpr std::string_view kNotebookKey = "notebook";

}  // namespace app
