#include "app/trace.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "units/format.h"

namespace app {
namespace {

constexpr std::string_view kPrefix = "trace/";
constexpr std::size_t kSuspectsKept = 8;

std::optional<std::uint32_t> number_in(std::string_view text) {
  std::uint32_t number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size() || number == 0) return std::nullopt;
  return number;
}

std::string letter(const circuit::Circuit& circuit, circuit::OutletId id) {
  for (std::size_t i = 0; i < circuit.outlets.size(); ++i)
    if (circuit.outlets[i].id == id) return circuit::outlet_letter(i);
  return "?";
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
    if (choice.key == answer.word) return choice.words;
  return answer.word;
}

Trace::Trace(platform::Host& host, Records& records, const std::vector<platform::StoredRecord>& stored)
    : host_(host), records_(records) {
  for (const platform::StoredRecord& record : stored) {
    if (record.key.starts_with(kPrefix) || record.key.starts_with(kFittedPrefix)) texts_[record.key] = record.text;
    if (record.key == kTraceToolsKey) tools_ = read_tools(record.text);
  }
}

std::string Trace::running_key() const { return std::string(kPrefix) + std::to_string(number_); }
std::string Trace::kept_key(std::uint32_t number) const { return running_key() + "/" + std::to_string(number); }

void Trace::store(const std::string& key, std::string text) {
  records_.store(key, text);
  texts_[key] = std::move(text);
}

void Trace::remove(const std::string& key) {
  if (texts_.erase(key) > 0) records_.remove(key);
}

bool Trace::follows(std::uint32_t number, std::string_view text) const {
  return following_ && number == number_ && text == text_;
}

void Trace::follow(std::uint32_t number, std::string_view text, diagnosis::Case frame) {
  following_ = true;
  number_ = number;
  text_ = text;
  frame_ = std::move(frame);
  tracer_.reset();
  dropped_.clear();
  remark_.clear();
  ticked_.clear();
  kept_as_ = 0;
  unreadable_ = false;
  read_kept_traces();
  const auto found = texts_.find(running_key());
  if (found == texts_.end()) return;
  const auto stored = read_running(found->second);
  unreadable_ = !stored;
  if (stored) replay_running(*stored);
}

void Trace::put_unreadable_aside() {
  if (!unreadable_) return;
  unreadable_ = false;
  const std::string text = texts_[running_key()];
  for (int i = 1; i < 1000; ++i) {
    const std::string key = running_key() + "/unread-" + std::to_string(i);
    if (texts_.contains(key)) continue;
    store(key, text);
    return;
  }
}

void Trace::replay_running(const RunningTrace& stored) {
  if (!frame_problems().empty()) return;   // shown on the screen; goes on when the circuit is right again
  diagnosis::Replay again = diagnosis::replay(frame_.circuit, frame_.fitted, stored.record, frame_.fuse_told);
  tracer_.emplace(std::move(again.tracer));
  dropped_ = std::move(again.dropped);
  kept_as_ = stored.kept_as;
  if (dropped_.empty()) ticked_ = stored.ticked;
  compute();
}

void Trace::read_kept_traces() {
  kept_.clear();
  const std::string start = running_key() + "/";
  for (const auto& [key, text] : texts_) {
    if (!key.starts_with(start)) continue;
    const auto number = number_in(std::string_view(key).substr(start.size()));
    auto kept = read_kept(text);
    if (!number || !kept) continue;
    kept->number = *number;
    kept_.push_back(std::move(*kept));
  }
  std::sort(kept_.begin(), kept_.end(), [](const KeptTrace& a, const KeptTrace& b) { return a.number > b.number; });
}

std::optional<FittedTold> Trace::fitted(std::uint32_t number) const {
  const auto found = texts_.find(std::string(kFittedPrefix) + std::to_string(number));
  return found == texts_.end() ? std::nullopt : std::optional(read_fitted(found->second));
}

void Trace::tell_fitted(const std::optional<FittedTold>& fitted) {
  const std::string key = std::string(kFittedPrefix) + std::to_string(number_);
  if (fitted) store(key, write_fitted(*fitted));
  else remove(key);
  following_ = false;   // the case is another one now
}

circuit::Problems Trace::frame_problems() const {
  diagnosis::Case any = frame_;
  any.complaint = {diagnosis::Symptom::all_dead, {}};
  return diagnosis::problems(any);
}

void Trace::set_tools(const diagnosis::Tools& tools) {
  tools_ = tools;
  records_.store(kTraceToolsKey, write_tools(tools));
}

std::string Trace::start(diagnosis::Symptom symptom, std::vector<circuit::OutletId> outlets) {
  diagnosis::Case begun = frame_;
  begun.complaint = {symptom, std::move(outlets)};
  begun.tools = tools_;
  const circuit::Problems problems = diagnosis::problems(begun);
  if (!problems.empty()) return circuit::one_line(problems.front());
  put_unreadable_aside();
  stop();
  tracer_.emplace(std::move(begun));
  changed();
  return {};
}

void Trace::stop() {
  if (tracer_ && answers() > 0 && kept_as_ == 0)
    keep(suspects_.empty() ? "Stopped before the end." : "Stopped before the end. Likeliest then: " + suspects_.front().words + ".");
  tracer_.reset();
  dropped_.clear();
  remark_.clear();
  ticked_.clear();
  kept_as_ = 0;
  remove(running_key());
}

void Trace::compute() {
  advice_ = tracer_->next();
  suspects_ = tracer_->suspects(kSuspectsKept);
  evidence_.clear();
  evidence_rank_.reset();
  // Why the first: told beside the remedy, for it alone.
  const bool concluded = advice_.kind == diagnosis::AdviceKind::remedy || advice_.kind == diagnosis::AdviceKind::cannot_tell;
  if (!concluded || !advice_.remedy) return;
  for (const diagnosis::Suspect& suspect : suspects_)
    if (suspect.remedy_id == advice_.remedy->id && evidence_.empty()) evidence_ = tracer_->evidence(suspect);
}

const std::vector<diagnosis::Evidence>& Trace::evidence_for(std::size_t rank) {
  if (evidence_rank_ != rank) evidence_of_rank_ = tracer_->evidence(suspects_[rank]);
  evidence_rank_ = rank;
  return evidence_of_rank_;
}

void Trace::changed() {
  compute();
  store(running_key(), write_running({tracer_->record(), ticked_, kept_as_}));
}

std::string Trace::observe(std::string_view check_id, const diagnosis::Answer& answer) {
  const diagnosis::Receipt receipt = tracer_->observe(check_id, answer);
  if (!receipt.taken) return receipt.words;
  remark_ = receipt.words;
  ticked_.clear();
  changed();
  return {};
}

std::string Trace::retake(std::size_t entry, const diagnosis::Answer& answer) {
  const diagnosis::Receipt receipt = tracer_->retake(entry, answer);
  if (!receipt.taken) return receipt.words;
  remark_ = receipt.words;
  ticked_.clear();
  changed();
  return {};
}

std::string Trace::after_remedy(std::string_view remedy_id, diagnosis::RetestResult result) {
  const std::string title = remedy_title(remedy_id);
  const diagnosis::Receipt receipt = tracer_->after_remedy(remedy_id, result);
  if (!receipt.taken) return receipt.words;
  remark_.clear();
  ticked_.clear();
  compute();
  if (result == diagnosis::RetestResult::works) kept_as_ = keep(title + " Put right, and it works.");
  changed();
  return {};
}

bool Trace::undo() {
  if (!tracer_ || !tracer_->undo()) return false;
  unkeep();
  remark_.clear();
  ticked_.clear();
  changed();
  return true;
}

void Trace::unkeep() {
  if (kept_as_ != 0) forget(kept_as_);
  kept_as_ = 0;
}

bool Trace::ticked(std::size_t step) const { return std::find(ticked_.begin(), ticked_.end(), step) != ticked_.end(); }

void Trace::tick(std::size_t step, bool on) {
  std::erase(ticked_, step);
  if (on) ticked_.push_back(step);
  store(running_key(), write_running({tracer_->record(), ticked_, kept_as_}));
}

std::string Trace::remedy_title(std::string_view remedy_id) const {
  if (advice_.remedy && advice_.remedy->id == remedy_id) return advice_.remedy->title;
  for (const diagnosis::Remedy& remedy : advice_.to_try)
    if (remedy.id == remedy_id) return remedy.title;
  for (const diagnosis::Suspect& suspect : tracer_->suspects(10000))
    if (suspect.remedy_id == remedy_id) return suspect.words + ".";
  return "A repair.";
}

Told Trace::told(std::size_t entry) const {
  const diagnosis::Entry& one = tracer_->record().entries[entry];
  if (one.kind == diagnosis::EntryKind::remedy) {
    const std::string_view said = one.answer.word;
    return {remedy_title(one.id) + " Put right?", said == "works" ? "It works now" : said == "same" ? "Still the same" : "Couldn't do it"};
  }
  const auto check = tracer_->find_check(one.id);
  if (!check) return {one.id, one.answer.word};
  return {check->question, answer_words(*check, one.answer)};
}

std::string Trace::complaint_words() const {
  const diagnosis::Case& traced = tracer_->the_case();
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
  kept.number = kept_.empty() ? 1 : kept_.front().number + 1;
  while (texts_.contains(kept_key(kept.number))) ++kept.number;   // one that can not be read stays, too
  kept.date = host_.today();
  kept.circuit = frame_.circuit.name;
  kept.complaint = complaint_words();
  for (std::size_t i = 0; i < answers(); ++i) kept.told.push_back(told(i));
  kept.outcome = std::move(outcome);
  store(kept_key(kept.number), write_kept(kept));
  const std::uint32_t number = kept.number;
  kept_.insert(kept_.begin(), std::move(kept));
  return number;
}

const KeptTrace* Trace::find_kept(std::uint32_t number) const {
  for (const KeptTrace& kept : kept_)
    if (kept.number == number) return &kept;
  return nullptr;
}

void Trace::forget(std::uint32_t number) {
  const auto found = texts_.find(kept_key(number));
  if (found == texts_.end()) return;
  forgotten_key_ = found->first;
  forgotten_text_ = found->second;
  remove(kept_key(number));
  std::erase_if(kept_, [number](const KeptTrace& kept) { return kept.number == number; });
}

bool Trace::put_back_forgotten() {
  if (forgotten_key_.empty()) return false;
  store(forgotten_key_, std::move(forgotten_text_));
  forgotten_key_.clear();
  forgotten_text_.clear();
  read_kept_traces();
  return true;
}

void Trace::forget_circuits_but(const std::vector<std::uint32_t>& numbers) {
  std::vector<std::string> gone;
  for (const auto& [key, text] : texts_) {
    const std::size_t slash = key.find('/');
    const std::string_view rest = std::string_view(key).substr(slash + 1);
    const auto number = number_in(rest.substr(0, rest.find('/')));
    if (number && std::find(numbers.begin(), numbers.end(), *number) == numbers.end()) gone.push_back(key);
  }
  for (const std::string& key : gone) remove(key);
}

}  // namespace app
