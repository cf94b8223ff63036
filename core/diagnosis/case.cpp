#include "diagnosis/case.h"

#include <algorithm>
#include <array>

#include "circuit/validate.h"
#include "diagnosis/words.h"
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
    }
  }
  if (row.needs_meter && !the_case.tools.meter) {
    found.push_back({"Complaint", "Volts are told, but no meter is in hand.", "Tick the meter, or say that it is dead."});
  }
}

}  // namespace

std::span<const SymptomRow> symptoms() { return kSymptoms; }
const SymptomRow& symptom_row(Symptom symptom) { return kSymptoms[static_cast<std::size_t>(symptom)]; }
const SymptomRow* symptom_by_key(std::string_view key) {
  const auto* found = std::find_if(kSymptoms.begin(), kSymptoms.end(), [&](const SymptomRow& r) { return r.key == key; });
  return found == kSymptoms.end() ? nullptr : found;
}

std::string site_key(Site site) {
  switch (site.location) {
    case Location::battery: return "battery";
    case Location::block: return "block";
    case Location::front: return joined({"front ", std::to_string(site.outlet.number)});
    case Location::behind: break;
  }
  return joined({"behind ", std::to_string(site.outlet.number)});
}

circuit::Problems problems(const Case& the_case) {
  circuit::Problems found = circuit::validate(the_case.circuit);
  if (the_case.circuit.outlets.empty()) {
    found.push_back({"Circuit", "It has no outlet.", "Add one."});
  }
  if (the_case.fitted.size == nullptr) found.push_back({"Wire", "No size is given.", "Say which wire is fitted."});
  if (!(the_case.fitted.fuse.number() > 0.0)) {
    found.push_back({"Fuse", "No rating is given.", "Say which fuse belongs there."});
  }
  if (the_case.neighbours.size() > kMaxNeighbours) {
    found.push_back({"Block", "Too many other branches.", joined({"At most ", std::to_string(kMaxNeighbours), "."})});
  }
  for (const Neighbour& each : the_case.neighbours) {
    if (const auto wrong = circuit::check_name(each.name, "Other branch")) found.push_back(*wrong);
    if (const auto wrong = circuit::check_value(circuit::Field::fuse_position, each.fuse_position, "Other branch")) found.push_back(*wrong);
  }
  check_complaint(the_case, found);
  return found;
}

std::string fuse_rating_words(const Case& the_case) {
  return the_case.fuse_told ? units::amperes_text(the_case.fitted.fuse) : "the rating that the block's label gives this wire";
}

std::string fuse_words(const Case& the_case) {
  return joined({the_case.fuse_told ? fuse_rating_words(the_case) + " " : std::string(), "fuse at position ",
                 std::to_string(the_case.circuit.fuse_position)});
}

std::string new_fuse_words(const Case& the_case) {
  if (the_case.fuse_told) return joined({"a new ", fuse_rating_words(the_case), " fuse"});
  return joined({"a new fuse of ", fuse_rating_words(the_case)});
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
  made.fitted.size = tables::conductor_by_id(gauge == tables::GaugeSystem::metric ? "2.5mm2" : "12awg");
  made.fitted.fuse = units::Amperes(15.0);
  made.fuse_told = false;
  made.neighbours.push_back({"Lights", 2, true});
  return made;
}

}  // namespace diagnosis
