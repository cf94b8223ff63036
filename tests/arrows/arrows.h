// Holds #include lines to the rooms' MAY_INCLUDE lines in the CMakeLists.txt files. Only what
// stands on a room's own line counts: what a friend may include, the room may not.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

namespace arrows {

struct Room {
  std::string folder;               // "core/tables"
  std::set<std::string> may_include;  // names of rooms
};
using Rooms = std::map<std::string, Room>;  // by name: "tables"

// Adds the rooms that one CMakeLists.txt declares: by branchlight_room(), a room of headers
// alone by add_library(bl_x INTERFACE), and the program's own room by what it links.
void read_rooms(const std::string& cmake_text, const std::string& folder, Rooms& rooms);

// Every complaint about one source file, empty when it keeps to its room's line.
// `path` is from the top of the repository: "core/tables/fuse.cpp".
std::vector<std::string> check_file(const std::string& path, const std::string& text, const Rooms& rooms);

// Rooms named on a line that do not exist, and loops of rooms ("a -> b -> a").
std::vector<std::string> check_rooms(const Rooms& rooms);

}  // namespace arrows
