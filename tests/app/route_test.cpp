// Addresses, and the back gesture that closes the sheet, then the screen.
#include <set>

#include <doctest/doctest.h>

#include "app/app_state.h"
#include "memory_host.h"
#include "screens/places.h"

using app::AppState;
using test_app::MemoryHost;

namespace {

app::Route parse_route(std::string_view text) { return screens::places().read(text); }
std::string route_text(const app::Route& route) { return screens::places().address(route); }

}  // namespace

TEST_CASE("every address reads back as itself") {
  for (const std::string text : {"size", "size/outlet/3", "size/why/10awg", "size/why/1-0awg", "size/why/2.5mm2",
                                 "size/what-if", "size/what-if/12awg", "size/place", "size/supply", "size/parts",
                                 "size/reach", "size/label", "size/more", "size/built", "circuits", "circuits/12",
                                 "circuits/circuit/3/5", "circuits/block/3/1", "circuits/source/3/2", "circuits/unread/1", "preferences",
                                 "preferences/sources"}) {
    CAPTURE(text);
    CHECK(route_text(parse_route(text)) == text);
    CHECK(route_text(parse_route("#" + text)) == text);
  }
}

// Whatever places and sheets there are: each as an address of its own, that reads back as itself.
TEST_CASE("every registered place and sheet has an address of its own") {
  std::set<std::string> seen;
  const auto check = [&seen](app::Route route) {
    const std::string text = route_text(route);
    CAPTURE(text);
    CHECK(seen.insert(text).second);
    CHECK(parse_route(text) == route);
  };
  for (std::size_t i = 0; i < static_cast<std::size_t>(app::Screen::count); ++i) {
    const screens::Place& place = screens::place_of(static_cast<app::Screen>(i));
    app::Route route = app::Route::at(place.id);
    if (place.key.get() == app::KeyForm::always) route.key = "crimp";
    check(route);
    for (const screens::SheetRow& sheet : place.sheets.get()) {
      app::Route over = route;
      over.sheet = sheet.id;
      if (place.key.get() == app::KeyForm::listed) over.key = "some-key";
      switch (sheet.argument.get()) {
        case app::Argument::none: break;
        case app::Argument::outlet: over.outlet = circuit::OutletId{3}; break;
        case app::Argument::size:
        case app::Argument::maybe_size: over.size = "1/0awg"; break;
        case app::Argument::number: over.stored = 7; break;
        case app::Argument::pair: over.stored = 7; over.part = 9; break;
        case app::Argument::row: over.row = "some-row"; break;
      }
      check(over);
    }
  }
  CHECK(seen.size() >= static_cast<std::size_t>(app::Screen::count) + static_cast<std::size_t>(app::Sheet::count) - 1);
}

TEST_CASE("a bad address is Size") {
  for (const std::string text : {"", "#", "nothing", "size/", "size/outlet", "size/outlet/0", "size/outlet/x", "size/outlet/3/4",
                                 "size/why", "size/why/99awg", "size/what-if/none", "size/../x", "SIZE/PLACE", "size/place/x",
                                 "size/outlet/99999999999999", "\xFF"}) {
    CAPTURE(text);
    CHECK(route_text(parse_route(text)) == "size");
  }
  for (const std::string text : {"circuits/x", "circuits/0", "circuits/circuit/3", "circuits/circuit/3/0", "circuits/circuit/3/5/7", "circuits/block/x/1"})
    CHECK_MESSAGE(route_text(parse_route(text)) == "circuits", text);
  CHECK(route_text(parse_route("preferences/x")) == "preferences");
}

TEST_CASE("started at a sheet's address, back closes the sheet") {
  MemoryHost host;
  host.addresses = {"size/outlet/2"};
  AppState state(host, screens::places(), {}, "size/outlet/2");
  CHECK(state.navigator().route().outlet.number == 2);
  state.navigator().back();
  CHECK(route_text(state.navigator().route()) == "size");
  CHECK(host.addresses == std::vector<std::string>{"size"});
}

TEST_CASE("an outlet or circuit that is not there is not opened") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "size/outlet/77");
  CHECK(route_text(state.navigator().route()) == "size");
  state.navigator().go(app::Route::at_vehicle(55));
  CHECK(route_text(state.navigator().route()) == "circuits");
  state.navigator().route_changed("size/outlet/78");
  CHECK(route_text(state.navigator().route()) == "size");
  CHECK(host.addresses.back() == "size");
}

TEST_CASE("the back gesture closes the sheet, then the screen") {
  MemoryHost host;
  AppState state(host, screens::places(), {}, "");
  host.on_route = [&state](std::string_view text) { state.navigator().route_changed(text); };
  state.navigator().go(app::Route::at(app::Screen::circuits));
  state.navigator().go(app::Route::at_vehicle(1));
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
  AppState state(host, screens::places(), {}, "");
  host.on_route = [&state](std::string_view text) { state.navigator().route_changed(text); };
  using Steps = std::vector<std::string>;
  state.navigator().go(app::Route::at(app::Screen::size, app::Sheet::more));
  state.desk().new_circuit();
  CHECK(host.addresses == Steps{"size"});
  CHECK(state.messages().toast());   // that the demo made room is still told
  state.navigator().go(app::Route::at(app::Screen::circuits));
  const app::CircuitRef own = state.editor().current().circuit;
  state.navigator().go(app::Route::at_circuit(own));
  state.desk().open_circuit(own);
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
  AppState state(host, screens::places(), {}, "");
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
    state.desk().duplicate_circuit(state.editor().current().circuit);
    const app::CircuitRef copy = state.editor().current().circuit;
    state.navigator().go(app::Route::at(app::Screen::circuits));
    state.navigator().go(app::Route::at_circuit(copy));
    state.navigator().layers_over(1);
    state.desk().delete_circuit(copy);
    CHECK(route_text(state.navigator().route()) == "circuits");
    state.navigator().layers_over(0);
    CHECK(host.addresses.back() == "circuits");
    CHECK(route_text(state.navigator().route()) == "circuits");
  }
}

TEST_CASE("the addresses of Trace go there and back, and a wrong one lands on Trace") {
  for (const char* text : {"trace", "trace/start/one-dead", "trace/why", "trace/answers", "trace/again/2", "trace/record/3", "trace/more"}) {
    CAPTURE(text);
    CHECK(route_text(parse_route(text)) == text);
  }
  for (const char* text : {"trace/record/0", "trace/again/x", "trace/nonsense", "trace/why/2"}) {
    CAPTURE(text);
    CHECK(route_text(parse_route(text)) == "trace");
  }
}
