// The one place that knows both the program and its judge: random vehicles, and each circuit of them told to the judge
// in its own words, with the answer that the program gave.
#pragma once

#include "judge/judge.h"
#include "sizing/answer.h"
#include "vehicle/random_vehicle.h"
#include "vehicle/vehicle.h"

namespace judge_test {

using Engine = random_vehicles::Engine;

// As met in vehicles; three of four with parts and loads that go together, so that most circuits have an answer.
vehicle::Vehicle any_vehicle(Engine& engine);
judge::Circuit describe(const vehicle::Vehicle& vehicle, const vehicle::PlacedCircuit& placed);
judge::Answer answer_of(const judge::Circuit& circuit, const sizing::Answer& answer);
// One line that a person can read.
std::string line(const judge::Circuit& circuit, const judge::Answer& answer);

}  // namespace judge_test
