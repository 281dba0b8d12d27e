// What is tied to the clock or to the calendar: windows, bans, sittings, dishes over two lessons,
// ovens set before.
#include <algorithm>
#include <iterator>

#include "kitchen/document.h"
#include "kitchen/field_lists.h"
#include "kitchen/lesson_reading.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

class TimesReader {
 public:
  explicit TimesReader(LessonReading& reading) : r_(reading) {}

  void read() {
    windows();
    pins();
    bans();
    sittings();
    carry();
    ovens();
    if (r_.f.find("rack_for") != nullptr) {
      const std::string name = r_.f.text("rack_for", 60);
      if (!name.empty())
        r_.lesson.rack_for = r_.named(name, r_.adult_names(), "adult", "lesson.unknown_adult",
                                      r_.f.where("rack_for"));
    }
  }

 private:
  LessonReading& r_;

  static std::string called(std::string_view noun, const Node& node) {
    const Node* name = node.find("name");
    return name != nullptr && name->kind == Node::Kind::kText
               ? say("The ", noun, " ", in_quotes(name->text))
               : say("A ", noun);
  }

  void windows() {
    for (const Entry& entry : r_.f.list("windows", 50)) {
      const Fields f(r_.reader, *entry.node, entry.where, called("window", *entry.node),
                     kWindowFields);
      if (f.is_object()) r_.lesson.windows.push_back(window(f));
    }
  }

  Window window(const Fields& f) {
    Window window;
    window.name = f.text("name", 60);
    window.kind = f.word("kind", kWindowWords, std::optional<WindowKind>{});
    window.length = f.minutes("minutes", Seconds{1}, std::nullopt);
    const bool stop = window.kind == WindowKind::kStop;
    if (f.find("from") == nullptr && stop) {
      window.latest = r_.time_or(f, "latest", r_.lesson.bell - window.length);
    } else {
      window.earliest = r_.needed_time(f, "from");
      window.latest = r_.time_or(f, "latest", window.earliest);
    }
    window.audience = cooks(f, "audience");
    window.led_by = led_by(f, window.kind);
    window.after = steps(f, "after");
    window.before = steps(f, "before");
    window.ovens_stay_on = f.flag("ovens_stay_on", false);
    window.tasting = f.flag("tasting", false);
    return window;
  }

  std::optional<int> led_by(const Fields& f, WindowKind kind) {
    if (f.find("led_by") != nullptr) {
      const std::string name = f.text("led_by", 60);
      if (name.empty() || name == "nobody") return std::nullopt;
      return r_.named(name, r_.adult_names(), "adult", "lesson.unknown_adult", f.where("led_by"));
    }
    if (kind == WindowKind::kBreak) return std::nullopt;
    const auto& adults = r_.lesson.adults;
    const auto leader = std::find_if(adults.begin(), adults.end(),
                                     [](const Adult& a) { return a.leads; });
    if (leader == adults.end()) return std::nullopt;  // told by the check that one adult must lead
    return static_cast<int>(leader - adults.begin());
  }

  std::vector<int> cooks(const Fields& f, std::string_view key) {
    std::vector<int> out;
    for (const Entry& cook : f.list(key)) {
      if (!f.is_text(cook)) continue;
      if (const auto index = r_.named(cook.node->text, r_.cook_names(), "cook",
                                      "lesson.unknown_cook", cook.where))
        out.push_back(*index);
    }
    return out;
  }

  std::vector<StepRef> steps(const Fields& f, std::string_view key) {
    std::vector<StepRef> out;
    for (const Entry& entry : f.list(key, 100)) {
      const Fields s(r_.reader, *entry.node, entry.where, f.what(), kStepRefFields);
      if (!s.is_object()) continue;
      const std::vector<StepRef> versions = versions_of_step(s, f.what());
      out.insert(out.end(), versions.begin(), versions.end());
    }
    return out;
  }

  /// The step of "dish" and "step", once for each version of the dish that has it.
  std::vector<StepRef> versions_of_step(const Fields& s, const std::string& what) {
    std::vector<StepRef> out;
    const std::string dish = s.text("dish");
    const std::string step = s.text("step");
    if (dish.empty() || step.empty()) return out;
    std::vector<std::string> ids;
    const std::vector<int> family = r_.dish_family(dish, s.where("dish"));
    for (const int d : family) {
      const std::vector<Step>& method = r_.lesson.dishes[static_cast<std::size_t>(d)].method;
      for (std::size_t i = 0; i < method.size(); ++i) {
        ids.push_back(method[i].id);
        if (method[i].id == step) out.push_back({d, static_cast<int>(i)});
      }
    }
    if (!out.empty() || family.empty()) return out;
    const std::string near = did_you_mean(step, ids);
    r_.refuse("lesson.unknown_step", s.where("step"),
              say(what, ": the dish ", in_quotes(dish), " has no step ", in_quotes(step),
                  near.empty() ? "." : near),
              "Write the id of a step of that dish.");
    return out;
  }

  void pins() {
    for (const Entry& entry : r_.f.list("pins", 200)) {
      const Fields f(r_.reader, *entry.node, entry.where, "A pinned step", kPinFields);
      if (!f.is_object()) continue;
      const Seconds at = r_.needed_time(f, "at");
      const std::vector<int> named = cooks(f, "cooks");
      for (const StepRef& step : versions_of_step(f, f.what())) {
        const auto makes_it = [&](int c) {
          const std::vector<int>& own = r_.lesson.cooks[static_cast<std::size_t>(c)].dishes;
          return std::find(own.begin(), own.end(), step.dish) != own.end();
        };
        Pin pin{step, at, {}};
        std::copy_if(named.begin(), named.end(), std::back_inserter(pin.cooks), makes_it);
        // Of the versions of a dish each cook makes one.
        if (named.empty() || !pin.cooks.empty()) r_.lesson.pins.push_back(std::move(pin));
      }
      for (const int c : named) told_if_not_theirs(f, c);
    }
  }

  void told_if_not_theirs(const Fields& f, int c) {
    const Cook& cook = r_.lesson.cooks[static_cast<std::size_t>(c)];
    const bool pinned = std::any_of(
        r_.lesson.pins.begin(), r_.lesson.pins.end(), [&](const Pin& pin) {
          return std::find(pin.cooks.begin(), pin.cooks.end(), c) != pin.cooks.end();
        });
    if (pinned) return;
    r_.refuse("lesson.pin_not_theirs", f.where("cooks"),
              say("A step is pinned for ", in_quotes(cook.name), ", who does not make that dish."),
              "Name cooks who make it, or take the pin off.");
  }

  void bans() {
    for (const Entry& entry : r_.f.list("bans", 50)) {
      const Fields f(r_.reader, *entry.node, entry.where, "A ban", kBanFields);
      if (f.is_object())
        r_.lesson.bans.push_back(
            {f.word("hazard", kHazardWords, std::optional<Hazard>{}), r_.needed_time(f, "after")});
    }
  }

  void sittings() {
    const bool listed = r_.f.find("sittings") != nullptr;
    if (listed && r_.f.find("serve") != nullptr) {
      r_.refuse("lesson.serve_and_sittings", r_.f.where("serve"),
                "The lesson lists sittings and also gives one serve time.", "Keep one of the two.");
      return;
    }
    for (const Entry& entry : r_.f.list("sittings", 20)) {
      const Fields f(r_.reader, *entry.node, entry.where, called("sitting", *entry.node),
                     kSittingFields);
      if (!f.is_object()) continue;
      Sitting sitting{f.text("name", 60),
                      r_.time_or(f, "from", Seconds{0}),
                      r_.time_or(f, "to", r_.lesson.bell),
                      {}};
      for (const Entry& dish : f.list("dishes", 100)) {
        if (!f.is_text(dish)) continue;
        for (const int d : r_.dish_family(dish.node->text, dish.where)) {
          if (std::find(sitting.dishes.begin(), sitting.dishes.end(), d) == sitting.dishes.end())
            sitting.dishes.push_back(d);
        }
      }
      r_.lesson.sittings.push_back(std::move(sitting));
    }
    if (const Node* serve = r_.f.find("serve")) {
      const Fields f(r_.reader, *serve, r_.f.where("serve"), "The serve time", kSpanFields);
      r_.lesson.sittings.push_back(
          {"Serve", r_.time_or(f, "from", Seconds{0}), r_.time_or(f, "to", r_.lesson.bell), {}});
    } else if (!listed && r_.lesson.purpose != Purpose::kTakeHome) {
      r_.lesson.sittings.push_back({"Serve", Seconds{0}, r_.lesson.bell, {}});
    }
  }

  void carry() {
    for (const Entry& entry : r_.f.list("carry", 100)) {
      const Fields f(r_.reader, *entry.node, entry.where, "A dish over two lessons", kCarryFields);
      if (!f.is_object()) continue;
      const std::string dish = f.text("dish");
      const std::string split = f.text("split", 60);
      const bool second = f.word("half", kHalfWords, std::optional<bool>{});
      if (dish.empty() || split.empty()) continue;
      for (const int d : r_.dish_family(dish, f.where("dish"))) {
        std::vector<std::string> names;
        for (const Split& each : r_.lesson.dishes[static_cast<std::size_t>(d)].splits)
          names.push_back(each.name);
        const auto at = std::find(names.begin(), names.end(), split);
        if (at == names.end()) {
          const std::string near = did_you_mean(split, names);
          r_.refuse("lesson.unknown_split", f.where("split"),
                    say("The dish ", in_quotes(dish), " cannot be put away ", in_quotes(split),
                        near.empty() ? "; its file has no split of that name." : near),
                    "Write the name of a split in the dish's file, or add one there.");
          break;
        }
        r_.lesson.carry.push_back({d, static_cast<int>(at - names.begin()), second});
      }
    }
  }

  void ovens() {
    std::vector<std::string> names;
    for (const Cooker& cooker : r_.lesson.room.cookers) names.push_back(cooker.name);
    for (const Entry& entry : r_.f.list("ovens_set", 100)) {
      const Fields f(r_.reader, *entry.node, entry.where, "An oven set before the lesson",
                     kOvenSetFields);
      if (!f.is_object()) continue;
      const std::string name = f.text("cooker", 30);
      const OvenSetting setting{
          celsius_of(f, "celsius", std::nullopt),
          f.word("kind", kOvenKindWords, std::optional{OvenKind::kConventional})};
      if (name.empty()) continue;
      if (const auto cooker = r_.named(name, names, "cooker", "lesson.unknown_cooker",
                                       f.where("cooker")))
        r_.lesson.ovens.push_back({*cooker, setting});
    }
  }
};

}  // namespace

void read_times(LessonReading& reading) { TimesReader(reading).read(); }

}  // namespace kitchen
