// A circuit and what feeds it, described plainly, and the answer that was given for it. The judge knows nothing else:
// it shares no line and no table with the program that it judges. Metres are one way, volts are d.c., amperes of parts
// are what is marked on them.
#pragma once

#include <string>
#include <vector>

namespace judge {

enum class Gauge { awg, sae, metric };
enum class Metal { copper, tinned, clad };
enum class Laying { boat_air, conduit, clipped, clipped_british };  // which published table is in force
enum class Vehicle { van, trailer, boat, fixed };

struct Wire {
  Gauge gauge = Gauge::awg;
  std::string size;  // "18" to "4/0"; "0.75" to "120"
  Metal metal = Metal::copper;
  bool two_core = false;
};

struct Place {
  Laying laying = Laying::boat_air;
  double air_c = 30;
  bool engine_space = false;
  double insulation_c = 105;
  int circuits_bundled = 1;
};

enum class FuseKind {
  blade,
  small_blade,
  large_blade,
  bolted,
  bolted_80v,
  blade_58v,
  blade_80v,
  large_bolted,
  marine_bolted,
  terminal_post,
  class_t,
  breaker
};

enum class JointKind { screw, tab, lever, crimp, ring, twisted, socket, connector, fixed_device };

// A joint or outlet as its maker marks it. `ohms`: the planning figure taken for it, held to a published band.
struct Part {
  JointKind kind = JointKind::screw;
  double amps = 0;
  double least_mm2 = 0, most_mm2 = 0;
  double most_with_ferrule_mm2 = 0;  // 0: takes none
  bool amps_by_wire = false;         // a push-on tab of 6.3 mm or less: less on thin wire
  double ohms = 0;
};

enum class Law { current, power, resistive };

struct Device {
  Law law = Law::current;
  double amps = 0;  // at nominal volts
  bool lasting = true;
  double least_volts = 0;  // 0: not told
  double start_amps = 0, start_s = 0;
};

enum class InLineKind { contact, fuse, breaker };

struct InLine {
  InLineKind kind = InLineKind::contact;
  double amps = 0;
  double ohms = 0;  // closed contacts or holder with its joints, without a fuse's element
};

struct Outlet {
  int fed_from = -1;  // index of an earlier one; -1: the fuse position
  double metres = 1;
  bool there_already = false;  // its wire stays
  Wire wire;                   // when it does; else only metal and two_core count
  bool chassis_return = false;
  std::vector<InLine> in_line;  // at its source end, in order
  bool spliced = true;          // false: straight to the terminals
  bool only_joins = false;      // a junction or sub-block
  bool bounds_itself = false;   // what stands there takes its own load and no more
  Part terminal, point;
  std::vector<Device> devices;
  int lights = 1;  // spread evenly along the run
  double drop_limit = 0.05;
};

struct Supply {
  double nominal = 12;
  double resting = 12.7, low = 12, highest = 14.6;
  double inside_ohms = 0.005;
  double feeder_metres = 1;
  Wire feeder;
  Place feeder_place;
  FuseKind main_kind = FuseKind::bolted;
  double main_amps = 0;  // 0: none
  double main_metres_from_post = 0;
  double switch_amps = 0;  // 0: none
  double block_amps = 0;   // 0: not marked
  double beside_amps = 0;
  double ring_ohms = 1e-4, bus_ohms = 1e-4, switch_ohms = 5e-3;  // one each
  double chassis_ohms = 5e-3;
};

struct Circuit {
  Vehicle vehicle = Vehicle::van;
  bool us_trailer_code = false;  // chosen
  Supply supply;
  Place place;
  double metal_c = 50;
  Gauge gauge = Gauge::awg;
  FuseKind fuse_kind = FuseKind::blade;
  Part clamp, splice;
  bool ferrule = false;
  double tail_metres = 0.075;
  double at_most_amps = 0;  // 0: all at once
  std::vector<Outlet> outlets;
  std::vector<std::string> not_on_sale_sizes;
  std::vector<double> not_on_sale_fuses;
};

struct Answer {
  bool fits = false;
  std::string size;  // of `gauge`, for every run that is to be chosen
  std::string tail;
  double fuse = 0;
  // What is told beside it.
  bool tells_no_main_fuse = false;
  bool tells_bare_piece = false;   // between battery and main fuse
  bool tells_main_volts = false;   // the main fuse is not made for these volts
  bool tells_no_breaking = false;  // the short may be more than any fuse here breaks
  bool tells_clad = false;
  bool tells_chassis = false;
};

}  // namespace judge
