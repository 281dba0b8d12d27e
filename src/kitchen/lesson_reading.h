// Inside the lesson reader: what its parts share while a lesson is put together.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "kitchen/fields.h"
#include "kitchen/lesson.h"
#include "kitchen/zone.h"

namespace kitchen {

/// The dishes behind one key of "dishes": as written first, then its variants, with their index in
/// Lesson::dishes or -1 if no cook cooks them.
struct DishKey {
  std::string key;
  std::vector<Dish> versions;
  std::vector<int> index;
};

struct LessonReading {
  Reader& reader;
  const Fields& f;
  Lesson lesson;
  base::Date date;
  Instant opens{0};
  std::vector<DishKey> keys;
  bool shared_places = false;

  void refuse(const char* code, const std::string& where, std::string message, std::string remedy) {
    reader.add(code, where, std::move(message), std::move(remedy));
  }

  /// A clock time as seconds since the opening; nothing after a Problem or if it is absent.
  std::optional<Seconds> time(const Fields&, std::string_view key);
  Seconds time_or(const Fields& fields, std::string_view key, Seconds otherwise) {
    return time(fields, key).value_or(otherwise);
  }
  Seconds needed_time(const Fields&, std::string_view key);
  std::optional<Instant> instant(const Fields&, std::string_view key);

  /// The version "key" or "key: variant" means, as (key, version), or nothing after a Problem.
  std::optional<std::pair<std::size_t, std::size_t>> dish_version(const std::string& text,
                                                                  const std::string& where);
  /// Indices into Lesson::dishes: one for "key: variant", all versions in the lesson for "key".
  std::vector<int> dish_family(const std::string& text, const std::string& where);

  /// Index of the name among those known, or nothing after a Problem.
  std::optional<int> named(const std::string& name, const std::vector<std::string>& known,
                           std::string_view noun, const char* code, const std::string& where);
  std::vector<std::string> cook_names() const;
  std::vector<std::string> adult_names() const;
};

void read_people(LessonReading&);  ///< cooks or class, adults
void read_times(LessonReading&);   ///< windows, bans, sittings, carry-over, ovens

}  // namespace kitchen
