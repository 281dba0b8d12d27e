// This week: each lesson with its verdict, what it needs and who must not have what.
#include <algorithm>
#include <chrono>
#include <map>
#include <set>

#include "base/text.h"
#include "desk/class_list.h"
#include "desk/lesson_allergens.h"
#include "kitchen/words.h"
#include "larder/week.h"
#include "serve/api_json.h"
#include "serve/order_desk.h"
#include "serve/routes.h"
#include "serve/week_days.h"

namespace serve {
namespace {

using base::say;

/// What a lesson's plan says in short, with the version of the lesson it was made for; nothing
/// without a plan.
std::shared_ptr<const Node> digest_of(Context& context, const std::string& id,
                                      std::int64_t plan_version) {
  const std::string mark = say(plan_version);
  if (plan_version == 0) return nullptr;
  if (auto there = context.workings.digests.get(id, mark)) return there;
  const auto plan = context.store.get(Kind::kPlan, id);
  if (!plan || !plan.value() || plan.value()->deleted) return nullptr;
  base::Problems broken;
  const auto node = kitchen::parse_json(plan.value()->body, "", broken);
  if (!node || node->find("digest") == nullptr) return nullptr;
  Node out = Node::object();
  out.set("digest", *node->find("digest"));
  out.set("lesson_version", Node::of(number_in(*node, "lesson_version").value_or(0)));
  return context.workings.digests.put(id, mark, std::move(out));
}

/// Of a lesson without a plan: what keeps it from being planned, if that is known at once.
Node without_plan(Context& context, kitchen::Lesson lesson) {
  const auto said = desk::add_allergens(lesson, *context.kept.foods(), *context.kept.labels());
  Node none = Node::object();
  none.set("verdict", Node::of("not planned"));
  none.set("says", Node::of(said ? "Not planned yet" : "Cannot be planned yet"));
  none.set("chance", Node());
  none.set("reason", Node::of(said ? "" : said.problems().front().message));
  none.set("remedy", Node());
  return none;
}

/// Who must not have what, for those who cook and set out: never on a wall or a card.
Node allergies(Context& context, const kitchen::Lesson& lesson, const Node* about) {
  std::map<kitchen::Allergen, std::vector<std::string>> by;
  for (const kitchen::Cook& cook : lesson.cooks) {
    for (const kitchen::Allergen allergen : cook.avoids)
      by[allergen].push_back(lesson.room.places[static_cast<std::size_t>(cook.place)].name);
  }
  Node list = Node::list();
  for (const auto& [allergen, places] : by) {
    Node& one = list.add(Node::object());
    one.set("allergen", Node::of(kitchen::word(allergen)));
    one.set("says",
            Node::of(say(base::counted(static_cast<long long>(places.size()), "cook", "cooks"),
                         ": ", base::joined(places))));
  }
  // A lesson of a class that was made without its list: nobody has looked at who is in it.
  const std::string id = about == nullptr ? std::string() : text_in(*about, "class");
  if (id.empty() || about->find("seats") != nullptr) return list;
  const auto group = context.kept.group(id);
  if (!group) return list;
  const auto concerned = std::count_if(
      group.value().pupils.begin(), group.value().pupils.end(),
      [](const desk::Pupil& pupil) { return !desk::avoids(pupil).empty(); });
  if (concerned == 0) return list;
  Node& one = list.add(Node::object());
  one.set("allergen", Node::of("not looked at"));
  one.set("says",
          Node::of(say(base::counted(concerned, "pupil", "pupils"), " of ", group.value().name,
                       " must avoid something, and this plan has no names in it")));
  return list;
}

Node prepare(const kitchen::Lesson& lesson) {
  Node list = Node::list();
  std::map<int, int> sets;
  for (const kitchen::Cook& cook : lesson.cooks) {
    for (const int dish : cook.dishes) ++sets[dish];
  }
  for (const auto& [dish, n] : sets) {
    const kitchen::Dish& d = lesson.dishes[static_cast<std::size_t>(dish)];
    const std::string lots = lesson.trays_at_places ? base::counted(n, "tray", "trays")
                                                    : base::counted(n, "set", "sets");
    list.add(Node::of(say(lots, " of ", base::lower(d.name.substr(0, 1)), d.name.substr(1),
                          d.variant.empty() ? "" : ", " + d.variant)));
  }
  for (const kitchen::OvenAtOpening& oven : lesson.ovens)
    list.add(Node::of(say("oven ", lesson.room.cookers[static_cast<std::size_t>(oven.cooker)].name,
                          " at ", oven.setting.celsius, " °C")));
  return list;
}

/// Versions of what stands in the store, asked for by the list, for the length of one answer.
class Versions {
 public:
  Versions(Context& context, const store::Filter& week) : context_(context), week_(week) {}

  /// 0: there is none.
  std::int64_t of(Kind kind, const std::string& id) {
    const auto [there, fresh] = known_.try_emplace(kind);
    if (fresh) {
      if (kind == Kind::kPlan) {
        if (const auto all = context_.store.list(kind, week_)) {
          for (const store::Summary& each : all.value()) there->second[each.id] = each.version;
        }
      } else if (const auto all = context_.store.versions(kind)) {
        there->second.insert(all.value().begin(), all.value().end());
      }
    }
    const auto found = there->second.find(id);
    if (found != there->second.end()) return found->second;
    // A plan keeps the day it was made for, and a lesson may have moved since.
    if (kind != Kind::kPlan) return 0;
    const auto plan = context_.store.get(kind, id);
    return plan && plan.value() ? plan.value()->version : 0;
  }

 private:
  Context& context_;
  store::Filter week_;
  std::map<Kind, std::map<std::string, std::int64_t>> known_;
};

/// Everything a lesson's row is made from, as one text.
std::string mark_of(Context& context, Versions& versions, const store::Summary& lesson) {
  const std::string own = say(lesson.version);
  auto links = context.workings.links.get(lesson.id, own);
  if (!links) {
    const auto document = context.store.get(Kind::kLesson, lesson.id);
    if (!document || !document.value()) return "";
    links = context.workings.links.put(lesson.id, own,
                                       std::vector<store::Ref>(document.value()->links));
  }
  std::string mark = say(own, "/", versions.of(Kind::kPlan, lesson.id));
  for (const char* table : {"foods", "labels"}) mark += say("/", versions.of(Kind::kTable, table));
  for (const store::Ref& link : *links) mark += say("/", versions.of(link.kind, link.id));
  return mark;
}

Node lesson_node(Context& context, const store::Summary& summary, std::int64_t plan_version) {
  Node node = Node::object();
  node.set("id", Node::of(summary.id));
  node.set("title", Node::of(summary.title));
  node.set("version", Node::of(static_cast<double>(summary.version)));
  node.set("date", Node::of(summary.day.value_or("")));
  const auto kept = context.kept.lesson(summary.id);
  bool stale = false;
  if (!kept) {
    for (const char* key : {"class", "from", "to", "room"}) node.set(key, Node::of(""));
    node.set("dishes", Node::list());
    node.set("cooks", Node::of(0));
    node.set("pupils", Node::of(0));
    node.set("verdict", Node::of("not planned"));
    node.set("says", Node::of("Something in it has to be mended"));
    node.set("chance", Node());
    node.set("reason", Node::of(kept.problems().front().message));
    node.set("remedy", Node());
    node.set("allergies", Node::list());
    node.set("prepare", Node::list());
    node.set("stale", Node::of(true));
    return node;
  }
  const kitchen::Lesson& lesson = kept.value().lesson;
  const auto planned = digest_of(context, summary.id, plan_version);
  const Node digest = planned ? *planned->find("digest") : without_plan(context, lesson);
  if (planned)
    stale = number_in(*planned, "lesson_version") != static_cast<double>(summary.version);
  base::Problems broken;
  const auto body = kitchen::parse_json(kept.value().document.body, "", broken);
  const Node* about = body ? body->find("about") : nullptr;
  std::string group = about == nullptr ? std::string() : text_in(*about, "class");
  if (!group.empty()) {
    const auto found = context.store.get(Kind::kClass, group);
    if (found && found.value()) group = found.value()->title;
  }
  if (group.empty()) group = summary.title.substr(0, summary.title.find(','));
  node.set("class", Node::of(group));
  node.set("from", Node::of(kitchen::clock(lesson, base::Seconds{0})));
  node.set("to", Node::of(kitchen::clock(lesson, lesson.bell)));
  node.set("room", Node::of(lesson.room.name));
  std::vector<std::string> dishes;
  for (const kitchen::Dish& dish : lesson.dishes) {
    if (std::find(dishes.begin(), dishes.end(), dish.name) == dishes.end())
      dishes.push_back(dish.name);
  }
  node.set("dishes", texts(dishes));
  int pupils = 0;
  for (const kitchen::Cook& cook : lesson.cooks) pupils += cook.people;
  node.set("cooks", Node::of(static_cast<int>(lesson.cooks.size())));
  node.set("pupils", Node::of(pupils));
  for (std::size_t i = 0; i < digest.keys.size(); ++i) node.set(digest.keys[i], digest.items[i]);
  node.set("allergies", allergies(context, lesson, about));
  node.set("prepare", prepare(lesson));
  node.set("stale", Node::of(stale));
  return node;
}

std::string headline(const Node& lessons) {
  std::vector<std::string> wrong;
  std::size_t open = 0;
  for (const Node& lesson : lessons.items) {
    const std::string verdict = text_in(lesson, "verdict");
    if (verdict == "not planned") ++open;
    if (verdict == "does not fit" || verdict == "not found")
      wrong.push_back(text_in(lesson, "title"));
  }
  const std::size_t all = lessons.items.size();
  if (all == 0) return "No lessons this week.";
  if (!wrong.empty()) {
    const std::string first = wrong.size() == 1 ? wrong.front() + " does not fit yet."
                                                : say(wrong.size(), " lessons do not fit yet.");
    const std::size_t good = all - wrong.size() - open;
    return first + (good == 0   ? ""
                    : good == 1 ? " The other one does."
                                : say(" The other ", good, " do."));
  }
  if (open > 0)
    return open == all
               ? "Nothing is planned yet this week."
               : say(base::counted(static_cast<long long>(open), "lesson is", "lessons are"),
                     " not planned yet. The others fit.");
  return all == 1 ? "The lesson fits." : "All lessons of this week fit.";
}

/// What a week's answer holds for: until something is changed here, and for two seconds at most,
/// since another program may write to the same file.
std::string moment(Context& context) {
  const auto now = std::chrono::steady_clock::now().time_since_epoch();
  return say(context.changes.load(), "/", context.today().days, "/",
             std::chrono::duration_cast<std::chrono::seconds>(now).count() / 2);
}

/// Weeks around this one that have lessons, so that a page can step over empty ones.
std::vector<std::string> dates_around(Context& context, base::Date monday) {
  store::Filter around;
  around.from = base::date_text(base::Date{monday.days - 400});
  around.to = base::date_text(base::Date{monday.days + 120});
  std::set<int> mondays;
  if (const auto days = context.store.days(Kind::kLesson, around)) {
    for (const std::string& day : days.value()) {
      if (const auto date = base::date_in(day)) mondays.insert(monday_of(*date).days);
    }
  }
  std::vector<std::string> out;
  for (const int days : mondays) out.push_back(base::date_text(base::Date{days}));
  return out;
}

base::Result<Node> week_node(Context& context, base::Date monday) {
  const store::Filter filter = days_of_week(monday);
  const auto found = context.store.list(Kind::kLesson, filter);
  if (!found) return found.problems();
  Node lessons = Node::list();
  Versions versions(context, filter);
  for (const store::Summary& summary : found.value()) {
    const std::string mark = mark_of(context, versions, summary);
    auto row = context.workings.week_rows.get(summary.id, mark);
    if (!row || mark.empty())
      row = context.workings.week_rows.put(
          summary.id, mark, lesson_node(context, summary, versions.of(Kind::kPlan, summary.id)));
    lessons.add(*row);
  }
  std::stable_sort(lessons.items.begin(), lessons.items.end(), [](const Node& a, const Node& b) {
    return text_in(a, "date") + text_in(a, "from") < text_in(b, "date") + text_in(b, "from");
  });
  Node node = Node::object();
  node.set("from", Node::of(base::date_text(monday)));
  node.set("to", Node::of(*filter.to));
  node.set("today", Node::of(base::date_text(context.today())));
  node.set("headline", Node::of(headline(lessons)));
  node.set("lessons", std::move(lessons));
  node.set("dates", texts(dates_around(context, monday)));
  node.set("order", week_order(context, monday));
  return node;
}

Response week(Context& context, const Request& request) {
  const auto asked = week_asked(context, request);
  if (!asked) return refuse(asked.problems());
  const base::Date monday = asked.value();
  const std::string name = say(monday.days);
  const std::string mark = moment(context);  // taken before anything is read
  if (const auto there = context.workings.week_texts.get(name, mark))
    return http::json(200, *there);
  const auto made = week_node(context, monday);
  if (!made) return refuse(made.problems());
  return http::json(200, *context.workings.week_texts.put(name, mark, json_line(made.value())));
}

}  // namespace

void add_week_routes(http::Router& router, Context& context) {
  add_route(router, context, Method::kGet, "/api/week", "read", week);
}

}  // namespace serve
