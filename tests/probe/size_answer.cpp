#include "probe/answers.h"
#include "sizing/fixes.h"
#include "sizing/sizing.h"

namespace probe {
namespace {

using sizing::Candidate;
using sizing::Criterion;
using sizing::FixKind;
using sizing::Judgement;
using sizing::Measure;
using sizing::Verdict;

std::string verdict_word(Verdict verdict) {
  return word_of<Verdict>(verdict, {{"fits", Verdict::fits},
                                    {"none fits", Verdict::none_fits},
                                    {"not on shelf", Verdict::not_on_shelf},
                                    {"no load", Verdict::no_load},
                                    {"invalid", Verdict::invalid}});
}

std::string criterion_word(Criterion criterion) {
  return word_of<Criterion>(criterion, {{"ampacity", Criterion::ampacity},
                                        {"fuse rating", Criterion::fuse_rating},
                                        {"fuse voltage", Criterion::fuse_voltage},
                                        {"part rating", Criterion::part_rating},
                                        {"fit", Criterion::fit},
                                        {"mechanical minimum", Criterion::mechanical_minimum},
                                        {"operating point", Criterion::operating_point},
                                        {"drop", Criterion::drop},
                                        {"device minimum", Criterion::device_minimum},
                                        {"far short", Criterion::far_short},
                                        {"withstand", Criterion::withstand}});
}

std::string measure_word(Measure measure) {
  return word_of<Measure>(measure, {{"A", Measure::amperes},
                                    {"fraction", Measure::fraction},
                                    {"V", Measure::volts},
                                    {"s", Measure::seconds},
                                    {"A2s", Measure::ampere_squared_seconds},
                                    {"mm2", Measure::square_millimetres},
                                    {"", Measure::none}});
}

std::string fix_word(FixKind kind) {
  return word_of<FixKind>(kind, {{"carry less", FixKind::carry_less},
                                 {"run shorter", FixKind::run_shorter},
                                 {"more drop", FixKind::more_drop},
                                 {"larger fuse", FixKind::larger_fuse},
                                 {"feeder", FixKind::feeder},
                                 {"other part", FixKind::other_part},
                                 {"other fuse family", FixKind::other_fuse_family},
                                 {"split", FixKind::split},
                                 {"next size", FixKind::next_size}});
}

Json judgement_json(const Judgement& judgement) {
  Json json = {{"criterion", criterion_word(judgement.criterion)},
               {"passes", judgement.passes},
               {"value", number(judgement.value)},
               {"limit", number(judgement.limit)},
               {"measure", measure_word(judgement.measure)}};
  if (judgement.at) json["outlet"] = judgement.at->number;
  if (judgement.citation != nullptr) json["citation"] = std::string(judgement.citation->id);
  json["sentence"] = judgement.sentence;
  return json;
}

Json outlets_json(const Candidate& candidate) {
  Json list = Json::array();
  for (const sizing::OutletResult& outlet : candidate.outlets) {
    list.push_back({{"id", outlet.id.number},
                    {"voltage_v", number(outlet.voltage.number())},
                    {"drop_fraction", number(outlet.drop_fraction)},
                    {"drop_limit_fraction", number(outlet.drop_limit)},
                    {"voltage_low_v", number(outlet.voltage_low.number())},
                    {"runs", outlet.runs}});
  }
  return list;
}

Json candidate_json(const Candidate& candidate) {
  Json json = {{"size", std::string(candidate.size->id)}};
  if (candidate.tail != nullptr) json["tail"] = std::string(candidate.tail->id);
  if (candidate.fuse) json["fuse_a"] = number(candidate.fuse->number());
  if (candidate.derated_ampacity) json["derated_ampacity_a"] = number(candidate.derated_ampacity->number());
  json["design_current_a"] = number(candidate.design_current.number());
  json["worst_drop_fraction"] = number(candidate.worst_drop_fraction);
  json["lost_in_wire_w"] = number(candidate.lost_in_wire.number());
  json["on_shelf"] = candidate.on_shelf;
  json["passes"] = candidate.passes;
  json["outlets"] = outlets_json(candidate);
  return json;
}

Json ladder_json(const sizing::Answer& answer) {
  Json ladder = Json::array();
  for (const Candidate& candidate : answer.ladder) {
    Json step = candidate_json(candidate);
    step["judgements"] = Json::array();
    for (const Judgement& judgement : candidate.judgements) step["judgements"].push_back(judgement_json(judgement));
    ladder.push_back(std::move(step));
  }
  return ladder;
}

Json fixes_json(const circuit::Circuit& circuit, const sizing::Answer& answer) {
  const tables::Conductor* size = sizing::nearest_size(circuit, answer);
  if (size == nullptr) return {{"why_none", "No size is near enough to fix."}};
  const sizing::Fixes found = sizing::fixes(circuit, *size);
  Json json = {{"size", std::string(size->id)}, {"fixes", Json::array()}};
  for (const sizing::Fix& fix : found.fixes) {
    json["fixes"].push_back({{"kind", fix_word(fix.kind)},
                             {"value", number(fix.value)},
                             {"measure", measure_word(fix.measure)},
                             {"title", fix.title},
                             {"detail", fix.detail}});
  }
  if (found.fixes.empty()) json["why_none"] = found.why_none;
  return json;
}

}  // namespace

Json size_answer(const Json& request) {
  only_keys(request, {"do", "circuit", "ladder", "fixes"});
  const bool ladder = flag_or(request, "ladder", false);
  const bool fixes = flag_or(request, "fixes", false);
  const circuit::Circuit circuit = need_circuit(request);
  const sizing::Answer answer = sizing::size_circuit(circuit);
  Json json = {{"verdict", verdict_word(answer.verdict)}};
  if (answer.choice() != nullptr) json["choice"] = candidate_json(*answer.choice());
  if (answer.set_by) json["set_by"] = judgement_json(*answer.set_by);
  if (!answer.headline.empty()) json["headline"] = answer.headline;
  json["reason"] = answer.reason;
  json["notes"] = answer.notes;
  if (!answer.problems.empty()) json["problems"] = problems_json(answer.problems);
  if (ladder) json["ladder"] = ladder_json(answer);
  if (fixes) json["fixes"] = fixes_json(circuit, answer);
  return json;
}

}  // namespace probe
