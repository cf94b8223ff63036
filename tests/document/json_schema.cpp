#include "document/json_schema.h"

#include <cmath>
#include <functional>
#include <map>
#include <regex>

namespace json_schema {
namespace {

using nlohmann::json;

class Checker {
 public:
  explicit Checker(const json& root) : root_(root) {}

  std::string check(const json& schema, const json& value, const std::string& at) const {
    for (const auto& item : schema.items()) {
      const auto rule = rules().find(item.key());
      if (rule == rules().end()) return at + ": the schema uses " + item.key();
      if (std::string wrong = rule->second(*this, schema, item.value(), value, at); !wrong.empty()) return wrong;
    }
    return {};
  }

 private:
  using Rule = std::function<std::string(const Checker&, const json& schema, const json& told, const json& value, const std::string& at)>;

  bool fits(const json& schema, const json& value) const { return check(schema, value, {}).empty(); }

  static std::size_t characters(const std::string& text) {
    std::size_t count = 0;
    for (const char c : text) count += (static_cast<unsigned char>(c) & 0xC0) != 0x80 ? 1U : 0U;
    return count;
  }
  static bool is_type(const std::string& type, const json& value) {
    if (type == "object") return value.is_object();
    if (type == "array") return value.is_array();
    if (type == "string") return value.is_string();
    if (type == "boolean") return value.is_boolean();
    if (type == "integer") return value.is_number() && value.get<double>() == std::floor(value.get<double>());
    return type == "number" && value.is_number();
  }
  static std::size_t count(const Checker& self, const json& options, const json& value) {
    std::size_t fitting = 0;
    for (const json& option : options) fitting += self.fits(option, value) ? 1U : 0U;
    return fitting;
  }

  // Each keyword; those about another type than the value's say nothing of it.
  static const std::map<std::string, Rule>& rules() {
    const auto said = [](bool wrong, const std::string& at, const std::string& keyword) { return wrong ? at + ": " + keyword : std::string(); };
    const Rule nothing = [](const Checker&, const json&, const json&, const json&, const std::string&) { return std::string(); };
    static const std::map<std::string, Rule> all{
        {"$schema", nothing}, {"$defs", nothing}, {"title", nothing}, {"description", nothing},
        {"$ref", [](const Checker& self, const json&, const json& told, const json& value, const std::string& at) {
           const std::string name = told.get<std::string>().substr(std::string("#/$defs/").size());
           return self.check(self.root_.at("$defs").at(name), value, at);
         }},
        {"type", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(!is_type(told.get<std::string>(), value), at, "type");
         }},
        {"enum", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(std::find(told.begin(), told.end(), value) == told.end(), at, "enum");
         }},
        {"const", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(value != told, at, "const");
         }},
        {"required", [](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           for (const json& key : told) {
             if (value.is_object() && !value.contains(key.get<std::string>())) return at + ": no " + key.get<std::string>();
           }
           return std::string();
         }},
        {"properties", [](const Checker& self, const json&, const json& told, const json& value, const std::string& at) {
           for (const auto& item : told.items()) {
             if (!value.is_object() || !value.contains(item.key())) continue;
             if (auto wrong = self.check(item.value(), value.at(item.key()), at + "/" + item.key()); !wrong.empty()) return wrong;
           }
           return std::string();
         }},
        {"additionalProperties", [](const Checker&, const json& schema, const json& told, const json& value, const std::string& at) {
           if (told != false) return at + ": additionalProperties is not false";
           for (const auto& item : value.items()) {
             if (value.is_object() && !schema.at("properties").contains(item.key())) return at + ": " + item.key();
           }
           return std::string();
         }},
        {"minimum", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(value.is_number() && value.get<double>() < told.get<double>(), at, "minimum");
         }},
        {"maximum", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(value.is_number() && value.get<double>() > told.get<double>(), at, "maximum");
         }},
        {"minLength", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(value.is_string() && characters(value.get<std::string>()) < told.get<std::size_t>(), at, "minLength");
         }},
        {"maxLength", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(value.is_string() && characters(value.get<std::string>()) > told.get<std::size_t>(), at, "maxLength");
         }},
        {"pattern", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(value.is_string() && !std::regex_search(value.get<std::string>(), std::regex(told.get<std::string>())), at, "pattern");
         }},
        {"minItems", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(value.is_array() && value.size() < told.get<std::size_t>(), at, "minItems");
         }},
        {"maxItems", [said](const Checker&, const json&, const json& told, const json& value, const std::string& at) {
           return said(value.is_array() && value.size() > told.get<std::size_t>(), at, "maxItems");
         }},
        {"uniqueItems", [](const Checker&, const json&, const json&, const json& value, const std::string& at) {
           for (std::size_t i = 0; value.is_array() && i < value.size(); ++i) {
             for (std::size_t k = 0; k < i; ++k) {
               if (value[i] == value[k]) return at + ": uniqueItems";
             }
           }
           return std::string();
         }},
        {"items", [](const Checker& self, const json&, const json& told, const json& value, const std::string& at) {
           for (std::size_t i = 0; value.is_array() && i < value.size(); ++i) {
             if (auto wrong = self.check(told, value[i], at + "/" + std::to_string(i)); !wrong.empty()) return wrong;
           }
           return std::string();
         }},
        {"anyOf", [said](const Checker& self, const json&, const json& told, const json& value, const std::string& at) {
           return said(count(self, told, value) == 0, at, "anyOf");
         }},
        {"oneOf", [said](const Checker& self, const json&, const json& told, const json& value, const std::string& at) {
           return said(count(self, told, value) != 1, at, "oneOf");
         }},
        {"not", [said](const Checker& self, const json&, const json& told, const json& value, const std::string& at) {
           return said(self.fits(told, value), at, "not");
         }},
    };
    return all;
  }

  const json& root_;
};

}  // namespace

std::string violation(const json& schema, const json& value) { return Checker(schema).check(schema, value, ""); }

}  // namespace json_schema
