#include "diagnosis/case.h"

#include <algorithm>
#include <array>

#include "circuit/validate.h"
#include "diagnosis/built.h"
#include "diagnosis/words.h"
#include "tables/conductor.h"
#include "tables/row_by_key.h"
#include "units/format.h"

namespace diagnosis {
namespace {

constexpr std::array<SymptomRow, 10> kSymptoms{{
    {Symptom::one_dead, "one-dead", "One outlet is dead", true, false},
    {Symptom::several_dead, "several-dead", "Several outlets are dead", true, false},
    {Symptom::all_dead, "all-dead", "Everything on this fuse is dead", false, false},
    {Symptom::weak, "weak", "Weak, dim or slow under load", true, false},
    {Symptom::reversed, "reversed", "Plus and minus are changed over", true, false},
    {Symptom::only_when_moved, "only-when-moved", "Works only when moved", true, false},
    {Symptom::blows_at_once, "blows-at-once", "The fuse blows at once", false, false},
    {Symptom::blows_later, "blows-later", "The fuse blows after a while", false, false},
    {Symptom::volts_but_dead, "volts-but-dead", "The device stays off, the meter reads volts", true, true},
    {Symptom::something_else_alive, "something-else-alive", "Something else came alive", false, false},
}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < kSymptoms.size(); ++i) {
    if (static_cast<std::size_t>(kSymptoms[i].symptom) != i) return false;
  }
  return true;
}
static_assert(in_order());

void check_complaint(const Case& the_case, circuit::Problems& found) {
  const SymptomRow& row = symptom_row(the_case.complaint.symptom);
  const std::size_t named = the_case.complaint.outlets.size();
  if (row.names_outlets && named == 0) {
    found.push_back({"Complaint", "No outlet is named.", "Say which outlet it is."});
  }
  if (the_case.complaint.symptom == Symptom::several_dead && named == 1) {
    found.push_back({"Complaint", "Several outlets are dead, but one is named.", "Name at least two."});
  }
  for (const circuit::OutletId id : the_case.complaint.outlets) {
    if (circuit::find_outlet(the_case.circuit, id) == nullptr) {
      found.push_back({"Complaint", "Outlet " + std::to_string(id.number) + " is not on this circuit.",
                       "Name an outlet of this circuit."});
    } else if (!has_socket(*circuit::find_outlet(the_case.circuit, id))) {
      found.push_back({"Complaint", "At " + letter_of(the_case, id) + " nothing is plugged in: it only joins wires.",
                       "Name an outlet of this circuit."});
    }
  }
  if (row.needs_meter && !the_case.tools.meter) {
    found.push_back(
        {"Complaint", "Volts are told, but no meter is in hand.", "Tick the meter, or say that it is dead."});
  }
}

void check_built(const Case& the_case, circuit::Problems& found) {
  const Built& built = the_case.built;
  const auto wrong_size = [](const std::optional<std::string>& id) {
    return id && tables::conductor_by_id(*id) == nullptr;
  };
  for (const BuiltRun& run : built.runs) {
    if (circuit::find_outlet(the_case.circuit, run.outlet) == nullptr) {
      found.push_back(
          {"Wire",
           joined({"A wire is told for outlet ", std::to_string(run.outlet.number), ", which is not on this circuit."}),
           "Name an outlet of this circuit."});
    }
    if (wrong_size(run.wire) || wrong_size(run.tail))
      found.push_back({"Wire", "No such size.", "Pick one of the list, or say that it is not known."});
    if (!run.wire && run.wire_known != Knowledge::unknown)
      found.push_back({"Wire", "It is called known, but no size is told.", "Say which wire is there."});
  }
  if (built.fuse && !(built.fuse->number() > 0.0))
    found.push_back({"Fuse", "The rating is not above 0 A.", "Read it off the fuse, or say that it is not known."});
  if (!built.fuse && built.fuse_known != Knowledge::unknown)
    found.push_back({"Fuse", "It is called known, but no rating is told.", "Read it off the fuse."});
}

void check_colours(const Case& the_case, circuit::Problems& found) {
  for (const std::string* colour : {&the_case.plus_colour, &the_case.minus_colour}) {
    if (const auto wrong = circuit::check_name(*colour, "Wire colour")) found.push_back(*wrong);
  }
  if (the_case.plus_colour == the_case.minus_colour) {
    found.push_back({"Wire colour", "Plus and minus have the same colour.",
                     "Name two colours that tell them apart, or mark the wires."});
  }
}

void check_neighbour(const Neighbour& each, circuit::Problems& found) {
  constexpr std::string_view kPlace = "Other branch";
  if (!each.name.empty()) {
    if (const auto wrong = circuit::check_name(each.name, std::string(kPlace))) found.push_back(*wrong);
  }
  if (each.fuse_position != 0) {
    if (const auto wrong = circuit::check_value(circuit::Field::fuse_position, each.fuse_position, std::string(kPlace)))
      found.push_back(*wrong);
  }
  if (each.fuse && !(each.fuse->number() > 0.0)) {
    found.push_back({std::string(kPlace), "Its fuse is not above 0 A.", "Read it off the fuse, or leave it out."});
  }
}

}  // namespace

std::span<const SymptomRow> symptoms() { return kSymptoms; }
const SymptomRow& symptom_row(Symptom symptom) { return kSymptoms[static_cast<std::size_t>(symptom)]; }
const SymptomRow* symptom_by_key(std::string_view key) { return tables::row_by_key(kSymptoms, key); }

std::string site_key(Site site) {
  switch (site.location) {
    case Location::battery: return "battery";
    case Location::block: return "block";
    case Location::front: return joined({"front ", std::to_string(site.outlet.number)});
    case Location::behind: break;
  }
  return joined({"behind ", std::to_string(site.outlet.number)});
}

Built built_throughout(const circuit::Circuit& circuit, const network::Fitted& fitted, Knowledge how,
                       Protection protection) {
  Built built;
  for (const circuit::Outlet& outlet : circuit.outlets) {
    BuiltRun run;
    run.outlet = outlet.id;
    if (fitted.size != nullptr) run.wire = std::string(fitted.size->id);
    if (fitted.tail != nullptr) run.tail = std::string(fitted.tail->id);
    if (run.wire) run.wire_known = how;
    run.length_known = how;
    built.runs.push_back(std::move(run));
  }
  if (fitted.fuse.number() > 0.0) {
    built.fuse = fitted.fuse;
    built.fuse_known = how;
  }
  built.protection = protection;
  return built;
}

circuit::Problems problems(const Case& the_case) {
  circuit::Problems found = circuit::validate(the_case.circuit);
  if (std::none_of(the_case.circuit.outlets.begin(), the_case.circuit.outlets.end(), has_socket)) {
    found.push_back({"Circuit", "It has no outlet.", "Add one."});
  }
  check_built(the_case, found);
  check_colours(the_case, found);
  if (the_case.neighbours.size() > kMaxNeighbours) {
    found.push_back({"Block", "Too many other branches.", joined({"At most ", std::to_string(kMaxNeighbours), "."})});
  }
  for (const Neighbour& each : the_case.neighbours) check_neighbour(each, found);
  check_complaint(the_case, found);
  return found;
}

bool knows_wires(const Case& the_case) {
  return std::all_of(the_case.circuit.outlets.begin(), the_case.circuit.outlets.end(),
                     [&](const circuit::Outlet& outlet) {
                       const BuiltRun* run = built_run(the_case.built, outlet.id);
                       return run != nullptr && run->wire && run->wire_known == Knowledge::known;
                     });
}

bool names_fuse(const Case& the_case) {
  const Built& built = the_case.built;
  return built.fuse && built.fuse_known == Knowledge::known && built.protection == Protection::protects &&
         knows_wires(the_case);
}

std::string fuse_rating_words(const Case& the_case) {
  if (names_fuse(the_case)) return units::amperes_text(*the_case.built.fuse);
  return the_case.built.protection == Protection::too_large ? "the rating that Size gives for this wire"
                                                            : "the rating on the block's label";
}

std::string fuse_words(const Case& the_case) {
  return joined({names_fuse(the_case) ? fuse_rating_words(the_case) + " " : std::string(), "fuse at position ",
                 std::to_string(the_case.circuit.fuse_position)});
}

std::string new_fuse_words(const Case& the_case) {
  if (names_fuse(the_case)) return joined({"a new ", fuse_rating_words(the_case), " fuse"});
  return joined({"a new fuse of ", fuse_rating_words(the_case)});
}

std::string fuse_caution(const Case& the_case) {
  if (names_fuse(the_case)) return "Same rating, never a bigger one: the fuse protects the wire.";
  if (the_case.built.protection == Protection::too_large) {
    return "That fuse was larger than this wire may have: not back in, size it first.";
  }
  return "The rating on the label, at most what the wire carries. Not sure: size it.";
}

Case generic_case(tables::GaugeSystem gauge) {
  Case made;
  made.circuit = circuit::new_circuit(gauge);
  made.circuit.name = "Some circuit";
  made.circuit.outlets.clear();
  for (std::uint32_t k = 1; k <= 3; ++k) {
    circuit::Outlet outlet;
    outlet.id = {k};
    outlet.name = joined({"Outlet ", circuit::outlet_letter(k - 1)});
    outlet.fed_from = {k - 1};
    outlet.run.length = units::Metres(k == 1 ? 3.0 : 1.5);
    outlet.devices.front().load.rating = 2.0;
    made.circuit.outlets.push_back(outlet);
  }
  made.circuit.next_outlet_id = 4;
  made.neighbours.push_back({});
  return made;
}

}  // namespace diagnosis
