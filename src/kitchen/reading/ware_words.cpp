#include "kitchen/reading/ware_words.h"

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/reading/line_words.h"

#include <algorithm>
#include <array>

namespace kitchen {
namespace {

struct Ware {
  std::string_view words;  // folded, singular, between spaces
  std::string_view name;   // the room's word
  WareKind kind = WareKind::kTool;
};

constexpr WareKind kBowl = WareKind::kBowl, kPan = WareKind::kPan, kBaking = WareKind::kBaking;

// Longer names first: a frying pan is no pan.
constexpr std::array kWares = {
    Ware{"deep fat fryer", "deep fryer", kPan},
    Ware{"dutch oven", "large pan", kPan},
    Ware{"food processor", "food processor", kBowl},
    Ware{"hand blender", "hand blender"},
    Ware{"stick blender", "hand blender"},
    Ware{"immersion blender", "hand blender"},
    Ware{"electric whisk", "electric whisk"},
    Ware{"electric hand whisk", "electric whisk"},
    Ware{"hand mixer", "electric whisk"},
    Ware{"electric mixer", "electric whisk"},
    Ware{"stand mixer", "food mixer", kBowl},
    Ware{"balloon whisk", "whisk"},
    Ware{"mixing bowl", "mixing bowl", kBowl},
    Ware{"measuring jug", "jug", kBowl},
    Ware{"measuring spoon", "measuring spoons"},
    Ware{"wooden spoon", "wooden spoon"},
    Ware{"metal spoon", "spoon"},
    Ware{"slotted spoon", "slotted spoon"},
    Ware{"rolling pin", "rolling pin"},
    Ware{"frying pan", "frying pan", kPan},
    Ware{"wide pan", "frying pan", kPan},
    Ware{"non-stick pan", "frying pan", kPan},
    Ware{"nonstick pan", "frying pan", kPan},
    Ware{"shallow pan", "frying pan", kPan},
    Ware{"skillet", "frying pan", kPan},
    Ware{"wok", "wok", kPan},
    Ware{"griddle pan", "griddle pan", kPan},
    Ware{"grill pan", "grill pan", kPan},
    Ware{"saucepan", "saucepan", kPan},
    Ware{"sauce pan", "saucepan", kPan},
    Ware{"stockpot", "large pan", kPan},
    Ware{"casserole", "casserole", kPan},
    Ware{"roasting tin", "roasting tin", kBaking},
    Ware{"roasting tray", "roasting tin", kBaking},
    Ware{"roasting pan", "roasting tin", kBaking},
    Ware{"baking tray", "baking tray", kBaking},
    Ware{"baking sheet", "baking tray", kBaking},
    Ware{"cookie sheet", "baking tray", kBaking},
    Ware{"sheet pan", "baking tray", kBaking},
    Ware{"baking pan", "tin", kBaking},
    Ware{"cake pan", "tin", kBaking},
    Ware{"loaf pan", "loaf tin", kBaking},
    Ware{"muffin tin", "muffin tin", kBaking},
    Ware{"muffin pan", "muffin tin", kBaking},
    Ware{"muffin cup", "muffin tin", kBaking},
    Ware{"muffin tray", "muffin tin", kBaking},
    Ware{"bun tin", "muffin tin", kBaking},
    Ware{"bun tray", "muffin tin", kBaking},
    Ware{"cake tin", "tin", kBaking},
    Ware{"sandwich tin", "tin", kBaking},
    Ware{"loaf tin", "loaf tin", kBaking},
    Ware{"flan tin", "flan tin", kBaking},
    Ware{"flan dish", "flan dish", kBaking},
    Ware{"flan ring", "flan ring", kBaking},
    Ware{"flan case", "flan ring", kBaking},
    Ware{"quiche dish", "flan dish", kBaking},
    Ware{"tart tin", "flan tin", kBaking},
    Ware{"ovenproof dish", "ovenproof dish", kBaking},
    Ware{"baking dish", "ovenproof dish", kBaking},
    Ware{"pie dish", "pie dish", kBaking},
    Ware{"shallow dish", "shallow dish", kBowl},
    Ware{"ramekin", "ramekins", kBaking},
    Ware{"cling film", "cling film"},
    Ware{"clingfilm", "cling film"},
    Ware{"plastic wrap", "cling film"},
    Ware{"foil", "foil"},
    Ware{"baking parchment", "baking parchment"},
    Ware{"parchment", "baking parchment"},
    Ware{"greaseproof paper", "greaseproof paper"},
    Ware{"greaseproof", "greaseproof paper"},
    Ware{"baking paper", "baking parchment"},
    Ware{"baking bean", "baking beans"},
    Ware{"paper case", "paper cases"},
    Ware{"paper liner", "paper cases"},
    Ware{"cake case", "paper cases"},
    Ware{"muffin case", "paper cases"},
    Ware{"kitchen paper", "kitchen paper"},
    Ware{"kitchen roll", "kitchen paper"},
    Ware{"paper towel", "kitchen paper"},
    Ware{"tea towel", "tea towel"},
    Ware{"damp cloth", "cloth"},
    Ware{"clean cloth", "cloth"},
    Ware{"food bag", "food bag"},
    Ware{"freezer bag", "food bag"},
    Ware{"plastic bag", "food bag"},
    Ware{"sandwich bag", "food bag"},
    Ware{"piping bag", "piping bag"},
    Ware{"in a bag", "bag"},
    Ware{"pastry brush", "pastry brush"},
    Ware{"wire rack", "wire rack"},
    Ware{"cooling rack", "wire rack"},
    Ware{"cooling tray", "wire rack"},
    Ware{"wire tray", "wire rack"},
    Ware{"on rack", "wire rack"},
    Ware{"to rack", "wire rack"},
    Ware{"jam jar", "jar", kBowl},
    Ware{"to a rack", "wire rack"},
    Ware{"on a rack", "wire rack"},
    Ware{"lemon squeezer", "lemon squeezer"},
    Ware{"fish slice", "fish slice"},
    Ware{"palette knife", "palette knife"},
    Ware{"tin opener", "tin opener"},
    Ware{"can opener", "tin opener"},
    Ware{"garlic press", "garlic press"},
    Ware{"colander", "colander"},
    Ware{"sieve", "sieve"},
    Ware{"grater", "grater"},
    Ware{"peeler", "peeler"},
    Ware{"corer", "corer"},
    Ware{"masher", "potato masher"},
    Ware{"scissor", "scissors"},
    Ware{"skewer", "skewer"},
    Ware{"ladle", "ladle"},
    Ware{"ladleful", "ladle"},
    Ware{"tong", "tongs"},
    Ware{"container", "container"},
    Ware{"lunchbox", "container"},
    Ware{"lunch box", "container"},
    Ware{"cutter", "cutter"},
    Ware{"kettle", "kettle"},
    Ware{"blender", "blender", kBowl},
    Ware{"jug", "jug", kBowl},
    Ware{"scale", "scales"},
    Ware{"bowl", "mixing bowl", kBowl},
    Ware{"basin", "mixing bowl", kBowl},
    Ware{"plate", "plate", kBowl},
    Ware{"spatula", "spatula"},
    Ware{"large pan", "large pan", kPan},
    Ware{"small pan", "small pan", kPan},
    Ware{"pan", "pan", kPan},
    Ware{"pot", "pan", kPan},
    Ware{"tray", "tray", kBaking},
    Ware{"tin", "tin", kBaking},
    Ware{"board", "board"},
    Ware{"knife", "knife"},
    Ware{"spoon", "spoon"},
    Ware{"fork", "fork"},
    Ware{"whisk", "whisk"},
    Ware{"lid", "lid"},
};

// "Whisk the eggs" and "spoon the filling" are verbs; "sieve the flour" needs the sieve all the
// same.
bool verb_as_well(std::string_view words) {
  return words == "spoon" || words == "whisk" || words == "ladle" || words == "plate" ||
         words == "fork" || words == "foil";
}

// Where the words stand between spaces; npos = nowhere.
std::size_t whole_words(std::string_view phrase, std::string_view words) {
  for (auto at = phrase.find(words); at != std::string_view::npos;
       at = phrase.find(words, at + 1)) {
    const std::size_t end = at + words.size();
    if (at > 0 && phrase[at - 1] == ' ' && end < phrase.size() && phrase[end] == ' ') return at;
  }
  return std::string_view::npos;
}

bool ends_with_any(std::string_view text, std::initializer_list<std::string_view> tails) {
  return std::any_of(tails.begin(), tails.end(),
                     [&](std::string_view t) { return text.ends_with(t); });
}

}  // namespace

std::vector<NamedWare> wares_in(std::string_view phrase) {
  std::string left(phrase);
  std::vector<NamedWare> out;
  for (const Ware& ware : kWares) {
    const std::size_t at = whole_words(left, ware.words);
    if (at == std::string::npos) continue;
    const std::string_view before = std::string_view(left).substr(0, at - 1);
    const std::string_view behind = std::string_view(left).substr(at + ware.words.size());
    // "Spoon the mixture" holds no spoon that is named; "with a spoon" does.
    if (verb_as_well(ware.words) &&
        !ends_with_any(before, {" a",       " the",   " of",     " your",   " clean",   " another",
                                " with",    " on",    " metal",  " wooden", " large",   " two",
                                " slotted", " warm",  " three",  " four",   " six",     " serving",
                                " big",     " small", " dinner", " onto",   " between", " to"}))
      continue;
    // A tin of tomatoes is no baking tin, nor is one that is opened.
    if (ware.words == "tin" && (behind.starts_with(" of ") || before.ends_with(" drain the") ||
                                before.ends_with(" open the") || behind.starts_with(" opener")))
      continue;
    if (ware.words == "pan" && before.ends_with(" muffin")) continue;
    const bool again = std::any_of(out.begin(), out.end(),
                                   [&](const NamedWare& w) { return w.name == ware.name; });
    if (!again) out.push_back({std::string(ware.name), std::string(ware.words), ware.kind});
    left.replace(at, ware.words.size(), 1, '*');
  }
  std::stable_sort(out.begin(), out.end(), [](const NamedWare& a, const NamedWare& b) {
    return (a.kind == WareKind::kTool) < (b.kind == WareKind::kTool);
  });
  return out;
}

bool only_ware(const std::vector<std::string>& words) {
  std::string phrase = " ";
  for (const std::string& word : words) phrase += word + ' ';
  bool any = false;
  for (const Ware& ware : kWares) {
    // "Base" and "case" alone are as often food.
    const std::size_t at = whole_words(phrase, ware.words);
    if (at == std::string::npos) continue;
    phrase.replace(at, ware.words.size(), 1, '*');
    any = true;
  }
  const auto left = base::words_of(phrase);
  return any && std::all_of(left.begin(), left.end(), [](const std::string& w) {
           return w == "*" || (w[0] >= '0' && w[0] <= '9') || quality_word(w) ||
                  measure_quality(w) ||
                  base::one_of(w, {"a",    "an",    "the",   "of",    "and",   "cm",   "inch",
                                   "in",   "x",     "deep",  "clean", "sharp", "non",  "stick",
                                   "two",  "three", "four",  "one",   "each",  "your", "heavy",
                                   "wide", "metal", "glass", "wooden"});
         });
}

WareKind ware_kind(std::string_view name) {
  const auto found = std::find_if(kWares.begin(), kWares.end(),
                                  [&](const Ware& w) { return w.name == name; });
  return found == kWares.end() ? WareKind::kTool : found->kind;
}

}  // namespace kitchen
