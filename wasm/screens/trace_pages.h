// The parts of the Trace screen, one file each.
#pragma once

#include <span>

#include "diagnosis/check.h"
#include "screens/screens.h"
#include "screens/trace_place.h"

namespace screens {

void draw_trace_start(app::AppState& app);                        // what is wrong, what is in hand
void draw_trace_where(app::AppState& app, Memory& memory);        // which outlets; begins
void draw_trace_check(app::AppState& app, Memory& memory);        // the next check and its answers
void draw_trace_ending(app::AppState& app, Memory& memory);       // a remedy, nothing to tell apart, or done
void draw_trace_none_fits(app::AppState& app, Memory& memory);    // answers that do not go together
void draw_trace_suspects(app::AppState& app);
void draw_trace_cautions(std::span<const std::string> cautions);
void draw_trace_warning(const std::string& words);                // what must stop at once; empty: nothing
void draw_first(const diagnosis::Check& check);                   // what to do before the question
// The circuit with the points of a check or the part of a remedy marked.
void draw_trace_sketch(app::AppState& app, Memory& memory, const Marked& marked);

// "Undo last" among the answers: offered or not, and whether it was pressed.
struct UndoLast {
  bool offered = false;
  bool* pressed = nullptr;
};
// The answers as large buttons, with the keypad where the check takes a reading. Once per press.
std::optional<diagnosis::Answer> trace_answers(const diagnosis::Check& check, const UndoLast& undo = {});
// A sentence that says why an answer was not taken goes to the top of the page.
void say_if_refused(app::AppState& app, const std::string& why_not);

}  // namespace screens
