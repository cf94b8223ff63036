// The circuit's sketch with the places of a check ringed: outlets, fuse block, battery.
#include <algorithm>

#include "drawing/measure.h"
#include "pictures/sketch.h"
#include "screens/trace_pages.h"
#include "ui/ui.h"

namespace screens {
namespace {

using pictures::SketchSubject;

ui::Type type_of(drawing::TextSize size) {
  switch (size) {
    case drawing::TextSize::caption: return ui::Type::caption;
    case drawing::TextSize::text: return ui::Type::text;
    case drawing::TextSize::title: return ui::Type::title;
  }
  return ui::Type::text;
}

drawing::Subject subject_of(const diagnosis::Site& site) {
  switch (site.location) {
    case diagnosis::Location::battery: return {static_cast<std::uint32_t>(SketchSubject::battery), 0};
    case diagnosis::Location::block: return {static_cast<std::uint32_t>(SketchSubject::fuse), 0};
    default: return {static_cast<std::uint32_t>(SketchSubject::outlet), site.outlet.number};
  }
}

template <class Form>
void add(drawing::Picture& picture, const Form& form, const drawing::Subject& subject) {
  drawing::Shape& shape = picture.shapes.emplace_back();
  shape.form.emplace<Form>(form);
  shape.subject = subject;
}

// A ring round the box or circle that stands for the subject. Dots of the wires are smaller.
void ring(drawing::Picture& picture, const drawing::Subject& subject) {
  constexpr double kAir = 4.0, kWidth = 2.5;
  const drawing::Circle* circle = nullptr;
  const drawing::Box* box = nullptr;
  for (const drawing::Shape& shape : picture.shapes) {
    if (!(shape.subject == subject)) continue;
    const auto* as_circle = std::get_if<drawing::Circle>(&shape.form);
    if (as_circle != nullptr && (circle == nullptr || as_circle->radius > circle->radius)) circle = as_circle;
    if (box == nullptr) box = std::get_if<drawing::Box>(&shape.form);
  }
  if (box != nullptr) {
    const drawing::Box round{{box->corner.x - kAir, box->corner.y - kAir}, box->width + 2.0 * kAir, box->height + 2.0 * kAir,
                             box->radius + kAir, kWidth, drawing::Ink::accent, drawing::Ink::none};
    add(picture, round, subject);
  } else if (circle != nullptr) {
    const drawing::Circle round{circle->centre, circle->radius + kAir, kWidth, drawing::Ink::accent, drawing::Ink::none};
    add(picture, round, subject);
  }
}

}  // namespace

void draw_trace_sketch(app::AppState& app, Memory& memory, std::span<const diagnosis::Site> ringed) {
  const app::Trace& trace = app.trace();
  std::string wanted = trace.frame().circuit.name;
  for (const diagnosis::Site& site : ringed) wanted += " " + diagnosis::site_key(site);
  ui::begin_card("sketch", {.name = "Sketch", .tone = ui::Tone::plain});
  SketchCache& cache = memory.trace_sketch;
  const float width = ui::width();
  if (cache.revision != app.revision() || cache.width != width || memory.trace_sketch_for != wanted) {
    const double scale = app.preferences().text_size / 100.0;
    pictures::SketchOptions options;
    options.view_width = static_cast<double>(width) / scale;
    options.preference = app.units();
    options.text_width = [scale](const std::string& text, drawing::TextSize size, bool bold) {
      return static_cast<double>(ui::measure(text, type_of(size), bold).width) / scale;
    };
    cache.picture = pictures::sketch(trace.frame().circuit, app.has_circuit() ? app.answer().choice() : nullptr, options);
    for (const diagnosis::Site& site : ringed) ring(cache.picture, subject_of(site));
    cache.revision = app.revision();
    cache.width = width;
    memory.trace_sketch_for = wanted;
  }
  ui::picture("trace-sketch", cache.picture, {.at_least = 1.0, .at_most = 1.25, .taps = false});
  ui::end_card();
}

}  // namespace screens
