#include "diagnosis/words.h"

namespace diagnosis {

std::string letter_of(const Case& the_case, circuit::OutletId outlet) {
  for (std::size_t k = 0; k < the_case.circuit.outlets.size(); ++k) {
    if (the_case.circuit.outlets[k].id == outlet) return circuit::outlet_letter(k);
  }
  return "?";
}

std::string fed_from_words(const Case& the_case, circuit::OutletId outlet) {
  const circuit::Outlet* found = circuit::find_outlet(the_case.circuit, outlet);
  if (found == nullptr || found->fed_from == circuit::kBlock) return "the block";
  return letter_of(the_case, found->fed_from);
}

std::string neighbour_words(const Case& the_case, int neighbour) {
  if (neighbour < 0 || static_cast<std::size_t>(neighbour) >= the_case.neighbours.size()) return "another branch";
  const Neighbour& found = the_case.neighbours[static_cast<std::size_t>(neighbour)];
  return joined({found.name, " (position ", std::to_string(found.fuse_position), ")"});
}

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

}  // namespace diagnosis
