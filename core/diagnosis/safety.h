// The rules no advice may break: no hands on live conductors, no bigger fuse, no fuse in while wiring.
// Deny by default: what takes hands on conductors or tools on metal is refused unless a rule here permits it.
// Checked for everything before it is offered; the tests run it over every row in every state.
#pragma once

#include <string>

#include "diagnosis/check.h"
#include "diagnosis/remedy.h"

namespace diagnosis {

// What is wrong with the advice; empty when nothing is.
std::string unsafe(const Check& check);                        // before it has words
std::string unsafe(const Case& the_case, const Check& check);  // as it is shown, its caution included
std::string unsafe(const Case& the_case, const RemedyStep& step);
// Steps in order: hands only after the fuse was drawn, the metal came in sight and was proved dead, with a tester
// in hand; at the block with the battery cut off, before it with the minus lead off too; ends with a re-test.
std::string unsafe(const Case& the_case, const Remedy& remedy);

}  // namespace diagnosis
