#include "kitchen/reading/step_view.h"

namespace kitchen {

StepView view_of(const StepPieces& pieces, const std::vector<Sentence>& sentences,
                 const DishDraft& draft, const IngredientWords& ingredients, const TaskTimes& times,
                 const SoFar& so_far) {
  StepView v{pieces, sentences, draft, ingredients, times, so_far, {}, {}, " ", {}};
  for (const Clause& c : pieces.clauses) {
    const auto& tokens = v.tokens(c);
    for (std::string& w : singular_words(tokens, c.begin, c.end)) v.words.push_back(std::move(w));
    for (std::size_t i = c.begin; i < c.end; ++i) v.raw.push_back(tokens[i].word);
  }
  for (const std::size_t s : pieces.sentences) {
    for (std::string& w : singular_words(sentences[s].tokens, 0, sentences[s].tokens.size()))
      v.words.push_back(std::move(w));
  }
  for (const std::string& w : v.words) v.phrase += w + ' ';
  v.wares = wares_in(v.phrase);
  v.cooked_before = std::any_of(draft.method.begin(), draft.method.end(), [](const StepDraft& s) {
    return s.heat && !s.preheat && s.heat->value.where <= Where::kMicrowave;
  });
  return v;
}

namespace {

// "over a medium heat", "on low heat", "back on the hob".
bool says_heat(const StepView& v) {
  for (std::size_t i = 1; i < v.words.size(); ++i) {
    if (v.words[i] == "hob" && i > 1 && (v.words[i - 2] == "on" || v.words[i - 2] == "onto"))
      return true;
    if (v.words[i] != "heat" ||
        !base::one_of(v.words[i - 1], {"low", "medium", "high", "gentle", "moderate", "lowest"}))
      continue;
    for (std::size_t back = 2; back <= std::min<std::size_t>(i, 4); ++back) {
      if (base::one_of(v.words[i - back], {"over", "on", "onto"})) return true;
    }
  }
  return false;
}

}  // namespace

Work work_of(const StepView& v) {
  Work work = v.pieces.main.work;
  if (work == Work::kCookOn) {
    work = v.so_far.heat;
    if (work == Work::kBringToBoil) work = Work::kSimmer;
    // What cooks in a sauce needs nobody to stand by.
    if (work == Work::kFry && v.so_far.liquid && v.so_far.on_ring && named_vessel(v).empty())
      work = Work::kSimmer;
    // "Bring to the boil and cook for 15 minutes": what was brought to the boil goes on boiling.
    for (const Clause& c : v.pieces.clauses) {
      if (c.work == Work::kBringToBoil) work = Work::kSimmer;
      if (&c == &v.pieces.clauses.back()) break;
    }
  }
  // "Cut the biggest piece in half: there must be no pink."
  const bool looks = v.says("no pink") || v.says("run clear") ||
                     (v.has({"check"}) && v.has({"cooked"}));
  if ((work == Work::kCut || work == Work::kTakeOut) && looks) return Work::kProbe;
  // A deep frying pan is a frying pan.
  const bool deep = v.has({"deep"}) && !v.says("deep frying pan");
  if (work == Work::kFry && deep && v.has({"oil"})) work = Work::kDeepFry;
  if (work == Work::kFry && v.so_far.deep_oil && v.so_far.on_ring && named_vessel(v).empty())
    work = Work::kDeepFry;
  // "Stir in the tomatoes": into the pan that stands on the ring, if nothing else is said.
  const std::string_view verb = v.pieces.main.action->verb;
  const bool into = work == Work::kAdd || verb == "stir" || verb == "toss" ||
                    (work == Work::kWhisk && !v.has({"egg", "cream", "white", "yolk"}));
  const bool elsewhere = v.has({"bowl", "basin", "jug", "dish", "tray", "tin", "plate", "meanwhile",
                                "glass", "batter", "case"}) ||
                         v.says("off the heat") || v.says("from the heat") ||
                         v.says("off the ring");
  if (into && v.so_far.on_ring && !elsewhere) work = Work::kFry;
  // "Stir over a low heat": on the ring, whatever the verb.
  const bool handles = work == Work::kMix || work == Work::kWhisk || work == Work::kAdd ||
                       work == Work::kAssemble || work == Work::kDrain;
  if (handles && says_heat(v)) work = Work::kFry;
  // "Kettle on first", "Fill the kettle and boil it".
  const bool on = v.words.size() < 5 && v.words.size() > 1 && v.words[0] == "kettle" &&
                  v.words[1] == "on";
  if (on || (work == Work::kBoil && v.has({"kettle"}) && !v.says("from the kettle")))
    work = Work::kKettle;
  return work;
}

std::string pan_meant(const StepView& v) {
  // An American's cake is cooled in the pan it was baked in.
  if (v.so_far.tin_called_pan && !v.so_far.on_ring) return v.so_far.tin;
  const bool known = v.says("the pan") || v.says("same pan") || v.says("the pot") ||
                     v.says("the hot pan") || v.says("your pan");
  if (!known) return "pan";
  const bool baked = v.so_far.heat == Work::kBake && !v.so_far.on_ring && !v.so_far.tin.empty();
  if (baked) return v.so_far.tin;
  return v.so_far.pan.empty() ? "pan" : v.so_far.pan;
}

std::string usual_pan(Work work) {
  return work == Work::kFry                              ? "frying pan"
         : work == Work::kDeepFry                        ? "deep pan"
         : work == Work::kMelt || work == Work::kThicken ? "small pan"
                                                         : "large pan";
}

std::string named_vessel(const StepView& v) {
  for (const NamedWare& ware : v.wares) {
    if (ware.kind != WareKind::kPan && ware.kind != WareKind::kBaking) continue;
    return ware.name == "pan" ? pan_meant(v) : ware.name;
  }
  return "";
}

}  // namespace kitchen
