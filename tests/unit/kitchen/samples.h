// The sample files of this folder, whole or with one thing changed.
#pragma once

#include <string>

#include <nlohmann/json_fwd.hpp>

#include "kitchen/read.h"

namespace samples {

std::string file(const std::string& path);  ///< text of a file of the project
nlohmann::json dish();
nlohmann::json room();
nlohmann::json house_rules();
nlohmann::json lesson();  ///< with dish, room and house rules inside

/// Knows no file.
base::Result<std::string> no_files(const std::string& path);
/// Opens files of this folder's samples/.
base::Result<std::string> sample_files(const std::string& path);

/// The value, or a failed test that tells the problems.
kitchen::Dish read_dish(const nlohmann::json&);
kitchen::Lesson read_lesson(const nlohmann::json&);

/// All that is wrong with a document of that kind ("dish", "room", "house_rules", "lesson").
base::Problems problems_of(const std::string& kind, const std::string& text);

std::string told(const base::Problems&);

}  // namespace samples
