// Internal to play_model_of: the half-made model. chance_model.cpp makes activities and what they
// wait for; chance_model_room.cpp what they take and hold.
#pragma once

#include <map>
#include <tuple>
#include <vector>

#include "timeplan/chance/chance_model.h"

namespace timeplan {

class ModelMaker {
 public:
  ModelMaker(const kitchen::Lesson& lesson, const Network& net, const Plan& plan)
      : lesson_(lesson), net_(net), plan_(plan) {}
  LessonModel make() &&;

 private:
  static std::size_t idx(int i) { return static_cast<std::size_t>(i); }

  // chance_model.cpp
  void match_tasks();
  void add_cooks();
  void add_breaks();
  void add_activities();
  PlayActivity activity_of(int node) const;
  void set_window(PlayActivity& it, const kitchen::Window& window) const;
  void set_bell(PlayActivity& it, const Node& node) const;
  int checkpoint(const Task& task) const;
  LengthOf length_of(int node);
  int step_index(const Task& task);
  void add_serves();
  void add_waits();
  void add_wait(const Wait& wait);
  void add_together();
  std::vector<int> audience(const kitchen::Window& window) const;
  bool in_break(const Node& node, const Task& task) const;
  int add_moment(int cook, int planned);

  // chance_model_room.cpp
  void add_adults();
  void add_ways();
  void add_held();
  void add_hold(const Held& held);
  void add_orders();
  int resource(Pool pool);
  int hazard_limit(int adult, kitchen::Hazard hazard);
  int oven(int cooker);
  int setting(int oven, const kitchen::OvenSetting& setting);
  void fill_change_overs();
  PlayWay way_of(const Way& way);
  int match(const Way& way, const Task& task) const;
  const Task* vessel_task(const Held& held) const;
  bool put_in_oven(PlaySpan& span, const Held& held, const Task* vessel);
  void shut_doors(const Held& held, int span);

  const kitchen::Lesson& lesson_;
  const Network& net_;
  const Plan& plan_;
  LessonModel made_;
  std::vector<int> task_of_node_;      ///< -1: absent
  std::vector<int> activity_of_node_;  ///< -1: absent, or a break
  std::map<Pool, int> resources_;
  std::map<std::pair<int, kitchen::Hazard>, int> hazard_limits_;
  std::map<int, int> ovens_;                                 ///< cooker -> oven
  std::vector<std::vector<kitchen::OvenSetting>> settings_;  ///< [oven] setting number - 1
  std::map<std::tuple<TaskKind, int, int>, int> steps_;
};

}  // namespace timeplan
