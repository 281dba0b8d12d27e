// Internal to network(): the half-built network and what its parts need to know of one another.
#pragma once

#include <map>
#include <set>
#include <vector>

#include "timeplan/network.h"

namespace timeplan {

/// Nodes of one cook as they are found by later rules.
struct CookNodes {
  int apron = -1;
  std::vector<int> collecting;
  std::vector<int> all;                                   ///< every node of the cook
  std::vector<int> steps;                                 ///< first parts of all steps
  std::map<std::pair<int, int>, std::vector<int>> parts;  ///< (dish, step) -> nodes of its parts
  std::vector<int> ready;  ///< per dish of the cook: node whose end is R_k, -1 = none
  std::vector<int> wash;
  std::vector<int> packing;
  std::vector<int> serves;
};

class NetworkBuilder {
 public:
  NetworkBuilder(const kitchen::Lesson& lesson, const std::vector<int>& wave_of_cook);
  Network build() &&;

 private:
  // network_cook.cpp: what one cook does
  void add_start_of_lesson(int cook);
  void add_dish(int cook, int dish);
  void add_steps(int cook, int dish, const std::vector<bool>& here);
  void add_method_waits(int cook, int dish, const std::vector<bool>& here);
  void add_gate(int cook, int dish, int step, const std::vector<bool>& here);
  void add_carry_over(int cook, int dish, const std::vector<bool>& here);
  void add_pack(int cook, int dish, const std::vector<bool>& here);
  /// From the end of that node to the bell.
  void hold_in_the_cold(int cook, int dish, int after, PoolKind where, int tenths);
  void add_wash_up(int cook);
  void add_serving(int cook);
  // network_shared.cpp: what is held and cleaned
  void add_vessels(int cook, int dish, const std::vector<bool>& here);
  void add_raw_groups(int cook, int dish, const std::vector<bool>& here);
  void add_clean_downs(int cook, int dish, const std::vector<bool>& here);
  void add_kit_washes(int cook, int dish, const std::vector<bool>& here);
  void add_full_cleans();
  void close_raw_groups(int cook);
  // network_room.cpp: windows and adults
  void add_windows();
  void add_window_waits();
  void add_knives();
  void add_bay_looks();
  void mark_queued();

  int add(Node node);
  int task_node(TaskKind kind, int cook, int dish, int step, Seconds length, int attention,
                int people);
  void wait(int from, kitchen::Moment from_moment, int to, kitchen::Moment to_moment, Seconds least,
            std::optional<Seconds> most, WaitWhy why, bool safety = false);
  void after(int from, int to, WaitWhy why);
  std::vector<Way> hands_ways(int cook, int positions) const;
  std::vector<Way> adult_ways(kitchen::Hazard hazard) const;
  std::vector<Way> leader_ways(int hundredths) const;
  std::vector<Way> heat_ways(int cook, const kitchen::Heat& heat,
                             const std::vector<kitchen::OvenSetting>& settings) const;
  Need kit_need(int kit, int count, bool kept) const;
  bool kept_unit(int kit, int cook) const;
  double pace(int cook) const;
  const kitchen::Cook& cook_of(int cook) const {
    return lesson_.cooks[static_cast<std::size_t>(cook)];
  }
  const kitchen::Dish& dish_of(int dish) const {
    return lesson_.dishes[static_cast<std::size_t>(dish)];
  }
  CookNodes& own(int cook) { return own_[static_cast<std::size_t>(cook)]; }
  Node& node(int index) { return net_.nodes[static_cast<std::size_t>(index)]; }
  int first_part(int cook, int dish, int step) { return own(cook).parts.at({dish, step}).front(); }
  int last_part(int cook, int dish, int step) { return own(cook).parts.at({dish, step}).back(); }
  bool carried_first(int dish) const;

  const kitchen::Lesson& lesson_;
  Network net_;
  std::vector<CookNodes> own_;
  std::vector<int> windows_;     ///< node of each window
  std::set<int> contested_kit_;  ///< kit an avoiding cook shares with one who brings what they
                                 ///< avoid
};

}  // namespace timeplan
