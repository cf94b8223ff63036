// What reading a file promises for any bytes: valid and stable, or problems with sentences.
#pragma once

#include <string>
#include <string_view>

// Empty when kept; else which part of the promise the text breaks.
std::string broken_vehicle_promise(std::string_view text);
std::string broken_circuit_promise(std::string_view text);
