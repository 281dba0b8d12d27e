#include <algorithm>

#include "kitchen/document.h"
#include "kitchen/lesson_clock.h"

namespace kitchen {
namespace {

/// "lentil-dhal" from "Lentil dhal"; something plain from a name without such letters.
std::string key_of(const Dish& dish) {
  std::string key;
  for (const char c : base::lower(dish.name + " " + dish.variant)) {
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (plain)
      key += c;
    else if (!key.empty() && key.back() != '-')
      key += '-';
  }
  key.resize(std::min<std::size_t>(key.size(), 32));
  while (!key.empty() && key.back() == '-') key.pop_back();
  return key.empty() ? "dish" : key;
}

std::vector<std::string> keys_of(const std::vector<Dish>& dishes) {
  std::vector<std::string> keys;
  for (const Dish& dish : dishes) {
    const std::string wanted = key_of(dish);
    std::string key = wanted;
    for (int n = 2; std::find(keys.begin(), keys.end(), key) != keys.end(); ++n)
      key = base::say(wanted, "-", n);
    keys.push_back(key);
  }
  return keys;
}

class LessonWriter {
 public:
  explicit LessonWriter(const Lesson& lesson) : lesson_(lesson), keys_(keys_of(lesson.dishes)) {}

  Node write() {
    head();
    node_.set("room", node_of(lesson_.room));
    node_.set("house_rules", node_of(lesson_.rules));
    Node& dishes = node_.set("dishes", Node::object());
    for (std::size_t d = 0; d < keys_.size(); ++d) dishes.set(keys_[d], node_of(lesson_.dishes[d]));
    cooks();
    adults();
    windows();
    pins();
    rest();
    return std::move(node_);
  }

 private:
  const Lesson& lesson_;
  std::vector<std::string> keys_;
  Node node_ = Node::object();

  Node time(Seconds at) const { return Node::of(file_time(lesson_, at)); }
  Node key(int dish) const { return Node::of(keys_[static_cast<std::size_t>(dish)]); }
  const std::string& cook_name(int c) const {
    return lesson_.cooks[static_cast<std::size_t>(c)].name;
  }
  const std::string& adult_name(int a) const {
    return lesson_.adults[static_cast<std::size_t>(a)].name;
  }

  void head() {
    node_.set("kind", Node::of("lesson"));
    node_.set("version", Node::of(1));
    node_.set("title", Node::of(lesson_.title));
    node_.set("date", Node::of(lesson_.date));
    node_.set("zone", Node::of(lesson_.zone));
    node_.set("from", time(Seconds{0}));
    node_.set("to", time(lesson_.bell));
    node_.set("year", Node::of(lesson_.year));
    node_.set("purpose", Node::of(word_for(kPurposeWords, lesson_.purpose)));
    node_.set("timelines", Node::of(word_for(kTimelinesWords, lesson_.timelines)));
    node_.set("most_waves", Node::of(lesson_.most_waves));
    if (lesson_.check_out != Seconds{0})
      node_.set("check_out_minutes", minutes_node(lesson_.check_out));
    if (lesson_.opens_late != Seconds{0})
      node_.set("opens_late_minutes", minutes_node(lesson_.opens_late));
    if (lesson_.trays_at_places) node_.set("trays_at_places", Node::of(true));
    if (lesson_.taste_after_washing_up) node_.set("taste_after_washing_up", Node::of(true));
    if (lesson_.spread_before_buffer) node_.set("ready_together_first", Node::of(true));
    if (lesson_.rack_for) node_.set("rack_for", Node::of(adult_name(*lesson_.rack_for)));
  }

  void cooks() {
    std::vector<int> used(lesson_.room.places.size(), 0);
    for (const Cook& cook : lesson_.cooks) ++used[static_cast<std::size_t>(cook.place)];
    if (std::any_of(used.begin(), used.end(), [](int n) { return n > 1; }))
      node_.set("share_places", Node::of(true));
    Node& list = node_.set("cooks", Node::list());
    for (const Cook& cook : lesson_.cooks) {
      Node& entry = list.add(Node::object());
      entry.set("name", Node::of(cook.name));
      entry.set("people", Node::of(cook.people));
      entry.set("place", Node::of(lesson_.room.places[static_cast<std::size_t>(cook.place)].name));
      Node& dishes = entry.set("dishes", Node::list());
      for (const int d : cook.dishes) dishes.add(key(d));
      if (!cook.avoids.empty()) {
        Node& avoids = entry.set("avoids", Node::list());
        for (const Allergen allergen : cook.avoids) avoids.add(Node::of(word(allergen)));
      }
      if (cook.pace != 1.0) entry.set("pace", Node::of(cook.pace));
      if (cook.arrives != Seconds{0}) entry.set("arrives", time(cook.arrives));
      if (cook.leaves != lesson_.bell) entry.set("leaves", time(cook.leaves));
      if (cook.away.empty()) continue;
      Node& away = entry.set("away", Node::list());
      for (const Away& hole : cook.away) {
        Node& span = away.add(Node::object());
        span.set("from", time(hole.from));
        span.set("to", time(hole.to));
      }
    }
  }

  void adults() {
    Node& list = node_.set("adults", Node::list());
    for (const Adult& adult : lesson_.adults) {
      Node& entry = list.add(Node::object());
      entry.set("name", Node::of(adult.name));
      entry.set("leads", Node::of(adult.leads));
      Node& watch = entry.set("may_watch", Node::list());
      for (const Hazard hazard : adult.may_watch) watch.add(Node::of(word(hazard)));
      if (adult.from != Seconds{0}) entry.set("from", time(adult.from));
      if (adult.to != lesson_.bell) entry.set("to", time(adult.to));
    }
  }

  void step_refs(Node& window, std::string_view name, const std::vector<StepRef>& refs) const {
    if (refs.empty()) return;
    Node& list = window.set(name, Node::list());
    for (const StepRef& ref : refs) {
      step_ref(list.add(Node::object()), ref);
    }
  }

  void step_ref(Node& entry, const StepRef& ref) const {
    entry.set("dish", key(ref.dish));
    entry.set("step", Node::of(lesson_.dishes[static_cast<std::size_t>(ref.dish)]
                                   .method[static_cast<std::size_t>(ref.step)]
                                   .id));
  }

  void windows() {
    if (lesson_.windows.empty()) return;
    Node& list = node_.set("windows", Node::list());
    for (const Window& window : lesson_.windows) {
      Node& entry = list.add(Node::object());
      entry.set("name", Node::of(window.name));
      entry.set("kind", Node::of(word_for(kWindowWords, window.kind)));
      entry.set("from", time(window.earliest));
      entry.set("latest", time(window.latest));
      entry.set("minutes", minutes_node(window.length));
      if (!window.audience.empty()) {
        Node& audience = entry.set("audience", Node::list());
        for (const int c : window.audience) audience.add(Node::of(cook_name(c)));
      }
      entry.set("led_by", Node::of(window.led_by ? adult_name(*window.led_by) : "nobody"));
      step_refs(entry, "after", window.after);
      step_refs(entry, "before", window.before);
      if (window.ovens_stay_on) entry.set("ovens_stay_on", Node::of(true));
      if (window.tasting) entry.set("tasting", Node::of(true));
    }
  }

  void pins() {
    if (lesson_.pins.empty()) return;
    Node& list = node_.set("pins", Node::list());
    for (const Pin& pin : lesson_.pins) {
      Node& entry = list.add(Node::object());
      step_ref(entry, pin.step);
      entry.set("at", time(pin.at));
      if (pin.cooks.empty()) continue;
      Node& cooks = entry.set("cooks", Node::list());
      for (const int c : pin.cooks) cooks.add(Node::of(cook_name(c)));
    }
  }

  void rest() {
    if (!lesson_.bans.empty()) {
      Node& list = node_.set("bans", Node::list());
      for (const Ban& ban : lesson_.bans) {
        Node& entry = list.add(Node::object());
        entry.set("hazard", Node::of(word(ban.hazard)));
        entry.set("after", time(ban.after));
      }
    }
    if (!lesson_.sittings.empty()) {
      Node& list = node_.set("sittings", Node::list());
      for (const Sitting& sitting : lesson_.sittings) {
        Node& entry = list.add(Node::object());
        entry.set("name", Node::of(sitting.name));
        entry.set("from", time(sitting.earliest));
        entry.set("to", time(sitting.latest));
        if (sitting.dishes.empty()) continue;
        Node& dishes = entry.set("dishes", Node::list());
        for (const int d : sitting.dishes) dishes.add(key(d));
      }
    }
    if (!lesson_.carry.empty()) {
      Node& list = node_.set("carry", Node::list());
      for (const CarryOver& carry : lesson_.carry) {
        Node& entry = list.add(Node::object());
        entry.set("dish", key(carry.dish));
        entry.set("split", Node::of(lesson_.dishes[static_cast<std::size_t>(carry.dish)]
                                        .splits[static_cast<std::size_t>(carry.split)]
                                        .name));
        entry.set("half", Node::of(word_for(kHalfWords, carry.second_half)));
      }
    }
    if (lesson_.ovens.empty()) return;
    Node& list = node_.set("ovens_set", Node::list());
    for (const OvenAtOpening& oven : lesson_.ovens) {
      Node& entry = list.add(Node::object());
      entry.set("cooker",
                Node::of(lesson_.room.cookers[static_cast<std::size_t>(oven.cooker)].name));
      entry.set("celsius", Node::of(oven.setting.celsius));
      entry.set("kind", Node::of(word_for(kOvenKindWords, oven.setting.kind)));
    }
  }
};

}  // namespace

std::string write_lesson(const Lesson& lesson) { return json_text(LessonWriter(lesson).write()); }

}  // namespace kitchen
