// The worst simultaneous loading. Each load may be on by a fraction 0 to 1, and the rated
// amperes that are on together stay within the circuit's cap. Which loads then hurt most is
// found, not assumed: a first guess spends the cap where the most resistance is shared, and
// each step moves to the corner the solved network's gradient points at, while that is worse.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "circuit/circuit.h"
#include "network/branch_network.h"
#include "network/load_law.h"
#include "network/radial.h"
#include "network/tree.h"

namespace sizing {

// What the loads may draw together, from the circuit alone. By point of the tree, as a Loading is.
struct Demand {
  explicit Demand(const circuit::Circuit& circuit);
  std::vector<double> rated_a;   // at nominal voltage; 0 where nothing is fitted
  std::vector<const circuit::Load*> load;   // nullptr: no device at this point
  std::vector<std::size_t> outlet;          // index in circuit.outlets
  std::vector<std::size_t> parent;          // kNoParent: fed from the block
  std::vector<std::size_t> point_of_outlet; // where an outlet's voltage is read
  double total_a = 0.0;
  double cap_a = 0.0;            // the lesser of the total and 'at most at once'
  bool all_at_once = true;       // the cap does not bind
  bool any_resistive = false;
  bool any_varying = false;      // a load whose current is not constant
};
inline constexpr std::size_t kNoParent = network::kNoPoint;

enum class Worst {
  total_current,  // most through the fuse
  drop,           // most between battery posts and the device, V
  low_voltage,    // least at the device, V (as the fall below the battery's own voltage)
};

enum class Search { quick, thorough };

struct WorstCase {
  const network::Loading* loading = nullptr;           // owned by the finder
  const network::RadialSolution* solution = nullptr;
  double value = 0.0;                                   // A or V by Worst; larger is worse
};

// One tree, one battery state. Solutions are kept, as many outlets share their worst loading.
class LoadingFinder {
 public:
  LoadingFinder(const circuit::Circuit& circuit, const Demand& demand, const network::Fitted& fitted,
                network::BatteryState battery);
  // `point` is of no meaning for total_current. `start`: a loading to try from too, or nullptr.
  // A quick search looks from one start only: enough to show that a limit is broken, as any
  // loading that breaks it does. What is to be recommended is searched for thoroughly.
  WorstCase worst(Worst kind, std::size_t point, const network::Loading* start = nullptr,
                  Search search = Search::thorough);
  // One loading, as it is.
  WorstCase at(Worst kind, std::size_t point, const network::Loading& loading);
  [[nodiscard]] std::size_t solves() const { return storage_.size(); }
  // The most lost between posts and each point in any loading solved so far, V.
  [[nodiscard]] std::vector<double> most_lost_so_far() const;
  [[nodiscard]] const network::Tree& tree() const { return tree_; }
  // Loop resistance from the posts to each point, tails left out; what all points share included.
  [[nodiscard]] double loop_ohm(std::size_t point) const { return loop_ohm_[point]; }

 private:
  struct Tried {
    std::uint64_t hash;
    network::Loading loading;
    network::RadialSolution solution;
    mutable std::vector<double> source_gradient;   // empty until asked for
  };
  const Tried& tried(const network::Loading& loading);
  [[nodiscard]] double value_of(Worst kind, std::size_t point, const network::RadialSolution& at) const;
  // Both owned by the finder; the first until it is asked for another.
  const std::vector<double>& gradient(Worst kind, std::size_t point, const Tried& at);
  const std::vector<double>& source_gradient(const Tried& at) const;
  [[nodiscard]] std::vector<double> find_source_gradient(const Tried& at) const;
  enum class Guess { nothing_flows, alone, whole_cap };
  struct Found {
    const Tried* at = nullptr;
    double value = 0.0;
  };
  Found climb(Worst kind, std::size_t point, const network::Loading& start);
  void climb_corners(Worst kind, std::size_t point, Found& best);
  void exchange(Worst kind, std::size_t point, Found& best);
  [[nodiscard]] std::vector<double> guessed_draw(Guess guess) const;
  [[nodiscard]] std::vector<double> first_guess(Worst kind, std::size_t point, Guess guess) const;
  [[nodiscard]] std::vector<std::size_t> find_runaways() const;
  [[nodiscard]] network::Loading spend_cap(const std::vector<double>& worth) const;

  const Demand& demand_;
  network::Tree tree_;
  network::Radial radial_;
  std::vector<double> loop_ohm_;   // posts to each point
  std::vector<network::LoadLaw> laws_;   // of each point's load, at full loading
  // Far and heavy loads of constant power: the deeper one pulls its volts down the more it draws, so
  // each is tried as the first that gets its part of the cap.
  std::vector<std::size_t> runaways_;
  std::vector<std::unique_ptr<Tried>> storage_;
  struct LastGradient {
    Worst kind = Worst::drop;
    std::size_t point = 0;
    const Tried* at = nullptr;
    std::vector<double> worth;
  };
  LastGradient last_gradient_;
};

}  // namespace sizing
