#include "kitchen/reading/actions.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "kitchen/reading/passive.h"

namespace kitchen {
namespace {

constexpr std::string_view kKnife = "knife skills";
constexpr std::string_view kWeighing = "weighing and measuring";
constexpr std::string_view kRaising = "whisking";
constexpr std::string_view kDough = "dough";
constexpr std::string_view kHob = "using the hob";
constexpr std::string_view kOven = "using the oven";
constexpr std::string_view kGrillSkill = "using the grill";
constexpr std::string_view kShaping = "shaping";
constexpr std::string_view kSauce = "sauces";

constexpr std::array kActions = {
    Action{"peel", Work::kCut, "Peel", kKnife},
    Action{"chop", Work::kCut, "Chop", kKnife},
    Action{"dice", Work::kCut, "Dice", kKnife},
    Action{"slice", Work::kCut, "Slice", kKnife, true},
    Action{"cut", Work::kCut, "Cut", kKnife},
    Action{"halve", Work::kCut, "Halve", kKnife},
    Action{"quarter", Work::kCut, "Quarter", kKnife, true},
    Action{"shred", Work::kCut, "Shred", kKnife},
    Action{"mince", Work::kCut, "Mince", kKnife, true},
    Action{"crush", Work::kCut, "Crush", kKnife},
    Action{"deseed", Work::kCut, "Deseed", kKnife},
    Action{"de-seed", Work::kCut, "Deseed", kKnife},
    Action{"seed", Work::kCut, "Deseed", kKnife, true},
    Action{"core", Work::kCut, "Core", kKnife, true},
    Action{"trim", Work::kCut, "Trim", kKnife},
    Action{"top", Work::kAssemble, "Top", "", true},
    Action{"tear", Work::kCut, "Tear", ""},
    Action{"snip", Work::kCut, "Snip", kKnife},
    Action{"score", Work::kCut, "Score", kKnife},
    Action{"slash", Work::kCut, "Slash", kKnife},
    Action{"skin", Work::kCut, "Skin", kKnife, true},
    Action{"stone", Work::kCut, "Stone", kKnife, true},
    Action{"julienne", Work::kCut, "Julienne", kKnife},
    Action{"hull", Work::kCut, "Hull", kKnife},
    Action{"split", Work::kCut, "Split", kKnife, true},
    Action{"mark", Work::kCut, "Mark", "", true},
    Action{"grate", Work::kGrate, "Grate", "grating"},
    Action{"zest", Work::kGrate, "Zest", "grating", true},
    Action{"squeeze", Work::kGrate, "Squeeze", ""},
    Action{"juice", Work::kGrate, "Juice", "", true},
    Action{"wash", Work::kWash, "Wash", ""},
    Action{"rinse", Work::kWash, "Rinse", ""},
    Action{"scrub", Work::kWash, "Scrub", ""},
    Action{"wipe", Work::kWash, "Wipe", ""},
    Action{"weigh", Work::kWeigh, "Weigh", kWeighing},
    Action{"measure", Work::kWeigh, "Measure", kWeighing},
    Action{"sift", Work::kMix, "Sift", "sifting"},
    Action{"sieve", Work::kMix, "Sieve", "sifting", true},
    Action{"mix", Work::kMix, "Mix", "mixing", true},
    Action{"stir", Work::kMix, "Stir", ""},
    Action{"combine", Work::kMix, "Combine", "mixing"},
    Action{"beat", Work::kMix, "Beat", "mixing"},
    Action{"cream", Work::kMix, "Cream", "creaming", true},
    Action{"rub", Work::kMix, "Rub in", "rubbing in"},
    Action{"fold", Work::kMix, "Fold in", "folding", true},
    Action{"toss", Work::kMix, "Toss", ""},
    Action{"coat", Work::kMix, "Coat", "coating", true},
    Action{"dip", Work::kAssemble, "Dip", "coating", true},
    Action{"crack", Work::kMix, "Crack eggs", ""},
    Action{"break", Work::kMix, "Break", ""},
    Action{"separate", Work::kMix, "Separate", "", true},
    Action{"dissolve", Work::kMix, "Dissolve", ""},
    Action{"fluff", Work::kMix, "Fluff", ""},
    Action{"shake", Work::kMix, "Shake", "", true},
    Action{"swirl", Work::kMix, "Swirl", "", true},
    Action{"marinate", Work::kStand, "Marinate", "marinating"},
    Action{"whisk", Work::kWhisk, "Whisk", kRaising, true},
    Action{"whip", Work::kWhisk, "Whip", kRaising},
    Action{"knead", Work::kKnead, "Knead", kDough},
    Action{"shape", Work::kShape, "Shape", kShaping, true},
    Action{"form", Work::kShape, "Form", kShaping},
    Action{"mould", Work::kShape, "Mould", kShaping, true},
    Action{"roll", Work::kShape, "Roll", kShaping, true},
    Action{"press", Work::kShape, "Press", ""},
    Action{"pat", Work::kShape, "Pat out", kShaping},
    Action{"flatten", Work::kShape, "Flatten", kShaping},
    Action{"stamp", Work::kShape, "Cut out", kShaping, true},
    Action{"divide", Work::kShape, "Divide", ""},
    Action{"pipe", Work::kShape, "Pipe", "piping", true},
    Action{"spread", Work::kAssemble, "Spread", "", true},
    Action{"spoon", Work::kAssemble, "Spoon", "", true},
    Action{"dollop", Work::kAssemble, "Spoon", "", true},
    Action{"fill", Work::kAssemble, "Fill", ""},
    Action{"layer", Work::kAssemble, "Layer", "layering", true},
    Action{"arrange", Work::kAssemble, "Arrange", ""},
    Action{"assemble", Work::kAssemble, "Assemble", ""},
    Action{"lay", Work::kAssemble, "Lay", ""},
    Action{"sprinkle", Work::kAssemble, "Sprinkle", ""},
    Action{"scatter", Work::kAssemble, "Scatter", ""},
    Action{"drizzle", Work::kAssemble, "Drizzle", ""},
    Action{"brush", Work::kAssemble, "Brush", "glazing", true},
    Action{"glaze", Work::kAssemble, "Glaze", "glazing", true},
    Action{"dust", Work::kAssemble, "Dust", "", true},
    Action{"wrap", Work::kAssemble, "Wrap", "", true},
    Action{"seal", Work::kAssemble, "Seal", ""},
    Action{"crimp", Work::kAssemble, "Crimp", kShaping},
    Action{"prick", Work::kAssemble, "Prick", ""},
    Action{"pierce", Work::kAssemble, "Pierce", ""},
    Action{"thread", Work::kAssemble, "Thread", ""},
    Action{"cover", Work::kAssemble, "Cover", "", true},
    Action{"ice", Work::kAssemble, "Ice", "decorating", true},
    Action{"decorate", Work::kAssemble, "Decorate", "decorating"},
    Action{"level", Work::kAssemble, "Level", "", true},
    Action{"smooth", Work::kAssemble, "Smooth", "", true},
    Action{"scrape", Work::kAssemble, "Scrape", ""},
    Action{"stuff", Work::kAssemble, "Stuff", ""},
    Action{"dot", Work::kAssemble, "Dot", "", true},
    Action{"dredge", Work::kAssemble, "Dust", ""},
    Action{"sandwich", Work::kAssemble, "Sandwich", "", true},
    Action{"spray", Work::kAssemble, "Spray", "", true},
    Action{"unroll", Work::kAssemble, "Unroll", ""},
    Action{"grease", Work::kLine, "Grease tin", "preparing tins"},
    Action{"butter", Work::kLine, "Butter", "preparing tins", true},
    Action{"oil", Work::kLine, "Oil", "preparing tins", true},
    Action{"flour", Work::kLine, "Flour", "preparing tins", true},
    Action{"line", Work::kLine, "Line tin", "preparing tins", true},
    Action{"add", Work::kAdd, "Add", ""},
    Action{"pour", Work::kAdd, "Pour", ""},
    Action{"tip", Work::kAdd, "Tip in", "", true},
    Action{"put", Work::kAdd, "Put in", ""},
    Action{"place", Work::kAdd, "Place", "", true},
    Action{"transfer", Work::kAdd, "Transfer", ""},
    Action{"return", Work::kAdd, "Return", ""},
    Action{"crumble", Work::kAdd, "Crumble", "", true},
    Action{"lower", Work::kAdd, "Lower in", "", true},
    Action{"drop", Work::kAdd, "Drop in", "", true},
    Action{"open", Work::kOpen, "Open", "", true},
    Action{"drain", Work::kDrain, "Drain", ""},
    Action{"strain", Work::kDrain, "Strain", ""},
    Action{"mash", Work::kMash, "Mash", "", true},
    Action{"blend", Work::kBlend, "Blend", "blending", true},
    Action{"blitz", Work::kBlend, "Blitz", "blending"},
    Action{"puree", Work::kBlend, "Purée", "blending", true},
    Action{"liquidise", Work::kBlend, "Blend", "blending"},
    Action{"liquidize", Work::kBlend, "Blend", "blending"},
    Action{"process", Work::kBlend, "Process", "blending", true},
    Action{"pulse", Work::kBlend, "Pulse", "blending", true},
    Action{"season", Work::kSeason, "Season", "seasoning"},
    Action{"taste", Work::kSeason, "Taste", "seasoning", true},
    Action{"probe", Work::kProbe, "Probe", "using a probe", true},
    Action{"serve", Work::kServe, "Serve", "presentation"},
    Action{"plate", Work::kServe, "Plate up", "presentation", true},
    Action{"garnish", Work::kServe, "Garnish", "presentation", true},
    Action{"ladle", Work::kServe, "Ladle", "", true},
    Action{"remove", Work::kTakeOut, "Take out", ""},
    Action{"take", Work::kTakeOut, "Take out", ""},
    Action{"lift", Work::kTakeOut, "Lift out", ""},
    Action{"turn", Work::kTakeOut, "Turn", ""},
    Action{"flip", Work::kTakeOut, "Turn", ""},
    Action{"preheat", Work::kSetOven, "Oven on", ""},
    Action{"pre-heat", Work::kSetOven, "Oven on", ""},
    Action{"heat", Work::kFry, "Heat", kHob, true},
    Action{"warm", Work::kFry, "Warm", kHob, true},
    Action{"fry", Work::kFry, "Fry", kHob},
    Action{"stir-fry", Work::kFry, "Stir-fry", kHob, true},
    Action{"saute", Work::kFry, "Fry", kHob},
    Action{"sauté", Work::kFry, "Fry", kHob},
    Action{"soften", Work::kFry, "Soften", kHob},
    Action{"sweat", Work::kFry, "Sweat", kHob},
    Action{"brown", Work::kFry, "Brown", kHob, true},
    Action{"sear", Work::kFry, "Sear", kHob},
    Action{"toast", Work::kFry, "Toast", "", true},
    Action{"scramble", Work::kFry, "Scramble", kHob},
    Action{"deep-fry", Work::kDeepFry, "Deep-fry", "deep frying"},
    Action{"melt", Work::kMelt, "Melt", kHob},
    Action{"bring", Work::kBringToBoil, "Boil up", kHob},
    Action{"thicken", Work::kThicken, "Thicken", kSauce},
    Action{"stirfry", Work::kFry, "Fry", kHob},
    Action{"dry-fry", Work::kFry, "Fry", kHob},
    Action{"shallow-fry", Work::kFry, "Fry", kHob},
    Action{"boil", Work::kBoil, "Boil", kHob, true},
    Action{"steam", Work::kBoil, "Steam", kHob, true},
    Action{"blanch", Work::kBoil, "Blanch", kHob},
    Action{"poach", Work::kSimmer, "Poach", kHob},
    Action{"simmer", Work::kSimmer, "Simmer", kHob, true},
    Action{"reduce", Work::kSimmer, "Reduce", kHob},
    Action{"bubble", Work::kSimmer, "Simmer", kHob, true},
    Action{"cook", Work::kCookOn, "Cook", kHob, true},
    Action{"bake", Work::kBake, "Bake", kOven, true},
    Action{"roast", Work::kBake, "Roast", kOven, true},
    Action{"grill", Work::kGrill, "Grill", kGrillSkill, true},
    Action{"broil", Work::kGrill, "Grill", kGrillSkill},
    Action{"barbecue", Work::kGrill, "Grill", kGrillSkill, true},
    Action{"microwave", Work::kMicrowave, "Microwave", "using a microwave", true},
    Action{"chill", Work::kChill, "Chill", ""},
    Action{"refrigerate", Work::kChill, "Chill", ""},
    Action{"freeze", Work::kFreeze, "Freeze", ""},
    Action{"leave", Work::kStand, "Leave", ""},
    Action{"let", Work::kStand, "Leave", ""},
    Action{"allow", Work::kStand, "Leave", ""},
    Action{"rest", Work::kStand, "Rest", "", true},
    Action{"cool", Work::kStand, "Cool", "", true},
    Action{"stand", Work::kStand, "Stand", "", true},
    Action{"set", Work::kStand, "Set aside", "", true},
    Action{"prove", Work::kStand, "Prove", kDough},
    Action{"proof", Work::kStand, "Prove", kDough, true},
    Action{"soak", Work::kStand, "Soak", ""},
    Action{"keep", Work::kStand, "Keep", ""},
    Action{"move", Work::kAdd, "Move", ""},
    Action{"slide", Work::kAdd, "Slide", "", true},
    Action{"make", Work::kMix, "Make", ""},
    Action{"flake", Work::kMix, "Flake", ""},
    Action{"invert", Work::kTakeOut, "Turn out", ""},
    Action{"repeat", Work::kMix, "Repeat", ""},
};

constexpr Action kRollOut{"rollout", Work::kRollOut, "Roll out", "rolling out"};
constexpr Action kBoilKettle{"kettle", Work::kKettle, "Kettle", ""};
constexpr Action kOnToBoil{"boil", Work::kBringToBoil, "Boil", kHob};
constexpr Action kLetSimmer{"simmer", Work::kSimmer, "Simmer", kHob};
constexpr Action kHeatOven{"preheat", Work::kSetOven, "Oven on", ""};
constexpr Action kCheckCore{"probe", Work::kProbe, "Probe", "using a probe"};
constexpr Action kWhizz{"blitz", Work::kBlend, "Blend", "blending"};

// What may stand behind a word that is a verb as well as a noun.
bool after_a_verb(const std::vector<LineToken>& t, std::size_t i) {
  if (i >= t.size()) return false;
  if (t[i].number()) return true;
  return base::one_of(
      t[i].word,
      {"the",        "a",      "an",      "it",      "them",    "each", "your",     "in",
       "into",       "over",   "out",     "with",    "on",      "onto", "together", "until",
       "for",        "gently", "well",    "all",     "both",    "some", "half",     "again",
       "at",         "to",     "under",   "off",     "through", "any",  "this",     "these",
       "everything", "slowly", "quickly", "lightly", "evenly",  "up",   "down",     "thinly",
       "thickly",    "aside",  "every",   "one",     "two",     "any",  "as",       "carefully"});
}

// "drain and mash.", "cover, then simmer until soft": a verb without an object. "Flour and butter."
// are foods.
bool alone(const std::vector<LineToken>& t, std::size_t i) {
  if (i == 0 || !base::one_of(t[i - 1].word, {"and", "then", ",", "&"})) return false;
  if (base::one_of(t[i].word,
                   {"cream",  "butter", "oil",     "flour", "zest",     "juice",  "mince",
                    "roll",   "ice",    "crumble", "slice", "quarter",  "spread", "dip",
                    "toast",  "brown",  "puree",   "glaze", "core",     "stone",  "skin",
                    "seed",   "line",   "layer",   "top",   "cool",     "warm",   "set",
                    "smooth", "level",  "rest",    "open",  "separate", "place",  "plate",
                    "lower",  "tip",    "heat",    "spoon", "dollop",   "sieve",  "steam",
                    "split",  "mark",   "dot",     "shake", "swirl",    "spray",  "sandwich"}))
    return false;
  return i + 1 >= t.size() ||
         base::one_of(t[i + 1].word, {".", ",", "and", "then", ";", "until", "till", "!"});
}

}  // namespace

bool on_heat(Work w) { return w >= Work::kFry && w <= Work::kMicrowave; }
bool waits(Work w) {
  return w == Work::kBake || w == Work::kSimmer || w == Work::kBoil || w == Work::kGrill ||
         w == Work::kMicrowave || w == Work::kKettle || w == Work::kChill || w == Work::kFreeze ||
         w == Work::kStand;
}

Attention usual_attention(Work w) {
  switch (w) {
    case Work::kDeepFry:
      return Attention::kNothingElse;
    case Work::kFry:
    case Work::kMelt:
    case Work::kThicken:
    case Work::kCookOn:
      return Attention::kStandBy;
    case Work::kBringToBoil:
    case Work::kGrill:
      return Attention::kWatch;
    case Work::kBoil:
    case Work::kSimmer:
      return Attention::kGlance;
    case Work::kBake:
    case Work::kMicrowave:
    case Work::kKettle:
    case Work::kChill:
    case Work::kFreeze:
    case Work::kStand:
    case Work::kSetOven:
      return Attention::kLeave;
    default:
      return Attention::kHands;
  }
}

Where place_of(Work w) {
  switch (w) {
    case Work::kBake:
    case Work::kSetOven:
      return Where::kOven;
    case Work::kGrill:
      return Where::kGrill;
    case Work::kMicrowave:
      return Where::kMicrowave;
    case Work::kKettle:
      return Where::kKettle;
    case Work::kChill:
      return Where::kFridge;
    case Work::kFreeze:
      return Where::kFreezer;
    default:
      return Where::kRing;
  }
}

const Action* action_named(std::string_view word) {
  const auto found = std::find_if(kActions.begin(), kActions.end(),
                                  [&](const Action& a) { return a.verb == word; });
  return found == kActions.end() ? nullptr : &*found;
}

const Action* action_at(const std::vector<LineToken>& t, std::size_t i) {
  if (i >= t.size() || t[i].kind != LineToken::Kind::kWord) return nullptr;
  const std::string& word = t[i].word;
  const auto ahead = [&](std::string_view wanted, std::size_t within) {
    for (std::size_t k = i + 1; k < std::min(i + 1 + within, t.size()); ++k) {
      if (t[k].is(wanted)) return true;
      if (t[k].is(",") || t[k].is(";")) return false;
    }
    return false;
  };
  if (word == "whizz" || word == "whiz") return &kWhizz;
  // "Keep stirring", "carry on cooking": what is gone on with.
  if (base::one_of(word, {"keep", "continue", "carry", "start", "begin", "go"})) {
    for (std::size_t k = i + 1; k < std::min(i + 4, t.size()); ++k) {
      if (t[k].is(",")) break;
      const Action* going_on = t[k].word.ends_with("ing") ? action_of_form(t[k].word) : nullptr;
      if (going_on != nullptr) return going_on;
    }
  }
  if (word == "light" && ahead("oven", 3)) return &kHeatOven;
  if (word == "check" || word == "test") {
    const bool core = ahead("probe", 14) || ahead("thermometer", 14) || ahead("temperature", 14);
    return core ? &kCheckCore : nullptr;
  }
  if ((word == "heat" || word == "turn" || word == "set" || word == "put" || word == "switch") &&
      (ahead("oven", 6) || (ahead("grill", 4) && word != "put"))) {
    const bool inside = ahead("in", 5) || ahead("into", 5);
    if (!inside && (word == "heat" || word == "set" || ahead("on", 5) || ahead("up", 3)))
      return &kHeatOven;
  }
  // "Oven 200", "Grill on", "Get the oven up to 220", "the grill good and hot".
  const auto number_ahead = [&](std::size_t within) {
    return std::any_of(t.begin() + static_cast<std::ptrdiff_t>(std::min(i + 1, t.size())),
                       t.begin() + static_cast<std::ptrdiff_t>(std::min(i + 1 + within, t.size())),
                       [](const LineToken& each) { return each.number(); });
  };
  if (i == 0 && base::one_of(word, {"oven", "ovens", "grill"}) && i + 1 < t.size() &&
      (t[1].number() || base::one_of(t[1].word, {"on", "to", "at", "up", "hot"})))
    return &kHeatOven;
  if (base::one_of(word, {"turn", "get", "have", "bring", "switch", "set", "put"}) &&
      !ahead("in", 5) && !ahead("into", 5) &&
      ((ahead("oven", 4) && number_ahead(9)) || (ahead("grill", 3) && ahead("hot", 6))))
    return &kHeatOven;
  if (word == "top" && i + 2 < t.size() && (t[i + 1].is("and") || t[i + 1].is("&")) &&
      t[i + 2].is("tail"))
    return action_named("trim");
  if (word == "turn" && ahead("oven", 2) && (ahead("down", 3) || ahead("up", 3))) return &kHeatOven;
  if (base::one_of(word, {"boil", "fill", "switch", "put"}) && ahead("kettle", 4))
    return &kBoilKettle;
  // "Put a pan of water on to boil", "let them sweat", "allow the sauce to bubble".
  if (word == "put" && ahead("pan", 6) && ahead("boil", 9)) return &kOnToBoil;
  if (word == "let" || word == "allow") {
    for (std::size_t k = i + 1; k < std::min(i + 6, t.size()) && !t[k].is(","); ++k) {
      if (base::one_of(t[k].word, {"sweat", "simmer", "bubble", "reduce"})) return &kLetSimmer;
      if (base::one_of(t[k].word, {"wilt", "sizzle"})) return action_named("fry");
    }
  }
  if (word == "roll" && ahead("out", 5)) return &kRollOut;
  // "Fold and roll up" wraps; only into something one folds in.
  if (word == "roll" && ahead("up", 3)) return action_named("wrap");
  if (word == "fold" && !ahead("in", 4) && !ahead("into", 8) && !ahead("through", 6) &&
      (i == 0 || !t[i - 1].is("to")))
    return action_named("wrap");
  // A paste of cornflour is blended with a spoon.
  if (word == "blend" && (ahead("cornflour", 4) || ahead("cornstarch", 4) || ahead("paste", 9)))
    return action_named("mix");
  // "Set on a rack", "set up three dishes"; what is set aside stands.
  if (word == "set" && i + 1 < t.size() &&
      base::one_of(t[i + 1].word, {"on", "onto", "up", "the", "in", "over"}) &&
      !ahead("aside", 5) && !ahead("fridge", 8) && !ahead("until", 10) && !ahead("for", 8) &&
      !ahead("oven", 6) && !ahead("grill", 6) && !ahead("timer", 4))
    return action_named("place");
  if (word == "deep" && ahead("fry", 1)) return action_named("deep-fry");
  if (word == "stir" && ahead("fry", 1)) return action_named("stir-fry");
  const Action* found = action_named(word);
  if (found == nullptr) return nullptr;
  const bool first = i == 0 || t[i - 1].is("then") || t[i - 1].is(":") || t[i - 1].is(")");
  if (found->noun_too && !first && !after_a_verb(t, i + 1) && !alone(t, i)) return nullptr;
  // "The oil and butter in a pan" are foods: a tin or the tray is buttered.
  const bool object = i + 1 < t.size() &&
                      base::one_of(t[i + 1].word,
                                   {"the", "a", "an", "your", "and", "two", "each", "it", "both",
                                    "some", "one", "tin", "tins", "base"});
  if (found->noun_too && found->work == Work::kLine && !first && !object) return nullptr;
  if (found->noun_too && first && i + 1 < t.size() &&
      base::one_of(t[i + 1].word, {"mixture", "tin", "cheese", "and"}) &&
      found->work == Work::kLine)
    return nullptr;
  return found;
}

const Action& some_action() {
  static constexpr Action kSome{"do", Work::kAssemble, "", ""};
  return kSome;
}

std::vector<std::string> usual_equipment(Work w) {
  switch (w) {
    case Work::kCut:
      return {"knife", "board"};
    case Work::kGrate:
      return {"grater"};
    case Work::kWash:
      return {"colander"};
    case Work::kWeigh:
      return {"scales"};
    case Work::kMix:
      return {"bowl", "spoon"};
    case Work::kWhisk:
      return {"bowl", "whisk"};
    case Work::kRollOut:
      return {"rolling pin"};
    case Work::kLine:
      return {"tin"};
    case Work::kDrain:
      return {"colander"};
    case Work::kMash:
      return {"masher"};
    case Work::kBlend:
      return {"blender"};
    case Work::kProbe:
      return {"probe"};
    case Work::kKettle:
      return {"kettle"};
    case Work::kDeepFry:
      return {"deep pan"};
    case Work::kFry:
      return {"frying pan"};
    case Work::kBoil:
    case Work::kSimmer:
    case Work::kBringToBoil:
    case Work::kMelt:
    case Work::kThicken:
      return {"saucepan"};
    case Work::kBake:
      return {"oven gloves"};
    case Work::kGrill:
      return {"grill pan"};
    default:
      return {};
  }
}

}  // namespace kitchen
