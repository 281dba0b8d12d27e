#include "kitchen/document.h"
#include "kitchen/field_lists.h"
#include "kitchen/house_minutes.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

void read_watch(const Fields& rules, HouseRules& out) {
  const Node* node = rules.find("watch");
  if (node == nullptr) return;
  if (node->kind != Node::Kind::kObject) {
    rules.wrong_kind("watch", rules.where("watch"),
                     "an object { ... } with a hazard for each name");
    return;
  }
  for (std::size_t i = 0; i < node->keys.size(); ++i) {
    const std::string& name = node->keys[i];
    const std::string where = below(rules.where("watch"), name);
    const auto hazard = value_of(kHazardWords, name);
    if (!hazard) {
      rules.unknown_word("watch", where, name, spellings(kHazardWords));
      continue;
    }
    const Fields f(rules.reader(), node->items[i], where, say("Watching ", in_quotes(name)),
                   kWatchFields);
    Watch& watch = out.watch[*hazard];
    watch.hundredths = f.whole("hundredths", 1, 100, watch.hundredths);
    watch.at_once = f.whole("at_once", 1, 1000, watch.at_once);
  }
}

}  // namespace

HouseRules usual_house_rules() {
  HouseRules rules;
  rules.watch = {{Hazard::kHotOil, {50, 2}},      {Hazard::kFirstKnife, {4, 1000}},
                 {Hazard::kLargePan, {20, 1000}}, {Hazard::kBlender, {20, 1000}},
                 {Hazard::kProbing, {50, 1000}},  {Hazard::kAdultOnly, {100, 1000}}};
  return rules;
}

std::optional<HouseRules> house_rules_of(Reader& outer, const Node& node,
                                         const std::string& where) {
  Reader reader(outer.file(), outer.problems());
  const Fields f(reader, node, where, "The house rules", kHouseRulesFields);
  HouseRules rules = usual_house_rules();
  rules.school = f.text_or("school", "", 120);
  for (const HouseSwitch& each : kHouseSwitches)
    rules.*each.value = f.flag(each.key, rules.*each.value);
  rules.frying_from_year = f.whole("frying_from_year", 1, 14, rules.frying_from_year);
  rules.knives_from_year = f.whole("knives_from_year", 1, 14, rules.knives_from_year);
  rules.gas_from_year = f.whole("gas_from_year", 1, 14, rules.gas_from_year);
  rules.second_adult_above = f.whole("second_adult_above", 0, 60, rules.second_adult_above);
  for (const HouseMinutes& each : kHouseMinutes)
    rules.*each.value = f.minutes(each.key, Seconds{0}, rules.*each.value);
  if (const Node* wash_up = f.find("wash_up_minutes")) {
    const Fields w(reader, *wash_up, f.where("wash_up_minutes"), "The final washing up",
                   kWashUpFields);
    for (const HouseMinutes& each : kWashUpMinutes)
      rules.*each.value = w.minutes(each.key, Seconds{0}, rules.*each.value);
  }
  read_watch(f, rules);
  if (!reader.clean()) return std::nullopt;
  return rules;
}

base::Result<HouseRules> read_house_rules(std::string_view text, std::string file_name) {
  base::Problems problems;
  Reader reader(std::move(file_name), problems);
  if (const auto node = parse_document(text, reader, DocumentKind::kHouseRules)) {
    if (auto rules = house_rules_of(reader, *node, "")) return std::move(*rules);
  }
  return problems;
}

}  // namespace kitchen
