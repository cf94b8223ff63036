// The open circuit as a case to trace, before anything is complained of.
#pragma once

#include "app/notebook.h"
#include "app/trace_record.h"
#include "units/format.h"

namespace app {

// A wire and fuse that nobody told of are guessed, for the volts and ohms reckoned with only: nothing
// guessed is ever named as fitted.
struct TraceFrame {
  diagnosis::Case frame;         // fuse_told: a known fuse that protects a known wire
  bool wire_guessed = true;
  bool fuse_guessed = true;
};

// `open` of `notebook`, or a plain circuit in the usual sizes of `units` where it is nullptr.
TraceFrame trace_frame(const Notebook& notebook, const Stored* open, const FittedTold& told, units::Preference units);

// Does this fuse protect this wire, by the rules of Size? False where one of them is not known.
bool protects(const circuit::Circuit& circuit, const FittedTold& told);

}  // namespace app
