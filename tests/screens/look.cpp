// Pictures of every screen, to be looked at: test_screens_look FOLDER [only]. Not a test.
#include <cstdio>
#include <string>

#include "app_walker.h"
#include "circuits.h"
#include "trace_scenes.h"

namespace {

struct Width {
  const char* name;
  float width;
  float height;
  int text_size;
};
constexpr Width kWidths[] = {{"412", 412, 915, 100}, {"320", 320, 640, 100}, {"360", 360, 740, 100}, {"320x2", 320, 700, 200},
                             {"820", 820, 1100, 100}, {"1280", 1280, 900, 100}};

void set_text_size(AppWalker& walker, int size) {
  walker.host.records["preferences"] = "theme auto\nunits auto\ntext-size " + std::to_string(size) + "\ncaution-seen yes\n";
}

}  // namespace

int main(int argc, char** argv) {
  const std::string folder = argc > 1 ? argv[1] : ".";
  const std::string only = argc > 2 ? argv[2] : "";
  for (const Width& width : kWidths) {
    for (const bool dark : {false, true}) {
      for (const screens_test::Scene& scene : screens_test::scenes()) {
        const std::string name = std::string(scene.name) + "-" + width.name + (dark ? "-night" : "-day");
        if (!only.empty() && name.find(only) == std::string::npos) continue;
        AppWalker walker;
        set_text_size(walker, width.text_size);
        walker.around.width = width.width;
        // Tall enough to see all of the page at once.
        walker.around.height = scene.whole ? std::max(width.height, scene.tall * (width.text_size > 100 ? 2.2F : 1.0F)) : width.height;
        walker.around.pixel_ratio = width.width > 500 || scene.whole ? 1.0F : 2.0F;
        walker.around.prefers_dark = dark;
        screens_test::arrange(walker, scene);
        walker.picture(folder + "/" + name + ".png");
      }
      for (const screens_test::TraceScene& scene : screens_test::trace_scenes()) {
        const std::string name = scene.name + "-" + width.name + (dark ? "-night" : "-day");
        if (!only.empty() && name.find(only) == std::string::npos) continue;
        AppWalker walker;
        set_text_size(walker, width.text_size);
        walker.around.width = width.width;
        walker.around.height = scene.whole ? 2000 : width.height;
        walker.around.pixel_ratio = width.width > 500 ? 1.0F : 2.0F;
        walker.around.prefers_dark = dark;
        if (!screens_test::arrange(walker, scene)) std::printf("%s: a press was not to be had\n%s", name.c_str(), walker.all().c_str());
        walker.picture(folder + "/" + name + ".png");
      }
    }
  }
  return 0;
}
