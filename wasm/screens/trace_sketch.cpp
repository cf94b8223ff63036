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
  const double scale = app.settings().preferences().text_size / 100.0;
  pictures::SketchOptions options;
  options.view_width = static_cast<double>(width) / scale;
  options.preference = app.settings().units();
  options.marks = std::move(marks);
  options.text_width = [scale](const std::string& text, drawing::TextSize size, bool bold) {
    return static_cast<double>(ui::measure(text, ui::type_of(size), bold).width) / scale;
  };
  return options;
}

bool shows_both_contacts(const Marked& marked) {
  return marked.two_leads && marked.marks[0].place == pictures::MarkPlace::contact &&
         marked.marks[1].place == pictures::MarkPlace::contact;
}

}  // namespace

// Neither the wire, the fuse nor the volts that Size works out stand in it: what is fitted may be
// another one.
void draw_trace_sketch(app::AppState& app, Memory& memory, const Marked& marked) {
  const diagnosis::Case& traced = app.trace_desk().trace().tracer().the_case();
  const app::Current of = app.editor().current();
  const std::string fuse = diagnosis::names_fuse(traced) ? diagnosis::fuse_rating_words(traced) : std::string();
  const std::string rings = key_of(marked.marks) + fuse;
  ui::begin_card("sketch", {.name = "Sketch", .tone = ui::Tone::plain});
  SketchCache& cache = memory.trace_sketch;
  const float width = ui::width();
  if (!(cache.of == of) || cache.width != width || cache.rings != rings) {
    pictures::SketchOptions options = options_for(app, width, marked.marks);
    if (!fuse.empty()) options.fuse = fuse;
    cache.picture = pictures::sketch(traced.circuit, nullptr, options);
    if (!marked.words.empty()) cache.picture.description += " Marked: " + marked.words + ".";
    cache.of = of;
    cache.width = width;
    cache.rings = rings;
  }
  ui::picture("trace-sketch", cache.picture, {.at_least = 1.0, .at_most = 1.25, .taps = false});
  if (marked.two_leads)
    ui::caption(shows_both_contacts(marked) ? "Upper half: plus contact. Lower half: minus contact."
                                            : "Ring: red lead. Square: black lead.");
  ui::end_card();
}

}  // namespace screens
