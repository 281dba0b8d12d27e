// Planning a lesson, changing it, and having last year's again.
#include <algorithm>

#include "base/text.h"
#include "desk/cooks.h"
#include "desk/lesson_change.h"
#include "desk/same_again.h"
#include "kitchen/check_lesson.h"
#include "serve/api_json.h"
#include "serve/planning.h"
#include "serve/routes.h"
#include "timeplan/quick_lesson.h"

namespace serve {
namespace {

using base::say;
using http::Method;
using http::Request;
using http::Response;
using store::Kind;

std::string channel_of(const Who& asks) { return "jobs/" + asks.token; }

std::string job_text(const JobView& job) {
  Node node = Node::object();
  node.set("job", Node::of(job.id));
  node.set("state", Node::of(name_of(job.state)));
  node.set("says", Node::of(job.says));
  node.set("seconds", Node::of(job.seconds));
  node.set("lesson", job.lesson.empty() ? Node() : Node::of(job.lesson));
  node.set("problems", problems_node(job.problems));
  std::string text = kitchen::json_text(node);
  while (text.back() != '}') text.pop_back();
  text.pop_back();
  return text + ", \"result\": " + (job.result.empty() ? "null" : job.result) + "}";
}

Response job_answer(const JobView& job, int status) { return http::json(status, job_text(job)); }

std::optional<int> minute_in(const std::string& text) {
  const auto time = base::local_time_in(text);
  if (!time || time->date || time->after_midnight.count() % 60 != 0) return std::nullopt;
  return static_cast<int>(time->after_midnight.count() / 60);
}

base::Result<kitchen::Lesson> quick_lesson(Context& context, const Node& quick,
                                           const std::string& date) {
  base::Problems problems = unknown_members(
      quick, {"dishes", "pupils", "cookers", "sinks", "in", "from", "to", "purpose"});
  timeplan::QuickWish wish;
  for (const std::string& asked : texts_in(quick, "dishes")) {
    const auto colon = asked.find(": ");
    const auto versions = context.kept.dish(asked.substr(0, colon));
    if (!versions) {
      problems.insert(problems.end(), versions.problems().begin(), versions.problems().end());
      continue;
    }
    const std::string variant = colon == std::string::npos ? "" : asked.substr(colon + 2);
    for (const kitchen::Dish& dish : versions.value()) {
      if (dish.variant == variant) wish.dishes.push_back(dish);
    }
  }
  wish.pupils = static_cast<int>(number_in(quick, "pupils").value_or(24));
  wish.cookers = static_cast<int>(number_in(quick, "cookers").value_or(6));
  wish.sinks = static_cast<int>(number_in(quick, "sinks").value_or(wish.cookers));
  const std::string in = text_in(quick, "in");
  wish.together = in == "singles" ? 1 : in == "threes" ? 3 : 2;
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
                          say("The purpose ", base::quoted(purpose), " is not known."),
                          "Say take home, eat here, taste, judged, demonstrate or event."});
  }
  auto rules = context.kept.house_rules();
  if (!rules) problems.insert(problems.end(), rules.problems().begin(), rules.problems().end());
  if (!problems.empty()) return problems;
  wish.rules = rules.value();
  wish.from_minute = *from;
  wish.to_minute = *to;
  auto lesson = timeplan::quick_lesson(wish);
  if (!lesson) return lesson.problems();
  kitchen::Lesson made = std::move(lesson).value();
  if (!date.empty()) made.date = date;
  const base::Problems wrong = kitchen::check(made);
  if (!wrong.empty()) return wrong;
  return made;
}

/// A quick lesson as a document whose dishes are still the kept ones.
base::Result<store::Document> keep_quick(Context& context, const kitchen::Lesson& lesson,
                                         const std::string& who_id) {
  base::Problems broken;
  auto body = kitchen::parse_json(kitchen::write_lesson(lesson), "", broken);
  if (!body) return broken;
  store::Draft draft;
  draft.body = kitchen::json_text(*body);
  draft.links = links_of(Kind::kLesson, *body);
  return context.store.create(Kind::kLesson, {}, draft, {who_id, "Made from four answers"});
}

Response start(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = unknown_members(body.value(),
                                   {"quick", "keep", "date", "lesson", "body", "seconds"});
  if (!odd.empty()) return refuse(odd);
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
      const auto kept = keep_quick(context, lesson.value(), who_id);
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
  if (const std::string* text = request.asked("version"))
    version = static_cast<std::int64_t>(base::number_in(*text).value_or(0));
  const auto plan = kept_plan(context, request.parameter("id"), version);
  return plan ? http::json(200, plan.value()) : refuse(plan.problems());
}

base::Result<desk::LessonChange> change_in(const Node& body) {
  const auto odd = unknown_members(
      body, {"change", "code", "cook", "other", "pace", "from", "to", "cooker", "window", "dish",
             "step", "look_for", "minutes", "place", "purpose"});
  if (!odd.empty()) return odd;
  const auto kind = desk::change_kind(text_in(body, "change"));
  if (!kind)
    return base::Problem{
        "change.unknown", "", "/change",
        say("The change ", base::quoted(text_in(body, "change")), " is not known."),
        "Choose one that is offered."};
  desk::LessonChange out;
  out.kind = *kind;
  out.code = text_in(body, "code");
  out.cook = text_in(body, "cook");
  out.other = text_in(body, "other");
  out.from = text_in(body, "from");
  out.to = text_in(body, "to");
  out.cooker = text_in(body, "cooker");
  out.window = text_in(body, "window");
  out.dish = text_in(body, "dish");
  out.step = text_in(body, "step");
  out.look_for = text_in(body, "look_for");
  out.place = text_in(body, "place");
  out.purpose = text_in(body, "purpose");
  out.pace = number_in(body, "pace").value_or(1);
  out.minutes = number_in(body, "minutes").value_or(0);
  return out;
}

Response change(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto asked = change_in(body.value());
  if (!asked) return refuse(asked.problems());
  const auto seen = version_seen(request);
  if (!seen) return refuse(seen.problems());
  const std::string& id = request.parameter("id");
  const auto kept = context.kept.document(Kind::kLesson, id);
  if (!kept) return refuse(kept.problems());
  const auto made = desk::changed(kept.value().body, "lesson/" + id + ".json",
                                  context.kept.loader(), asked.value());
  if (!made) return refuse(made.problems());
  base::Problems broken;
  const auto node = kitchen::parse_json(made.value().text, "", broken);
  store::Draft draft;
  draft.body = made.value().text;
  if (node) draft.links = links_of(Kind::kLesson, *node);
  const auto written = context.store.replace(Kind::kLesson, id, seen.value(), draft,
                                             {who(request).id, made.value().says});
  if (!written) return refuse(written.problems());
  if (const auto* clash = std::get_if<store::Clash>(&written.value())) {
    Node out = Node::object();
    out.set("problems", problems_node({{"document.clash", "", "",
                                        "Somebody changed this lesson while you were at it.",
                                        "Look at it again, then make your change."}}));
    out.set("yours", body.value());
    out.set("theirs",
            document_node(clash->current, name_of_user(context, clash->current.changed_by)));
    return answer(out, 412);
  }
  tell_changed(context, std::get<store::Document>(written.value()));
  PlanWish wish;
  wish.seconds = 0.6;  // the plan must follow the click
  wish.keep_lines = true;
  wish.what = made.value().says;
  const auto plan = plan_kept(context, id, wish, nullptr, who(request).id);
  return plan ? http::json(200, plan.value()) : refuse(plan.problems());
}

/// The lesson's dishes under their keys, with what the table of foods says of their allergens.
std::vector<desk::KeyedDish> dishes_of(Context& context, const Node& lesson,
                                       const std::string& id) {
  std::vector<desk::KeyedDish> out;
  const Node* dishes = lesson.find("dishes");
  if (dishes == nullptr) return out;
  (void)id;
  for (std::size_t i = 0; i < dishes->items.size(); ++i) {
    const Node& dish = dishes->items[i];
    std::string text = kitchen::json_text(dish);
    if (dish.kind == Node::Kind::kText) {
      const auto loaded = context.kept.loader()(
          dish.text.substr(dish.text.starts_with("../") ? 3 : 0));
      if (!loaded) continue;  // told when the lesson is read
      text = loaded.value();
    }
    if (auto versions = kitchen::read_dish_variants(text, dishes->keys[i]))
      out.push_back({dishes->keys[i], std::move(versions).value()});
  }
  return out;
}

Response again(Context& context, const Request& request) {
  const auto body = body_of(request);
  if (!body) return refuse(body.problems());
  const auto odd = unknown_members(body.value(), {"lesson", "date", "from", "to", "class", "room"});
  if (!odd.empty()) return refuse(odd);
  const std::string id = text_in(body.value(), "lesson");
  const auto old = context.kept.document(Kind::kLesson, id);
  if (!old) return refuse(old.problems());
  desk::AgainWish wish;
  wish.date = text_in(body.value(), "date");
  wish.from = text_in(body.value(), "from");
  wish.to = text_in(body.value(), "to");
  wish.same_as = id;
  wish.class_id = text_in(body.value(), "class");
  if (const std::string room = text_in(body.value(), "room"); !room.empty())
    wish.room = "../room/" + room + ".json";
  auto made = desk::same_again(old.value().body, "lesson/" + id + ".json", wish);
  if (!made) return refuse(made.problems());
  base::Problems broken;
  auto node = kitchen::parse_json(made.value().text, "", broken);
  if (!node) return refuse(broken);
  std::vector<std::string> differs = made.value().differs;
  if (!wish.class_id.empty()) {
    const auto group = context.kept.group(wish.class_id);
    if (!group) return refuse(group.problems());
    const auto lesson = context.kept.lesson_in(kitchen::json_text(*node), "new");
    if (!lesson) return refuse(lesson.problems());
    const auto seats = desk::seat(group.value(), lesson.value().room,
                                  {group.value().together, {}, {}});
    auto cooks = desk::cooks_of(group.value(), lesson.value().room, seats,
                                dishes_of(context, *node, id));
    differs.push_back(say(group.value().name, " with ", group.value().pupils.size(), " pupils."));
    differs.insert(differs.end(), cooks.notes.begin(), cooks.notes.end());
    node->erase("class");
    node->set("cooks", std::move(cooks.list));
    if (seats.shares_places) node->set("share_places", Node::of(true));
    node->set("year", Node::of(group.value().year));
    Node about = *node->find("about");
    about.set("seats", std::move(cooks.seats));
    node->set("about", std::move(about));
  }
  store::Draft draft;
  draft.body = kitchen::json_text(*node);
  draft.links = links_of(Kind::kLesson, *node);
  const base::Problems wrong = faults(Kind::kLesson, draft.body, context.kept);
  if (!wrong.empty()) return refuse(wrong);
  const auto created = context.store.create(
      Kind::kLesson, {}, draft, {who(request).id, "Same again as " + old.value().title});
  if (!created) return refuse(created.problems());
  tell_changed(context, created.value());
  Node out = Node::object();
  out.set("lesson", document_node(created.value(), who(request).name));
  out.set("differs", texts(differs));
  return answer(out, 201);
}

}  // namespace

void add_plan_routes(http::Router& router, Context& context) {
  const auto add = [&](Method method, const char* pattern, const char* needs,
                       Response (*handler)(Context&, const Request&)) {
    router.add({.method = method,
                .pattern = pattern,
                .needs = needs,
                .handler = [&context, handler](const Request& r) { return handler(context, r); }});
  };
  add(Method::kPost, "/api/plan", "read", start);
  add(Method::kGet, "/api/jobs/{job}", "read", job_view);
  add(Method::kDelete, "/api/jobs/{job}", "read", stop_job);
  add(Method::kGet, "/api/lessons/{id}/plan", "read", lesson_plan);
  add(Method::kPost, "/api/lessons/{id}/change", "write", change);
  add(Method::kPost, "/api/lessons/same-again", "write", again);
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
