#include "schema_check.h"

#include <algorithm>
#include <set>
#include <stdexcept>

#include "base/clock.h"

namespace support {
namespace {

using nlohmann::json;

class Checker {
 public:
  explicit Checker(const json& root) : root_(root) {}

  void check(const json& value, const json& schema, const std::string& where) {
    if (schema.contains("$ref")) return check(value, part(schema.at("$ref")), where);
    static const std::set<std::string> kKnown{
        "type",        "required", "properties", "additionalProperties",
        "items",       "minItems", "maxItems",   "enum",
        "minimum",     "maximum",  "anyOf",      "format",
        "description", "default"};
    for (const auto& [key, unused] : schema.items())
      if (kKnown.count(key) == 0) add(where, "the schema says '" + key + "', which is not checked");
    if (schema.contains("type") && !typed(value, schema.at("type")))
      return add(where, "is " + value.dump().substr(0, 60) + " and not of type " +
                            schema.at("type").dump());
    if (schema.contains("enum") && std::find(schema.at("enum").begin(), schema.at("enum").end(),
                                             value) == schema.at("enum").end())
      add(where, value.dump() + " is not one of " + schema.at("enum").dump());
    if (schema.contains("anyOf")) any_of(value, schema.at("anyOf"), where);
    if (value.is_number()) number(value, schema, where);
    if (schema.value("format", "") == "date" && value.is_string() &&
        !base::date_in(value.get<std::string>()))
      add(where, value.dump() + " is not a date");
    if (value.is_object()) object(value, schema, where);
    if (value.is_array()) list(value, schema, where);
  }

  std::vector<std::string> take() { return std::move(out_); }

 private:
  const json& root_;
  std::vector<std::string> out_;

  void add(const std::string& where, const std::string& what) {
    out_.push_back((where.empty() ? "/" : where) + ": " + what);
  }

  const json& part(const std::string& ref) const {
    if (!ref.starts_with("#")) throw std::runtime_error("a reference out of the document: " + ref);
    return root_.at(json::json_pointer(ref.substr(1)));
  }

  static bool typed(const json& value, const json& type) {
    if (type.is_array())
      return std::any_of(type.begin(), type.end(),
                         [&](const json& each) { return typed(value, each); });
    const std::string name = type;
    if (name == "object") return value.is_object();
    if (name == "array") return value.is_array();
    if (name == "string") return value.is_string();
    if (name == "boolean") return value.is_boolean();
    if (name == "null") return value.is_null();
    if (name == "number") return value.is_number();
    if (name == "integer")
      return value.is_number() &&
             value.get<double>() ==
                 static_cast<double>(static_cast<long long>(value.get<double>()));
    throw std::runtime_error("no such type: " + name);
  }

  void any_of(const json& value, const json& choices, const std::string& where) {
    std::string why;
    for (const json& choice : choices) {
      Checker one(root_);
      one.check(value, choice, where);
      const auto wrong = one.take();
      if (wrong.empty()) return;
      why += " | " + wrong.front();
    }
    add(where, "fits none of the choices" + why);
  }

  void number(const json& value, const json& schema, const std::string& where) {
    if (schema.contains("minimum") && value.get<double>() < schema.at("minimum").get<double>())
      add(where, "is too small");
    if (schema.contains("maximum") && value.get<double>() > schema.at("maximum").get<double>())
      add(where, "is too large");
  }

  void object(const json& value, const json& schema, const std::string& where) {
    for (const json& key : schema.value("required", json::array()))
      if (!value.contains(key.get<std::string>())) add(where, "has no member " + key.dump());
    const json known = schema.value("properties", json::object());
    for (const auto& [key, member] : value.items()) {
      if (known.contains(key)) {
        check(member, known.at(key), where + "/" + key);
      } else if (schema.contains("additionalProperties")) {
        const json& more = schema.at("additionalProperties");
        if (more == false) add(where, "has a member '" + key + "' that may not be there");
        if (more.is_object()) check(member, more, where + "/" + key);
      }
    }
  }

  void list(const json& value, const json& schema, const std::string& where) {
    if (schema.contains("minItems") && value.size() < schema.at("minItems").get<std::size_t>())
      add(where, "is too short");
    if (schema.contains("maxItems") && value.size() > schema.at("maxItems").get<std::size_t>())
      add(where, "is too long");
    if (!schema.contains("items")) return;
    for (std::size_t i = 0; i < value.size(); ++i)
      check(value[i], schema.at("items"), where + "/" + std::to_string(i));
  }
};

}  // namespace

std::vector<std::string> misfits(const json& value, const json& schema, const json& root) {
  Checker checker(root);
  checker.check(value, schema, "");
  return checker.take();
}

}  // namespace support
