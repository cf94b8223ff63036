// Private to this room: the pages, a file per subject, and the small tools they are made with.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "reference/book.h"
#include "tables/citation.h"
#include "units/format.h"
#include "units/quantity.h"

namespace reference {

std::vector<Page> wire_pages(units::Preference preference);
std::vector<Page> fuse_pages(units::Preference preference);
std::vector<Page> terminal_pages(units::Preference preference);
std::vector<Page> practice_pages(units::Preference preference);
std::vector<Card> how_to_cards();

// A row with its sources; its standing is that of the least sure of them.
Row make_row(std::string key, std::vector<std::string> cells, std::vector<const tables::Citation*> citations,
             std::string keywords = {});
// The same, where a figure in the row is surer or less sure than its citation as a whole.
Row make_row(std::string key, std::vector<std::string> cells, std::vector<const tables::Citation*> citations,
             tables::Standing standing, std::string keywords);
tables::Standing least_sure(const std::vector<const tables::Citation*>& citations);

// Opens a calculator with inputs filled in; choices are told by their key.
struct Fill {
  std::string_view input;
  std::string_view choice;    // empty: `value` is the number
  double value = 0.0;
};
Tap calculator_tap(std::string_view calculator, const std::vector<Fill>& fills, std::string label);

std::string number(double value, int digits = 4);
std::string with(double value, std::string_view unit, int digits = 4);
// "6.3 mm", or "1/4 in" style tenths are never made up: inches with two decimals.
std::string small_length(units::Millimetres length, units::Preference preference);
std::string range_text(double low, double high, std::string_view unit, int digits = 3);
std::string wire_name(std::string_view conductor_id);    // "10 AWG"

}  // namespace reference
