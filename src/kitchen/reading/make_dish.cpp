#include "kitchen/reading/make_dish.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/json_tree.h"
#include "kitchen/read.h"
#include "kitchen/reading/ingredient_words.h"
#include "kitchen/words.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

constexpr int kUsualCelsius = 180;  // when nobody says: common practice, no source
constexpr int kUsualPortions = 4;
constexpr std::string_view kProbing =
    "Probe the thickest part: look for 75 °C or your school’s own figure, wipe the probe and write "
    "it down.";

// Kit that a room counts; bowls and spoons are at every place.
bool counted_kit(const std::string& name) {
  static const std::set<std::string> kKit = {
      "knife",          "scales",     "probe",  "hand blender", "blender",    "food processor",
      "electric whisk", "food mixer", "kettle", "microwave",    "piping bag", "deep fryer"};
  return kKit.count(name) != 0;
}

double minutes(Seconds s) {
  return static_cast<double>(std::clamp<std::int64_t>(s.count(), 30, 1440 * 60)) / 60.0;
}

class Maker {
 public:
  Maker(const DishDraft& draft, const Foods& foods)
      : draft_(draft), foods_(foods), words_(draft.ingredients, foods), assumed_(draft.assumed) {}

  base::Result<MadeDish> make() {
    plan_steps();
    if (kept_.empty()) {
      return base::Problem{"draft.no_steps", "", "", "No step of a method was found in the text.",
                           "Put each action on a line of its own, beginning with what is done: "
                           "\"Chop the onion\"."};
    }
    node_ = Node::object();
    node_.set("kind", Node::of("dish"));
    node_.set("version", Node::of(1));
    node_.set("name",
              Node::of(draft_.name.value.empty() ? "Dish without a name"
                                                 : base::first_letters(draft_.name.value, 80)));
    portions();
    ingredients();
    method();
    const std::string text = json_text(node_);
    const auto read = read_dish(text, "the text");
    if (!read) return read.problems();
    return MadeDish{read.value(), text, assumed_};
  }

 private:
  const DishDraft& draft_;
  const Foods& foods_;
  IngredientWords words_;
  std::vector<std::string> assumed_;
  std::vector<std::string> names_;  // of the ingredients, each once
  std::vector<int> kept_;           // steps of the draft that are steps of the dish
  std::vector<std::string> ids_;    // by step of the draft
  std::vector<std::string> pan_;    // the pan of a ring step, one name a pan
  Node node_;

  const StepDraft& step(int i) const { return draft_.method[static_cast<std::size_t>(i)]; }

  void plan_steps() {
    std::set<std::string> used;
    ids_.resize(draft_.method.size());
    pan_.resize(draft_.method.size());
    for (int i = 0; i < static_cast<int>(draft_.method.size()); ++i) {
      if (step(i).preheat) continue;
      kept_.push_back(i);
      std::string id;
      for (const std::string& w : base::words_of(base::folded(step(i).brief))) {
        std::string plain;
        for (const char c : w) {
          if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) plain += c;
        }
        if (!plain.empty()) id += (id.empty() ? "" : "-") + plain;
      }
      if (id.empty() || id == "probe-it") id = "step";
      std::string unique = id;
      for (int k = 2; !used.insert(unique).second; ++k) unique = say(id, "-", k);
      ids_[static_cast<std::size_t>(i)] = unique;
    }
    name_pans();
  }

  // A pan goes on from a step it follows; a pan that comes anew gets a name of its own, so that it
  // does not hold its ring in between.
  void name_pans() {
    std::map<std::string, int> count;
    for (const int i : kept_) {
      const auto at = static_cast<std::size_t>(i);
      if (!step(i).heat) continue;
      const HeatDraft& heat = step(i).heat->value;
      if (heat.where != Where::kRing && heat.where != Where::kOven && heat.where != Where::kGrill)
        continue;
      for (const int f : step(i).follows) {
        const auto before = static_cast<std::size_t>(f);
        if (!step(f).heat || pan_[before].empty()) continue;
        const HeatDraft& was = step(f).heat->value;
        const bool same = was.where == heat.where && was.vessel == heat.vessel &&
                          was.celsius == heat.celsius && was.oven == heat.oven;
        if (same) pan_[at] = pan_[before];
      }
      if (!pan_[at].empty()) continue;
      const std::string kind = heat.where == Where::kRing   ? heat.vessel
                               : heat.where == Where::kOven ? heat.vessel + " in the oven"
                                                            : heat.vessel + " under the grill";
      const int n = ++count[kind];
      pan_[at] = n == 1 ? kind : say(kind, " ", n);
    }
  }

  void portions() {
    int n = draft_.portions.value;
    if (n < 1 || n > 200) {
      n = kUsualPortions;
      assumed_.push_back(say("The text does not say how many it serves; ", n, " were assumed."));
    }
    node_.set("portions", Node::of(n));
  }

  std::string unique_name(const IngredientDraft& d) {
    std::string name = base::trimmed(d.name.empty() ? d.line : d.name);
    name = base::first_letters(name.empty() ? "ingredient" : name, 60);
    const auto taken = [&](const std::string& n) {
      return std::find(names_.begin(), names_.end(), n) != names_.end();
    };
    if (!taken(name)) return name;
    std::string other = d.group.empty() ? name : say(name, " (", base::lower(d.group), ")");
    other = base::first_letters(other, 76);
    for (int k = 2; taken(other); ++k) other = say(name, " ", k);
    return other;
  }

  void ingredients() {
    Node& list = node_.set("ingredients", Node::list());
    std::vector<std::string> unknown, labels;
    for (const IngredientDraft& d : draft_.ingredients) {
      Node& one = list.add(Node::object());
      names_.push_back(unique_name(d));
      one.set("name", Node::of(names_.back()));
      const Quantity& q = d.quantity.value;
      if (q.stated() && q.most > Ratio(0)) {
        one.set("amount", Node::of(base::rounded_to(q.middle(), Ratio(1, 1000)).value()));
        const std::string unit = q.unit == Unit::kPiece ? q.piece : std::string(unit_word(q.unit));
        if (!unit.empty()) one.set("unit", Node::of(base::first_letters(unit, 30)));
        if (q.least != q.most)
          assumed_.push_back(say("Of ", in_quotes(names_.back()), " ", quantity_text(q),
                                 " are asked for; the middle was taken."));
      }
      const Food* food = d.food.value.empty() ? nullptr : foods_.find(d.food.value);
      if (food == nullptr) {
        one.set("label_read", Node::of(false));
        unknown.push_back(in_quotes(names_.back()));
      } else {
        Allergens all = food->contains;
        all.insert(food->check_for.begin(), food->check_for.end());
        if (!food->check_for.empty()) labels.push_back(in_quotes(names_.back()));
        if (!all.empty()) {
          Node& contains = one.set("contains", Node::list());
          for (const Allergen a : all) contains.add(Node::of(word(a)));
        }
        one.set("food", Node::of(food->key));
      }
      if (!d.preparation.empty())
        one.set("preparation", Node::of(base::first_letters(d.preparation, 120)));
      if (d.optional) one.set("optional", Node::of(true));
    }
    if (!unknown.empty())
      assumed_.push_back(say("Nothing is known of ", base::joined(unknown),
                             "; each counts as all fourteen allergens until its label is read."));
    if (!labels.empty())
      assumed_.push_back(say("The label decides on allergens of ", base::joined(labels),
                             "; each counts as what it may contain."));
  }

  void method() {
    Node& list = node_.set("method", Node::list());
    for (const int i : kept_) list.add(step_node(i));
    if (needs_probe()) add_probe(list);
  }

  Node step_node(int i) {
    const StepDraft& s = step(i);
    Node one = Node::object();
    one.set("id", Node::of(ids_[static_cast<std::size_t>(i)]));
    std::string says = base::first_letters(base::trimmed(base::replaced(s.says, '\n', ' ')), 118);
    if (!says.empty() && std::string_view(".!?").find(says.back()) == std::string_view::npos)
      says += '.';
    one.set("do", Node::of(says));
    one.set("short", Node::of(s.brief));
    const bool passive = tenths(s.attention.value) <= 2;
    if (passive && s.most.value > s.least.value) {
      Node& range = one.set("minutes", Node::object());
      range.set("least", Node::of(minutes(s.least.value)));
      range.set("most", Node::of(minutes(s.most.value)));
    } else {
      one.set("minutes", Node::of(minutes((s.least.value + s.most.value) / 2)));
    }
    one.set("attention", Node::of(word_for(kAttentionWords, s.attention.value)));
    follows(one, i);
    if (s.hygiene) one.set("hygiene", Node::of(word_for(kHygieneWords, s.hygiene->value)));
    heat(one, i);
    Node kit = Node::list();
    for (const auto& e : s.equipment) {
      const std::string name = e.value == "vegetable knife" ? "knife" : e.value;
      if (counted_kit(name)) kit.add(Node::of(name));
    }
    if (!kit.items.empty()) one.set("kit", kit);
    if (!s.uses.empty()) {
      Node& uses = one.set("uses", Node::list());
      for (const int u : s.uses) uses.add(Node::of(names_[static_cast<std::size_t>(u)]));
    }
    if (!s.hazards.empty()) one.set("hazard", Node::of(word(s.hazards.front().value)));
    if (!s.skills.empty()) {
      Node& skills = one.set("skills", Node::list());
      for (const auto& skill : s.skills) skills.add(Node::of(skill.value));
    }
    return one;
  }

  void follows(Node& one, int i) {
    Node& list = one.set("follows", Node::list());
    for (const int f : step(i).follows) {
      if (step(f).preheat) continue;
      const bool same_pan = !pan_[static_cast<std::size_t>(i)].empty() &&
                            pan_[static_cast<std::size_t>(i)] == pan_[static_cast<std::size_t>(f)];
      if (!same_pan || something_between(f, i)) {
        list.add(Node::of(ids_[static_cast<std::size_t>(f)]));
        continue;
      }
      // What stands on the ring does not wait for long.
      Node& wait = list.add(Node::object());
      wait.set("step", Node::of(ids_[static_cast<std::size_t>(f)]));
      wait.set("when", Node::of("within 5 min"));
    }
  }

  // Whether some other step that `i` waits for waits for `f` itself: "Simmer. Shred the meat and
  // cook it in the sauce."
  bool something_between(int f, int i) const {
    std::set<int> seen;
    std::vector<int> open;
    for (const int other : step(i).follows) {
      if (other != f) open.push_back(other);
    }
    while (!open.empty()) {
      const int s = open.back();
      open.pop_back();
      if (s == f) return true;
      if (!seen.insert(s).second) continue;
      for (const int before : step(s).follows) open.push_back(before);
    }
    return false;
  }

  void heat(Node& one, int i) {
    if (!step(i).heat) return;
    const HeatDraft& h = step(i).heat->value;
    const std::string& pan = pan_[static_cast<std::size_t>(i)];
    Node heat = Node::object();
    switch (h.where) {
      case Where::kRing:
        heat.set("ring", Node::of(pan));
        break;
      case Where::kGrill:
        heat.set("grill", Node::of(pan));
        break;
      case Where::kOven:
        heat.set("oven", Node::of(pan));
        heat.set("celsius", Node::of(h.celsius.value_or(kUsualCelsius)));
        if (h.oven != OvenKind::kConventional)
          heat.set("kind", Node::of(word_for(kOvenKindWords, h.oven)));
        if (!h.celsius)
          assumed_.push_back(say("No oven temperature is given for ", in_quotes(step(i).brief),
                                 "; ", kUsualCelsius, " °C was assumed."));
        break;
      case Where::kFridge:
        one.set("fridge_tenths", Node::of(2));
        return;
      case Where::kFreezer:
        one.set("freezer_tenths", Node::of(2));
        return;
      case Where::kMicrowave:
      case Where::kKettle:
        return;
    }
    one.set("heat", heat);
  }

  // The last step on heat, if raw meat or fish went into the dish and nobody probes.
  bool needs_probe() const {
    bool raw = false, heated = false;
    for (int i = 0; i < static_cast<int>(draft_.ingredients.size()); ++i)
      raw = raw || words_.raw_meat(i);
    for (const StepDraft& s : draft_.method) {
      heated = heated || (s.heat && !s.preheat && s.heat->value.where <= Where::kMicrowave);
      for (const auto& h : s.hazards) {
        if (h.value == Hazard::kProbing) return false;
      }
    }
    return raw && heated;
  }

  // Right behind the last step that cooks the meat: whatever goes on with it waits for the probe.
  void add_probe(Node& list) {
    int after = -1;
    for (const int i : kept_) {
      if (cooks(i) && cooks_meat(i)) after = i;
    }
    if (after < 0) return;
    const std::string& cooked = ids_[static_cast<std::size_t>(after)];
    Node probe = Node::object();
    probe.set("id", Node::of("probe-it"));
    probe.set("do", Node::of(kProbing));
    probe.set("short", Node::of("Probe"));
    probe.set("minutes", Node::of(2));
    probe.set("attention", Node::of("hands"));
    Node& follows = probe.set("follows", Node::list());
    Node& wait = follows.add(Node::object());
    wait.set("step", Node::of(cooked));
    wait.set("when", Node::of("within 5 min"));
    Node& kit = probe.set("kit", Node::list());
    kit.add(Node::of("probe"));
    probe.set("hazard", Node::of("probing"));
    bool awaited = false;
    std::size_t behind = 0;
    for (std::size_t k = 0; k < list.items.size(); ++k) {
      Node& one = list.items[k];
      if (one.find("id")->text == cooked) behind = k + 1;
      const auto at = static_cast<std::size_t>(kept_[k]);
      const auto& before = step(kept_[k]).follows;
      if (std::find(before.begin(), before.end(), after) == before.end() ||
          draft_.method[at].preheat)
        continue;
      one.find("follows")->add(Node::of("probe-it"));
      awaited = true;
    }
    // Nobody goes on with it: the last step, which serves it, waits.
    if (!awaited && after != kept_.back())
      list.items.back().find("follows")->add(Node::of("probe-it"));
    list.items.insert(list.items.begin() + static_cast<std::ptrdiff_t>(behind), std::move(probe));
    assumed_.push_back(
        "Raw meat or fish is cooked and the text does not check it: a step with the probe was "
        "added. "
        "Your employer's rules come first.");
  }

  bool cooks(int i) const {
    return step(i).heat && !step(i).preheat && step(i).heat->value.where <= Where::kMicrowave;
  }

  // Whether the step cooks what has raw meat in it: it names the meat, goes on in its pan, or cooks
  // what was put together with it. Warming the wraps beside it does not.
  bool cooks_meat(int i) const {
    const StepDraft& s = step(i);
    if (std::any_of(s.uses.begin(), s.uses.end(), [&](int u) { return words_.raw_meat(u); }))
      return true;
    return std::any_of(s.follows.begin(), s.follows.end(), [&](int f) {
      const StepDraft& before = step(f);
      if (before.preheat) return false;
      const bool same_pan = cooks(f) && before.heat->value.where == s.heat->value.where &&
                            before.heat->value.vessel == s.heat->value.vessel;
      const bool goes_on = same_pan || s.uses.empty() || s.heat->value.where == Where::kOven;
      return goes_on && has_meat(f);
    });
  }

  // Whether raw meat has come into what is in hand by this step.
  bool has_meat(int i) const {
    std::vector<int> open{i};
    std::set<int> seen;
    while (!open.empty()) {
      const int s = open.back();
      open.pop_back();
      if (!seen.insert(s).second) continue;
      for (const int u : step(s).uses) {
        if (words_.raw_meat(u)) return true;
      }
      for (const int f : step(s).follows) open.push_back(f);
    }
    return false;
  }
};

}  // namespace

base::Result<MadeDish> dish_from(const DishDraft& draft, const Foods& foods) {
  return Maker(draft, foods).make();
}

}  // namespace kitchen
