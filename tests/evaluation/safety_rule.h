// The rules no advice may break, read again from the brief of the trade and not from the engine:
// no hands on live conductors, no bigger fuse, no fuse in while wiring.
#pragma once

#include <string>

#include "diagnosis/case.h"
#include "diagnosis/check.h"
#include "diagnosis/remedy.h"

namespace evaluation {

// What is wrong with it; empty when nothing is.
std::string breach(const diagnosis::Case& the_case, const diagnosis::Check& check);
std::string breach(const diagnosis::Case& the_case, const diagnosis::Remedy& remedy);

}  // namespace evaluation
