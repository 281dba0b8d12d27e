// Internal to brief(): the problem while it is being put together.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "timeplan/brief.h"

namespace timeplan {

class BriefMaker {
 public:
  BriefMaker(const kitchen::Lesson& lesson, const Network& net, const BriefOptions& options);
  Brief make() &&;

 private:
  // brief.cpp
  void group_nodes();
  void add_activity(const std::vector<int>& nodes);
  void add_ways();
  void add_held();
  void add_lags();
  void add_pin_lags();
  void add_goals();
  // brief_order.cpp
  using Bays = std::vector<std::vector<int>>;  // their cooks
  using Doings = std::map<std::tuple<int, int, int, int, int, int, std::string>, std::vector<int>>;
  using Pairs = std::vector<std::pair<int, int>>;
  void add_call_order();
  bool same_people(int a, int b) const;
  bool same_pins(int a, int b) const;
  Doings doings(const std::vector<int>& bay) const;
  static std::optional<Pairs> matched(const Doings& mine, const Doings& theirs);
  std::vector<Bays> alike_bays() const;
  Bays bays() const;
  // brief_room.cpp
  void add_hands();
  void add_places();
  void add_breaks();
  void add_adult_limits();
  void finish_settings();

  std::tuple<int, int, int, int, int, int, int> merge_key(int node) const;
  int bell_moment();
  bool left_out(Reason reason);
  bool slack(const Pool& pool) const;
  std::vector<scheduler::Use> uses_of(const Way& way, const kitchen::Allergens& contains,
                                      const kitchen::Allergens& avoids);
  int resource_of(const Pool& pool);
  int setting_id(int cooker, const kitchen::OvenSetting& setting);
  int add_resource(std::string name, scheduler::ResourceKind kind, int capacity);
  int fixed_block(std::string name, Seconds from, Seconds to, std::vector<scheduler::Use> uses);
  void add_use(int activity, const scheduler::Use& use);
  bool alone_at_place(int cook) const;
  scheduler::Event event(int node, kitchen::Moment moment) const;
  scheduler::Activity& activity(int index) {
    return brief_.problem.activities[static_cast<std::size_t>(index)];
  }
  const Node& node(int index) const { return net_.nodes[static_cast<std::size_t>(index)]; }
  const kitchen::Cook& cook_of(int cook) const {
    return lesson_.cooks[static_cast<std::size_t>(cook)];
  }
  int line_of(int cook) const { return net_.line_of_cook[static_cast<std::size_t>(cook)]; }
  int activity_of(int node) const {
    return brief_.activity_of_node[static_cast<std::size_t>(node)];
  }
  static int as_units(Seconds t) { return static_cast<int>(t.count() / 60); }

  const kitchen::Lesson& lesson_;
  const Network& net_;
  const BriefOptions& options_;
  Brief brief_;
  std::set<Reason> seen_;
  std::vector<std::vector<int>> nodes_of_;  // [activity]
  std::map<Pool, int> demand_;              // all that could be wanted at once
  std::map<Pool, int> resource_;
  std::map<int, std::map<kitchen::OvenSetting, int>> settings_;  // [cooker]; id 0 is cold
  std::set<int> lines_with_queued_hygiene_;
  int bell_ = -1;
};

/// The family a pool belongs to when reasons are sought.
Reason reason_of(const Pool& pool);

}  // namespace timeplan
