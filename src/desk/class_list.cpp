#include "desk/class_list.h"

#include <algorithm>
#include <array>
#include <variant>

#include "base/text.h"
#include "kitchen/fields.h"

namespace desk {
namespace {

using base::in_quotes;
using base::say;
using kitchen::Entry;
using kitchen::Fields;
using kitchen::Node;
using kitchen::Reader;

constexpr kitchen::Word<Limit> kLimitWords[] = {{"low bench", Limit::kLowBench},
                                                {"not at the hob alone", Limit::kNotAtHobAlone},
                                                {"left-handed", Limit::kLeftHanded},
                                                {"near the teacher", Limit::kNearTeacher}};
constexpr kitchen::Word<int> kTogetherWords[] = {{"singles", 1}, {"pairs", 2}, {"threes", 3}};

constexpr std::string_view kClassFields[] = {
    "kind", "version", "name", "year", "in", "pupils", "never_together", "always_together"};
constexpr std::string_view kPupilFields[] = {"name", "pace", "needs", "limits"};
constexpr std::string_view kNeedFields[] = {"need", "reach"};

class ClassReader {
 public:
  explicit ClassReader(std::string file) : reader_(std::move(file), problems_) {}

  base::Result<Class> read(std::string_view text) {
    const auto node = kitchen::parse_json(text, reader_.file(), problems_);
    if (node && header(*node)) {
      const Fields f(reader_, *node, "", "The class", kClassFields);
      out_.name = f.text("name", 40);
      out_.year = f.whole("year", 1, 13, std::nullopt);
      out_.together = f.word("in", kTogetherWords, std::optional{2});
      for (const Entry& entry : f.list("pupils", 60)) pupil(entry);
      out_.never_together = pairs(f, "never_together");
      out_.always_together = pairs(f, "always_together");
      if (problems_.empty()) contradictions(f);
    }
    if (!problems_.empty()) return problems_;
    return std::move(out_);
  }

 private:
  base::Problems problems_;
  Reader reader_;
  Class out_;

  bool header(const Node& node) {
    const Node* kind = node.find("kind");
    const Node* version = node.find("version");
    if (kind != nullptr && kind->text == "class" && version != nullptr && version->number == 1)
      return true;
    reader_.add("class.kind", "", "This is not a class of version 1.",
                "Begin with { \"kind\": \"class\", \"version\": 1, ... }.");
    return false;
  }

  void pupil(const Entry& entry) {
    const Node* named = entry.node->find("name");
    const bool text = named != nullptr && named->kind == Node::Kind::kText;
    const Fields f(reader_, *entry.node, entry.where,
                   text ? say("The pupil ", in_quotes(named->text)) : std::string("A pupil"),
                   kPupilFields);
    if (!f.is_object()) return;
    Pupil pupil;
    pupil.name = f.text("name", 60);
    pupil.pace = f.number("pace", 0.5, 2, 1);
    pupil.limits = f.words("limits", kLimitWords);
    for (const Entry& need : f.list("needs", 30)) add_need(pupil, need, f.what());
    const bool twice = std::any_of(out_.pupils.begin(), out_.pupils.end(),
                                   [&](const Pupil& p) { return p.name == pupil.name; });
    if (twice && !pupil.name.empty())
      reader_.add("class.name_twice", f.where("name"),
                  say("Two pupils are called ", in_quotes(pupil.name), "."),
                  "Add a letter of the surname to one of them.");
    out_.pupils.push_back(std::move(pupil));
  }

  void add_need(Pupil& pupil, const Entry& entry, const std::string& what) {
    const Fields f(reader_, *entry.node, entry.where, say("A need of ", base::lower(what)),
                   kNeedFields);
    if (!f.is_object()) return;
    safety::Need need;
    const std::string text = f.text("need", 40);
    if (const auto allergen = kitchen::value_of(kitchen::kAllergenWords, text)) {
      need.what = *allergen;
    } else if (const auto diet = kitchen::value_of(safety::kDietWords, text)) {
      need.what = *diet;
    } else if (!text.empty()) {
      std::vector<std::string> known;
      for (const auto& each : kitchen::kAllergenWords) known.emplace_back(each.word);
      for (const auto& each : safety::kDietWords) known.emplace_back(each.word);
      reader_.add(
          "class.unknown_need", f.where("need"),
          say(what, ": ", in_quotes(text), " is neither an allergen nor a diet that is known",
              kitchen::or_did_you_mean(text, known)),
          say("Write one of ", base::joined(known, "or"), "."));
      return;
    }
    need.reach = f.word("reach", safety::kReachWords, std::optional{safety::Reach::kEat});
    pupil.needs.push_back(need);
  }

  std::vector<std::pair<std::string, std::string>> pairs(const Fields& f, std::string_view key) {
    std::vector<std::pair<std::string, std::string>> out;
    for (const Entry& entry : f.list(key, 400)) {
      const bool two = entry.node->kind == Node::Kind::kList && entry.node->items.size() == 2 &&
                       entry.node->items[0].kind == Node::Kind::kText &&
                       entry.node->items[1].kind == Node::Kind::kText &&
                       entry.node->items[0].text != entry.node->items[1].text;
      if (!two) {
        reader_.add("class.not_a_pair", entry.where, "A seating rule names two pupils.",
                    "Write [\"Aisha K.\", \"Ben T.\"].");
        continue;
      }
      for (std::size_t i = 0; i < 2; ++i) known(entry.node->items[i].text, entry.where, i);
      out.emplace_back(entry.node->items[0].text, entry.node->items[1].text);
    }
    return out;
  }

  void known(const std::string& name, const std::string& where, std::size_t i) {
    std::vector<std::string> names;
    for (const Pupil& pupil : out_.pupils) names.push_back(pupil.name);
    if (std::find(names.begin(), names.end(), name) != names.end()) return;
    reader_.add(
        "class.unknown_pupil", kitchen::below(where, i),
        say("The class has no pupil ", in_quotes(name), kitchen::or_did_you_mean(name, names)),
        "Write the name as it stands in the list of pupils.");
  }

  void contradictions(const Fields& f) {
    for (const auto& [a, b] : out_.always_together) {
      const bool both = std::any_of(
          out_.never_together.begin(), out_.never_together.end(), [&](const auto& pair) {
            return (pair.first == a && pair.second == b) || (pair.first == b && pair.second == a);
          });
      if (both)
        reader_.add(
            "class.together_and_not", f.where("always_together"),
            say(in_quotes(a), " and ", in_quotes(b), " are to be always and never together."),
            "Take one of the two rules away.");
    }
  }
};

std::string_view need_word(const safety::Need& need) { return safety::word(need); }

Node pairs_node(const std::vector<std::pair<std::string, std::string>>& all) {
  Node list = Node::list();
  for (const auto& [a, b] : all) {
    Node& pair = list.add(Node::list());
    pair.add(Node::of(a));
    pair.add(Node::of(b));
  }
  return list;
}

}  // namespace

base::Result<Class> read_class(std::string_view text, std::string file_name) {
  return ClassReader(std::move(file_name)).read(text);
}

std::string write_class(const Class& group) {
  Node node = Node::object();
  node.set("kind", Node::of("class"));
  node.set("version", Node::of(1));
  node.set("name", Node::of(group.name));
  node.set("year", Node::of(group.year));
  node.set("in", Node::of(kitchen::word_for(kTogetherWords, group.together)));
  Node& pupils = node.set("pupils", Node::list());
  for (const Pupil& pupil : group.pupils) {
    Node& entry = pupils.add(Node::object());
    entry.set("name", Node::of(pupil.name));
    if (pupil.pace != 1.0) entry.set("pace", Node::of(pupil.pace));
    if (!pupil.needs.empty()) {
      Node& needs = entry.set("needs", Node::list());
      for (const safety::Need& need : pupil.needs) {
        Node& one = needs.add(Node::object());
        one.set("need", Node::of(need_word(need)));
        one.set("reach", Node::of(kitchen::word_for(safety::kReachWords, need.reach)));
      }
    }
    if (!pupil.limits.empty()) {
      Node& limits = entry.set("limits", Node::list());
      for (const Limit limit : pupil.limits) limits.add(Node::of(word(limit)));
    }
  }
  if (!group.never_together.empty()) node.set("never_together", pairs_node(group.never_together));
  if (!group.always_together.empty())
    node.set("always_together", pairs_node(group.always_together));
  return kitchen::json_text(node);
}

kitchen::Allergens avoids(const Pupil& pupil) {
  kitchen::Allergens out;
  for (const safety::Need& need : pupil.needs) {
    if (const auto* allergen = std::get_if<kitchen::Allergen>(&need.what)) out.insert(*allergen);
  }
  return out;
}

std::string_view word(Limit limit) { return kitchen::word_for(kLimitWords, limit); }

}  // namespace desk
