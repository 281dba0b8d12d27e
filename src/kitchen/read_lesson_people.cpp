// Who is in the room: cooks one by one or a whole class in short, and the adults.
#include <algorithm>

#include "kitchen/field_lists.h"
#include "kitchen/lesson_reading.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

/// Sizes of the groups a class makes: an odd pupil makes one pair a three; threes that do not come
/// out end in pairs.
std::vector<int> group_sizes(int pupils, int in) {
  if (pupils < in) return {pupils};
  std::vector<int> sizes(static_cast<std::size_t>(pupils / in), in);
  const int left = pupils % in;
  if (in == 2 && left == 1) sizes.back() = 3;
  if (in == 3 && left == 2) sizes.push_back(2);
  if (in == 3 && left == 1) {
    sizes.back() = 2;
    sizes.push_back(2);
  }
  return sizes;
}

class PeopleReader {
 public:
  explicit PeopleReader(LessonReading& reading)
      : r_(reading), used_(reading.lesson.room.places.size(), 0) {}

  void read() {
    const bool listed = r_.f.find("cooks") != nullptr;
    const bool short_form = r_.f.find("class") != nullptr;
    if (listed && short_form) {
      r_.refuse("lesson.cooks_and_class", r_.f.where("class"),
                "The lesson lists its cooks and also gives a class.", "Keep one of the two.");
    } else if (listed) {
      cooks();
    } else if (short_form) {
      whole_class();
    } else {
      r_.refuse("lesson.no_cooks", "", "The lesson has no cooks.",
                "Add \"cooks\", or \"class\": { \"pupils\": 24, \"in\": \"pairs\", \"dishes\": "
                "[\"dhal\"] }.");
    }
    adults();
  }

 private:
  LessonReading& r_;
  std::vector<int> used_;  // cooks at each place

  Lesson& lesson() { return r_.lesson; }

  std::vector<int> dishes(const Fields& f) {
    std::vector<int> out;
    if (f.find("dishes") == nullptr) f.missing("dishes");
    for (const Entry& entry : f.list("dishes", 20)) {
      if (!f.is_text(entry)) continue;
      const auto version = r_.dish_version(entry.node->text, entry.where);
      if (version) out.push_back(r_.keys[version->first].index[version->second]);
    }
    return out;
  }

  void whole_class() {
    const Fields f(r_.reader, *r_.f.find("class"), r_.f.where("class"), "The class", kClassFields);
    if (!f.is_object()) return;
    const int pupils = f.whole("pupils", 1, 200, std::nullopt);
    const int in = f.word("in", kGroupWords, std::optional<int>{});
    const std::vector<int> dishes_of_all = dishes(f);
    if (!r_.reader.clean()) return;
    const std::vector<int> sizes = group_sizes(pupils, in);
    const std::size_t places = used_.size();
    if (sizes.size() > places && !r_.shared_places) return too_few_places(sizes.size(), f.where());
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      const std::size_t place = i % places;
      Cook cook;
      cook.name = lesson().room.places[place].name;
      if (i >= places) cook.name += say(" (", i / places + 1, ")");
      cook.people = sizes[i];
      cook.place = static_cast<int>(place);
      cook.dishes = dishes_of_all;
      cook.leaves = lesson().bell;
      lesson().cooks.push_back(std::move(cook));
    }
  }

  void too_few_places(std::size_t cooks, const std::string& where) {
    r_.refuse("lesson.too_few_places", where,
              say("There are ", cooks, " cooks and ", lesson().room.name, " has ",
                  base::counted(static_cast<long long>(used_.size()), "place", "places"), "."),
              "Put pupils in larger groups, or add \"share_places\": true so that two cooks may "
              "use one place.");
  }

  void cooks() {
    const std::vector<Entry> entries = r_.f.list("cooks", 200);
    if (entries.empty())
      r_.refuse("lesson.no_cooks", r_.f.where("cooks"), "The lesson has no cooks.",
                "List at least one.");
    std::vector<bool> placed;
    std::vector<std::string> where;
    for (const Entry& entry : entries) {
      const Node* name = entry.node->find("name");
      const bool known = name != nullptr && name->kind == Node::Kind::kText;
      const Fields f(r_.reader, *entry.node, entry.where,
                     known ? say("The cook ", in_quotes(name->text)) : "A cook", kCookFields);
      if (!f.is_object()) continue;
      placed.push_back(f.find("place") != nullptr);
      where.push_back(f.where());
      lesson().cooks.push_back(cook(f));
    }
    if (!r_.reader.clean()) return;
    if (lesson().cooks.size() > used_.size() && !r_.shared_places)
      return too_few_places(lesson().cooks.size(), r_.f.where("cooks"));
    for (std::size_t i = 0; i < placed.size(); ++i) {
      if (placed[i]) take_place(lesson().cooks[i], where[i]);
    }
    for (std::size_t i = 0; i < placed.size(); ++i) {
      if (placed[i]) continue;
      const auto freest = std::min_element(used_.begin(), used_.end());
      lesson().cooks[i].place = static_cast<int>(freest - used_.begin());
      take_place(lesson().cooks[i], where[i]);
    }
  }

  Cook cook(const Fields& f) {
    Cook cook;
    cook.name = f.text("name", 60);
    cook.people = f.whole("people", 1, 3, 1);
    cook.dishes = dishes(f);
    for (const Allergen allergen : f.words("avoids", kAllergenWords)) cook.avoids.insert(allergen);
    cook.pace = f.number("pace", 0.5, 2, 1);
    cook.arrives = r_.time_or(f, "arrives", Seconds{0});
    cook.leaves = r_.time_or(f, "leaves", lesson().bell);
    for (const Entry& entry : f.list("away", 20)) {
      const Fields span(r_.reader, *entry.node, entry.where, say(f.what(), ", while one is away"),
                        kSpanFields);
      if (span.is_object())
        cook.away.push_back({r_.needed_time(span, "from"), r_.needed_time(span, "to")});
    }
    if (f.find("place") != nullptr) {
      std::vector<std::string> places;
      for (const Place& place : lesson().room.places) places.push_back(place.name);
      const std::string name = f.text("place", 30);
      if (!name.empty())
        cook.place = r_.named(name, places, "place", "lesson.unknown_place", f.where("place"))
                         .value_or(0);
    }
    return cook;
  }

  void take_place(const Cook& cook, const std::string& where) {
    const auto place = static_cast<std::size_t>(cook.place);
    if (++used_[place] < 2 || r_.shared_places) return;
    const auto other = std::find_if(
        lesson().cooks.begin(), lesson().cooks.end(),
        [&](const Cook& c) { return c.place == cook.place && c.name != cook.name; });
    r_.refuse("lesson.place_twice", below(where, "place"),
              say("The place ", in_quotes(lesson().room.places[place].name), " is given to ",
                  in_quotes(cook.name), " and to ",
                  other == lesson().cooks.end() ? "another" : in_quotes(other->name), "."),
              "Give one of them another place, or add \"share_places\": true.");
  }

  void adults() {
    if (r_.f.find("adults") == nullptr) {
      lesson().adults = {{"Teacher", true, every_hazard(), Seconds{0}, lesson().bell}};
      return;
    }
    const std::vector<Entry> entries = r_.f.list("adults", 50);
    for (const Entry& entry : entries) {
      const Node* name = entry.node->find("name");
      const bool known = name != nullptr && name->kind == Node::Kind::kText;
      const Fields f(r_.reader, *entry.node, entry.where,
                     known ? say("The adult ", in_quotes(name->text)) : "An adult", kAdultFields);
      if (!f.is_object()) continue;
      Adult adult;
      adult.name = f.text("name", 60);
      if (adult.name == "nobody") {
        r_.refuse("lesson.adult_called_nobody", f.where("name"),
                  "An adult cannot be called 'nobody'; that word means no adult.",
                  "Write the adult's name.");
      }
      adult.leads = f.flag("leads", entries.size() == 1);
      adult.may_watch = f.words("may_watch", kHazardWords);
      if (f.find("may_watch") == nullptr && adult.leads) adult.may_watch = every_hazard();
      adult.from = r_.time_or(f, "from", Seconds{0});
      adult.to = r_.time_or(f, "to", lesson().bell);
      lesson().adults.push_back(std::move(adult));
    }
  }

  static std::vector<Hazard> every_hazard() {
    std::vector<Hazard> out;
    for (const auto& each : kHazardWords) out.push_back(each.value);
    return out;
  }
};

}  // namespace

void read_people(LessonReading& reading) { PeopleReader(reading).read(); }

}  // namespace kitchen
