// A YAML file as a JSON value, read by libyaml: for holding the written contract against the
// program.
#pragma once

#include <string>

#include <nlohmann/json.hpp>

namespace support {

/// The file's only document. Plain scalars become numbers, true, false and null where they are
/// those (YAML 1.2 core schema); quoted ones stay texts. Throws std::runtime_error for what is not
/// YAML, for anchors and for tags.
nlohmann::json yaml_file(const std::string& path);

}  // namespace support
