// A door that only writes down: which keys an object of the file has, needed and not, and the
// words of each choice, as core/document/*_fields.h name them.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "document/vehicle_fields.h"

namespace field_lister {

struct Keys {
  std::set<std::string> needed;
  std::set<std::string> optional;
};
struct Listed {
  std::map<std::string, Keys> objects;                       // by object: "outlet"
  std::map<std::string, std::set<std::string>> words;        // by object and key: "outlet.point"
};

class Lister {
 public:
  Lister(std::string name, Listed& listed) : name_(std::move(name)), listed_(listed) { listed_.objects[name_]; }

  template <class T> void text(const char* key, T&) { needed(key); }
  template <class T> void text_or(const char* key, T&, std::string_view) { optional(key); }
  template <class T> void maybe_text(const char* key, T&) { optional(key); }
  template <class T> void number(const char* key, T&) { needed(key); }
  template <class T> void number_or(const char* key, T&, double) { optional(key); }
  template <class T> void maybe_number(const char* key, T&) { optional(key); }
  template <class T> void whole(const char* key, T&) { needed(key); }
  template <class T> void whole_or(const char* key, T&, T) { optional(key); }
  template <class T> void flag(const char* key, T&) { needed(key); }
  template <class T> void flag_or(const char* key, T&, bool) { optional(key); }
  template <class T> void quantity(const char* key, T&) { needed(key); }
  template <class T> void quantity_or(const char* key, T&, double) { optional(key); }
  template <class T> void maybe_quantity(const char* key, T&) { optional(key); }
  template <class T> void word(const char* key, T&) { needed(key); words<T>(key); }
  template <class T> void word_or(const char* key, T&, T) { optional(key); words<T>(key); }
  template <class T> void maybe_word(const char* key, std::optional<T>&) { optional(key); words<T>(key); }
  template <class T> void rating(const char* a, const char* w, T&) { optional(a); optional(w); }
  template <class T> void texts(const char* key, T&) { needed(key); }
  template <class T> void numbers(const char* key, T&) { needed(key); }
  template <class Fields> void object(const char* key, Fields fields) { needed(key); enter(key, fields); }
  template <class T, class Fields> void maybe_object(const char* key, std::optional<T>& value, Fields fields) {
    optional(key);
    enter(key, [&](Lister& inside) { fields(inside, value.emplace()); });
  }
  template <class T, class Fields> void list(const char* key, const char* item, std::vector<T>& values, Fields fields) {
    needed(key);
    enter(item, [&](Lister& inside) { fields(inside, values.emplace_back()); });
  }
  template <class T, class Fields>
  void list_or_none(const char* key, const char* item, std::vector<T>& values, Fields fields) {
    optional(key);
    enter(item, [&](Lister& inside) { fields(inside, values.emplace_back()); });
  }
  template <class LoadFields, class DeviceFields>
  void load_or_devices(const char* load_key, const char* devices_key, std::vector<circuit::Device>& devices,
                       LoadFields load_fields, DeviceFields device_fields) {
    optional(load_key);
    enter(load_key, [&](Lister& inside) { load_fields(inside, devices.front().load); });
    list_or_none(devices_key, "device", devices, device_fields);
  }

 private:
  // An object is called by its key, or as an item of a list; where two differ under one key, not so.
  std::string called(const std::string& key) const {
    if (name_ == "plan" && key == "wiring") return "plan_wiring";
    if (name_ == "built" && key == "circuit") return "plan";
    return key;
  }
  template <class Fields> void enter(const std::string& key, Fields fields) {
    Lister inside(called(key), listed_);
    fields(inside);
  }
  template <class T> void words(const char* key) {
    for (const std::string_view word : document::all_words<T>()) listed_.words[name_ + "." + key].insert(std::string(word));
  }
  void needed(const char* key) { listed_.objects[name_].needed.insert(key); }
  void optional(const char* key) { listed_.objects[name_].optional.insert(key); }

  std::string name_;
  Listed& listed_;
};

// Of both formats.
inline const Listed& listed() {
  static const Listed all = [] {
    Listed made;
    vehicle::Vehicle vehicle;
    Lister in_vehicle("vehicle", made);
    document::vehicle_fields(in_vehicle, vehicle);
    circuit::Circuit circuit;
    Lister in_circuit("circuit_with_supply", made);
    document::circuit_fields(in_circuit, circuit, document::Extent::with_supply);
    return made;
  }();
  return all;
}

}  // namespace field_lister
