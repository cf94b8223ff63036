// Which nodes hang together (union-find). Private to this room.
#pragma once

#include <cstddef>
#include <numeric>
#include <vector>

namespace network::detail {

class NodeGroups {
 public:
  explicit NodeGroups(std::size_t nodes) : parent_(nodes) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::size_t group(std::size_t node) {
    while (parent_[node] != node) node = parent_[node] = parent_[parent_[node]];
    return node;
  }
  // False when they hung together already. The lower index stands for the group.
  bool join(std::size_t a, std::size_t b) {
    a = group(a);
    b = group(b);
    if (a == b) return false;
    (a < b ? parent_[b] : parent_[a]) = a < b ? a : b;
    return true;
  }

 private:
  std::vector<std::size_t> parent_;
};

}  // namespace network::detail
