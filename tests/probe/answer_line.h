// One request, one answer. Any bytes give an answer; what can not be done gives {"error": ...}.
#pragma once

#include <string>
#include <string_view>

namespace probe {

std::string answer_line(std::string_view line);

}  // namespace probe
