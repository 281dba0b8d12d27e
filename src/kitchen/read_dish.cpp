#include <algorithm>

#include "kitchen/dish_variants.h"
#include "kitchen/document.h"
#include "kitchen/field_lists.h"
#include "kitchen/method.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

// Legal limits, England, Wales and Northern Ireland: one period of up to 2 h below 63 °C, one of up
// to 4 h above 8 °C (rows A031, A035 of the food safety table).
constexpr Seconds kHotOut = base::minutes(120);
constexpr Seconds kChilledOut = base::minutes(240);
constexpr Seconds kCoolBy = base::minutes(90);  // end of cooking to fridge (row A040)

std::string what_of(const Node& node) {
  const Node* name = node.find("name");
  return name != nullptr && name->kind == Node::Kind::kText
             ? say("The dish ", in_quotes(name->text))
             : "The dish";
}

std::string tag_of(const std::string& name) {
  const auto gap = name.find(' ');
  const auto next = gap == std::string::npos ? gap : name.find_first_not_of(' ', gap);
  std::string tag = next == std::string::npos
                        ? base::first_letters(name, 2)
                        : base::first_letters(name, 1) +
                              base::first_letters(std::string_view(name).substr(next), 1);
  for (char& c : tag) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return base::letters(tag) < 2 ? tag + tag : tag;
}

std::vector<Ingredient> ingredients_of(const Fields& dish) {
  std::vector<Ingredient> out;
  for (const Entry& entry : dish.list("ingredients", 200)) {
    const Node* name = entry.node->find("name");
    const bool named = name != nullptr && name->kind == Node::Kind::kText;
    const Fields f(dish.reader(), *entry.node, entry.where,
                   named ? say("The ingredient ", in_quotes(name->text)) : "An ingredient",
                   kIngredientFields);
    if (!f.is_object()) continue;
    Ingredient ingredient;
    ingredient.name = f.text("name", 80);
    ingredient.amount = f.number("amount", 0, 1e6, 0);
    ingredient.unit = f.text_or("unit", "", 30);
    for (const Allergen allergen : f.words("contains", kAllergenWords))
      ingredient.contains.insert(allergen);
    ingredient.label_read = f.flag("label_read", true);
    if (!ingredient.label_read) {  // unread counts as everything (rule K2)
      for (const auto& each : kAllergenWords) ingredient.contains.insert(each.value);
    }
    ingredient.food = f.text_or("food", "", 60);
    ingredient.preparation = f.text_or("preparation", "", 120);
    ingredient.optional = f.flag("optional", false);
    const bool again = std::any_of(out.begin(), out.end(),
                                   [&](const Ingredient& i) { return i.name == ingredient.name; });
    if (again) {
      dish.reader().add("dish.ingredient.name_twice", f.where("name"),
                        say("Two ingredients are called ", in_quotes(ingredient.name), "."),
                        "Add them up, or say which is which in the name.");
    }
    out.push_back(std::move(ingredient));
  }
  return out;
}

Hold hold_of(const Fields& dish) {
  Hold hold;
  const Node* node = dish.find("hold");
  if (node == nullptr) return hold;
  const Fields f(dish.reader(), *node, dish.where("hold"),
                 say("The hold of ", in_quotes(dish.text_or("name", ""))), kHoldFields);
  hold.kind = f.word("kind", kHoldKindWords, std::optional{HoldKind::kHot});
  hold.in = f.word("in", kHoldInWords, std::optional{HoldIn::kNone});
  const Seconds usual = hold.kind == HoldKind::kHot     ? base::minutes(20)
                        : hold.kind == HoldKind::kCrisp ? base::minutes(10)
                                                        : kChilledOut;
  hold.most = f.minutes("most_minutes", Seconds{0}, usual);
  const bool keeps = hold.kind == HoldKind::kKeeps;
  const bool safe = keeps ? hold.in == HoldIn::kFridge
                          : hold.in == HoldIn::kOven80 || hold.in == HoldIn::kRing;
  const Seconds limit = safe ? kLongest : keeps ? kChilledOut : kHotOut;
  if (hold.most > limit) {
    dish.reader().add(
        "dish.hold.not_safe", f.where("most_minutes"),
        say(dish.what(), " may wait ", base::minutes_text(hold.most), "; the limit for food that ",
            keeps ? "is out of the fridge" : "is not kept hot", " is ", base::minutes_text(limit),
            "."),
        keeps ? "Shorten the wait, or hold it in the fridge."
              : "Shorten the wait, or hold it in the oven or on a ring.");
  }
  return hold;
}

/// The step and all it follows, as flags.
std::vector<bool> up_to(const std::vector<Step>& steps, int last) {
  std::vector<bool> in(steps.size(), false);
  std::vector<int> open{last};
  while (!open.empty()) {
    const auto i = static_cast<std::size_t>(open.back());
    open.pop_back();
    if (in[i]) continue;
    in[i] = true;
    for (const Follows& wait : steps[i].follows) open.push_back(wait.step);
  }
  return in;
}

class SplitReader {
 public:
  SplitReader(const Fields& dish, const std::vector<Step>& steps) : dish_(dish), steps_(steps) {}

  std::vector<Split> read() {
    std::vector<Split> out;
    for (const Entry& entry : dish_.list("splits", 20)) {
      const Node* name = entry.node->find("name");
      const bool named = name != nullptr && name->kind == Node::Kind::kText;
      const Fields f(dish_.reader(), *entry.node, entry.where,
                     named ? say("The split ", in_quotes(name->text)) : std::string("A split"),
                     kSplitFields);
      if (!f.is_object()) continue;
      Split split = one(f);
      if (std::any_of(out.begin(), out.end(),
                      [&](const Split& s) { return s.name == split.name; })) {
        dish_.reader().add("dish.split.name_twice", f.where("name"),
                           say("Two splits are called ", in_quotes(split.name), "."),
                           "Give one of them another name.");
      }
      out.push_back(std::move(split));
    }
    return out;
  }

 private:
  const Fields& dish_;
  const std::vector<Step>& steps_;

  Split one(const Fields& f) const {
    Split split;
    split.name = f.text("name", 60);
    split.kept = f.word("kept", kKeptInWords, std::optional{KeptIn::kFridge});
    const bool frozen = split.kept == KeptIn::kFreezer;
    const int longest = split.kept == KeptIn::kFridge          ? 48
                        : split.kept == KeptIn::kProveInFridge ? 24
                                                               : 24 * 366;
    if (frozen && f.find("longest_hours") == nullptr) f.missing("longest_hours");
    const double hours = f.number("longest_hours", 0.25, longest, longest);
    split.longest = Seconds{static_cast<Seconds::rep>(hours * 3600 + 0.5)};
    split.cooling = f.minutes("cooling_minutes", Seconds{0}, Seconds{0});
    if (split.cooling > kCoolBy) {
      dish_.reader().add(
          "dish.split.cooling_too_long", f.where("cooling_minutes"),
          say(f.what(), " needs ", base::minutes_text(split.cooling),
              " to cool; cooked food must be in the fridge within ", base::minutes_text(kCoolBy),
              "."),
          "Cool it in smaller portions or shallow trays, and write the shorter time.");
    }
    split.fridge_tenths = f.whole("fridge_tenths", 0, 1000, 2);
    split.after_step = after(f);
    return split;
  }

  int after(const Fields& f) const {
    const std::string id = f.text("after");
    const int named = step_called(steps_, id);
    if (named < 0) {
      if (!id.empty()) refuse_step(f, id);
      return 0;
    }
    const int last = off_the_heat(named);
    const std::vector<bool> first_half = up_to(steps_, last);
    for (std::size_t i = 0; i < steps_.size(); ++i) {
      if (!first_half[i] || !steps_[i].heat || tenths(steps_[i].attention) >= 8) continue;
      const auto goes_on = [&](std::size_t k) {
        const Step& s = steps_[k];
        return k != i && first_half[k] &&
               ((s.heat && s.heat->vessel == steps_[i].heat->vessel && k > i) ||
                s.closes == static_cast<int>(i));
      };
      bool taken_off = false;
      for (std::size_t k = 0; k < steps_.size() && !taken_off; ++k) taken_off = goes_on(k);
      if (taken_off) continue;
      dish_.reader().add("dish.split.still_on_the_heat", f.where("after"),
                         say(f.what(), ": the ", steps_[i].heat->vessel, " of ",
                             in_quotes(steps_[i].id), " is still on the heat then."),
                         "Split the dish after the step that takes it off.");
      break;
    }
    return last;
  }

  /// A pan still on the heat is not put away: the step that closes it belongs to the first lesson.
  int off_the_heat(int step) const {
    for (std::size_t k = 0; k < steps_.size(); ++k) {
      const auto closing = std::find_if(steps_.begin(), steps_.end(),
                                        [&](const Step& s) { return s.closes == step; });
      if (closing == steps_.end()) break;
      step = static_cast<int>(closing - steps_.begin());
    }
    return step;
  }

  void refuse_step(const Fields& f, const std::string& id) const {
    std::vector<std::string> ids;
    for (const Step& step : steps_) ids.push_back(step.id);
    const std::string near = did_you_mean(id, ids);
    dish_.reader().add(
        "dish.unknown_step", f.where("after"),
        say(f.what(), ": the method has no step ", in_quotes(id), near.empty() ? "." : near),
        "Write the id of a step of this dish.");
  }
};

int wash_after_of(const Fields& dish, const std::vector<Step>& steps) {
  if (dish.find("wash_after") == nullptr) {
    for (std::size_t i = 1; i < steps.size(); ++i) {
      if (tenths(steps[i].attention) <= 2 && steps[i].least >= base::minutes(5))
        return static_cast<int>(i) - 1;
    }
    return (static_cast<int>(steps.size()) - 1) / 2;
  }
  const std::string id = dish.text("wash_after");
  const int step = step_called(steps, id);
  if (step >= 0 || id.empty()) return std::max(step, 0);
  std::vector<std::string> ids;
  for (const Step& each : steps) ids.push_back(each.id);
  const std::string near = did_you_mean(id, ids);
  dish.reader().add("dish.unknown_step", dish.where("wash_after"),
                    say(dish.what(), " is washed up after ", in_quotes(id),
                        ", and the method has no step of that name", near.empty() ? "." : near),
                    "Write the id of a step of this dish.");
  return 0;
}

/// One dish of a tree; `variants` in it are not looked at.
std::optional<Dish> dish_of(Reader& outer, const Node& node, const std::string& where) {
  Reader reader(outer.file(), outer.problems());  // clean() speaks of this dish alone
  const Fields f(reader, node, where, what_of(node), kDishFields);
  if (!f.is_object()) return std::nullopt;
  Dish dish;
  dish.name = f.text("name", 80);
  dish.tag = f.text_or("tag", tag_of(dish.name), 2);
  if (base::letters(dish.tag) < 2 && !dish.name.empty()) {
    reader.add("dish.tag_not_two", f.where("tag"),
               say(f.what(), " has the tag ", in_quotes(dish.tag), "; a tag has two letters."),
               "Write two letters, such as \"LD\".");
  }
  dish.portions = f.whole("portions", 1, 200, 1);
  dish.ingredients = ingredients_of(f);
  dish.hold = hold_of(f);
  dish.cooling = f.minutes("cooling_minutes", Seconds{0}, Seconds{0});
  if (f.find("keep_chilled") != nullptr) dish.keep_chilled = f.flag("keep_chilled", true);
  dish.variant = f.text_or("variant", "", 60);
  dish.aim = f.text_or("aim", "", 200);
  dish.key_words = f.texts("key_words");
  dish.questions = f.texts("questions");
  Method method = method_of(f, dish.ingredients);
  if (!reader.clean())
    return std::nullopt;  // names must be right before anything is worked out from them
  close_vessels(reader, method);
  if (reader.clean()) check_waits(reader, method);
  dish.method = std::move(method.steps);
  dish.wash_after = wash_after_of(f, dish.method);
  dish.splits = SplitReader(f, dish.method).read();
  if (!reader.clean()) return std::nullopt;
  return dish;
}

}  // namespace

std::optional<std::vector<Dish>> dishes_of(Reader& reader, const Node& node,
                                           const std::string& where) {
  auto written = dish_of(reader, node, where);
  if (!written) return std::nullopt;
  std::vector<Dish> out{std::move(*written)};
  Reader own(reader.file(), reader.problems());
  const Fields fields(own, node, where, what_of(node), kDishFields);
  for (const Entry& entry : fields.list("variants", 50)) {
    const Node changed = with_variant(own, node, where, *entry.node, entry.where);
    auto variant = dish_of(own, changed, where);
    if (!variant) continue;
    if (std::any_of(out.begin(), out.end(),
                    [&](const Dish& d) { return d.variant == variant->variant; })) {
      own.add("dish.variant.name_twice", below(entry.where, "name"),
              say("Two variants are called ", in_quotes(variant->variant), "."),
              "Give one of them another name.");
    }
    out.push_back(std::move(*variant));
  }
  if (!own.clean()) return std::nullopt;
  return out;
}

base::Result<std::vector<Dish>> read_dish_variants(std::string_view text, std::string file_name) {
  base::Problems problems;
  Reader reader(std::move(file_name), problems);
  if (const auto node = parse_document(text, reader, DocumentKind::kDish)) {
    if (auto dishes = dishes_of(reader, *node, "")) return std::move(*dishes);
  }
  return problems;
}

base::Result<Dish> read_dish(std::string_view text, std::string file_name) {
  auto dishes = read_dish_variants(text, std::move(file_name));
  if (!dishes) return dishes.problems();
  return std::move(dishes).value().front();
}

}  // namespace kitchen
