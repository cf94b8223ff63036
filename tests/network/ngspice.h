// ngspice (package ngspice, version 39 when written), a general circuit simulator that shares nothing with this core.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace network_test {

// Appended, not added: g++ 12 warns wrongly of "n" + to_string (its bug 105651).
std::string with_number(std::string_view before, std::size_t number);

// What ngspice prints of a deck: volts by node, and amperes by source as "name#branch". A deck it fails on stays empty.
using Printed = std::map<std::string, double>;
// Every deck's operating point, all in one process. A deck begins with a title line and needs neither options nor end.
std::vector<Printed> run_ngspice(const std::vector<std::string>& decks);

}  // namespace network_test
