#include "serve/dish_views.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "desk/strands.h"
#include "kitchen/ratios/judge.h"
#include "kitchen/words.h"
#include "larder/dish_cost.h"
#include "nutrition/dish_nutrients.h"
#include "print/say_label.h"
#include "safety/statements.h"
#include "shipped/cooking.h"
#include "shipped/ratios.h"

namespace serve {
namespace {

using base::say;
using kitchen::Dish;

int minutes(base::Seconds s) { return static_cast<int>((s.count() + 59) / 60); }

struct Stated {
  std::vector<std::string> contains, check_label;
};

Stated stated(Context& context, const Dish& dish) {
  Stated out;
  const auto summary = safety::summary(dish, *context.kept.foods(), *context.kept.labels());
  for (const safety::Allergen allergen : safety::kFourteen) {
    const safety::Stated said = summary[safety::at(allergen)];
    const std::string word(kitchen::word(allergen));
    if (said == safety::Stated::kContains)
      out.contains.push_back(word);
    else if (safety::may_be_there(said))
      out.check_label.push_back(word);
  }
  return out;
}

std::optional<std::string> cost_per_portion(const larder::DishCost& cost, const Dish& dish) {
  if (!cost.complete) return std::nullopt;
  return larder::pounds_text(cost.known / base::Ratio(std::max(1, dish.portions)));
}

std::string heat_words(const kitchen::Step& step) {
  if (!step.heat) return "";
  switch (step.heat->with) {
    case kitchen::HeatKind::kRing:
      return say("ring, ", step.heat->vessel);
    case kitchen::HeatKind::kGrill:
      return say("grill, ", step.heat->vessel);
    case kitchen::HeatKind::kOven:
      return say(step.heat->setting.kind == kitchen::OvenKind::kFan ? "fan oven " : "oven ",
                 step.heat->setting.celsius, " °C");
  }
  return "";
}

Node strands_node(const Dish& dish) {
  Node list = Node::list();
  for (const desk::Strand& strand : desk::strands(dish).steps) {
    const kitchen::Step& step = dish.method[static_cast<std::size_t>(strand.step)];
    Node& one = list.add(Node::object());
    one.set("step", Node::of(step.id));
    one.set("says", Node::of(step.says));
    one.set("short", Node::of(step.brief));
    one.set("lane", Node::of(strand.lane));
    one.set("from", Node::of(static_cast<int>(strand.from.count() / 60)));
    one.set("to", Node::of(minutes(strand.to)));
    const int tenths = kitchen::tenths(step.attention);
    one.set("attention", Node::of(tenths >= 5 ? "hands" : tenths >= 1 ? "watch" : "leave"));
    Node& follows = one.set("follows", Node::list());
    for (const kitchen::Follows& wait : step.follows)
      follows.add(Node::of(dish.method[static_cast<std::size_t>(wait.step)].id));
    one.set("heat", Node::of(heat_words(step)));
    one.set("hazard", step.hazard ? Node::of(kitchen::word(*step.hazard)) : Node());
  }
  return list;
}

std::string_view standing_word(kitchen::Standing standing) {
  switch (standing) {
    case kitchen::Standing::kWithin:
      return "works";
    case kitchen::Standing::kNearEdge:
      return "near the edge";
    case kitchen::Standing::kBelow:
      return "too low";
    case kitchen::Standing::kAbove:
      return "too high";
    case kitchen::Standing::kUnknown:
      return "not known";
  }
  return "not known";
}

Node ratios_node(Context& context, const Dish& dish) {
  Node list = Node::list();
  for (const kitchen::JudgedPreparation& found :
       kitchen::judge(dish, *context.kept.foods(), shipped::ratios())) {
    Node& one = list.add(Node::object());
    one.set("preparation", Node::of(found.found.name));
    one.set("sure", Node::of(found.found.confidence));
    one.set("why", texts(found.found.why));
    Node& lines = one.set("lines", Node::list());
    bool works = true;
    for (const kitchen::JudgedRatio& ratio : found.ratios) {
      Node& line = lines.add(Node::object());
      line.set("says", Node::of(ratio.row.quantity));
      line.set("value", ratio.value ? Node::of(ratio.value->value()) : Node());
      line.set("least", Node::of(ratio.row.least.value()));
      line.set("most", Node::of(ratio.row.most.value()));
      line.set("unit", Node::of(ratio.row.unit));
      line.set("verdict", Node::of(standing_word(ratio.standing)));
      line.set("goes_wrong", Node::of(ratio.goes_wrong));
      Node& counted = line.set("counted", Node::list());
      for (const auto* side : {&ratio.numerator, &ratio.denominator}) {
        for (const kitchen::CountedPart& part : *side) counted.add(Node::of(part.how));
      }
      works = works && (ratio.standing == kitchen::Standing::kWithin ||
                        ratio.standing == kitchen::Standing::kNearEdge);
    }
    one.set("verdict", Node::of(works ? "works" : "look at it"));
    one.set("says", Node::of(works ? say("The ", found.found.name, " is in its band.")
                                   : say("The ", found.found.name,
                                         " is outside its band, or not all of it is known.")));
  }
  return list;
}

// The usual cautions, step by step; the employer's rules decide.
Node safety_node(const Dish& dish) {
  Node list = Node::list();
  const auto add = [&](const kitchen::Step& step, const std::string& what) {
    Node& one = list.add(Node::object());
    one.set("step", Node::of(step.id));
    one.set("says", Node::of(what));
  };
  for (const kitchen::Step& step : dish.method) {
    if (step.hazard) {
      switch (*step.hazard) {
        case kitchen::Hazard::kHotOil:
          add(step, "Hot oil: an adult stands by; never water on it.");
          break;
        case kitchen::Hazard::kFirstKnife:
          add(step, "First knife work: show the bridge and the claw, and watch.");
          break;
        case kitchen::Hazard::kLargePan:
          add(step, "Large hot pan: drain it with an adult near, steam away from faces.");
          break;
        case kitchen::Hazard::kBlender:
          add(step, "Blades: lid on, plug out before anybody reaches in.");
          break;
        case kitchen::Hazard::kProbing:
          add(step, "Probe the middle: 75 °C for 30 s, or as your rules say.");
          break;
        case kitchen::Hazard::kAdultOnly:
          add(step, "For an adult only.");
          break;
      }
    }
    if (step.hygiene == kitchen::Hygiene::kRaw)
      add(step, "Raw meat, fish or egg: its own board, then wash hands, board and bench.");
  }
  return list;
}

Node cost_node(const larder::DishCost& cost, const Dish& dish) {
  Node node = Node::object();
  node.set("per_portion", text_or_null(cost_per_portion(cost, dish)));
  Node& lines = node.set("lines", Node::list());
  Node missing = Node::list();
  for (const larder::IngredientCost& line : cost.lines) {
    const std::string& name = dish.ingredients[static_cast<std::size_t>(line.ingredient)].name;
    Node& one = lines.add(Node::object());
    one.set("ingredient", Node::of(name));
    one.set("cost", line.pence ? Node::of(larder::pounds_text(*line.pence)) : Node());
    one.set("how", Node::of(line.how));
    if (!line.pence) missing.add(Node::of(name));
  }
  node.set("missing", std::move(missing));
  return node;
}

}  // namespace

Node dish_row(Context& context, const std::string& id, std::int64_t version,
              const std::vector<Dish>& versions) {
  const Dish& dish = versions.front();
  const desk::Strands strands = desk::strands(dish);
  const Stated allergens = stated(context, dish);
  std::set<std::string> hazards, skills, heat;
  for (const kitchen::Step& step : dish.method) {
    if (step.hazard) hazards.insert(std::string(kitchen::word(*step.hazard)));
    skills.insert(step.skills.begin(), step.skills.end());
    if (!step.heat) continue;
    heat.insert(step.heat->with == kitchen::HeatKind::kRing   ? "ring"
                : step.heat->with == kitchen::HeatKind::kOven ? "oven"
                                                              : "grill");
  }
  const auto list = [](const std::set<std::string>& all) {
    return texts(std::vector<std::string>(all.begin(), all.end()));
  };
  std::vector<std::string> variants;
  for (const Dish& each : versions) {
    if (!each.variant.empty()) variants.push_back(each.variant);
  }
  Node node = Node::object();
  node.set("id", Node::of(id));
  node.set("name", Node::of(dish.name));
  node.set("tag", Node::of(dish.tag));
  node.set("portions", Node::of(dish.portions));
  node.set("minutes", Node::of(minutes(strands.length)));
  node.set("hands_minutes", Node::of(minutes(strands.hands)));
  node.set("hazards", list(hazards));
  node.set("skills", list(skills));
  node.set("allergens", texts(allergens.contains));
  node.set("check_label", texts(allergens.check_label));
  node.set("cost_per_portion",
           text_or_null(cost_per_portion(
               larder::dish_cost(dish, *context.kept.prices(), *context.kept.foods()), dish)));
  node.set("heat", list(heat));
  node.set("variants", texts(variants));
  node.set("version", Node::of(static_cast<double>(version)));
  return node;
}

std::string dish_view(Context& context, const std::string& id, std::int64_t version,
                      const Node& body, const std::vector<Dish>& versions, const Dish& shown) {
  const auto foods = context.kept.foods();
  const auto nutrients = nutrition::dish_nutrients(shown, nutrition::foods_of(shown, *foods),
                                                   shipped::cooking(), {});
  const larder::DishCost cost = larder::dish_cost(shown, *context.kept.prices(), *foods);
  const Stated allergens = stated(context, shown);
  Node said = Node::object();
  said.set("contains", texts(allergens.contains));
  said.set("check_label", texts(allergens.check_label));
  Node notes = Node::list();
  for (const kitchen::Step& step : shown.method) {
    if (step.added) notes.add(Node::of(say("Added: ", step.says)));
  }
  notes.add(Node::of(print::nutrition_cautions()));
  return json_object({{"body", json_line(body)},
                      {"row", json_line(dish_row(context, id, version, versions))},
                      {"strands", json_line(strands_node(shown))},
                      {"ratios", json_line(ratios_node(context, shown))},
                      {"label", print::label_json(nutrients, shipped::cooking(), {})},
                      {"allergens", json_line(said)},
                      {"cost", json_line(cost_node(cost, shown))},
                      {"safety", json_line(safety_node(shown))},
                      {"notes", json_line(notes)}});
}

}  // namespace serve
