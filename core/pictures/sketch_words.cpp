#include "pictures/sketch_words.h"

#include "tables/supply.h"

namespace pictures {
namespace {

std::string battery_words(const circuit::Supply& supply) {
  if (supply.resting) return units::volts_text(*supply.resting);
  const tables::BatteryKind* kind = tables::battery_kind_by_key(supply.battery);
  return kind ? units::volts_text(kind->resting * tables::blocks_in_series(supply.nominal)) : std::string();
}

const sizing::OutletResult* result_of(const sizing::Candidate* choice, const circuit::Circuit& circuit,
                                      std::size_t index) {
  if (!choice || index >= choice->outlets.size()) return nullptr;
  const sizing::OutletResult& result = choice->outlets[index];
  return result.id == circuit.outlets[index].id ? &result : nullptr;
}

std::vector<OutletWords> outlet_words(const circuit::Circuit& circuit, const sizing::Candidate* choice,
                                      units::Preference preference) {
  std::vector<OutletWords> words;
  words.reserve(circuit.outlets.size());
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    OutletWords outlet;
    outlet.letter = circuit::outlet_letter(i);
    outlet.length = units::length_text(circuit.outlets[i].run.length, preference);
    if (const sizing::OutletResult* result = result_of(choice, circuit, i)) {
      outlet.voltage = units::volts_text(result->voltage);
      outlet.beyond_limit = !result->runs || result->drop_fraction > result->drop_limit;
    }
    words.push_back(std::move(outlet));
  }
  return words;
}

// Follows each line as far as it goes; what forks off waits its turn.
std::vector<Strand> strands_of(const circuit::Circuit& circuit) {
  std::vector<Strand> strands;
  for (const std::size_t first : circuit::fed_by(circuit, circuit::kBlock)) {
    strands.push_back({std::nullopt, {first}});
  }
  for (std::size_t s = 0; s < strands.size(); ++s) {
    for (std::size_t next = strands[s].outlets.front();;) {
      const std::vector<std::size_t> fed = circuit::fed_by(circuit, circuit.outlets[next].id);
      for (std::size_t k = 1; k < fed.size(); ++k) strands.push_back({next, {fed[k]}});
      if (fed.empty() || strands[s].outlets.size() >= circuit.outlets.size()) break;
      next = fed.front();
      strands[s].outlets.push_back(next);
    }
  }
  return strands;
}

std::string describe(const circuit::Circuit& circuit, const SketchWords& words,
                     const std::optional<circuit::OutletId>& ringed) {
  std::string text = "Battery";
  if (!words.battery.empty()) text += " " + words.battery;
  text += words.fuse == "fuse" ? ", fuse not chosen yet" : ", " + words.fuse + " fuse";
  bool main_line = true;
  for (const Strand& strand : words.strands) {
    if (!main_line) {
      text += ". Branch from " + (strand.from ? words.outlets[*strand.from].letter : std::string("the fuse"));
    }
    main_line = false;
    for (const std::size_t i : strand.outlets) {
      const OutletWords& outlet = words.outlets[i];
      text += ", then " + outlet.length + " to " + outlet.letter + " " + circuit.outlets[i].name;
      if (!outlet.voltage.empty()) text += ", " + outlet.voltage;
      if (outlet.beyond_limit) text += ", beyond its limit";
      if (ringed && *ringed == circuit.outlets[i].id) text += ", marked";
    }
  }
  return text + ".";
}

}  // namespace

SketchWords sketch_words(const circuit::Circuit& circuit, const sizing::Candidate* choice,
                         const SketchOptions& options) {
  SketchWords words;
  words.battery = battery_words(circuit.supply);
  words.fuse = choice && choice->fuse ? units::amperes_text(*choice->fuse) : "fuse";
  if (options.fuse) words.fuse = *options.fuse;
  words.outlets = outlet_words(circuit, choice, options.preference);
  words.strands = strands_of(circuit);
  words.description = describe(circuit, words, options.ringed);
  return words;
}

}  // namespace pictures
