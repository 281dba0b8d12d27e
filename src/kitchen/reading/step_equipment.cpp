// What a pupil fetches for a step: what its words name, what its verbs imply, and the pan, bowl or
// tin the food stands in already. Common practice, no source.
#include "kitchen/reading/step_view.h"

namespace kitchen {
namespace {

class Equipment {
 public:
  Equipment(const StepView& v, StepDraft& step) : v_(v), step_(step) {}

  void find() {
    for (const NamedWare& ware : v_.wares) {
      add(ware.name == "pan" ? pan_meant(v_) : ware.name, 1, ware.from);
    }
    named_ = step_.equipment.size();
    if (!cleans()) {
      for (const Clause& c : v_.pieces.clauses) by_work(c);
    }
    if (spoons() || v_.has({"spoonful"}) || v_.says("level the top") || v_.says("smooth the top") ||
        v_.says("smooth the surface"))
      add("spoon", 0.6);
    if (v_.has({"core", "cored"}) && (uses({"apple", "pear"}) || v_.has({"apple", "pear"})))
      add("corer", 0.5);
    if (v_.has({"prick"}) && !has("skewer")) add("fork", 0.6);
    if (v_.has({"apron"})) add("apron", 0.9);
    if (v_.has({"spread"}) && !spoons() && !step_.uses.empty() && !has("spoon") && !step_.heat)
      add("knife", 0.5);
    if (v_.has({"scoop", "scrape", "pile", "heap", "swirl", "dollop"}) && !has("ladle") &&
        !has("fork") && !has("spatula"))
      add("spoon", 0.5);
    if (v_.has({"separate"}) && (uses({"egg"}) || v_.has({"egg", "yolk"})) && !names_vessel())
      add("mixing bowl", 0.6);
    if (v_.has({"dollop"}) || (v_.work == Work::kServe && v_.has({"spoon", "pile", "share"})))
      add("spoon", 0.5);
    if (v_.has({"taste"}) && !named_) add("spoon", 0.5);
    if (v_.work == Work::kServe && !names_vessel()) add("plate", 0.5);
    if (v_.has({"pipe"}) && !v_.has({"spoon"})) add("piping bag", 0.7);
    stirring();
    lid();
    standing_in();
    if (v_.work == Work::kTakeOut && (v_.so_far.heat == Work::kBake || v_.has({"oven"})))
      add("oven gloves", 0.7);
    if (step_.heat && !step_.heat->value.vessel.empty() && v_.work != Work::kSetOven)
      add(step_.heat->value.vessel, step_.heat->confidence, step_.heat->value.vessel);
  }

 private:
  const StepView& v_;
  StepDraft& step_;
  std::size_t named_ = 0;  // the first so many are named by the text

  void add(std::string name, double confidence, std::string from = "") {
    if (!has(name)) step_.equipment.push_back({std::move(name), confidence, std::move(from)});
  }
  bool has(std::string_view name) const {
    return std::any_of(step_.equipment.begin(), step_.equipment.end(),
                       [&](const auto& e) { return e.value == name; });
  }
  bool names(WareKind kind) const {
    return std::any_of(step_.equipment.begin(),
                       step_.equipment.begin() + static_cast<std::ptrdiff_t>(named_),
                       [&](const auto& e) { return ware_kind(e.value) == kind; });
  }
  bool names_vessel() const {
    return names(WareKind::kBowl) || names(WareKind::kPan) || names(WareKind::kBaking);
  }
  bool uses(std::initializer_list<std::string_view> keys) const {
    return std::any_of(step_.uses.begin(), step_.uses.end(), [&](int i) {
      const Food* food = v_.ingredients.food(i);
      return food != nullptr && std::any_of(keys.begin(), keys.end(), [&](std::string_view part) {
               return food->key.find(part) != std::string::npos;
             });
    });
  }
  bool says(const Clause& c, std::initializer_list<std::string_view> words) const {
    return kitchen::says(v_.tokens(c), c.begin, c.end, words);
  }
  bool cleans() const {
    return v_.pieces.main.work == Work::kWash &&
           v_.has({"hand", "board", "knife", "surface", "worktop"});
  }

  void by_work(const Clause& c) {
    const Work w = c.work == Work::kCookOn ? v_.work : c.work;
    const bool in_pan = step_.heat && on_heat(w) && w != Work::kBake && w != Work::kGrill;
    switch (w) {
      case Work::kCut:
        cutting(c);
        return;
      case Work::kGrate:
        grating(c);
        return;
      case Work::kDrain:
        if (has("kitchen paper")) return;
        add(uses({"rice", "lentil", "quinoa", "_tinned", "glass"}) ||
                    says(c, {"tin", "tins", "can", "cans", "strain"})
                ? "sieve"
                : "colander",
            0.7);
        return;
      case Work::kWash:
        add(uses({"rice", "lentil", "quinoa", "berries", "beansprouts", "bean"}) ? "sieve"
                                                                                 : "colander",
            0.7);
        return;
      case Work::kMash:
        if (!has("fork")) add("masher", 0.7);
        if (!names_vessel() && current_bowl().empty()) add("mixing bowl", 0.5);
        return;
      case Work::kMicrowave:
        if (!names_vessel()) add("mixing bowl", 0.5);
        return;
      case Work::kOpen:
        if (says(c, {"tin", "tins", "can", "cans"})) add("tin opener", 0.7);
        return;
      case Work::kMix:
      case Work::kWhisk:
        mixing(c);
        return;
      case Work::kBlend:
        if (!has("hand blender") && !has("food processor")) add("blender", 0.7);
        return;
      case Work::kLine:
        if (!names(WareKind::kBaking)) add("tin", 0.7);
        if (c.action->verb == "line" && !v_.has({"with"}) && !lining())
          add("baking parchment", 0.6);
        return;
      default:
        break;
    }
    if (in_pan) return;
    for (std::string& name : usual_equipment(w)) add(std::move(name), 0.7);
    const std::string_view verb = c.action->verb;
    if (verb == "brush" || verb == "glaze") add("pastry brush", 0.7);
    if (verb == "ladle") add("ladle", 0.9);
    if (verb == "measure" && v_.has({"ml", "milk", "water", "stock"})) add("jug", 0.7);
    if (verb == "soak" && !names_vessel()) add("mixing bowl", 0.6);
    if (w == Work::kAdd && says(c, {"ml", "millilitres"})) add("jug", 0.5);
  }

  void cutting(const Clause& c) {
    const std::string_view verb = c.action->verb;
    const bool other_tool = has("rolling pin") || has("fork") || has("scissors") || has("cutter");
    if (verb == "tear") return;
    if (verb == "snip") {
      add("scissors", 0.7);
      return;
    }
    if (verb == "crush" && (says(c, {"garlic"}) || uses({"garlic"}))) add("garlic press", 0.6);
    if (verb == "peel") add("peeler", 0.6);
    if (verb == "core" && says(c, {"apple", "apples"})) add("corer", 0.5);
    if (verb == "core" && uses({"apple"})) add("corer", 0.5);
    if (other_tool) {
      if (has("cutter") || verb == "crush") return;
      add("knife", 0.6);
      return;
    }
    add("knife", 0.7);
    add("board", 0.7);
  }

  void grating(const Clause& c) {
    const std::string_view verb = c.action->verb;
    const bool citrus = uses({"lemon", "lime", "orange"}) || says(c, {"juice", "lemon", "lime"});
    if ((verb == "squeeze" || verb == "juice") && citrus) {
      add("lemon squeezer", 0.6);
      if (!v_.has({"half", "wedge", "out"})) {
        add("knife", 0.5);
        add("board", 0.5);
      }
    } else if (verb != "squeeze") {
      add("grater", 0.7);
      if (citrus && says(c, {"juice", "squeeze"})) add("lemon squeezer", 0.6);
    }
  }

  void mixing(const Clause& c) {
    const std::string_view verb = c.action->verb;
    if (verb == "sift" || verb == "sieve") add("sieve", 0.8);
    if (verb == "make" && v_.says("stock")) {
      add("jug", 0.7);
      return;
    }
    if (verb == "dissolve" && !names_vessel()) add("jug", 0.7);
    const bool on_ring = v_.work == Work::kFry || (step_.heat && on_heat(v_.work));
    const bool standing = !current_bowl().empty() && !(fresh_start());
    const bool bowl = names_vessel() || on_ring || has("jug") || standing;
    if (!bowl) add("mixing bowl", 0.7);
    const bool beats_eggs = verb == "beat" && !v_.says("beat in") && uses({"egg"}) &&
                            !uses({"flour", "sugar", "spread"});
    const bool whisk = c.work == Work::kWhisk || (beats_eggs && uses({"milk", "cream"}));
    if (beats_eggs && !whisk && !has("electric whisk") && !has("whisk")) add("fork", 0.6);
    const bool by_hand = v_.has({"hand", "hands", "fingertip", "finger"}) || verb == "rub" ||
                         verb == "crack" || verb == "break" || verb == "coat" || verb == "flake";
    const bool stirrer = has("fork") || has("electric whisk") || has("food mixer") ||
                         has("wooden spoon") || has("spoon") || has("whisk");
    if (stirrer) return;
    // Whites and cream to peaks, butter and sugar to a cream: by motor, where the school has one.
    const bool long_work = v_.has({"peak", "stiff", "fluffy"}) || verb == "cream" || verb == "whip";
    if (long_work && (whisk || verb == "cream" || verb == "beat" || verb == "whip"))
      add("electric whisk", 0.6);
    else if (whisk)
      add("whisk", 0.7);
    else if (!by_hand)
      add("spoon", 0.6);
  }

  // What is stirred on the ring, and what is taken out of hot fat or water.
  void stirring() {
    const bool stirs = v_.has(
                           {"stir", "stirring", "stir-fry", "toss", "tossing", "sear", "brown"}) ||
                       v_.says("good mix");
    const bool tool = has("spoon") || has("wooden spoon") || has("whisk") || has("fork") ||
                      has("spatula") || has("fish slice") || has("tongs");
    if (stirs && !tool && (on_heat(v_.work) || v_.says("good mix"))) add("wooden spoon", 0.6);
    // What fries wants moving about, and so does what is added to a pan that simmers.
    const bool on_ring = step_.heat && step_.heat->value.where == Where::kRing;
    const bool turns = v_.has({"turn", "turning", "flip", "flipping"}) || v_.says("each side") ||
                       v_.says("both side") || v_.says("a side");
    if (on_ring && !tool && !turns &&
        (v_.work == Work::kFry || (v_.work == Work::kSimmer && !step_.uses.empty() &&
                                   v_.has({"add", "stir", "tip", "pour", "return", "put"}))))
      add("wooden spoon", 0.5);
    const bool melts = v_.work == Work::kMelt && step_.uses.size() > 1 && on_ring;
    if (melts && !tool) add("wooden spoon", 0.6);
    const bool pieces = std::any_of(step_.uses.begin(), step_.uses.end(),
                                    [&](int i) {
                                      return v_.ingredients.raw_meat(i) &&
                                             v_.ingredients.food(i)->category != "fish";
                                    }) ||
                        v_.has({"sausage", "meatball", "kofta", "skewer", "rasher"});
    if (turns && !stirs && !tool && v_.work == Work::kFry)
      add(pieces && !v_.has({"burger", "mince"}) ? "tongs" : "fish slice", 0.6);
    if (turns && !tool && (v_.work == Work::kGrill || v_.work == Work::kBake)) add("tongs", 0.5);
    const bool out = v_.says("fish out") || v_.says("lift out") || v_.says("lower in") ||
                     v_.says("scoop out");
    if (v_.work == Work::kDeepFry && (out || !step_.uses.empty() || v_.has({"spoonful"})))
      add("slotted spoon", 0.6);
    else if (out && v_.so_far.on_ring)
      add("slotted spoon", 0.5);
  }

  // A lid where one cooks; bowls are covered with something that is named.
  void lid() {
    const bool covered = v_.has({"cover", "covered"}) && !has("foil") && !has("cling film") &&
                         !has("tea towel") && !has("cloth") && !has("plate") &&
                         !v_.says("part covered") && !v_.has({"uncovered"});
    const bool pan = (step_.heat && step_.heat->value.where == Where::kRing) || v_.so_far.on_ring;
    if (covered && pan) add("lid", 0.7);
    const bool rests = v_.work == Work::kChill || v_.work == Work::kStand;
    if (covered && !pan && rests && !has("lid")) add("cling film", 0.5);
  }

  bool lining() const {
    return has("foil") || has("paper cases") || has("baking parchment") || has("cling film") ||
           has("greaseproof paper");
  }
  bool spoons() const {
    const auto& all = v_.pieces.clauses;
    return std::any_of(all.begin(), all.end(),
                       [](const Clause& c) { return c.action->verb == "spoon"; });
  }

  std::string current_bowl() const {
    return ware_kind(v_.so_far.vessel) == WareKind::kTool ? "" : v_.so_far.vessel;
  }

  // What is stirred, chilled, left or covered stands in its bowl, pan or tin still.
  void standing_in() {
    const Work w = v_.work;
    if (names_vessel() || v_.so_far.vessel.empty()) return;
    const bool still = w == Work::kMix || w == Work::kBlend || w == Work::kMash ||
                       w == Work::kWhisk || w == Work::kDrain || w == Work::kTakeOut ||
                       w == Work::kSeason || w == Work::kChill || w == Work::kFreeze ||
                       w == Work::kStand;
    const bool into = (w == Work::kAdd || w == Work::kAssemble) && step_.heat == std::nullopt;
    if (!still && !into) return;
    // What waits on a rack or on paper has left its tin.
    if (has("wire rack") || has("kitchen paper")) return;
    if (fresh_start()) return;
    const std::string other = vessel_of_target();
    add(other.empty() ? v_.so_far.vessel : other, 0.5);
  }

  // "Tip the onions into the lentils": into what the lentils stand in.
  std::string vessel_of_target() const {
    for (std::size_t k = 0; k + 2 < v_.words.size(); ++k) {
      if (v_.words[k] != "into" || v_.words[k + 1] != "the") continue;
      const auto end = std::min(k + 4, v_.words.size());
      const std::vector<std::string> target(v_.words.begin() + static_cast<std::ptrdiff_t>(k + 2),
                                            v_.words.begin() + static_cast<std::ptrdiff_t>(end));
      for (const int i : v_.ingredients.named_in(target, step_.group, {})) {
        const auto found = v_.so_far.stands_in.find(i);
        if (found != v_.so_far.stands_in.end()) return found->second;
      }
    }
    return "";
  }

  // "Beat the eggs with the milk": nothing of what went before, so in a bowl of its own.
  bool fresh_start() const {
    const bool mixes = v_.work == Work::kMix || v_.work == Work::kWhisk;
    const bool fresh = !step_.uses.empty() &&
                       std::none_of(step_.uses.begin(), step_.uses.end(),
                                    [&](int i) { return v_.so_far.used.count(i) != 0; });
    const bool joins = v_.says("in the") || v_.says("into the") || v_.says("stir in") ||
                       v_.says("fold in") || v_.says("mix in") || v_.says("beat in") ||
                       v_.says("whisk in") || v_.says("to the");
    const bool whips = v_.pieces.main.action->verb == "whip";
    return mixes && fresh && !joins && (step_.uses.size() > 1 || whips);
  }
};

}  // namespace

void find_equipment(const StepView& v, StepDraft& step) { Equipment(v, step).find(); }

}  // namespace kitchen
