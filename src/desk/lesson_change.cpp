#include "desk/lesson_change.h"

#include <algorithm>
#include <vector>

#include "base/text.h"
#include "desk/change_parts.h"
#include "desk/written_lesson.h"
#include "kitchen/check_lesson.h"
#include "kitchen/fields.h"
#include "kitchen/json_tree.h"
#include "kitchen/words.h"
#include "timeplan/changes.h"

namespace desk {
namespace {

using base::in_quotes;
using base::Problem;
using base::Problems;
using base::Result;
using base::say;
using kitchen::Lesson;
using kitchen::Node;

constexpr kitchen::Word<ChangeKind> kChangeWords[] = {{"remedy", ChangeKind::kRemedy},
                                                      {"pace", ChangeKind::kPace},
                                                      {"away", ChangeKind::kAway},
                                                      {"not here", ChangeKind::kNotHere},
                                                      {"swap", ChangeKind::kSwap},
                                                      {"pin", ChangeKind::kPin},
                                                      {"close cooker", ChangeKind::kCloseCooker},
                                                      {"move window", ChangeKind::kMoveWindow},
                                                      {"add stop", ChangeKind::kAddStop},
                                                      {"add gate", ChangeKind::kAddGate},
                                                      {"pin step", ChangeKind::kPinStep},
                                                      {"unpin step", ChangeKind::kUnpinStep},
                                                      {"bell", ChangeKind::kBell},
                                                      {"purpose", ChangeKind::kPurpose},
                                                      {"dish", ChangeKind::kDish}};

Sentence apply(LessonDocument& doc, const Lesson& lesson, const LessonChange& c) {
  switch (c.kind) {
    case ChangeKind::kPace:
      return set_pace(doc, lesson, c);
    case ChangeKind::kAway:
      return set_away(doc, lesson, c);
    case ChangeKind::kNotHere:
      return not_here(doc, lesson, c);
    case ChangeKind::kSwap:
      return swap(doc, lesson, c);
    case ChangeKind::kPin:
      return pin(doc, lesson, c);
    case ChangeKind::kCloseCooker:
      return close_cooker(doc, lesson, c);
    case ChangeKind::kMoveWindow:
      return move_window(doc, lesson, c);
    case ChangeKind::kAddStop:
      return add_stop(doc, lesson, c);
    case ChangeKind::kAddGate:
      return add_gate(doc, lesson, c);
    case ChangeKind::kPinStep:
      return pin_step(doc, lesson, c);
    case ChangeKind::kUnpinStep:
      return unpin_step(doc, lesson, c);
    case ChangeKind::kBell:
      return set_bell(doc, lesson, c);
    case ChangeKind::kPurpose:
      return set_purpose(doc, lesson, c);
    case ChangeKind::kDish:
      return set_dish(doc, lesson, c);
    case ChangeKind::kRemedy:
      break;
  }
  return Problem{"change.unknown", "", "/change", "This change is not known.",
                 "Choose one that is offered."};
}

struct Written {
  std::string text, says;
};

/// "trios + trays set out": one after the other, each by its code.
Result<Written> apply_remedy(const Node& tree, const std::string& file, const Lesson& before,
                             const std::string& code) {
  Lesson lesson = before;
  std::vector<std::string> said;
  for (const std::string& each : base::parts(code, '+')) {
    const auto all = timeplan::changes(lesson);
    const auto known = std::find_if(all.begin(), all.end(), [&](const timeplan::Change& change) {
      return change.code == each;
    });
    auto after = known == all.end() ? std::nullopt : known->apply(lesson);
    if (!after)
      return Problem{
          "change.no_remedy", "", "/code",
          say("The remedy ", in_quotes(each), " does not apply to this lesson any more."),
          "Plan the lesson again and choose one that is offered then."};
    lesson = std::move(*after);
    said.push_back(known->says);
  }
  const base::Problems wrong = kitchen::check(lesson);
  if (!wrong.empty()) return wrong;
  auto text = written_again(tree, file, before, lesson);
  if (!text) return text.problems();
  return Written{std::move(text).value(), base::joined(said)};
}

Result<Written> write_change(std::string_view text, const std::string& file,
                             const kitchen::Loader& loader, const Lesson& lesson,
                             const LessonChange& change) {
  base::Problems problems;
  auto tree = kitchen::parse_json(text, file, problems);
  if (!tree) return problems;
  if (change.kind == ChangeKind::kRemedy) return apply_remedy(*tree, file, lesson, change.code);
  LessonDocument document(std::move(*tree), file, loader);
  const auto said = apply(document, lesson, change);
  if (!said) return said.problems();
  return Written{kitchen::json_text(document.tree()), said.value()};
}

}  // namespace

std::optional<ChangeKind> change_kind(std::string_view word) {
  return kitchen::value_of(kChangeWords, word);
}

Result<Changed> changed(std::string_view text, const std::string& file,
                        const kitchen::Loader& loader, const LessonChange& change) {
  const auto lesson = kitchen::read_lesson(text, file, loader);
  if (!lesson) return lesson.problems();
  const auto written = write_change(text, file, loader, lesson.value(), change);
  if (!written) return written.problems();
  auto read = kitchen::read_lesson(written.value().text, file, loader);
  if (!read) return read.problems();
  return Changed{written.value().text, written.value().says, std::move(read).value()};
}

}  // namespace desk
