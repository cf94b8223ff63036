#include "screens/lookup.h"

#include "pictures/plates.h"
#include "screens/words.h"
#include "ui/ui.h"

namespace screens {
namespace {

// Laid out at text size 100 %: ui::picture draws it as much larger as the person reads.
pictures::PlateOptions plate_options(const app::AppState& app) {
  const double scale = app.settings().preferences().text_size / 100.0;
  pictures::PlateOptions options;
  options.view_width = static_cast<double>(ui::width()) / scale;
  options.preference = app.settings().units();
  options.text_width = [scale](const std::string& text, drawing::TextSize size, bool bold) {
    return static_cast<double>(ui::measure(text, ui::type_of(size), bold).width) / scale;
  };
  return options;
}

void draw_picture(const drawing::Picture& picture) {
  ui::picture("plate", picture, {.at_least = 0.8, .at_most = 1.1, .taps = false});
}

}  // namespace

void draw_plate(const app::AppState& app, const reference::Depicted& depicted) {
  if (depicted.what == reference::Depicts::nothing) return;
  ui::begin_card("picture", {.name = "Picture", .tone = ui::Tone::plain});
  if (const auto picture = pictures::plate(depicted, plate_options(app))) draw_picture(*picture);
  ui::end_card();
}

void draw_plot(const app::AppState& app, const calculators::Calculator& calculator, const calculators::Values& values) {
  if (calculator.plot == calculators::Plot::none) return;
  ui::begin_card("plot", {.name = "Picture", .tone = ui::Tone::plain});
  if (const auto picture = pictures::plot(calculator, values, plate_options(app))) draw_picture(*picture);
  else ui::caption("Nothing to draw for these values.");
  ui::end_card();
}

void draw_standing(tables::Standing standing) {
  switch (standing) {
    case tables::Standing::computed: return ui::pill("Computed", ui::Tone::good);
    case tables::Standing::seen: return ui::pill("Read once in the source", ui::Tone::plain);
    case tables::Standing::seen_twice: return ui::pill("Read in two places", ui::Tone::good);
    case tables::Standing::memory: return ui::pill("From memory", ui::Tone::caution);
    case tables::Standing::common_practice: return ui::pill("Common practice", ui::Tone::plain);
    case tables::Standing::our_choice: return ui::pill("Our choice", ui::Tone::plain);
  }
}

void draw_citations(std::span<const tables::Citation* const> citations) {
  for (const tables::Citation* citation : citations) {
    ui::paragraph("Source: " + source_text(*citation) + ".");
    ui::caption("How sure: " + std::string(tables::standing_text(citation->standing)) + ".");
    if (!citation->note.empty()) ui::caption(citation->note);
    if (citation != citations.back()) ui::gap();
  }
}

const reference::Row* row_at(const app::AppState& app, const app::Route& route) {
  const reference::Page* page = app.lookup().book().page(route.key);
  if (page == nullptr) return nullptr;
  for (const reference::Row& row : page->rows)
    if (app::address_word(row.key) == route.row) return &row;
  return nullptr;
}

void open_calculator(app::AppState& app, const reference::Tap& tap) {
  const calculators::Calculator* calculator = calculators::calculator_by_key(tap.calculator);
  if (calculator == nullptr) return;
  const auto filled = [&](calculators::Values values) {
    for (const auto& [key, value] : tap.with)
      if (const auto index = calculators::input_index(*calculator, key)) values[*index] = value;
    return values;
  };
  calculators::Values values = filled(app.lookup().quick_values(*calculator));
  // What was asked last may not go with it.
  if (!calculators::evaluate(*calculator, values, app.settings().units()).result) values = filled(calculators::normal_values(*calculator));
  app.lookup().set_quick_values(*calculator, values);
  app.navigator().go(app::Route::quick(calculator->key));
}

}  // namespace screens
