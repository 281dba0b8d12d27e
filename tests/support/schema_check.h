// Does a value have the shape that a schema says? The part of JSON Schema 2020-12 that
// api/openapi.yaml uses: type, required, properties, additionalProperties, items, minItems,
// maxItems, enum, minimum, maximum, anyOf, $ref and the format "date". Any other keyword is a
// misfit, so that none is believed to be checked.
#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

namespace support {

/// Every place where it does not fit, with what was expected; empty when it fits.
/// `root`: the document whose parts the schema's `$ref` name ("#/components/schemas/Me").
std::vector<std::string> misfits(const nlohmann::json& value, const nlohmann::json& schema,
                                 const nlohmann::json& root);

}  // namespace support
