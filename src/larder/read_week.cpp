#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/fields.h"
#include "larder/week.h"
#include "larder/week_fields.h"

namespace larder {

using base::in_quotes;
using base::say;
using kitchen::Dish;
using kitchen::Entry;
using kitchen::Fields;
using kitchen::Node;
using kitchen::Reader;

namespace {

// A path beside the week's file, as kitchen::Loader wants it.
std::string beside(const std::string& file, const std::string& path) {
  const auto slash = file.rfind('/');
  std::string folder = slash == std::string::npos ? "" : file.substr(0, slash);
  std::string rest = path;
  while (rest.starts_with("../") && !folder.empty() && folder != ".." && !folder.ends_with("/..")) {
    rest.erase(0, 3);
    const auto up = folder.rfind('/');
    folder = up == std::string::npos ? "" : folder.substr(0, up);
  }
  return folder.empty() || rest.starts_with("/") ? rest : folder + "/" + rest;
}

class WeekReader {
 public:
  WeekReader(std::string file, const kitchen::Loader& loader)
      : reader_(std::move(file), problems_), loader_(loader) {}

  base::Result<Week> read(std::string_view text) {
    const auto node = kitchen::parse_json(text, reader_.file(), problems_);
    if (node && header(*node)) {
      const Fields f(reader_, *node, "", "The week", kWeekFields);
      week_.title = f.text_or("title", "The week");
      for (const Entry& entry : f.list("suppliers", 20)) supplier(entry);
      if (f.find("lessons") == nullptr) f.missing("lessons");
      for (const Entry& entry : f.list("lessons", 500)) lesson(entry);
      budget(f);
    }
    if (!problems_.empty()) return problems_;
    return std::move(week_);
  }

 private:
  bool header(const Node& node) {
    const Node* kind = node.find("kind");
    const Node* version = node.find("version");
    if (kind == nullptr || kind->text != "week") {
      reader_.add("week.kind", "", "This is not a week's file.",
                  "Begin with { \"kind\": \"week\", \"version\": 1, ... }.");
      return false;
    }
    if (version == nullptr || version->number != 1) {
      reader_.add("week.version", "/version", "This program reads version 1 of a week's file.",
                  "Write \"version\": 1.");
      return false;
    }
    return true;
  }

  Date date(const Fields& f, std::string_view key) {
    const std::string text = f.text(key, 20);
    if (const auto found = base::date_in(text)) return *found;
    if (!text.empty())
      reader_.add("week.date", f.where(key),
                  say(f.what(), ": ", in_quotes(text), " is not a date."),
                  "Write year, month and day: 2026-11-17.");
    return {};
  }

  std::optional<Pence> money(const Fields& f, std::string_view key) {
    const Node* node = f.find(key);
    if (node == nullptr) return std::nullopt;
    const std::string text = node->kind == Node::Kind::kNumber ? base::number_text(node->number)
                                                               : node->text;
    if (const auto pence = pence_in(text)) return pence;
    reader_.add("week.money", f.where(key),
                say(f.what(), ": ", in_quotes(text), " is not an amount of money."),
                "Write pounds and pence: 4.50.");
    return std::nullopt;
  }

  Ratio sets(const Fields& f, std::string_view key, double otherwise) {
    return Ratio::near(f.number(key, 0, 2000, otherwise));
  }

  void supplier(const Entry& entry) {
    const Fields f(reader_, *entry.node, entry.where, "A supplier", kSupplierFields);
    Supplier s;
    s.name = f.text("name");
    s.delivery = money(f, "delivery").value_or(0);
    s.minimum = money(f, "minimum").value_or(0);
    s.top_up = f.flag("top_up", false);
    for (const Entry& van : f.list("vans", 60)) {
      const Fields v(reader_, *van.node, van.where, say("A van of ", s.name), kVanFields);
      Delivery delivery{date(v, "order_by"), date(v, "arrives")};
      if (delivery.arrives < delivery.order_by)
        reader_.add("week.van", van.where,
                    say("A van of ", s.name, " arrives before it is ordered."),
                    "Put the order day before the day it arrives.");
      s.vans.push_back(delivery);
    }
    week_.suppliers.push_back(std::move(s));
  }

  void budget(const Fields& f) {
    const Node* node = f.find("budget");
    if (node == nullptr) return;
    const Fields b(reader_, *node, f.where("budget"), "The budget", kBudgetFields);
    week_.budget = {money(b, "per_pupil"), money(b, "week"), money(b, "term"),
                    money(b, "spent_this_term").value_or(0)};
  }

  void lesson(const Entry& entry) {
    const Fields f(reader_, *entry.node, entry.where, "A lesson of the week", kWeekLessonFields);
    WeekLesson out;
    if (f.find("lesson") != nullptr) {
      const auto read = planned(f);
      if (!read) return;
      out = week_lesson(*read);
    }
    if (f.find("lesson") == nullptr || f.find("date") != nullptr) out.date = date(f, "date");
    out.title = f.text_or("title", out.title.empty() ? "A lesson" : out.title);
    out.class_name = f.text_or("class", out.class_name.empty() ? out.title : out.class_name);
    out.pupils = f.whole("pupils", 0, 2000, out.pupils);
    out.unanswered = f.whole("unanswered", 0, 2000, 0);
    for (const Entry& dish : f.list("dishes", 100)) dish_use(dish, out);
    const Ratio extra = sets(f, "extra_sets", 0);
    if (extra > Ratio(0) && !out.dishes.empty()) {
      auto most = std::max_element(
          out.dishes.begin(), out.dishes.end(),
          [](const DishUse& a, const DishUse& b) { return a.sets < b.sets; });
      most->sets += extra;
    }
    for (DishUse& use : out.dishes) from_home(f, use, false);
    week_.lessons.push_back(std::move(out));
  }

  std::optional<kitchen::Lesson> planned(const Fields& f) {
    const std::string path = beside(reader_.file(), f.text("lesson", 300));
    const auto text = loader_(path);
    if (!text) return told(text.problems(), f.where("lesson")), std::nullopt;
    auto read = kitchen::read_lesson(text.value(), path, loader_);
    if (!read) return told(read.problems(), f.where("lesson")), std::nullopt;
    return std::move(read).value();
  }

  void told(const base::Problems& all, const std::string& where) {
    for (base::Problem p : all) {
      if (p.file.empty()) {
        p.file = reader_.file();
        p.where = where;
      }
      problems_.push_back(std::move(p));
    }
  }

  // "sets" of a dish that the lesson's file names already replaces what its cooks come to.
  void dish_use(const Entry& entry, WeekLesson& lesson) {
    const Fields f(reader_, *entry.node, entry.where, "A dish of the week", kDishUseFields);
    const std::string name = f.text("dish", 300);
    const std::string variant = f.text_or("variant", "");
    DishUse* use = nullptr;
    for (DishUse& each : lesson.dishes) {
      if (base::folded(each.dish.name) == base::folded(name) &&
          base::folded(each.dish.variant) == base::folded(variant))
        use = &each;
    }
    if (use == nullptr) {
      const auto dish = dish_of(f, name, variant);
      if (!dish) return;
      use = &lesson.dishes.emplace_back(DishUse{*dish, 1, {}, 0});
    }
    use->sets = sets(f, "sets", use->sets.value());
    use->school_sets = sets(f, "school_sets", 0);
    if (use->school_sets > use->sets)
      reader_.add("week.school_sets", f.where("school_sets"),
                  say(f.what(), ": the school supplies more sets than are cooked."),
                  "Give a number up to the sets of the dish.");
    from_home(f, *use, true);
  }

  std::optional<Dish> dish_of(const Fields& f, const std::string& name,
                              const std::string& variant) {
    if (name.empty()) return std::nullopt;
    if (!name.ends_with(".json")) {
      reader_.add("week.dish", f.where("dish"),
                  say("No dish of this lesson is called ", in_quotes(name), "."),
                  "Name a dish of the lesson's file, or a dish file that ends in .json.");
      return std::nullopt;
    }
    const std::string path = beside(reader_.file(), name);
    const auto text = loader_(path);
    if (!text) return told(text.problems(), f.where("dish")), std::nullopt;
    const auto all = kitchen::read_dish_variants(text.value(), path);
    if (!all) return told(all.problems(), f.where("dish")), std::nullopt;
    std::vector<std::string> known;
    for (const Dish& dish : all.value()) {
      if (base::folded(dish.variant) == base::folded(variant)) return dish;
      if (!dish.variant.empty()) known.push_back(dish.variant);
    }
    f.unknown_word("variant", f.where("variant"), variant, known);
    return std::nullopt;
  }

  // Ingredient names; those of a whole lesson need not stand in every dish of it.
  void from_home(const Fields& f, DishUse& use, bool must_be_there) {
    for (const std::string& name : f.texts("from_home")) {
      bool found = false;
      for (std::size_t i = 0; i < use.dish.ingredients.size(); ++i) {
        if (base::folded(use.dish.ingredients[i].name) != base::folded(name)) continue;
        found = true;
        const int index = static_cast<int>(i);
        if (std::find(use.from_home.begin(), use.from_home.end(), index) == use.from_home.end())
          use.from_home.push_back(index);
      }
      if (found || !must_be_there) continue;
      std::vector<std::string> known;
      for (const auto& each : use.dish.ingredients) known.push_back(each.name);
      f.unknown_word("from_home", f.where("from_home"), name, known);
    }
  }

  base::Problems problems_;
  Reader reader_;
  const kitchen::Loader& loader_;
  Week week_;
};

}  // namespace

base::Result<Week> read_week(std::string_view text, std::string file_name,
                             const kitchen::Loader& loader) {
  return WeekReader(std::move(file_name), loader).read(text);
}

WeekLesson week_lesson(const kitchen::Lesson& lesson) {
  WeekLesson out;
  out.title = lesson.title;
  // "9K, lentil dhal": what stands before the comma is the class.
  out.class_name = lesson.title.substr(0, lesson.title.find(','));
  out.date = base::date_in(lesson.date).value_or(Date{});
  for (const Dish& dish : lesson.dishes) out.dishes.push_back({dish, 0, {}, 0});
  for (const kitchen::Cook& cook : lesson.cooks) {
    out.pupils += cook.people;
    for (const int dish : cook.dishes) out.dishes[static_cast<std::size_t>(dish)].sets += Ratio(1);
  }
  std::erase_if(out.dishes, [](const DishUse& use) { return use.sets == Ratio(0); });
  return out;
}

std::string day_text(Date date) {
  constexpr std::array<const char*, 7> kDays = {"Thu", "Fri", "Sat", "Sun", "Mon", "Tue", "Wed"};
  constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const std::string iso = base::date_text(date);  // 2026-11-17; 1 January 1970 was a Thursday
  const int month = (iso[5] - '0') * 10 + (iso[6] - '0');
  const int day = (iso[8] - '0') * 10 + (iso[9] - '0');
  return say(kDays[static_cast<std::size_t>(((date.days % 7) + 7) % 7)], " ", day, " ",
             kMonths[static_cast<std::size_t>(month - 1)]);
}

}  // namespace larder
