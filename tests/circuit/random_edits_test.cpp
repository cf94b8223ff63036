// Whatever is edited in whatever order: the circuit stays valid, what is refused leaves it as
// it was, and undo and redo give the same bytes.
#include <doctest/doctest.h>

#include <cstdlib>
#include <limits>
#include <random>

#include "circuit/edit.h"
#include "circuit/history.h"
#include "circuit/limits.h"
#include "circuit/validate.h"
#include "document/circuit_file.h"
#include "tables/part.h"

using namespace circuit;

namespace {

int sequences() { return std::getenv("BRANCHLIGHT_QUICK") != nullptr ? 1'000 : 20'000; }

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}

  int below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(engine_); }
  bool one_in(int n) { return below(n) == 0; }

  // Mostly in range, at times at its ends, past them, or no number.
  double number(Field field) {
    const Limit& range = limit(field);
    constexpr double endless = std::numeric_limits<double>::infinity();
    switch (below(24)) {
      case 0: return range.low;
      case 1: return range.high;
      case 2: return 0.0;
      case 3: return -range.high;
      case 4: return range.high * 2 + 1;
      case 5: return std::numeric_limits<double>::quiet_NaN();
      case 6: return one_in(2) ? endless : -endless;
      default: return std::uniform_real_distribution<double>(range.low, range.high)(engine_);
    }
  }
  template <class T>
  std::optional<T> maybe(T value) { return one_in(2) ? std::optional<T>(value) : std::nullopt; }

  OutletId outlet(const Circuit& circuit) {
    if (one_in(12)) return kBlock;
    if (one_in(20)) return OutletId{4'000'000'000u};
    return circuit.outlets[static_cast<std::size_t>(below(static_cast<int>(circuit.outlets.size())))].id;
  }
  std::string name() {
    static const std::vector<std::string> names{"Pump", "Küche", "<b>x</b>", "\"quotes\" \\ and /", "", "a\nb", "\xFF",
                                                std::string(40, 'n'), std::string(41, 'n'), "🔌 plug"};
    return names[static_cast<std::size_t>(below(static_cast<int>(names.size())))];
  }
  std::string part(tables::PartKind kind) {
    if (one_in(20)) return "no-such-part";
    const auto all = tables::parts(kind);
    return std::string(all[static_cast<std::size_t>(below(static_cast<int>(all.size())))].key);
  }
  std::string size() {
    static const std::vector<std::string> sizes{"18awg", "10awg", "4/0awg", "2.5mm2", "120mm2", "9awg"};
    return sizes[static_cast<std::size_t>(below(static_cast<int>(sizes.size())))];
  }
  Supply supply(const Supply& old) {
    Supply s = old;
    static const std::vector<double> voltages{12, 24, 48, 48, 24, 12, 36};
    if (one_in(2)) s.nominal = units::Volts(voltages[static_cast<std::size_t>(below(7))]);
    const double scale = s.nominal.number() / 12.0;
    if (one_in(2)) s.resting = maybe(units::Volts(number(Field::resting_per_12v) * scale));
    if (one_in(2)) s.low = maybe(units::Volts(number(Field::low_per_12v) * scale));
    if (one_in(3)) s.feeder_run = units::Metres(number(Field::feeder_run_m));
    if (one_in(3)) s.feeder_size = size();
    if (one_in(3)) s.main_fuse = units::Amperes(number(Field::main_fuse_a));
    if (one_in(3)) s.battery = one_in(2) ? "lifepo4" : "lead-flooded";
    return s;
  }
  Wiring wiring(const Wiring& old) {
    Wiring w = old;
    w.gauge = one_in(2) ? tables::GaugeSystem::awg : tables::GaugeSystem::metric;
    if (one_in(3)) w.around.ambient = units::Celsius(number(Field::ambient_c));
    w.around.hot_space = one_in(2);
    w.around.insulation = units::Celsius(one_in(10) ? 100 : 90);
    w.around.circuits_bundled = below(22);
    if (one_in(3)) w.wire_temperature = units::Celsius(number(Field::wire_temperature_c));
    w.clamp_part = part(tables::PartKind::clamp);
    w.clamp_rating = maybe(units::Amperes(number(Field::part_rating_a)));
    w.splice_part = part(tables::PartKind::splice);
    if (one_in(3)) w.tail = units::Metres(number(Field::tail_m));
    return w;
  }
  Load load(units::Volts nominal) {
    Load l;
    l.kind = static_cast<LoadKind>(below(3));
    l.rating_in_watts = one_in(2);
    l.rating = number(l.rating_in_watts ? Field::load_w : Field::load_a);
    l.minimum_voltage = maybe(units::Volts(number(Field::minimum_voltage_per_12v) * nominal.number() / 12.0));
    return l;
  }
  Edit edit(const Circuit& c) {
    switch (below(29)) {
      case 0: return SetName{name()};
      case 1: return SetPlace{name()};
      case 2: return SetFusePosition{below(101)};
      case 3: return SetSetting{static_cast<Setting>(below(4))};
      case 4: return SetSupply{supply(c.supply)};
      case 5: return SetWiring{wiring(c.wiring)};
      case 6: return SetDropLimit{number(Field::drop_limit_fraction)};
      case 7: return SetAtMostAtOnce{maybe(units::Amperes(number(Field::at_most_at_once_a)))};
      case 8: case 9: case 10: return AddOutlet{outlet(c)};
      case 11: case 12: return InsertOutlet{outlet(c)};
      case 13: case 14: return RemoveOutlet{outlet(c)};
      case 15: case 16: case 17: return MoveOutlet{outlet(c), below(7) - 3};
      case 18: case 19: case 20: return FeedOutletFrom{outlet(c), outlet(c)};
      case 21: return SetOutletName{outlet(c), name()};
      case 22: return SetRun{outlet(c), units::Metres(number(Field::run_m))};
      case 23: return SetLoad{outlet(c), load(c.supply.nominal)};
      case 24: return SetOutletDropLimit{outlet(c), maybe(number(Field::drop_limit_fraction))};
      case 25: return SetOutletParts{outlet(c), part(tables::PartKind::outlet), part(tables::PartKind::terminal),
                                     maybe(units::Amperes(number(Field::part_rating_a)))};
      case 26: return SetShelf{{{size(), size()}, {number(Field::fuse_a)}}};
      case 27: return SetPractice{maybe(tables::practices()[static_cast<std::size_t>(below(5))].id), one_in(2) ? "iec" : "mauve"};
      default: return SetInHand{maybe(InHand{size(), units::Amperes(number(Field::fuse_a))})};
    }
  }

 private:
  std::mt19937_64 engine_;
};

}  // namespace

TEST_CASE("random edits: always valid, refusals change nothing, undo and redo are exact") {
  constexpr std::uint64_t kSeed = 20261125;
  MESSAGE("seed ", kSeed, ", ", sequences(), " sequences");
  Dice dice(kSeed);
  int made = 0;
  int refused = 0;
  int broken = 0;  // counted and checked once: a CHECK per step would cost more than the step
  for (int sequence = 0; sequence < sequences(); ++sequence) {
    const Circuit start = dice.one_in(2) ? demo_circuit() : new_circuit(tables::GaugeSystem::metric);
    const std::string start_text = document::write_circuit(start);
    Circuit current = start;
    History history;
    const int steps = 1 + dice.below(20);
    for (int step = 0; step < steps; ++step) {
      const Edit edit = dice.edit(current);
      EditResult result = circuit::apply(current, edit);
      if (!result.circuit) {
        ++refused;
        if (!result.problem || result.problem->sentence.empty() || result.problem->allowed.empty()) ++broken;
        continue;
      }
      ++made;
      if (result.problem || !validate(*result.circuit).empty()) ++broken;
      if (result.circuit->next_outlet_id < current.next_outlet_id) ++broken;
      history.remember(current, describe(current, edit));
      current = std::move(*result.circuit);
    }
    const std::string end_text = document::write_circuit(current);
    const auto read = document::read_circuits(end_text);
    if (read.circuits.size() != 1 || document::write_circuit(read.circuits.front()) != end_text) ++broken;
    Circuit walked = current;
    while (auto before = history.undo(walked)) walked = std::move(*before);
    if (document::write_circuit(walked) != start_text) ++broken;
    while (auto next = history.redo(walked)) walked = std::move(*next);
    if (document::write_circuit(walked) != end_text) ++broken;
  }
  CHECK(broken == 0);
  // Both doors are really used.
  CHECK(made > sequences() * 4);
  CHECK(refused > sequences());
  MESSAGE(made, " edits made, ", refused, " refused");
}
