// Any sequence of create, replace, remove, restore and erase leaves the store as it leaves a plain
// map in memory, also after closing and opening in between.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <ostream>
#include <set>
#include <vector>

#include "school.h"

namespace {

using namespace store_test;

struct Version {
  std::string body;
  std::set<std::string> links;
  bool deleted = false;
};

/// The model: every dish's versions, in order.
using Model = std::map<std::string, std::vector<Version>>;

bool standing(const Model& model, const std::string& id) {
  const auto found = model.find(id);
  return found != model.end() && !found->second.back().deleted;
}

bool used(const Model& model, const std::string& id) {
  for (const auto& [other, versions] : model) {
    const Version& last = versions.back();
    if (other != id && !last.deleted && last.links.contains(id)) return true;
  }
  return false;
}

bool links_stand(const Model& model, const std::string& id, const std::set<std::string>& links) {
  return std::all_of(links.begin(), links.end(),
                     [&](const std::string& link) { return link == id || standing(model, link); });
}

struct Step {
  enum class What : std::uint8_t { kCreate, kReplace, kRemove, kRestore, kErase, kReopen };
  What what;
  std::string id;
  int minutes;
  std::set<std::string> links;
  int version;    // to restore
  bool outdated;  // names a version that is not the current one
};

std::ostream& operator<<(std::ostream& out, const Step& step) {
  return out << static_cast<int>(step.what) << " " << step.id << " version " << step.version
             << (step.outdated ? ", outdated" : "") << ", uses " << step.links.size();
}

const std::vector<std::string> kIds{"bread", "dhal", "scones", "soup"};

std::set<std::string> chosen(unsigned bits) {
  std::set<std::string> out;
  for (std::size_t i = 0; i < kIds.size(); ++i) {
    if ((bits >> i & 1U) != 0) out.insert(kIds[i]);
  }
  return out;
}

rc::Gen<Step> step() {
  const auto ids = rc::gen::elementOf(kIds);
  const auto whats = rc::gen::weightedElement<Step::What>({{5, Step::What::kCreate},
                                                           {6, Step::What::kReplace},
                                                           {4, Step::What::kRemove},
                                                           {4, Step::What::kRestore},
                                                           {1, Step::What::kErase},
                                                           {1, Step::What::kReopen}});
  return rc::gen::apply(
      [](Step::What what, std::string id, int minutes, unsigned links, int version, int outdated) {
        // Half of them use nothing, or hardly anything could ever be removed.
        return Step{what,    std::move(id), minutes, chosen(links > 15 ? 0 : links),
                    version, outdated == 0};
      },
      whats, ids, rc::gen::inRange(0, 3), rc::gen::inRange(0U, 32U), rc::gen::inRange(1, 6),
      rc::gen::inRange(0, 5));
}

Draft draft_of(const Step& step) {
  Draft draft = dish(step.id, step.minutes);
  for (const auto& link : step.links) draft.links.push_back({Kind::kDish, link});
  return draft;
}

/// What a change comes to: a document, a clash, or a problem's code.
std::string told(const base::Result<Changed>& changed) {
  if (!changed) return code(changed);
  return std::holds_alternative<Clash>(changed.value()) ? "clash" : "done";
}

std::string model_change(Model& model, const Step& step) {
  const auto found = model.find(step.id);
  if (found == model.end()) return "store.not_found";
  auto& versions = found->second;
  if (step.outdated) return "clash";
  if (step.what == Step::What::kRestore) {
    const auto wanted = static_cast<std::size_t>(step.version);
    if (wanted > versions.size() || versions[wanted - 1].deleted) return "store.no_version";
    if (!links_stand(model, step.id, versions[wanted - 1].links)) return "store.link_missing";
    const Version again = versions[wanted - 1];
    versions.push_back(again);
    return "done";
  }
  if (versions.back().deleted) return "clash";
  if (step.what == Step::What::kRemove) {
    if (used(model, step.id)) return "store.in_use";
    versions.push_back({versions.back().body, versions.back().links, true});
    return "done";
  }
  if (!links_stand(model, step.id, step.links)) return "store.link_missing";
  versions.push_back({dish(step.id, step.minutes).body, step.links, false});
  return "done";
}

std::string store_change(Repository& school, const Model& before, const Step& step) {
  const auto found = before.find(step.id);
  const std::int64_t current = found == before.end() ? 1 : std::ssize(found->second);
  const std::int64_t expected = step.outdated ? current + 1 : current;
  switch (step.what) {
    case Step::What::kReplace:
      return told(school.replace(Kind::kDish, step.id, expected, draft_of(step), by_hart()));
    case Step::What::kRemove:
      return told(school.remove(Kind::kDish, step.id, expected, by_hart()));
    default:
      return told(school.restore(Kind::kDish, step.id, step.version, expected, by_hart()));
  }
}

void take(Repository& school, Model& model, const Step& step) {
  if (step.what == Step::What::kCreate) {
    const auto made = school.create(Kind::kDish, step.id, draft_of(step), by_hart());
    const bool free = !standing(model, step.id);
    const bool links = links_stand(model, step.id, step.links);
    RC_ASSERT(code(made) == (!free ? "store.id_taken" : !links ? "store.link_missing" : ""));
    if (made) model[step.id].push_back({dish(step.id, step.minutes).body, step.links, false});
  } else if (step.what == Step::What::kErase) {
    const auto erased = school.erase(Kind::kDish, step.id);
    const bool held = used(model, step.id);
    RC_ASSERT(code(erased) == (model.contains(step.id) && held ? "store.in_use" : ""));
    if (erased) RC_ASSERT(erased.value() == (model.erase(step.id) > 0));
  } else {
    const Model before = model;
    const std::string wanted = model_change(model, step);
    RC_ASSERT(store_change(school, before, step) == wanted);
  }
}

void compare(Repository& school, const Model& model) {
  std::size_t stand = 0;
  for (const auto& [id, versions] : model) {
    stand += versions.back().deleted ? 0 : 1;
    RC_ASSERT(school.history(Kind::kDish, id).value().size() == versions.size());
    for (std::size_t i = 0; i < versions.size(); ++i) {
      const auto found = school.get(Kind::kDish, id, static_cast<std::int64_t>(i) + 1).value();
      RC_ASSERT(found.has_value());
      RC_ASSERT(found->body == versions[i].body);
      RC_ASSERT(found->deleted == versions[i].deleted);
      RC_ASSERT(found->links.size() == versions[i].links.size());
    }
    const auto current = school.get(Kind::kDish, id).value();
    RC_ASSERT(current->version == std::ssize(versions));
    RC_ASSERT(current->body == versions.back().body);
  }
  RC_ASSERT(school.list(Kind::kDish).value().size() == stand);
}

RC_GTEST_PROP(Model, TheStoreIsAMapThatForgetsNothing, ()) {
  const auto steps = *rc::gen::container<std::vector<Step>>(step());
  const Folder folder;
  auto school = open(folder.file());
  Model model;
  for (const Step& each : steps) {
    if (each.what == Step::What::kReopen) {
      school.reset();
      school = open(folder.file());
    } else {
      take(*school, model, each);
    }
  }
  compare(*school, model);
}

}  // namespace
