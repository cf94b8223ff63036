# cmake -DOUT=file.cpp -DTEXT=text.otf -DSEMIBOLD=semibold.otf -P embed.cmake
# Writes the font files as byte arrays; no tool beyond CMake is needed.
function(bytes_of file result)
  file(READ ${file} hex HEX)
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${hex}")
  string(REGEX REPLACE "(0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,0x..,)"
         "\\1\n" bytes "${bytes}")
  set(${result} "${bytes}" PARENT_SCOPE)
endfunction()

bytes_of(${TEXT} text)
bytes_of(${SEMIBOLD} semibold)
file(WRITE ${OUT} "// Generated from web/fonts by wasm/fonts/embed.cmake.
#include \"fonts/fonts.h\"

namespace {
constexpr unsigned char kText[] = {
${text}};
constexpr unsigned char kSemibold[] = {
${semibold}};
}  // namespace

std::span<const unsigned char> fonts::text() { return kText; }
std::span<const unsigned char> fonts::semibold() { return kSemibold; }
")
