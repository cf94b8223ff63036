// The screens and sheets by name, one file each.
#pragma once

#include "screens/screens.h"

namespace screens {

void draw_size_screen(app::AppState& app, Memory& memory);
void draw_circuits_screen(app::AppState& app, Memory& memory);
void draw_preferences_screen(app::AppState& app, Memory& memory);
void draw_quick_screen(app::AppState& app, Memory& memory);     // the list, or one calculator
void draw_tables_screen(app::AppState& app, Memory& memory);    // the list, or one page
void draw_card_screen(app::AppState& app);                      // a how-to card
void draw_trace_screen(app::AppState& app, Memory& memory);     // begin, check, or ending

// Sheets over a screen; each draws the content only, sheet.cpp opens and closes them.
void draw_outlet_sheet(app::AppState& app, Memory& memory);
void draw_why_sheet(app::AppState& app);
void draw_what_if_sheet(app::AppState& app);
void draw_place_sheet(app::AppState& app);
void draw_supply_sheet(app::AppState& app);
void draw_parts_sheet(app::AppState& app);
void draw_reach_sheet(app::AppState& app);
void draw_label_sheet(app::AppState& app, Memory& memory);
void draw_more_sheet(app::AppState& app);
void draw_stored_sheet(app::AppState& app, Memory& memory);
void draw_sources_sheet(app::AppState& app);
void draw_how_sheet(app::AppState& app);
void draw_row_sheet(app::AppState& app);
void draw_trace_why_sheet(app::AppState& app);
void draw_trace_answers_sheet(app::AppState& app);
void draw_trace_again_sheet(app::AppState& app);
void draw_trace_kept_sheet(app::AppState& app);
void draw_trace_fitted_sheet(app::AppState& app);
void draw_trace_suspect_sheet(app::AppState& app);
void draw_trace_more_sheet(app::AppState& app);

// The cards of the Size screen.
void draw_answer_card(app::AppState& app);
void draw_sketch_card(app::AppState& app, Memory& memory);
void draw_ladder_card(app::AppState& app);
void draw_together_card(app::AppState& app);
void draw_outlets_card(app::AppState& app);
void draw_settings_card(app::AppState& app);

// What is wrong or waiting, over everything else on the page or sheet.
void draw_messages(app::AppState& app);
void draw_problem(app::AppState& app);

// The route's sheet, over the page.
void draw_sheet(app::AppState& app, Memory& memory);

}  // namespace screens
