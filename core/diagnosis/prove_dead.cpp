#include "diagnosis/prove_dead.h"

#include "diagnosis/words.h"

namespace diagnosis {

std::string prove_dead_words(const Case& the_case, std::string_view where) {
  const bool by_lamp = the_case.tools.lamp && !the_case.tools.meter;
  const std::string_view tester = by_lamp ? "lamp" : "meter", shows = by_lamp ? "the lamp dark" : "below 1 V";
  return joined({"Prove ", where, " dead on the bare metal: ", the_case.plus_colour, " to a minus that you know, ",
                 the_case.minus_colour, " to it, ", the_case.plus_colour, " to ", the_case.minus_colour, ", each time ",
                 shows, ". Try the ", tester,
                 " on a live point before and after. Still live: another circuit feeds it, hands off."});
}

std::string borrow_words(const Case& the_case) {
  if (can_prove_dead(the_case.tools)) return {};
  return "Borrow a meter or a test lamp with a filament first. Without one you can not prove dead: no hands on bare metal.";
}

}  // namespace diagnosis
