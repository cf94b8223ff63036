#include "arrows/arrows.h"

#include <algorithm>
#include <regex>
#include <sstream>

namespace arrows {
namespace {

std::vector<std::string> words_of(const std::string& text) {
  std::istringstream stream(text);
  std::vector<std::string> words;
  for (std::string word; stream >> word;) words.push_back(word);
  return words;
}

std::string without_comments(const std::string& cmake_text) {
  return std::regex_replace(cmake_text, std::regex("#[^\n]*"), "");
}

// The outside libraries a room may know of, each with its marks in an include line.
struct Outside {
  const char* pattern;                // of the included name
  std::set<std::string> rooms;        // that may include it
};
const std::vector<Outside>& outside_rules() {
  static const std::vector<Outside> rules{
      {"nlohmann/.*", {"document"}},
      {"imgui.*|backends/imgui.*|imstb_.*", {"ui", "shell", "browser"}},
      {"cassert|assert\\.h", {}},   // left out of the shipped app: units/expect.h
      {"emscripten.*|GLES.*|EGL/.*|GL/.*", {"browser"}},
  };
  return rules;
}

struct Include {
  int line = 0;
  bool quoted = false;
  std::string name;
};

std::vector<Include> includes_of(const std::string& text) {
  static const std::regex form(R"(^\s*#\s*include\s*(["<])([^">]*)[">])");
  std::vector<Include> found;
  std::istringstream lines(text);
  int number = 0;
  for (std::string line; std::getline(lines, line);) {
    ++number;
    std::smatch match;
    if (std::regex_search(line, match, form)) found.push_back({number, match[1] == "\"", match[2]});
  }
  return found;
}

// The room whose folder holds the path; the longest folder wins.
std::string room_of(const std::string& path, const Rooms& rooms) {
  std::string best;
  std::size_t length = 0;
  for (const auto& [name, room] : rooms) {
    if (path.rfind(room.folder + "/", 0) == 0 && room.folder.size() > length) {
      best = name;
      length = room.folder.size();
    }
  }
  return best;
}

std::string complaint_about(const Include& include, const std::string& own, const Rooms& rooms) {
  if (include.name.find("..") != std::string::npos || include.name.find('\\') != std::string::npos ||
      (!include.name.empty() && include.name.front() == '/')) {
    return "leaves its room by path";
  }
  for (const Outside& rule : outside_rules()) {
    if (!std::regex_match(include.name, std::regex(rule.pattern))) continue;
    return rule.rooms.count(own) != 0 ? "" : "this library is not for room " + own;
  }
  const std::size_t slash = include.name.find('/');
  const std::string first = slash == std::string::npos ? "" : include.name.substr(0, slash);
  const bool ours = rooms.count(first) != 0;
  if (!ours) {
    if (include.quoted) return "not a room: quotes are for our own headers, from the root of core/ or wasm/";
    return first.empty() || first == "sys" ? "" : "a library no rule speaks of";
  }
  if (!include.quoted) return "our own headers go in quotes";
  if (first == own || rooms.at(own).may_include.count(first) != 0) return "";
  return "room " + own + " may not include room " + first;
}

void walk(const std::string& name, const Rooms& rooms, std::vector<std::string>& trail,
          std::set<std::string>& done, std::vector<std::string>& complaints) {
  const auto again = std::find(trail.begin(), trail.end(), name);
  if (again != trail.end()) {
    std::string loop;
    for (auto at = again; at != trail.end(); ++at) loop += *at + " -> ";
    complaints.push_back("loop: " + loop + name);
    return;
  }
  if (done.count(name) != 0 || rooms.count(name) == 0) return;
  trail.push_back(name);
  for (const std::string& next : rooms.at(name).may_include) walk(next, rooms, trail, done, complaints);
  trail.pop_back();
  done.insert(name);
}

std::vector<std::vector<std::string>> calls(const std::string& text, const std::string& command) {
  const std::regex form("\\b" + command + R"(\s*\(([^)]*)\))");
  std::vector<std::vector<std::string>> found;
  for (std::sregex_iterator at(text.begin(), text.end(), form), end; at != end; ++at) {
    found.push_back(words_of((*at)[1]));
  }
  return found;
}

std::string last_part(const std::string& folder) { return folder.substr(folder.find_last_of('/') + 1); }

// A room of headers alone: add_library(bl_platform INTERFACE) in the folder above it.
void read_header_rooms(const std::string& text, const std::string& folder, Rooms& rooms) {
  for (const auto& words : calls(text, "add_library")) {
    if (words.size() == 2 && words[1] == "INTERFACE" && words[0].rfind("bl_", 0) == 0) {
      const std::string name = words[0].substr(3);
      rooms[name] = Room{folder + "/" + name, {}};
    }
  }
}

// The program itself stands in a room: what it links is its line.
void read_program_room(const std::string& text, const std::string& folder, Rooms& rooms) {
  const auto programs = calls(text, "add_executable");
  if (programs.empty() || programs[0].empty()) return;
  Room room{folder, {}};
  for (const auto& words : calls(text, "target_link_libraries")) {
    if (words.empty() || words[0] != programs[0][0]) continue;
    for (const std::string& word : words) {
      if (word.rfind("bl_", 0) == 0) room.may_include.insert(word.substr(3));
    }
  }
  rooms[last_part(folder)] = room;
}

}  // namespace

void read_rooms(const std::string& cmake_text, const std::string& folder, Rooms& rooms) {
  const std::string text = without_comments(cmake_text);
  read_header_rooms(text, folder, rooms);
  read_program_room(text, folder, rooms);
  for (const auto& words : calls(text, "branchlight_room")) {
    if (words.empty()) continue;
    Room room{folder, {}};
    bool on_line = false;
    for (std::size_t i = 1; i < words.size(); ++i) {
      if (words[i] == "MAY_INCLUDE") {
        on_line = true;
      } else if (words[i] == "FILES" || words[i] == "ROOT") {
        on_line = false;
      } else if (on_line) {
        room.may_include.insert(words[i]);
      }
    }
    rooms[words[0]] = room;
  }
}

std::vector<std::string> check_file(const std::string& path, const std::string& text, const Rooms& rooms) {
  const std::string own = room_of(path, rooms);
  if (own.empty()) return {path + ": lies in no room"};
  std::vector<std::string> complaints;
  for (const Include& include : includes_of(text)) {
    const std::string complaint = complaint_about(include, own, rooms);
    if (complaint.empty()) continue;
    complaints.push_back(path + ":" + std::to_string(include.line) + ": " + include.name + ": " + complaint);
  }
  return complaints;
}

std::vector<std::string> check_rooms(const Rooms& rooms) {
  std::vector<std::string> complaints;
  for (const auto& [name, room] : rooms) {
    for (const std::string& other : room.may_include) {
      if (rooms.count(other) == 0) complaints.push_back(name + " names a room that is not there: " + other);
    }
  }
  std::vector<std::string> trail;
  std::set<std::string> done;
  for (const auto& [name, room] : rooms) walk(name, rooms, trail, done, complaints);
  return complaints;
}

}  // namespace arrows
