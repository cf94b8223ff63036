// What reading a circuit file promises for any bytes.
#pragma once

#include <string>
#include <string_view>

// Empty when kept; else which part of the promise the text breaks.
std::string broken_promise(std::string_view text);
