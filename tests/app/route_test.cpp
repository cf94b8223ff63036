// Addresses, and the back gesture that closes the sheet, then the screen.
#include <doctest/doctest.h>

#include "app/app_state.h"
#include "memory_host.h"

using app::AppState;
using app::parse_route;
using app::route_text;
using test_app::MemoryHost;

TEST_CASE("every address reads back as itself") {
  for (const std::string text : {"size", "size/outlet/3", "size/why/10awg", "size/why/1-0awg", "size/why/2.5mm2",
                                 "size/what-if", "size/what-if/12awg", "size/place", "size/supply", "size/parts",
                                 "size/reach", "size/label", "size/more", "circuits", "circuits/12", "preferences",
                                 "preferences/sources"}) {
    CAPTURE(text);
    CHECK(route_text(parse_route(text)) == text);
    CHECK(route_text(parse_route("#" + text)) == text);
  }
}

TEST_CASE("a bad address is Size") {
  for (const std::string text : {"", "#", "nothing", "size/", "size/outlet", "size/outlet/0", "size/outlet/x", "size/outlet/3/4",
                                 "size/why", "size/why/99awg", "size/what-if/none", "size/../x", "SIZE/PLACE", "size/place/x",
                                 "size/outlet/99999999999999", "\xFF"}) {
    CAPTURE(text);
    CHECK(route_text(parse_route(text)) == "size");
  }
  CHECK(route_text(parse_route("circuits/x")) == "circuits");
  CHECK(route_text(parse_route("preferences/x")) == "preferences");
}

TEST_CASE("above a sheet lies its page, above a page its screen, above a screen Size") {
  const auto above = [](std::string_view text) { return route_text(parse_route(text).parent()); };
  CHECK(above("tables/fuses/row") == "tables/fuses");
  CHECK(above("tables/fuses") == "tables");
  CHECK(above("quick/joint/how") == "quick/joint");
  CHECK(above("quick/joint") == "quick");
  CHECK(above("cards/crimp") == "tables");
  CHECK(above("trace/why") == "trace");
  CHECK(above("trace") == "size");
  CHECK(above("size/place") == "size");
}

TEST_CASE("started at a sheet's address, back closes the sheet") {
  MemoryHost host;
  host.addresses = {"size/outlet/2"};
  AppState state(host, {}, "size/outlet/2");
  CHECK(state.navigator().route().outlet.number == 2);
  state.navigator().back();
  CHECK(route_text(state.navigator().route()) == "size");
  CHECK(host.addresses == std::vector<std::string>{"size"});
}

TEST_CASE("an outlet or circuit that is not there is not opened") {
  MemoryHost host;
  AppState state(host, {}, "size/outlet/77");
  CHECK(route_text(state.navigator().route()) == "size");
  state.navigator().go(app::Route::at_stored(55));
  CHECK(route_text(state.navigator().route()) == "circuits");
  state.navigator().route_changed("size/outlet/78");
  CHECK(route_text(state.navigator().route()) == "size");
  CHECK(host.addresses.back() == "size");
}

TEST_CASE("the back gesture closes the sheet, then the screen") {
  MemoryHost host;
  AppState state(host, {}, "");
  host.on_route = [&state](std::string_view text) { state.navigator().route_changed(text); };
  state.navigator().go(app::Route::at(app::Screen::circuits));
  state.navigator().go(app::Route::at_stored(1));
  CHECK(host.title == "Circuits");
  host.go_back();   // the phone's own gesture
  CHECK(route_text(state.navigator().route()) == "circuits");
  state.navigator().back();     // the arrow on the page
  CHECK(route_text(state.navigator().route()) == "size");
  CHECK(host.addresses == std::vector<std::string>{"size"});
  CHECK(host.title == "Bench outlets");
}

TEST_CASE("what opened and closed a sheet leaves no step behind") {
  MemoryHost host;
  AppState state(host, {}, "");
  host.on_route = [&state](std::string_view text) { state.navigator().route_changed(text); };
  using Steps = std::vector<std::string>;
  state.navigator().go(app::Route::at(app::Screen::size, app::Sheet::more));
  state.desk().new_circuit();
  CHECK(host.addresses == Steps{"size"});
  CHECK(state.messages().toast());   // that the demo made room is still told
  state.navigator().go(app::Route::at(app::Screen::circuits));
  state.navigator().go(app::Route::at_stored(2));
  state.desk().open_circuit(2);
  CHECK(host.addresses == Steps{"size", "circuits", "size"});
  host.go_back();
  CHECK(route_text(state.navigator().route()) == "circuits");
  state.desk().new_circuit();
  CHECK(host.addresses == Steps{"size"});
  state.navigator().go(app::Route::at_outlet(state.editor().circuit().outlets.front().id));
  state.editor().dispatch(circuit::AddOutlet{state.editor().circuit().outlets.front().id});
  state.editor().dispatch(circuit::RemoveOutlet{state.editor().circuit().outlets.front().id});
  CHECK(host.addresses == Steps{"size"});
  CHECK(state.messages().toast());
}

TEST_CASE("a layer over the page has a step of its own") {
  MemoryHost host;
  AppState state(host, {}, "");
  bool close_layer = false;
  host.on_route = [&](std::string_view text) { close_layer = state.navigator().route_changed(text); };
  SUBCASE("closed by the back gesture") {
    state.navigator().layers_over(1);
    state.navigator().layers_over(1);
    CHECK(host.addresses == std::vector<std::string>{"size", "size"});
    host.go_back();
    CHECK(close_layer);
    state.navigator().layers_over(0);
    CHECK(host.addresses == std::vector<std::string>{"size"});
    CHECK(route_text(state.navigator().route()) == "size");
  }
  SUBCASE("closed by its own button") {
    state.navigator().layers_over(1);
    state.navigator().layers_over(0);
    CHECK_FALSE(close_layer);
    CHECK(host.addresses == std::vector<std::string>{"size"});
    state.navigator().go(app::Route::at(app::Screen::size, app::Sheet::place));
    CHECK(host.addresses == std::vector<std::string>{"size", "size/place"});
    host.go_back();
    CHECK_FALSE(close_layer);
    CHECK(route_text(state.navigator().route()) == "size");
  }
  SUBCASE("it leads elsewhere") {
    state.navigator().layers_over(1);
    state.navigator().go(app::Route::at(app::Screen::circuits));
    state.navigator().layers_over(0);
    CHECK(host.addresses == std::vector<std::string>{"size", "circuits"});
    host.go_back();
    CHECK(route_text(state.navigator().route()) == "size");
  }
  SUBCASE("what lay under it is gone") {
    state.navigator().go(app::Route::at(app::Screen::circuits));
    state.desk().duplicate_circuit(1);
    state.navigator().go(app::Route::at(app::Screen::circuits));
    state.navigator().go(app::Route::at_stored(2));
    state.navigator().layers_over(1);
    state.desk().delete_circuit(2);
    CHECK(route_text(state.navigator().route()) == "circuits");
    state.navigator().layers_over(0);
    CHECK(host.addresses.back() == "circuits");
    CHECK(route_text(state.navigator().route()) == "circuits");
  }
}

TEST_CASE("the addresses of Trace go there and back, and a wrong one lands on Trace") {
  for (const char* text : {"trace", "trace/start/one-dead", "trace/why", "trace/answers", "trace/again/2", "trace/record/3", "trace/more"}) {
    CAPTURE(text);
    CHECK(app::route_text(app::parse_route(text)) == text);
  }
  for (const char* text : {"trace/record/0", "trace/again/x", "trace/nonsense", "trace/why/2"}) {
    CAPTURE(text);
    CHECK(app::route_text(app::parse_route(text)) == "trace");
  }
}
