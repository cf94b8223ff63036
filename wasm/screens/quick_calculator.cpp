// One calculator, whichever: the answer first, what it is asked below.
#include <algorithm>

#include "screens/lookup.h"
#include "screens/pages.h"
#include "screens/places.h"
#include "ui/ui.h"

namespace screens {
namespace {

using calculators::Calculator;
using calculators::Output;
using calculators::Result;
using calculators::Values;

bool starts_with_figure(const std::string& text) {
  const std::size_t first = text.starts_with("-") ? 1 : 0;
  return text.size() > first && text[first] >= '0' && text[first] <= '9';
}

// "0.64 V" as number and unit; "10 ft 6 in" as 10 and the rest, so that it never runs out of its line.
ui::Answer big(const Output& output, ui::Tone tone) {
  const std::size_t space = output.text.find(' ');
  ui::Answer answer{std::string(output.kind.name), output.text, {}, tone};
  if (space == std::string::npos) return answer;
  answer.number = output.text.substr(0, space);
  answer.unit = output.text.substr(space + 1);
  return answer;
}

bool is_big(const Output& output) { return output.value.has_value() && starts_with_figure(output.text); }

// What stands beside the headline: the fuse where there is one, as on Size.
std::size_t second(const Result& result) {
  for (std::size_t i = 1; i < result.outputs.size(); ++i)
    if (result.outputs[i].kind.key == "fuse" && is_big(result.outputs[i])) return i;
  return result.outputs.size() > 1 && is_big(result.outputs[1]) ? 1 : 0;
}

void draw_answer(const Result& result) {
  ui::begin_card("answer", {.name = "Answer", .tone = result.serves ? ui::Tone::plain : ui::Tone::stop});
  const std::size_t beside = second(result);
  const bool has_big = !result.outputs.empty() && is_big(result.outputs.front());
  if (has_big) {
    std::vector<ui::Answer> both{big(result.outputs.front(), ui::Tone::plain)};
    if (beside > 0) both.push_back(big(result.outputs[beside], ui::Tone::plain));
    ui::answers(both);
    if (result.serves) ui::caption(result.sentence);
    else ui::paragraph(result.sentence);
  } else {
    ui::question(result.sentence);
    ui::announce(result.sentence);
  }
  for (std::size_t i = has_big ? 1 : 0; i < result.outputs.size(); ++i) {
    const Output& output = result.outputs[i];
    if ((has_big && i == beside) || output.text.empty()) continue;
    ui::fact_row(output.kind.name, output.text);
  }
  for (const std::string& note : result.notes) ui::caption(note);
  ui::end_card();
}

void draw_caution(const Calculator& calculator) {
  std::string text(calculator.caution);
  if (text.empty()) text = "Planning figures. Local codes, the makers' instructions and licensed practice come first.";
  ui::notice({.tone = ui::Tone::caution, .title = {}, .text = text, .action = {}});
}

// The outlet the values go to: the one picked, else the last.
circuit::OutletId use_at(const app::AppState& app, const Memory& memory) {
  const circuit::Circuit& circuit = app.editor().circuit();
  if (circuit::find_outlet(circuit, memory.use_at) != nullptr) return memory.use_at;
  return circuit.outlets.empty() ? circuit::kBlock : circuit.outlets.back().id;
}

void draw_outlet_pick(const app::AppState& app, Memory& memory, circuit::OutletId at) {
  const circuit::Circuit& circuit = app.editor().circuit();
  ui::caption("At which outlet of " + circuit.name);
  ui::begin_flow();
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i) {
    const std::string letter = circuit::outlet_letter(i);
    if (ui::chip(letter, {.on = circuit.outlets[i].id == at, .said = "At outlet " + letter}))
      memory.use_at = circuit.outlets[i].id;
  }
  ui::end_flow();
}

void draw_use(app::AppState& app, Memory& memory, const Calculator& calculator, const Values& values) {
  if (!calculator.fits_circuit || !app.editor().has_circuit()) return;
  const circuit::OutletId at = use_at(app, memory);
  const auto use = calculators::use_in_circuit(calculator, values, app.editor().circuit(), at, app.settings().units());
  if (!use) return;
  const bool whole = calculators::use_in_circuit(calculator, values, app.editor().circuit(), circuit::kBlock, app.settings().units()).has_value();
  ui::begin_card("use", {.name = "Use in my circuit", .tone = ui::Tone::plain});
  ui::card_title("Use in my circuit", app.editor().circuit().name);
  if (!whole && app.editor().circuit().outlets.size() > 1) draw_outlet_pick(app, memory, at);
  const bool pressed = ui::button(use->label, {.kind = ui::Kind::primary});
  ui::end_card();
  if (!pressed) return;
  app.navigator().go(app::Route::at(app::Screen::size));
  std::string what = use->label;
  what.front() = static_cast<char>(what.front() - 'A' + 'a');   // "use 10 A at outlet C"
  app.editor().use_edits(use->edits, what);
}

}  // namespace

void draw_calculator(app::AppState& app, Memory& memory, const Calculator& calculator) {
  const ui::PageEvents events =
      ui::begin_page("quick/" + std::string(calculator.key), {.title = std::string(calculator.title),
                                                              .subtitle = std::string(calculator.question),
                                                              .back = true,
                                                              .more = false});
  if (events.back) app.navigator().back();
  draw_messages(app);
  const Values values = app.lookup().quick_values(calculator);
  const calculators::Evaluation evaluation = calculators::evaluate(calculator, values, app.settings().units());
  ui::begin_columns();
  if (evaluation.result) draw_answer(*evaluation.result);
  else if (evaluation.problem)
    ui::notice({.tone = ui::Tone::stop, .title = {}, .text = circuit::one_line(*evaluation.problem), .action = {}, .alert = true});
  if (ui::two_columns()) {
    draw_plot(app, calculator, values);
    ui::next_column();
  }
  draw_quick_inputs(app, calculator, values);
  if (!ui::two_columns()) draw_plot(app, calculator, values);
  ui::begin_card("how", {.name = "How", .tone = ui::Tone::plain});
  if (ui::list_row("How it is worked out", {.sub = "the formula, its sources, how sure"}))
    app.navigator().go(app::Route::quick(calculator.key, app::Sheet::how));
  ui::end_card();
  draw_use(app, memory, calculator, values);
  draw_caution(calculator);
  ui::end_columns();
  end_page_at(app, app::Screen::quick);
}

}  // namespace screens
