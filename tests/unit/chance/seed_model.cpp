#include "seed_model.h"

#include <algorithm>
#include <fstream>
#include <set>
#include <stdexcept>

namespace seeds {
namespace {

using nlohmann::json;

int seconds(const json& minutes) { return 60 * minutes.get<int>(); }

timeplan::PlayOven oven_of(const json& doc, const std::vector<int>& settings) {
  timeplan::PlayOven oven;
  oven.twelfths = 12 * doc.at("shelves").get<int>();
  oven.settings = static_cast<int>(settings.size());
  const auto number = [&](int celsius) {
    return static_cast<int>(std::find(settings.begin(), settings.end(), celsius) -
                            settings.begin());
  };
  oven.opening = number(doc.at("initial").get<int>());
  oven.change.assign(settings.size() * settings.size(), 0);
  for (const auto& [key, minutes] : doc.at("change").items()) {
    const auto mark = key.find('>');
    const int from = number(std::stoi(key.substr(0, mark))),
              to = number(std::stoi(key.substr(mark + 1)));
    oven.change[static_cast<std::size_t>(from) * settings.size() +
                static_cast<std::size_t>(to)] = seconds(minutes);
  }
  return oven;
}

/// Settings of one oven, in order of heat.
std::vector<int> settings_of(const json& doc, const std::string& oven) {
  std::set<int> found{doc.at("ovens").at(oven).at("initial").get<int>()};
  for (const json& a : doc.at("activities"))
    if (a.value("oven", "") == oven) found.insert(a.at("setting").get<int>());
  return {found.begin(), found.end()};
}

}  // namespace

double ratio(const std::string& text) {
  const auto slash = text.find('/');
  return slash == std::string::npos
             ? std::stod(text)
             : std::stod(text.substr(0, slash)) / std::stod(text.substr(slash + 1));
}

Seed read(const std::string& file) {
  std::ifstream in(std::string(BENCHBELL_SOURCE_DIR) + "/tests/data/small/" + file);
  if (!in) throw std::runtime_error("cannot read " + file);
  const json doc = json::parse(in);
  Seed seed;
  seed.chance = doc.at("chance");
  std::vector<json> activities = doc.at("activities");
  std::sort(activities.begin(), activities.end(),
            [](const json& x, const json& y) { return x.at("id") < y.at("id"); });
  std::map<std::string, int> ids, resources, ovens;
  std::set<int> cooks;
  for (std::size_t i = 0; i < activities.size(); ++i)
    ids[activities[i].at("id")] = static_cast<int>(i);
  for (const json& a : activities)
    if (a.contains("cook")) cooks.insert(a.at("cook").get<int>());
  for (const int cook : cooks) seed.cooks.push_back(std::to_string(cook));
  seed.model.cooks.resize(cooks.size());
  for (const auto& [name, capacity] : doc.at("resources").items()) {
    resources[name] = static_cast<int>(seed.model.resources.size());
    seed.model.resources.push_back({capacity.get<int>(), {}});
  }
  for (const auto& [name, oven] : doc.at("ovens").items()) {
    ovens[name] = static_cast<int>(seed.model.ovens.size());
    seed.model.ovens.push_back(oven_of(oven, settings_of(doc, name)));
  }
  for (std::size_t i = 0; i < activities.size(); ++i) {
    const json& a = activities[i];
    timeplan::PlayActivity it;
    if (a.value("window", false)) {
      it.window = timeplan::PlayWindow::kHandsOff;
      for (std::size_t c = 0; c < cooks.size(); ++c) it.audience.push_back(static_cast<int>(c));
    } else {
      it.cook = static_cast<int>(std::distance(cooks.begin(), cooks.find(a.at("cook").get<int>())));
      it.attention = a.at("attention").get<int>();
      it.hands_on = it.attention >= 5;
      it.finish = true;
      it.due = seconds(doc.at("bell"));
    }
    it.busy = it.window != timeplan::PlayWindow::kNone ? 0
              : it.attention >= 8                      ? 2
              : it.attention == 5                      ? 1
                                                       : 0;
    it.planned_start = seconds(a.at("planned_start"));
    it.planned = seconds(a.at("planned"));
    it.closing = a.value("closing", false);
    if (a.contains("uses")) {
      timeplan::PlayWay way;
      for (const auto& [name, amount] : a.at("uses").items())
        way.uses.push_back({resources.at(name), amount.get<int>()});
      it.ways.push_back(way);
    }
    seed.model.activities.push_back(it);
    if (a.contains("oven")) {
      const std::string oven = a.at("oven");
      const auto settings = settings_of(doc, oven);
      timeplan::PlaySpan tray;
      tray.opens = tray.closes = static_cast<int>(i);
      tray.oven = ovens.at(oven);
      tray.setting = static_cast<int>(
          std::find(settings.begin(), settings.end(), a.at("setting").get<int>()) -
          settings.begin());
      tray.twelfths = 12;
      seed.model.spans.push_back(tray);
    }
    std::vector<Outcome> outcomes;
    for (const json& d : a.at("durations"))
      outcomes.push_back({seconds(d.at(0)), ratio(d.at(1).get<std::string>())});
    seed.outcomes.push_back(outcomes);
  }
  for (const json& lag : doc.at("lags")) {
    const auto moment = [&](const std::string& event) {
      const auto dot = event.rfind('.');
      return std::pair(ids.at(event.substr(0, dot)), event.substr(dot + 1) == "end");
    };
    const auto [from, from_end] = moment(lag.at("from"));
    const auto [to, to_end] = moment(lag.at("to"));
    const int most = lag.at("max").is_null() ? timeplan::kNever : seconds(lag.at("max"));
    seed.model.waits.push_back({from, from_end, to, to_end, seconds(lag.at("min")), most, false});
  }
  return seed;
}

Exact enumerate(const Seed& seed) {
  const std::size_t n = seed.outcomes.size();
  timeplan::RoomPlayer player(seed.model);
  Exact exact;
  exact.cooks.assign(seed.cooks.size(), 0);
  std::vector<std::size_t> pick(n, 0);
  while (true) {
    double p = 1;
    std::vector<int> length(n);
    for (std::size_t i = 0; i < n; ++i) {
      length[i] = seed.outcomes[i][pick[i]].seconds;
      p *= seed.outcomes[i][pick[i]].chance;
    }
    const timeplan::Run& run = player.play({length, {}, 0});
    bool all = true;
    for (std::size_t c = 0; c < exact.cooks.size(); ++c) {
      all = all && run.in_time[c];
      exact.cooks[c] += run.in_time[c] ? p : 0;
      exact.expected_not_out += run.in_time[c] ? 0 : p;
    }
    exact.room += all ? p : 0;
    exact.quality_fault += run.quality_faults > 0 ? p : 0;
    exact.last_finish[*std::max_element(run.finish.begin(), run.finish.end()) / 60] += p;
    std::size_t i = 0;
    while (i < n && ++pick[i] == seed.outcomes[i].size()) pick[i++] = 0;
    if (i == n) return exact;
  }
}

}  // namespace seeds
