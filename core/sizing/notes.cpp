#include "sizing/notes.h"

#include <algorithm>

#include "sizing/words.h"
#include "sizing/protection.h"
#include "tables/supply.h"
#include "tables/wire_metal.h"
#include "units/format.h"

namespace sizing {

units::Amperes short_at_block(const Context& context) {
  const circuit::Supply& supply = context.circuit.supply;
  const tables::BatteryKind* battery = tables::battery_kind_by_key(supply.battery);
  const tables::Conductor* feeder = tables::conductor_by_id(supply.feeder_size);
  const double blocks = static_cast<double>(tables::blocks_in_series(supply.nominal));
  units::Ohms loop = supply.internal_resistance.value_or(battery->internal_resistance * blocks);
  if (feeder != nullptr) loop += tables::resistance_20c(*feeder, supply.feeder_metal) * supply.feeder_run * 2.0;
  return context.charging / loop;
}

namespace {

// How near the battery the main fuse should sit where rules differ: 33 CFR 183.455, the strictest.
constexpr units::Metres kMainFuseWithin{0.178};

// A short of this current: does the nearer fuse open before the one before it lets go? One of at
// most half the rating does (common practice, no source); else by the slowest gate of the one and
// the fastest of the other.
constexpr double kHalf = 0.5;
enum class Opens { nearer_first, either, unknown };
Opens which_opens_first(const tables::FuseFamily& near_family, units::Amperes nearer, const tables::FuseFamily& far_family,
                        units::Amperes before, units::Amperes current) {
  if (nearer <= before * kHalf) return Opens::nearer_first;
  const auto opens = tables::opens_within(near_family, nearer, current);
  const auto holds = tables::holds_for(far_family, before, current);
  if (!opens) return Opens::unknown;
  return holds && *opens < *holds ? Opens::nearer_first : Opens::either;
}

void note_breaking(const Context& context, std::vector<std::string>& notes) {
  const circuit::Supply& supply = context.circuit.supply;
  const units::Amperes prospective = short_at_block(context);
  const units::Amperes breaks = tables::breaks_at(context.family, context.charging);
  if (prospective <= breaks) return;
  std::string note = "A short at the block could draw about " + units::number_text(prospective.number(), 2) +
                     " A, more than a " + without_capital(context.family.name) + " can break (" +
                     units::number_text(breaks.number(), 4) + " A). ";
  const tables::FuseFamily& main = tables::fuse_family(supply.main_fuse_kind);
  if (supply.main_fuse <= units::Amperes(0.0)) {
    note += "The main fuse must be able to break it, and none is told.";
  } else if (tables::breaks_at(main, context.charging) >= prospective) {
    note += "The main fuse, a " + without_capital(main.name) + ", can.";
  } else {
    note += "Nor can the main fuse, a " + without_capital(main.name) + " (" +
            units::number_text(tables::breaks_at(main, context.charging).number(), 4) + " A): take a kind that breaks more.";
  }
  notes.push_back(std::move(note));
}

void note_supply(const Context& context, const Candidate& choice, std::vector<std::string>& notes) {
  const circuit::Supply& supply = context.circuit.supply;
  note_breaking(context, notes);
  if (supply.main_fuse <= units::Amperes(0.0)) {
    notes.push_back("No main fuse is told: the feeder is not known to be protected. It needs its own fuse, close to the battery.");
    return;
  }
  const tables::FuseFamily& main = tables::fuse_family(supply.main_fuse_kind);
  const units::Amperes prospective = short_at_block(context);
  if (choice.fuse && which_opens_first(context.family, *choice.fuse, main, supply.main_fuse, prospective) != Opens::nearer_first) {
    notes.push_back("In a short near the block either the circuit's " + fuse_text(*choice.fuse) + " or the main fuse, " +
                    units::amperes_text(supply.main_fuse) + ", may open first.");
  }
  if (context.charging > main.rated_voltage) {
    notes.push_back("The main fuse, a " + without_capital(main.name) + ", is made for up to " +
                    units::volts_text(main.rated_voltage) + "; this system reaches " + units::volts_text(context.charging) +
                    ". Take a kind that is marked for it.");
  }
  if (supply.main_fuse_distance > kMainFuseWithin && supply.feeder_run > units::Metres(0.0)) {
    notes.push_back("The main fuse sits " + units::length_text(supply.main_fuse_distance, units::Preference::metric) +
                    " from the battery: that piece is not protected. Within 0.18 m is the strictest rule.");
  }
}

// Fuses in the line, each after the one before it.
void note_cascade(const Context& context, const Candidate& choice, std::vector<std::string>& notes) {
  if (!choice.fuse) return;
  const network::Fitted fitted{choice.size, choice.tail, *choice.fuse};
  const auto shorts = far_shorts(context, fitted);
  for (std::size_t at = 1; at < context.zones.all.size(); ++at) {
    const Zone& zone = context.zones.all[at];
    if (!shorts[at]) continue;
    const units::Amperes current = shorts[at]->current;
    const Zone& before = context.zones.all[zone.inside];
    const units::Amperes upstream = before.begins_at ? before.protection.rating : *choice.fuse;
    if (which_opens_first(context.family, zone.protection.rating, context.family, upstream, current) == Opens::nearer_first) continue;
    notes.push_back("In a short beyond " + outlet_text(*zone.begins_at) + " either its own " +
                    units::amperes_text(zone.protection.rating) + " or the " + units::amperes_text(upstream) +
                    " before it may open first; one at most half as large usually does.");
  }
}

// A socket that may carry its rating for a while, but not for hours.
void note_lasting(const Context& context, std::vector<std::string>& notes) {
  for (std::size_t i = 0; i < context.circuit.outlets.size(); ++i) {
    units::Amperes lasting;
    for (const circuit::Device& device : context.circuit.outlets[i].devices) {
      if (device.use == circuit::Use::continuous) lasting += circuit::rated_current(device.load, context.circuit.supply.nominal);
    }
    const tables::Part& socket = *context.sockets[i];
    if (context.circuit.outlets[i].rating || lasting <= socket.continuous) continue;
    notes.push_back("The outlet at " + outlet_text(i) + " should not carry more than " + units::amperes_text(socket.continuous) +
                    " for hours; " + units::amperes_text(lasting) + " lasts there.");
  }
}

// Low batteries and charging ones raise the current of some loads; on for less than hours, they are
// not given a larger fuse for it.
void note_more_than_fuse(const Candidate& choice, std::vector<std::string>& notes) {
  if (!choice.fuse || choice.design_current <= *choice.fuse) return;
  notes.push_back("With the battery low or charging up to " + units::amperes_text(choice.design_current) + " may flow, more than the " +
                  fuse_text(*choice.fuse) + " is rated for: for minutes it usually holds, for longer it may open.");
}

// A start of under a second that the fuse may not hold.
void note_start(const Candidate& choice, std::vector<std::string>& notes) {
  for (const Judgement& judgement : choice.judgements) {
    if (judgement.criterion != Criterion::inrush || judgement.value <= judgement.limit) continue;
    notes.push_back(judgement.sentence + " If it opens, take the next rating that the wire allows.");
  }
}

void note_wires(const Context& context, std::vector<std::string>& notes) {
  bool clad = context.circuit.supply.feeder_metal == tables::WireMetal::copper_clad_aluminium;
  bool chassis = false;
  for (const circuit::Outlet& outlet : context.circuit.outlets) {
    clad = clad || outlet.run.metal == tables::WireMetal::copper_clad_aluminium;
    chassis = chassis || outlet.run.back == circuit::ReturnPath::chassis;
  }
  if (clad) notes.push_back(std::string(tables::wire_metal(tables::WireMetal::copper_clad_aluminium).caution));
  if (chassis) {
    notes.push_back("The chassis brings current back: bonds bare, bolted, greased and in reach. A rusty bond heats, and a loose "
                    "one sends the current through hinges, hitch or other wires. Never the hull of a boat, never near gas.");
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
  note_cascade(context, choice, notes);
  note_more_than_fuse(choice, notes);
  note_start(choice, notes);
  note_wires(context, notes);
  note_lasting(context, notes);
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
