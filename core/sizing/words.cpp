#include "sizing/words.h"

#include "units/format.h"

namespace sizing {

std::string size_text(const tables::Conductor& size) {
  return std::string(size.size) + " " + std::string(tables::gauge_system_suffix(size.system));
}

std::string fuse_text(units::Amperes rating) { return units::amperes_text(rating) + " fuse"; }

std::string outlet_text(std::size_t index) { return circuit::outlet_letter(index); }

std::string current_text(units::Amperes current) { return units::amperes_text(current); }

std::string rough_current_text(units::Amperes current) {
  return units::number_text(current.number(), current < units::Amperes(100.0) ? 2 : 3) + " A";
}

std::string without_capital(std::string_view name) {
  std::string text(name);
  if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z') text[0] = static_cast<char>(text[0] - 'A' + 'a');
  return text;
}

std::string exact_current_text(units::Amperes current) { return units::number_text(current.number(), 4) + " A"; }

std::string set_by_words(Criterion criterion) {
  switch (criterion) {
    case Criterion::ampacity: return "heat in the wire";
    case Criterion::fuse_rating: return "the fuse";
    case Criterion::fuse_voltage: return "the fuse's voltage";
    case Criterion::part_rating: return "the parts";
    case Criterion::fit: return "what the parts take";
    case Criterion::mechanical_minimum: return "strength";
    case Criterion::operating_point: return "what the load needs to run";
    case Criterion::drop: return "voltage drop";
    case Criterion::device_minimum: return "the device's lowest voltage";
    case Criterion::far_short: return "a short at the far end";
    case Criterion::withstand: return "heat in a short";
    case Criterion::inner_fuses: return "the fuse in the line";
    case Criterion::inrush: return "the starting current";
    case Criterion::feeder: return "the feeder";
    case Criterion::feeder_drop: return "voltage drop in the feeder";
  }
  return "";
}

std::string capital(std::string sentence) {
  if (!sentence.empty() && sentence[0] >= 'a' && sentence[0] <= 'z') {
    sentence[0] = static_cast<char>(sentence[0] - 'a' + 'A');
  }
  return sentence;
}

}  // namespace sizing
