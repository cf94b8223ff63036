// A number of the circuit as a stepper or row: range, step and unit come from circuit::limits(),
// the person's units from the preferences. Values go in and out in the core's own unit.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "circuit/limits.h"
#include "screens/screens.h"
#include "ui/ui.h"
#include "units/measure.h"

namespace screens {

// Any number as a stepper or row shows it: unit, step, range and keys by units::row(); values in
// the core's unit, the options' in the shown one. The caller adds its words and its reader.
struct Amount {
  units::Measure measure = units::Measure::count;
  double value = 0.0, low = 0.0, high = 0.0;
  double step = 0.0;             // 0: the measure's own
};
ui::StepperOptions amount_options(const Amount& amount, units::Preference preference);

struct Number {
  std::string label{};
  std::string sub{};
  std::string said{};            // for a screen reader, where the label is not enough
  circuit::Field field = circuit::Field::run_m;
  double value = 0.0;            // m, A, W, V, degC or fraction, as the field's limit says
  int blocks = 1;                // batteries of 12 V in series, for the "per 12 V" fields
  std::string shown{};           // in place of the value ("as the battery kind")
  bool disabled = false;
};
std::optional<ui::Changed> number_stepper(const app::AppState& app, const Number& number);
std::optional<ui::Changed> number_row(const app::AppState& app, const Number& number);

// A load in A or W: typing the other unit changes it. `watts` of the result tells which.
struct LoadChange {
  double rating = 0.0;
  bool watts = false;
  bool joins = false;
};
std::optional<LoadChange> load_stepper(const app::AppState& app, std::string_view label, std::string_view said,
                                       const circuit::Load& load, bool disabled = false);

// "0.05 m to 100 m", in the person's units.
std::string allowed_text(const app::AppState& app, circuit::Field field, int blocks = 1);
std::string shown_text(const app::AppState& app, circuit::Field field, double value);

// Hands an edit over; what comes from one held finger joins into one undo step.
void commit(app::AppState& app, const circuit::Edit& edit, std::string join_key, const ui::Changed& changed);
// The same for an edit of a stored vehicle.
void change(app::AppState& app, std::uint32_t vehicle, const vehicle::Edit& edit, std::string join_key, const ui::Changed& changed);

// What wire is marked in: the system pressed.
std::optional<tables::GaugeSystem> gauge_choice(std::string_view label, tables::GaugeSystem now);
// Every size of a wire system, and "I don't know" where `may_be_unknown`: the one pressed, as its id;
// empty: not known. `said` begins its name for a screen reader: "Cable".
std::optional<std::string> size_chips(tables::GaugeSystem system, std::string_view chosen, std::string_view said,
                                      bool may_be_unknown = false);
// Ratings of a kind of fuse, in the same way; 0 A: not known.
std::optional<units::Amperes> fuse_chips(tables::FuseFamilyId kind, units::Amperes chosen, std::string_view said);

// A name typed with the phone's keyboard: given back when good, else kept as the draft with its
// reason under the field. `may_be_empty` for a place.
std::optional<std::string> name_field(Memory& memory, std::string_view field, std::string_view label,
                                      const std::string& value, bool may_be_empty = false);

}  // namespace screens
