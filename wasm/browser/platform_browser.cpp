#include "browser/platform_browser.h"

#include <array>
#include <cstddef>

#include <emscripten.h>

// Text goes out as pointer and length; UTF8ToString stops at a NUL, which no text of ours has.
// clang-format off
EM_JS(void, bl_store, (const char* key, size_t key_size, const char* text, size_t size),
      { Module['host'].store(UTF8ToString(key, key_size), UTF8ToString(text, size)); });
EM_JS(void, bl_remove, (const char* key, size_t size),
      { Module['host'].remove(UTF8ToString(key, size)); });
EM_JS(void, bl_save_file, (const char* name, size_t name_size, const char* type, size_t type_size,
                           const char* text, size_t size),
      { Module['host'].saveFile(UTF8ToString(name, name_size), UTF8ToString(type, type_size), UTF8ToString(text, size)); });
EM_JS(void, bl_ask_for_file, (), { Module['host'].askForFile(); });
EM_JS(void, bl_push_route, (const char* route, size_t size), { Module['host'].pushRoute(UTF8ToString(route, size)); });
EM_JS(void, bl_replace_route, (const char* route, size_t size), { Module['host'].replaceRoute(UTF8ToString(route, size)); });
EM_JS(void, bl_go_back, (), { Module['host'].goBack(); });
EM_JS(void, bl_set_title, (const char* title, size_t size), { Module['host'].setTitle(UTF8ToString(title, size)); });
EM_JS(void, bl_set_dark, (int dark), { Module['host'].setDark(!!dark); });
EM_JS(void, bl_announce, (const char* text, size_t size), { Module['host'].announce(UTF8ToString(text, size)); });
EM_JS(void, bl_keep_awake, (int awake), { Module['host'].keepAwake(!!awake); });
EM_JS(void, bl_wake, (), { Module['host'].wake(); });
EM_JS(void, bl_wake_after, (int ms), { Module['host'].wakeAfter(ms); });
EM_JS(void, bl_mirror_all, (const char* full, size_t full_size, const char* moves, size_t moves_size),
      { Module['host'].mirrorAll(UTF8ToString(full, full_size), UTF8ToString(moves, moves_size)); });
EM_JS(void, bl_mirror_moves, (const char* moves, size_t size), { Module['host'].mirrorMoves(UTF8ToString(moves, size)); });
// Leaves the wasm at once, through whatever was running in it; web/app_door.js catches it and shows the page.
EM_JS(void, bl_stop, (const char* file, int line),
      { throw new Error('A promise of the program did not hold: ' + UTF8ToString(file) + ', line ' + line); });
// The local day as three numbers: no calendar or time-zone code in the wasm.
EM_JS(int, bl_day, (), { var d = new Date(); return d.getFullYear() * 10000 + (d.getMonth() + 1) * 100 + d.getDate(); });
EM_JS(void, bl_open_door, (), {
  // Bytes in: the callee copies them at once, the caller frees.
  Module['put'] = function(bytes) {
    var at = _malloc(bytes.length + 1);
    HEAPU8.set(bytes, at);
    HEAPU8[at + bytes.length] = 0;
    return at;
  };
  Module['look'] = function(at, size) { return HEAPU8.slice(at, at + size); };
  Module['heapBytes'] = function() { return HEAPU8.length; };
});
// clang-format on

namespace browser {

void Host::store(std::string_view key, std::string_view text) {
  bl_store(key.data(), key.size(), text.data(), text.size());
}
void Host::remove(std::string_view key) { bl_remove(key.data(), key.size()); }
void Host::save_file(std::string_view name, std::string_view media_type, std::string_view text) {
  bl_save_file(name.data(), name.size(), media_type.data(), media_type.size(), text.data(), text.size());
}
void Host::ask_for_file() { bl_ask_for_file(); }
void Host::push_route(std::string_view route) { bl_push_route(route.data(), route.size()); }
void Host::replace_route(std::string_view route) { bl_replace_route(route.data(), route.size()); }
void Host::go_back() { bl_go_back(); }
void Host::set_title(std::string_view title) { bl_set_title(title.data(), title.size()); }
void Host::set_dark(bool dark) { bl_set_dark(dark ? 1 : 0); }
void Host::announce(std::string_view text) { bl_announce(text.data(), text.size()); }
void Host::keep_awake(bool awake) { bl_keep_awake(awake ? 1 : 0); }
void Host::wake() { bl_wake(); }
void Host::wake_after(int milliseconds) { bl_wake_after(milliseconds); }

std::string Host::today() const {
  int day = bl_day();
  std::string text = "0000-00-00";
  constexpr std::array<std::size_t, 8> places = {9, 8, 6, 5, 3, 2, 1, 0};
  for (const std::size_t place : places) {
    text[place] = static_cast<char>('0' + day % 10);
    day /= 10;
  }
  return text;
}

double Host::now_ms() const { return emscripten_get_now(); }

void open_door() { bl_open_door(); }
void stop_on_bug(const char* file, int line) { bl_stop(file, line); }
void tell_mirror_all(std::string_view full, std::string_view moves) {
  bl_mirror_all(full.data(), full.size(), moves.data(), moves.size());
}
void tell_mirror_moves(std::string_view moves) { bl_mirror_moves(moves.data(), moves.size()); }

}  // namespace browser
