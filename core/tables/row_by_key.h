// The row of a table that has a key.
#pragma once

#include <iterator>
#include <string_view>

namespace tables {

// nullptr: no row has it. The rows stand side by side and outlive the pointer.
template <class Rows>
auto row_by_key(const Rows& rows, std::string_view key) -> decltype(std::data(rows)) {
  for (const auto& row : rows) {
    if (row.key == key) return &row;
  }
  return nullptr;
}

}  // namespace tables
