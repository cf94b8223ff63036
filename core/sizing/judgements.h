// Each criterion on its own: value, limit, where the rule comes from, and a sentence.
// docs/sizing-rules.md gives formula and source of each.
#pragma once

#include <optional>
#include <vector>

#include "sizing/answer.h"
#include "sizing/context.h"
#include "sizing/protection.h"
#include "sizing/worst_outlets.h"

namespace sizing {

// What is judged: one size, its tail, the fuse that would go with it.
struct Judging {
  const Context& context;
  const tables::Conductor& size;
  const tables::Conductor* tail;
  const FuseCeiling& ceiling;
  std::optional<units::Amperes> fuse;   // nullopt: the family has none for this current
  bool fuse_carries;                    // rating from 1.25 x the current up
  units::Amperes design;
};

Judgement judge_ampacity(const Judging& judging);
Judgement judge_fuse_rating(const Judging& judging);
Judgement judge_fuse_voltage(const Judging& judging);
Judgement judge_part_rating(const Judging& judging);
Judgement judge_fit(const Judging& judging);
Judgement judge_mechanical_minimum(const Judging& judging);

struct CannotRun {
  std::optional<std::size_t> outlet;
  bool only_when_low = false;
  bool unsettled = false;
};
Judgement judge_operating_point(const Judging& judging, const CannotRun& cannot_run);
Judgement judge_drop(const Judging& judging, const OutletsFound& found);
Judgement judge_device_minimum(const Judging& judging, const std::vector<double>& low_v);
Judgement judge_far_short(const Judging& judging, const network::Fitted& fitted);
Judgement judge_withstand(const Judging& judging, const network::Fitted& fitted);

// What flows at most through the fuse of a zone, and what that asks of its rating.
struct ZoneCurrent {
  units::Amperes most;
  units::Amperes need;    // 125 % of what lasts, 100 % of the rest
};
ZoneCurrent zone_current(const Context& context, const Zone& zone, const std::vector<OutletResult>& outlets);
Judgement judge_inner_fuses(const Judging& judging, const std::vector<OutletResult>& outlets);
Judgement judge_inrush(const Judging& judging);
std::optional<tables::DeratedAmpacity> feeder_ampacity(const Context& context);  // nullopt: no feeder, or no figure
Judgement judge_feeder(const Judging& judging);
Judgement judge_feeder_drop(const Judging& judging, const network::Fitted& fitted);

}  // namespace sizing
