// A trace as it is kept: what was complained of, what was in hand, and every answer in order.
// From the case and a record a Tracer comes out the same to the last bit.
#pragma once

#include <string>
#include <vector>

#include "diagnosis/case.h"
#include "diagnosis/check.h"

namespace diagnosis {

enum class EntryKind { check, remedy };

// `id`: a check's or a remedy's. A remedy's answer is a word: works, same, blows_at_once, cant. In files an answer is its stable
// text (answer.h), which is what traces kept before keys were made hold as well.
struct Entry {
  EntryKind kind = EntryKind::check;
  std::string id;
  Answer answer;
  friend bool operator==(const Entry&, const Entry&) = default;
};

struct Record {
  Complaint complaint;
  Tools tools;
  std::vector<Site> out_of_reach;
  std::vector<Neighbour> neighbours;
  std::vector<Entry> entries;
};

}  // namespace diagnosis
