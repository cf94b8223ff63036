#include "app/trace.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "units/format.h"

namespace app {
namespace {

constexpr std::size_t kSuspectsKept = 8;
constexpr std::size_t kEverySuspect = 10000;

std::string letter(const circuit::Circuit& circuit, circuit::OutletId id) {
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i)
    if (circuit.outlets[i].id == id) return circuit::outlet_letter(i);
  return "?";
}

diagnosis::Replay replayed(const diagnosis::Case& frame, const RunningTrace& stored) {
  return diagnosis::replay(frame, stored.record);
}

bool concluded(const diagnosis::Advice& advice) {
  return advice.kind == diagnosis::AdviceKind::remedy || advice.kind == diagnosis::AdviceKind::cannot_tell;
}

}  // namespace

std::string answer_words(const diagnosis::Check& check, const diagnosis::Answer& answer) {
  switch (answer.kind) {
    case diagnosis::AnswerKind::cant_reach: return "Can't reach it";
    case diagnosis::AnswerKind::not_sure: return "Not sure";
    case diagnosis::AnswerKind::reading:
      if (check.kind != diagnosis::CheckKind::ohms) return units::volts_text(units::Volts(answer.reading));
      return std::isinf(answer.reading) ? "Open" : units::ohms_text(units::Ohms(answer.reading));
    case diagnosis::AnswerKind::word: break;
  }
  for (const diagnosis::Choice& choice : check.choices)
    if (choice.key == answer.key) return choice.words;
  return std::string(diagnosis::answer_text(answer.key));
}

Trace::Trace(platform::Host& host, TraceShelf& shelf, diagnosis::Case begun)
    : host_(host), shelf_(shelf), tracer_(std::move(begun)) {
  changed();
}

Trace::Trace(platform::Host& host, TraceShelf& shelf, const diagnosis::Case& frame, const RunningTrace& stored)
    : Trace(host, shelf, replayed(frame, stored), stored) {}

Trace::Trace(platform::Host& host, TraceShelf& shelf, diagnosis::Replay again, const RunningTrace& stored)
    : host_(host), shelf_(shelf), tracer_(std::move(again.tracer)), dropped_(std::move(again.dropped)),
      kept_as_(stored.kept_as) {
  if (dropped_.empty()) ticked_ = stored.ticked;
}

void Trace::store() { shelf_.store_running({tracer_.record(), ticked_, kept_as_}); }

void Trace::changed() {
  settled_ = false;
  store();
  host_.wake();
}

void Trace::work_out() {
  findings_ = {};
  suspect_.reset();
  findings_.advice = tracer_.next();
  findings_.suspects = tracer_.suspects(kSuspectsKept);
  for (std::size_t i = 0; i < answers(); ++i) findings_.told.push_back(told(i));
  settled_ = true;
  // Why the first: told beside the remedy, for it alone.
  const auto& remedy = findings_.advice.remedy;
  if (!concluded(findings_.advice) || !remedy) return;
  const auto advised = std::find_if(findings_.suspects.begin(), findings_.suspects.end(),
                                    [&](const diagnosis::Suspect& each) { return each.remedy_id == remedy->id; });
  if (advised != findings_.suspects.end()) findings_.evidence = tracer_.evidence(*advised);
}

void Trace::settle(std::optional<std::size_t> suspect) {
  if (!settled_) work_out();
  if (suspect == suspect_) return;
  suspect_ = suspect;
  findings_.of_suspect.clear();
  if (suspect && *suspect < findings_.suspects.size())
    findings_.of_suspect = tracer_.evidence(findings_.suspects[*suspect]);
}

void Trace::dropped_read() {
  dropped_.clear();
  store();
}

std::string Trace::observe(std::string_view check_id, const diagnosis::Answer& answer) {
  const diagnosis::Receipt receipt = tracer_.observe(check_id, answer);
  if (!receipt.taken) return receipt.words;
  remark_ = receipt.words;
  ticked_.clear();
  changed();
  return {};
}

std::string Trace::retake(std::size_t entry, const diagnosis::Answer& answer) {
  const diagnosis::Receipt receipt = tracer_.retake(entry, answer);
  if (!receipt.taken) return receipt.words;
  remark_ = receipt.words;
  ticked_.clear();
  changed();
  return {};
}

std::string Trace::after_remedy(std::string_view remedy_id, diagnosis::RetestResult result) {
  const std::string title = remedy_title(remedy_id);
  const diagnosis::Receipt receipt = tracer_.after_remedy(remedy_id, result);
  if (!receipt.taken) return receipt.words;
  remark_.clear();
  ticked_.clear();
  if (result == diagnosis::RetestResult::works) {
    work_out();   // the record tells every answer in words
    kept_as_ = keep(title + " Put right, and it works.");
  }
  changed();
  return {};
}

bool Trace::undo() {
  if (!tracer_.undo()) return false;
  if (kept_as_ != 0) shelf_.forget(kept_as_);
  kept_as_ = 0;
  remark_.clear();
  ticked_.clear();
  changed();
  return true;
}

bool Trace::ticked(std::size_t step) const { return std::find(ticked_.begin(), ticked_.end(), step) != ticked_.end(); }

void Trace::tick(std::size_t step, bool on) {
  std::erase(ticked_, step);
  if (on) ticked_.push_back(step);
  store();
}

void Trace::end() {
  if (answers() > 0 && kept_as_ == 0) {
    if (!settled_) work_out();
    keep(findings_.suspects.empty() ? "Stopped before the end."
                                    : "Stopped before the end. Likeliest then: " + findings_.suspects.front().words + ".");
  }
  shelf_.drop_running();
}

std::string Trace::remedy_title(std::string_view remedy_id) const {
  const diagnosis::Advice& advice = findings_.advice;
  if (advice.remedy && advice.remedy->id == remedy_id) return advice.remedy->title;
  for (const diagnosis::Remedy& remedy : advice.to_try)
    if (remedy.id == remedy_id) return remedy.title;
  for (const diagnosis::Suspect& suspect : tracer_.suspects(kEverySuspect))
    if (suspect.remedy_id == remedy_id) return suspect.words + ".";
  return "A repair.";
}

Told Trace::told(std::size_t entry) const {
  const diagnosis::Entry& one = tracer_.record().entries[entry];
  if (one.kind == diagnosis::EntryKind::remedy) {
    const diagnosis::AnswerKey said = one.answer.key;
    return {remedy_title(one.id) + " Put right?", said == diagnosis::AnswerKey::works  ? "It works now"
                                                  : said == diagnosis::AnswerKey::same ? "Still the same"
                                                                                       : "Couldn't do it"};
  }
  const auto check = tracer_.find_check(one.id);
  if (!check) return {one.id, std::string(diagnosis::answer_text(one.answer.key))};
  return {check->question, answer_words(*check, one.answer)};
}

std::string Trace::complaint_words() const {
  const diagnosis::Case& traced = tracer_.the_case();
  const diagnosis::SymptomRow& row = diagnosis::symptom_row(traced.complaint.symptom);
  std::string letters;
  for (const circuit::OutletId outlet : traced.complaint.outlets) {
    if (!letters.empty()) letters += ", ";
    letters += letter(traced.circuit, outlet);
  }
  if (letters.empty()) return std::string(row.words);
  if (row.symptom == diagnosis::Symptom::one_dead) return "Outlet " + letters + " is dead";
  if (row.symptom == diagnosis::Symptom::several_dead) return "Outlets " + letters + " are dead";
  return std::string(row.words) + ": " + letters;
}

std::uint32_t Trace::keep(std::string outcome) {
  KeptTrace kept;
  kept.date = host_.today();
  kept.circuit = tracer_.the_case().circuit.name;
  kept.complaint = complaint_words();
  kept.told = findings_.told;
  kept.outcome = std::move(outcome);
  return shelf_.keep(std::move(kept));
}

}  // namespace app
