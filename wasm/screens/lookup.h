// What the screens of calculators, tables and how-to cards share.
#pragma once

#include <span>
#include <string_view>

#include "app/app_state.h"
#include "calculators/calculator.h"
#include "reference/book.h"
#include "screens/screens.h"

namespace screens {

// The search field, and while something is typed there what was found. True: the page has
// nothing more to show.
bool draw_search(app::AppState& app, Memory& memory);

// What a row, page or card depicts, in a card of its own; nothing where it depicts nothing.
void draw_plate(const app::AppState& app, const reference::Depicted& depicted);
// What a calculator plots for these values.
void draw_plot(const app::AppState& app, const calculators::Calculator& calculator, const calculators::Values& values);

// Each source with its limits and how sure we are. Within a card.
void draw_citations(std::span<const tables::Citation* const> citations);
// "From memory" and the like, as a mark. Within a flow.
void draw_standing(tables::Standing standing);

// The row a route means; nullptr when there is none.
const reference::Row* row_at(const app::AppState& app, const app::Route& route);

// Opens the calculator with what the row fills in; the rest stays as it was asked last.
void open_calculator(app::AppState& app, const reference::Tap& tap);

// A group of a list: its name, and the keys of what stands under it.
struct Group {
  std::string_view name;
  std::span<const std::string_view> keys;
};
std::span<const Group> calculator_groups();
std::span<const Group> page_groups();

// The parts of a calculator's page.
void draw_calculator(app::AppState& app, Memory& memory, const calculators::Calculator& calculator);
// Its inputs; hands a good change to the app, says what is wrong with a bad one.
void draw_quick_inputs(app::AppState& app, const calculators::Calculator& calculator, const calculators::Values& values);
void draw_page(app::AppState& app, const reference::Page& page);

}  // namespace screens
