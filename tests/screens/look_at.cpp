// One picture of one address, to be looked at:
//   test_screens_look_at OUT.png ROUTE [width height text-size night|day metric|us [search words]]
#include <cstdlib>
#include <string>

#include "app_walker.h"
#include "circuits.h"

int main(int argc, char** argv) {
  if (argc < 3) return 1;
  const auto argument = [&](int i, const char* otherwise) { return std::string(argc > i ? argv[i] : otherwise); };
  AppWalker walker;
  walker.host.records["preferences"] = "theme auto\ntext-size " + argument(5, "100") + "\ncaution-seen yes\n";
  walker.around.width = static_cast<float>(std::atof(argument(3, "412").c_str()));
  walker.around.height = static_cast<float>(std::atof(argument(4, "915").c_str()));
  walker.around.pixel_ratio = walker.around.height > 1000.0F || walker.around.width > 500.0F ? 1.0F : 2.0F;
  walker.around.prefers_dark = argument(6, "day") == "night";
  walker.around.prefers_us_units = argument(7, "metric") == "us";
  screens_test::Scene scene;
  scene.circuit = screens_test::demo;
  scene.route = argv[2];
  screens_test::arrange(walker, scene);
  if (argc > 8) walker.set(ui::Role::textbox, "Search", argv[8]);
  return walker.picture(argv[1]) ? 0 : 1;
}
