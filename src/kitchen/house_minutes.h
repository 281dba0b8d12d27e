// The minutes of the house rules and their names in files: one table for reader and writer.
#pragma once

#include <string_view>

#include "kitchen/lesson.h"

namespace kitchen {

struct HouseMinutes {
  std::string_view key;
  Seconds HouseRules::*value;
};

inline constexpr HouseMinutes kHouseMinutes[] = {
    {"apron_and_hands_minutes", &HouseRules::apron_and_hands},
    {"collect_ingredients_minutes", &HouseRules::collect_ingredients},
    {"collect_equipment_minutes", &HouseRules::collect_equipment},
    {"clean_after_raw_minutes", &HouseRules::clean_after_raw},
    {"clean_after_unwashed_minutes", &HouseRules::clean_after_unwashed},
    {"hand_wash_minutes", &HouseRules::hand_wash},
    {"kit_wash_minutes", &HouseRules::kit_wash},
    {"kit_wash_within_minutes", &HouseRules::kit_wash_within},
    {"store_minutes", &HouseRules::store},
    {"pack_minutes", &HouseRules::pack},
};
inline constexpr HouseMinutes kWashUpMinutes[] = {
    {"one", &HouseRules::wash_up_one},
    {"two", &HouseRules::wash_up_two},
    {"three", &HouseRules::wash_up_three},
    {"each_further_dish", &HouseRules::wash_up_more},
};

struct HouseSwitch {
  std::string_view key;
  bool HouseRules::*value;
};

inline constexpr HouseSwitch kHouseSwitches[] = {
    {"frying", &HouseRules::frying},
    {"nuts", &HouseRules::nuts},
    {"second_adult_for_frying", &HouseRules::second_adult_for_frying},
    {"food_home_chilled", &HouseRules::food_home_chilled},
    {"no_raw_tasting", &HouseRules::no_raw_tasting},
    {"count_knives", &HouseRules::count_knives},
    {"look_at_bays", &HouseRules::look_at_bays},
    {"wash_in_parts", &HouseRules::wash_in_parts},
};

/// The usual rules: defaults of the header and how much of an adult each hazard takes (rule V1,
/// from memory).
HouseRules usual_house_rules();

}  // namespace kitchen
