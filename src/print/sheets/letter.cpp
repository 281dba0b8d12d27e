#include "print/sheets/letter.h"

#include <algorithm>

#include "base/index.h"
#include "base/text.h"
#include "print/say_allergens.h"
#include "print/words.h"

namespace print::sheets {
namespace {

using base::at;

/// The dishes by their own names, each once: variants say who, not what.
std::vector<std::string> dishes_of(const kitchen::Lesson& lesson) {
  std::vector<std::string> out;
  for (const int d : dishes_made(lesson)) {
    std::string name = lesson.dishes[at(d)].name;
    for (const kitchen::Dish& dish : lesson.dishes) {
      if (dish.tag == lesson.dishes[at(d)].tag && dish.variant.empty()) name = dish.name;
    }
    if (std::find(out.begin(), out.end(), name) == out.end()) out.push_back(name);
  }
  return out;
}

bool goes_home(const kitchen::Lesson& lesson) {
  return lesson.purpose == kitchen::Purpose::kTakeHome;
}

/// Whether the school chills what goes home, by its house rules.
bool from_fridge(const kitchen::Lesson& lesson) {
  const std::vector<int> made = dishes_made(lesson);
  return std::any_of(made.begin(), made.end(),
                     [&](int d) { return kitchen::chilled_before_home(lesson, d); });
}

std::string class_of(const kitchen::Lesson& lesson) {
  return lesson.title.substr(0, lesson.title.find(','));
}

std::string opening(const kitchen::Lesson& lesson) {
  const std::string who = class_of(lesson).empty() ? "the class" : class_of(lesson);
  std::string out = "On " + day(lesson.date) + " " + who + " cooks " +
                    base::joined(dishes_of(lesson)) + ", from " +
                    kitchen::clock(lesson, Seconds{0}) + " to " +
                    kitchen::clock(lesson, lesson.bell);
  if (!lesson.room.name.empty()) out += " in " + lesson.room.name;
  return out + ".";
}

std::vector<std::string> to_have_along(const kitchen::Lesson& lesson) {
  std::vector<std::string> out;
  if (goes_home(lesson))
    out.push_back("A box with a lid, large enough, with a name on it. The food comes home in it.");
  out.emplace_back("An apron, and something to tie long hair back. The school has some to lend.");
  return out;
}

std::vector<std::string> asks(const Letter& letter) {
  std::vector<std::string> out;
  const bool several = dishes_of(letter.lesson).size() > 1;
  for (const larder::BringList& list : letter.bring) {
    for (const larder::BringLine& line : list.lines) {
      std::string item = line.text + (line.used.empty() ? "." : ". " + line.used);
      if (several) item = "For " + list.dish + ": " + item;
      if (std::find(out.begin(), out.end(), item) == out.end()) out.push_back(std::move(item));
    }
  }
  return out;
}

constexpr const char* kSchoolHasAll = "The school has all the ingredients ready.";
constexpr const char* kCold =
    "Keep cold food cold until it is in the school's fridge, and leave the packet or its label on: "
    "we read every label for allergens.";
constexpr const char* kChilledFirst =
    "What needs the fridge is cooled and chilled at school and goes home cold at the end of the "
    "day; a cool bag helps on a long way. ";
constexpr const char* kQuietly =
    "If bringing any of this is difficult, tell the school office or the food teacher; it is "
    "settled quietly and nobody else is told.";
constexpr const char* kSwaps =
    "Something your child does not eat, for whatever reason? Nearly everything can be swapped. "
    "Write it on the slip and we say what to use instead.";
constexpr const char* kAllergies =
    "Has anything changed about allergies, medicine or asthma? Please tell us now, also if you "
    "have told us before.";

/// Swaps that the dishes of the lesson know of: "Fruit scones: oat drink and spread".
std::vector<std::string> known_swaps(const kitchen::Lesson& lesson) {
  std::vector<std::string> out;
  for (const kitchen::Dish& dish : lesson.dishes) {
    if (dish.variant.empty()) continue;
    const std::string name = dish_name(dish);
    if (std::find(out.begin(), out.end(), name) == out.end()) out.push_back(name);
  }
  return out;
}

std::string reply_words(const Letter& letter) {
  return "Please send this back by " +
         (letter.reply_by.empty() ? std::string("____________") : letter.reply_by) + ".";
}

}  // namespace

void draw_letter(Document& document, const Letter& letter) {
  const kitchen::Lesson& lesson = letter.lesson;
  document.begin_part(kA4, stopped(lesson.title) + " " + day(lesson.date), lesson.title);
  Flow flow = Flow::on_new_page(document);
  const Type text{11.5};
  draw_head(flow, {"", "Cooking on " + day(lesson.date),
                   joined({class_of(lesson),
                           lesson.rules.school.empty() ? "Food and cookery" : lesson.rules.school},
                          " · "),
                   "", "", false});
  flow.gap(6);
  flow.paragraph("Dear parents and carers,", text);
  flow.gap(4);
  flow.paragraph(opening(lesson), text);
  const std::vector<std::string> bring = asks(letter);
  flow.heading("Please bring", 14);
  Table list;
  list.columns = {{"", 5, {}}, {"", 95, text}};
  list.rules = false;
  for (const std::string& item : bring) list.rows.push_back({{tick_cell(), {item}}});
  for (const std::string& item : to_have_along(lesson))
    list.rows.push_back({{tick_cell(), {item}}});
  flow.table(list);
  if (bring.empty()) {
    flow.paragraph(kSchoolHasAll, text);
  } else {
    flow.paragraph(kCold, text);
    flow.paragraph(bold(kQuietly), text);
  }
  flow.heading("Swaps and allergies", 14);
  flow.paragraph(kSwaps, text);
  const std::vector<std::string> swaps = known_swaps(lesson);
  if (!swaps.empty()) flow.paragraph("We also have: " + joined(swaps, "; ") + ".", text);
  flow.paragraph(kAllergies, text);
  if (goes_home(lesson))
    flow.paragraph(
        std::string(from_fridge(lesson) ? kChilledFirst : "") +
            "At home: into the fridge within 90 minutes, eat within two days, and heat once "
            "until steaming hot all through.",
        text);
  flow.gap(8);
  flow.need(190);
  flow.canvas().dashes(flow.x(), flow.y(), flow.x() + flow.width(), flow.y(), 0.75);
  flow.gap(6);
  flow.paragraph(bold(reply_words(letter)), {12});
  flow.to_fill_in("Name and class", 1, text);
  Table answers;
  answers.columns = {{"", 5, {}}, {"", 95, text}};
  answers.rules = false;
  std::vector<std::string> choices;
  if (!bring.empty()) {
    choices.emplace_back("We bring what is on the list.");
    choices.emplace_back("Please let the school supply it.");
  }
  choices.emplace_back("My child may taste what is cooked.");
  for (const std::string& choice : choices) answers.rows.push_back({{tick_cell(), {choice}}});
  flow.table(answers);
  flow.to_fill_in("Not eaten, allergies, medicine", 2, text);
  flow.to_fill_in("Signed, and a number for the day", 1, text);
}

std::string pdf_of_letter(const Letter& letter) {
  Document document(letter.lesson.title, letter.lesson.date);
  draw_letter(document, letter);
  return document.pdf();
}

std::string text_of_letter(const Letter& letter) {
  const kitchen::Lesson& lesson = letter.lesson;
  std::string out = "Cooking on " + day(lesson.date) + ", " + class_of(lesson) + "\n\n" +
                    opening(lesson) + "\n\nPlease bring:\n";
  const std::vector<std::string> bring = asks(letter);
  for (const std::string& item : bring) out += "- " + item + "\n";
  for (const std::string& item : to_have_along(lesson)) out += "- " + item + "\n";
  out += bring.empty() ? std::string("\n") + kSchoolHasAll + "\n"
                       : std::string("\n") + kCold + "\n\n" + kQuietly + "\n";
  out += std::string("\n") + kSwaps + " " + kAllergies + "\n";
  if (from_fridge(lesson)) out += std::string("\n") + kChilledFirst + "\n";
  out += "\nPlease answer by " +
         (letter.reply_by.empty() ? std::string("the day before") : letter.reply_by) + ": ";
  out += bring.empty() ? "" : "do you bring this, or shall the school supply it? ";
  return out + "May your child taste what is cooked? What is not eaten?\n";
}

}  // namespace print::sheets
