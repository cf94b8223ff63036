// Names cut to length, and made fit for a file.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace app {

// At most `most` code points of `text`, never half of one.
std::string first_characters(std::string_view text, std::size_t most);
// "bench-outlets": what a file may be called on any device.
std::string file_stem(std::string_view name);

}  // namespace app
