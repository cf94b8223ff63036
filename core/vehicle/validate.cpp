#include "vehicle/validate.h"

#include <algorithm>
#include <set>

#include "circuit/limits.h"
#include "circuit/validate.h"
#include "tables/part.h"
#include "tables/supply.h"
#include "units/format.h"

namespace vehicle {
namespace {

using circuit::Field;
using circuit::Problem;
using circuit::Problems;

// "Outlet C, run" in circuit "Bench": "Circuit 'Bench', outlet C, run".
Problem in_circuit(Problem problem, const std::string& title) {
  if (problem.place.empty()) {
    problem.place = title;
    return problem;
  }
  const char first = problem.place.front();
  if (first >= 'A' && first <= 'Z') problem.place.front() = static_cast<char>(first - 'A' + 'a');
  problem.place = title + ", " + problem.place;
  return problem;
}

class Check {
 public:
  explicit Check(const Vehicle& vehicle) : vehicle_(vehicle) {}

  Problems run() {
    keep(circuit::check_name(vehicle_.name, "Vehicle name"));
    battery();
    colours();
    ids();
    count("blocks", vehicle_.blocks.size(), 1, kMaxBlocks);
    count("sources", vehicle_.sources.size(), 0, kMaxSources);
    count("circuits", vehicle_.circuits.size(), 0, kMaxCircuits);
    count("outlets", planned_outlets(vehicle_), 0, kMaxPlannedOutlets);
    if (!problems_.empty()) return std::move(problems_);
    for (const Block& each : vehicle_.blocks) block(each);
    for (const Source& each : vehicle_.sources) source(each);
    positions();
    if (!problems_.empty()) return std::move(problems_);   // a circuit is seen through its block
    for (const PlacedCircuit& each : vehicle_.circuits) placed(each);
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
    keep(circuit::check_value(field, number, place, series_));
  }
  void count(const std::string& what, std::size_t number, std::size_t least, std::size_t most) {
    if (number >= least && number <= most) return;
    add("", "The vehicle has " + std::to_string(number) + " " + what + ".",
        "Give " + std::to_string(least) + " to " + std::to_string(most) + ".");
  }
  void conductor(const std::string& id, const std::string& place) { keep(circuit::check_size(id, place)); }

  void colours() {
    if (vehicle_.colours.empty() || tables::conductor_colours_by_key(vehicle_.colours) != nullptr) return;
    add("Wire colours", "The colours " + circuit::quoted(vehicle_.colours) + " are not known.", "Choose some of the list.");
  }

  void battery() {
    const auto voltages = tables::system_voltages_v();
    const double nominal = vehicle_.battery.nominal.number();
    if (std::find(voltages.begin(), voltages.end(), nominal) == voltages.end()) {
      return add("Battery", "System voltage is not 12, 24 or 48 V.", "Give 12, 24 or 48 V.");
    }
    series_ = tables::blocks_in_series(vehicle_.battery.nominal);
    if (tables::battery_kind_by_key(vehicle_.battery.kind) == nullptr) {
      add("Battery", "Battery kind " + circuit::quoted(vehicle_.battery.kind) + " is not known.", "Choose one of the list.");
    }
    value(Field::capacity_ah, vehicle_.battery.capacity_ah, "Battery");
    if (vehicle_.battery.resting) value(Field::resting_per_12v, vehicle_.battery.resting->number(), "Battery, resting");
    if (vehicle_.battery.low) value(Field::low_per_12v, vehicle_.battery.low->number(), "Battery, low");
    if (vehicle_.battery.internal_resistance) {
      value(Field::internal_ohm, vehicle_.battery.internal_resistance->number(), "Battery");
    }
    if (problems_.empty()) low_below_resting();
  }

  // Held with each circuit too; a vehicle may have none.
  void low_below_resting() {
    const tables::BatteryKind& kind = *tables::battery_kind_by_key(vehicle_.battery.kind);
    const units::Volts resting = vehicle_.battery.resting.value_or(kind.resting * series_);
    if (vehicle_.battery.low.value_or(kind.low * series_) <= resting) return;
    add("Battery", "Its low voltage is above its resting voltage of " + units::number_text(resting.number(), 6) + " V.",
        "Give a low voltage of at most that, or a higher resting voltage.");
  }

  void ids() {
    std::set<std::uint32_t> seen;
    const auto fresh = [&](std::uint32_t number, const char* what) {
      if (number == 0 || !seen.insert(number).second) {
        add(what, "Its number " + std::to_string(number) + (number == 0 ? " is not allowed." : " is already taken."),
            "Give every block, circuit and source a number of its own, 1 or more.");
      }
    };
    for (const Block& each : vehicle_.blocks) fresh(each.id.number, "Block");
    for (const PlacedCircuit& each : vehicle_.circuits) fresh(each.id.number, "Circuit");
    for (const Source& each : vehicle_.sources) fresh(each.id.number, "Source");
    const std::uint32_t largest = seen.empty() ? 0 : *seen.rbegin();
    if (largest > circuit::kMaxOutletId || vehicle_.next_id <= largest || vehicle_.next_id > circuit::kMaxOutletId + 1) {
      add("", "The next number is " + std::to_string(vehicle_.next_id) + ".",
          "Give a number above every one in use, at most " + std::to_string(circuit::kMaxOutletId + 1) + ".");
    }
  }

  void block(const Block& block) {
    const std::string title = "Block " + circuit::quoted(block.name);
    keep(circuit::check_name(block.name, "Block name"));
    value(Field::positions, block.positions, title);
    if (block.rating) value(Field::block_a, block.rating->number(), title);
    value(Field::main_fuse_a, block.main.rating.number(), title + ", main fuse");
    value(Field::main_fuse_distance_m, block.main.distance.number(), title + ", main fuse");
    if (block.disconnect) value(Field::disconnect_a, block.disconnect->number(), title + ", main switch");
    value(Field::feeder_run_m, block.feeder.run.number(), title + ", feeder");
    conductor(block.feeder.size, title + ", feeder");
    keep(circuit::check_fuse_family(block.fuse_family, title));
    const tables::Part* clamp = tables::part_by_key(block.clamp_part);
    if (clamp == nullptr || clamp->kind != tables::PartKind::clamp) {
      add(title + ", clamp", "Part " + circuit::quoted(block.clamp_part) + " is not a clamp.", "Choose one of the list.");
    }
    if (block.clamp_rating) value(Field::part_rating_a, block.clamp_rating->number(), title + ", clamp");
    if (block.at_most_at_once) value(Field::at_most_at_once_a, block.at_most_at_once->number(), title + ", most at once");
  }

  void source(const Source& source) {
    const std::string title = "Source " + circuit::quoted(source.name);
    keep(circuit::check_name(source.name, "Source name"));
    value(Field::highest_per_12v, source.highest.number(), title);
    value(Field::source_a, source.most.number(), title);
    value(Field::source_run_m, source.cable_run.number(), title + ", cable");
    conductor(source.cable_size, title + ", cable");
    value(Field::main_fuse_a, source.fuse.number(), title + ", fuse");
  }

  void positions() {
    std::set<std::pair<BlockId, int>> taken;
    for (const PlacedCircuit& each : vehicle_.circuits) {
      const std::string title = "Circuit " + circuit::quoted(each.plan.name);
      const Block* block = find_block(vehicle_, each.block);
      if (block == nullptr) {
        add(title, "It sits on no block of this vehicle.", "Put it on a position of one of its blocks.");
      } else if (each.position < 1 || each.position > block->positions) {
        add(title, "Position " + std::to_string(each.position) + " is not on its block.",
            "Give 1 to " + std::to_string(block->positions) + ", or give the block more positions.");
      } else if (!taken.insert({each.block, each.position}).second) {
        add(title, "Position " + std::to_string(each.position) + " feeds another circuit already.",
            "Give each circuit a position of its own.");
      }
    }
  }

  void placed(const PlacedCircuit& each) {
    const std::string title = "Circuit " + circuit::quoted(each.plan.name);
    for (Problem& problem : circuit::validate(circuit_of(vehicle_, each.id))) {
      problems_.push_back(in_circuit(std::move(problem), title));
    }
    if (each.built) built(each, title);
    traces(each, title);
  }

  void built(const PlacedCircuit& each, const std::string& title) {
    const Built& built = *each.built;
    for (Problem& problem : circuit::validate(as_built(vehicle_, each.id))) {
      problems_.push_back(in_circuit(std::move(problem), title + " as built"));
    }
    const bool has_fuse = built.fuse > units::Amperes(0.0);
    if (has_fuse) value(Field::fuse_a, built.fuse.number(), title + " as built, fuse");
    if (!is_date(built.date)) add(title + " as built", "Its date is not a date.", "Give it like 2026-11-25, or none.");
    if (has_fuse == (built.fuse_knowledge == Knowledge::unknown)) {
      add(title + " as built, fuse", "What is known of the fuse does not go with its rating.",
          "Give a rating, or say that it is unknown.");
    }
    bool fits = built.runs.size() == built.circuit.outlets.size();
    for (std::size_t i = 0; fits && i < built.runs.size(); ++i) {
      const circuit::Outlet& outlet = built.circuit.outlets[i];
      fits = built.runs[i].outlet == outlet.id &&
             outlet.run.size.has_value() == (built.runs[i].size != Knowledge::unknown);
    }
    if (!fits) {
      add(title + " as built", "What is known of its wires does not go with its outlets.",
          "Give one entry for each outlet, with a wire size or 'unknown'.");
    }
  }

  // "2026-11-25", or empty.
  static bool is_date(const std::string& text) {
    constexpr std::string_view kForm = "0000-00-00";
    if (text.empty()) return true;
    if (text.size() != kForm.size()) return false;
    for (std::size_t i = 0; i < text.size(); ++i) {
      const bool digit = text[i] >= '0' && text[i] <= '9';
      if (kForm[i] == '0' ? !digit : text[i] != '-') return false;
    }
    return true;
  }

  void traces(const PlacedCircuit& each, const std::string& title) {
    if (each.traces.size() > kMaxTraces) {
      add(title + ", traces", std::to_string(each.traces.size()) + " are kept.", "Keep at most " + std::to_string(kMaxTraces) + ".");
    }
    std::uint32_t before = 0;
    for (const TraceRecord& trace : each.traces) {
      if (trace.number <= before || trace.number > circuit::kMaxOutletId) {
        add(title + ", traces", "Their numbers do not rise.",
            "Give each a higher number, at most " + std::to_string(circuit::kMaxOutletId) + ".");
      }
      before = trace.number;
      this->trace(trace, title + ", trace " + std::to_string(trace.number));
    }
  }

  void trace(const TraceRecord& trace, const std::string& title) {
    if (trace.told.size() > kMaxTold) add(title, "It has too many answers.", "Keep at most " + std::to_string(kMaxTold) + ".");
    const auto text = [&](const std::string& words) { keep(circuit::check_text(words, kMaxTextBytes, title)); };
    text(trace.date);
    text(trace.circuit);
    text(trace.complaint);
    text(trace.outcome);
    for (const ToldAnswer& told : trace.told) {
      text(told.question);
      text(told.answer);
    }
  }

  const Vehicle& vehicle_;
  int series_ = 1;
  Problems problems_;
};

}  // namespace

Problems validate(const Vehicle& vehicle) { return Check(vehicle).run(); }

}  // namespace vehicle
