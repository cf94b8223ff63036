// Where a number comes from. The word is 'citation', because a 'source' is the supply here.
// Every figure the app shows points at one of these; a test walks the tables for an empty one.
#pragma once

#include <span>
#include <string_view>

namespace tables {

// How sure we are of the figure, told to the user where it is shown.
enum class Standing {
  computed,         // follows from a formula that is itself cited
  seen,             // read once in the document or an extract of it
  seen_twice,       // read in two independent places
  memory,           // recalled, not looked up: the screen says 'from memory'
  common_practice,  // a fact of the trade with no document behind it
  our_choice,       // decided by this project; the note says why
};

struct Citation {
  std::string_view id;        // stable key, e.g. "cfr-183-425-table-5"
  std::string_view document;  // who published it and under what title
  std::string_view edition;   // year or revision; empty when it has none
  std::string_view where;     // table, clause or page
  std::string_view note;      // limits, doubts, disagreement with others
  Standing standing;
};

std::string_view standing_text(Standing standing);  // "from memory", "computed", ...

std::span<const Citation* const> all_citations();
const Citation* citation_by_id(std::string_view id);  // nullptr when there is none

}  // namespace tables
