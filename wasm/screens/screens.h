// The screens: the app's state in, widgets out. Each screen and sheet is one function in one
// file; what they keep between frames that is not worth storing lies in Memory.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/app_state.h"
#include "drawing/shape.h"
#include "reference/search.h"

namespace screens {

// A text being typed that is not good yet: the circuit keeps the last good one.
struct Draft {
  std::string field;     // which text field; empty: none
  std::string text;
  std::string error;
};

// The sketch as last laid out: measuring its words each frame would cost more than drawing it.
struct SketchCache {
  app::Current of;
  float width = 0.0F;
  std::string rings;             // what is marked in it
  drawing::Picture picture;
};

// What was found for what is typed in the search field; asked again when either changes.
struct Found {
  std::string query;
  const reference::SearchIndex* index = nullptr;
  std::vector<reference::Hit> hits;
};

struct Memory {
  std::string open_sheet;        // address of the sheet on screen; empty: none
  bool sheet_leaving = false;    // closed by the person, the address not yet changed
  std::uint64_t toast_shown = 0; // AppState::toast_serial() of the toast last handed to ui
  Draft draft;
  SketchCache sketch;
  std::string search;            // as typed; Quick and Tables share it
  Found found;
  SketchCache trace_sketch;
  std::optional<tables::GaugeSystem> built_system;   // that built wires are told in, once chosen
  circuit::OutletId use_at;      // outlet that a calculator's values go to
};

// Everything of one frame, between ui::State::begin_frame and end_frame.
void draw(app::AppState& app, Memory& memory);

}  // namespace screens
