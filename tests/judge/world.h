// The judge's own picture of a vehicle: plain data. It shares nothing with the program that it judges.
// Metres are one way. Volts are d.c. Ampere figures of parts are ratings.
#pragma once

#include <limits>
#include <string>
#include <vector>

namespace judge {

inline constexpr double kNoLimit = std::numeric_limits<double>::infinity();

enum class Gauge { awg, sae, metric };
enum class Metal { copper, tinned, copper_clad_aluminium };

struct Wire {
  Gauge gauge = Gauge::awg;
  std::string size = "12";  // "18" .. "1", "1/0" .. "4/0"; metric "0.75" .. "120"
  Metal metal = Metal::copper;
  double insulation_c = 105;
};

struct Surround {
  double ambient_c = 30;
  int bundled_circuits = 1;
  bool sheathed = false;  // sheath or conduit over its whole length
};

enum class GuardKind { blade, large_blade, bolt_on, terminal_post, class_t, breaker };

// A fuse or breaker on a leg.
struct Guard {
  GuardKind kind = GuardKind::blade;
  double amps = 10;
  double volts = 32;
  double breaking_amps = 0;      // 0: not known
  double metres_from_start = 0;  // along the leg, from its end towards the battery
};

// A switch, relay, disconnect: it only has to carry.
struct Part {
  std::string name;
  double amps = 10;
};

enum class Return { wire, chassis };

// A length of wire with what sits in it.
struct Run {
  Wire wire;
  double metres = 1;
  Return back = Return::wire;
  Surround around;
  std::vector<Guard> guards;
  std::vector<Part> parts;
  int joints = 2;       // splices, tabs, clamps or lugs along it, plus and minus together
  bool is_new = false;  // its size is the circuit's to choose
};

enum class Law { current, power, resistive };
enum class Use { continuous, intermittent, momentary };

struct Device {
  std::string name;
  double amps = 0;  // at nominal volts; 0 when watts are given
  double watts = 0;
  Law law = Law::current;
  Use use = Use::continuous;
  double inrush_amps = 0;
  double inrush_s = 0;
  double least_volts = 0;  // 0: any
};

enum class Point { wired_in, limits_itself, socket };

struct Outlet {
  std::string name;
  int fed_from = -1;  // index of another outlet of the circuit, which comes earlier; -1: the fuse position
  Run run;
  bool has_tail = false;
  Run tail;  // from the splice to the point
  Point point = Point::wired_in;
  double point_amps = 0;  // 0: not known
  std::vector<Device> devices;
};

struct Circuit {
  std::string name;
  int block = 0;
  Guard fuse;
  double at_most_amps = 0;       // 0: everything may run at once
  double drop_percent = 3;       // of nominal volts, battery to device and back
  std::vector<Outlet> outlets;
  bool answered = true;          // false: the program says that nothing fits
};

struct Block {
  std::string name;
  int fed_from = -1;  // -1: the battery posts, else an earlier block
  Run feeder;         // its guards hold the main protection, or the parent position's fuse at 0 m
  double amps = 100;
  double position_amps = 30;
};

enum class Chemistry { flooded, agm, gel, lithium };

struct Battery {
  Chemistry kind = Chemistry::agm;
  double nominal_volts = 12;
  double resting_volts = 12.8;
  double amp_hours = 100;
};

// Alternator, charger, solar: feeds too. Its cable starts at a block's bar (or the battery posts, -1) and ends at it.
struct Source {
  std::string name;
  int joins = 0;
  double most_amps = kNoLimit;  // what it can ever give; another battery: no limit
  Run cable;
};

enum class VehicleKind { van, trailer, boat, fixed };

struct World {
  VehicleKind kind = VehicleKind::van;
  bool trailer_code = false;  // the US low-voltage trailer ceilings are chosen
  Battery battery;
  std::vector<Block> blocks;
  std::vector<Circuit> circuits;
  std::vector<Source> sources;
};

}  // namespace judge
