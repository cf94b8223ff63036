// What the pages share, and the cards of the Size screen. The screens and sheets themselves stand with
// their place: screens/places/.
#pragma once

#include "screens/screens.h"

namespace screens {

// The cards of the Size screen.
void draw_answer_card(app::AppState& app);
void draw_sketch_card(app::AppState& app, Memory& memory);
void draw_ladder_card(app::AppState& app);
void draw_volts_card(app::AppState& app);
void draw_together_card(app::AppState& app);
void draw_outlets_card(app::AppState& app);
void draw_settings_card(app::AppState& app);
void draw_practice_card(app::AppState& app);   // of the Supply sheet

// What is wrong or waiting, over everything else on the page or sheet.
void draw_messages(app::AppState& app);
void draw_problem(app::AppState& app);

// The route's sheet, over the page.
void draw_sheet(app::AppState& app, Memory& memory);

}  // namespace screens
