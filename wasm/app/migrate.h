// Version 1 kept each circuit as a record of its own, with others beside it: "circuit/3", "fitted/3",
// "picked/3", "trace/3" for the trace that runs, "trace/3/1" for one that was ended, and "notebook" with
// the order. Here they go into vehicles.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/records.h"

namespace app {

// What is stored, as this version keeps it. What is new is written at once, the vehicles first and their
// index last. What it came from stays on the device until another start finds the new records there: so
// neither a sudden stop nor a full device can lose a circuit. A record that can not be read stays as it is,
// and a circuit among them is still in the list that this gives.
std::vector<platform::StoredRecord> migrated(Records& records, const std::vector<platform::StoredRecord>& stored);

// Of a record that is still a circuit of its own: why. nullopt: it is another kind of record.
std::optional<std::string> why_not_moved(const platform::StoredRecord& record);

}  // namespace app
