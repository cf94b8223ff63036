// What a State is made of. Private to the room.
#pragma once

#include <cstdint>
#include <deque>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <imgui.h>

#include "ui/place.h"
#include "ui/recorder.h"
#include "ui/state.h"
#include "ui/touch_machine.h"

struct ImGuiWindow;

namespace ui {

struct Sheet {
  std::string name;
  bool drawn = false;                 // this frame
  bool fresh = true;                  // its size is not known yet: drawn unseen
  float content = 0.0F;               // height of its body in the frame before
  std::pair<std::size_t, std::size_t> range{};   // of records
  std::uint32_t focus_before = 0;     // given back when it closes
};

// A sheet begun and not ended: what to put back.
struct SheetDrawing {
  std::string name;
  std::uint32_t region = 0;
  float top = 0;                      // of the content, to measure it
};

struct Toast {
  std::string text;
  std::string action;
  std::uint32_t token = 0;
  double until_ms = 0.0;              // 0: not begun
  bool pressed = false;
};

struct Ring {
  bool shown = false;
  Rect rect;
  Rect clip;
  float radius = 0.0F;
};

// The keypad's typing, one at a time.
struct Typing {
  std::string text;
  std::string wrong;                  // sentence under the number
  bool untouched = true;              // the first key replaces what stands there
  std::vector<std::string> keys;      // hardware keys since the last frame
};

// A minus or plus being held.
struct Hold {
  std::uint32_t id = 0;
  double since_ms = 0.0;
  double next_ms = 0.0;
  int repeats = 0;
};

// A chip told and not drawn yet: its flow is not ended.
struct FlowChip {
  std::uint32_t id = 0;
  std::size_t record = 0;
  std::string label;
  bool on = false, struck = false, disabled = false;
  bool under = false;                 // a finger or the pointer
};

struct CardOpen {
  ImDrawListSplitter* splitter = nullptr;
  std::size_t record = 0;
  float top = 0;
  Tone tone = Tone::plain;
  bool grouped = false;
};

struct State::Parts {
  Frame frame;
  ImFont* text = nullptr;
  ImFont* semibold = nullptr;
  [[nodiscard]] ImFont* font(bool bold) const { return bold ? semibold : text; }
  Recorder recorder;
  TouchMachine touch;

  std::vector<Column> columns;
  std::deque<ImDrawListSplitter> splitters;    // reused; a deque keeps their addresses
  std::vector<CardOpen> cards;
  std::vector<std::size_t> groups;             // records of the groups being drawn
  std::uint32_t region = 0;                    // scroll region drawn into, 0: none

  // Page
  bool page_to_top = false;
  Rect body;                                   // of the page's scrolling part
  float bar_height = 0.0F;                     // of the bar of places, from the frame before
  bool body_ended = false;                     // a foot was begun under it
  float foot_height = 0.0F;                    // of the foot, from the frame before; 0: none
  float foot_drawn = 0.0F;                     // as it was placed in this frame
  std::uint32_t foot_key = 0;
  std::size_t foot_record = 0;                 // its first record
  std::size_t foot_reads_at = 0;               // where that one is to come; 0: it stays
  bool foot_in_frame = false;
  std::map<std::uint32_t, float> feet;         // heights by what stands in them
  float columns_top = 0, columns_bottom = 0, columns_left = 0, columns_width = 0;
  bool columns_split = false;
  float toast_floor = 0;                       // a toast sits above this

  std::vector<Sheet> sheets;                   // open ones, the top one last
  std::vector<SheetDrawing> drawing_sheets;
  std::vector<std::string> closing;            // sheets whose close was pressed in this frame
  std::uint32_t top_body = 0;                  // ImGui id of the scrolling part on top, for keys
  std::optional<Toast> toast;
  Ring ring;
  Typing typing;
  Hold hold;
  std::map<std::uint32_t, bool> folded;        // disclosures: open?
  std::vector<FlowChip> chips;                 // of the flow being told
  Rect flow_start;
  std::map<std::uint32_t, Rect> chip_places, chip_places_before;   // in their flow, this frame and the one before
  std::vector<std::uint32_t> fields;           // ids of real text fields this frame
  std::uint32_t focus_wanted = 0;
  int frames_wanted = 2;

  // Text that ran out of what it stands in, this frame. Empty, or a layout is broken: tests look.
  std::vector<std::string> cut;
  void text_drawn(std::string_view words, float x, float width);

  void want_frames(int count) { frames_wanted = count > frames_wanted ? count : frames_wanted; }
  Sheet* sheet(std::string_view name);
};

// The parts of the State between begin_frame and end_frame.
State::Parts& now();

}  // namespace ui
