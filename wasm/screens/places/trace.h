// Trace: why an outlet is dead, one check at a time.
#pragma once

#include "diagnosis/case.h"
#include "screens/place.h"

namespace screens {

void draw_trace_screen(app::AppState& app, Memory& memory);     // begin, check, or ending
void draw_trace_why_sheet(app::AppState& app, Memory& memory);
void draw_trace_answers_sheet(app::AppState& app, Memory& memory);
void draw_trace_again_sheet(app::AppState& app, Memory& memory);
void draw_trace_kept_sheet(app::AppState& app, Memory& memory);
void draw_trace_suspect_sheet(app::AppState& app, Memory& memory);
void draw_built_sheet(app::AppState& app, Memory& memory);
void draw_trace_more_sheet(app::AppState& app, Memory& memory);

namespace trace_place {

inline bool is_there(const app::Contents&, const app::Route& route) {
  return route.key.empty() || diagnosis::symptom_by_key(route.key) != nullptr;
}

inline std::string title(const app::Contents&, const app::Route&) { return "Trace"; }

}  // namespace trace_place

inline constexpr SheetRow kTraceSheets[] = {
    {.id = app::Sheet::trace_why, .word = "why", .argument = app::Argument::none, .title = "Why this check",
     .subtitle = "What each answer would mean", .tall = true, .head = nullptr, .draw = draw_trace_why_sheet},
    {.id = app::Sheet::trace_answers, .word = "answers", .argument = app::Argument::none, .title = "Answers so far",
     .subtitle = "Tap one to take it again", .tall = true, .head = nullptr, .draw = draw_trace_answers_sheet},
    {.id = app::Sheet::trace_again, .word = "again", .argument = app::Argument::number, .title = "Take it again",
     .subtitle = "", .tall = true, .head = nullptr, .draw = draw_trace_again_sheet},
    {.id = app::Sheet::trace_kept, .word = "record", .argument = app::Argument::number, .title = "Trace record",
     .subtitle = "", .tall = true, .head = nullptr, .draw = draw_trace_kept_sheet},
    {.id = app::Sheet::trace_suspect, .word = "suspect", .argument = app::Argument::number, .title = "Suspect",
     .subtitle = "What speaks for it, and against", .tall = true, .head = nullptr, .draw = draw_trace_suspect_sheet},
    {.id = app::Sheet::trace_fitted, .word = "fitted", .argument = app::Argument::none, .title = "What is there",
     .subtitle = "As it was wired, not as planned", .tall = true, .head = nullptr, .draw = draw_built_sheet},
    {.id = app::Sheet::trace_more, .word = "more", .argument = app::Argument::none, .title = "More",
     .subtitle = "", .tall = false, .head = nullptr, .draw = draw_trace_more_sheet},
};

inline constexpr Place kTracePlace{.id = app::Screen::trace,
                                   .label = "Trace",
                                   .icon = ui::Icon::pulse,
                                   .in_bar = true,
                                   .word = "trace",
                                   .also = "",
                                   .key = app::KeyForm::started,   // a symptom: "Where?"
                                   .above = app::Screen::size,
                                   .shows = app::Work::trace,
                                   .is_there = trace_place::is_there,
                                   .title = trace_place::title,
                                   .draw = draw_trace_screen,
                                   .sheets = kTraceSheets};

}  // namespace screens
