// AppState's part for tracing: the open circuit as a case, and the screen kept awake.
#include <utility>

#include "app/app_state.h"

namespace app {
namespace {

// Other circuits of the same installation on the same block: their pairs run beside ours.
std::vector<diagnosis::Neighbour> neighbours_of(const Notebook& notebook, const Stored& open) {
  std::vector<diagnosis::Neighbour> found;
  for (const Stored& other : notebook.circuits()) {
    if (!other.readable() || other.number == open.number || found.size() == diagnosis::kMaxNeighbours) continue;
    const bool same_block = other.circuit->place == open.circuit->place &&
                            other.circuit->fuse_position != open.circuit->fuse_position;
    if (same_block) found.push_back({other.circuit->name, other.circuit->fuse_position, true});
  }
  return found;
}

// The wire and fuse read off the parts that are there, over what sizing worked out. A rating is
// named only for a known wire that this fuse protects: no other may be advised.
void fit(diagnosis::Case& frame, const FittedTold& told) {
  const tables::Conductor* size = tables::conductor_by_id(told.size);
  if (size != nullptr) frame.fitted.size = frame.fitted.tail = size;
  if (told.fuse_a > 0.0) frame.fitted.fuse = units::Amperes(told.fuse_a);
  frame.fuse_told = size != nullptr && told.fuse_a > 0.0 && protects(frame.circuit, told);
}

}  // namespace

bool protects(const circuit::Circuit& circuit, const FittedTold& told) {
  if (told.size.empty() || told.fuse_a <= 0.0) return false;
  return sizing::reach(circuit, {told.size, units::Amperes(told.fuse_a)}).fuse_protects_wire;
}

Trace& AppState::trace() {
  const Stored* open = notebook_.open();
  const std::uint32_t number = open != nullptr ? open->number : kGenericCircuit;
  const std::string_view text = open != nullptr ? std::string_view(open->text) : std::string_view();
  if (trace_.follows(number, text)) return trace_;
  diagnosis::Case frame =
      diagnosis::generic_case(units() == units::Preference::us ? tables::GaugeSystem::awg : tables::GaugeSystem::metric);
  if (open != nullptr) {
    frame.circuit = *open->circuit;
    frame.neighbours = neighbours_of(notebook_, *open);
    // Where sizing found nothing that fits, the generic wire and fuse stand in for the physics,
    // and no step names a rating.
    if (const sizing::Candidate* choice = answer().choice(); choice != nullptr && choice->fuse) {
      frame.fitted = {choice->size, choice->tail, *choice->fuse};
      frame.fuse_told = true;
    }
  }
  if (const auto told = trace_.fitted(number)) fit(frame, *told);
  trace_.follow(number, text, std::move(frame));
  return trace_;
}

void AppState::delete_trace(std::uint32_t number) {
  if (trace().find_kept(number) == nullptr) return;
  trace_.forget(number);
  go(Route::at(Screen::trace));
  say("The record is deleted.", Toast::Offer::put_back_trace);
}

void AppState::export_trace(std::uint32_t number) {
  const KeptTrace* kept = trace().find_kept(number);
  if (kept == nullptr) return;
  const std::string name = "trace-" + file_stem(kept->circuit) + "-" + kept->date + ".txt";
  host_.save_file(name, "text/plain", readable_text(*kept));
  say("Saved as " + name + ".");
}

void AppState::stay_awake(bool awake) {
  if (awake == awake_) return;
  awake_ = awake;
  host_.keep_awake(awake);
}

}  // namespace app
