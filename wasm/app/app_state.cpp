#include "app/app_state.h"

#include <utility>

#include "circuit/limits.h"
#include "units/expect.h"

namespace app {
namespace {

std::string text_of(const std::vector<platform::StoredRecord>& stored, std::string_view key) {
  for (const platform::StoredRecord& record : stored)
    if (record.key == key) return record.text;
  return {};
}

// "remove outlet C" -> "Undid: remove outlet C."
std::string sentence(std::string_view start, const std::string& what) {
  return std::string(start) + (what.empty() ? "." : ": " + what + ".");
}

}  // namespace

AppState::AppState(platform::Host& host, const std::vector<platform::StoredRecord>& stored, std::string_view route)
    : host_(host), records_(host), notebook_(records_, stored),
      preferences_(read_preferences(text_of(stored, kPreferencesKey))), quick_(text_of(stored, kQuickKey)),
      trace_(host, records_, stored) {
  std::vector<std::uint32_t> numbers;
  for (const Stored& each : notebook_.circuits()) numbers.push_back(each.number);
  trace_.forget_circuits_but(numbers);
  route_ = existing(parse_route(route));
  trail_.push_back(route_text(route_));
  if (route != trail_.back()) host_.replace_route(trail_.back());
  show_title();
}

const circuit::Circuit& AppState::circuit() const {
  const Stored* open = notebook_.open();
  BRANCHLIGHT_EXPECT(open != nullptr);   // else: ask has_circuit() first
  return *open->circuit;
}

void AppState::changed() {
  ++revision_;
  problem_.clear();
  toast_.reset();
  show_title();
  host_.wake();
}

bool AppState::edit_stored(std::uint32_t number, const circuit::Edit& edit, std::string join_key) {
  const Stored* stored = notebook_.find(number);
  if (stored == nullptr || !stored->readable()) return false;
  const circuit::Circuit before = *stored->circuit;
  circuit::EditResult result = circuit::apply(before, edit);
  if (!result.circuit) {
    say_problem(result.problem ? circuit::one_line(*result.problem) : "That can not be done.");
    return false;
  }
  if (notebook_.replace(number, *result.circuit)) {
    notebook_.history(number)->remember(before, circuit::describe(before, edit), std::move(join_key));
    changed();
  }
  problem_.clear();
  return true;
}

bool AppState::dispatch(const circuit::Edit& edit, std::string join_key) {
  if (!has_circuit()) return false;
  const Stored* open = notebook_.open();
  const std::string what = circuit::describe(*open->circuit, edit);
  if (!edit_stored(open->number, edit, std::move(join_key))) return false;
  // A removal is the one edit that takes something away: offer it back at once.
  if (std::holds_alternative<circuit::RemoveOutlet>(edit)) say(sentence("Done", what), Toast::Offer::undo_edit);
  land_on(existing(route_));
  return true;
}

void AppState::end_join() {
  if (const Stored* open = notebook_.open()) notebook_.history(open->number)->end_join();
}

void AppState::say_problem(std::string text) {
  problem_ = std::move(text);
  toast_.reset();
  host_.wake();
}

bool AppState::can_undo() const { return has_circuit() && notebook_.open()->history.can_undo(); }
bool AppState::can_redo() const { return has_circuit() && notebook_.open()->history.can_redo(); }
std::string AppState::undo_what() const { return has_circuit() ? notebook_.open()->history.undo_what() : ""; }
std::string AppState::redo_what() const { return has_circuit() ? notebook_.open()->history.redo_what() : ""; }

void AppState::undo() {
  if (!can_undo()) return;
  const Stored* open = notebook_.open();
  const std::string what = undo_what();
  if (const auto earlier = notebook_.history(open->number)->undo(*open->circuit)) {
    notebook_.replace_open(*earlier);
    changed();
    say(sentence("Undone", what));
    land_on(existing(route_));
  }
}

void AppState::redo() {
  if (!can_redo()) return;
  const Stored* open = notebook_.open();
  const std::string what = redo_what();
  if (const auto later = notebook_.history(open->number)->redo(*open->circuit)) {
    notebook_.replace_open(*later);
    changed();
    say(sentence("Done again", what));
    land_on(existing(route_));
  }
}

const sizing::Answer& AppState::answer() {
  results_.follow(revision_);
  return results_.answer(circuit());
}
const sizing::Fixes& AppState::fixes(const tables::Conductor& size) {
  results_.follow(revision_);
  return results_.fixes(circuit(), size);
}
const sizing::Candidate& AppState::judge(const tables::Conductor& size) {
  results_.follow(revision_);
  return results_.judge(circuit(), size);
}
const sizing::Reach& AppState::reach(const circuit::InHand& in_hand) {
  results_.follow(revision_);
  return results_.reach(circuit(), in_hand);
}

// The second circuit of a split is stored first: stopped in between, the load is in both
// rather than in neither.
void AppState::use_fix(const sizing::Fix& fix) {
  if (!has_circuit() || fix.result.empty()) return;
  const std::uint32_t number = notebook_.open()->number;
  const std::vector<circuit::Circuit> result = fix.result;   // the fix dies with the revision
  const std::string title = fix.title;
  if (notebook_.full() && result.size() > 1)
    return say_problem("The notebook is full: " + std::to_string(circuit::kMaxCircuitsInFile) +
                       " circuits. Delete one first.");
  for (std::size_t i = 1; i < result.size(); ++i) notebook_.add(result[i], false);
  notebook_.open(number);
  const circuit::Circuit before = circuit();
  if (notebook_.replace_open(result.front())) notebook_.history(number)->remember(before, title);
  changed();
  const std::string other = result.size() > 1 ? " The other half is the circuit '" + result[1].name + "'." : "";
  say(title + ": done." + other, Toast::Offer::undo_edit);
}

void AppState::set_preferences(Preferences preferences) {
  preferences_ = std::move(preferences);
  records_.store(kPreferencesKey, write_preferences(preferences_));
  host_.set_dark(dark());
  ++revision_;
  host_.wake();
}

void AppState::surroundings_changed(const platform::Surroundings& surroundings) {
  if (surroundings.prefers_us_units != surroundings_.prefers_us_units) ++revision_;   // lengths read otherwise
  surroundings_ = surroundings;
  host_.set_dark(dark());
  host_.wake();
}

bool AppState::dark() const {
  if (preferences_.theme == Theme::automatic) return surroundings_.prefers_dark;
  return preferences_.theme == Theme::night;
}

units::Preference AppState::units() const {
  if (preferences_.units == UnitChoice::automatic)
    return surroundings_.prefers_us_units ? units::Preference::us : units::Preference::metric;
  return preferences_.units == UnitChoice::us ? units::Preference::us : units::Preference::metric;
}

void AppState::say(std::string text, Toast::Offer offer, std::uint32_t number) {
  toast_ = Toast{std::move(text), offer, number};
  ++toast_serial_;
  host_.wake();
}

void AppState::take_toast_offer() {
  if (!toast_) return;
  const Toast taken = *toast_;
  toast_.reset();
  if (taken.offer == Toast::Offer::undo_edit) undo();
  if (taken.offer == Toast::Offer::put_back) put_back_circuit(taken.number);
  if (taken.offer == Toast::Offer::put_back_trace && trace_.put_back_forgotten()) say("The record is back.");
}

void AppState::store_failed(std::string_view key, std::string_view why) {
  records_.failed(key, why);
  host_.wake();
}

void AppState::retry_store() {
  records_.retry();
  host_.wake();
}

}  // namespace app
