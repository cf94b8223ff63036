#include "sizing/zones.h"

#include <algorithm>
#include <map>

namespace sizing {

Zones::Zones(const circuit::Circuit& circuit) : all(1), of_outlet(circuit.outlets.size(), kBranchZone) {
  std::map<circuit::OutletId, std::size_t> zone_at;   // where the next run goes on from
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {   // parents stand before their children
    const circuit::Outlet& outlet = circuit.outlets[i];
    const auto parent = zone_at.find(outlet.fed_from);
    std::size_t zone = parent == zone_at.end() ? kBranchZone : parent->second;
    // Of several in one run the smallest decides: they carry the same current.
    const circuit::InLine* protection = nullptr;
    for (const circuit::InLine& part : outlet.run.in_line) {
      if (!circuit::is_overcurrent_protection(part)) continue;
      if (protection == nullptr || part.rating < protection->rating) protection = &part;
    }
    if (protection != nullptr) {
      Zone begun;
      begun.begins_at = i;
      begun.protection = *protection;
      begun.inside = zone;
      all.push_back(std::move(begun));
      zone = all.size() - 1;
    }
    all[zone].outlets.push_back(i);
    all[zone].has_open_runs = all[zone].has_open_runs || !outlet.run.size;
    of_outlet[i] = zone;
    zone_at[outlet.id] = zone;
  }
}

}  // namespace sizing
