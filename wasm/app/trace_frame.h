// The open circuit as a case to trace, before anything is complained of.
#pragma once

#include "app/notebook.h"
#include "app/trace_record.h"
#include "diagnosis/case.h"
#include "units/format.h"

namespace app {

// Of `open` in `notebook`, or of a plain circuit in the usual sizes of `units` where it is nullptr. Wire and fuse are
// what the person told and nothing else: what Size would choose is a plan, and never taken as fitted.
diagnosis::Case trace_frame(const Notebook& notebook, const Stored* open, const FittedTold& told, units::Preference units);

// Does this fuse protect this wire, by the rules of Size? Not judged where one of them is not told.
diagnosis::Protection protection_of(const circuit::Circuit& circuit, const FittedTold& told);

}  // namespace app
