// What reading a stored trace promises, whatever the bytes: refused, or taken so that what is written of
// it reads back as the same text, and a running one can be gone on with.
#pragma once

#include <string>
#include <string_view>

std::string broken_trace_promise(std::string_view text);   // empty: kept
