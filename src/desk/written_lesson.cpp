#include "desk/written_lesson.h"

#include <algorithm>

#include "base/text.h"
#include "kitchen/fields.h"
#include "kitchen/read.h"

namespace desk {

using kitchen::Node;

std::string referred(const std::string& file, const std::string& path) {
  const auto slash = file.rfind('/');
  std::string folder = slash == std::string::npos ? "" : file.substr(0, slash);
  std::string rest = path;
  while (rest.starts_with("../") && !folder.empty()) {
    rest.erase(0, 3);
    const auto up = folder.rfind('/');
    folder = up == std::string::npos ? "" : folder.substr(0, up);
  }
  return folder.empty() ? rest : folder + "/" + rest;
}

base::Result<std::string> written_again(const Node& tree, const std::string& file,
                                        const kitchen::Lesson& before,
                                        const kitchen::Lesson& after) {
  base::Problems problems;
  auto out = kitchen::parse_json(kitchen::write_lesson(after), file, problems);
  if (!out) return problems;
  const Node* room = tree.find("room");
  if (room != nullptr && after.room == before.room) out->set("room", *room);
  const Node* rules = tree.find("house_rules");
  if (after.rules == before.rules) {
    if (rules != nullptr)
      out->set("house_rules", *rules);
    else
      out->erase("house_rules");
  }
  if (const Node* about = tree.find("about")) out->set("about", *about);
  // Keys of the written lesson stand in the order of its dishes. One that is a dish as written, and
  // has not changed, is called for by its old path again.
  const Node* old_dishes = tree.find("dishes");
  Node* new_dishes = out->find("dishes");
  if (old_dishes == nullptr || new_dishes == nullptr) return kitchen::json_text(*out);
  for (std::size_t d = 0; d < after.dishes.size() && d < new_dishes->items.size(); ++d) {
    const kitchen::Dish& dish = after.dishes[d];
    const auto same = std::find(before.dishes.begin(), before.dishes.end(), dish);
    if (same == before.dishes.end() || !dish.variant.empty()) continue;
    // Dishes as written come in the order of the document's keys.
    std::size_t key = 0;
    for (auto each = before.dishes.begin(); each != same; ++each)
      key += each->variant.empty() ? 1 : 0;
    if (key < old_dishes->items.size() && old_dishes->items[key].kind == Node::Kind::kText &&
        before.dishes.size() == old_dishes->items.size())
      new_dishes->items[d] = old_dishes->items[key];
  }
  return kitchen::json_text(*out);
}

base::Result<kitchen::Room> without_cooker(const kitchen::Room& room, const std::string& name) {
  std::vector<std::string> names;
  for (const kitchen::Cooker& cooker : room.cookers) names.push_back(cooker.name);
  const auto at = std::find(names.begin(), names.end(), name);
  if (at == names.end())
    return base::Problem{"room.unknown_cooker", "", "",
                         base::say("The room has no cooker ", base::quoted(name),
                                   kitchen::or_did_you_mean(name, names)),
                         base::say("Choose one of ", base::joined(names, "or"), ".")};
  if (names.size() == 1)
    return base::Problem{"room.last_cooker", "", "", "It is the only cooker of the room.",
                         "Choose another room."};
  const int gone = static_cast<int>(at - names.begin());
  kitchen::Room out = room;
  out.cookers.erase(out.cookers.begin() + gone);
  for (kitchen::Place& place : out.places) {
    std::erase(place.cookers, gone);
    for (int& cooker : place.cookers) cooker -= cooker > gone ? 1 : 0;
    if (!place.cookers.empty()) continue;
    const auto near = std::find_if(out.cookers.begin(), out.cookers.end(),
                                   [&](const kitchen::Cooker& c) { return c.bay == place.bay; });
    const auto use = near == out.cookers.end() ? out.cookers.begin() : near;
    place.cookers.push_back(static_cast<int>(use - out.cookers.begin()));
  }
  return out;
}

}  // namespace desk
