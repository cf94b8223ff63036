// Circuits and answers made by hand: the sketch is tested without asking sizing.
#pragma once

#include <cstdint>
#include <random>

#include "circuit/circuit.h"
#include "pictures/sketch.h"
#include "sizing/answer.h"

namespace samples {

// An answer with a 15 A fuse whose voltages fall evenly from 12.6 V by `step_v` per outlet.
sizing::Candidate answer_for(const circuit::Circuit& circuit, double step_v = 0.1);

circuit::Circuit chain(std::size_t outlets);
// A main line of four with two branches, one of which forks again.
circuit::Circuit tree();
// Every outlet fed from the block or from an earlier outlet, picked at random.
circuit::Circuit random_circuit(std::mt19937_64& random, std::size_t outlets);

}  // namespace samples
