// Tracing as a person does it: symptom, answers in words, remedy, re-test; undo, a closed page and
// bad readings on the way. Found by role and name. The names of buttons and boxes in here are
// settled: "Can't reach it", "Not sure", "Undo last", "Type the reading", "Why this check",
// "It works now", "Still the same", "Can't do it here", "Take it again", "End this trace".
#include <algorithm>

#include "circuits.h"
#include "support.h"

namespace {

void begin(AppWalker& walker, const std::string& symptom, const std::string& outlet, bool spare_fuse = false) {
  screens_test::Scene scene;
  scene.circuit = screens_test::demo;
  scene.route = "trace";
  screens_test::arrange(walker, scene);
  REQUIRE(walker.press(ui::Role::checkbox, "Meter"));
  if (spare_fuse) REQUIRE(walker.press(ui::Role::checkbox, "Spare fuse"));
  REQUIRE(walker.press(symptom));
  if (!outlet.empty()) REQUIRE(walker.press(outlet));
}

std::string running(const AppWalker& walker) {
  for (const auto& [key, text] : walker.host.records)
    if (key.starts_with("running/") && std::count(key.begin(), key.end(), '/') == 2) return text;
  return {};
}

}  // namespace

TEST_CASE("a dead outlet is two taps from the first check, and a closed page goes on there") {
  AppWalker walker;
  begin(walker, "One outlet is dead", "C");
  INFO(walker.all());
  CHECK(walker.shows("Check 1"));
  CHECK(walker.find(ui::Role::button, "Can't reach it") != nullptr);
  REQUIRE(walker.press("Not sure"));
  CHECK(walker.shows("Check 2"));
  const std::string stored = running(walker);
  CHECK(stored.find("not-sure") != std::string::npos);
  walker.restart();
  REQUIRE(walker.go("trace"));
  CHECK(walker.shows("Check 2"));
  CHECK(running(walker) == stored);
  REQUIRE(walker.press("Undo last"));
  CHECK(walker.shows("Check 1"));
  CHECK(running(walker).find("not-sure") == std::string::npos);
}

TEST_CASE("a blown fuse is found by looking, put right, tested, and kept with its date") {
  AppWalker walker;
  begin(walker, "Everything on this fuse is dead", "", true);
  for (int step = 0; step < 30 && walker.find(ui::Role::button, "It works now") == nullptr; ++step) {
    INFO(walker.all());
    const bool answered = walker.press("Blown") || walker.press("Within the fuse") || walker.press("Now it works") ||
                          walker.press("Yes, as always") || walker.press("None works") ||
                          walker.press("On, and whole") || walker.press("Not sure");
    REQUIRE(answered);
  }
  INFO(walker.all());
  CHECK(walker.shows("fuse"));
  REQUIRE(walker.press("It works now"));
  CHECK(walker.shows("It works again."));
  bool kept = false;
  for (const auto& [key, text] : walker.host.records)
    kept = kept || (key.starts_with("vehicle/") && text.find("\"date\": \"2026-11-25\"") != std::string::npos);
  CHECK(kept);
  REQUIRE(walker.press("Done"));
  CHECK(walker.shows("Traces of this circuit"));
  REQUIRE(walker.press("2026-11-25"));
  CHECK(walker.shows("Put right, and it works."));
}

TEST_CASE("trace pages are never cut: narrow, large text, night") {
  for (const int text_size : {100, 200}) {
    AppWalker walker;
    walker.around.width = 320;
    walker.around.height = 640;
    walker.around.prefers_dark = true;
    walker.host.records["preferences"] = "theme auto\ntext-size " + std::to_string(text_size) + "\ncaution-seen yes\n";
    begin(walker, "One outlet is dead", "C");
    check_layout(walker);
    REQUIRE(walker.press("Why this check"));
    check_layout(walker);
    REQUIRE(walker.go("trace"));
    for (int i = 0; i < 80 && walker.find(ui::Role::button, "It works now") == nullptr; ++i) {
      check_layout(walker);
      if (!walker.press("Can't reach it")) break;
    }
    INFO(walker.all());
    CHECK(walker.find(ui::Role::button, "It works now") != nullptr);
    check_layout(walker);
  }
}

TEST_CASE("a reading that can not be is refused in words, a good one is taken with its sign") {
  AppWalker walker;
  begin(walker, "One outlet is dead", "C");
  for (int i = 0; i < 10 && walker.find(ui::Role::button, "Type the reading") == nullptr; ++i) REQUIRE(walker.press("Not sure"));
  const auto type = [&](std::initializer_list<const char*> keys) {
    REQUIRE(walker.press("Type the reading"));
    for (const char* key : keys) REQUIRE(walker.press(key));
    INFO(walker.all());
    REQUIRE(walker.press("OK"));
  };
  type({"6", "0"});
  INFO(walker.all());
  CHECK(walker.shows("60.0 V is more than"));
  CHECK(running(walker).find("reading") == std::string::npos);
  type({"1", "2", "Decimal point", "6"});
  CHECK(running(walker).find("reading 12.6") != std::string::npos);
}
