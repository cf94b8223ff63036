// What has to be said on any page: a change that is not saved, an edit that was refused, a file
// that was not taken in, a newer version waiting.
#include "screens/pages.h"
#include "ui/ui.h"

namespace screens {

void draw_problem(app::AppState& app) {
  if (app.messages().problem().empty()) return;
  const std::string sentence = app.messages().problem();
  if (ui::notice({.tone = ui::Tone::stop, .title = {}, .text = sentence, .action = "OK", .alert = true}))
    app.messages().clear_problem();
}

void draw_messages(app::AppState& app) {
  const std::string trouble = app.messages().store_trouble();
  if (!trouble.empty() &&
      ui::notice({.tone = ui::Tone::stop,
                  .title = trouble,
                  .text = "What you see is still here. Keep this page open, make room on the device, and try again, "
                          "or export the circuit from the notebook.",
                  .action = "Try again",
                  .alert = true}))
    app.messages().retry_store();
  // With a sheet open the sheet says it.
  if (app.shown().sheet == app::Sheet::none) draw_problem(app);
  if (app.messages().update_waiting())
    ui::notice({.tone = ui::Tone::plain,
                .title = {},
                .text = "A newer version is ready. It starts the next time you open Branchlight.",
                .action = {}});
}

}  // namespace screens
