#include "serve/kept.h"

#include <algorithm>

#include "base/text.h"
#include "desk/written_lesson.h"
#include "kitchen/json_tree.h"
#include "safety/food_allergens.h"
#include "shipped/foods.h"

namespace serve {

using kitchen::Node;
using store::Kind;

namespace {

base::Problem missing(Kind kind, const std::string& id) {
  return {"store.not_found", "", "",
          base::say("There is no ", store::words_of(kind), " ", base::in_quotes(id), "."),
          "It may have been put away: its history can bring it back."};
}

/// "dish/fruit-scones.json" as kind and id.
std::optional<store::Ref> ref_of(const std::string& path) {
  const auto slash = path.find('/');
  if (slash == std::string::npos || !path.ends_with(".json")) return std::nullopt;
  const auto kind = store::kind_named(path.substr(0, slash));
  if (!kind) return std::nullopt;
  return store::Ref{*kind, path.substr(slash + 1, path.size() - slash - 1 - 5)};
}

}  // namespace

kitchen::Loader Kept::loader() {
  return [this](const std::string& path) -> base::Result<std::string> {
    const auto ref = ref_of(path);
    if (!ref)
      return base::Problem{
          "kept.path", path, "", base::say(base::in_quotes(path), " is not kept here."),
          "Choose a room or a dish that is kept here; a program names it \"../room/NAME.json\" or "
          "\"../dish/NAME.json\"."};
    auto found = document(ref->kind, ref->id);
    if (!found) return found.problems();
    return found.value().body;
  };
}

base::Result<store::Document> Kept::document(Kind kind, const std::string& id) {
  auto found = store_.get(kind, id);
  if (!found) return found.problems();
  if (!found.value() || found.value()->deleted) return missing(kind, id);
  return *found.value();
}

base::Result<kitchen::Lesson> Kept::lesson_in(const std::string& body, const std::string& id) {
  return kitchen::read_lesson(body, "lesson/" + id + ".json", loader(), &parts_);
}

base::Result<KeptLesson> Kept::lesson(const std::string& id) {
  auto found = document(Kind::kLesson, id);
  if (!found) return found.problems();
  auto read = lesson_in(found.value().body, id);
  if (!read) return read.problems();
  return KeptLesson{std::move(found).value(), std::move(read).value()};
}

base::Result<std::vector<kitchen::Dish>> Kept::dish(const std::string& id) {
  const auto found = document(Kind::kDish, id);
  if (!found) return found.problems();
  return kitchen::read_dish_variants(found.value().body, "dish/" + id + ".json");
}

std::vector<kitchen::Dish> Kept::with_food_allergens(std::vector<kitchen::Dish> versions) {
  const auto known = foods();
  const auto read = labels();
  for (kitchen::Dish& dish : versions)
    dish = safety::with_food_allergens(std::move(dish), *known, *read);
  return versions;
}

base::Result<kitchen::Room> Kept::room(const std::string& id) {
  const auto found = document(Kind::kRoom, id);
  if (!found) return found.problems();
  return kitchen::read_room(found.value().body, "room/" + id + ".json");
}

base::Result<desk::Class> Kept::group(const std::string& id) {
  const auto found = document(Kind::kClass, id);
  if (!found) return found.problems();
  return desk::read_class(found.value().body, "class/" + id + ".json");
}

base::Result<kitchen::HouseRules> Kept::house_rules() {
  const auto all = store_.list(Kind::kHouseRules);
  if (!all) return all.problems();
  if (all.value().empty())
    return kitchen::read_house_rules(R"({"kind": "house_rules", "version": 1})", "");
  const auto found = document(Kind::kHouseRules, all.value().front().id);
  if (!found) return found.problems();
  return kitchen::read_house_rules(found.value().body, "house rules");
}

// A table that is missing or cannot be read is an empty one here: whoever keeps it was told when it
// was kept (faults() below), and a plan must not fail for a price list.
Kept::TableText Kept::table(const std::string& id) {
  const auto found = document(Kind::kTable, id);
  if (!found) return {};
  base::Problems broken;
  const auto node = kitchen::parse_json(found.value().body, "", broken);
  const Node* text = node ? node->find("text") : nullptr;
  return {found.value().version, text == nullptr ? std::string() : text->text};
}

std::shared_ptr<const kitchen::Foods> Kept::foods_locked() {
  const TableText own = table("foods");
  if (foods_.value && foods_.version == own.version) return foods_.value;
  foods_.version = own.version;
  food_names_.reset();
  foods_.value = std::make_shared<const kitchen::Foods>(shipped::foods());
  if (!own.text.empty()) {
    if (const auto read = kitchen::read_foods(own.text, "foods"))
      foods_.value = std::make_shared<const kitchen::Foods>(shipped::foods().with(read.value()));
  }
  return foods_.value;
}

std::shared_ptr<const kitchen::Foods> Kept::foods() {
  const std::lock_guard lock(mutex_);
  return foods_locked();
}

std::shared_ptr<const kitchen::FoodMatcher> Kept::food_names() {
  const std::lock_guard lock(mutex_);
  const auto foods = foods_locked();
  if (!food_names_) {
    // The matcher lasts no longer than the foods it speaks of.
    struct Both {
      std::shared_ptr<const kitchen::Foods> foods;
      kitchen::FoodMatcher names;
    };
    const auto both = std::make_shared<const Both>(Both{foods, kitchen::FoodMatcher(*foods)});
    food_names_ = std::shared_ptr<const kitchen::FoodMatcher>(both, &both->names);
  }
  return food_names_;
}

template <class Value, class Read>
std::shared_ptr<const Value> Kept::read_table(const char* id, Cached<Value>& cached, Read read) {
  const std::lock_guard lock(mutex_);
  const auto foods = foods_locked();
  const TableText own = table(id);
  if (cached.value && cached.version == own.version && cached.foods == foods_.version)
    return cached.value;
  cached = {own.version, foods_.version, std::make_shared<const Value>()};
  if (!own.text.empty()) {
    if (auto made = read(own.text, id, *foods))
      cached.value = std::make_shared<const Value>(std::move(made).value());
  }
  return cached.value;
}

std::shared_ptr<const safety::Labels> Kept::labels() {
  return read_table("labels", labels_, safety::read_labels);
}
std::shared_ptr<const larder::PriceList> Kept::prices() {
  return read_table("prices", prices_, larder::read_prices);
}
std::shared_ptr<const larder::Stock> Kept::stock() {
  return read_table("stock", stock_, larder::read_stock);
}

std::int64_t Kept::table_version(const char* id) {
  const auto found = store_.get(Kind::kTable, id);
  return found && found.value() ? found.value()->version : 0;
}

std::optional<std::string> Kept::house_rules_path() {
  const auto rules = store_.list(Kind::kHouseRules, store::first_only());
  if (!rules || rules.value().empty()) return std::nullopt;
  return "../house_rules/" + rules.value().front().id + ".json";
}

base::Result<std::string> Kept::text_of(const Node& part) {
  if (part.kind != Node::Kind::kText) return kitchen::json_text(part);
  return loader()(kitchen::path_from("lesson/new.json", part.text));
}

Node Kept::school() {
  const auto all = store_.list(Kind::kSchool);
  if (!all || all.value().empty()) return Node::object();
  const auto found = document(Kind::kSchool, all.value().front().id);
  if (!found) return Node::object();
  base::Problems broken;
  auto node = kitchen::parse_json(found.value().body, "", broken);
  return node ? std::move(*node) : Node::object();
}

namespace {

template <class Read>
DocumentFaults refused(const base::Result<Read>& read) {
  DocumentFaults out;
  base::gather(read, out.wrong);
  return out;
}

DocumentFaults table_faults(const Node& node, Kept& kept) {
  const Node* name = node.find("name");
  const Node* text = node.find("text");
  if (name == nullptr || text == nullptr || text->kind != Node::Kind::kText)
    return {
        {{"table.shape", "", "", "A table has a name and a text.",
          "Send {\"kind\": \"table\", \"version\": 1, \"name\": \"Prices\", \"text\": \"...\"}."}},
        {}};
  const auto foods = kept.foods();
  const std::string what = base::lower(name->text);
  const auto with_rows = [](const auto& read) {
    return read ? DocumentFaults{{}, read.value().faults} : DocumentFaults{read.problems(), {}};
  };
  if (what == "prices") return with_rows(larder::read_prices(text->text, "prices", *foods));
  if (what == "stock") return with_rows(larder::read_stock(text->text, "stock", *foods));
  if (what == "labels") return refused(safety::read_labels(text->text, "labels", *foods));
  if (what == "foods") return refused(kitchen::read_foods(text->text, "foods"));
  return {};
}

}  // namespace

DocumentFaults look_at(Kind kind, const std::string& body, Kept& kept) {
  base::Problems problems;
  const auto node = kitchen::parse_json(body, "", problems);
  if (!node) return {problems, {}};
  switch (kind) {
    case Kind::kDish:
      return refused(kitchen::read_dish_variants(body, ""));
    case Kind::kRoom:
      return refused(kitchen::read_room(body, ""));
    case Kind::kHouseRules:
      return refused(kitchen::read_house_rules(body, ""));
    case Kind::kClass:
      return refused(desk::read_class(body, ""));
    case Kind::kLesson:
      return refused(kept.lesson_in(body, "new"));
    case Kind::kTable:
      return table_faults(*node, kept);
    default:
      break;
  }
  const Node* own = node->find("kind");
  if (own == nullptr || own->text != store::name_of(kind))
    return {{{"document.kind", "", "/kind", base::say("This is not a ", store::words_of(kind), "."),
              base::say("Begin with { \"kind\": \"", store::name_of(kind),
                        "\", \"version\": 1, ... }.")}},
            {}};
  return {};
}

std::vector<store::Ref> links_of(Kind kind, const Node& body) {
  std::vector<store::Ref> out;
  const auto add = [&](const Node* node) {
    if (node == nullptr || node->kind != Node::Kind::kText) return;
    if (auto ref = ref_of(kitchen::path_from("lesson/x.json", node->text)))
      out.push_back(std::move(*ref));
  };
  if (kind == Kind::kLesson) {
    add(body.find("room"));
    add(body.find("house_rules"));
    if (const Node* dishes = body.find("dishes")) {
      for (const Node& dish : dishes->items) add(&dish);
    }
    const Node* about = body.find("about");
    const Node* group = about == nullptr ? nullptr : about->find("class");
    if (group != nullptr && group->kind == Node::Kind::kText && store::good_id(group->text))
      out.push_back({Kind::kClass, group->text});
  }
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

}  // namespace serve
