// A how-to card: what for, with what, step by step, what to mind.
#include "screens/lookup.h"
#include "screens/pages.h"
#include "screens/places.h"
#include "screens/places/cards.h"
#include "ui/ui.h"

namespace screens {
namespace {

void draw_tools(const reference::Card& card) {
  ui::begin_card("tools", {.name = "At hand", .tone = ui::Tone::plain});
  ui::card_title("At hand");
  for (const std::string& tool : card.tools) ui::bullet(tool);
  ui::end_card();
}

void draw_steps(const reference::Card& card) {
  ui::begin_card("steps", {.name = "Steps", .tone = ui::Tone::plain});
  for (std::size_t i = 0; i < card.steps.size(); ++i) ui::numbered(i + 1, card.steps[i]);
  ui::end_card();
}

void draw_cautions(const reference::Card& card) {
  std::string text;
  for (const std::string& caution : card.cautions) text += (text.empty() ? "" : "\n") + caution;
  ui::notice({.tone = ui::Tone::caution, .title = {}, .text = text, .action = {}});
}

}  // namespace

void draw_card_screen(app::AppState& app, Memory&) {
  const reference::Card* card = app.lookup().book().card(app.shown().key);
  if (card == nullptr) return;
  const ui::PageEvents events =
      ui::begin_page("cards/" + std::string(card->key),
                     {.title = std::string(card->title), .subtitle = std::string(card->when), .back = true, .more = false});
  if (events.back) app.navigator().back();
  draw_messages(app);
  ui::begin_columns();
  draw_cautions(*card);
  draw_plate(app, card->picture);
  if (ui::two_columns()) draw_tools(*card);
  ui::next_column();
  if (!ui::two_columns()) draw_tools(*card);
  draw_steps(*card);
  ui::begin_card("sources", {.name = "Sources", .tone = ui::Tone::plain});
  if (ui::disclosure("Sources", false, "and how sure we are")) draw_citations(card->citations);
  ui::end_card();
  ui::end_columns();
  end_page_at(app, app::Screen::tables);
}

}  // namespace screens
