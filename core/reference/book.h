// The reference pages and how-to cards, with every figure taken from the tables and every row
// carrying where it comes from and how sure we are. A book is a value: made once for a
// preference of units, then only read.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "circuit/edit.h"
#include "tables/citation.h"
#include "units/format.h"

namespace reference {

// What a picture beside a row or a card shows; pictures/plates.h draws it.
enum class Depicts {
  nothing,
  conductor,        // which: a conductor id, "10awg"
  fuse,             // "blade:15", "bolt-on:100"
  push_on_tab,      // "6.3"
  ring,             // "M6"
  ferrule,          // "2.5"
  crimp,            // "red", "blue", "yellow"
  colour,           // a colour word, "red"
  outlet,           // "lighter", "iso4165"
  battery_curve,    // a battery kind, "lead-agm"
  fuse_gates,       // a fuse family, "blade"
  probes_volts, probes_continuity, probes_drop, probes_sign,
  how_to,           // a card's key, "crimp"
};
struct Depicted {
  Depicts what = Depicts::nothing;
  std::string which;
};

// What a tap on a row does: open a calculator with some inputs filled in, change the open
// circuit, or nothing.
struct Tap {
  std::string_view calculator;                            // key; empty: none
  std::vector<std::pair<std::string_view, double>> with;  // input key, value in its unit; a choice: its index
  std::string label;                                      // "Drop of a run with 10 AWG"; empty: nothing to tap
  // A value that may go into the open circuit instead: sets only what it names.
  enum class Into { nothing, drop_limit, battery_kind, in_hand_size, fuse_family } into = Into::nothing;
  std::string_view value_key;                             // battery kind, conductor id, fuse family
  double value = 0.0;                                     // drop limit
};
// The edit a tap makes of this circuit; nullopt when it makes none.
std::optional<circuit::Edit> edit_for(const Tap& tap, const circuit::Circuit& circuit);

struct Row {
  std::string key;                       // stable within its page: "10awg", "blade-15"
  std::vector<std::string> cells;        // as Page::columns; an empty cell: nothing there
  std::vector<const tables::Citation*> citations;   // never empty
  tables::Standing standing;             // of the least sure figure in the row
  std::string note;                      // under the row when it is opened; may be empty
  std::string keywords;                  // words people look for it by, besides its cells
  Tap tap;
  Depicted picture;
};

struct Page {
  std::string_view key;                  // address "#tables/" + key: "wire"
  std::string_view title;                // "Wire"
  std::string_view about;                // one or two sentences
  std::vector<std::string> columns;      // the first names the row
  std::vector<Row> rows;
  std::string_view caution;              // one line, empty where nothing can hurt
  std::string_view keywords;
  Depicted picture;                      // above the rows
};

// A handful of steps with a picture, linked from checks, remedies and steps by its key.
struct Card {
  std::string_view key;                  // address "#tables/how/" + key: "crimp"
  std::string_view title;                // "Crimp a terminal"
  std::string_view when;                 // one sentence: what it is for
  std::vector<std::string> tools;
  std::vector<std::string> steps;        // in order, each one action and what to see
  std::vector<std::string> cautions;
  std::vector<const tables::Citation*> citations;   // never empty
  std::string_view keywords;
  Depicted picture;
};

struct Book {
  std::vector<Page> pages;
  std::vector<Card> cards;
  units::Preference preference = units::Preference::metric;
  [[nodiscard]] const Page* page(std::string_view key) const;   // nullptr when there is none
  [[nodiscard]] const Card* card(std::string_view key) const;
};
Book make_book(units::Preference preference);

}  // namespace reference
