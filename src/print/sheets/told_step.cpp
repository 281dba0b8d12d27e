#include "print/sheets/told_step.h"

#include <algorithm>
#include <array>

#include "base/index.h"
#include "base/text.h"
#include "print/words.h"

namespace print::sheets {
namespace {

using base::at;

// What an instruction begins with. Words that are as often a thing as an action ("oil", "salt",
// "top", "butter") are left out: a sentence is rather left whole than cut in the wrong place.
constexpr auto kActions = std::to_array<std::string_view>(
    {"add",     "arrange", "bake",     "bash",    "beat",   "blend",    "boil",   "break",
     "bring",   "brown",   "brush",    "carry",   "check",  "chill",    "chop",   "claw",
     "clean",   "clear",   "collect",  "cook",    "cool",   "cover",    "crack",  "crumble",
     "crush",   "cut",     "dice",     "dip",     "divide", "drain",    "drop",   "dry",
     "empty",   "fill",    "fit",      "flip",    "fold",   "fry",      "gather", "grate",
     "grind",   "halve",   "heat",     "hold",    "keep",   "knead",    "ladle",  "lay",
     "leave",   "let",     "lid",      "lift",    "line",   "lower",    "make",   "mash",
     "measure", "melt",    "mix",      "move",    "open",   "pack",     "pat",    "peel",
     "pinch",   "pipe",    "place",    "portion", "pour",   "press",    "pull",   "purée",
     "push",    "put",     "read",     "remove",  "rest",   "rinse",    "roll",   "rub",
     "scrape",  "scrub",   "seal",     "season",  "seed",   "separate", "serve",  "set",
     "shape",   "share",   "sift",     "simmer",  "skim",   "slice",    "slide",  "soften",
     "spoon",   "spread",  "sprinkle", "squeeze", "stand",  "stir",     "stop",   "strain",
     "swirl",   "switch",  "take",     "taste",   "tear",   "thicken",  "tidy",   "tip",
     "toss",    "trim",    "turn",     "unroll",  "warm",   "wash",     "weigh",  "whisk",
     "wipe",    "wrap",    "write"});
// After one of these the sentence is one thought: cutting it could turn it round.
constexpr auto kHolds = std::to_array<std::string_view>(
    {"not", "never", "don't", "no", "without", "nor", "unless"});
// A part that begins with one of these cannot stand alone.
constexpr auto kHangs = std::to_array<std::string_view>(
    {"when", "if", "once", "as", "while", "before", "after", "until", "because", "so", "on", "in",
     "with", "at", "under", "from", "for"});

template <class List>
bool in(const List& list, std::string_view word) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

std::string first_word(std::string_view text) {
  std::size_t i = 0;
  while (i < text.size() && text[i] != ' ' && text[i] != ',' && text[i] != '.') ++i;
  return base::lower(text.substr(0, i));
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  std::string word;
  for (const char c : std::string(text) + " ") {
    if (c != ' ' && c != ',') {
      word += c;
    } else if (!word.empty()) {
      out.push_back(base::lower(word));
      word.clear();
    }
  }
  return out;
}

/// May the sentence end after `before`?
bool stands_alone(std::string_view before) {
  const std::vector<std::string> words = words_of(before);
  if (words.empty() || in(kHangs, words.front())) return false;
  return std::none_of(words.begin(), words.end(),
                      [](const std::string& w) { return in(kHolds, w); });
}

/// How many letters of separator stand at `i` when a new instruction begins behind it; else 0.
std::size_t cut_at(std::string_view text, std::size_t i, std::string_view before) {
  if (text.substr(i, 2) == "; ") return 2;
  if (!stands_alone(before)) return 0;
  if (text.substr(i, 7) == ", then ")  // "then" stays: it says the order
    return in(kActions, first_word(text.substr(i + 7))) ? 2 : 0;
  if (text.substr(i, 6) == ", and " && in(kActions, first_word(text.substr(i + 6)))) return 6;
  if (text.substr(i, 2) == ", " && in(kActions, first_word(text.substr(i + 2)))) {
    // A list of actions: "stir, taste and season" is said in one breath.
    const std::string_view rest = text.substr(i + 2);
    const std::size_t comma = std::min(rest.find(", "), rest.find(" and "));
    const std::size_t words = words_of(rest.substr(0, comma)).size();
    return words >= 2 || comma == std::string_view::npos ? 2 : 0;
  }
  if (text.substr(i, 5) == " and " && in(kActions, first_word(text.substr(i + 5)))) {
    std::string_view last = before;
    if (const std::size_t comma = last.rfind(", "); comma != std::string_view::npos)
      last = last.substr(comma + 2);
    return words_of(last).size() >= 4 && words_of(text.substr(i + 5)).size() >= 3 ? 5 : 0;
  }
  return 0;
}

std::string what_for(const kitchen::Lesson& lesson, const Task& task) {
  std::vector<std::string> next;
  const std::vector<kitchen::Step>& method = lesson.dishes[at(task.dish)].method;
  for (const kitchen::Step& step : method) {
    const bool follows = std::any_of(step.follows.begin(), step.follows.end(), [&](const auto& f) {
      return f.step == task.step && f.of == kitchen::Moment::kEnd;
    });
    if (follows && !step.brief.empty()) next.push_back(base::lower(step.brief));
  }
  return next.empty() ? "" : " Needed for: " + listed(next) + ".";
}

std::string heat_words(const kitchen::Lesson& lesson, const Task& task, const kitchen::Step& step) {
  const std::string cooker = task.cooker >= 0 ? lesson.room.cookers[at(task.cooker)].name : "";
  if (!step.heat) return "";
  if (step.heat->with == kitchen::HeatKind::kRing) {
    const bool already = step.heat->vessel.find("pan") != std::string::npos;
    return capital(step.heat->vessel) + (cooker.empty() ? "" : ", cooker " + cooker) +
           (already ? ". Handle turned in." : ".");
  }
  std::string out = task.setting ? setting(*task.setting) : setting(step.heat->setting);
  out = (cooker.empty() ? "" : "Oven " + cooker + ", ") + out + ".";
  if (step.heat->door_shut > Seconds{0})
    out += " Door shut for " + minutes(step.heat->door_shut) + ".";
  return capital(out) + " Dry oven gloves.";
}

std::string hazard_words(kitchen::Hazard h) {
  switch (h) {
    case kitchen::Hazard::kHotOil:
      return "Hot oil: wait for your teacher, never leave it.";
    case kitchen::Hazard::kFirstKnife:
      return "Sharp: wait until your teacher is with you.";
    case kitchen::Hazard::kLargePan:
      return "Hot and heavy: wait for your teacher.";
    case kitchen::Hazard::kBlender:
      return "Sharp blades: wait for your teacher.";
    case kitchen::Hazard::kProbing:
      return "Clean the probe first; your teacher looks.";
    case kitchen::Hazard::kAdultOnly:
      return "Only an adult does this.";
  }
  return "";
}

std::string closing_words(const kitchen::Lesson& lesson, const Task& task,
                          const kitchen::Step& step) {
  const std::vector<kitchen::Step>& method = lesson.dishes[at(task.dish)].method;
  if (!step.closes || at(*step.closes) >= method.size()) return "";
  const kitchen::Step& hot = method[at(*step.closes)];
  if (!hot.heat) return "";
  return hot.heat->with == kitchen::HeatKind::kRing ? "Hot pan: ring off."
                                                    : "Hot tray: dry oven gloves.";
}

bool cuts(const kitchen::Step& step) {
  return std::any_of(step.kit.begin(), step.kit.end(), [](const kitchen::KitNeed& need) {
    return need.item.find("knife") != std::string::npos;
  });
}

std::string step_look_out(const kitchen::Lesson& lesson, const Task& task) {
  const kitchen::Step& step = *step_of(lesson, task);
  std::vector<std::string> parts;
  const auto add = [&](std::string text) {
    if (!text.empty()) parts.push_back(std::move(text));
  };
  if (step.hazard) add(hazard_words(*step.hazard));
  if (step.gate) add("Then stop for the look: " + stopped(step.gate->look_for));
  add(heat_words(lesson, task, step));
  add(closing_words(lesson, task, step));
  if (step.hygiene == kitchen::Hygiene::kRaw) add("Raw: its own board, then wash hands.");
  if (cuts(step) && !step.hazard) add("Claw or bridge; knife down flat.");
  if (parts.empty() && !step.kit.empty()) {
    std::vector<std::string> items;
    for (const kitchen::KitNeed& need : step.kit) items.push_back(need.item);
    add("You need: " + listed(items) + ".");
  }
  return joined(parts);
}

}  // namespace

std::string_view word(Level level) {
  switch (level) {
    case Level::kFew:
      return "few words";
    case Level::kPlain:
      return "plain";
    case Level::kFull:
      break;
  }
  return "full";
}

std::string in_short_sentences(std::string_view sentence) {
  std::string out, part;
  for (std::size_t i = 0; i < sentence.size();) {
    const std::size_t skip = part.empty() ? 0 : cut_at(sentence, i, part);
    if (skip == 0) {
      part += sentence[i++];
      continue;
    }
    out += stopped(capital(part)) + " ";
    part.clear();
    i += skip;
  }
  return out + stopped(capital(part));
}

std::string told(const kitchen::Lesson& lesson, const Task& task, Level level) {
  const std::string says = sentence(lesson, task);
  const bool step = task.kind == TaskKind::kStep;
  switch (level) {
    case Level::kFew:
      return stopped(capital(step ? brief(lesson, task) : says));
    case Level::kPlain:
      return step ? in_short_sentences(says) : stopped(says);
    case Level::kFull:
      break;
  }
  return stopped(says) + (step ? what_for(lesson, task) : "");
}

std::string look_out(const kitchen::Lesson& lesson, const Task& task, bool still_hot) {
  switch (task.kind) {
    case TaskKind::kStep:
      return step_of(lesson, task) == nullptr ? "" : step_look_out(lesson, task);
    case TaskKind::kApronAndHands:
      return "Hair back, rings off, sleeves up.";
    case TaskKind::kCollectIngredients:
      return "Read the label on your own tray.";
    case TaskKind::kHandWash:
      return "Soap, backs and between fingers, dry.";
    case TaskKind::kCleanDown:
      return "Hot soapy water, then dry.";
    case TaskKind::kKitWash:
    case TaskKind::kFullClean:
      return "Blades last; never left in the sink.";
    case TaskKind::kLook:
      return "Hand up; wait for the look.";
    case TaskKind::kStore:
      return "Name and date on it.";
    case TaskKind::kPack:
      return kitchen::chilled_before_home(lesson, task.dish)
                 ? "Cool first. Name and date on it. Into the fridge."
                 : "Cool first. Name and date on it.";
    case TaskKind::kWashUp:
      return still_hot ? "Knives one by one. Yours is still cooking: keep an eye on it."
                       : "Rings and oven off. Knives one by one.";
    case TaskKind::kWindow:
      return lesson.windows[at(task.window)].kind == kitchen::WindowKind::kBreak
                 ? ""
                 : "Hands off. Look and listen.";
    case TaskKind::kCollectEquipment:
    case TaskKind::kTakeOutOfStore:
    case TaskKind::kBayLook:
    case TaskKind::kKnivesOut:
    case TaskKind::kKnivesIn:
      break;
  }
  return "";
}

}  // namespace print::sheets
