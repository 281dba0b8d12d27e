#include "larder/scale_times.h"

#include <algorithm>
#include <optional>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/weigh.h"

namespace larder {
namespace {

using base::say;
using kitchen::Dish;
using kitchen::Foods;
using kitchen::HeatKind;
using kitchen::Step;

const Ratio kMostPanGrams = 350;  // row DR111: 150 to 350 g for a 28 cm pan
const Ratio kClose{1, 10};
const Ratio kMuchMore{3, 2};                      // below it handwork hardly shows
constexpr int kShelfTwelfths = 12, kShelves = 2;  // of a usual school cooker

bool says_one_of(const std::string& text, std::initializer_list<const char*> words) {
  return std::any_of(words.begin(), words.end(), [&](const char* word) {
    return text.find(std::string(" ") + word) != std::string::npos;
  });
}

// Grams a step handles, scaled; nothing when it does not say what it uses or that cannot be
// weighed.
std::optional<Ratio> load(const Dish& dish, const Step& step, const Ratio& factor,
                          const Foods& foods) {
  if (step.uses.empty()) return std::nullopt;
  Ratio sum = 0;
  for (const int i : step.uses) {
    const auto& ingredient = dish.ingredients[static_cast<std::size_t>(i)];
    const auto* food = food_of(ingredient, foods);
    if (food == nullptr) continue;
    const auto weighed = weigh(quantity_of(ingredient), *food);
    if (weighed) sum += weighed.value().grams;
  }
  return sum == Ratio(0) ? std::nullopt : std::optional(sum * factor);
}

std::string times_text(const Ratio& factor) { return base::decimal_text(factor, 1); }

// What a pupil's hands do takes as many times longer, unless more hands do it.
std::optional<std::string> by_hand(const Step& step, const std::string& text, const Ratio& factor) {
  if (!hands_on(step.attention) || factor < kMuchMore) return std::nullopt;
  if (!says_one_of(text, {"peel", "slice", "dice", "chop", "cut", "grate", "shape", "roll", "knead",
                          "pipe", "crack", "fold the", "rub"}))
    return std::nullopt;
  return say("is handwork: ", times_text(factor),
             " times as much takes about as many times longer, or more hands");
}

std::optional<std::string> in_the_oven(const Step& step, const Ratio& factor,
                                       const Ratio& depth_factor) {
  if (depth_factor > Ratio(1)) {
    return say("the mixture lies ", times_text(depth_factor),
               " times as deep: it takes longer, more than in step with the depth, at a lower "
               "setting; test the middle");
  }
  if (depth_factor < Ratio(1)) return "the mixture lies shallower: look sooner";
  const Ratio twelfths = Ratio(step.heat->shelf_twelfths) * factor;
  const auto shelves = (twelfths / Ratio(kShelfTwelfths)).ceil();
  if (shelves > kShelves) {
    return say("needs about ", shelves, " shelves at once, more than one oven has: bake in turns");
  }
  return say(
      "the same minutes if it lies as deep as before; a fuller oven is slower to heat again "
      "and browns less evenly: change the shelves over");
}

std::optional<std::string> on_the_ring(const Dish& dish, const Step& step, const std::string& text,
                                       const Ratio& factor, const Foods& foods) {
  if (says_one_of(text, {"fry", "stir fry", "brown", "soften", "sweat", "saute"})) {
    const auto grams = load(dish, step, factor, foods);
    if (grams && *grams > kMostPanGrams) {
      return say(base::decimal_text(*grams, 0),
                 " g at once crowd a 28 cm pan, which takes 150 to 350 g: it steams instead of "
                 "browning; fry in turns");
    }
    if (grams || factor < Ratio(1)) return std::nullopt;
    return "more in one pan steams instead of browning: fry in turns or in a wider pan";
  }
  if (factor < Ratio(1)) return "less in the pan boils sooner and dries out sooner: watch it";
  return say("comes to the boil later (about ", times_text(factor),
             " times as much to heat); once it bubbles the minutes stay the same, but thickening "
             "takes longer");
}

std::optional<std::string> warning(const Dish& dish, const Step& step, const Ratio& factor,
                                   const Ratio& depth_factor, const Foods& foods) {
  std::string text = " ";
  for (const std::string& word : base::words_of(base::folded(step.says))) text += word + " ";
  if (step.heat && step.heat->with != HeatKind::kRing)
    return in_the_oven(step, factor, depth_factor);
  if (says_one_of(text, {"whisk", "whip"}) && !step.heat) {
    return factor > Ratio(1)
               ? std::optional<std::string>(
                     "more takes longer to whisk and needs a bowl several times its volume")
               : std::optional<std::string>(
                     "less whisks up sooner, and may be too little for the whisk");
  }
  if (step.heat) return on_the_ring(dish, step, text, factor, foods);
  if (factor > Ratio(1) && says_one_of(text, {"chill", "fridge", "cool", "set "}))
    return "a larger batch cools more slowly: spread it out or divide it into shallow boxes";
  return by_hand(step, text, factor);
}

}  // namespace

std::vector<TimeWarning> times_that_do_not_scale(const Dish& dish, const Ratio& factor,
                                                 const Ratio& depth_factor, const Foods& foods) {
  std::vector<TimeWarning> out;
  const bool close = factor > Ratio(1) - kClose && factor < Ratio(1) + kClose;
  if (close && depth_factor == Ratio(1)) return out;
  for (std::size_t i = 0; i < dish.method.size(); ++i) {
    if (dish.method[i].added) continue;
    if (auto says = warning(dish, dish.method[i], factor, depth_factor, foods))
      out.push_back({static_cast<int>(i), std::move(*says)});
  }
  return out;
}

}  // namespace larder
