// The open circuit as a case to trace, before anything is complained of: as built, as far as that is told.
#pragma once

#include "app/notebook.h"
#include "diagnosis/case.h"
#include "units/format.h"

namespace app {

// A wire and fuse that nobody told of are guessed, for the volts and ohms reckoned with only: nothing
// guessed is ever named as fitted.
struct TraceFrame {
  diagnosis::Case frame;         // fuse_told: a known fuse that protects the known wires
  bool wire_guessed = true;      // of one run at least
  bool fuse_guessed = true;
};

// `open` of `notebook`, or a plain circuit in the usual sizes of `units` where it is none.
TraceFrame trace_frame(const Notebook& notebook, CircuitRef open, units::Preference units);

}  // namespace app
