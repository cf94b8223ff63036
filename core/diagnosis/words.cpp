#include "diagnosis/words.h"

#include <array>

#include "units/expect.h"
#include "units/format.h"

namespace diagnosis {
namespace {

using network::Side;

std::string failed_outlet(const Case& the_case) {
  return the_case.complaint.outlets.empty() ? std::string("an outlet that was dead")
                                            : letter_of(the_case, the_case.complaint.outlets.front());
}

// Blade fuses are made for 32 V (58 V for some): above it an arc may stand between the blades. Common practice.
constexpr units::Volts kArcGoesOut{32.0};

std::string its_rating(const Case& the_case, const Subject& subject) {
  const bool there = subject.neighbour >= 0 && static_cast<std::size_t>(subject.neighbour) < the_case.neighbours.size();
  if (!there) return {};
  const auto& fuse = the_case.neighbours[static_cast<std::size_t>(subject.neighbour)].fuse;
  return fuse ? joined({" (", units::amperes_text(*fuse), ")"}) : std::string();
}

struct Token {
  std::string_view token;
  std::string (*words)(const Case&, const Subject&);
};
// clang-format off
constexpr std::array<Token, 19> kTokens{{
    {"plus", [](const Case& c, const Subject&) { return c.plus_colour; }},
    {"minus", [](const Case& c, const Subject&) { return c.minus_colour; }},
    {"Plus", [](const Case& c, const Subject&) { return capital(c.plus_colour); }},
    {"Minus", [](const Case& c, const Subject&) { return capital(c.minus_colour); }},
    {"side", [](const Case& c, const Subject& s) { return std::string(side_words(c, s.side)); }},
    {"other_side", [](const Case& c, const Subject& s) {
       return std::string(side_words(c, s.side == Side::positive ? Side::negative : Side::positive));
     }},
    {"outlet", [](const Case& c, const Subject& s) { return letter_of(c, s.outlet); }},
    {"from", [](const Case& c, const Subject& s) { return fed_from_words(c, s.outlet); }},
    {"neighbour", [](const Case& c, const Subject& s) { return neighbour_words(c, s.neighbour); }},
    {"position", [](const Case& c, const Subject&) { return std::to_string(c.circuit.fuse_position); }},
    {"fuse", [](const Case& c, const Subject&) { return fuse_words(c); }},
    {"new_fuse", [](const Case& c, const Subject&) { return new_fuse_words(c); }},
    {"rating", [](const Case& c, const Subject&) { return fuse_rating_words(c); }},
    {"failed", [](const Case& c, const Subject&) { return failed_outlet(c); }},
    {"fuse_caution", [](const Case& c, const Subject&) { return fuse_caution(c); }},
    {"fuse_number", [](const Case& c, const Subject&) { return names_fuse(c) ? fuse_rating_words(c) : std::string("the number on the fuse"); }},
    {"whose", [](const Case& c, const Subject& s) { return s.neighbour < 0 ? std::string("this circuit") : neighbour_words(c, s.neighbour); }},
    {"its_rating", its_rating},
    {"no_load", [](const Case& c, const Subject&) {
       return std::string(c.circuit.supply.nominal > kArcGoesOut
                              ? "Nothing running: at this voltage a loaded fuse draws an arc that stays."
                              : "Nothing running: under load a fuse sparks. Hold it by its body.");
     }},
}};
// clang-format on

}  // namespace

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

std::string_view side_words(const Case& the_case, Side side) {
  return side == Side::positive ? the_case.plus_colour : the_case.minus_colour;
}

std::string neighbour_words(const Case& the_case, int neighbour) {
  const bool there = neighbour >= 0 && static_cast<std::size_t>(neighbour) < the_case.neighbours.size();
  const Neighbour found = there ? the_case.neighbours[static_cast<std::size_t>(neighbour)] : Neighbour{};
  const std::string position = std::to_string(found.fuse_position);
  if (found.fuse_position == 0) return found.name.empty() ? std::string("another circuit on this block") : found.name;
  return found.name.empty() ? joined({"the circuit at position ", position})
                            : joined({found.name, " (position ", position, ")"});
}

std::string capital(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

std::string token_words(const Case& the_case, const Subject& subject, std::string_view token) {
  for (const Token& each : kTokens) {
    if (each.token == token) return each.words(the_case, subject);
  }
  const bool every_token_has_a_row = false;  // a sentence of a table holds one that none explains
  BRANCHLIGHT_EXPECT(every_token_has_a_row);
  return {};
}

}  // namespace diagnosis
