#include "app/trace_record.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <utility>

#include "app/lines.h"
#include "app/names.h"
#include "tables/conductor.h"
#include "vehicle/validate.h"

namespace app {
namespace {

using diagnosis::AnswerKind;

constexpr double kLargestFuse = 1000.0;   // A; more is no fuse of a branch

struct ToolWord {
  std::string_view word;
  bool diagnosis::Tools::*held;
};
constexpr std::array<ToolWord, 4> kTools{{{"meter", &diagnosis::Tools::meter},
                                          {"lamp", &diagnosis::Tools::lamp},
                                          {"device", &diagnosis::Tools::device},
                                          {"fuse", &diagnosis::Tools::spare_fuse}}};

// A typed text is one line of the record, and a tab parts a question from its answer.
std::string one_line(std::string_view text) {
  std::string line(text);
  for (char& c : line)
    if (c == '\n' || c == '\r' || c == '\t') c = ' ';
  return line;
}

void add_line(std::string& text, std::string_view word, std::string_view rest) {
  text.append(word).append(" ").append(one_line(rest)).append("\n");
}

std::string reading_text(double reading) {
  if (std::isinf(reading)) return "open";
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.17g", reading);
  return text.data();
}

std::optional<double> reading_of(std::string_view text) {
  if (text == "open") return HUGE_VAL;
  const std::string whole(text);
  char* end = nullptr;
  const double number = std::strtod(whole.c_str(), &end);
  if (whole.empty() || end != whole.c_str() + whole.size() || !std::isfinite(number)) return std::nullopt;
  return number;
}

// "word full volts splice+3 bus-": what was answered, then the check's id, which has spaces.
std::string entry_text(const diagnosis::Entry& entry) {
  switch (entry.answer.kind) {
    case AnswerKind::word: return "word " + std::string(diagnosis::answer_text(entry.answer.key)) + " " + entry.id;
    case AnswerKind::reading: return "reading " + reading_text(entry.answer.reading) + " " + entry.id;
    case AnswerKind::cant_reach: return "cant-reach " + entry.id;
    case AnswerKind::not_sure: break;
  }
  return "not-sure " + entry.id;
}

std::optional<diagnosis::Entry> entry_of(diagnosis::EntryKind kind, std::string_view rest) {
  diagnosis::Entry entry;
  entry.kind = kind;
  const std::string_view how = take_word(rest);
  if (how == "word") {
    entry.answer = diagnosis::word(take_word(rest));
  } else if (how == "reading") {
    const auto number = reading_of(take_word(rest));
    if (!number) return std::nullopt;
    entry.answer = diagnosis::reading(*number);
  } else if (how == "cant-reach") {
    entry.answer = diagnosis::cant_reach();
  } else if (how == "not-sure") {
    entry.answer = diagnosis::not_sure();
  } else {
    return std::nullopt;
  }
  entry.id = rest;
  return entry.id.empty() ? std::nullopt : std::optional(entry);
}

std::optional<diagnosis::Neighbour> neighbour_of(std::string_view rest) {
  diagnosis::Neighbour neighbour;
  const auto position = whole_number(take_word(rest));
  if (!position || *position > 999) return std::nullopt;
  neighbour.fuse_position = static_cast<int>(*position);
  neighbour.same_loom = take_word(rest) == "loom";
  neighbour.name = rest;
  return neighbour;
}

std::optional<diagnosis::Site> site_of(std::string_view rest) {
  const std::string_view where = take_word(rest);
  if (where == "battery") return diagnosis::Site{diagnosis::Location::battery, circuit::kBlock};
  if (where == "block") return diagnosis::Site{diagnosis::Location::block, circuit::kBlock};
  const auto outlet = whole_number(rest);
  if (!outlet || (where != "front" && where != "behind")) return std::nullopt;
  return diagnosis::Site{where == "front" ? diagnosis::Location::front : diagnosis::Location::behind,
                         circuit::OutletId{*outlet}};
}

std::optional<std::vector<circuit::OutletId>> outlets_of(std::string_view words) {
  std::vector<circuit::OutletId> outlets;
  while (!words.empty()) {
    const auto number = whole_number(take_word(words));
    if (!number) return std::nullopt;
    outlets.push_back({*number});
  }
  return outlets;
}

bool read_line(const Line& line, RunningTrace& trace, bool& has_symptom) {
  diagnosis::Record& record = trace.record;
  std::string_view rest = line.rest;
  if (line.word == "symptom") {
    const diagnosis::SymptomRow* row = diagnosis::symptom_by_key(rest);
    if (row == nullptr) return false;
    record.complaint.symptom = row->symptom;
    has_symptom = true;
  } else if (line.word == "outlets") {
    auto outlets = outlets_of(rest);
    if (!outlets) return false;
    record.complaint.outlets = std::move(*outlets);
  } else if (line.word == "tools") {
    record.tools = read_tools(rest);
  } else if (line.word == "out-of-reach") {
    const auto site = site_of(rest);
    if (!site) return false;
    record.out_of_reach.push_back(*site);
  } else if (line.word == "neighbour") {
    const auto neighbour = neighbour_of(rest);
    if (!neighbour || record.neighbours.size() >= diagnosis::kMaxNeighbours) return false;
    record.neighbours.push_back(*neighbour);
  } else if (line.word == "check" || line.word == "remedy") {
    const auto entry = entry_of(line.word == "check" ? diagnosis::EntryKind::check : diagnosis::EntryKind::remedy, rest);
    if (!entry) return false;
    record.entries.push_back(*entry);
  } else if (line.word == "ticked") {
    while (!rest.empty())
      if (const auto step = whole_number(take_word(rest))) trace.ticked.push_back(*step);
  } else if (line.word == "kept") {
    trace.kept_as = whole_number(rest).value_or(0);
  }
  return true;   // a line of a newer app is passed over
}

}  // namespace

std::string write_outlets(const std::vector<circuit::OutletId>& outlets) {
  std::string numbers;
  for (const circuit::OutletId outlet : outlets)
    numbers.append(numbers.empty() ? "" : " ").append(std::to_string(outlet.number));
  return numbers;
}

std::vector<circuit::OutletId> read_outlets(std::string_view text) {
  return outlets_of(text).value_or(std::vector<circuit::OutletId>{});
}

std::string write_tools(const diagnosis::Tools& tools) {
  std::string words;
  for (const ToolWord& tool : kTools)
    if (tools.*tool.held) words.append(words.empty() ? "" : " ").append(tool.word);
  return words;
}

diagnosis::Tools read_tools(std::string_view words) {
  diagnosis::Tools tools;
  while (!words.empty()) {
    const std::string_view word = take_word(words);
    for (const ToolWord& tool : kTools)
      if (tool.word == word) tools.*tool.held = true;
  }
  return tools;
}

FittedTold read_fitted(std::string_view text) {
  FittedTold fitted;
  for (const Line& line : split_lines(text)) {
    if (line.word == "size" && tables::conductor_by_id(line.rest) != nullptr) fitted.size = line.rest;
    if (line.word != "fuse") continue;
    const auto rating = reading_of(line.rest);
    if (rating && std::isfinite(*rating) && *rating > 0.0 && *rating <= kLargestFuse) fitted.fuse_a = *rating;
  }
  return fitted;
}

std::string write_running(const RunningTrace& trace) {
  const diagnosis::Record& record = trace.record;
  std::string text;
  add_line(text, "symptom", diagnosis::symptom_row(record.complaint.symptom).key);
  if (!record.complaint.outlets.empty()) add_line(text, "outlets", write_outlets(record.complaint.outlets));
  add_line(text, "tools", write_tools(record.tools));
  for (const diagnosis::Site& site : record.out_of_reach) add_line(text, "out-of-reach", diagnosis::site_key(site));
  for (const diagnosis::Neighbour& neighbour : record.neighbours)
    add_line(text, "neighbour", std::to_string(neighbour.fuse_position) + (neighbour.same_loom ? " loom " : " apart ") + neighbour.name);
  for (const diagnosis::Entry& entry : record.entries)
    add_line(text, entry.kind == diagnosis::EntryKind::check ? "check" : "remedy", entry_text(entry));
  std::string steps;
  for (const std::size_t step : trace.ticked) steps.append(steps.empty() ? "" : " ").append(std::to_string(step));
  if (!steps.empty()) add_line(text, "ticked", steps);
  if (trace.kept_as != 0) add_line(text, "kept", std::to_string(trace.kept_as));
  return text;
}

std::optional<RunningTrace> read_running(std::string_view text) {
  RunningTrace trace;
  bool has_symptom = false;
  for (const Line& line : split_lines(text))
    if (!read_line(line, trace, has_symptom)) return std::nullopt;
  const bool needs_meter = diagnosis::symptom_row(trace.record.complaint.symptom).needs_meter;
  if (!has_symptom || (needs_meter && !trace.record.tools.meter)) return std::nullopt;
  return trace;
}

std::string write_kept(const KeptTrace& trace) {
  std::string text;
  add_line(text, "date", trace.date);
  add_line(text, "circuit", trace.circuit);
  add_line(text, "complaint", trace.complaint);
  for (const Told& told : trace.told)
    text.append("told ").append(one_line(told.question)).append("\t").append(one_line(told.answer)).append("\n");
  add_line(text, "outcome", trace.outcome);
  return text;
}

KeptTrace clipped(KeptTrace trace) {
  const auto clip = [](std::string& text) {
    // Four bytes are the longest character.
    if (text.size() > vehicle::kMaxTextBytes) text = first_characters(text, vehicle::kMaxTextBytes / 4);
  };
  for (std::string* text : {&trace.date, &trace.circuit, &trace.complaint, &trace.outcome}) clip(*text);
  if (trace.told.size() > vehicle::kMaxTold) trace.told.resize(vehicle::kMaxTold);
  for (Told& told : trace.told) {
    clip(told.question);
    clip(told.answer);
  }
  return trace;
}

std::string readable_text(const KeptTrace& trace) {
  std::string text = "Trace of " + trace.circuit + ", " + trace.date + "\n" + trace.complaint + "\n\n";
  for (std::size_t i = 0; i < trace.told.size(); ++i)
    text += std::to_string(i + 1) + ". " + trace.told[i].question + "\n   " + trace.told[i].answer + "\n";
  return text + "\n" + trace.outcome + "\n";
}

std::optional<KeptTrace> read_kept(std::string_view text) {
  KeptTrace trace;
  for (const Line& line : split_lines(text)) {
    if (line.word == "date") trace.date = line.rest;
    if (line.word == "circuit") trace.circuit = line.rest;
    if (line.word == "complaint") trace.complaint = line.rest;
    if (line.word == "outcome") trace.outcome = line.rest;
    const std::size_t tab = line.rest.find('\t');
    if (line.word == "told" && tab != std::string_view::npos)
      trace.told.push_back({std::string(line.rest.substr(0, tab)), std::string(line.rest.substr(tab + 1))});
  }
  if (trace.date.empty() || trace.complaint.empty()) return std::nullopt;
  return trace;
}

}  // namespace app
