#include "serve/planning.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "desk/finish_plan.h"
#include "desk/lesson_allergens.h"
#include "kitchen/read.h"
#include "print/machine.h"
#include "print/read_plan.h"
#include "serve/routes.h"
#include "store/json_text.h"

namespace serve {
namespace {

using base::say;
using store::Kind;

constexpr std::uint64_t kSeed = 1;
constexpr int kTries = 3;  // plans to choose from when printed lines are to stay

/// `whole`: with chance, last safe starts and remedies; else the plan alone.
/// What a goal level counts, for somebody who waits for a plan.
std::string counted_by(const std::string& level) {
  if (level.starts_with("G1")) return "minutes over the bell, over all cooks";
  if (level.starts_with("G2")) return "minutes short of the spare time at the end, over all cooks";
  if (level.starts_with("G3")) return "minutes between dishes eaten together";
  if (level.starts_with("G4")) return "points of quality lost by waiting";
  return "minutes until each has washed up, over all cooks";
}

timeplan::Answer answer_for(const kitchen::Lesson& lesson, const PlanWish& wish, JobDesk* desk,
                            std::uint64_t seed, bool whole) {
  timeplan::PlanOptions options;
  options.seconds = wish.seconds;
  options.seed = seed;
  options.with_remedies = whole;
  options.with_last_safe_starts = whole;
  options.with_chance = whole;
  options.runs = wish.runs;
  if (wish.standing && wish.standing->answer.plan &&
      wish.standing->answer.verdict == timeplan::Verdict::kFits)
    options.standing = timeplan::Standing{&wish.standing->lesson, &*wish.standing->answer.plan};
  if (desk != nullptr) {
    options.stop = [desk] { return desk->stop(); };
    options.progress = [desk](const timeplan::Progress& now) {
      desk->says(now.says, now.level.empty()
                               ? std::nullopt
                               : std::optional(JobGap{counted_by(now.level), now.best, now.bound}));
    };
  }
  return timeplan::plan_lesson(lesson, options);
}

Node printed_node(const desk::Printed& printed) {
  Node node = Node::object();
  Node& seats = node.set("seats", Node::object());
  for (const auto& [cook, place] : printed.seats) seats.set(cook, Node::of(place));
  node.set("waves", Node::of(printed.waves));
  node.set("lines", texts(printed.lines));
  return node;
}

desk::Printed printed_in(const Node& plan) {
  desk::Printed out;
  const Node* node = plan.find("printed");
  if (node == nullptr) return out;
  if (const Node* seats = node->find("seats")) {
    for (std::size_t i = 0; i < seats->keys.size(); ++i)
      out.seats[seats->keys[i]] = seats->items[i].text;
  }
  out.waves = static_cast<int>(number_in(*node, "waves").value_or(0));
  out.lines = texts_in(*node, "lines");
  return out;
}

base::Result<std::optional<Node>> kept_plan_node(Context& context, const std::string& id,
                                                 std::optional<std::int64_t> version) {
  auto found = version ? context.store.get(Kind::kPlan, id, *version)
                       : context.store.get(Kind::kPlan, id);
  if (!found) return found.problems();
  if (!found.value() || found.value()->deleted) return std::optional<Node>();
  base::Problems broken;
  auto node = kitchen::parse_json(found.value()->body, "", broken);
  if (!node) return broken;
  return std::optional<Node>(std::move(*node));
}

Node versions_of(Context& context, const std::string& id) {
  Node list = Node::list();
  const auto history = context.store.history(Kind::kPlan, id);
  if (!history) return list;
  for (const store::Change& change : history.value()) {
    Node& one = list.add(Node::object());
    one.set("version", Node::of(static_cast<double>(change.version)));
    one.set("at", Node::of(change.at));
    one.set("says", Node::of(change.what));
  }
  return list;
}

std::string lesson_plan_text(Context& context, const std::string& id, const Node& plan,
                             std::int64_t lesson_version_now, const std::string& body) {
  const Node* answer = plan.find("answer");
  const Node* changed = plan.find("changed");
  const auto planned_version = static_cast<std::int64_t>(
      number_in(plan, "lesson_version").value_or(0));
  return json_object(
      {{"lesson", http::json_quoted(id)},
       {"lesson_version", say(planned_version)},
       {"answer", answer == nullptr ? std::string("{}") : json_line(*answer)},
       {"body", body},
       {"changed", changed == nullptr ? std::string("[]") : json_line(*changed)},
       {"lines_moved", say(static_cast<int>(number_in(plan, "lines_moved").value_or(0)))},
       {"versions", json_line(versions_of(context, id))},
       {"stale", planned_version == lesson_version_now ? "false" : "true"}});
}

/// Better first: verdict, then waves, then minutes over or spare.
std::tuple<int, int, std::int64_t> worth(const timeplan::Answer& answer) {
  const bool fits = answer.verdict == timeplan::Verdict::kFits;
  const int waves = answer.plan ? answer.plan->waves : 99;
  return {fits ? 0 : 1, waves, fits ? 0 : answer.overrun.count()};
}

}  // namespace

base::Result<Planned> plan_it(Context& context, kitchen::Lesson lesson, const PlanWish& wish,
                              JobDesk* desk, const std::optional<desk::Printed>& before) {
  const auto notes = desk::add_allergens(lesson, *context.kept.foods(), *context.kept.labels());
  if (!notes) return notes.problems();
  timeplan::Answer answer = answer_for(lesson, wish, desk, kSeed, true);
  if (wish.keep_lines && !wish.standing && before && before->waves > 0 && answer.plan) {
    const auto moved = [&](const timeplan::Answer& made) {
      return desk::what_changed(*before, desk::printed(lesson, made)).lines_moved;
    };
    int least = moved(answer);
    auto best = worth(answer);
    std::uint64_t taken = kSeed;
    for (std::uint64_t seed = kSeed + 1; seed < kSeed + kTries && least > 0; ++seed) {
      const timeplan::Answer other = answer_for(lesson, wish, desk, seed, false);
      if (!other.plan || worth(other) > best) continue;
      const int lines = moved(other);
      if (lines >= least) continue;
      least = lines;
      best = worth(other);
      taken = seed;
    }
    if (taken != kSeed) answer = answer_for(lesson, wish, desk, taken, true);
  }
  desk::finish_plan(lesson, answer, notes.value());
  return Planned{std::move(lesson), std::move(answer)};
}

Node digest_of(const Planned& planned) {
  const timeplan::Answer& answer = planned.answer;
  Node node = Node::object();
  const bool fits = answer.verdict == timeplan::Verdict::kFits;
  node.set("verdict", Node::of(fits                                               ? "fits"
                               : answer.verdict == timeplan::Verdict::kDoesNotFit ? "does not fit"
                                                                                  : "not found"));
  const auto spare = answer.spare.count() / 60, over = answer.overrun.count() / 60;
  node.set("says", Node::of(fits       ? say("It fits: ", spare, " min spare")
                            : over > 0 ? say("Does not fit: ", over, " min over")
                            : answer.verdict == timeplan::Verdict::kDoesNotFit
                                ? std::string("Does not fit")
                                : std::string("No plan found yet")));
  if (answer.chance) {
    Node& chance = node.set("chance", Node::object());
    chance.set("word", Node::of(timeplan::word(answer.chance->word)));
    chance.set("about", Node::of(answer.chance->about));
    chance.set("in_100", Node::of(static_cast<int>(std::lround(answer.chance->room * 100))));
    Node& marks = chance.set("marks", Node::list());
    const auto bell = planned.lesson.bell - planned.lesson.check_out;
    for (const base::Seconds mark : answer.chance->marks)
      marks.add(Node::of(std::round(static_cast<double>((mark - bell).count()) / 6.0) / 10.0));
  } else {
    node.set("chance", Node());
  }
  node.set("reason", Node::of(answer.causes.empty() ? std::string() : answer.causes.front().says));
  const auto works = std::find_if(answer.remedies.begin(), answer.remedies.end(),
                                  [](const timeplan::Remedy& each) { return each.fits; });
  if (works != answer.remedies.end()) {
    Node& remedy = node.set("remedy", Node::object());
    remedy.set("code", Node::of(works->code));
    remedy.set("says", Node::of(works->says));
    remedy.set("buys", Node::of(works->buys));
  } else {
    node.set("remedy", Node());
  }
  return node;
}

std::string loose_plan(const Planned& planned) {
  return json_object({{"lesson", "null"},
                      {"lesson_version", "0"},
                      {"answer", print::answer_json(planned.lesson, planned.answer)},
                      {"body", kitchen::write_lesson(planned.lesson)},
                      {"changed", "[]"},
                      {"lines_moved", "0"},
                      {"versions", "[]"},
                      {"stale", "false"}});
}

base::Result<std::string> plan_kept(Context& context, const std::string& id, const PlanWish& wish,
                                    JobDesk* desk, const std::string& who) {
  auto kept = context.kept.lesson(id);
  if (!kept) return kept.problems();
  const auto old = kept_plan_node(context, id, {});
  if (!old) return old.problems();
  std::optional<desk::Printed> before;
  if (old.value()) before = printed_in(*old.value());
  auto made = plan_it(context, kept.value().lesson, wish, desk, before);
  if (!made) return made.problems();
  const auto planned = std::make_shared<const Planned>(std::move(made).value());
  const desk::Printed printed = desk::printed(planned->lesson, planned->answer);
  const desk::WhatChanged change = before ? desk::what_changed(*before, printed)
                                          : desk::WhatChanged{};

  const store::Document& document = kept.value().document;
  Node body = Node::object();
  body.set("kind", Node::of("plan"));
  body.set("version", Node::of(1));
  body.set("lesson_version", Node::of(static_cast<double>(document.version)));
  body.set("seconds", Node::of(wish.seconds));
  body.set("digest", digest_of(*planned));
  body.set("printed", printed_node(printed));
  body.set("changed", texts(change.says));
  body.set("lines_moved", Node::of(change.lines_moved));
  base::Problems broken;
  auto answer = kitchen::parse_json(print::answer_json(planned->lesson, planned->answer), "",
                                    broken);
  if (!answer) return broken;
  body.set("answer", std::move(*answer));

  store::Draft draft;
  draft.body = kitchen::json_text(body);
  draft.title = document.title;
  draft.day = document.day;
  const std::string verdict = text_in(*body.find("digest"), "says");
  const store::Act act{who, wish.what.empty() ? verdict : wish.what + " " + verdict + "."};
  // A plan follows from its lesson: whoever planned last is right, so a clash is written over.
  const auto written = context.store.transact(
      [&](store::Writer& writer) -> base::Result<store::Outcome> {
        const auto there = writer.get(Kind::kPlan, id);
        if (!there) return there.problems();
        if (!there.value() || there.value()->deleted) {
          const auto created = writer.create(Kind::kPlan, id, draft, act);
          if (!created) return created.problems();
        } else {
          const auto replaced = writer.replace(Kind::kPlan, id, there.value()->version, draft, act);
          if (!replaced) return replaced.problems();
        }
        return store::Outcome::kKeep;
      });
  if (!written) return written.problems();
  context.workings.plans.put(id, say(document.version), planned);
  tell_changed(context, "plan", id, document.version, document.title);
  const auto now = context.store.get(Kind::kLesson, id);
  const std::int64_t version_now = now && now.value() ? now.value()->version : document.version;
  return lesson_plan_text(context, id, body, version_now, document.body);
}

base::Result<std::string> kept_plan(Context& context, const std::string& id,
                                    std::optional<std::int64_t> version) {
  const auto lesson = context.kept.document(Kind::kLesson, id);
  if (!lesson) return lesson.problems();
  const auto changes = context.store.history(Kind::kPlan, id);
  if (!changes) return changes.problems();
  const std::string mark = say(lesson.value().version, "/",
                               changes.value().empty() ? 0 : changes.value().front().version);
  const std::string name = say(id, "/", version.value_or(0));
  if (const auto there = context.workings.plan_texts.get(name, mark)) return *there;
  const auto plan = kept_plan_node(context, id, version);
  if (!plan) return plan.problems();
  if (!plan.value())
    return base::Problem{"store.not_found", "", "", "This lesson has not been planned yet.",
                         "Plan it."};
  return *context.workings.plan_texts.put(
      name, mark,
      lesson_plan_text(context, id, *plan.value(), lesson.value().version, lesson.value().body));
}

namespace {

/// The plan in a kept plan's document; null unless it fits and was made for this version of the
/// lesson.
std::shared_ptr<const Planned> standing_in(const KeptLesson& kept, const Node& plan) {
  const Node* answer = plan.find("answer");
  if (answer == nullptr || text_in(*answer, "verdict") != "fits" ||
      number_in(plan, "lesson_version") != static_cast<double>(kept.document.version))
    return nullptr;
  Planned out{kept.lesson, {}};
  if (print::own_timelines_in(*answer)) out.lesson.timelines = kitchen::Timelines::kOwn;
  out.answer.plan = print::plan_in(out.lesson, *answer);
  if (!out.answer.plan) return nullptr;
  out.answer.verdict = timeplan::Verdict::kFits;
  return std::make_shared<const Planned>(std::move(out));
}

constexpr std::size_t kFarBack = 12;  // versions; who changes that often prints again

/// The newest kept plan that fits; of that version of the lesson, when one is named.
std::shared_ptr<const Planned> last_that_fits(Context& context, const std::string& id,
                                              std::optional<std::int64_t> wanted = {}) {
  const auto history = context.store.history(Kind::kPlan, id);
  if (!history) return nullptr;
  for (std::size_t i = 0; i < std::min(kFarBack, history.value().size()); ++i) {
    const auto plan = kept_plan_node(context, id, history.value()[i].version);
    if (!plan || !plan.value()) return nullptr;
    const auto version = static_cast<std::int64_t>(
        number_in(*plan.value(), "lesson_version").value_or(0));
    if (wanted && version != *wanted) continue;
    auto document = context.store.get(Kind::kLesson, id, version);
    if (!document || !document.value() || document.value()->deleted) return nullptr;
    auto lesson = context.kept.lesson_in(document.value()->body, id);
    if (!lesson) return nullptr;
    const KeptLesson kept{*std::move(document).value(), std::move(lesson).value()};
    if (auto planned = standing_in(kept, *plan.value())) return planned;
  }
  return nullptr;
}

/// The plan of an earlier version of the lesson that said the same as `body`, before the one that
/// was seen.
std::shared_ptr<const Planned> plan_it_had(Context& context, const std::string& id,
                                           const std::string& body, std::int64_t seen) {
  const auto wanted = store::canonical_json(body);
  if (!wanted) return nullptr;
  const std::int64_t oldest = std::max<std::int64_t>(1, seen - std::int64_t{kFarBack});
  for (std::int64_t version = seen - 1; version >= oldest; --version) {
    const auto document = context.store.get(Kind::kLesson, id, version);
    if (!document || !document.value() || document.value()->deleted) continue;
    const auto said = store::canonical_json(document.value()->body);
    if (!said || said.value() != wanted.value()) continue;
    if (auto planned = last_that_fits(context, id, version)) return planned;
  }
  return nullptr;
}

}  // namespace

// A change that no plan follows leaves the one before it on the wall.
std::shared_ptr<const Planned> standing_plan(Context& context, const std::string& id,
                                             std::int64_t lesson_version, const std::string& body) {
  if (auto had = plan_it_had(context, id, body, lesson_version)) return had;
  if (auto made = context.workings.plans.get(id, say(lesson_version));
      made && made->answer.verdict == timeplan::Verdict::kFits)
    return made;
  const auto newest = kept_plan_node(context, id, {});
  if (!newest || !newest.value() ||
      number_in(*newest.value(), "lesson_version") != static_cast<double>(lesson_version))
    return nullptr;
  return last_that_fits(context, id);
}

base::Result<std::shared_ptr<const Planned>> planned_for_paper(Context& context,
                                                               const std::string& id) {
  auto kept = context.kept.lesson(id);
  if (!kept) return kept.problems();
  const std::string mark = say(kept.value().document.version);
  if (auto there = context.workings.plans.get(id, mark)) return there;
  const auto plan = kept_plan_node(context, id, {});
  if (!plan) return plan.problems();
  PlanWish wish;
  wish.seconds = plan.value() ? number_in(*plan.value(), "seconds").value_or(context.plan_seconds)
                              : context.plan_seconds;
  std::optional<desk::Printed> before;
  if (plan.value()) before = printed_in(*plan.value());
  wish.keep_lines = before.has_value();
  // A plan that was kept through a change does not come of its seed: its own times are held.
  const Node* answer = plan.value() ? plan.value()->find("answer") : nullptr;
  const Node* work = answer == nullptr ? nullptr : answer->find("work");
  if (work != nullptr && flag_in(*work, "kept_standing"))
    wish.standing = standing_in(kept.value(), *plan.value());
  auto made = plan_it(context, kept.value().lesson, wish, nullptr, before);
  if (!made) return made.problems();
  auto planned = std::make_shared<const Planned>(std::move(made).value());
  context.workings.plans.put(id, mark, std::shared_ptr<const Planned>(planned));
  return planned;
}

}  // namespace serve
