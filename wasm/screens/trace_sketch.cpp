// The circuit's sketch with the two points of a check or the part of a remedy marked.
#include "pictures/sketch.h"
#include "screens/trace_pages.h"
#include "ui/ui.h"

namespace screens {
namespace {

std::string key_of(const std::vector<pictures::SketchMark>& marks) {
  std::string key;
  for (const pictures::SketchMark& mark : marks)
    key += std::to_string(static_cast<int>(mark.place)) + (mark.red ? "+" : "-") + std::to_string(mark.outlet.number) +
           (mark.shape == pictures::MarkShape::ring ? "o " : "s ");
  return key;
}

pictures::SketchOptions options_for(app::AppState& app, float width, std::vector<pictures::SketchMark> marks) {
  const double scale = app.preferences().text_size / 100.0;
  pictures::SketchOptions options;
  options.view_width = static_cast<double>(width) / scale;
  options.preference = app.units();
  options.marks = std::move(marks);
  options.text_width = [scale](const std::string& text, drawing::TextSize size, bool bold) {
    return static_cast<double>(ui::measure(text, ui::type_of(size), bold).width) / scale;
  };
  return options;
}

// The voltages of Size stand for the wire that Size chose: with another one fitted there are none.
const sizing::Candidate* choice_shown(app::AppState& app) {
  return app.has_circuit() && !app.trace().fitted_told() ? app.answer().choice() : nullptr;
}

bool shows_both_contacts(const Marked& marked) {
  return marked.two_leads && marked.marks[0].place == pictures::MarkPlace::contact &&
         marked.marks[1].place == pictures::MarkPlace::contact;
}

}  // namespace

void draw_trace_sketch(app::AppState& app, Memory& memory, const Marked& marked) {
  const app::Trace& trace = app.trace();
  const std::string wanted = trace.frame().circuit.name + " " + key_of(marked.marks) + (trace.fitted_told() ? "f" : "");
  ui::begin_card("sketch", {.name = "Sketch", .tone = ui::Tone::plain});
  SketchCache& cache = memory.trace_sketch;
  const float width = ui::width();
  if (cache.revision != app.revision() || cache.width != width || memory.trace_sketch_for != wanted) {
    pictures::SketchOptions options = options_for(app, width, marked.marks);
    const diagnosis::Case& frame = trace.frame();
    if (trace.fitted_told() && frame.fuse_told) options.fuse = units::amperes_text(frame.fitted.fuse);
    cache.picture = pictures::sketch(frame.circuit, choice_shown(app), options);
    if (!marked.words.empty()) cache.picture.description += " Marked: " + marked.words + ".";
    cache.revision = app.revision();
    cache.width = width;
    memory.trace_sketch_for = wanted;
  }
  ui::picture("trace-sketch", cache.picture, {.at_least = 1.0, .at_most = 1.25, .taps = false});
  if (marked.two_leads)
    ui::caption(shows_both_contacts(marked) ? "Upper half: plus contact. Lower half: minus contact."
                                            : "Ring: red lead. Square: black lead.");
  ui::end_card();
}

}  // namespace screens
