#include "small_reader.h"

#include <algorithm>
#include <cctype>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>

namespace scheduler::testing {
namespace {

using Json = nlohmann::json;

class Reader {
 public:
  explicit Reader(Json document) : doc_(std::move(document)) {}

  SmallInstance run() {
    out_.name = doc_.at("name");
    out_.problem.horizon = doc_.at("horizon");
    for (std::size_t i = 0; i < doc_.at("activities").size(); ++i) {
      out_.index[doc_["activities"][i].at("id")] = static_cast<int>(i);
    }
    for (const Json& r : doc_.at("resources")) read_resource(r);
    for (const Json& a : doc_.at("activities")) read_activity(a);
    for (const Json& l : doc_.value("lags", Json::array())) read_lag(l);
    for (const Json& s : doc_.value("spans", Json::array())) read_span(s);
    for (const Json& w : doc_.value("windows", Json::array())) {
      out_.problem.blocked.push_back({w.at("from"), w.at("to"), list(w.at("blocks")), -1});
    }
    for (const Json& g : doc_.value("same_mode", Json::array()))
      out_.problem.same_mode.push_back(list(g));
    for (const Json& g : doc_.value("exactly_one", Json::array()))
      out_.problem.exactly_one.push_back(list(g));
    for (const Json& g : doc_.at("goal")) read_goal(g);
    read_optimum();
    return std::move(out_);
  }

 private:
  std::vector<int> list(const Json& ids) const {
    std::vector<int> result;
    for (const Json& id : ids) result.push_back(out_.index.at(id.get<std::string>()));
    return result;
  }

  static std::string text(const Json& value) {
    return value.is_string() ? value.get<std::string>() : value.dump();
  }

  Event event(const std::string& name) const {
    const std::size_t dot = name.rfind('.');
    return {out_.index.at(name.substr(0, dot)),
            name.substr(dot + 1) == "start" ? Side::kStart : Side::kEnd};
  }

  template <class Visit>
  void each_use(const std::string& resource, Visit visit) const {
    const auto of_list = [&](const Json& uses) {
      for (const Json& use : uses) {
        if (use.at("resource") == resource) visit(use);
      }
    };
    for (const Json& a : doc_.at("activities")) {
      if (a.contains("one_of")) {
        for (const Json& mode : a["one_of"]) of_list(mode);
      } else {
        of_list(a.value("uses", Json::array()));
      }
    }
  }

  void read_resource(const Json& r) {
    const std::string id = r.at("id");
    Resource resource;
    resource.name = id;
    resource.capacity = r.at("capacity");
    const std::string kind = r.at("kind");
    bool soils = kind == "place";
    each_use(id, [&](const Json& use) {
      soils = soils || use.contains("contains") || use.contains("avoids");
    });
    if (soils) resource.kind = ResourceKind::kSoiling;
    for (const Json& limit : r.value("limits", Json::array())) {
      resource.limits.push_back({hazard(text(limit.at("hazard"))), limit.at("at_once")});
    }
    if (kind == "setting") read_settings(r, resource);
    resource_index_[id] = static_cast<int>(out_.problem.resources.size());
    out_.problem.resources.push_back(resource);
    if (kind == "people") {
      // Attentions are 0, 1, 2, 5, 8 or 10 of a person's 10: shared out among people exactly when
      // the sum fits and no person holds two of 8 and above, nor one of them and a 5, nor three
      // of 5.
      people_index_[id] = static_cast<int>(out_.problem.resources.size());
      Resource pairs;
      pairs.name = id + " (persons)";
      pairs.capacity = 2 * r.at("people").get<int>();
      out_.problem.resources.push_back(pairs);
    }
  }

  void read_settings(const Json& r, Resource& resource) {
    resource.kind = ResourceKind::kSettings;
    std::set<std::string> names;
    each_use(r.at("id"), [&](const Json& use) {
      for (const Json& s : use.value("settings", Json::array())) names.insert(text(s));
    });
    if (r.contains("initial") && !r["initial"].is_null()) names.insert(text(r["initial"]));
    std::map<std::string, int>& codes = codes_[r.at("id")];
    for (const std::string& name : names) codes.emplace(name, static_cast<int>(codes.size()));
    // A pair of settings the file does not name cannot follow each other.
    resource.change.assign(codes.size(),
                           std::vector<Time>(codes.size(), 10 * out_.problem.horizon));
    for (const auto& [a, i] : codes) {
      for (const auto& [b, j] : codes) {
        Time& gap = resource.change[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
        if (i == j)
          gap = 0;
        else if (r.at("change").contains(a + ">" + b))
          gap = r["change"][a + ">" + b];
      }
    }
    if (r.contains("initial") && !r["initial"].is_null())
      resource.initial = codes.at(text(r["initial"]));
  }

  int hazard(const std::string& name) {
    return hazards_.emplace(name, static_cast<int>(hazards_.size())).first->second;
  }

  int substance(const std::string& name) {
    return 1 << (16 +
                 substances_.emplace(name, static_cast<int>(substances_.size())).first->second);
  }

  std::vector<Use> read_uses(const Json& uses) {
    std::vector<Use> result;
    for (const Json& u : uses) {
      const std::string id = u.at("resource");
      Use use;
      use.resource = resource_index_.at(id);
      use.amount = u.value("amount", 1);
      for (const Json& s : u.value("settings", Json::array()))
        use.settings.push_back(codes_.at(id).at(text(s)));
      use.door_shut = u.value("door_shut", 0);
      if (u.contains("hazard")) use.hazard = hazard(text(u["hazard"]));
      if (u.contains("class")) {
        const int level = u["class"];
        use.kind_bit = use.soil = 1 << level;
        use.overlaps_not = 0xffff & ~use.kind_bit;
        use.minds = 0xffff & ~((2 << level) - 1);  // soil of every higher class
      }
      for (const Json& s : u.value("contains", Json::array())) use.soil |= substance(text(s));
      for (const Json& s : u.value("avoids", Json::array())) use.minds |= substance(text(s));
      result.push_back(use);
      if (people_index_.count(id) && use.amount >= 5) {
        Use person;
        person.resource = people_index_.at(id);
        person.amount = use.amount >= 8 ? 2 : 1;
        result.push_back(person);
      }
    }
    return result;
  }

  void read_activity(const Json& a) {
    Activity activity;
    activity.name = a.at("id");
    const Json& d = a.at("duration");
    activity.duration_min = d.is_array() ? d[0] : d;
    activity.duration_max = d.is_array() ? d[1] : d;
    activity.earliest = a.value("earliest", 0);
    activity.latest_end = a.value("latest_end", kNoLimit);
    activity.optional = a.value("optional", false);
    activity.modes.clear();
    if (a.contains("one_of")) {
      for (const Json& mode : a["one_of"]) activity.modes.push_back({read_uses(mode)});
    } else {
      activity.modes.push_back({read_uses(a.value("uses", Json::array()))});
    }
    if (a.contains("cleans")) {
      activity.cleans = resource_index_.at(a["cleans"]);
      activity.cleans_bits = ~0;
    }
    out_.problem.activities.push_back(activity);
  }

  void read_lag(const Json& l) {
    Lag lag{event(l.at("from")), event(l.at("to")), l.value("min", 0), kNoLimit, -1};
    if (l.contains("max") && !l["max"].is_null()) lag.max = l["max"];
    out_.problem.lags.push_back(lag);
  }

  void read_span(const Json& s) {
    Span span;
    span.from = event(s.at("from"));
    span.to = event(s.at("to"));
    span.uses_by_mode.push_back(read_uses(s.value("uses", Json::array())));
    if (s.contains("excludes")) span.excludes = list(s["excludes"]);
    out_.problem.spans.push_back(span);
  }

  std::vector<Event> ends(const Json& ids) const {
    std::vector<Event> result;
    for (const int i : list(ids)) result.push_back({i, Side::kEnd});
    return result;
  }

  static Term excess(std::vector<Event> high, std::vector<Event> low, Time allowance,
                     int weight = 1) {
    Term term;
    term.high = std::move(high);
    term.low = std::move(low);
    term.allowance = allowance;
    term.weight = weight;
    return term;
  }

  void read_goal(const Json& g) {
    const std::string measure = g.at("measure");
    if (measure == "waves") {
      for (const Json& group : g.at("groups")) out_.wave_groups.push_back(list(group));
      return;
    }
    GoalLevel level;
    level.name = measure;
    if (measure == "max_end") {
      level.terms.push_back(excess(ends(g.at("of")), {}, 0));
    } else if (measure == "sum_end" || measure == "late") {
      for (const Event e : ends(g.at("of")))
        level.terms.push_back(excess({e}, {}, g.value("due", 0)));
    } else if (measure == "spread") {
      for (const Json& group : g.at("groups")) {
        level.terms.push_back(excess(ends(group), ends(group), g.value("grace", 0)));
      }
    } else if (measure == "weighted_gap") {
      for (const Json& t : g.at("terms")) {
        level.terms.push_back(
            excess({event(t.at("to"))}, {event(t.at("from"))}, 0, t.value("weight", 1)));
      }
    } else if (measure == "buffer_shortfall") {
      for (const auto& [id, buffer] : g.at("buffer").items()) {
        level.terms.push_back(excess({{out_.index.at(id), Side::kEnd}}, {},
                                     g.at("bell").get<int>() - buffer.get<int>()));
      }
    } else if (measure == "count_present") {
      for (const int i : list(g.at("of"))) {
        Term term;
        term.kind = Term::Kind::kPresent;
        term.activity = i;
        level.terms.push_back(term);
      }
    } else if (measure == "disturbance") {
      read_disturbance(g, level);
    } else {
      throw std::runtime_error("unknown measure " + measure);
    }
    out_.problem.goals.push_back(level);
  }

  void read_disturbance(const Json& g, GoalLevel& level) const {
    for (const auto& [id, old] : g.at("old").items()) {
      const int weight = old.at("start").get<int>() <= g.at("now").get<int>() + 15 ? 2 : 1;
      Term moved;
      moved.kind = Term::Kind::kMoved;
      moved.activity = out_.index.at(id);
      moved.at = old.at("start");
      moved.tolerance = 3;
      moved.weight = weight;
      level.terms.push_back(moved);
      if (!old.contains("mode")) continue;
      Term mode = moved;
      mode.kind = Term::Kind::kMode;
      mode.at = old["mode"];
      mode.weight = 5 * weight;
      level.terms.push_back(mode);
    }
    const std::vector<int> order = list(g.value("hands_order", Json::array()));
    for (std::size_t i = 0; i < order.size(); ++i) {
      for (std::size_t j = i + 1; j < order.size(); ++j) {
        Term swapped;
        swapped.kind = Term::Kind::kOutOfOrder;
        swapped.activity = order[i];
        swapped.other = order[j];
        swapped.weight = 3;
        level.terms.push_back(swapped);
      }
    }
  }

  void read_optimum() {
    const Json& optimum = doc_.at("optimum");
    out_.feasible = optimum.value("feasible", true);
    if (!out_.feasible) return;
    for (const Json& value : optimum.at("values")) out_.optimum.push_back(value);
    out_.example.resize(out_.problem.activities.size());
    for (const auto& [id, p] : optimum.at("example").items()) {
      const int i = out_.index.at(id);
      Placement& placement = out_.example[static_cast<std::size_t>(i)];
      if (p.is_null()) {
        placement = {false, 0, 0, 0, {}};
        continue;
      }
      placement = {true, p[0], p[1], p[2], {}};
      const Activity& activity = out_.problem.activities[static_cast<std::size_t>(i)];
      std::size_t next = 3;
      for (const Use& use : activity.modes[static_cast<std::size_t>(placement.mode)].uses) {
        if (use.settings.empty()) {
          placement.settings.push_back(-1);
          continue;
        }
        while (p.at(next).is_null()) ++next;
        const std::string id_of = out_.problem.resources[static_cast<std::size_t>(use.resource)]
                                      .name;
        placement.settings.push_back(codes_.at(id_of).at(text(p.at(next++))));
      }
    }
  }

  Json doc_;
  SmallInstance out_;
  std::map<std::string, int> resource_index_, people_index_, hazards_, substances_;
  std::map<std::string, std::map<std::string, int>> codes_;
};

}  // namespace

SmallInstance read_small(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  return Reader(Json::parse(in)).run();
}

std::vector<std::filesystem::path> small_files(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    const std::string name = entry.path().filename().string();
    if (name.size() > 3 && std::isdigit(static_cast<unsigned char>(name[0])) &&
        entry.path().extension() == ".json") {
      files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

}  // namespace scheduler::testing
