// The least an ImGui page can be: one window with a line of text, one frame. What it takes to
// start is what the app's start is measured against (bench.mjs).
#include <emscripten.h>
#include <emscripten/html5.h>

#include "backends/imgui_impl_opengl3.h"
#include "imgui.h"

namespace {

void draw(void*) {
  ImGui::GetIO().DisplaySize = ImVec2(412.0F, 915.0F);
  ImGui::GetIO().DeltaTime = 1.0F / 60.0F;
  ImGui_ImplOpenGL3_NewFrame();
  ImGui::NewFrame();
  ImGui::Begin("Blank");
  ImGui::TextUnformatted("Nothing here.");
  ImGui::End();
  ImGui::Render();
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  EM_ASM({ globalThis.blankAt = performance.now(); });
}

}  // namespace

int main() {
  EmscriptenWebGLContextAttributes wanted;
  emscripten_webgl_init_context_attributes(&wanted);
  wanted.majorVersion = 2;
  wanted.antialias = EM_FALSE;
  emscripten_webgl_make_context_current(emscripten_webgl_create_context("#canvas", &wanted));
  ImGui::CreateContext();
  ImGui_ImplOpenGL3_Init("#version 300 es");
  emscripten_async_call(draw, nullptr, -1);   // in the next animation frame
  return 0;
}
