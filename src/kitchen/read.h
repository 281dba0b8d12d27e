// Reading and writing the files a school keeps: dishes, rooms, house rules, lessons. docs/files.md
// is the format.
//
// read_dish(text, "lentil-dhal.json") is a whole, checked Dish, or everything that is wrong with
// the file in a teacher's words. Text in, values out: files are opened by whoever calls.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/lesson.h"

namespace kitchen {

enum class DocumentKind : std::int8_t { kDish, kRoom, kHouseRules, kLesson };

/// What a file says it is. Errors: file.*.
base::Result<DocumentKind> document_kind(std::string_view text, std::string file_name);

/// The dish as written. All its variants are checked too.
base::Result<Dish> read_dish(std::string_view text, std::string file_name);
/// The dish as written, then each of its variants in the order of the file.
base::Result<std::vector<Dish>> read_dish_variants(std::string_view text, std::string file_name);
base::Result<Room> read_room(std::string_view text, std::string file_name);
base::Result<HouseRules> read_house_rules(std::string_view text, std::string file_name);

/// Gives the text of another file. `path` is relative to where `file_name` is relative to: a lesson
/// "lessons/9k.json" that says "../rooms/2.json" asks for "rooms/2.json". It may begin with "../";
/// whether that is allowed is the loader's affair. A Problem of the loader is told at the place
/// that named the file.
using Loader = std::function<base::Result<std::string>(const std::string& path)>;

/// What a file means by a path: "lessons/9k.json" that says "../rooms/2.json" means "rooms/2.json".
std::string path_from(const std::string& file, const std::string& path);

class PartsRead;  // parts_read.h

/// The lesson with everything it refers to, checked by check_lesson.h. Rooms, house rules and
/// dishes whose text was read before are taken from `parts`.
base::Result<Lesson> read_lesson(std::string_view text, std::string file_name, const Loader& loader,
                                 PartsRead* parts = nullptr);

/// Canonical text: reading it again gives an equal value. Variants are dishes of their own; a
/// lesson holds everything inside. What the reader added (closing steps, defaults that depend on
/// others) is written out.
std::string write_dish(const Dish&);
std::string write_room(const Room&);
std::string write_house_rules(const HouseRules&);
std::string write_lesson(const Lesson&);

}  // namespace kitchen
