#include "print/sheets/labels.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/index.h"
#include "base/text.h"
#include "kitchen/weigh.h"
#include "kitchen/words.h"
#include "print/say_allergens.h"
#include "print/words.h"
#include "safety/annex.h"
#include "safety/statements.h"

namespace print::sheets {
namespace {

using base::at;

struct Known {
  std::string_view name;
  int columns, rows;
  double wide, high, gap;
};
constexpr auto kKnown = std::to_array<Known>({{"3x7", 3, 7, 63.5, 38.1, 2.5},
                                              {"2x7", 2, 7, 99.1, 38.1, 2.5},
                                              {"3x6", 3, 6, 63.5, 46.6, 2.5},
                                              {"3x8", 3, 8, 63.5, 33.9, 2.5},
                                              {"2x4", 2, 4, 99.1, 67.7, 2.5},
                                              {"2x3", 2, 3, 99.1, 93.1, 2.5},
                                              {"5x13", 5, 13, 38.1, 21.2, 2.5}});

std::optional<std::pair<double, double>> pair_of(const std::string& text) {
  const std::vector<std::string> parts = base::parts(text, 'x');
  if (parts.size() != 2) return std::nullopt;
  const auto a = base::number_in(parts[0]), b = base::number_in(parts[1]);
  if (!a || !b || *a <= 0 || *b <= 0) return std::nullopt;
  return std::pair{*a, *b};
}

base::Result<StickerSheet> in_the_middle(StickerSheet sheet, std::string_view said) {
  const double width = sheet.across * (sheet.columns - 1) + sheet.wide;
  const double height = sheet.down * (sheet.rows - 1) + sheet.high;
  if (width > 210.01 || height > 297.01 || sheet.across < sheet.wide || sheet.down < sheet.high) {
    return base::Problem{"stickers.off_page", "", "",
                         base::say("Stickers of ", base::in_quotes(said),
                                   " do not fit side by side on an A4 page (210 x 297 mm)."),
                         "Measure one label and the step from one to the next."};
  }
  sheet.left = (210 - width) / 2;
  sheet.top = (297 - height) / 2;
  return sheet;
}

std::string upper(std::string text) {
  for (char& c : text) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return text;
}

/// "MILK"; for gluten and nuts the cereal and the nut, as far as the food's name tells.
std::string allergen_name(kitchen::Allergen a, const kitchen::Food* food) {
  const std::string word = upper(std::string(kitchen::word(a)));
  if (food == nullptr || (a != kitchen::Allergen::kGluten && a != kitchen::Allergen::kNuts))
    return word;
  const std::vector<std::string> kinds = safety::kinds_in(*food, a);
  return kinds.empty() ? word : upper(joined(kinds, ", "));
}

/// The first part of a title: "9K" of "9K, two dishes".
std::string class_of(const kitchen::Lesson& lesson) {
  return lesson.title.substr(0, lesson.title.find(','));
}

struct Label {
  int cook = 0, dish = 0;
};

Words label_words(const kitchen::Lesson& lesson, const safety::Evidence& evidence,
                  const LabelWish& wish, const Label& label) {
  const kitchen::Dish& dish = lesson.dishes[at(label.dish)];
  const kitchen::Cook& cook = lesson.cooks[at(label.cook)];
  const std::string place = lesson.room.places[at(cook.place)].name;
  Words words;
  words.bold(wish.numbers ? place : place + " " + cook.name).add(" · " + class_of(lesson)).line();
  words.bold(dish_name(dish)).line();
  words.add("Made " + day(lesson.date) + ". ");
  if (wish.given_out) {
    const IngredientList list = ingredient_list(dish, evidence);
    words.add("Ingredients: ").also(list.words).add(". ");
    if (!list.missing.empty()) words.bold("List not whole: not to be sold or given out. ");
  } else {
    words.add("Contains: ").also(contains_words(dish, evidence)).add(". ");
  }
  return words.add(wish.keep.empty()
                       ? keep_words(dish, kitchen::chilled_before_home(lesson, label.dish))
                       : wish.keep);
}

}  // namespace

base::Result<StickerSheet> sticker_sheet(std::string_view said) {
  for (const Known& known : kKnown) {
    if (known.name != said) continue;
    StickerSheet sheet{known.columns,          known.rows, known.wide, known.high, 0, 0,
                       known.wide + known.gap, known.high};
    return in_the_middle(sheet, said);
  }
  const std::vector<std::string> parts = base::parts(said, ' ');
  if ((parts.size() == 2 || (parts.size() == 4 && parts[2] == "step"))) {
    const auto count = pair_of(parts[0]), size = pair_of(parts[1]);
    const auto step = parts.size() == 4 ? pair_of(parts[3]) : size;
    if (count && size && step && count->first <= 20 && count->second <= 40 &&
        count->first == std::floor(count->first) && count->second == std::floor(count->second)) {
      return in_the_middle({static_cast<int>(count->first), static_cast<int>(count->second),
                            size->first, size->second, 0, 0, step->first, step->second},
                           said);
    }
  }
  std::vector<std::string> names;
  for (const Known& known : kKnown) names.emplace_back(known.name);
  return base::Problem{"stickers.unreadable", "", "",
                       base::say(base::in_quotes(said), " is no sheet of stickers."),
                       base::say("Say ", base::joined(names, "or"),
                                 ", or measure: \"2x4 99x68 step 101.5x68\" (columns x rows, one "
                                 "label, step; mm).")};
}

std::string keep_words(const kitchen::Dish& dish, bool from_fridge) {
  const bool rice = std::any_of(
      dish.ingredients.begin(), dish.ingredients.end(),
      [](const auto& i) { return base::lower(i.name).find("rice") != std::string::npos; });
  const bool hot = dish.hold.kind == kitchen::HoldKind::kHot;
  std::string out = from_fridge
                        ? "Out of the school's fridge: home cold, into the fridge (5 °C or below). "
                          "Eat within "
                        : "Cool, then fridge (5 °C or below) within 90 min. Eat within ";
  out += rice ? "1 day (rice)." : "2 days.";
  if (hot) out += " Reheat once, until steaming hot all through.";
  return out;
}

namespace {

/// What is in an ingredient by name, and whether somebody has yet to read its packet.
struct Holds {
  std::vector<std::string> names;  ///< "MILK", "WHEAT"
  bool unread = false;
};

Holds holds(const kitchen::Ingredient& ingredient, const safety::Evidence& evidence) {
  Holds out;
  out.unread = !ingredient.label_read;
  const kitchen::Food* food = safety::food_of(ingredient, evidence.foods);
  const safety::Statements all = safety::statements(ingredient, evidence.foods, evidence.labels);
  for (const kitchen::Allergen a : safety::kFourteen) {
    const safety::Stated stated = all[safety::at(a)].stated;
    if (stated == safety::Stated::kContains && ingredient.label_read)
      out.names.push_back(allergen_name(a, food));
    // "May contain" is the packet's own warning; the other two are questions nobody has answered.
    if (stated == safety::Stated::kMayContain)
      out.names.push_back("may contain " + allergen_name(a, food));
    if (stated == safety::Stated::kUnknown || stated == safety::Stated::kCheckLabel)
      out.unread = true;
  }
  return out;
}

}  // namespace

Words contains_words(const kitchen::Dish& dish, const safety::Evidence& evidence) {
  std::vector<std::string> found, unread;
  const auto add = [](std::vector<std::string>& to, const std::string& name) {
    if (std::find(to.begin(), to.end(), name) == to.end()) to.push_back(name);
  };
  for (const kitchen::Ingredient& ingredient : dish.ingredients) {
    const Holds in_it = holds(ingredient, evidence);
    for (const std::string& name : in_it.names) add(found, name);
    if (in_it.unread) add(unread, ingredient.name);
  }
  Words out = bold(joined(found, ", "));
  if (!unread.empty()) {
    if (!out.empty()) out.add("; ");
    out.bold("READ THE PACKET: " + joined(unread, ", "));
  }
  return out.empty() ? Words("none of the fourteen is listed") : out;
}

IngredientList ingredient_list(const kitchen::Dish& dish, const safety::Evidence& evidence) {
  struct Line {
    Words words;
    double grams = -1;
  };
  IngredientList out;
  std::vector<Line> lines;
  for (const kitchen::Ingredient& ingredient : dish.ingredients) {
    const kitchen::Food* food = safety::food_of(ingredient, evidence.foods);
    Line line;
    line.words.add(ingredient.name);
    Holds in_it = holds(ingredient, evidence);
    if (in_it.unread) {
      out.missing.push_back("the packet of " + ingredient.name);
      in_it.names.emplace_back("READ THE PACKET");
    }
    if (!in_it.names.empty()) line.words.add(" (").bold(joined(in_it.names, ", ")).add(")");
    const kitchen::Quantity quantity = kitchen::quantity_of(ingredient);
    if (food == nullptr) {
      out.missing.push_back("what " + ingredient.name + " is");
    } else if (quantity.stated()) {
      const auto weighed = kitchen::weigh(quantity, *food);
      if (weighed) {
        line.grams = weighed.value().grams.value();
      } else {
        out.missing.push_back("the weight of " + ingredient.name);
      }
    } else {
      line.grams = 0;  // "to taste": under 2 % may follow in any order (Annex VII, part A)
    }
    lines.push_back(std::move(line));
  }
  // What nobody could weigh stands first: rather too high than hidden at the end.
  std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) {
    return (a.grams < 0 ? 1e9 : a.grams) > (b.grams < 0 ? 1e9 : b.grams);
  });
  for (const Line& line : lines) {
    if (!out.words.empty()) out.words.add(", ");
    out.words.also(line.words);
  }
  return out;
}

LabelsDrawn draw_labels(Document& document, const kitchen::Lesson& lesson,
                        const safety::Evidence& evidence, const LabelWish& wish) {
  std::vector<Label> labels;
  for (int c = 0; at(c) < lesson.cooks.size(); ++c) {
    for (const int d : lesson.cooks[at(c)].dishes) labels.push_back({c, d});
  }
  std::stable_sort(labels.begin(), labels.end(), [&](const Label& a, const Label& b) {
    return lesson.cooks[at(a.cook)].place < lesson.cooks[at(b.cook)].place;
  });
  LabelsDrawn out;
  out.smallest = 100;
  document.begin_part(kA4, "");  // nothing but labels: no foot
  const StickerSheet& s = wish.sheet;
  const int per_page = s.columns * s.rows;
  int slot = std::clamp(wish.gone, 0, per_page - 1), page = -1;
  for (const Label& label : labels) {
    if (page < 0 || slot == per_page) {
      page = document.add_page();
      slot = page >= 0 && slot == per_page ? 0 : slot;
    }
    const Box box{(s.left + slot % s.columns * s.across) * kMm,
                  (s.top + slot / s.columns * s.down) * kMm, s.wide * kMm, s.high * kMm};
    const Box in = box.inset(2.2 * kMm);
    const Block words = document.set_in(label_words(lesson, evidence, wish, label), {11}, in.w,
                                        in.h, 3);
    document.on(page).put(words, in.x, in.y);
    out.smallest = std::min(out.smallest, words.size);
    ++out.labels;
    ++slot;
  }
  if (page < 0) document.add_page();
  if (wish.given_out) {
    for (const int d : dishes_made(lesson)) {
      const IngredientList list = ingredient_list(lesson.dishes[at(d)], evidence);
      if (!list.missing.empty())
        out.not_whole.push_back(dish_name(lesson.dishes[at(d)]) + ": " + listed(list.missing));
    }
  }
  return out;
}

std::string pdf_of_labels(const kitchen::Lesson& lesson, const safety::Evidence& evidence,
                          const LabelWish& wish) {
  Document document(lesson.title, lesson.date);
  draw_labels(document, lesson, evidence, wish);
  return document.pdf();
}

}  // namespace print::sheets
