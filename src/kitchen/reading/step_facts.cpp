#include "kitchen/reading/step_facts.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/folding.h"
#include "base/text.h"

namespace kitchen {
namespace {

using Words = std::vector<std::string>;

struct Ware {
  std::string_view words;  // folded, singular, between spaces
  std::string_view name;   // the room's word
};

// Longer names first: a frying pan is no pan.
constexpr std::array kWares = {
    Ware{"deep fat fryer", "deep fryer"},
    Ware{"deep frying pan", "deep pan"},
    Ware{"food processor", "food processor"},
    Ware{"hand blender", "hand blender"},
    Ware{"stick blender", "hand blender"},
    Ware{"immersion blender", "hand blender"},
    Ware{"electric whisk", "electric whisk"},
    Ware{"hand mixer", "electric whisk"},
    Ware{"electric mixer", "electric whisk"},
    Ware{"stand mixer", "food mixer"},
    Ware{"balloon whisk", "whisk"},
    Ware{"mixing bowl", "bowl"},
    Ware{"measuring jug", "jug"},
    Ware{"measuring spoon", "measuring spoons"},
    Ware{"wooden spoon", "wooden spoon"},
    Ware{"metal spoon", "spoon"},
    Ware{"slotted spoon", "slotted spoon"},
    Ware{"rolling pin", "rolling pin"},
    Ware{"frying pan", "frying pan"},
    Ware{"skillet", "frying pan"},
    Ware{"wok", "wok"},
    Ware{"griddle pan", "griddle pan"},
    Ware{"saucepan", "saucepan"},
    Ware{"sauce pan", "saucepan"},
    Ware{"stockpot", "large pan"},
    Ware{"casserole", "casserole"},
    Ware{"roasting tin", "roasting tin"},
    Ware{"roasting tray", "roasting tin"},
    Ware{"baking tray", "baking tray"},
    Ware{"baking sheet", "baking tray"},
    Ware{"cookie sheet", "baking tray"},
    Ware{"sheet pan", "baking tray"},
    Ware{"baking pan", "tin"},
    Ware{"muffin tin", "muffin tin"},
    Ware{"bun tin", "muffin tin"},
    Ware{"muffin tray", "muffin tin"},
    Ware{"cake tin", "tin"},
    Ware{"loaf tin", "loaf tin"},
    Ware{"flan tin", "flan tin"},
    Ware{"flan dish", "flan dish"},
    Ware{"tart tin", "flan tin"},
    Ware{"ovenproof dish", "ovenproof dish"},
    Ware{"baking dish", "ovenproof dish"},
    Ware{"pie dish", "pie dish"},
    Ware{"ramekin", "ramekins"},
    Ware{"colander", "colander"},
    Ware{"sieve", "sieve"},
    Ware{"grater", "grater"},
    Ware{"peeler", "peeler"},
    Ware{"masher", "masher"},
    Ware{"garlic press", "garlic press"},
    Ware{"piping bag", "piping bag"},
    Ware{"pastry brush", "pastry brush"},
    Ware{"wire rack", "wire rack"},
    Ware{"cooling rack", "wire rack"},
    Ware{"cutter", "cutter"},
    Ware{"kettle", "kettle"},
    Ware{"blender", "blender"},
    Ware{"jug", "jug"},
    Ware{"scale", "scales"},
    Ware{"bowl", "bowl"},
    Ware{"spatula", "spatula"},
};
constexpr std::array kPlainWares = {
    Ware{"large pan", "large pan"},
    Ware{"small pan", "small pan"},
    Ware{"pan", "pan"},
    Ware{"pot", "pan"},
    Ware{"tray", "tray"},
    Ware{"tin", "tin"},
    Ware{"board", "board"},
    Ware{"knife", "knife"},
    Ware{"spoon", "spoon"},
    Ware{"whisk", "whisk"},
};

class Facts {
 public:
  Facts(const StepPieces& pieces, const std::vector<Sentence>& sentences, const DishDraft& draft,
        const IngredientWords& words, const TaskTimes& times, SoFar& so_far)
      : pieces_(pieces),
        sentences_(sentences),
        draft_(draft),
        ingredients_(words),
        times_(times),
        so_far_(so_far) {
    for (const Clause& c : pieces.clauses) {
      const auto& tokens = sentences[c.sentence].tokens;
      for (std::string& w : singular_words(tokens, c.begin, c.end)) words_.push_back(std::move(w));
      for (std::size_t i = c.begin; i < c.end; ++i) raw_.push_back(tokens[i].word);
    }
    for (const std::size_t s : pieces.sentences) {
      for (std::string& w : singular_words(sentences[s].tokens, 0, sentences[s].tokens.size()))
        words_.push_back(std::move(w));
    }
    phrase_ = " ";
    for (const std::string& w : words_) phrase_ += w + ' ';
  }

  StepDraft read() {
    says();
    resolve_work();
    uses();
    heat();
    minutes();
    attention();
    equipment();
    hazards();
    hygiene();
    skills();
    check();
    brief();
    step_.preheat = work_ == Work::kSetOven;
    move_on();
    return std::move(step_);
  }

 private:
  const StepPieces& pieces_;
  const std::vector<Sentence>& sentences_;
  const DishDraft& draft_;
  const IngredientWords& ingredients_;
  const TaskTimes& times_;
  SoFar& so_far_;
  Words words_, raw_;   // singular words of the step; words as they stand
  std::string phrase_;  // the singular words between spaces
  Work work_ = Work::kAdd;
  StepDraft step_;

  bool has(std::initializer_list<std::string_view> any) const {
    return std::any_of(words_.begin(), words_.end(), [&](const std::string& w) {
      return std::find(any.begin(), any.end(), w) != any.end();
    });
  }
  bool phrase(std::string_view words) const {
    return phrase_.find(" " + std::string(words) + " ") != std::string::npos;
  }

  void says() {
    std::size_t sentence = sentences_.size();
    const auto add = [&](const std::string& part) {
      if (part.empty()) return;
      step_.says += (step_.says.empty() ? "" : " ") + part;
    };
    for (const Clause& c : pieces_.clauses) {
      const Sentence& s = sentences_[c.sentence];
      if (sentence == sentences_.size()) {
        step_.line_number = s.line_number;
        step_.group = s.group;
      }
      sentence = c.sentence;
      const std::size_t from = s.tokens[c.begin].begin, to = s.tokens[c.end - 1].end;
      add(base::trimmed(s.text.substr(from, to - from)));
    }
    for (const std::size_t s : pieces_.sentences) add(sentences_[s].text);
    // A joint at the end belongs to what comes next.
    for (bool more = true; more;) {
      more = false;
      for (const std::string_view joint : {" and", " then", " &", ",", ";", ":", " -"}) {
        if (!step_.says.ends_with(joint)) continue;
        step_.says.resize(step_.says.size() - joint.size());
        more = true;
      }
    }
  }

  void resolve_work() {
    work_ = pieces_.main.work;
    if (work_ == Work::kCookOn) {
      work_ = so_far_.heat;
      if (work_ == Work::kBringToBoil) work_ = Work::kSimmer;
    }
    if (work_ == Work::kFry && has({"deep"}) && has({"oil"})) work_ = Work::kDeepFry;
    // "Stir in the tomatoes": into the pan that stands on the ring, if nothing else is said.
    const bool into = work_ == Work::kAdd || pieces_.main.action->verb == "stir" ||
                      (work_ == Work::kWhisk && !has({"egg", "cream"}));
    const bool elsewhere = has({"bowl", "jug", "dish", "tray", "tin", "plate", "meanwhile",
                                "glass"}) ||
                           phrase("off the heat") || phrase("from the heat") ||
                           phrase("off the ring");
    if (into && so_far_.on_ring && !elsewhere) work_ = Work::kFry;
  }

  void uses() {
    const auto named = ingredients_.named_in(words_, step_.group, so_far_.used);
    step_.uses = named.ingredients;
  }

  std::string vessel() const {
    for (const Ware& ware : kWares) {
      if (!phrase(ware.words)) continue;
      const std::string name(ware.name);
      const bool holds_food = name.find("pan") != std::string::npos || name == "wok" ||
                              name.find("tin") != std::string::npos ||
                              name.find("tray") != std::string::npos ||
                              name.find("dish") != std::string::npos || name == "casserole" ||
                              name == "ramekins" || name == "deep fryer";
      if (holds_food) return name;
    }
    for (const Ware& ware : kPlainWares) {
      const bool holds_food = ware.name == "tray" || ware.name == "tin" ||
                              ware.name.find("pan") != std::string_view::npos;
      if (holds_food && phrase(ware.words)) return std::string(ware.name);
    }
    return "";
  }

  std::string level() const {
    for (const char* word : {"medium", "low", "high", "gentle"}) {
      if (phrase(std::string(word) + " heat") || phrase(std::string(word) + " ring")) return word;
    }
    if (work_ == Work::kSimmer) return "simmer";
    if (work_ == Work::kBoil || work_ == Work::kBringToBoil) return "boil";
    if (has({"gently"})) return "low";
    return "";
  }

  void heat() {
    if (work_ == Work::kChill || work_ == Work::kFreeze) {
      step_.heat = Guess<HeatDraft>{
          {place_of(work_), "", {}, OvenKind::kConventional, ""}, 0.9, words_text(pieces_.main)};
      return;
    }
    if (!on_heat(work_) && work_ != Work::kSetOven && work_ != Work::kKettle) return;
    Guess<HeatDraft> heat;
    heat.value.where = place_of(work_);
    heat.confidence = 0.9;
    heat.from = words_text(pieces_.main);
    if (work_ == Work::kSetOven && has({"grill", "broiler"}) && !has({"oven"}))
      heat.value.where = Where::kGrill;
    for (const Clause& c : pieces_.clauses) {
      if (!c.oven || heat.value.where != Where::kOven) continue;
      heat.value.celsius = c.oven->celsius;
      heat.value.oven = c.oven->kind;
      heat.confidence = c.oven->confidence;
    }
    const Where where = heat.value.where;
    if (where == Where::kOven && !heat.value.celsius && so_far_.oven) {
      heat.value.celsius = so_far_.oven->value.celsius;
      heat.value.oven = so_far_.oven->value.oven;
      heat.confidence = std::min(heat.confidence, so_far_.oven->confidence);
    }
    heat.value.vessel = vessel();
    if (heat.value.vessel.empty() && where == Where::kRing) {
      heat.value.vessel = so_far_.ring              ? so_far_.ring->vessel
                          : work_ == Work::kFry     ? "frying pan"
                          : work_ == Work::kDeepFry ? "deep pan"
                                                    : "saucepan";
      heat.confidence = std::min(heat.confidence, 0.6);
    }
    if (heat.value.vessel.empty() && where == Where::kOven) heat.value.vessel = "tray";
    if (heat.value.vessel.empty() && where == Where::kGrill) heat.value.vessel = "grill pan";
    if (where == Where::kRing) heat.value.level = level();
    step_.heat = heat;
  }

  void minutes() {
    std::optional<StatedTime> sum;
    std::string from;
    for (const Clause& c : pieces_.clauses) {
      if (!c.time) continue;
      if (!sum) {
        sum = c.time;
      } else {
        sum->least += c.time->least;
        sum->most += c.time->most;
      }
      from += (from.empty() ? "" : "; ") + time_text(c);
    }
    // A sentence without a verb may still say how long: "About 20 minutes should do."
    for (const std::size_t s : pieces_.sentences) {
      if (sum) break;
      sum = stated_time(sentences_[s].tokens);
      if (sum) from = sentences_[s].text;
    }
    if (sum && work_ != Work::kSetOven) {
      step_.least = {sum->least, 1, from};
      step_.most = {sum->most, 1, from};
      return;
    }
    // Putting in and seasoning go along with the rest; what cooks, cooks at the same time.
    double estimate = 0, longest = 0;
    for (const Clause& c : pieces_.clauses) {
      const double minutes = clause_minutes(c);
      const bool along = c.work == Work::kAdd || c.work == Work::kSeason ||
                         c.work == Work::kTakeOut;
      if (on_heat(work_) || waits(work_) || along)
        longest = std::max(longest, along && pieces_.clauses.size() > 1 ? 0.5 : minutes);
      else
        estimate += minutes;
    }
    estimate += longest;
    if (work_ == Work::kSetOven) estimate = 1;
    const double rounded = std::max(0.5, std::round(estimate * 2) / 2);
    const Seconds length(static_cast<std::int64_t>(rounded * 60));
    step_.least = step_.most = {length, 0.4, ""};
  }

  double clause_minutes(const Clause& c) const {
    const auto& tokens = sentences_[c.sentence].tokens;
    const Words words = singular_words(tokens, c.begin, c.end);
    std::string verb(c.action->verb);
    if (c.work == Work::kRollOut) verb = "rollout";
    if (c.work == Work::kSetOven) verb = "preheat";
    if (c.work != c.action->work) {
      verb = c.work == Work::kBake        ? "bake"
             : c.work == Work::kChill     ? "chill"
             : c.work == Work::kFreeze    ? "freeze"
             : c.work == Work::kGrill     ? "grill"
             : c.work == Work::kSimmer    ? "simmer"
             : c.work == Work::kBoil      ? "boil"
             : c.work == Work::kMicrowave ? "microwave"
                                          : verb;
    }
    const TaskTime* row = times_.find(verb, words);
    if (row == nullptr) row = times_.find(verb, words_);
    if (row == nullptr) {
      // Leaving and waiting without a time: nobody knows; ten minutes are asked about.
      return waits(c.work) ? 10 : 2;
    }
    double count = 1;
    if (row->each) {
      const auto named = ingredients_.named_in(words, step_.group, {}).ingredients;
      if (c.work == Work::kWeigh) count = std::max<double>(1, static_cast<double>(named.size()));
      for (const int i : named) {
        const Quantity& q = draft_.ingredients[static_cast<std::size_t>(i)].quantity.value;
        if (q.unit == Unit::kPiece) count = std::max(count, q.middle().value());
      }
      count = std::min(count, 12.0);
    }
    return row->novice_minutes * count;
  }

  void attention() {
    Attention a = usual_attention(work_);
    double confidence = 0.8;
    const bool wait = a == Attention::kGlance || a == Attention::kWatch || a == Attention::kStandBy;
    if (wait && (has({"constantly", "continuously", "continually"}) || phrase("all the time"))) {
      a = Attention::kStandBy;
      confidence = 0.95;
    } else if (wait && a != Attention::kStandBy && has({"frequently", "often", "regularly"})) {
      a = Attention::kWatch;
      confidence = 0.95;
    }
    if (work_ == Work::kChill || work_ == Work::kStand) {
      // "Leave to cool" takes no hands; "Cool" a pan under the tap would, but is rare.
      a = Attention::kLeave;
    }
    if (work_ == Work::kMelt && has({"microwave"})) a = Attention::kLeave;
    if (has({"caramel"}) && on_heat(work_)) a = Attention::kNothingElse;
    step_.attention = {a, confidence, words_text(pieces_.main)};
  }

  void add_ware(std::string name, double confidence, std::string from) {
    for (const auto& each : step_.equipment) {
      if (each.value == name) return;
    }
    step_.equipment.push_back({std::move(name), confidence, std::move(from)});
  }

  void equipment() {
    std::string left = phrase_;
    for (const Ware& ware : kWares) {
      const std::string wanted = " " + std::string(ware.words) + " ";
      const auto at = left.find(wanted);
      if (at == std::string::npos) continue;
      add_ware(std::string(ware.name), 1, std::string(ware.words));
      left.replace(at + 1, wanted.size() - 2, "*");
    }
    for (const Ware& ware : kPlainWares) {
      const std::string wanted = " " + std::string(ware.words) + " ";
      const auto at = left.find(wanted);
      if (at == std::string::npos) continue;
      // A tin of tomatoes is no baking tin.
      if (ware.name == "tin" && phrase("tin of")) continue;
      add_ware(std::string(ware.name), 1, std::string(ware.words));
      left.replace(at + 1, wanted.size() - 2, "*");
    }
    for (const Clause& c : pieces_.clauses) {
      const Work w = c.work == Work::kCookOn ? work_ : c.work;
      if (step_.heat && on_heat(w) && w != Work::kBake && w != Work::kGrill) continue;
      if (w == Work::kWash && has({"hand", "board", "knife", "surface", "worktop"})) continue;
      for (std::string& name : usual_equipment(w)) {
        const bool bowl_already = (name == "bowl" || name == "blender" || name == "whisk" ||
                                   name == "tin") &&
                                  like_ware(name);
        if (!bowl_already) add_ware(std::move(name), 0.7, "");
      }
      if (c.action->verb == "peel") add_ware("peeler", 0.6, "");
      if (c.action->verb == "brush" || c.action->verb == "glaze") add_ware("pastry brush", 0.7, "");
      if (c.action->verb == "sift" || c.action->verb == "sieve") add_ware("sieve", 0.8, "");
      if (c.action->verb == "ladle") add_ware("ladle", 0.9, "");
      if (c.action->verb == "measure" && has({"ml", "milk", "water", "stock"}))
        add_ware("jug", 0.7, "");
    }
    // What is stirred, mashed or blended after cooking stands in its pan still.
    const bool in_its_pan = work_ == Work::kMix || work_ == Work::kBlend || work_ == Work::kMash ||
                            work_ == Work::kDrain || work_ == Work::kTakeOut ||
                            work_ == Work::kSeason;
    if (in_its_pan && so_far_.on_ring && so_far_.ring && vessel().empty() && !has({"bowl", "jug"}))
      add_ware(so_far_.ring->vessel, 0.5, "");
    if (step_.heat && !step_.heat->value.vessel.empty() && work_ != Work::kSetOven)
      add_ware(step_.heat->value.vessel, step_.heat->confidence, step_.heat->value.vessel);
  }

  // A vessel of that kind is named already: no second bowl, whisk, blender or tin is guessed.
  bool like_ware(std::string_view kind) const {
    return std::any_of(step_.equipment.begin(), step_.equipment.end(), [&](const auto& e) {
      const std::string& v = e.value;
      const bool vessel = v.find("pan") != std::string::npos || v == "jug" || v == "wok" ||
                          v.find("dish") != std::string::npos ||
                          v.find("tray") != std::string::npos;
      return v.find(kind) != std::string::npos || (kind == "bowl" && vessel) ||
             (kind == "blender" && v == "food processor") || (kind == "tin" && vessel);
    });
  }

  void add_hazard(Hazard hazard, double confidence, std::string from) {
    for (const auto& each : step_.hazards) {
      if (each.value == hazard) return;
    }
    step_.hazards.push_back({hazard, confidence, std::move(from)});
  }

  void hazards() {
    const std::string from = words_text(pieces_.main);
    if (work_ == Work::kDeepFry) add_hazard(Hazard::kHotOil, 1, from);
    for (const Clause& c : pieces_.clauses) {
      if (c.work == Work::kBlend) add_hazard(Hazard::kBlender, 0.9, from);
      if (c.work == Work::kProbe) add_hazard(Hazard::kProbing, 0.9, from);
      const bool after_boiling = so_far_.heat == Work::kBoil || so_far_.heat == Work::kSimmer ||
                                 so_far_.heat == Work::kBringToBoil;
      // "then drain": whatever was boiling, a full pan is carried.
      const bool from_the_pan = step_.uses.empty() ||
                                has({"pasta", "spaghetti", "potato", "rice", "noodle", "vegetable",
                                     "macaroni", "penne", "carrot", "pan"});
      if (c.work == Work::kDrain && after_boiling && from_the_pan)
        add_hazard(Hazard::kLargePan, 0.7, from);
    }
    if (has({"blender", "processor"}) && work_ != Work::kWash)
      add_hazard(Hazard::kBlender, 0.8, from);
    if (phrase("core temperature") || has({"probe", "thermometer"}) || phrase("75 c"))
      add_hazard(Hazard::kProbing, 0.8, from);
  }

  void hygiene() {
    if (on_heat(work_) || waits(work_) || work_ == Work::kSetOven || work_ == Work::kDrain) {
      const bool board = std::any_of(
          pieces_.clauses.begin(), pieces_.clauses.end(),
          [](const Clause& c) { return c.work == Work::kCut || c.work == Work::kShape; });
      if (!board) return;
    }
    const std::string from = words_text(pieces_.main);
    const auto any = [&](auto&& is) {
      return std::any_of(step_.uses.begin(), step_.uses.end(), is);
    };
    if (any([&](int i) { return ingredients_.raw_meat(i) && so_far_.used.count(i) == 0; }) ||
        (any([&](int i) { return ingredients_.raw_meat(i); }) && !cooked_before())) {
      step_.hygiene = Guess<Hygiene>{Hygiene::kRaw, 0.9, from};
    } else if (any([&](int i) { return ingredients_.egg(i); })) {
      step_.hygiene = Guess<Hygiene>{Hygiene::kRaw, 0.8, from};
    } else if (work_ == Work::kServe ||
               (work_ == Work::kAssemble && cooked_before() && !step_.uses.empty() &&
                any([&](int i) { return ingredients_.salad(i); }))) {
      step_.hygiene = Guess<Hygiene>{Hygiene::kReadyToEat, 0.7, from};
    } else if (work_ == Work::kCut || work_ == Work::kGrate) {
      const bool leaf = any([&](int i) { return ingredients_.salad(i); }) && !any([&](int i) {
                          return ingredients_.vegetable(i) && !ingredients_.salad(i);
                        });
      if (any([&](int i) { return ingredients_.vegetable(i); }) && !leaf)
        step_.hygiene = Guess<Hygiene>{Hygiene::kUnwashed, 0.8, from};
      else if (leaf || !step_.uses.empty() || cooked_before())
        step_.hygiene = Guess<Hygiene>{Hygiene::kReadyToEat, 0.6, from};
    } else if (work_ == Work::kWash && any([&](int i) { return ingredients_.vegetable(i); })) {
      step_.hygiene = Guess<Hygiene>{Hygiene::kUnwashed, 0.7, from};
    }
  }

  bool cooked_before() const { return cooked_; }

 public:
  bool cooked_ = false;  ///< some step before this one was on heat

 private:
  void skills() {
    for (const Clause& c : pieces_.clauses) {
      if (c.action->skill.empty()) continue;
      const std::string skill(c.action->skill);
      const bool again = std::any_of(step_.skills.begin(), step_.skills.end(),
                                     [&](const auto& s) { return s.value == skill; });
      if (!again) step_.skills.push_back({skill, 0.8, std::string(c.action->verb)});
    }
  }

  void check() {
    for (const Clause& c : pieces_.clauses) {
      const auto& t = sentences_[c.sentence].tokens;
      for (std::size_t i = c.begin; i < c.end; ++i) {
        if (!t[i].is("until") && !t[i].is("till")) continue;
        step_.check = base::trimmed(words_between(sentences_[c.sentence].text, t, i, c.end));
        return;
      }
    }
  }

  // At most twelve letters: the verb and, if there is room, what it is done to.
  void brief() {
    constexpr std::size_t kMost = 12;
    std::string name(pieces_.main.action->brief);
    if (name.empty()) {
      for (const std::string& w : base::words_of(base::folded(step_.says))) {
        if (base::letters(name) + 1 + base::letters(w) > kMost) break;
        name += (name.empty() ? "" : " ") + w;
      }
      if (!name.empty() && name[0] >= 'a' && name[0] <= 'z')
        name[0] = static_cast<char>(name[0] - 'a' + 'A');
      step_.brief = name.empty() ? "Step" : name;
      return;
    }
    if (work_ == Work::kRollOut) name = "Roll out";
    if (work_ == Work::kBake && pieces_.main.action->work != Work::kBake) name = "Bake";
    if (work_ == Work::kChill) name = "Chill";
    const bool by_itself = work_ == Work::kBake || work_ == Work::kGrill || waits(work_) ||
                           pieces_.main.work == Work::kLine || step_.uses.size() > 3;
    if (work_ == Work::kGrill && pieces_.main.action->work != Work::kGrill) name = "Grill";
    for (const int i : step_.uses) {
      if (by_itself && work_ != Work::kBoil) break;
      const auto words = base::words_of(
          base::folded(draft_.ingredients[static_cast<std::size_t>(i)].name));
      if (words.empty()) continue;
      const std::string thing = singular(words.back());
      if (base::letters(name) + 1 + base::letters(thing) <= kMost) {
        name += " " + thing;
        break;
      }
    }
    step_.brief = base::first_letters(name, kMost);
  }

  std::string words_text(const Clause& c) const { return std::string(c.action->verb); }

  std::string time_text(const Clause& c) const {
    const Sentence& s = sentences_[c.sentence];
    return words_between(s.text, s.tokens, c.begin + c.time->begin, c.begin + c.time->end);
  }

  void move_on() {
    for (const int i : step_.uses) so_far_.used.insert(i);
    if (work_ == Work::kSetOven && step_.heat) so_far_.oven = step_.heat;
    if (work_ == Work::kDrain || phrase("off the heat") || phrase("from the heat") ||
        phrase("off the ring") || phrase("ring off"))
      so_far_.on_ring = false;
    if (!step_.heat) return;
    if (step_.heat->value.where == Where::kRing) {
      so_far_.ring = step_.heat->value;
      so_far_.on_ring = true;
    } else if (!step_.preheat && work_ != Work::kKettle) {
      so_far_.on_ring = false;
    }
    if (on_heat(work_)) so_far_.heat = work_;
  }
};

}  // namespace

StepDraft step_of(const StepPieces& pieces, const std::vector<Sentence>& sentences,
                  const DishDraft& draft, const IngredientWords& words, const TaskTimes& times,
                  SoFar& so_far) {
  Facts facts(pieces, sentences, draft, words, times, so_far);
  facts.cooked_ = std::any_of(draft.method.begin(), draft.method.end(), [](const StepDraft& s) {
    return s.heat && !s.preheat && s.heat->value.where <= Where::kMicrowave;
  });
  return facts.read();
}

}  // namespace kitchen
