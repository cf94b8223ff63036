// Every screen with every kind of circuit at every width: nothing cut, nothing without a name.
#include <random>

#include "document/vehicle_file.h"
#include "circuits.h"
#include "support.h"

using ui::Role;

namespace {

struct Window {
  float width;
  float height;
  int text_size;
  bool us;
};
constexpr Window kWindows[] = {{320, 640, 100, false}, {320, 640, 200, true},  {412, 915, 100, true}, {412, 915, 150, false},
                               {820, 1100, 100, false}, {1280, 800, 200, true}, {740, 360, 100, false}};

}  // namespace

TEST_CASE("no screen cuts a text or loses a name, at any width and text size") {
  for (const Window& window : kWindows) {
    for (const screens_test::Scene& scene : screens_test::scenes()) {
      CAPTURE(window.width);
      CAPTURE(window.text_size);
      CAPTURE(scene.name);
      AppWalker walker;
      walker.around.width = window.width;
      walker.around.height = window.height;
      walker.around.prefers_us_units = window.us;
      walker.host.records["preferences"] = "text-size " + std::to_string(window.text_size) + "\ncaution-seen yes\n";
      screens_test::arrange(walker, scene);
      CHECK(walker.settle());
      check_layout(walker);
      CHECK(walker.find(Role::heading, "") != nullptr);
    }
  }
}

TEST_CASE("the longest names on every screen at 320 px and 200 %") {
  for (const screens_test::Scene& scene : screens_test::scenes()) {
    if (scene.circuit == nullptr) continue;
    CAPTURE(scene.name);
    screens_test::Scene longest = scene;
    longest.circuit = screens_test::longest_names;
    AppWalker walker;
    walker.around.width = 320;
    walker.around.height = 640;
    walker.host.records["preferences"] = "text-size 200\ncaution-seen yes\n";
    screens_test::arrange(walker, longest);
    check_layout(walker);
  }
}

TEST_CASE("thirty outlets are all there, each with its volts and its sheet") {
  AppWalker walker;
  walker.host.records["preferences"] = "caution-seen yes\n";
  screens_test::Scene scene;
  scene.circuit = screens_test::thirty;
  scene.route = "size";
  screens_test::arrange(walker, scene);
  for (int i = 1; i <= 30; ++i) CHECK(walker.shows("Light " + std::to_string(i)));
  REQUIRE(walker.press("Outlet AD, Light 30"));
  CHECK(walker.address() == "size/outlet/30");
  check_layout(walker);
}

TEST_CASE("pressing anything, anywhere, keeps the app and the stored circuits whole") {
  constexpr unsigned kSeed = 60;
  MESSAGE("seed " << kSeed);
  const bool quick = std::getenv("BRANCHLIGHT_QUICK") != nullptr;
  const int walks = quick ? 2 : 20;
  for (int walk = 0; walk < walks; ++walk) {
    std::mt19937_64 random(kSeed + static_cast<unsigned>(walk));
    AppWalker walker;
    walker.start();
    const char* texts[] = {"5", "60 W", "-1", "", "10 ft", "1e9", "Outlet", "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW", "\xC3\xA9"};
    for (int step = 0; step < 120; ++step) {
      std::vector<ui::Record> operated;
      for (const ui::Record& r : walker.records())
        if (r.id != 0 && r.role != Role::end && (r.state & ui::kDisabled) == 0U) operated.push_back(r);
      REQUIRE_FALSE(operated.empty());
      const ui::Record& r = operated[random() % operated.size()];
      CAPTURE(r.name);
      ui::Action action{.id = r.id, .kind = ui::Action::Kind::press, .text = {}};
      if (r.role == Role::spin || r.role == Role::textbox) {
        action.kind = static_cast<ui::Action::Kind>(random() % 4);
        action.text = texts[random() % std::size(texts)];
      }
      walker.shell().act(action);
      REQUIRE(walker.settle());
      if (random() % 10 == 0) {
        walker.host.go_back();
        walker.settle();
      }
    }
    check_layout(walker);
    for (const auto& [key, text] : walker.host.records)
      if (key.starts_with("vehicle/")) CHECK(document::read_vehicles(text).problems.empty());
    const auto before = walker.host.records;
    walker.restart();
    CHECK(walker.host.records == before);
  }
}
