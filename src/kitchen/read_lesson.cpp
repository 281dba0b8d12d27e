#include <algorithm>

#include "kitchen/check_lesson.h"
#include "kitchen/document.h"
#include "kitchen/field_lists.h"
#include "kitchen/house_minutes.h"
#include "kitchen/lesson_reading.h"
#include "kitchen/parts_read.h"

namespace kitchen {

using base::in_quotes;
using base::say;

std::optional<Instant> LessonReading::instant(const Fields& fields, std::string_view key) {
  if (fields.find(key) == nullptr) return std::nullopt;
  const std::string text = fields.text(key, 40);
  if (text.empty()) return std::nullopt;
  const auto local = base::local_time_in(text);
  if (!local) {
    refuse("lesson.not_a_time", fields.where(key),
           say(fields.what(), ": ", in_quotes(text), " is not a clock time."),
           "Write \"10:50\", or \"2026-11-17T10:50\" for another day.");
    return std::nullopt;
  }
  const base::Date day = local->date.value_or(date);
  if (local->offset) return Seconds{day.days * 86400LL} + local->after_midnight - *local->offset;
  const Meaning meaning = meaning_of(lesson.zone, day, local->after_midnight);
  if (meaning.kind == LocalKind::kNever) {
    refuse("lesson.time_skipped", fields.where(key),
           say(fields.what(), ": there is no ", base::clock_text(local->after_midnight), " on ",
               base::date_text(day), "; the clocks go forward then."),
           "Write a time before or after the change.");
    return std::nullopt;
  }
  return meaning.instant;
}

std::optional<Seconds> LessonReading::time(const Fields& fields, std::string_view key) {
  const auto at = instant(fields, key);
  if (!at) return std::nullopt;
  return *at - opens;
}

Seconds LessonReading::needed_time(const Fields& fields, std::string_view key) {
  if (fields.find(key) == nullptr) fields.missing(key);
  return time(fields, key).value_or(Seconds{0});
}

std::optional<int> LessonReading::named(const std::string& name,
                                        const std::vector<std::string>& known,
                                        std::string_view noun, const char* code,
                                        const std::string& where) {
  const auto at = std::find(known.begin(), known.end(), name);
  if (at != known.end()) return static_cast<int>(at - known.begin());
  const std::string near = did_you_mean(name, known);
  refuse(code, where,
         say("The lesson has no ", noun, " called ", in_quotes(name), near.empty() ? "." : near),
         say("Write the name of ", noun.front() == 'a' ? "an " : "a ", noun, " of this lesson."));
  return std::nullopt;
}

std::vector<std::string> LessonReading::cook_names() const {
  std::vector<std::string> out;
  for (const Cook& cook : lesson.cooks) out.push_back(cook.name);
  return out;
}

std::vector<std::string> LessonReading::adult_names() const {
  std::vector<std::string> out;
  for (const Adult& adult : lesson.adults) out.push_back(adult.name);
  return out;
}

std::optional<std::pair<std::size_t, std::size_t>> LessonReading::dish_version(
    const std::string& text, const std::string& where) {
  const auto colon = text.find(':');
  std::vector<std::string> names;
  for (const DishKey& each : keys) names.push_back(each.key);
  const auto key = named(text.substr(0, colon), names, "dish", "lesson.unknown_dish", where);
  if (!key) return std::nullopt;
  const auto k = static_cast<std::size_t>(*key);
  if (colon == std::string::npos) return std::pair{k, std::size_t{0}};
  const auto begin = text.find_first_not_of(' ', colon + 1);
  const std::string wanted = begin == std::string::npos ? "" : text.substr(begin);
  std::vector<std::string> variants;
  for (const Dish& dish : keys[k].versions) variants.push_back(dish.variant);
  for (std::size_t v = 0; v < variants.size(); ++v) {
    if (variants[v] == wanted && !wanted.empty()) return std::pair{k, v};
  }
  variants.erase(variants.begin());
  const std::string near = did_you_mean(wanted, variants);
  refuse("lesson.unknown_variant", where,
         say("The dish ", in_quotes(keys[k].key), " has no variant ", in_quotes(wanted),
             near.empty() ? "." : near),
         "Write \"key: variant\" with the name of a variant in the dish's file.");
  return std::nullopt;
}

std::vector<int> LessonReading::dish_family(const std::string& text, const std::string& where) {
  const auto version = dish_version(text, where);
  if (!version) return {};
  const DishKey& key = keys[version->first];
  std::vector<int> out;
  for (std::size_t v = 0; v < key.index.size(); ++v) {
    const bool meant = text.find(':') == std::string::npos || v == version->second;
    if (meant && key.index[v] >= 0) out.push_back(key.index[v]);
  }
  if (out.empty())
    refuse("lesson.dish_not_cooked", where,
           say("No cook of this lesson cooks ", in_quotes(text), "."),
           "Name a dish that somebody cooks.");
  return out;
}

std::string path_from(const std::string& file, const std::string& path) {
  std::vector<std::string> parts;
  const auto slash = file.rfind('/');
  const std::string whole = slash == std::string::npos ? path : file.substr(0, slash + 1) + path;
  for (std::size_t at = 0; at <= whole.size();) {
    const auto end = std::min(whole.find('/', at), whole.size());
    const std::string part = whole.substr(at, end - at);
    if (part == ".." && !parts.empty() && parts.back() != ".." && !parts.back().empty())
      parts.pop_back();
    else if (part != "." && (!part.empty() || at == 0))
      parts.push_back(part);
    at = end + 1;
  }
  std::string out;
  for (std::size_t i = 0; i < parts.size(); ++i) out += (i > 0 ? "/" : "") + parts[i];
  return out;
}

namespace {

constexpr Seconds kLongestLesson = base::minutes(720);

class LessonReader {
 public:
  LessonReader(Reader& reader, const Fields& f, const Loader& loader, PartsRead* parts)
      : loader_(loader), parts_(parts), r_{reader, f, {}, {}, {}, {}, false} {}

  std::optional<Lesson> read() {
    const Fields& f = r_.f;
    Lesson& lesson = r_.lesson;
    lesson.title = f.text("title", 120);
    times();
    lesson.year = f.whole("year", 1, 13, std::nullopt);
    lesson.purpose = f.word("purpose", kPurposeWords, std::optional<Purpose>{});
    lesson.timelines = f.word("timelines", kTimelinesWords, std::optional{Timelines::kWaves});
    lesson.most_waves = f.whole("most_waves", 1, 3, 3);
    lesson.check_out = f.minutes("check_out_minutes", Seconds{0}, Seconds{0});
    lesson.opens_late = f.minutes("opens_late_minutes", Seconds{0}, Seconds{0});
    lesson.trays_at_places = f.flag("trays_at_places", false);
    lesson.taste_after_washing_up = f.flag("taste_after_washing_up", false);
    lesson.spread_before_buffer = f.flag("ready_together_first", false);
    r_.shared_places = f.flag("share_places", false);
    room();
    house_rules();
    dishes();
    // What follows refers to room, dishes and clock by name: only worth reading when those are
    // sound.
    if (!r_.reader.clean()) return std::nullopt;
    read_people(r_);
    if (!r_.reader.clean()) return std::nullopt;
    read_times(r_);
    if (!r_.reader.clean()) return std::nullopt;
    return std::move(lesson);
  }

 private:
  const Loader& loader_;
  PartsRead* parts_;
  LessonReading r_;

  void times() {
    const Fields& f = r_.f;
    Lesson& lesson = r_.lesson;
    lesson.zone = f.text_or("zone", "Europe/London", 60);
    if (!known_zone(lesson.zone)) {
      r_.refuse("lesson.unknown_zone", f.where("zone"),
                say("There is no time zone ", in_quotes(lesson.zone), "."),
                "Write a name like \"Europe/London\".");
      lesson.zone = "UTC";
    }
    lesson.date = f.text("date", 10);
    const auto date = base::date_in(lesson.date);
    if (!date && !lesson.date.empty())
      r_.refuse("lesson.not_a_date", f.where("date"),
                say(in_quotes(lesson.date), " is not a date."),
                "Write year, month and day: \"2026-11-17\".");
    for (const std::string_view key : {"from", "to"}) {
      if (f.find(key) == nullptr) f.missing(key);
    }
    if (!date) return;
    r_.date = *date;
    const auto opens = r_.instant(f, "from");
    const auto bell = r_.instant(f, "to");
    if (!opens) return;
    const LocalMoment local = local_at(lesson.zone, *opens);
    if (base::date_text(local.date) != lesson.date || local.after_midnight.count() % 60 != 0 ||
        meaning_of(lesson.zone, local.date, local.after_midnight).instant != *opens) {
      r_.refuse("lesson.opening_not_on_the_day", f.where("from"),
                "The lesson must open on its date, on a whole minute, at the first of two equal "
                "clock times.",
                "Write the opening as a plain clock time, such as \"10:50\".");
    }
    lesson.opens_minute = static_cast<int>(local.after_midnight.count() / 60);
    r_.opens = *opens;
    if (!bell) return;
    lesson.bell = *bell - *opens;
    if (lesson.bell <= Seconds{0}) {
      r_.refuse("lesson.bell_before_start", f.where("to"),
                say("The bell at ", f.text("to", 40), " is not after the start at ",
                    f.text("from", 40), "."),
                "Write a later bell, with its date if it is on another day.");
    } else if (lesson.bell > kLongestLesson) {
      r_.refuse(
          "lesson.too_long", f.where("to"),
          say("The lesson lasts ", base::minutes_text(lesson.bell),
              "; the longest that can be planned is ", base::minutes_text(kLongestLesson), "."),
          "Check the bell, or split the day into lessons.");
    }
  }

  /// What stands at a place of the lesson, there or in a file of its own. `read` makes it of the
  /// document's tree.
  template <class Part, class Read>
  std::optional<Part> part(const Node& node, const std::string& where, std::string_view noun,
                           DocumentKind wanted, const Read& read) {
    if (node.kind != Node::Kind::kText) {
      if (!check_header(r_.reader, node, where, wanted)) return std::nullopt;
      Reader reader(r_.reader.file(), r_.reader.problems());
      return read(reader, node, where);
    }
    const std::string& path = node.text;
    if (base::blank(path) || path.front() == '/' || path.find('\\') != std::string::npos ||
        path.find(':') != std::string::npos) {
      r_.refuse("lesson.path_not_relative", where,
                say("The path ", in_quotes(path), " of the ", noun, " cannot be used."),
                "Write a path from the lesson's own file, with /, such as "
                "\"../rooms/food-room-2.json\".");
      return std::nullopt;
    }
    const std::string file = path_from(r_.reader.file(), path);
    const base::Result<std::string> text = loader_(file);
    if (!text) {
      for (const base::Problem& problem : text.problems()) {
        r_.refuse("lesson.file_not_read", where,
                  say("The file ", in_quotes(path), " of the ", noun,
                      " cannot be read: ", problem.message),
                  problem.remedy.empty() ? "Check the path." : problem.remedy);
      }
      return std::nullopt;
    }
    if (parts_ != nullptr) {
      if (const auto before = parts_->get<Part>(file, text.value())) return *before;
    }
    const std::size_t problems = r_.reader.problems().size();
    Reader reader(file, r_.reader.problems());
    auto tree = parse_document(text.value(), reader, wanted);
    if (!tree) return std::nullopt;
    std::optional<Part> made = read(reader, *tree, "");
    if (made && parts_ != nullptr && r_.reader.problems().size() == problems)
      parts_->put(file, text.value(), *made);
    return made;
  }

  void room() {
    const Node* node = r_.f.find("room");
    if (node == nullptr) return r_.f.missing("room");
    if (auto room = part<Room>(*node, r_.f.where("room"), "room", DocumentKind::kRoom, room_of))
      r_.lesson.room = std::move(*room);
  }

  void house_rules() {
    r_.lesson.rules = usual_house_rules();
    const Node* node = r_.f.find("house_rules");
    if (node == nullptr) return;
    if (auto rules = part<HouseRules>(*node, r_.f.where("house_rules"), "house rules",
                                      DocumentKind::kHouseRules, house_rules_of))
      r_.lesson.rules = std::move(*rules);
  }

  void dishes() {
    const Node* node = r_.f.find("dishes");
    if (node == nullptr) return r_.f.missing("dishes");
    if (node->kind != Node::Kind::kObject || node->items.empty()) {
      r_.refuse("lesson.no_dishes", r_.f.where("dishes"), "The lesson has no dishes.",
                "Write { \"dhal\": \"lentil-dhal.json\" } with a key for each dish.");
      return;
    }
    if (node->items.size() > 100) {
      r_.refuse("field.too_many", r_.f.where("dishes"),
                say("The lesson has ", node->items.size(), " dishes; there is room for 100."),
                "Leave out what is not cooked.");
      return;
    }
    for (std::size_t i = 0; i < node->items.size(); ++i) {
      const std::string where = below(r_.f.where("dishes"), node->keys[i]);
      if (!is_id(node->keys[i]))
        r_.refuse("field.not_an_id", where,
                  say(in_quotes(node->keys[i]), " cannot be the key of a dish."),
                  "Use small letters a to z, digits and hyphens, as in 'dhal'.");
      if (auto versions = part<std::vector<Dish>>(node->items[i], where,
                                                  say("dish ", in_quotes(node->keys[i])),
                                                  DocumentKind::kDish, dishes_of))
        r_.keys.push_back({node->keys[i], std::move(*versions), {}});
    }
    if (r_.reader.clean()) number_dishes();
  }

  /// Gives every version somebody cooks its index. A dish nobody cooks stays as written.
  void number_dishes() {
    std::vector<std::vector<bool>> cooked;
    for (DishKey& key : r_.keys) cooked.emplace_back(key.versions.size(), false);
    base::Problems unheard;  // told when the cooks themselves are read
    Reader quiet(r_.reader.file(), unheard);
    LessonReading names{quiet, r_.f, {}, {}, {}, r_.keys, false};
    const auto mark = [&](const Node* cook) {
      const Node* list = cook == nullptr ? nullptr : cook->find("dishes");
      if (list == nullptr || list->kind != Node::Kind::kList) return;
      for (const Node& dish : list->items) {
        if (dish.kind != Node::Kind::kText) continue;
        if (const auto version = names.dish_version(dish.text, ""))
          cooked[version->first][version->second] = true;
      }
    };
    mark(r_.f.find("class"));
    if (const Node* cooks = r_.f.find("cooks")) {
      for (const Node& cook : cooks->items) mark(&cook);
    }
    for (std::size_t k = 0; k < r_.keys.size(); ++k) {
      DishKey& key = r_.keys[k];
      const bool nobody = std::find(cooked[k].begin(), cooked[k].end(), true) == cooked[k].end();
      if (nobody) cooked[k][0] = true;
      for (std::size_t v = 0; v < key.versions.size(); ++v) {
        key.index.push_back(cooked[k][v] ? static_cast<int>(r_.lesson.dishes.size()) : -1);
        if (cooked[k][v]) r_.lesson.dishes.push_back(key.versions[v]);
      }
    }
  }
};

/// check() speaks of the lesson written out in full; a short form is where its parts come from.
std::string place_in_file(const Fields& f, const std::string& where) {
  const auto within = [&](std::string_view part) {
    return where.starts_with(part) && (where.size() == part.size() || where[part.size()] == '/');
  };
  if (within("/cooks") && f.find("cooks") == nullptr) return "/class";
  if (within("/adults") && f.find("adults") == nullptr) return "";
  if (within("/sittings") && f.find("sittings") == nullptr)
    return f.find("serve") != nullptr ? "/serve" : "";
  return where;
}

}  // namespace

base::Result<Lesson> read_lesson(std::string_view text, std::string file_name, const Loader& loader,
                                 PartsRead* parts) {
  base::Problems problems;
  Reader reader(std::move(file_name), problems);
  const auto node = parse_document(text, reader, DocumentKind::kLesson);
  if (!node) return problems;
  const Fields f(reader, *node, "", "The lesson", kLessonFields);
  auto lesson = LessonReader(reader, f, loader, parts).read();
  if (!lesson) return problems;
  for (base::Problem& problem : check(*lesson)) {
    reader.add(std::move(problem.code), place_in_file(f, problem.where), std::move(problem.message),
               std::move(problem.remedy));
  }
  if (!reader.clean()) return problems;
  return std::move(*lesson);
}

}  // namespace kitchen
