// A whole vehicle as a deck for ngspice, written from the vehicle itself: battery, a charger beside it, main fuse, main
// switch, feeder, block, and every circuit on it at once with the real law of each load. No netlist of ours is read.
#pragma once

#include <string>
#include <vector>

#include "network/branch_network.h"
#include "vehicle/vehicle.h"

namespace network_test {

// A charger or alternator on the battery's posts, holding a voltage behind its cable. 0 ohm: none.
struct Charger {
  double volts = 0.0;
  double ohms = 0.0;
};

// By circuit, in the vehicle's order: what is fitted and how much of each load is on.
struct Running {
  network::Fitted fitted;
  network::Loading loading;
};

struct VehicleDeck {
  std::string text;
  // By circuit: the contacts of its devices, in the order of its outlets, and the ammeter behind its fuse.
  struct Device {
    std::string red, black;
  };
  std::vector<std::vector<Device>> devices;
  std::vector<std::string> fuse_ammeter;
};
// One block; every circuit of one metal temperature.
VehicleDeck deck_of(const vehicle::Vehicle& vehicle, const std::vector<Running>& running, network::BatteryState state,
                    const Charger& charger);

}  // namespace network_test
