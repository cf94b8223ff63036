// The stored vehicles: each its own record "vehicle/<number>", so that a damaged one takes no other
// with it, and a record "vehicles" with their order, what is open and the demo's mark. A record that
// can not be read is kept as it is, byte for byte, and listed with the reason.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/circuit_ref.h"
#include "app/records.h"
#include "app/vehicle_index.h"
#include "circuit/history.h"
#include "circuit/problem.h"
#include "vehicle/edit.h"
#include "vehicle/vehicle.h"

namespace app {

// What a step back gives back: the vehicle, and the circuit that was open when it was left so.
struct Earlier {
  vehicle::Vehicle vehicle;
  vehicle::CircuitId open;
};
using History = circuit::HistoryOf<Earlier>;

struct Stored {
  std::uint32_t number = 0;     // in its key; never given twice
  vehicle::Vehicle vehicle;
  std::string text;             // the record as stored
  History history;
};

// A record of a vehicle, or of a circuit from before there were vehicles, that this app can not read.
struct Unread {
  std::uint32_t number = 0;     // from 1, as found at the start
  std::string key;
  std::string text;
  std::string why;
};

// Taken out of the notebook, and kept until the app ends.
struct Deleted {
  std::uint32_t number = 0;                            // to ask for it by
  std::string name;
  std::optional<Stored> stored;                        // a whole vehicle
  std::size_t place = 0;                               // where it, or the circuit in its vehicle, stood
  std::optional<vehicle::PlacedCircuit> circuit;       // or one circuit
  std::uint32_t of = 0;                                // of this vehicle
  std::optional<Unread> unread;                        // or a record that can not be read
};

class Notebook {
 public:
  // Reads what is stored. With nothing stored at all, the demo vehicle is put in.
  Notebook(Records& records, const std::vector<platform::StoredRecord>& stored);

  [[nodiscard]] const std::vector<Stored>& vehicles() const { return vehicles_; }
  [[nodiscard]] const Stored* find(std::uint32_t vehicle) const;                 // nullptr: none
  [[nodiscard]] const vehicle::PlacedCircuit* find(CircuitRef ref) const;
  [[nodiscard]] std::size_t circuits() const;                                    // of all vehicles
  [[nodiscard]] const std::vector<Unread>& unread() const { return unread_; }
  [[nodiscard]] const Unread* find_unread(std::uint32_t number) const;
  // Is there anything that a record of this circuit can belong to? A vehicle that can not be read may
  // well have it.
  [[nodiscard]] bool may_have(CircuitRef ref) const;

  // The open vehicle, and of it the open circuit. One that has no circuit has none open.
  [[nodiscard]] const Stored* open_vehicle() const { return find(open_.vehicle); }
  [[nodiscard]] CircuitRef open() const { return circuit_ ? open_ : kNoCircuit; }
  // As it is seen with all that its vehicle gives it; nullptr: none is open.
  [[nodiscard]] const circuit::Circuit* open_circuit() const { return circuit_ ? &*circuit_ : nullptr; }
  [[nodiscard]] bool is_untouched_demo(const Stored& stored) const;
  [[nodiscard]] bool has_untouched_demo() const;
  [[nodiscard]] bool full() const;   // holds document::kMaxVehiclesInFile

  bool open(CircuitRef ref);         // false when it is not there
  bool open_vehicle(std::uint32_t number);   // and its first circuit
  // Adds a vehicle at the top and opens its first circuit. An untouched demo makes room when `own`.
  std::uint32_t add(const vehicle::Vehicle& vehicle, bool own);
  void add_all(const std::vector<vehicle::Vehicle>& vehicles);   // in their order, on top
  // False when nothing changed: the text would be the same.
  bool replace(std::uint32_t number, const vehicle::Vehicle& vehicle);
  History* history(std::uint32_t number);

  // What goes is kept in deleted(), newest last. These give the number to put it back by; 0: not there.
  std::uint32_t remove(std::uint32_t vehicle);
  std::uint32_t remove_unread(std::uint32_t number);
  std::uint32_t keep_deleted(CircuitRef ref);        // before an edit takes it out of its vehicle
  [[nodiscard]] const std::vector<Deleted>& deleted() const { return deleted_; }
  // Why not, in a sentence; empty when it is back.
  std::string put_back(std::uint32_t number);
  void move(std::uint32_t vehicle, int by);          // in the list

 private:
  Stored* find_mutable(std::uint32_t number);
  void read_record(const platform::StoredRecord& record);
  void take_index(const VehicleIndex& index);
  void put_in_demo();
  void store(const Stored& stored);
  void store_index();
  void make_room_for_own();
  void open_first();
  void see_open();                                   // the open circuit, after any change
  std::uint32_t insert(const vehicle::Vehicle& vehicle, std::size_t place);
  std::uint32_t add_deleted(Deleted deleted);
  void forget_deleted_in(const Stored& stored);
  std::string put_back_circuit(const Deleted& deleted);

  Records& records_;
  std::vector<Stored> vehicles_;
  std::vector<Unread> unread_;
  std::vector<Deleted> deleted_;
  std::uint32_t deletions_ = 0;
  VehicleIndex index_;               // as it will be written: what it says of vehicles is renewed then
  CircuitRef open_;
  std::optional<circuit::Circuit> circuit_;
  std::uint32_t demo_ = 0;           // the vehicle put in at first start; 0: none, or changed since
  std::uint32_t next_number_ = 1;
};

}  // namespace app
