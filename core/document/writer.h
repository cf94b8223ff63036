// The door that fields go out through, and the text that comes of it. Private to this room.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "circuit/circuit.h"
#include "document/words.h"

namespace document {

using Json = nlohmann::ordered_json;

// A whole number is written without ".0"; any other with the digits that give it back exactly.
Json json_number(double number);

class Writer {
 public:
  explicit Writer(Json& object) : object_(object) {}

  void text(const char* key, const std::string& value) { object_[key] = value; }
  void text_or(const char* key, const std::string& value, std::string_view usual) {
    if (value != usual) text(key, value);
  }
  void maybe_text(const char* key, const std::optional<std::string>& value) {
    if (value) text(key, *value);
  }
  void number(const char* key, double value) { object_[key] = json_number(value); }
  void number_or(const char* key, double value, double usual) {
    if (!is(value, usual)) number(key, value);
  }
  void maybe_number(const char* key, const std::optional<double>& value) {
    if (value) number(key, *value);
  }
  template <class Whole>
  void whole(const char* key, Whole value) { object_[key] = value; }
  template <class Whole>
  void whole_or(const char* key, Whole value, Whole usual) {
    if (value != usual) whole(key, value);
  }
  void flag(const char* key, bool value) { object_[key] = value; }
  void flag_or(const char* key, bool value, bool usual) {
    if (value != usual) flag(key, value);
  }
  template <class Quantity>
  void quantity(const char* key, Quantity value) { number(key, value.number()); }
  template <class Quantity>
  void quantity_or(const char* key, Quantity value, double usual) { number_or(key, value.number(), usual); }
  template <class Quantity>
  void maybe_quantity(const char* key, const std::optional<Quantity>& value) {
    if (value) quantity(key, *value);
  }
  template <class Choice>
  void word(const char* key, Choice value) { object_[key] = std::string(word_of(value)); }
  template <class Choice>
  void word_or(const char* key, Choice value, Choice usual) {
    if (value != usual) word(key, value);
  }
  template <class Choice>
  void maybe_word(const char* key, const std::optional<Choice>& value) {
    if (value) word(key, *value);
  }
  void rating(const char* amperes_key, const char* watts_key, const circuit::Load& load) {
    number(load.rating_in_watts ? watts_key : amperes_key, load.rating);
  }
  void texts(const char* key, const std::vector<std::string>& values) { object_[key] = values; }
  void numbers(const char* key, const std::vector<double>& values) {
    Json list = Json::array();
    for (const double value : values) list.push_back(json_number(value));
    object_[key] = std::move(list);
  }
  template <class Fields>
  void object(const char* key, Fields fields) {
    Json inside = Json::object();
    Writer writer(inside);
    fields(writer);
    object_[key] = std::move(inside);
  }
  template <class T, class Fields>
  void maybe_object(const char* key, const std::optional<T>& value, Fields fields) {
    if (value) object(key, [&value, &fields](Writer& inside) { fields(inside, *value); });
  }
  template <class T, class Fields>
  void list(const char* key, const char* /*item*/, const std::vector<T>& values, Fields fields) {
    Json list = Json::array();
    for (const T& value : values) {
      Json inside = Json::object();
      Writer writer(inside);
      fields(writer, value);
      list.push_back(std::move(inside));
    }
    object_[key] = std::move(list);
  }
  template <class T, class Fields>
  void list_or_none(const char* key, const char* item, const std::vector<T>& values, Fields fields) {
    if (!values.empty()) list(key, item, values, fields);
  }
  template <class LoadFields, class DeviceFields>
  void load_or_devices(const char* load_key, const char* devices_key, const std::vector<circuit::Device>& devices,
                       LoadFields load_fields, DeviceFields device_fields) {
    circuit::Device only_load;
    if (!devices.empty()) only_load.load = devices.front().load;
    if (devices.size() == 1 && devices.front() == only_load) {
      object(load_key, [&](Writer& inside) { load_fields(inside, only_load.load); });
    } else {
      list_or_none(devices_key, "device", devices, device_fields);
    }
  }

 private:
  // -0.0 is not the usual 0.0: every number comes back to the bit.
  static bool is(double value, double usual);

  Json& object_;
};

// A line per key, and a line per outlet and the like: what changed shows as the changed line.
std::string text_of(const Json& root);

}  // namespace document
