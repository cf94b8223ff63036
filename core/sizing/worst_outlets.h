// Worst drop and lowest voltage at the outlets, each under the loading that hurts it most. A bound
// that needs no network tells which outlets can set the verdict; only those are searched, unless
// every outlet is asked for. With steady currents the bound is the answer.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <vector>

#include "sizing/answer.h"
#include "sizing/context.h"
#include "sizing/loading.h"

namespace sizing {

// judged: what sets the verdict is exact, the other outlets carry their bound, never too good.
enum class Detail { judged, every_outlet };

// The worst loadings of one size, a good place to start looking from for the next.
struct WarmStart {
  std::map<std::size_t, network::Loading> drop;   // by outlet
  std::map<std::size_t, network::Loading> low;
  std::size_t solves = 0;                         // counted for the benchmark
};

struct OutletsFound {
  std::vector<OutletResult> results;            // by outlet
  std::vector<double> low_v;                    // least voltage with the battery low, by outlet
  std::size_t worst = 0;                        // outlet nearest its own limit, or furthest past it
  double worst_flowing_a = 0.0;                 // through the fuse at its worst drop
  network::Loading worst_loading;
  std::optional<std::size_t> cannot_run;        // first outlet whose load folds
  bool cannot_run_low = false;                  // only with the battery low
  bool unsettled = false;                       // no steady answer was found
};

OutletsFound find_outlets(const Context& context, LoadingFinder& resting, LoadingFinder& low, WarmStart& warm,
                          Search search, Detail detail);

// The highest lowest voltage that any loaded device at the outlet is told to need; nullopt: none told.
std::optional<units::Volts> voltage_needed(const circuit::Outlet& outlet);

}  // namespace sizing
