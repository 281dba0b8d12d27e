// Which ingredients a step handles: those its words name, those a pronoun or a missing object
// takes over from the step before.
#include "kitchen/reading/step_view.h"

#include "base/text.h"
#include "kitchen/reading/made_words.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

bool until(const LineToken& t) { return t.is("until") || t.is("till"); }

// The words of a clause that speak of what is handled. "Until the apples are tender" tells how it
// looks, "so nothing sticks" why, "the egg mixture" what was made before.
Words handled_words(const std::vector<LineToken>& t, std::size_t begin, std::size_t end,
                    bool sauce_listed) {
  Words out;
  for (std::size_t i = begin; i < end; ++i) {
    if (until(t[i]) || (t[i].is("so") && i > begin) || t[i].is("without")) {
      while (i < end && !t[i].is(",") && !t[i].is(";") && !t[i].is("(")) ++i;
      continue;
    }
    // "While the potatoes are cooking, ..." tells when, "as much water as you can" how.
    const bool when = (t[i].is("while") || t[i].is("whilst")) && i + 2 < end &&
                      !t[i + 1].word.ends_with("ing");
    if (when) {
      while (i < end && !t[i].is(",") && !t[i].is(":")) ++i;
      continue;
    }
    if (t[i].is("as") && i + 1 < end && (t[i + 1].is("much") || t[i + 1].is("many"))) {
      for (++i; i < end && !t[i].is("as"); ++i) continue;
      continue;
    }
    // Vegetable oil is no vegetable.
    if ((t[i].is("vegetable") || t[i].is("veg")) && i + 1 < end &&
        base::one_of(t[i + 1].word, {"oil", "fat", "peeler", "knife", "board", "suet"}))
      continue;
    // "The juices run clear".
    if (t[i].is("juices")) continue;
    // A comma parts "tomatoes, puree" from tomato puree.
    if (t[i].is(",")) out.emplace_back(",");
    if (t[i].is("fat") && i + 1 < end && t[i + 1].kind == LineToken::Kind::kWord &&
        !base::one_of(t[i + 1].word, {"in", "and", "into", "until", "to", "is", "from", "over",
                                      "with", "for", "on", "or"}))
      continue;
    if (t[i].is("size") && i + 3 < end && t[i + 1].is("of")) {
      i += 3;
      continue;
    }
    const bool made_of = i + 1 < end &&
                         (base::one_of(t[i + 1].word, {"mixture", "mix", "batter", "filling"}) ||
                          (t[i + 1].is("sauce") && !sauce_listed));
    if (made_of) continue;
    for (std::string& w : singular_words(t, i, i + 1)) out.push_back(std::move(w));
  }
  return out;
}

bool cleans_up(const StepView& v) {
  return v.pieces.main.work == Work::kWash &&
         v.has({"hand", "board", "knife", "surface", "worktop", "equipment", "bench"});
}

class Uses {
 public:
  explicit Uses(StepView& v) : v_(v) {}

  std::vector<int> find(const StepDraft& step) {
    group_ = step.group;
    line_ = step.line_number;
    if (cleans_up(v_) || v_.work == Work::kSetOven) return {};
    std::vector<int> out = named(words());
    without_water(out);
    peppers(out);
    citrus(out);
    parted_eggs(out);
    salted_water(out);
    tins(out);
    take_over(out);
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
  }

 private:
  StepView& v_;
  std::string group_;
  int line_ = 0;

  Words words() const {
    const bool sauce = v_.ingredients.mentions("sauce");
    Words out;
    for (const Clause& c : v_.pieces.clauses) {
      for (std::string& w : handled_words(v_.tokens(c), c.begin, c.end, sauce))
        out.push_back(std::move(w));
    }
    for (const std::size_t s : v_.pieces.sentences) {
      const auto& t = v_.sentences[s].tokens;
      for (std::string& w : handled_words(t, 0, t.size(), sauce)) out.push_back(std::move(w));
    }
    // "Serve everything at once" serves what was made.
    const bool again = std::find(out.begin(), out.end(), "together") != out.end() &&
                       !v_.so_far.combined.empty();
    if (v_.work == Work::kServe || again) std::erase(out, "everything");
    without_wares(out);
    // Once burgers are shaped, "the burgers" are these and not the buns of the list.
    const Words now = things_made(v_.words);
    std::erase_if(out, [&](const std::string& w) {
      const bool made = v_.so_far.made.count(w) != 0 ||
                        std::find(now.begin(), now.end(), w) != now.end();
      return made && !v_.ingredients.is_head(w);
    });
    return out;
  }

  // A tea towel is no tea, a frying pan no frying steak, a pastry brush no pastry.
  void without_wares(Words& words) const {
    for (const NamedWare& ware : v_.wares) {
      const Words name = base::words_of(ware.from);
      if (name.size() < 2) continue;
      for (auto at = std::search(words.begin(), words.end(), name.begin(), name.end());
           at != words.end();
           at = std::search(words.begin(), words.end(), name.begin(), name.end()))
        words.erase(at, at + std::ssize(name));
    }
  }

  std::vector<int> named(const Words& words) const {
    return v_.ingredients.named_in(words, group_, v_.so_far.used, v_.so_far.combined);
  }

  const std::string& key(int i) const {
    static const std::string kNone;
    const Food* food = v_.ingredients.food(i);
    return food == nullptr ? kNone : food->key;
  }

  // Washing is done under the tap: the water of the list is another.
  void without_water(std::vector<int>& out) const {
    const bool washes = v_.work == Work::kWash || v_.says("running water") ||
                        v_.says("simmering water") || v_.says("all the water") ||
                        v_.says("the water out") || v_.says("pan of water") ||
                        v_.says("pan of boiling water") || v_.says("pan of salted water") ||
                        v_.says("pan of lightly salted water") || v_.says("bowl of water") ||
                        v_.says("bowl of cold water") || v_.says("bowl of iced water");
    if (washes) std::erase_if(out, [&](int i) { return key(i) == "water"; });
  }

  // "A pan of salted water": the salt is of the list, the water from the tap.
  void salted_water(std::vector<int>& out) const {
    if (!v_.says("salted water") && !v_.says("salted boiling water")) return;
    std::erase_if(out, [&](int i) { return key(i) == "water"; });
    for (int i = 0; i < static_cast<int>(v_.draft.ingredients.size()); ++i) {
      if (key(i) == "salt") out.push_back(i);
    }
  }

  // "Dice the pepper" is the vegetable, "salt and pepper" the spice.
  void peppers(std::vector<int>& out) const {
    const auto spice = [&](int i) { return key(i).ends_with("_pepper") && !vegetable(i); };
    const auto fresh = [&](int i) { return key(i).ends_with("_pepper") && vegetable(i); };
    const bool both = std::any_of(out.begin(), out.end(), spice) &&
                      std::any_of(out.begin(), out.end(), fresh);
    if (!both) return;
    const bool seasons = v_.has(
        {"salt", "season", "grind", "ground", "black", "grinding", "twist", "seasoning"});
    const bool cut = v_.says("the pepper") || v_.work == Work::kCut || v_.work == Work::kFry ||
                     std::find(v_.raw.begin(), v_.raw.end(), "peppers") != v_.raw.end();
    if (v_.has({"red", "green", "yellow"}) && seasons) return;
    if (seasons || !cut)
      std::erase_if(out, fresh);
    else
      std::erase_if(out, spice);
  }
  bool vegetable(int i) const {
    const Food* food = v_.ingredients.food(i);
    return food != nullptr && food->category == "veg";
  }

  // "Whisk the whites": of the eggs, when the list does not part them.
  void parted_eggs(std::vector<int>& out) const {
    const bool whites = std::find(v_.raw.begin(), v_.raw.end(), "whites") != v_.raw.end();
    const bool yolks = std::find(v_.raw.begin(), v_.raw.end(), "yolks") != v_.raw.end();
    if (!whites && !yolks) return;
    for (int i = 0; i < static_cast<int>(v_.draft.ingredients.size()); ++i) {
      if (key(i) == "egg_whole") out.push_back(i);
    }
  }

  // "Add the zest and juice": of the one lemon, lime or orange there is.
  void citrus(std::vector<int>& out) const {
    if (!v_.has({"zest", "juice"}) || v_.says("juice run") || v_.says("the juice so") ||
        v_.says("out the juice") || v_.says("the juice bubble"))
      return;
    const auto is = [&](int i) {
      const std::string& k = key(i);
      return k.starts_with("lemon") || k.starts_with("lime") || k.starts_with("orange");
    };
    if (std::any_of(out.begin(), out.end(), is)) return;
    std::vector<int> all;
    for (int i = 0; i < static_cast<int>(v_.draft.ingredients.size()); ++i) {
      if (is(i)) all.push_back(i);
    }
    if (all.size() == 1) out.push_back(all.front());
  }

  // "Open and drain the tins": all that comes in tins.
  void tins(std::vector<int>& out) const {
    const bool opens = v_.work == Work::kOpen || v_.work == Work::kDrain;
    if (!out.empty() || !opens || !v_.has({"tin", "can"})) return;
    for (int i = 0; i < static_cast<int>(v_.draft.ingredients.size()); ++i) {
      const std::string& piece = v_.draft.ingredients[static_cast<std::size_t>(i)]
                                     .quantity.value.piece;
      if (piece == "tin" || piece == "can" || key(i).find("_tinned") != std::string::npos)
        out.push_back(i);
    }
  }

  // "Drain well", "boil it", "put them in a bowl with the oil": what the step before was about, if
  // that was little enough to tell.
  void take_over(std::vector<int>& out) {
    if (v_.draft.method.empty()) return;
    constexpr std::size_t kFew = 4, kVeryFew = 2;
    const StepDraft& before = v_.draft.method.back();
    if (before.uses.empty() || before.uses.size() > kFew || before.group != group_ ||
        before.preheat)
      return;
    const bool only_water = out.size() == 1 && key(out[0]) == "water";
    const bool nothing = out.empty() || only_water;
    const Work w = v_.work;
    const bool cooks = w == Work::kBoil || w == Work::kSimmer || w == Work::kBringToBoil;
    const bool goes_on = w == Work::kDrain || w == Work::kMash ||
                         (cooks && before.uses.size() <= kVeryFew) ||
                         (w == Work::kStand && before.line_number == line_) ||
                         v_.pieces.main.action->verb == "fluff";
    const bool a_mixture = before.uses.size() > 1 &&
                           std::all_of(before.uses.begin(), before.uses.end(),
                                       [&](int u) { return v_.so_far.combined.count(u) != 0; });
    if ((nothing && goes_on && !names_another()) || (!a_mixture && pronoun_before_food(nothing))) {
      out.insert(out.end(), before.uses.begin(), before.uses.end());
      if (only_water || nothing) v_.inherited = true;
    }
  }

  // "It" or "them" that stands before any food of the step itself speaks of the step before.
  bool pronoun_before_food(bool nothing) const {
    Words ahead;
    for (const Clause& c : v_.pieces.clauses) {
      const auto& t = v_.tokens(c);
      for (std::size_t i = c.begin; i < c.end; ++i) {
        if (until(t[i]) || t[i].is("so") || t[i].is("while") || t[i].is("when")) return false;
        // "Roll the dough out and lift it": it is the dough.
        const bool known = i + 1 < c.end && v_.ingredients.mentions(singular(t[i + 1].word));
        if (t[i].is("the") && !known) return false;
        if (!base::one_of(t[i].word, {"it", "them", "these", "both"})) {
          for (std::string& w : singular_words(t, i, i + 1)) ahead.push_back(std::move(w));
          continue;
        }
        return nothing || named(ahead).empty();
      }
    }
    return false;
  }

  // "Bring a pan of water to the boil", "drain the tins": something else than what went before.
  bool names_another() const { return v_.says("pan of water") || v_.has({"kettle", "tin", "can"}); }
};

}  // namespace

void find_uses(StepView& v, StepDraft& step) { step.uses = Uses(v).find(step); }

}  // namespace kitchen
