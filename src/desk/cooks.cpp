#include "desk/cooks.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "kitchen/words.h"

namespace desk {
namespace {

using kitchen::Node;

const Pupil& pupil_called(const Class& group, const std::string& name) {
  return *std::find_if(group.pupils.begin(), group.pupils.end(),
                       [&](const Pupil& pupil) { return pupil.name == name; });
}

bool meets(const kitchen::Allergens& a, const kitchen::Allergens& b) {
  return std::any_of(a.begin(), a.end(), [&](kitchen::Allergen each) { return b.count(each) > 0; });
}

/// The first version without what must be avoided; as written when there is none.
const kitchen::Dish& version_for(const KeyedDish& dish, const kitchen::Allergens& avoided) {
  for (const kitchen::Dish& version : dish.versions) {
    if (!meets(kitchen::allergens(version), avoided)) return version;
  }
  return dish.versions.front();
}

}  // namespace

Cooks cooks_of(const Class& group, const kitchen::Room& room, const Seating& seating,
               const std::vector<KeyedDish>& dishes) {
  Cooks out{Node::list(), Node::object(), seating.notes};
  std::map<std::string, int> used;
  for (const Seat& seat : seating.seats) {
    std::string name = cook_name(seat);
    if (used[name]++ > 0) name += base::say(" (", used[name], ")");
    Node& cook = out.list.add(Node::object());
    cook.set("name", Node::of(name));
    cook.set("people", Node::of(static_cast<int>(seat.pupils.size())));
    cook.set("place", Node::of(room.places[static_cast<std::size_t>(seat.place)].name));
    kitchen::Allergens avoided;
    double pace = 0;
    Node& pupils = out.seats.set(name, Node::list());
    for (const std::string& each : seat.pupils) {
      const Pupil& pupil = pupil_called(group, each);
      const kitchen::Allergens own = avoids(pupil);
      avoided.insert(own.begin(), own.end());
      pace = std::max(pace, pupil.pace);
      pupils.add(Node::of(each));
    }
    Node& list = cook.set("dishes", Node::list());
    for (const KeyedDish& dish : dishes) {
      const kitchen::Dish& version = version_for(dish, avoided);
      list.add(Node::of(version.variant.empty() ? dish.key : dish.key + ": " + version.variant));
      if (meets(kitchen::allergens(version), avoided)) {
        out.notes.push_back(base::say(name, ": no version of ", version.name,
                                      " leaves out all that must be avoided."));
      } else if (!version.variant.empty()) {
        out.notes.push_back(base::say(name, " cooks ", version.name, " ", version.variant, "."));
      }
    }
    if (!avoided.empty()) {
      Node& words = cook.set("avoids", Node::list());
      for (const kitchen::Allergen allergen : avoided) words.add(Node::of(kitchen::word(allergen)));
    }
    if (pace != 1.0) cook.set("pace", Node::of(pace));
  }
  return out;
}

}  // namespace desk
