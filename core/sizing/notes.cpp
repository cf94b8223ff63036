#include "sizing/notes.h"

#include <algorithm>

#include "sizing/words.h"
#include "tables/supply.h"
#include "units/format.h"

namespace sizing {

units::Amperes short_at_block(const Context& context) {
  const circuit::Supply& supply = context.circuit.supply;
  const tables::BatteryKind* battery = tables::battery_kind_by_key(supply.battery);
  const tables::Conductor* feeder = tables::conductor_by_id(supply.feeder_size);
  const double blocks = static_cast<double>(tables::blocks_in_series(supply.nominal));
  units::Ohms loop = battery->internal_resistance * blocks;
  if (feeder != nullptr) loop += feeder->resistance_20c * supply.feeder_run * 2.0;
  return context.charging / loop;
}

namespace {

void note_supply(const Context& context, const Candidate& choice, std::vector<std::string>& notes) {
  const circuit::Supply& supply = context.circuit.supply;
  const units::Amperes prospective = short_at_block(context);
  if (prospective > context.family.breaking_capacity) {
    notes.push_back("A short at the block could draw about " +
                    units::number_text(prospective.number(), 2) + " A, more than a " +
                    without_capital(context.family.name) + " can break (" +
                    units::number_text(context.family.breaking_capacity.number(), 4) +
                    " A). The main fuse must be able to break it.");
  }
  if (context.charging > context.family.rated_voltage) {
    notes.push_back("While charging, the system reaches " + units::volts_text(context.charging) + ", above the " +
                    units::volts_text(context.family.rated_voltage) +
                    " of this fuse. Take one marked for more if you can get it.");
  }
  if (supply.main_fuse <= units::Amperes(0.0)) {
    notes.push_back("No main fuse is told. The feeder needs its own, close to the battery.");
  } else if (choice.fuse && *choice.fuse >= supply.main_fuse) {
    notes.push_back("The circuit's " + fuse_text(*choice.fuse) + " is not below the main fuse, " +
                    units::amperes_text(supply.main_fuse) + ": either may open first.");
  }
  const tables::Conductor* feeder = tables::conductor_by_id(supply.feeder_size);
  if (feeder == nullptr || supply.feeder_run <= units::Metres(0.0)) return;
  tables::Surroundings alone;
  alone.insulation = context.circuit.wiring.around.insulation;
  const auto carries = tables::ampacity(context.circuit.wiring.ampacity_table, *feeder, alone).value;
  if (carries && carries->derated < supply.main_fuse) {
    notes.push_back("The main fuse, " + units::amperes_text(supply.main_fuse) + ", is above the " +
                    units::amperes_text(carries->derated) + " that the " + size_text(*feeder) + " feeder carries.");
  }
}

bool from_memory(const Candidate& choice) {
  return std::any_of(choice.judgements.begin(), choice.judgements.end(), [](const Judgement& judgement) {
    return judgement.citation != nullptr && judgement.citation->standing == tables::Standing::memory;
  });
}

}  // namespace

std::vector<std::string> notes_for(const Context& context, const Candidate& choice) {
  std::vector<std::string> notes;
  note_supply(context, choice, notes);
  if (context.circuit.wiring.around.circuits_bundled > 1) {
    notes.push_back("Counted for " + std::to_string(context.circuit.wiring.around.circuits_bundled) +
                    " circuits tied together. More in the bundle need a new answer.");
  }
  if (choice.tail != nullptr && choice.tail != choice.size) {
    notes.push_back("Tails from splice to outlet: " + size_text(*choice.tail) + ".");
  }
  if (from_memory(choice)) notes.push_back("Some limits used are from memory; the reasons tell which.");
  notes.push_back("A planning figure. Local code, the makers' instructions and licensed practice come first.");
  return notes;
}

}  // namespace sizing
