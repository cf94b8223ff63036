#include "circuit/validate.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "tables/part.h"
#include "tables/supply.h"
#include "units/format.h"

namespace circuit {
namespace {

bool is_per_12v(Field field) {
  return field == Field::minimum_voltage_per_12v || field == Field::resting_per_12v ||
         field == Field::low_per_12v || field == Field::highest_per_12v;
}

std::string with_unit(std::string number, std::string_view unit) {
  return unit.empty() ? number : number + " " + std::string(unit);
}

std::string capital(std::string_view words) {
  std::string text(words);
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

// A value that is out of range, written so that it never looks like one that is allowed.
std::string shown_value(double value, double low, double high, std::string_view unit) {
  constexpr double kTooLongToWrite = 1e9;
  if (std::isnan(value) || std::isinf(value)) return "not a number";
  if (value >= kTooLongToWrite) return "far too large";
  if (value <= -kTooLongToWrite) return "far too small";
  std::string text = units::number_text(value, 6);
  if (text == units::number_text(low, 6) || text == units::number_text(high, 6)) text = units::number_text(value, 15);
  if (text == units::number_text(low, 15)) return "just below " + with_unit(text, unit);
  if (text == units::number_text(high, 15)) return "just above " + with_unit(text, unit);
  return with_unit(text, unit);
}

std::string allowed_range(const Limit& limit, double low, double high) {
  std::string text = "Give " + with_unit(units::number_text(low, 6), limit.unit) + " to " +
                     with_unit(units::number_text(high, 6), limit.unit);
  if (limit.whole) text = "Give a whole number, " + units::number_text(low, 6) + " to " + units::number_text(high, 6);
  if (!limit.zero.empty()) text += ", or 0: " + std::string(limit.zero);
  return text + ".";
}

template <class Range, class Text>
std::string listed(const Range& range, Text text_of) {
  std::string list;
  for (const auto& item : range) {
    if (!list.empty()) list += ", ";
    list += text_of(item);
  }
  return list;
}

// Collects what is wrong with one circuit.
class Check {
 public:
  explicit Check(const Circuit& circuit) : circuit_(circuit) {}

  Problems run() {
    names();
    supply();
    wiring();
    value(Field::drop_limit_fraction, circuit_.drop_limit, "Drop limit");
    if (circuit_.at_most_at_once) {
      value(Field::at_most_at_once_a, circuit_.at_most_at_once->number(), "Most at once");
    }
    shape();
    for (std::size_t i = 0; i < std::min(circuit_.outlets.size(), kMaxOutlets); ++i) outlet(i);
    shelf();
    in_hand();
    return std::move(problems_);
  }

 private:
  void add(std::string place, std::string sentence, std::string allowed) {
    problems_.push_back({std::move(place), std::move(sentence), std::move(allowed)});
  }
  void keep(std::optional<Problem> problem) {
    if (problem) problems_.push_back(std::move(*problem));
  }
  void value(Field field, double number, const std::string& place) {
    keep(check_value(field, number, place, blocks_));
  }

  void names() {
    keep(check_name(circuit_.name, "Circuit name"));
    if (!circuit_.place.empty()) keep(check_name(circuit_.place, "Place"));
    value(Field::fuse_position, circuit_.fuse_position, "Fuse position");
    if (!circuit_.colours.empty() && tables::conductor_colours_by_key(circuit_.colours) == nullptr) {
      add("Wire colours", "The colours " + quoted(circuit_.colours) + " are not known.",
          "Give one of " + listed(tables::conductor_colours(), [](const auto& c) { return std::string(c.key); }) + ".");
    }
  }

  void supply() {
    const Supply& s = circuit_.supply;
    const auto voltages = tables::system_voltages_v();
    const bool offered = std::find(voltages.begin(), voltages.end(), s.nominal.number()) != voltages.end();
    if (offered) blocks_ = tables::blocks_in_series(s.nominal);
    else {
      add("Supply", "System voltage is " + shown_value(s.nominal.number(), -1.0, -1.0, "V") + ".",
          "Give " + listed(voltages, [](double v) { return units::number_text(v, 6); }) + " V.");
    }
    const tables::BatteryKind* battery = tables::battery_kind_by_key(s.battery);
    if (battery == nullptr) {
      add("Supply", "Battery kind " + quoted(s.battery) + " is not known.",
          "Give one of " + listed(tables::battery_kinds(), [](const auto& k) { return std::string(k.key); }) + ".");
    }
    const std::size_t before = problems_.size();
    if (s.resting) value(Field::resting_per_12v, s.resting->number(), "Supply, resting");
    if (s.low) value(Field::low_per_12v, s.low->number(), "Supply, low");
    if (offered && battery != nullptr && problems_.size() == before) low_below_resting(*battery);
    value(Field::feeder_run_m, s.feeder_run.number(), "Supply, feeder");
    conductor(s.feeder_size, "Supply, feeder");
    value(Field::main_fuse_a, s.main_fuse.number(), "Supply, main fuse");
    value(Field::main_fuse_distance_m, s.main_fuse_distance.number(), "Supply, main fuse");
    if (s.highest) value(Field::highest_per_12v, s.highest->number(), "Supply, highest");
    if (s.internal_resistance) value(Field::internal_ohm, s.internal_resistance->number(), "Supply, battery");
    if (s.disconnect) value(Field::disconnect_a, s.disconnect->number(), "Supply, main switch");
    if (s.block_rating) value(Field::block_a, s.block_rating->number(), "Supply, block");
    value(Field::beside_a, s.beside.number(), "Supply, other circuits");
  }

  void low_below_resting(const tables::BatteryKind& battery) {
    const Supply& s = circuit_.supply;
    const units::Volts resting = s.resting.value_or(battery.resting * blocks_);
    const units::Volts low = s.low.value_or(battery.low * blocks_);
    if (low <= resting) return;
    add("Supply", "Low battery voltage " + volts(low) + " is above the resting voltage " + volts(resting) + ".",
        "Give a low voltage of at most " + volts(resting) + ", or a higher resting voltage.");
  }
  static std::string volts(units::Volts v) { return units::number_text(v.number(), 6) + " V"; }

  void wiring() {
    const Wiring& w = circuit_.wiring;
    value(Field::ambient_c, w.around.ambient.number(), "Wiring, air");
    value(Field::circuits_bundled, w.around.circuits_bundled, "Wiring, bundle");
    insulation(w.around.insulation);
    value(Field::wire_temperature_c, w.wire_temperature.number(), "Wiring, wire");
    keep(check_fuse_family(w.fuse_family, "Fuse block"));
    part(w.clamp_part, tables::PartKind::clamp, "Fuse block clamp");
    if (w.clamp_rating) value(Field::part_rating_a, w.clamp_rating->number(), "Fuse block clamp");
    part(w.splice_part, tables::PartKind::splice, "Splice");
    value(Field::tail_m, w.tail.number(), "Tail");
  }

  void insulation(units::Celsius rating) {
    const auto offered = tables::insulation_ratings_c();
    if (std::find(offered.begin(), offered.end(), rating.number()) != offered.end()) return;
    add("Wiring, insulation", "Insulation rating is " + shown_value(rating.number(), -1.0, -1.0, "°C") + ".",
        "Give one of " + listed(offered, [](double c) { return units::number_text(c, 6); }) + " °C.");
  }

  void conductor(const std::string& id, const std::string& place) { keep(check_size(id, place)); }

  void part(const std::string& key, tables::PartKind kind, const std::string& place) {
    const tables::Part* found = tables::part_by_key(key);
    if (found != nullptr && found->kind == kind) return;
    add(place, "Part " + quoted(key) + (found == nullptr ? " is not known." : " does not belong here."),
        "Give one of " + listed(tables::parts(kind), [](const auto& p) { return std::string(p.key); }) + ".");
  }

  // Ids, and who feeds whom.
  void shape() {
    const std::vector<Outlet>& outlets = circuit_.outlets;
    if (outlets.empty()) add("", "The circuit has no outlet.", "Give 1 to " + std::to_string(kMaxOutlets) + " outlets.");
    if (outlets.size() > kMaxOutlets) {
      add("", "The circuit has " + std::to_string(outlets.size()) + " outlets.",
          "Give at most " + std::to_string(kMaxOutlets) + " outlets in one circuit.");
    }
    std::map<OutletId, std::size_t> seen{{kBlock, 0}};
    for (std::size_t i = 0; i < std::min(outlets.size(), kMaxOutlets); ++i) {
      if (seen.find(outlets[i].fed_from) == seen.end()) {
        add(outlet_title(circuit_, i), "It is fed from outlet number " + std::to_string(outlets[i].fed_from.number) +
            ", which does not come before it.", "Feed it from the block (0) or from an outlet above it in the list.");
      }
      if (!seen.emplace(outlets[i].id, i).second) {
        add(outlet_title(circuit_, i), "Its number " + std::to_string(outlets[i].id.number) + " is already taken.",
            "Give every outlet a number of its own, 1 or more.");
      }
    }
    const std::uint32_t largest = std::prev(seen.end())->first.number;
    if (largest > kMaxOutletId || circuit_.next_outlet_id <= largest || circuit_.next_outlet_id > kMaxOutletId + 1) {
      add("", "The next outlet number is " + std::to_string(circuit_.next_outlet_id) + ".",
          "Give a number above every outlet's own, at most " + std::to_string(kMaxOutletId + 1) + ".");
    }
  }

  void outlet(std::size_t index) {
    const Outlet& o = circuit_.outlets[index];
    const std::string title = outlet_title(circuit_, index);
    keep(check_name(o.name, title + ", name"));
    run(index, title);
    devices(o, title);
    if (o.drop_limit) value(Field::drop_limit_fraction, *o.drop_limit, title + ", drop limit");
    part(o.outlet_part, tables::PartKind::outlet, title + ", outlet");
    part(o.terminal_part, tables::PartKind::terminal, title + ", terminal");
    if (o.rating) value(Field::part_rating_a, o.rating->number(), title + ", rating");
  }

  void run(std::size_t index, const std::string& title) {
    const Outlet& o = circuit_.outlets[index];
    const Run& run = o.run;
    value(Field::run_m, run.length.number(), title + ", run");
    if (run.size) conductor(*run.size, title + ", wire");
    if (run.back == ReturnPath::chassis) chassis_return(run, title);
    if (run.in_line.size() > kMaxInLine) {
      add(title + ", run", std::to_string(run.in_line.size()) + " parts are in the line.",
          "Put at most " + std::to_string(kMaxInLine) + " into one run.");
      return;
    }
    for (const InLine& part : run.in_line) value(Field::in_line_a, part.rating.number(), title + ", in the line");
    const Outlet* from = find_outlet(circuit_, o.fed_from);
    const bool fused = std::any_of(run.in_line.begin(), run.in_line.end(), is_overcurrent_protection);
    if (from != nullptr && from->point == PointKind::sub_block && !fused) {
      add(title + ", run", "It leaves a sub-block without a fuse of its own.", "Put a fuse or a breaker into its line.");
    }
  }

  // A hull or a frame that is to carry no current: galvanic corrosion, and sparks in a bilge.
  void chassis_return(const Run& run, const std::string& title) {
    if (circuit_.setting == Setting::boat || circuit_.setting == Setting::fixed) {
      add(title + ", return", circuit_.setting == Setting::boat ? "A hull must not carry the current back."
                                                                : "There is no chassis to carry the current back.",
          "Take the return by wire.");
    } else if (run.two_core) {
      add(title + ", return", "A two-core cable brings its own return.", "Take the return by wire, or a single core.");
    }
  }

  void devices(const Outlet& o, const std::string& title) {
    const std::size_t least = o.point == PointKind::outlet ? 1 : 0;
    const std::size_t most = o.point == PointKind::outlet ? kMaxDevices : 0;
    if (o.devices.size() < least || o.devices.size() > most) {
      add(title + ", devices", o.devices.size() == 1 ? "One device is listed." : std::to_string(o.devices.size()) + " devices are listed.",
          most == 0 ? "A point that is no outlet has none."
                    : "Give 1 to " + std::to_string(kMaxDevices) + " devices at one outlet.");
      return;
    }
    for (const Device& device : o.devices) this->device(device, title);
    value(Field::taps, o.taps, title + ", lights along the run");
    if (o.taps > 1 && o.devices.size() > 1) {
      add(title + ", lights along the run", "Only one kind of load can be spread along a run.",
          "Give the other devices an outlet of their own.");
    }
  }

  void device(const Device& device, const std::string& title) {
    if (!device.name.empty()) keep(check_name(device.name, title + ", device"));
    if (!device.preset.empty()) keep(check_name(device.preset, title + ", kind of device"));
    const Load& load = device.load;
    value(load.rating_in_watts ? Field::load_w : Field::load_a, load.rating, title + ", load");
    if (load.minimum_voltage) {
      value(Field::minimum_voltage_per_12v, load.minimum_voltage->number(), title + ", lowest voltage");
    }
    if (device.inrush) {
      value(Field::inrush_a, device.inrush->current.number(), title + ", start");
      value(Field::inrush_s, device.inrush->lasting.number(), title + ", start");
    }
    if (device.own_fuse) value(Field::fuse_a, device.own_fuse->number(), title + ", own fuse");
  }

  void shelf() {
    const Shelf& s = circuit_.shelf;
    if (has_repeats(s.missing_sizes)) add("Shelf", "A wire size is listed twice.", "List each size once.");
    for (const std::string& id : s.missing_sizes) {
      const std::size_t before = problems_.size();
      conductor(id, "Shelf");
      if (problems_.size() > before) break;  // one is enough to tell
    }
    if (s.missing_fuses_a.size() > kMaxShelfFuses) {
      add("Shelf", std::to_string(s.missing_fuses_a.size()) + " fuse ratings are listed.",
          "List at most " + std::to_string(kMaxShelfFuses) + ".");
      return;
    }
    for (const double rating : s.missing_fuses_a) {
      const std::size_t before = problems_.size();
      value(Field::fuse_a, rating, "Shelf");
      if (problems_.size() > before) return;
    }
    if (has_repeats(s.missing_fuses_a)) add("Shelf", "A fuse rating is listed twice.", "List each rating once.");
  }

  template <class T>
  static bool has_repeats(std::vector<T> list) {
    std::sort(list.begin(), list.end());
    return std::adjacent_find(list.begin(), list.end()) != list.end();
  }

  void in_hand() {
    if (!circuit_.in_hand) return;
    conductor(circuit_.in_hand->size, "In hand");
    value(Field::fuse_a, circuit_.in_hand->fuse.number(), "In hand");
  }

  const Circuit& circuit_;
  int blocks_ = 1;
  Problems problems_;
};

}  // namespace

Problems validate(const Circuit& circuit) { return Check(circuit).run(); }

std::optional<Problem> check_value(Field field, double value, std::string_view place, int blocks) {
  const Limit& range = limit(field);
  const double scale = is_per_12v(field) ? blocks : 1.0;
  const double low = range.low * scale;
  const double high = range.high * scale;
  const bool zero = value == 0.0 && !range.zero.empty();
  const bool inside = value >= low && value <= high;  // false for NaN
  const bool whole = !range.whole || value == std::floor(value);
  if (zero || (inside && whole)) return std::nullopt;
  const double shown = range.unit == "%" ? 100.0 : 1.0;
  return Problem{std::string(place),
                 capital(range.name) + " is " + shown_value(value * shown, low * shown, high * shown, range.unit) + ".",
                 allowed_range(range, low * shown, high * shown), field, value};
}

std::optional<Problem> check_size(std::string_view id, std::string_view place) {
  if (tables::conductor_by_id(id) != nullptr) return std::nullopt;
  return Problem{std::string(place), "Wire size " + quoted(id) + " is not known.",
                 "Give an AWG size \"18awg\" to \"4/0awg\", an SAE one \"18sae\" to \"4/0sae\" or a metric one "
                 "\"0.75mm2\" to \"120mm2\"."};
}

std::optional<Problem> check_fuse_family(tables::FuseFamilyId id, std::string_view place) {
  const auto offered = tables::fuse_families();
  if (std::any_of(offered.begin(), offered.end(), [id](const auto& family) { return family.id == id; })) return std::nullopt;
  return Problem{std::string(place), "Its positions do not hold " + quoted(tables::fuse_family(id).key) + ".",
                 "Give one of " + listed(offered, [](const auto& family) { return std::string(family.key); }) + "."};
}

std::string outlet_title(const Circuit& circuit, std::size_t index) {
  const std::string title = "Outlet " + outlet_letter(index);
  const std::string& name = circuit.outlets[index].name;
  return name == title || check_name(name, {}) ? title : title + " (" + name + ")";
}

}  // namespace circuit
