// Dear ImGui's renderer asks the graphics context, at every frame, for the state that it is about to
// change, to put it back afterwards. In a browser the first such question waits until everything drawn
// before has been carried out: at a slow phone most of a frame. Nobody but that renderer draws here, so
// the state it finds is always the one it put back: the values a new context starts with. They are
// answered from this table; only what is asked once, at the start, goes to the context itself.
// CMakeLists.txt gives the renderer this function in place of glGetIntegerv.
#include <GLES3/gl3.h>

#include <algorithm>
#include <array>

namespace {

struct Known {
  GLenum name;
  int count;      // how many values the question has
  GLint value;    // each of them
};
// OpenGL ES 3.0.6, tables 6.1 to 6.30, "initial value"; the two rectangles start as the window's and are
// set anew before each use.
constexpr std::array kKnown{
    Known{GL_ACTIVE_TEXTURE, 1, GL_TEXTURE0},        Known{GL_CURRENT_PROGRAM, 1, 0},
    Known{GL_TEXTURE_BINDING_2D, 1, 0},              Known{GL_SAMPLER_BINDING, 1, 0},
    Known{GL_ARRAY_BUFFER_BINDING, 1, 0},            Known{GL_ELEMENT_ARRAY_BUFFER_BINDING, 1, 0},
    Known{GL_VERTEX_ARRAY_BINDING, 1, 0},            Known{GL_PIXEL_UNPACK_BUFFER_BINDING, 1, 0},
    Known{GL_VIEWPORT, 4, 0},                        Known{GL_SCISSOR_BOX, 4, 0},
    Known{GL_BLEND_SRC_RGB, 1, GL_ONE},              Known{GL_BLEND_DST_RGB, 1, GL_ZERO},
    Known{GL_BLEND_SRC_ALPHA, 1, GL_ONE},            Known{GL_BLEND_DST_ALPHA, 1, GL_ZERO},
    Known{GL_BLEND_EQUATION_RGB, 1, GL_FUNC_ADD},    Known{GL_BLEND_EQUATION_ALPHA, 1, GL_FUNC_ADD},
};

}  // namespace

extern "C" void known_gl_state(GLenum name, GLint* values) {
  const auto* known = std::find_if(kKnown.begin(), kKnown.end(), [=](const Known& each) { return each.name == name; });
  if (known == kKnown.end()) return glGetIntegerv(name, values);
  std::fill_n(values, known->count, known->value);
}
