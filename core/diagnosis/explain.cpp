#include "diagnosis/explain.h"

#include <algorithm>
#include <cmath>

#include "diagnosis/judgement_constants.h"
#include "diagnosis/words.h"
#include "units/format.h"

namespace diagnosis {
namespace {

std::string volts(double number) { return units::volts_text(units::Volts(number)); }
std::string ohms(double number) {
  return std::isinf(number) ? std::string("open") : units::ohms_text(units::Ohms(number));
}

Receipt judge_volts(const Case& the_case, double emf_v, const Check& check, double typed) {
  const double nominal = the_case.circuit.supply.nominal.number();
  const std::string system = joined({units::number_text(nominal, 3), " V"});
  if (std::abs(typed) > judged(Judged::most_per_nominal) * nominal) {
    return {
        false,
        joined(
            {volts(typed), " is more than a ", system,
             " circuit can have. Look at the decimal point, at mV, and whether the meter is on volts and not on ohms."})};
  }
  if (typed < -judged(Judged::zero_below) * emf_v &&
      !(check.state.plugged != Plugged::nothing && std::abs(typed) < judged(Judged::minus_under_load_v))) {
    return {
        true,
        "A minus: plus and minus are changed over here, or your leads are. Taken as read; take it again if the leads were crossed."};
  }
  if (typed > judged(Judged::above_battery) * emf_v)
    return {true, joined({volts(typed), " is more than the battery alone gives. Is something charging?"})};
  return {true, {}};
}

std::string list_of(const Case& the_case, const std::vector<Fault>& faults) {
  std::string text;
  const std::size_t named = std::min(judged_count(Judged::most_named), faults.size());
  for (std::size_t i = 0; i < named; ++i) {
    if (i > 0) text += "; ";
    std::string words = fault_words(the_case, faults[i]);
    if (words.size() > 1 && words[0] >= 'A' && words[0] <= 'Z' && words[1] >= 'a')
      words[0] = static_cast<char>(words[0] - 'A' + 'a');
    text += words;
  }
  if (faults.size() > named) text.append(" and ").append(std::to_string(faults.size() - named)).append(" more");
  return text;
}

}  // namespace

Receipt judge_answer(const Case& the_case, double emf_v, const Check& check, const Answer& answer) {
  if (answer.kind == AnswerKind::word) {
    const bool known =
        std::any_of(check.choices.begin(), check.choices.end(), [&](const Choice& c) { return c.key == answer.key; });
    return known ? Receipt{true, {}} : Receipt{false, "That is not one of the answers to this check."};
  }
  if (answer.kind != AnswerKind::reading) return {true, {}};
  if (!check.takes_reading) return {false, "This check is answered in words."};
  if (std::isnan(answer.reading)) return {false, "That is not a number."};
  if (check.kind == CheckKind::ohms) {
    if (answer.reading < 0.0)
      return {false,
              "Ohms are never below zero. A minus here means that the part is live: pull the fuse and prove it dead."};
    return {true, {}};
  }
  if (std::isinf(answer.reading)) return {false, "That is not a voltage."};
  return judge_volts(the_case, emf_v, check, answer.reading);
}

std::string outlook_words(const Case& the_case, const Outlook& outlook) {
  std::string text;
  if (!outlook.raised.empty()) text = joined({"Points at: ", list_of(the_case, outlook.raised), "."});
  if (!outlook.cleared.empty())
    text.append(text.empty() ? "" : " ").append(joined({"Clears: ", list_of(the_case, outlook.cleared), "."}));
  return text.empty() ? std::string("Changes little.") : text;
}

std::string why_words(const Case& the_case, const std::vector<Outlook>& all) {
  // The likeliest answer that clears something.
  const Outlook* best = nullptr;
  for (const Outlook& each : all) {
    if (!each.cleared.empty() && (best == nullptr || each.probability > best->probability)) best = &each;
  }
  if (best == nullptr) return "It tells the most for the minutes it takes.";
  return joined({"It tells the most for the minutes it takes. It can clear: ", list_of(the_case, best->cleared), "."});
}

std::string remedy_words(double probability) {
  return joined({"Sure enough to start: ", units::percent_text(std::min(probability, 0.999)), "."});
}

std::string evidence_words(const Case& the_case, const Check& check, const Answer& seen,
                           std::optional<double> predicted) {
  std::string what;
  if (check.kind == CheckKind::volts || check.kind == CheckKind::glow || check.kind == CheckKind::ohms) {
    const std::string_view tool = check.kind == CheckKind::glow ? "Lamp" : "Meter";
    what = joined({tool, ", ", spot_words(the_case, check.red), " to ", spot_words(the_case, check.black)});
    if (check.state.plugged != Plugged::nothing) {
      what += joined({", ",
                      check.state.plugged == Plugged::lamp  ? "lamp"
                      : check.state.plugged == Plugged::own ? "failed device"
                                                            : "device",
                      " in ", letter_of(the_case, check.state.at)});
    }
  } else {
    what = check.question;
    if (!what.empty() && (what.back() == '.' || what.back() == '?')) what.pop_back();
  }
  std::string told;
  if (seen.kind == AnswerKind::reading) {
    told = check.kind == CheckKind::ohms ? ohms(seen.reading) : volts(seen.reading);
  } else {
    for (const Choice& choice : check.choices) {
      if (choice.key == seen.key) told = choice.words;
    }
  }
  std::string text = joined({what, ": ", told, " seen"});
  if (predicted)
    text += joined({", ", check.kind == CheckKind::ohms ? ohms(*predicted) : volts(*predicted), " predicted"});
  return text + ".";
}

}  // namespace diagnosis
