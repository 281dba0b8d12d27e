// Holds a JSON value against a published JSON Schema, in the words of JSON Schema that the schemas
// of schemas/ use; a key the schema does not name is a fault.
#pragma once

#include <algorithm>
#include <fstream>
#include <regex>
#include <string>

#include <nlohmann/json.hpp>

namespace tests {

using Json = nlohmann::json;

inline Json schema(const std::string& name) {
  std::ifstream in(std::string(BENCHBELL_SOURCE_DIR) + "/schemas/" + name + ".schema.json");
  return Json::parse(in);
}

inline bool is_type(const Json& value, const std::string& type) {
  if (type == "object") return value.is_object();
  if (type == "array") return value.is_array();
  if (type == "string") return value.is_string();
  if (type == "integer") return value.is_number_integer();
  if (type == "number") return value.is_number();
  if (type == "boolean") return value.is_boolean();
  return type == "null" && value.is_null();
}

/// What is wrong with the value, and where; empty = nothing.
inline std::string schema_fault(const Json& all, const Json& rule, const Json& value,
                                const std::string& where) {
  if (rule.contains("$ref")) {
    const std::string ref = rule["$ref"];
    if (auto f = schema_fault(all, all["$defs"][ref.substr(8)], value, where); !f.empty()) return f;
  }
  if (rule.contains("anyOf")) {
    for (const Json& one : rule["anyOf"]) {
      if (schema_fault(all, one, value, where).empty()) return "";
    }
    return where + " is none of its kinds";
  }
  if (rule.contains("const") && rule["const"] != value) return where + " is not its constant";
  if (rule.contains("enum") &&
      std::find(rule["enum"].begin(), rule["enum"].end(), value) == rule["enum"].end())
    return where + " is not one of its words: " + value.dump();
  if (rule.contains("type")) {
    const Json types = rule["type"].is_array() ? rule["type"] : Json::array({rule["type"]});
    if (std::none_of(types.begin(), types.end(), [&](const Json& t) { return is_type(value, t); }))
      return where + " has the wrong type";
  }
  if (rule.contains("pattern") &&
      !std::regex_match(value.get<std::string>(), std::regex(rule["pattern"].get<std::string>())))
    return where + " does not look like " + rule["pattern"].get<std::string>();
  if (value.is_object() && rule.contains("properties")) {
    for (const Json& key : rule["required"]) {
      if (!value.contains(key.get<std::string>()))
        return where + " lacks " + key.get<std::string>();
    }
    for (const auto& [key, inside] : value.items()) {
      if (!rule["properties"].contains(key)) return where + " has the unknown key " + key;
      if (auto f = schema_fault(all, rule["properties"][key], inside, where + "/" + key);
          !f.empty())
        return f;
    }
  }
  if (value.is_object() && rule.contains("additionalProperties") &&
      rule["additionalProperties"].is_object()) {
    for (const auto& [key, inside] : value.items()) {
      if (auto f = schema_fault(all, rule["additionalProperties"], inside, where + "/" + key);
          !f.empty())
        return f;
    }
  }
  if (value.is_array() && rule.contains("items")) {
    for (std::size_t i = 0; i < value.size(); ++i) {
      if (auto f = schema_fault(all, rule["items"], value[i], where + "/" + std::to_string(i));
          !f.empty())
        return f;
    }
  }
  return "";
}

}  // namespace tests
