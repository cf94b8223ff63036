// Conductors to scale, fuses in their colours, terminals and outlets. Generic outlines.
#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "drawing/palette.h"
#include "pictures/plate_kit.h"
#include "tables/conductor.h"
#include "tables/fuse.h"
#include "tables/terminal.h"

namespace pictures {
namespace {

using drawing::Ink;
using drawing::Point;

constexpr double kPi = 3.14159265358979323846;

// Strands in rings: 1, 7, 19, 37, 61 of them.
void strands(Plate& plate, Point centre, double radius, int rings) {
  const double strand = radius / (2.0 * rings + 1.0);
  plate.circle(centre, strand, Ink::none, Ink::swatch_copper);
  for (int ring = 1; ring <= rings; ++ring) {
    const int count = 6 * ring;
    for (int k = 0; k < count; ++k) {
      const double angle = 2.0 * kPi * k / count;
      const double out = 2.0 * ring * strand;
      plate.circle({centre.x + out * std::cos(angle), centre.y + out * std::sin(angle)}, 0.94 * strand, Ink::none, Ink::swatch_copper);
    }
  }
}

// A stranded conductor is wider than a solid one of the same copper: circles in rings fill
// 7/9 to about 3/4 of their round.
double stranded_mm(const tables::Conductor& wire) {
  return tables::diameter_of_area(wire.area).number() / std::sqrt(0.76);
}

int rings_for(double area_mm2) { return area_mm2 < 1.2 ? 2 : area_mm2 < 7.0 ? 3 : 4; }

}  // namespace

std::optional<drawing::Picture> conductor_plate(const std::string& conductor_id, const PlateOptions& options) {
  const tables::Conductor* wire = tables::conductor_by_id(conductor_id);
  if (wire == nullptr) return std::nullopt;
  Plate plate(options, 150.0);
  const double u = plate.unit();
  const double across = stranded_mm(*wire);
  // Beside a bar of 10, 5 or 2 mm to the same scale.
  const double px_per_mm = std::min(104.0 * u / (across * 1.5), 16.0 * u);
  const double radius = 0.5 * across * px_per_mm;
  const Point centre{plate.width() * 0.3, 60.0 * u};
  plate.circle(centre, radius * 1.42, Ink::muted, Ink::swatch_red);
  plate.circle(centre, radius * 1.04, Ink::none, Ink::swatch_brown);
  strands(plate, centre, radius, rings_for(wire->area.number()));
  const double bar_left = plate.width() * 0.58;
  const double room = plate.width() * 0.38;
  const double bar_mm = 10.0 * px_per_mm <= room ? 10.0 : 5.0 * px_per_mm <= room ? 5.0 : 2.0;
  const double bar = bar_mm * px_per_mm;
  plate.line({bar_left, 60.0 * u}, {bar_left + bar, 60.0 * u}, 2.0, Ink::text);
  for (const double x : {bar_left, bar_left + bar}) plate.line({x, 54.0 * u}, {x, 66.0 * u}, 2.0, Ink::text);
  plate.text({bar_left + bar * 0.5, 44.0 * u}, units::number_text(bar_mm, 2) + " mm", drawing::Anchor::centre, Ink::muted);
  const std::string name = std::string(wire->size) + " " + std::string(tables::gauge_system_suffix(wire->system));
  plate.text({centre.x, 132.0 * u}, name, drawing::Anchor::centre, Ink::text, true, drawing::TextSize::text);
  plate.text({bar_left + bar * 0.5, 132.0 * u}, units::area_text(wire->area) + " copper", drawing::Anchor::centre, Ink::muted);
  return plate.done(name + " in cross-section, to scale: " + units::area_text(wire->area) + " of copper, about " +
                    units::number_text(across, 2) + " mm across the strands. Number of strands and insulation are typical.");
}

std::optional<drawing::Picture> fuse_plate(const std::string& which, const PlateOptions& options) {
  const std::size_t colon = which.find(':');
  if (colon == std::string::npos) return std::nullopt;
  const tables::FuseFamily* family = tables::fuse_family_by_key(which.substr(0, colon));
  const double rating = std::strtod(which.c_str() + colon + 1, nullptr);
  if (family == nullptr || !(rating > 0.0)) return std::nullopt;
  const std::string_view word = tables::fuse_colour(family->id, units::Amperes(rating));
  Plate plate(options, 132.0);
  const double u = plate.unit();
  const double cx = plate.width() * 0.5;
  const Ink body = word.empty() ? Ink::swatch_grey : drawing::swatch(word);
  const std::string number = units::number_text(rating, 3);
  if (family->bolted) {
    plate.box({cx - 78.0 * u, 44.0 * u}, 156.0 * u, 26.0 * u, 6.0 * u, Ink::muted, Ink::swatch_metal);
    for (const double side : {-62.0, 62.0}) plate.circle({cx + side * u, 57.0 * u}, 7.0 * u, Ink::muted, Ink::card);
    plate.box({cx - 38.0 * u, 34.0 * u}, 76.0 * u, 46.0 * u, 5.0 * u, Ink::muted, body);
  } else {
    const double k = family->id == tables::FuseFamilyId::large_blade ? 1.25 : family->id == tables::FuseFamilyId::mini_blade ? 0.8 : 1.0;
    const double half = 36.0 * u * k;
    for (const double side : {-1.0, 1.0}) {
      plate.box({cx + side * 0.62 * half - 7.0 * u * k, 52.0 * u}, 14.0 * u * k, 42.0 * u * k, 2.0 * u, Ink::muted, Ink::swatch_metal);
    }
    plate.path({{cx - half, 20.0 * u}, {cx + half, 20.0 * u}, {cx + half, 58.0 * u}, {cx + 0.84 * half, 64.0 * u},
                {cx - 0.84 * half, 64.0 * u}, {cx - half, 58.0 * u}}, 1.0, Ink::muted, true, body);
  }
  const double at_y = family->bolted ? 57.0 : 41.0;
  plate.text({cx, at_y * u}, number, drawing::Anchor::centre, drawing::on_swatch(body), true, drawing::TextSize::title);
  const std::string colour = word.empty() ? "colour varies" : std::string(word);
  plate.text({cx, 118.0 * u}, std::string(family->name) + ", " + number + " A, " + colour, drawing::Anchor::centre, Ink::text);
  return plate.done(std::string(family->name) + " of " + number + " A, " + colour + ", with its rating on top.");
}

std::optional<drawing::Picture> terminal_plate(const reference::Depicted& depicted, const PlateOptions& options) {
  using reference::Depicts;
  Plate plate(options, 120.0);
  const double u = plate.unit();
  const double cx = plate.width() * 0.5;
  const double y = 50.0 * u;
  std::string words;
  const auto wire_from = [&](double x, Ink insulation) {
    plate.line({8.0 * u, y}, {x, y}, 12.0 * u, insulation);
    plate.line({x, y}, {x + 10.0 * u, y}, 7.0 * u, Ink::swatch_copper);
  };
  if (depicted.what == Depicts::push_on_tab) {
    const double mm = std::strtod(depicted.which.c_str(), nullptr);
    if (!(mm > 0.0)) return std::nullopt;
    const double wide = std::clamp(mm, 2.0, 12.0) * 5.0 * u;
    plate.box({cx - 70.0 * u, y - 0.3 * wide}, 60.0 * u, 0.6 * wide, 2.0 * u, Ink::muted, Ink::swatch_metal);
    plate.path({{cx - 16.0 * u, y - 0.5 * wide}, {cx + 44.0 * u, y - 0.5 * wide}, {cx + 54.0 * u, y - 0.32 * wide},
                {cx + 54.0 * u, y + 0.32 * wide}, {cx + 44.0 * u, y + 0.5 * wide}, {cx - 16.0 * u, y + 0.5 * wide}},
               1.0, Ink::muted, true, Ink::swatch_metal);
    plate.circle({cx + 30.0 * u, y}, 3.0 * u, Ink::muted, Ink::card);
    plate.line({cx + 66.0 * u, y - 0.5 * wide}, {cx + 66.0 * u, y + 0.5 * wide}, 1.5, Ink::text);
    words = "Tab, " + units::number_text(mm, 2) + " mm wide";
  } else if (depicted.what == Depicts::ring) {
    double hole = 0.0;
    for (const tables::RingHole& ring : tables::ring_holes()) {
      if (ring.stud == depicted.which) hole = ring.hole.number();
    }
    if (!(hole > 0.0)) return std::nullopt;
    const double r = hole * 1.9 * u;
    wire_from(cx - 56.0 * u, Ink::swatch_red);
    plate.box({cx - 52.0 * u, y - 9.0 * u}, 38.0 * u, 18.0 * u, 3.0 * u, Ink::muted, Ink::swatch_metal);
    plate.circle({cx - 12.0 * u + r * 1.7, y}, r * 1.75, Ink::muted, Ink::swatch_metal);
    plate.circle({cx - 12.0 * u + r * 1.7, y}, r, Ink::muted, Ink::card);
    words = "Ring for " + depicted.which + ", hole " + units::number_text(hole, 2) + " mm";
  } else if (depicted.what == Depicts::ferrule) {
    const double size = std::strtod(depicted.which.c_str(), nullptr);
    std::string_view colour;
    for (const tables::Ferrule& ferrule : tables::ferrules()) {
      if (std::fabs(ferrule.wire.number() - size) < 1e-6) colour = ferrule.colour;
    }
    if (colour.empty()) return std::nullopt;
    wire_from(cx - 48.0 * u, Ink::swatch_red);
    plate.path({{cx - 52.0 * u, y - 16.0 * u}, {cx - 12.0 * u, y - 16.0 * u}, {cx, y - 8.0 * u}, {cx, y + 8.0 * u},
                {cx - 12.0 * u, y + 16.0 * u}, {cx - 52.0 * u, y + 16.0 * u}}, 1.0, Ink::muted, true, drawing::swatch(colour));
    plate.box({cx, y - 7.0 * u}, 62.0 * u, 14.0 * u, 2.0 * u, Ink::muted, Ink::swatch_metal);
    words = "Ferrule for " + depicted.which + " mm², " + std::string(colour);
  } else if (depicted.what == Depicts::crimp) {
    const Ink sleeve = drawing::swatch(depicted.which);
    if (sleeve == Ink::none) return std::nullopt;
    wire_from(cx - 54.0 * u, Ink::swatch_black);
    plate.box({cx - 56.0 * u, y - 14.0 * u}, 70.0 * u, 28.0 * u, 8.0 * u, Ink::muted, sleeve);
    plate.circle({cx + 44.0 * u, y}, 22.0 * u, Ink::muted, Ink::swatch_metal);
    plate.circle({cx + 44.0 * u, y}, 11.0 * u, Ink::muted, Ink::card);
    plate.box({cx + 12.0 * u, y - 8.0 * u}, 14.0 * u, 16.0 * u, 0.0, Ink::none, Ink::swatch_metal);
    words = "Crimp terminal with a " + depicted.which + " sleeve";
  } else if (depicted.what == Depicts::colour) {
    const Ink insulation = drawing::swatch(depicted.which);
    if (insulation == Ink::none) return std::nullopt;
    plate.line({12.0 * u, y}, {plate.width() - 48.0 * u, y}, 26.0 * u, Ink::muted);
    plate.line({12.0 * u, y}, {plate.width() - 48.0 * u, y}, 23.0 * u, insulation);
    if (depicted.which == "green with yellow") {
      plate.line({12.0 * u, y}, {plate.width() - 48.0 * u, y}, 8.0 * u, Ink::swatch_yellow);
    }
    plate.line({plate.width() - 36.0 * u, y}, {plate.width() - 16.0 * u, y}, 14.0 * u, Ink::swatch_copper);
    words = depicted.which;
  } else if (depicted.what == Depicts::outlet) {
    const bool lighter = depicted.which == "lighter";
    if (!lighter && depicted.which != "iso4165") return std::nullopt;
    const double r = (lighter ? 40.0 : 30.0) * u;
    plate.circle({cx, y}, r, Ink::text, Ink::card, 2.0);
    plate.circle({cx, y}, r * 0.82, Ink::negative, Ink::none, 3.0);
    plate.circle({cx, y}, r * (lighter ? 0.24 : 0.3), Ink::positive, Ink::positive);
    plate.text({cx + r + 12.0 * u, y - 14.0 * u}, "+ centre", drawing::Anchor::left, Ink::positive, true);
    plate.text({cx + r + 12.0 * u, y + 14.0 * u}, "- shell", drawing::Anchor::left, Ink::negative, true);
    words = lighter ? "Lighter-form socket from the front" : "12 mm power socket from the front";
  } else {
    return std::nullopt;
  }
  plate.text({cx, 106.0 * u}, words, drawing::Anchor::centre, Ink::text);
  return plate.done(words + ".");
}

}  // namespace pictures
