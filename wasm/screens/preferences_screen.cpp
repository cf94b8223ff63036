// What is set once for every circuit, and what the app is.
#include <cmath>

#include "screens/pages.h"
#include "screens/places/preferences.h"
#include "ui/ui.h"
#include "units/parse.h"

namespace screens {
namespace {

// "150" and "150 %" alike.
ui::Read read_text_size(std::string_view text) {
  const units::Parsed<double> fraction = units::parse_percent(text);
  const double percent = fraction.value.value_or(0.0) * 100.0;
  if (!fraction.value || percent < app::kSmallestText || percent > app::kLargestText)
    return {std::nullopt, "Text size is 100 % to 200 %."};
  return {percent, {}};
}

void draw_look(app::AppState& app, app::Preferences& wanted, bool& edited) {
  const std::vector<std::string> themes{"As the phone", "Day", "Night"};
  if (const auto theme = ui::choice("Light", themes, static_cast<std::size_t>(wanted.theme))) {
    wanted.theme = static_cast<app::Theme>(*theme);
    edited = true;
  }
  const std::vector<std::string> units{"As the phone", "Metric", "US"};
  const std::string now = app.settings().units() == units::Preference::us ? "feet and °F" : "metres and °C";
  if (const auto unit = ui::choice("Lengths and temperatures", units, static_cast<std::size_t>(wanted.units),
                                   {.sub = "now " + now})) {
    wanted.units = static_cast<app::UnitChoice>(*unit);
    edited = true;
  }
  constexpr double kStep = 10.0;
  if (const auto size = ui::stepper("Text size", {.sub = {}, .shown = std::to_string(wanted.text_size) + " %",
                                                  .value = static_cast<double>(wanted.text_size),
                                                  .low = app::kSmallestText, .high = app::kLargestText, .step = kStep,
                                                  .allowed = "100 % to 200 %", .first_text = {}, .read = read_text_size})) {
    wanted.text_size = static_cast<int>(std::lround(size->value));
    edited = true;
  }
}

}  // namespace

void draw_preferences_screen(app::AppState& app, Memory&) {
  const ui::PageEvents events = ui::begin_page("preferences", {.title = "Preferences", .subtitle = {}, .back = true, .more = false});
  if (events.back) app.navigator().back();
  draw_messages(app);
  app::Preferences wanted = app.settings().preferences();
  bool edited = false;
  ui::begin_columns();
  ui::begin_card("look", {.name = "Look", .tone = ui::Tone::plain});
  draw_look(app, wanted, edited);
  ui::end_card();
  ui::next_column();
  ui::begin_card("about", {.name = "About", .tone = ui::Tone::plain});
  ui::card_title("About Branchlight");
  ui::paragraph("Your circuits are stored in this browser, on this device, and nowhere else. Nothing is sent. "
                "Clearing the browser's data for this page deletes them: export what you want to keep.");
  ui::paragraph("For fused DC branch circuits up to 60 V. Mains, airbag and engine-management circuits are out of its scope.");
  ui::paragraph("Results are planning figures. Local codes, the makers' instructions and licensed practice come first.");
  if (ui::list_row("Sources", {.sub = "where every figure comes from"}))
    app.navigator().go(app::Route::at(app::Screen::preferences, app::Sheet::sources));
  ui::end_card();
  ui::end_columns();
  ui::end_page();
  if (edited) app.settings().set_preferences(wanted);
}

}  // namespace screens
