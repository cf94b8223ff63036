// One size judged on every criterion, with the fuse that goes with it.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "sizing/answer.h"
#include "sizing/context.h"
#include "sizing/protection.h"
#include "sizing/worst_outlets.h"

namespace sizing {

// The fuse: the one given, else the smallest standard rating that carries the load and holds while
// it starts. A larger one that would spare some volts is a fix, never chosen here. The shelf's
// missing sizes and fuses are respected through Candidate::on_shelf.
// Where every run keeps the wire that it has, there is nothing to choose: that wire is judged, the
// thinnest of it standing for all. Else the whole list.
std::span<const tables::Conductor> sizes_to_judge(const circuit::Circuit& circuit);
Candidate judge_on_shelf(const Context& context, const tables::Conductor& size, WarmStart& warm);
Candidate judge_with(const Context& context, const tables::Conductor& size, std::optional<units::Amperes> fuse,
                     WarmStart& warm, Detail detail);

}  // namespace sizing
