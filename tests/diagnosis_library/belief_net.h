// A trace as a Bayesian network of the general kind, solved exactly by a library: a node for the
// fault (or the pair of faults), one for its size, one for the complaint, one for each check. The
// library knows nothing of tracing, only tables.
#pragma once

#include <cstddef>
#include <vector>

namespace library {

using Row = std::vector<double>;   // probabilities of a node's values; sums to one

struct Observable {
  // By fault, by size; of each as many as Tables::size says.
  std::vector<std::vector<Row>> given;
  int seen = -1;                   // value observed; -1: none, the node is summed out
};

struct Tables {
  Row fault;
  std::vector<Row> size;           // by fault; all rows equally long, 0 where there is no such size
  std::vector<Observable> observables;
};

struct Beliefs {
  Row fault;                       // posterior
  std::vector<Row> observables;    // of each: one value at 1 when seen, else what is to be expected
};
Beliefs join_tree(const Tables& tables);

}  // namespace library
