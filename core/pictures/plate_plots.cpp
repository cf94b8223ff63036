// Plots: drop against length, a battery's voltage by charge, a fuse's gates.
#include <algorithm>
#include <cmath>
#include <utility>

#include "pictures/plate_kit.h"
#include "tables/fact.h"
#include "tables/fuse.h"
#include "tables/supply.h"

namespace pictures {
namespace {

using drawing::Anchor;
using drawing::Ink;
using drawing::Point;

// Where the axes stand and how values become places.
struct Frame {
  double left, right, top, bottom;
  double x_low, x_high, y_low, y_high;
  bool logarithmic = false;
  [[nodiscard]] double scaled(double v, double low, double high) const {
    if (logarithmic) return (std::log(v) - std::log(low)) / (std::log(high) - std::log(low));
    return (v - low) / (high - low);
  }
  [[nodiscard]] double x(double v) const { return left + scaled(v, x_low, x_high) * (right - left); }
  [[nodiscard]] double y(double v) const { return bottom - scaled(v, y_low, y_high) * (bottom - top); }
  [[nodiscard]] Point at(double vx, double vy) const {
    return {std::clamp(x(vx), left, right), std::clamp(y(vy), top, bottom)};
  }
};

Frame frame_of(const Plate& plate, double left_units) {
  const double u = plate.unit();
  Frame frame{};
  frame.left = left_units * u;
  frame.right = plate.width() - 12.0 * u;
  frame.top = 26.0 * u;
  frame.bottom = plate.height() - 26.0 * u;
  return frame;
}

double nice_step(double span, int about) {
  const double raw = span / about;
  const double ten = std::pow(10.0, std::floor(std::log10(raw)));
  for (const double step : {1.0, 2.0, 5.0}) {
    if (raw <= step * ten) return step * ten;
  }
  return 10.0 * ten;
}

}  // namespace

drawing::Picture drop_plot(const calculators::DropCurve& curve, const PlateOptions& options) {
  Plate plate(options, 180.0);
  const double u = plate.unit();
  Frame frame = frame_of(plate, 46.0);
  frame.x_low = 0.0;
  frame.x_high = curve.points.back().x;
  frame.y_low = 0.0;
  frame.y_high = std::max(curve.points.back().y, 1.25 * curve.limit_fraction);
  const double y_step = nice_step(frame.y_high, 3);
  for (double y = 0.0; y <= frame.y_high * 1.0001; y += y_step) {
    plate.line(frame.at(0.0, y), frame.at(frame.x_high, y), 1.0, Ink::line);
    plate.text({frame.left - 6.0 * u, frame.y(y)}, units::percent_text(y), Anchor::right, Ink::muted);
  }
  const double per = options.preference == units::Preference::us ? 0.3048 : 1.0;
  const double x_step = per * nice_step(frame.x_high / per, plate.width() / u < 260.0 ? 2 : 4);
  for (double x = x_step; x <= frame.x_high; x += x_step) {
    plate.text({frame.x(x), frame.bottom + 12.0 * u}, units::length_text(units::Metres(x), options.preference), Anchor::centre, Ink::muted);
  }
  const double limit_y = frame.y(curve.limit_fraction);
  const double dash = 7.0 * u;
  for (double x = frame.left; x < frame.right; x += 2.0 * dash) {
    plate.line({x, limit_y}, {std::min(x + dash, frame.right), limit_y}, 1.5, Ink::stop);
  }
  plate.text({frame.left + 4.0 * u, limit_y - 10.0 * u}, "limit " + units::percent_text(curve.limit_fraction), Anchor::left, Ink::stop, true);
  std::vector<Point> points;
  for (const calculators::CurvePoint& p : curve.points) points.push_back(frame.at(p.x, p.y));
  plate.path(points, 2.5, Ink::accent);
  const calculators::CurvePoint last = curve.points.back();
  const double here_y = last.x > 0.0 ? last.y * curve.here_m / last.x : 0.0;
  const Point here = frame.at(curve.here_m, here_y);
  plate.line({here.x, frame.bottom}, here, 1.0, Ink::muted);
  plate.circle(here, 5.0 * u, Ink::card, Ink::accent, 2.0);
  plate.text({here.x, 10.0 * u}, units::length_text(units::Metres(curve.here_m), options.preference) + ": " + units::percent_text(here_y),
             Anchor::centre, Ink::text, true);
  return plate.done("Drop against length, a straight line. " + units::length_text(units::Metres(curve.here_m), options.preference) +
                    " loses " + units::percent_text(here_y) + "; the limit of " + units::percent_text(curve.limit_fraction) +
                    " is met at " + units::length_text(units::Metres(curve.longest_m), options.preference) + ".");
}

std::optional<drawing::Picture> battery_plot(const std::string& battery, const PlateOptions& options) {
  const tables::RestCurve* curve = tables::rest_curve(battery);
  const tables::BatteryKind* kind = tables::battery_kind_by_key(battery);
  if (curve == nullptr || kind == nullptr) return std::nullopt;
  Plate plate(options, 190.0);
  const double u = plate.unit();
  Frame frame = frame_of(plate, 46.0);
  frame.x_low = 0.0;
  frame.x_high = 1.0;
  frame.y_low = std::floor(curve->points.back().volts.number() - curve->points.back().spread.number());
  frame.y_high = std::ceil(2.0 * (curve->points.front().volts + curve->points.front().spread).number()) / 2.0;
  const double y_step = nice_step(frame.y_high - frame.y_low, 4);
  for (double y = frame.y_low; y <= frame.y_high + 1e-9; y += y_step) {
    plate.line(frame.at(0.0, y), frame.at(1.0, y), 1.0, Ink::line);
    plate.text({frame.left - 6.0 * u, frame.y(y)}, units::number_text(y, 4) + " V", Anchor::right, Ink::muted);
  }
  std::vector<Point> band, line;
  for (const tables::RestVoltage& p : curve->points) {
    band.push_back(frame.at(p.charge, (p.volts + p.spread).number()));
    line.push_back(frame.at(p.charge, p.volts.number()));
  }
  for (auto p = curve->points.rbegin(); p != curve->points.rend(); ++p) band.push_back(frame.at(p->charge, (p->volts - p->spread).number()));
  plate.path(band, 1.0, Ink::none, true, Ink::line);
  plate.path(line, 2.5, Ink::accent);
  for (const double x : {0.0, 0.5, 1.0}) {
    plate.text({frame.x(x), frame.bottom + 12.0 * u}, units::percent_text(x), Anchor::centre, Ink::muted);
  }
  plate.text({frame.left, 11.0 * u}, std::string(kind->name) + ", at rest, from memory", Anchor::left, Ink::text, true);
  return plate.done(std::string(kind->name) + " at rest: " + units::number_text(curve->points.front().volts.number(), 4) +
                    " V full, falling to " + units::number_text(curve->points.back().volts.number(), 4) +
                    " V empty. The band is how far batteries differ. From memory.");
}

std::optional<drawing::Picture> gate_plot(const std::string& family_key, double at_multiple, const PlateOptions& options) {
  const tables::FuseFamily* family = tables::fuse_family_by_key(family_key);
  if (family == nullptr) return std::nullopt;
  Plate plate(options, 230.0);
  const double u = plate.unit();
  Frame frame = frame_of(plate, 52.0);
  frame.logarithmic = true;
  frame.x_low = 1.0;
  frame.x_high = 10.0;
  frame.y_low = 0.01;
  frame.y_high = 4000.0;
  for (const auto& [seconds, words] : {std::pair{0.01, "0.01 s"}, std::pair{0.1, "0.1 s"}, std::pair{1.0, "1 s"},
                                       std::pair{10.0, "10 s"}, std::pair{60.0, "1 min"}, std::pair{600.0, "10 min"}}) {
    plate.line(frame.at(1.0, seconds), frame.at(10.0, seconds), 1.0, Ink::line);
    plate.text({frame.left - 6.0 * u, frame.y(seconds)}, words, Anchor::right, Ink::muted);
  }
  for (const double x : {1.0, 2.0, 3.5, 6.0, 10.0}) {
    plate.line(frame.at(x, 0.01), frame.at(x, 4000.0), 1.0, Ink::line);
    plate.text({frame.x(x), frame.bottom + 12.0 * u}, units::number_text(x, 2) + "x", Anchor::centre, Ink::muted);
  }
  // Opens no later than: a step down at each gate, held to the next.
  std::vector<Point> latest;
  for (const tables::FuseGate& gate : family->gates) {
    if (!gate.opens_within) continue;
    if (!latest.empty()) latest.push_back({frame.x(gate.multiple), latest.back().y});
    latest.push_back(frame.at(gate.multiple, gate.opens_within->number()));
  }
  latest.push_back({frame.right, latest.back().y});
  plate.path(latest, 2.5, Ink::accent);
  std::vector<Point> earliest;
  for (const tables::FuseGate& gate : family->gates) {
    if (!gate.not_before) continue;
    const Point at = frame.at(gate.multiple, gate.not_before->number());
    if (!earliest.empty()) earliest.push_back({earliest.back().x, at.y});
    earliest.push_back(at);
  }
  plate.path(earliest, 2.0, Ink::muted);
  plate.text({frame.right - 4.0 * u, frame.y(250.0)}, "open by then", Anchor::right, Ink::accent, true);
  plate.text({frame.left + 4.0 * u, frame.y(0.025)}, "holds", Anchor::left, Ink::muted, true);
  if (at_multiple >= 1.0) {
    const double x = frame.at(std::min(at_multiple, 10.0), 1.0).x;
    plate.line({x, frame.top}, {x, frame.bottom}, 2.0, Ink::text);
    plate.text({x, frame.top - 9.0 * u}, units::number_text(at_multiple, 3) + "x", Anchor::centre, Ink::text, true);
  } else {
    plate.text({frame.left, 11.0 * u}, std::string(family->name) + ", typical gates", Anchor::left, Ink::text, true);
  }
  return plate.done(std::string(family->name) + ": time to open against multiples of the rating, both on a logarithmic scale. "
                    "It falls in steps; the slowest figures known.");
}

}  // namespace pictures
