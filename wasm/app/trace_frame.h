// The open circuit as a case to trace, before anything is complained of: as built, as far as that is told.
#pragma once

#include "app/notebook.h"
#include "diagnosis/case.h"
#include "units/format.h"

namespace app {

// `open` of `notebook`, or a plain circuit in the usual sizes of `units` where it is none. Wire and fuse are what
// the person told and nothing else: what Size would choose is a plan, and never taken as fitted.
diagnosis::Case trace_frame(const Notebook& notebook, CircuitRef open, units::Preference units);

}  // namespace app
