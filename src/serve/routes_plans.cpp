// Planning a lesson: quick or kept, as a job that is watched and stopped.
#include <algorithm>

#include "base/text.h"
#include "desk/cooks.h"
#include "kitchen/check_lesson.h"
#include "kitchen/words.h"
#include "serve/api_json.h"
#include "serve/planning.h"
#include "serve/routes.h"
#include "timeplan/quick_lesson.h"

namespace serve {
namespace {

using base::say;

std::string channel_of(const Who& asks) { return "jobs/" + asks.token; }

std::string gap_text(const std::optional<JobGap>& gap) {
  if (!gap) return "null";
  return json_object(
      {{"of", http::json_quoted(gap->of)}, {"best", say(gap->best)}, {"bound", say(gap->bound)}});
}

std::string job_text(const JobView& job) {
  return json_object({{"job", http::json_quoted(job.id)},
                      {"state", http::json_quoted(name_of(job.state))},
                      {"says", http::json_quoted(job.says)},
                      {"gap", gap_text(job.gap)},
                      {"seconds", base::number_text(job.seconds)},
                      {"lesson", job.lesson.empty() ? "null" : http::json_quoted(job.lesson)},
                      {"problems", json_line(problems_node(job.problems))},
                      {"result", job.result.empty() ? "null" : job.result}});
}

Response job_answer(const JobView& job, int status) { return http::json(status, job_text(job)); }

std::optional<int> minute_in(const std::string& text) {
  const auto time = base::local_time_in(text);
  if (!time || time->date || time->after_midnight.count() % 60 != 0) return std::nullopt;
  return static_cast<int>(time->after_midnight.count() / 60);
}

/// The adults of the school's own document, each in the room for the whole lesson.
void add_adults(Context& context, kitchen::Lesson& lesson) {
  const Node school = context.kept.school();
  const Node* adults = school.find("adults");
  if (adults == nullptr || adults->items.empty()) return;
  std::vector<kitchen::Adult> out;
  for (const Node& each : adults->items) {
    kitchen::Adult adult;
    adult.name = text_in(each, "name");
    adult.leads = flag_in(each, "leads");
    for (const std::string& hazard : texts_in(each, "may_watch")) {
      if (const auto known = kitchen::value_of(kitchen::kHazardWords, hazard))
        adult.may_watch.push_back(*known);
    }
    // Whoever leads may watch everything, unless it is said what.
    if (adult.leads && adult.may_watch.empty()) adult.may_watch = lesson.adults.front().may_watch;
    adult.to = lesson.bell;
    if (!adult.name.empty()) out.push_back(std::move(adult));
  }
  const auto leads = std::count_if(out.begin(), out.end(),
                                   [](const kitchen::Adult& a) { return a.leads; });
  if (leads == 1) lesson.adults = std::move(out);
}

base::Result<kitchen::Lesson> quick_lesson(Context& context, const Node& quick,
                                           const std::string& date) {
  base::Problems problems = misshapen(quick,
                                      {{"dishes", Shape::kTexts, true},
                                       {"pupils", Shape::kWhole, true},
                                       {"cookers", Shape::kWhole, true},
                                       {"sinks", Shape::kWhole},
                                       {"in"},
                                       {"from", Shape::kText, true},
                                       {"to", Shape::kText, true},
                                       {"purpose"},
                                       {"class"}},
                                      "/quick");
  if (!date.empty() && !base::date_in(date))
    problems.push_back({"quick.date", "", "/date", say(base::in_quotes(date), " is not a date."),
                        "Write year, month and day: 2026-11-17."});
  if (!problems.empty()) return problems;
  timeplan::QuickWish wish;
  for (const std::string& asked : texts_in(quick, "dishes")) {
    const auto colon = asked.find(": ");
    const auto versions = context.kept.dish(asked.substr(0, colon));
    if (!versions) {
      base::gather(versions, problems);
      continue;
    }
    const std::string variant = colon == std::string::npos ? "" : asked.substr(colon + 2);
    const auto version = std::find_if(
        versions.value().begin(), versions.value().end(),
        [&](const kitchen::Dish& dish) { return dish.variant == variant; });
    if (version == versions.value().end())
      problems.push_back({"quick.variant", "", "/quick/dishes",
                          say("There is no variant ", base::in_quotes(variant), " of ",
                              versions.value().front().name, "."),
                          "Choose one of those listed with the dish."});
    else
      wish.dishes.push_back(*version);
  }
  wish.pupils = whole_in(quick, "pupils").value_or(0);
  wish.cookers = whole_in(quick, "cookers").value_or(0);
  wish.sinks = whole_in(quick, "sinks").value_or(wish.cookers);
  if (const std::string in = text_in(quick, "in"); !in.empty()) {
    const auto together = kitchen::value_of(kitchen::kGroupWords, in);
    if (!together)
      problems.push_back({"quick.in", "", "/quick/in",
                          say(base::in_quotes(in), " is no way to work."),
                          "Say singles, pairs or threes."});
    wish.together = together.value_or(2);
  }
  const auto from = minute_in(text_in(quick, "from")), to = minute_in(text_in(quick, "to"));
  if (!from || !to)
    problems.push_back({"quick.time", "", from ? "/quick/to" : "/quick/from",
                        "A lesson needs the time it begins and the bell.",
                        "Write them like 09:05."});
  if (const std::string purpose = text_in(quick, "purpose"); !purpose.empty()) {
    if (const auto known = kitchen::value_of(kitchen::kPurposeWords, purpose))
      wish.purpose = *known;
    else
      problems.push_back({"quick.purpose", "", "/quick/purpose",
                          say("The purpose ", base::in_quotes(purpose), " is not known."),
                          "Say take home, eat here, taste, judged, demonstrate or event."});
  }
  auto rules = context.kept.house_rules();
  base::gather(rules, problems);
  if (!problems.empty()) return problems;
  wish.rules = rules.value();
  wish.from_minute = *from;
  wish.to_minute = *to;
  auto lesson = timeplan::quick_lesson(wish);
  if (!lesson) return lesson.problems();
  kitchen::Lesson made = std::move(lesson).value();
  if (!date.empty()) made.date = date;
  if (const std::string id = text_in(quick, "class"); !id.empty()) {
    const auto group = context.kept.group(id);
    if (!group) return group.problems();
    made.year = group.value().year;
    made.title = group.value().name + ", " + made.title;
  }
  add_adults(context, made);
  const base::Problems wrong = kitchen::check(made);
  if (!wrong.empty()) return wrong;
  return made;
}

/// Puts the class in the seats of the quick room, if its list is as long as was asked: names,
/// paces, and for who must avoid something the version without it. A list of another length says
/// nothing of who is here; the lesson then stays without names, and the week says so.
void seat_class(Context& context, const kitchen::Lesson& lesson, const std::string& class_id,
                const std::vector<std::string>& dishes, Node& body) {
  const auto group = context.kept.group(class_id);
  int pupils = 0, together = 1;
  for (const kitchen::Cook& cook : lesson.cooks) {
    pupils += cook.people;
    together = std::max(together, cook.people);
  }
  if (!group || static_cast<int>(group.value().pupils.size()) != pupils) return;
  // Cooks name their dishes by the keys of the lesson, not by the names of the kept documents.
  const Node* list = body.find("dishes");
  if (list == nullptr || list->keys.size() != dishes.size()) return;
  std::vector<desk::KeyedDish> keyed;
  for (std::size_t d = 0; d < dishes.size(); ++d) {
    // A variant that was asked for by name is for everybody, whatever they avoid.
    if (dishes[d].find(':') != std::string::npos) return;
    auto versions = context.kept.dish(dishes[d]);
    if (!versions) return;
    keyed.push_back({list->keys[d], context.kept.with_food_allergens(std::move(versions).value())});
  }
  const auto seats = desk::seat(group.value(), lesson.room, {together, {}, {}});
  auto cooks = desk::cooks_of(group.value(), lesson.room, seats, keyed);
  body.set("cooks", std::move(cooks.list));
  if (seats.shares_places) body.set("share_places", Node::of(true));
  Node about = Node::object();
  if (const Node* known = body.find("about")) about = *known;
  about.set("seats", std::move(cooks.seats));
  body.set("about", std::move(about));
}

/// A quick lesson as a document whose dishes and house rules are still the kept ones. `dishes`: as
/// they were asked for, in the order of the lesson. `class_id`: whose lesson it is; empty =
/// nobody's.
base::Result<store::Document> keep_quick(Context& context, const kitchen::Lesson& lesson,
                                         const std::vector<std::string>& dishes,
                                         const std::string& class_id, const std::string& who_id) {
  base::Problems broken;
  auto body = kitchen::parse_json(kitchen::write_lesson(lesson), "", broken);
  if (!body) return broken;
  if (Node* list = body->find("dishes")) {
    for (std::size_t d = 0; d < list->items.size() && d < dishes.size(); ++d) {
      // A variant has no file of its own; it is written out.
      if (dishes[d].find(':') == std::string::npos)
        list->items[d] = Node::of("../dish/" + dishes[d] + ".json");
    }
  }
  if (const auto rules = context.kept.house_rules_path())
    body->set("house_rules", Node::of(*rules));
  if (!class_id.empty()) {
    body->set("about", Node::object()).set("class", Node::of(class_id));
    seat_class(context, lesson, class_id, dishes, *body);
  }
  store::Draft draft;
  draft.body = kitchen::json_text(*body);
  draft.links = links_of(Kind::kLesson, *body);
  return context.store.create(Kind::kLesson, {}, draft, {who_id, "Made from four answers"});
}

Response start(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = misshapen(body.value(), {{"quick", Shape::kObject},
                                            {"keep", Shape::kFlag},
                                            {"date"},
                                            {"lesson"},
                                            {"body", Shape::kObject},
                                            {"seconds", Shape::kNumber}});
  if (!odd.empty()) return refuse(odd);
  int wanted = 0;
  for (const char* key : {"quick", "lesson", "body"})
    wanted += body.value().find(key) == nullptr ? 0 : 1;
  if (wanted > 1)
    return http::refused(400, "plan.too_much", "Only one lesson is planned at a time.",
                         "Name a lesson, or send one, or answer the four questions.");
  PlanWish wish;
  wish.seconds = std::clamp(number_in(body.value(), "seconds").value_or(context.plan_seconds), 0.1,
                            60.0);
  const std::string who_id = who(request).id, owner = channel_of(who(request));
  std::string id = text_in(body.value(), "lesson");
  std::optional<kitchen::Lesson> loose;
  if (const Node* quick = body.value().find("quick")) {
    auto lesson = quick_lesson(context, *quick, text_in(body.value(), "date"));
    if (!lesson) return refuse(lesson.problems());
    if (flag_in(body.value(), "keep")) {
      if (who(request).role == store::Role::kTechnician)
        return http::refused(403, "documents.teachers_only", "Lessons are kept by teachers.",
                             "Ask one of them.");
      const auto kept = keep_quick(context, lesson.value(), texts_in(*quick, "dishes"),
                                   text_in(*quick, "class"), who_id);
      if (!kept) return refuse(kept.problems());
      tell_changed(context, kept.value());
      id = kept.value().id;
    } else {
      loose = std::move(lesson).value();
    }
  } else if (const Node* sent = body.value().find("body")) {
    auto lesson = context.kept.lesson_in(kitchen::json_text(*sent), "new");
    if (!lesson) return refuse(lesson.problems());
    loose = std::move(lesson).value();
  } else {
    if (id.empty())
      return http::refused(400, "plan.nothing", "There is nothing to plan.",
                           "Name a lesson, or answer the four questions.");
    const auto there = context.kept.lesson(id);
    if (!there) return refuse(there.problems());
  }
  Work work;
  if (loose) {
    work = [&context, lesson = *loose, wish](JobDesk& desk) -> base::Result<std::string> {
      const auto planned = plan_it(context, lesson, wish, &desk, {});
      if (!planned) return planned.problems();
      return loose_plan(planned.value());
    };
  } else {
    work = [&context, id, wish, who_id](JobDesk& desk) {
      return plan_kept(context, id, wish, &desk, who_id);
    };
  }
  const auto job = context.jobs.start(owner, loose ? "" : id, std::move(work));
  if (!job)
    return http::refused(429, "plan.too_many", "Too many plans are waiting.",
                         "Wait until one is done, then try again.");
  return job_answer(*job, 202);
}

Response job_view(Context& context, const Request& request) {
  const auto job = context.jobs.view(request.parameter("job"));
  if (!job || job->owner != channel_of(who(request))) return http::not_found();
  return job_answer(*job, 200);
}

Response stop_job(Context& context, const Request& request) {
  const auto job = context.jobs.view(request.parameter("job"));
  if (!job || job->owner != channel_of(who(request))) return http::not_found();
  const auto stopped = context.jobs.stop(job->id);
  return stopped ? job_answer(*stopped, 200) : http::not_found();
}

Response lesson_plan(Context& context, const Request& request) {
  std::optional<std::int64_t> version;
  if (const std::string* text = request.asked("version")) {
    version = version_in(*text);
    if (!version) return http::not_found();
  }
  const auto plan = kept_plan(context, request.parameter("id"), version);
  return plan ? http::json(200, plan.value()) : refuse(plan.problems());
}

}  // namespace

void add_plan_routes(http::Router& router, Context& context) {
  add_route(router, context, Method::kPost, "/api/plan", "read", start);
  add_route(router, context, Method::kGet, "/api/jobs/{job}", "read", job_view);
  add_route(router, context, Method::kDelete, "/api/jobs/{job}", "read", stop_job);
  add_route(router, context, Method::kGet, "/api/lessons/{id}/plan", "read", lesson_plan);
  router.add({.method = Method::kGet,
              .pattern = "/api/events",
              .needs = "read",
              .handler = [&context](const Request& r) {
                return http::follow(context.hub, {"desk", channel_of(who(r))},
                                    http::last_event_id(r), who(r).token);
              }});
}

/// News of a job for the pages of the session that started it.
void tell_job(http::Hub& hub, const JobView& job) { hub.publish(job.owner, "job", job_text(job)); }

}  // namespace serve
