// What the sketch says: the texts beside each outlet, and the whole circuit in words.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "circuit/circuit.h"
#include "pictures/sketch.h"
#include "sizing/answer.h"

namespace pictures {

// One outlet as the sketch writes it.
struct OutletWords {
  std::string letter;
  std::string length;        // of the run that feeds it
  std::string voltage;       // empty while there is no answer
  bool beyond_limit = false; // drops more than its limit, or can not run
};

// A piece of the tree without forks: `from` feeds the first of `outlets`, each feeds the next.
// The first outlet fed from a splice carries the line on, later ones start strands of their own.
struct Strand {
  std::optional<std::size_t> from;     // index in circuit.outlets; nullopt: the fuse block
  std::vector<std::size_t> outlets;    // indices in circuit.outlets
};

struct SketchWords {
  std::string battery;                 // "12.8 V"; empty when the battery kind is unknown
  std::string fuse;                    // "15 A"; "fuse" while none is chosen
  std::vector<OutletWords> outlets;    // by index in circuit.outlets
  std::vector<Strand> strands;         // a strand before those that leave it
  std::string description;
};
SketchWords sketch_words(const circuit::Circuit& circuit, const sizing::Candidate* choice,
                         const SketchOptions& options);

}  // namespace pictures
