// Where the probes go, and one picture for each how-to card.
#include <array>

#include "pictures/plate_kit.h"

namespace pictures {
namespace {

using drawing::Anchor;
using drawing::Ink;
using drawing::Point;

// Battery, fuse, red line over black line, an outlet at the end.
struct Line2 {
  double left, fuse, splice, outlet, red, black;
};
Line2 draw_circuit(Plate& plate, bool fuse_in) {
  const double u = plate.unit(), w = plate.width();
  const Line2 at{0.10 * w, 0.28 * w, 0.55 * w, 0.86 * w, 84.0 * u, 124.0 * u};
  plate.line({at.left, at.red}, {at.fuse - 14.0 * u, at.red}, 3.0, Ink::positive);
  plate.line({at.fuse + 14.0 * u, at.red}, {at.outlet, at.red}, 3.0, fuse_in ? Ink::positive : Ink::muted);
  plate.line({at.left, at.black}, {at.outlet, at.black}, 3.0, Ink::negative);
  plate.box({at.left - 16.0 * u, at.red - 6.0 * u}, 32.0 * u, at.black - at.red + 12.0 * u, 4.0 * u, Ink::text, Ink::card);
  plate.text({at.left, at.red + 10.0 * u}, "+", Anchor::centre, Ink::positive, true);
  plate.text({at.left, at.black - 10.0 * u}, "-", Anchor::centre, Ink::negative, true);
  plate.box({at.fuse - 14.0 * u, at.red - 9.0 * u}, 28.0 * u, 18.0 * u, 4.0 * u, Ink::text, fuse_in ? Ink::card : Ink::none);
  if (fuse_in) plate.line({at.fuse - 14.0 * u, at.red}, {at.fuse + 14.0 * u, at.red}, 2.0, Ink::text);
  plate.text({at.fuse, at.red + 20.0 * u}, fuse_in ? "fuse" : "fuse out", Anchor::centre, fuse_in ? Ink::muted : Ink::stop, !fuse_in);
  plate.circle({at.splice, at.red}, 4.0 * u, Ink::text, Ink::card, 2.0);
  plate.circle({at.splice, at.black}, 4.0 * u, Ink::text, Ink::card, 2.0);
  plate.line({at.outlet, at.red}, {at.outlet, at.black}, 2.0, Ink::muted);
  plate.circle({at.outlet, 0.5 * (at.red + at.black)}, 11.0 * u, Ink::text, Ink::card, 1.5);
  plate.text({at.outlet, 0.5 * (at.red + at.black)}, "A", Anchor::centre, Ink::text, true);
  return at;
}

void draw_meter(Plate& plate, double x, const std::string& shows, Point red_probe, Point black_probe) {
  const double u = plate.unit();
  const double half = 0.5 * plate.text_width(shows, true, drawing::TextSize::text) + 12.0 * u;
  plate.box({x - half, 8.0 * u}, 2.0 * half, 30.0 * u, 6.0 * u, Ink::accent, Ink::card);
  plate.text({x, 23.0 * u}, shows, Anchor::centre, Ink::text, true, drawing::TextSize::text);
  plate.path({{x + 0.5 * half, 38.0 * u}, {x + 0.5 * half, 52.0 * u}, {red_probe.x, 52.0 * u}, red_probe}, 2.0, Ink::accent);
  plate.path({{x - 0.5 * half, 38.0 * u}, {x - 0.5 * half, 60.0 * u}, {black_probe.x, 60.0 * u}, black_probe}, 2.0, Ink::muted);
  plate.circle(red_probe, 4.5 * u, Ink::accent, Ink::accent);
  plate.circle(black_probe, 4.5 * u, Ink::muted, Ink::muted);
  plate.text({red_probe.x + 8.0 * u, red_probe.y - 11.0 * u}, "red", Anchor::left, Ink::accent, true);
  plate.text({black_probe.x - 8.0 * u, black_probe.y - 11.0 * u}, "black", Anchor::right, Ink::muted, true);
}

}  // namespace

std::optional<drawing::Picture> probe_plate(reference::Depicts what, const PlateOptions& options) {
  using reference::Depicts;
  Plate plate(options, 168.0);
  const double u = plate.unit();
  const Line2 at = draw_circuit(plate, what != Depicts::probes_continuity);
  const Point foot{0.5 * plate.width(), 154.0 * u};
  switch (what) {
    case Depicts::probes_volts:
      draw_meter(plate, 0.5 * plate.width(), "12.6 V", {at.outlet, at.red}, {at.splice, at.black});
      plate.text(foot, "Red where you ask, black on the negative");
      return plate.done("Meter on volts: red probe on the red wire at the outlet, black probe on the black wire. It shows 12.6 V.");
    case Depicts::probes_sign:
      draw_meter(plate, 0.5 * plate.width(), "-12.6 V", {at.outlet, at.black}, {at.splice, at.red});
      plate.text(foot, "A minus: the red probe is on the lower side");
      return plate.done("Meter on volts with the probes swapped: it shows minus 12.6 V. A minus means the red probe stands on the negative side.");
    case Depicts::probes_continuity:
      draw_meter(plate, 0.5 * plate.width(), "beep", {at.outlet, at.red}, {at.splice, at.red});
      plate.text(foot, "Fuse out, proved dead; both probes on one wire");
      return plate.done("Meter on continuity with the fuse out: both probes on the red wire, at the splice and at the outlet. It beeps.");
    case Depicts::probes_drop:
      draw_meter(plate, 0.5 * plate.width(), "0.14 V", {at.splice, at.red}, {at.outlet, at.red});
      plate.text(foot, "Load on; both probes on the same wire");
      return plate.done("Meter on volts with the load on: both probes on the red wire, at the splice and at the outlet. It shows the volts lost between, 0.14 V.");
    default: return std::nullopt;
  }
}

std::optional<drawing::Picture> how_to_plate(const std::string& card, const PlateOptions& options) {
  Plate plate(options, 132.0);
  const double u = plate.unit(), w = plate.width();
  const double y = 56.0 * u;
  const Point foot{0.5 * w, 116.0 * u};
  const auto wire = [&](double from, double to) { plate.line({from, y}, {to, y}, 20.0 * u, Ink::swatch_red); };
  const auto bare = [&](double from, double to) {
    for (const double dy : {-6.0, -2.0, 2.0, 6.0}) plate.line({from, y + dy * u}, {to, y + dy * u}, 3.0 * u, Ink::swatch_copper);
  };
  if (card == "strip") {
    wire(0.06 * w, 0.52 * w);
    bare(0.55 * w, 0.78 * w);
    plate.line({0.55 * w, 30.0 * u}, {0.78 * w, 30.0 * u}, 1.5, Ink::text);
    for (const double x : {0.55, 0.78}) plate.line({x * w, 25.0 * u}, {x * w, 35.0 * u}, 1.5, Ink::text);
    plate.text({0.665 * w, 16.0 * u}, "barrel + up to 1 mm", Anchor::centre, Ink::text, true);
    plate.text(foot, "All strands whole, none nicked");
    return plate.done("A stripped wire: the bare part is as long as the barrel and up to 1 mm more; no strand is nicked.");
  }
  if (card == "crimp") {
    wire(0.06 * w, 0.38 * w);
    bare(0.40 * w, 0.66 * w);
    plate.box({0.42 * w, y - 15.0 * u}, 0.20 * w, 30.0 * u, 4.0 * u, Ink::text, Ink::none);
    for (const double dy : {-22.0, 22.0}) {
      const double tip = dy < 0 ? y - 15.0 * u : y + 15.0 * u;
      plate.path({{0.47 * w, y + dy * u}, {0.57 * w, y + dy * u}, {0.52 * w, tip}}, 1.0, Ink::accent, true, Ink::accent);
    }
    plate.circle({0.80 * w, y}, 22.0 * u, Ink::text, Ink::swatch_metal);
    plate.circle({0.80 * w, y}, 11.0 * u, Ink::text, Ink::card);
    plate.line({0.62 * w, y}, {0.80 * w - 22.0 * u, y}, 8.0 * u, Ink::swatch_metal);
    plate.text({0.665 * w, 18.0 * u}, "strands show here", Anchor::centre, Ink::text, true);
    plate.line({0.655 * w, 26.0 * u}, {0.645 * w, y - 9.0 * u}, 1.5, Ink::text);
    plate.text(foot, "Insulation up to the barrel, not under it");
    return plate.done("A crimp from the side: strands go through the barrel and show beyond it; the insulation ends before the barrel.");
  }
  if (card == "splice") {
    const std::array<const char*, 2> said{"right", "insulation under the bar"};
    for (std::size_t k = 0; k < 2; ++k) {
      const double from = (k == 0 ? 0.03 : 0.53) * w, wide = 0.44 * w;
      const double bar = from + 0.62 * wide;
      plate.line({from, y}, {from + (k == 0 ? 0.40 : 0.70) * wide, y}, 16.0 * u, Ink::swatch_red);
      plate.line({from + (k == 0 ? 0.44 : 0.74) * wide, y}, {from + 0.86 * wide, y}, 8.0 * u, Ink::swatch_copper);
      plate.box({from + 0.36 * wide, y - 24.0 * u}, 0.60 * wide, 48.0 * u, 5.0 * u, Ink::text, Ink::none);
      plate.box({bar - 6.0 * u, y - 22.0 * u}, 12.0 * u, 14.0 * u, 2.0 * u, Ink::text, Ink::swatch_metal);
      plate.text({from + 0.5 * wide, 98.0 * u}, said[k], Anchor::centre, k == 0 ? Ink::good : Ink::stop, true);
      plate.text({from + 0.62 * wide, 18.0 * u}, k == 0 ? "✓" : "✗", Anchor::centre, k == 0 ? Ink::good : Ink::stop, true, drawing::TextSize::title);
    }
    plate.text({0.5 * w, 120.0 * u}, "Look from behind and from the side");
    return plate.done("Two splices from the side. Right: bare copper under the bar. Wrong: the bar presses on insulation, so no current flows.");
  }
  if (card == "tug") {
    wire(0.10 * w, 0.52 * w);
    plate.box({0.52 * w, y - 20.0 * u}, 0.22 * w, 40.0 * u, 6.0 * u, Ink::text, Ink::swatch_grey);
    for (const double side : {-1.0, 1.0}) {
      const double x = side < 0 ? 0.22 * w : 0.80 * w;
      plate.line({x, 92.0 * u}, {x + side * 0.12 * w, 92.0 * u}, 3.0, Ink::accent);
      plate.path({{x + side * 0.12 * w, 86.0 * u}, {x + side * 0.16 * w, 92.0 * u}, {x + side * 0.12 * w, 98.0 * u}}, 1.0, Ink::accent, true, Ink::accent);
    }
    plate.text(foot, "Along the wire, firmly; nothing may slip");
    return plate.done("A wire in a splice, pulled along its length both ways. Nothing may slip.");
  }
  if (card == "prove-dead") {
    const std::array<const char*, 3> steps{"live: 12.6 V", "here: 0.00 V", "live: 12.6 V"};
    for (std::size_t k = 0; k < 3; ++k) {
      const double x = (0.19 + 0.31 * static_cast<double>(k)) * w;
      plate.circle({x, 34.0 * u}, 15.0 * u, k == 1 ? Ink::good : Ink::accent, Ink::card, 2.0);
      plate.text({x, 34.0 * u}, std::to_string(k + 1), Anchor::centre, Ink::text, true, drawing::TextSize::text);
      plate.text({x, 66.0 * u}, steps[k], Anchor::centre, k == 1 ? Ink::good : Ink::text, true);
      if (k < 2) plate.line({x + 20.0 * u, 34.0 * u}, {x + 0.31 * w - 20.0 * u, 34.0 * u}, 1.5, Ink::muted);
    }
    plate.text({0.5 * w, 92.0 * u}, "Fuse out before 2", Anchor::centre, Ink::stop, true);
    plate.text(foot, "The meter is tried before and after");
    return plate.done("Three readings: a live outlet shows 12.6 V, the place of work with the fuse out shows nothing, the live outlet shows 12.6 V again.");
  }
  if (card == "label") {
    plate.line({0.06 * w, y}, {0.94 * w, y}, 16.0 * u, Ink::swatch_red);
    for (const double at : {0.24, 0.76}) {
      plate.box({at * w - 26.0 * u, y - 15.0 * u}, 52.0 * u, 30.0 * u, 4.0 * u, Ink::text, Ink::swatch_white);
      plate.text({at * w, y}, "4 B", Anchor::centre, Ink::on_light, true, drawing::TextSize::text);
    }
    plate.text(foot, "Fuse position and outlet, on both ends");
    return plate.done("A wire with the label 4 B on both ends: fuse position 4, outlet B.");
  }
  return std::nullopt;
}

}  // namespace pictures
