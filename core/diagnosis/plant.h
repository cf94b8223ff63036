// The branch as two forests of resistances, red and black, for thousands of readings a second.
// Private to this room. Element values are those of network::build(); a test holds every reading
// against network::solve() with the same fault and the instrument in place.
//
// A fault is a list of edits; so is the state of the circuit. At most one load at a time carries
// current (a lamp, a device), so there is at most one loop, and its current follows from Ohm's law.
// A 10 Mohm meter is taken as no load, but it pulls a floating part to where its other lead is:
// a reading with a lead on a floating part is 0 V. What this leaves out is below 1e-4 of battery volts.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "diagnosis/case.h"
#include "diagnosis/check.h"
#include "diagnosis/fault.h"
#include "network/branch_network.h"
#include "network/load_law.h"

namespace diagnosis {

inline constexpr std::size_t kMaxEdits = 4;

enum class EditKind {
  series,       // ohm more in an element; infinity: open
  swap,         // the away ends of a red and a black element change places
  refeed,       // the wire of an outlet comes from a neighbour's line: `ohm` each way; `neighbour`, `live`
  short_pair,   // red on black at the outlet's end of its run
  weak_source,  // emf times `emf_factor`, internal resistance times `factor`
  thin_runs,    // every run's resistance times `factor`
};
struct Edit {
  EditKind kind = EditKind::series;
  network::Element element = network::Element::wire;
  int outlet = -1;  // index in circuit.outlets; -1: the circuit's own
  network::Side side = network::Side::positive;
  double ohm = 0.0;
  double factor = 1.0;
  double emf_factor = 1.0;
  int neighbour = -1;
  bool live = true;
};

// One size of one fault, or of a pair of them.
struct Edits {
  Edit list[kMaxEdits];
  std::size_t count = 0;
  void add(const Edit& edit) {
    if (count < kMaxEdits) list[count++] = edit;
  }
  [[nodiscard]] std::span<const Edit> all() const { return {list, count}; }
};

// How the circuit is set up while one looks.
struct Bench {
  bool fuse_in = true;
  int parted_at = -1;  // outlet index
  bool with_load = false;
  bool one_way = false;  // a device takes nothing when reversed
  double load_ohm = 0.0;
  int load_red = 0, load_black = 0;  // nodes
  int neighbour_switched = -1;       // its fuse is `neighbour_in` whatever the fault says
  bool neighbour_in = true;
  // As it should be but for what is plugged in: parts and ways are those of Bench{}.
  [[nodiscard]] bool only_loaded() const { return fuse_in && parted_at < 0 && neighbour_switched < 0; }
  friend bool operator==(const Bench&, const Bench&) = default;
};

// What takes current when it is plugged in. Held between two points nothing else takes any.
struct Appliance {
  network::LoadLaw load{network::Law::resistance, 12.0};
  [[nodiscard]] double ohm_at(double volts) const;  // volts over what it takes then; where it has folded, for 0 V too
};
Appliance drawing(double amperes, double nominal_v);  // a resistance

struct Potentials {
  std::vector<double> voltage_v;  // by node
  std::vector<int> part;          // 0 black, 1 red, more: a floating part of its own
  std::vector<double> path_ohm;   // to the root of its part
  std::vector<int> parent;
  std::vector<char> loaded;
  std::vector<int> waiting;  // room to work in
  double load_v = 0.0;       // across the load, red lead to black lead
  double emf_v = 0.0, source_ohm = 0.0;
  [[nodiscard]] bool grounded(int node) const { return part[static_cast<std::size_t>(node)] < 2; }
  // Red lead's voltage over the black lead's, as a 10 Mohm meter shows it.
  [[nodiscard]] double reading_v(int red, int black) const {
    if (!grounded(red) || !grounded(black)) return 0.0;
    return voltage_v[static_cast<std::size_t>(red)] - voltage_v[static_cast<std::size_t>(black)];
  }
  // Volts across one load held between two nodes, nothing else on: what solve() would say with it.
  [[nodiscard]] double load_volts(int red, int black, double ohm, bool one_way) const;
  [[nodiscard]] double appliance_volts(int red, int black, const Appliance& appliance) const;  // minus: reversed
  [[nodiscard]] double ohms(int a, int b) const;  // along the copper; infinity: none
};

// The circuit under one list of edits, set up in as many ways as are asked for, each solved once.
class Plant;
class View {
 public:
  explicit View(const Plant& plant) : plant_(&plant) {}
  void aim(const Edits& edits);
  // `slot` stands for the bench: the same number, the same bench. kPlain is Bench{}.
  const Potentials& at(std::size_t slot, const Bench& bench);
  const Potentials& plain() { return at(kPlain, {}); }
  static constexpr std::size_t kPlain = 0;

 private:
  struct Solved {
    std::size_t aimed = 0;
    Potentials potentials;
  };
  const Plant* plant_;
  Edits edits_;
  std::vector<Solved> solved_;  // by slot; holds when solved after the last aim
  std::size_t aimed_ = 0;
};

class Plant {
 public:
  explicit Plant(const Case& the_case);
  void solve(const Bench& bench, std::span<const Edit> edits, Potentials& into) const;
  void energise(const Bench& bench, Potentials& now) const;  // voltages, parts and ways being there
  [[nodiscard]] int node(const Spot& spot, bool fuse_in) const;
  [[nodiscard]] int contact(int outlet, network::Side side) const;
  [[nodiscard]] int outlet_index(circuit::OutletId id) const;  // -1: the block, or gone
  [[nodiscard]] double emf_v() const { return emf_v_; }
  [[nodiscard]] double nominal_v() const { return nominal_v_; }
  [[nodiscard]] double lamp_ohm() const { return lamp_ohm_; }
  [[nodiscard]] bool has_socket(int outlet) const { return sockets_[static_cast<std::size_t>(outlet)] != 0; }
  // The known good device, and what failed at this outlet (its load; 1 A when none is told).
  [[nodiscard]] const Appliance& test_device() const { return test_device_; }
  [[nodiscard]] const Appliance& device(int outlet) const { return device_[static_cast<std::size_t>(outlet)]; }
  [[nodiscard]] bool feeds(int outlet, int other) const;  // on the way to it, or the same
  [[nodiscard]] std::size_t outlets() const { return parent_outlet_.size(); }
  [[nodiscard]] int parent_outlet(int outlet) const { return parent_outlet_[static_cast<std::size_t>(outlet)]; }
  [[nodiscard]] double line_ohm(int outlet) const { return line_ohm_[static_cast<std::size_t>(outlet)]; }
  // The wires alone, both ways from the block, and how far their ohms may be off (built.h).
  [[nodiscard]] double wire_ohm(int outlet) const { return wire_ohm_[static_cast<std::size_t>(outlet)]; }
  [[nodiscard]] double wire_spread() const { return wire_spread_; }
  [[nodiscard]] double distance_m(int outlet) const { return distance_m_[static_cast<std::size_t>(outlet)]; }

 private:
  void apply(const Edit& edit, const Bench& bench, Potentials& at, double& emf_v, double& source_ohm) const;
  void lay_short(int outlet, Potentials& at) const;
  void add_elements(const Case& the_case, const network::BranchNetwork& built);

  std::vector<int> parent_;  // by node; -1: a post
  std::vector<double> ohm_;  // to the parent
  std::vector<int> parent_outlet_;
  std::vector<double> line_ohm_, wire_ohm_, distance_m_;
  std::vector<Appliance> device_;
  Appliance test_device_;
  std::vector<circuit::OutletId> ids_;
  std::vector<char> sockets_;  // by outlet: something can be plugged in
  double emf_v_ = 0.0, source_ohm_ = 0.0, nominal_v_ = 12.0, lamp_ohm_ = 28.8, wire_spread_ = 0.0;
};

}  // namespace diagnosis
