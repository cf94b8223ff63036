#include "pictures/sketch.h"

#include "pictures/sketch_layout.h"
#include "pictures/sketch_paint.h"
#include "pictures/sketch_words.h"

namespace pictures {

drawing::Picture sketch(const circuit::Circuit& circuit, const sizing::Candidate* choice, const SketchOptions& options) {
  const SketchWords words = sketch_words(circuit, choice, options);
  const Measures measures = measures_for(words, options);
  const Layout layout = lay_out(words, options, measures);
  drawing::Picture picture;
  picture.width = layout.width;
  picture.height = layout.height;
  picture.text_scale = options.text_scale;
  picture.shapes = paint(circuit, words, options, measures, layout);
  paint_marks(circuit, options.marks, measures, layout, picture.shapes);
  picture.description = words.description;
  return picture;
}

}  // namespace pictures
