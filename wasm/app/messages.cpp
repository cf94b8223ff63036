#include "app/messages.h"

#include <utility>

namespace app {

void Messages::say(std::string text, Toast::Offer offer, std::uint32_t number) {
  toast_ = Toast{std::move(text), offer, number};
  ++toast_serial_;
  host_.wake();
}

void Messages::say_problem(std::string sentence) {
  problem_ = std::move(sentence);
  toast_.reset();
  host_.wake();
}

void Messages::clear() {
  problem_.clear();
  toast_.reset();
}

void Messages::store_failed(std::string_view key, std::string_view why) {
  records_.failed(key, why);
  host_.wake();
}

void Messages::retry_store() {
  records_.retry();
  host_.wake();
}

void Messages::set_update_waiting() {
  update_waiting_ = true;
  host_.wake();
}

}  // namespace app
