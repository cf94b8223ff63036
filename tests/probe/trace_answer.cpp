#include "diagnosis/check_row.h"
#include "diagnosis/tracer.h"
#include "probe/answers.h"
#include "probe/trace_request.h"

namespace probe {
namespace {

using diagnosis::Advice;
using diagnosis::AdviceKind;
using diagnosis::Check;
using diagnosis::Fault;
using diagnosis::FaultRow;
using diagnosis::Receipt;
using diagnosis::Remedy;
using diagnosis::Suspect;
using diagnosis::Tracer;

Json fitted_json(const TraceRequest& asked) {
  using diagnosis::Protection;
  const Fitted& told = asked.fitted;
  Json json = {{"size", told.size != nullptr ? Json(std::string(told.size->id)) : Json(nullptr)}};
  if (told.tail != nullptr) json["tail"] = std::string(told.tail->id);
  json["fuse_a"] = told.fuse ? number(told.fuse->number()) : Json(nullptr);
  json["fuse"] = word_of<Protection>(asked.the_case.built.protection, {{"not judged", Protection::not_judged},
                                                                       {"protects the wire", Protection::protects},
                                                                       {"too large", Protection::too_large}});
  return json;
}

// Where a fault stands, as far as its kind has a place.
Json place_json(const diagnosis::Case& the_case, const Fault& fault) {
  Json json = Json::object();
  if (fault.outlet != circuit::kBlock) json["outlet"] = fault.outlet.number;
  if (diagnosis::has_side(diagnosis::fault_row(fault.kind).placed_at)) {
    json["side"] = fault.side == network::Side::positive ? "positive" : "negative";
  }
  if (fault.neighbour >= 0) json["neighbour"] = the_case.neighbours[static_cast<std::size_t>(fault.neighbour)].name;
  return json;
}

Json suspects_json(const Tracer& tracer, const std::vector<Suspect>& suspects) {
  Json list = Json::array();
  for (const Suspect& suspect : suspects) {
    Json json = {{"fault", diagnosis::fault_key(suspect.fault)},
                 {"probability", number(suspect.probability)},
                 {"place", place_json(tracer.the_case(), suspect.fault)},
                 {"remedy", suspect.remedy_id},
                 {"words", suspect.words}};
    if (suspect.with) json["with"] = diagnosis::fault_key(*suspect.with);
    list.push_back(std::move(json));
  }
  return list;
}

Json sites_json(const Check& check) {
  Json list = Json::array();
  for (const diagnosis::Site& site : check.sites) list.push_back(diagnosis::site_key(site));
  return list;
}

Json state_json(const diagnosis::State& state) {
  using diagnosis::Plugged;
  Json json = {{"fuse_in", state.fuse_in}};
  if (state.plugged != Plugged::nothing) {
    json["plugged"] = word_of<Plugged>(state.plugged, {{"lamp", Plugged::lamp}, {"device", Plugged::device}, {"failed device", Plugged::own}});
  }
  if (state.plugged != Plugged::nothing) json["at_outlet"] = state.at.number;
  if (state.parted_at) json["parted_at_outlet"] = state.parted_at->number;
  return json;
}

Json check_json(const Check& check) {
  const bool ohms = check.kind == diagnosis::CheckKind::ohms;
  Json json = {{"id", check.id},
               {"tool", std::string(diagnosis::check_kind_row(check.kind).tool)},
               {"first", check.first},
               {"question", check.question},
               {"state", state_json(check.state)},
               {"state_words", check.state_words},
               {"caution", check.caution},
               {"sites", sites_json(check)},
               {"minutes", number(check.minutes)}};
  if (check.takes_reading) json["reading_in"] = ohms ? "ohm" : "V";
  json["answers"] = Json::array();
  for (const diagnosis::Choice& choice : check.choices) {
    Json answer = {{"answer", std::string(diagnosis::answer_text(choice.key))}, {"words", choice.words}};
    if (choice.low) answer["from"] = number(*choice.low);
    if (choice.high) answer["below"] = number(*choice.high);
    json["answers"].push_back(std::move(answer));
  }
  return json;
}

// What the check would read under each suspect, and how likely each answer is then.
Json results_json(const Tracer& tracer, const Check& check, const std::vector<Suspect>& suspects) {
  Json list = Json::array();
  for (const Suspect& suspect : suspects) {
    Json json = {{"fault", diagnosis::fault_key(suspect.fault)}};
    if (const auto value = tracer.predicted(suspect.fault, check.id)) json["predicted"] = number(*value);
    const std::vector<double> chances = tracer.likelihood(suspect.fault, check.id);
    for (std::size_t c = 0; c < chances.size(); ++c) json["answers"][std::string(diagnosis::answer_text(check.choices[c].key))] = number(chances[c]);
    list.push_back(std::move(json));
  }
  return list;
}

Json next_check_json(const Tracer& tracer, const Advice& advice, const std::vector<Suspect>& suspects) {
  Json json = check_json(*advice.check);
  for (std::size_t c = 0; c < advice.outlooks.size(); ++c) {
    json["answers"][c]["probability"] = number(advice.outlooks[c].probability);
    json["answers"][c]["means"] = advice.outlooks[c].words;
  }
  json["results"] = results_json(tracer, *advice.check, suspects);
  return json;
}

Json remedy_json(const Remedy& remedy) {
  Json json = {{"remedy", remedy.id},
               {"title", remedy.title},
               {"minutes", number(remedy.minutes)},
               {"cautions", remedy.cautions},
               {"steps", Json::array()}};
  for (const diagnosis::RemedyStep& step : remedy.steps) json["steps"].push_back(step.words);
  json["retest"] = {{"words", remedy.retest.words}};
  if (remedy.retest.outlet != circuit::kBlock) json["retest"]["outlet"] = remedy.retest.outlet.number;
  if (remedy.retest.by_meter) {
    json["retest"]["low_v"] = number(remedy.retest.low.number());
    json["retest"]["high_v"] = number(remedy.retest.high.number());
  }
  return json;
}

// A receipt for each thing told, and which of them each entry of the record was.
struct Receipts {
  Json list = Json::array();
  std::vector<std::size_t> told_of_entry;
};
Receipts tell(Tracer& tracer, const std::vector<Said>& told) {
  Receipts receipts;
  for (std::size_t i = 0; i < told.size(); ++i) {
    const Said& said = told[i];
    const Receipt receipt = said.remedy ? tracer.after_remedy(said.id, said.result) : tracer.observe(said.id, said.answer);
    if (receipt.taken) receipts.told_of_entry.push_back(i);
    Json json = {{"taken", receipt.taken}};
    if (!receipt.words.empty()) json["words"] = receipt.words;
    receipts.list.push_back(std::move(json));
  }
  return receipts;
}

std::string advice_word(AdviceKind kind) {
  return word_of<AdviceKind>(kind, {{"check", AdviceKind::check},
                                    {"remedy", AdviceKind::remedy},
                                    {"cannot tell", AdviceKind::cannot_tell},
                                    {"none fits", AdviceKind::none_fits},
                                    {"finished", AdviceKind::finished}});
}

}  // namespace

Json trace_answer(const Json& request) {
  const TraceRequest asked = read_trace_request(request);
  Tracer tracer(asked.the_case);
  Receipts receipts = tell(tracer, asked.told);
  const Advice advice = tracer.next();
  const std::vector<Suspect> suspects = tracer.suspects(asked.suspects);
  Json json = {{"advice", advice_word(advice.kind)}, {"words", advice.words}, {"fitted", fitted_json(asked)}};
  json["receipts"] = std::move(receipts.list);
  if (advice.odd_entry) json["odd"] = receipts.told_of_entry[*advice.odd_entry];
  json["suspects"] = suspects_json(tracer, suspects);
  if (advice.check) json["check"] = next_check_json(tracer, advice, suspects);
  if (advice.remedy) {
    json["probability"] = number(advice.probability);
    json["remedy"] = remedy_json(*advice.remedy);
  }
  // In the order in which to try them; the first is "remedy" where nothing tells them apart.
  for (const Remedy& remedy : advice.to_try) json["to_try"].push_back({{"remedy", remedy.id}, {"title", remedy.title}});
  if (asked.list_checks) {
    json["checks"] = Json::array();
    for (const Check& check : tracer.all_checks()) json["checks"].push_back(check_json(check));
  }
  return json;
}

}  // namespace probe
