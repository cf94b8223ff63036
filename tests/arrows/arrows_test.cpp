// The rooms' arrows, read from the same CMakeLists.txt files that build them.
#include "arrows/arrows.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace fs = std::filesystem;

namespace {

const fs::path kTop = BRANCHLIGHT_SOURCE_DIR;

std::string text_of(const fs::path& path) {
  std::ifstream file(path);
  REQUIRE_MESSAGE(file.good(), path.string());
  return {std::istreambuf_iterator<char>(file), {}};
}

arrows::Rooms rooms_of_repository() {
  arrows::Rooms rooms;
  for (const char* top : {"core", "wasm"}) {
    for (const auto& entry : fs::recursive_directory_iterator(kTop / top)) {
      if (entry.path().filename() != "CMakeLists.txt") continue;
      arrows::read_rooms(text_of(entry.path()), fs::relative(entry.path().parent_path(), kTop).string(), rooms);
    }
  }
  return rooms;
}

bool is_source(const fs::path& path) {
  const std::string end = path.extension().string();
  return end == ".h" || end == ".cpp";
}

// A small house of its own, to show that the checker can fail.
arrows::Rooms small_house() {
  arrows::Rooms rooms;
  arrows::read_rooms("branchlight_room(units\n  FILES a.cpp\n)\n", "core/units", rooms);
  arrows::read_rooms("branchlight_room(tables FILES a.cpp MAY_INCLUDE units)", "core/tables", rooms);
  arrows::read_rooms("branchlight_room(circuit # tables' friend\n FILES a.cpp\n MAY_INCLUDE tables)", "core/circuit", rooms);
  arrows::read_rooms("branchlight_room(document FILES a.cpp MAY_INCLUDE circuit)", "core/document", rooms);
  arrows::read_rooms("branchlight_room(ui ROOT x FILES a.cpp MAY_INCLUDE units)", "wasm/ui", rooms);
  return rooms;
}

std::size_t complaints(const std::string& path, const std::string& text) {
  return arrows::check_file(path, text, small_house()).size();
}

}  // namespace

TEST_CASE("Every include in core/ and wasm/ keeps to its room's line") {
  const arrows::Rooms rooms = rooms_of_repository();
  REQUIRE(rooms.size() >= 13);
  REQUIRE(rooms.count("sizing") == 1);
  CHECK(rooms.at("units").may_include.empty());
  int files = 0;
  for (const char* top : {"core", "wasm"}) {
    for (const auto& entry : fs::recursive_directory_iterator(kTop / top)) {
      if (!is_source(entry.path())) continue;
      ++files;
      for (const std::string& complaint :
           arrows::check_file(fs::relative(entry.path(), kTop).string(), text_of(entry.path()), rooms)) {
        FAIL_CHECK(complaint);
      }
    }
  }
  CHECK(files > 50);
}

TEST_CASE("The arrows make no loop and name only rooms that exist") {
  for (const std::string& complaint : arrows::check_rooms(rooms_of_repository())) FAIL_CHECK(complaint);
}

TEST_CASE("The core knows nothing of the app") {
  const arrows::Rooms rooms = rooms_of_repository();
  for (const auto& entry : rooms) {
    const arrows::Room& room = entry.second;
    if (room.folder.rfind("core/", 0) != 0) continue;
    for (const std::string& other : room.may_include) {
      REQUIRE(rooms.count(other) == 1);
      INFO(room.folder << " -> " << other);
      CHECK(rooms.at(other).folder.rfind("core/", 0) == 0);
    }
  }
}

TEST_CASE("The checker finds a wrong include") {
  CHECK(complaints("core/tables/a.cpp", "#include \"units/quantity.h\"\n#include <string>\n") == 0);
  CHECK(complaints("core/tables/a.cpp", "#include \"tables/fuse.h\"\n") == 0);
  CHECK(complaints("core/units/a.cpp", "#include \"tables/fuse.h\"\n") == 1);      // against the arrow
  CHECK(complaints("core/circuit/a.cpp", "#include \"units/quantity.h\"\n") == 1); // only through a friend
  CHECK(complaints("core/circuit/a.cpp", "  #  include   \"ui/ui.h\"\n") == 1);    // core to app
  CHECK(complaints("core/tables/a.cpp", "#include \"fuse.h\"\n") == 1);            // not from the root
  CHECK(complaints("core/tables/a.cpp", "#include \"../units/quantity.h\"\n") == 1);
  CHECK(complaints("core/tables/a.cpp", "#include \"/tmp/x.h\"\n") == 1);
  CHECK(complaints("core/tables/a.cpp", "#include <units/quantity.h>\n") == 1);
  CHECK(complaints("core/tables/a.cpp", "#include <nlohmann/json.hpp>\n") == 1);
  CHECK(complaints("core/document/a.cpp", "#include <nlohmann/json.hpp>\n") == 0);
  CHECK(complaints("core/tables/a.cpp", "#include <imgui.h>\n") == 1);
  CHECK(complaints("wasm/ui/a.cpp", "#include <imgui.h>\n#include \"imgui_internal.h\"\n") == 0);
  CHECK(complaints("wasm/ui/a.cpp", "#include <emscripten/html5.h>\n") == 1);
  CHECK(complaints("core/circuit/a.cpp", "#include \"backends/imgui_impl_opengl3.h\"\n") == 1);
  CHECK(complaints("core/tables/a.cpp", "#include <boost/any.hpp>\n") == 1);
  CHECK(complaints("core/nowhere/a.cpp", "") == 1);
}

TEST_CASE("The checker finds loops and rooms that are not there") {
  arrows::Rooms rooms = small_house();
  CHECK(arrows::check_rooms(rooms).empty());
  rooms["units"].may_include.insert("circuit");
  CHECK(arrows::check_rooms(rooms).size() == 1);
  rooms["ui"].may_include.insert("attic");
  CHECK(arrows::check_rooms(rooms).size() == 2);
}
