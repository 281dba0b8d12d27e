#include <algorithm>
#include <cmath>

#include "kitchen/document.h"
#include "kitchen/field_lists.h"
#include "kitchen/method.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

constexpr std::size_t kBriefLetters = 12;  // what a bar and the wall can hold
constexpr double kHandsSpread = 0.3;
constexpr double kPassiveSpread = 0.1;

/// How soon after another step: what the words of a file mean.
struct When {
  std::optional<Seconds> most;
  bool can_wait_said = false;
};

std::optional<When> when_of(std::string_view text) {
  if (text == "at once") return When{Seconds{0}, false};
  if (text == "straight away") return When{base::minutes(1), false};
  if (text == "can wait") return When{std::nullopt, true};
  constexpr std::string_view kBefore = "within ";
  constexpr std::string_view kAfter = " min";
  if (!text.starts_with(kBefore) || !text.ends_with(kAfter) ||
      text.size() <= kBefore.size() + kAfter.size())
    return std::nullopt;
  const auto minutes = base::number_in(
      text.substr(kBefore.size(), text.size() - kBefore.size() - kAfter.size()));
  if (!minutes || !(*minutes >= 0 && *minutes <= 1440)) return std::nullopt;
  return When{Seconds{static_cast<Seconds::rep>(std::round(*minutes * 60.0))}, false};
}

/// Reads one step of the list; knows the names it may refer to.
class StepReader {
 public:
  StepReader(const Fields& fields, int index, const std::vector<std::string>& ids,
             const std::vector<Ingredient>& ingredients)
      : f_(fields), index_(index), ids_(ids), ingredients_(ingredients) {}

  Step read() {
    step_.id = ids_[static_cast<std::size_t>(index_)];
    step_.says = f_.text("do", 240);
    step_.brief = f_.text_or("short", brief_of(step_.id), kBriefLetters);
    step_.attention = attention();
    minutes();
    step_.spread = f_.number("spread", 0, 1.5,
                             tenths(step_.attention) <= 2 ? kPassiveSpread : kHandsSpread);
    step_.elastic_loss = f_.whole("elastic_loss", 0, 1000, 0);
    step_.people = f_.whole("people", 1, 2, 1);
    if (f_.find("hygiene") != nullptr)
      step_.hygiene = f_.word("hygiene", kHygieneWords, std::optional{Hygiene::kUnwashed});
    step_.heat = heat_of(f_, step_.least);
    if (f_.find("closes") != nullptr)
      step_.closes = reference("closes", f_.where("closes"), f_.text("closes"));
    follows();
    closing();
    kit();
    uses();
    for (const Spot spot : f_.words("at", kSpotWords))
      (spot == Spot::kSink ? at_sink_ : step_.at_table) = true;
    step_.sink = at_sink_ ? 1 : 0;
    step_.fridge_tenths = f_.whole("fridge_tenths", 0, 1000, 0);
    step_.freezer_tenths = f_.whole("freezer_tenths", 0, 1000, 0);
    if (f_.find("hazard") != nullptr)
      step_.hazard = f_.word("hazard", kHazardWords, std::optional{Hazard::kAdultOnly});
    step_.can_put_down = f_.flag("can_put_down", false);
    gate();
    step_.skills = f_.texts("skills");
    step_.added = f_.flag("added", false);
    return step_;
  }

 private:
  const Fields& f_;
  int index_;
  const std::vector<std::string>& ids_;
  const std::vector<Ingredient>& ingredients_;
  Step step_;
  bool at_sink_ = false;
  std::vector<bool> can_wait_said_;  // beside step_.follows

  void refuse(const char* code, const std::string& where, std::string message,
              std::string remedy) const {
    f_.reader().add(code, where, std::move(message), std::move(remedy));
  }

  /// Index of a step named in this one, or nothing after a Problem.
  std::optional<int> reference(std::string_view key, const std::string& where,
                               const std::string& id) const {
    if (id.empty()) return std::nullopt;  // refused already
    const auto at = std::find(ids_.begin(), ids_.end(), id);
    if (at == ids_.end()) {
      refuse("dish.step.unknown_step", where,
             say(f_.what(), key == "closes" ? " closes " : " follows ", in_quotes(id),
                 ", and the method has no step of that name",
                 did_you_mean(id, ids_).empty() ? "." : did_you_mean(id, ids_)),
             "Write the id of a step of this dish.");
      return std::nullopt;
    }
    const int found = static_cast<int>(at - ids_.begin());
    if (found != index_) return found;
    refuse("dish.step.refers_to_itself", where,
           say(f_.what(), key == "closes" ? " closes itself." : " follows itself."),
           "Name another step, or leave the entry out.");
    return std::nullopt;
  }

  Attention attention() const {
    const Node* node = f_.find("attention");
    if (node == nullptr || node->kind != Node::Kind::kNumber)
      return f_.word("attention", kAttentionWords, std::optional{Attention::kHands});
    const Word<Attention>* best = &kAttentionWords[0];
    for (const Word<Attention>& each : kAttentionWords) {
      if (std::abs(tenths(each.value) - node->number) <
          std::abs(tenths(best->value) - node->number))
        best = &each;
    }
    if (tenths(best->value) == node->number) return best->value;
    refuse("dish.step.attention_between", f_.where("attention"),
           say(f_.what(), " takes attention ", base::number_text(node->number),
               "; the nearest that exists is ", tenths(best->value), " (", best->word, ")."),
           "Write leave (0), glance (1), watch (2), stand by (5), hands (8) or nothing else (10).");
    return best->value;
  }

  void minutes() {
    const Node* node = f_.find("minutes");
    if (node == nullptr || node->kind != Node::Kind::kObject) {
      step_.least = step_.most = f_.minutes("minutes", Seconds{1}, std::nullopt);
      return;
    }
    const Fields range(f_.reader(), *node, f_.where("minutes"), f_.what(), kElasticFields);
    step_.least = range.minutes("least", Seconds{1}, std::nullopt);
    step_.most = range.minutes("most", Seconds{1}, step_.least);
    if (step_.most < step_.least) {
      refuse("dish.step.least_over_most", range.where(),
             say(f_.what(), " takes at least ", base::minutes_text(step_.least), " and at most ",
                 base::minutes_text(step_.most), "."),
             "Write the smaller number as least.");
      step_.most = step_.least;
    } else if (step_.most > step_.least && tenths(step_.attention) > 2) {
      refuse("dish.step.elastic_hands", range.where(),
             say(f_.what(), " keeps someone busy, so its minutes cannot stretch from ",
                 base::minutes_text(step_.least), " to ", base::minutes_text(step_.most), "."),
             "Give one number, or set attention to leave, glance or watch if it runs by itself.");
      step_.most = step_.least;
    }
  }

  void add_follows(Follows wait, const When& when) {
    step_.follows.push_back(wait);
    can_wait_said_.push_back(when.can_wait_said);
  }

  std::optional<When> when_field(const Fields& fields) const {
    if (fields.find("when") == nullptr) return When{};
    const std::string text = fields.text("when");
    const auto when = when_of(text);
    if (!when && !text.empty()) {
      refuse("dish.step.unknown_when", fields.where("when"),
             say(f_.what(), ": ", in_quotes(text), " does not say how soon."),
             "Write 'at once', 'straight away' (at most 1 min), 'within 5 min' (0 to 1440) or 'can "
             "wait'.");
    }
    return when;
  }

  void follows() {
    const When when = when_field(f_).value_or(When{});
    bool when_used = false;
    if (f_.find("follows") == nullptr && index_ > 0) {
      add_follows({.step = index_ - 1, .most = when.most}, when);
      when_used = true;
    }
    for (const Entry& entry : f_.list("follows", 100)) {
      if (entry.node->kind == Node::Kind::kText) {
        when_used = true;
        if (const auto step = reference("follows", entry.where, entry.node->text))
          add_follows({.step = *step, .most = when.most}, when);
      } else {
        follows_object(entry);
      }
    }
    if (f_.find("when") != nullptr && !when_used) {
      refuse("dish.step.when_after_what", f_.where("when"),
             say(f_.what(), " says how soon, but no step it follows takes that."),
             "Name a step in follows, or put 'when' inside the entry of follows it belongs to.");
    }
  }

  void follows_object(const Entry& entry) {
    const Fields w(f_.reader(), *entry.node, entry.where, f_.what(), kFollowsFields);
    if (!w.is_object()) return;
    Follows wait;
    wait.of = w.word("from", kMomentWords, std::optional{Moment::kEnd});
    wait.moment = w.word("moment", kMomentWords, std::optional{Moment::kStart});
    wait.safety = w.flag("safety", false);
    wait.least = w.minutes("least_minutes", Seconds{0}, Seconds{0});
    const When when = when_field(w).value_or(When{});
    wait.most = when.most;
    if (w.find("most_minutes") != nullptr) {
      if (w.find("when") != nullptr) {
        refuse("dish.step.when_twice", w.where("when"),
               say(f_.what(), " says twice how soon it follows."),
               "Keep either 'when' or 'most_minutes'.");
      }
      wait.most = w.minutes("most_minutes", Seconds{0}, Seconds{0});
    }
    const auto step = reference("follows", w.where("step"), w.text("step"));
    if (!step) return;
    wait.step = *step;
    add_follows(wait, when);
  }

  /// A closing step comes soon after what it closes, whether it says so or not (rule L3).
  void closing() {
    if (!step_.closes) return;
    if (tenths(step_.attention) < 8) {
      refuse("dish.step.closing_needs_hands", f_.where("attention"),
             say(f_.what(), " takes something off the heat, and that needs hands."),
             "Set attention to hands or nothing else.");
    }
    bool found = false;
    for (std::size_t i = 0; i < step_.follows.size(); ++i) {
      Follows& wait = step_.follows[i];
      if (wait.step != *step_.closes || wait.of != Moment::kEnd || wait.moment != Moment::kStart)
        continue;
      found = true;
      if (wait.most) continue;
      if (can_wait_said_[i]) {
        refuse("dish.step.closing_can_wait", f_.where(),
               say(f_.what(), " takes something off the heat and cannot wait."),
               "Say how soon: 'at once', 'straight away' or 'within 5 min'.");
      }
      wait.most = base::minutes(1);
    }
    if (!found) step_.follows.push_back({.step = *step_.closes, .most = base::minutes(1)});
  }

  void kit() {
    for (const Entry& entry : f_.list("kit")) {
      KitNeed need;
      if (entry.node->kind == Node::Kind::kObject) {
        const Fields k(f_.reader(), *entry.node, entry.where, f_.what(), kKitNeedFields);
        need = {k.text("item", 60), k.whole("count", 1, 100, 1)};
      } else if (f_.is_text(entry)) {
        need.item = entry.node->text;
      }
      const bool again = std::any_of(step_.kit.begin(), step_.kit.end(),
                                     [&](const KitNeed& k) { return k.item == need.item; });
      if (again) {
        refuse("dish.step.kit_twice", entry.where,
               say(f_.what(), " lists ", in_quotes(need.item), " twice."),
               "List it once with a count, as in { \"item\": \"knife\", \"count\": 2 }.");
      }
      if (base::blank(need.item)) continue;
      step_.kit.push_back(need);
    }
  }

  void uses() {
    std::vector<std::string> names;
    for (const Ingredient& ingredient : ingredients_) names.push_back(ingredient.name);
    for (const Entry& entry : f_.list("uses")) {
      if (!f_.is_text(entry)) continue;
      const auto at = std::find(names.begin(), names.end(), entry.node->text);
      if (at == names.end()) {
        refuse("dish.step.unknown_ingredient", entry.where,
               say(f_.what(), " uses ", in_quotes(entry.node->text),
                   ", which is not among the ingredients",
                   did_you_mean(entry.node->text, names).empty()
                       ? "."
                       : did_you_mean(entry.node->text, names)),
               "Write the name as it stands in the list of ingredients, or add the ingredient.");
      } else {
        step_.uses.push_back(static_cast<int>(at - names.begin()));
      }
    }
  }

  void gate() {
    const Node* node = f_.find("gate");
    if (node == nullptr) return;
    const Fields g(f_.reader(), *node, f_.where("gate"), say(f_.what(), ", the adult's look"),
                   kGateFields);
    step_.gate = Gate{g.text("look_for", 120), g.minutes("minutes", Seconds{1}, base::minutes(1)),
                      g.minutes("within_minutes", Seconds{0}, base::minutes(5))};
  }
};

}  // namespace

int step_called(const std::vector<Step>& steps, const std::string& id) {
  const auto at = std::find_if(steps.begin(), steps.end(),
                               [&](const Step& s) { return s.id == id; });
  return at == steps.end() ? -1 : static_cast<int>(at - steps.begin());
}

std::string brief_of(const std::string& id) {
  std::string brief = base::replaced(id, '-', ' ');
  if (brief.size() > kBriefLetters) {
    const auto gap = brief.rfind(' ', kBriefLetters);
    brief.resize(gap == std::string::npos ? kBriefLetters : gap);
  }
  if (!brief.empty() && brief[0] >= 'a' && brief[0] <= 'z')
    brief[0] = static_cast<char>(brief[0] - 'a' + 'A');
  return brief;
}

Method method_of(const Fields& dish, const std::vector<Ingredient>& ingredients) {
  Method method;
  if (dish.find("method") == nullptr) dish.missing("method");
  const std::vector<Entry> entries = dish.list("method", 200);
  if (const Node* node = dish.find("method");
      node != nullptr && node->kind == Node::Kind::kList && node->items.empty()) {
    dish.reader().add("dish.no_steps", dish.where("method"), say(dish.what(), " has no steps."),
                      "Add at least one step.");
  }
  std::vector<std::string> ids;
  std::vector<Fields> fields;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const Node* id = entries[i].node->find("id");
    const std::string name = id != nullptr && id->kind == Node::Kind::kText
                                 ? say("The step ", in_quotes(id->text))
                                 : say("Step ", i + 1, " of the method");
    fields.emplace_back(dish.reader(), *entries[i].node, entries[i].where, name, kStepFields);
    ids.push_back(fields.back().is_object() ? fields.back().id("id") : "");
    const bool again = !ids.back().empty() &&
                       std::find(ids.begin(), ids.end() - 1, ids.back()) != ids.end() - 1;
    if (again) {
      dish.reader().add("dish.step.id_twice", fields.back().where("id"),
                        say("Two steps are called ", in_quotes(ids.back()), "."),
                        "Give one of them another id.");
    }
  }
  for (std::size_t i = 0; i < fields.size(); ++i) {
    if (!fields[i].is_object()) continue;
    method.steps.push_back(StepReader(fields[i], static_cast<int>(i), ids, ingredients).read());
    method.where.push_back(fields[i].where());
  }
  return method;
}

}  // namespace kitchen
