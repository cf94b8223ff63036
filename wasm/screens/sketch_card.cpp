// The circuit drawn: a tap opens what lies under the finger.
#include "pictures/sketch.h"
#include "screens/pages.h"
#include "ui/ui.h"

namespace screens {
namespace {

void open_subject(app::AppState& app, const drawing::Subject& subject) {
  switch (static_cast<pictures::SketchSubject>(subject.kind)) {
    case pictures::SketchSubject::battery: return app.navigator().go(app::Route::at(app::Screen::size, app::Sheet::supply));
    case pictures::SketchSubject::fuse:
      if (const sizing::Candidate* choice = app.results().answer().choice()) app.navigator().go(app::Route::why(choice->size->id));
      return;
    case pictures::SketchSubject::outlet:
    case pictures::SketchSubject::run: return app.navigator().go(app::Route::at_outlet(circuit::OutletId{subject.number}));
    case pictures::SketchSubject::none: return;
  }
}

// Laid out at text size 100 %: ui::picture draws it as much larger as the person reads. A new
// text size or unit is a new revision too.
const drawing::Picture& laid_out(app::AppState& app, SketchCache& cache) {
  const float width = ui::width();
  const app::Current& of = app.results().of();
  const bool edited = !(of == app.editor().current());   // in this very frame: the next one lays it out anew
  if (cache.width == width && (cache.of == of || edited)) return cache.picture;
  const double scale = app.settings().preferences().text_size / 100.0;
  pictures::SketchOptions options;
  options.view_width = static_cast<double>(width) / scale;
  options.preference = app.settings().units();
  options.text_width = [scale](const std::string& text, drawing::TextSize size, bool bold) {
    return static_cast<double>(ui::measure(text, ui::type_of(size), bold).width) / scale;
  };
  cache.picture = pictures::sketch(app.editor().circuit(), app.results().answer().choice(), options);
  cache.of = of;
  cache.width = width;
  return cache.picture;
}

}  // namespace

void draw_sketch_card(app::AppState& app, Memory& memory) {
  if (app.results().answer().verdict == sizing::Verdict::invalid) return;
  ui::begin_card("sketch", {.name = "Sketch", .tone = ui::Tone::plain});
  if (const auto subject = ui::picture("sketch", laid_out(app, memory.sketch))) open_subject(app, *subject);
  ui::end_card();
}

}  // namespace screens
