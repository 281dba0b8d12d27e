// Every field the readers accept, as data: the readers refuse the rest, and a test holds the
// schemas against it.
#pragma once

#include <span>
#include <string_view>
#include <vector>

namespace kitchen {

inline constexpr std::string_view kDishFields[] = {
    "kind", "version",         "name",         "tag",        "portions", "ingredients", "method",
    "hold", "cooling_minutes", "keep_chilled", "wash_after", "splits",   "variants",    "variant",
    "aim",  "key_words",       "questions"};
inline constexpr std::string_view kIngredientFields[] = {
    "name", "amount", "unit", "contains", "label_read", "food", "preparation", "optional"};
inline constexpr std::string_view kStepFields[] = {
    "id",           "do",      "short",  "minutes",       "spread",         "attention",
    "people",       "follows", "when",   "hygiene",       "heat",           "closes",
    "kit",          "uses",    "at",     "fridge_tenths", "freezer_tenths", "hazard",
    "can_put_down", "gate",    "skills", "elastic_loss",  "added"};
inline constexpr std::string_view kElasticFields[] = {"least", "most"};
inline constexpr std::string_view kFollowsFields[] = {
    "step", "when", "least_minutes", "most_minutes", "from", "moment", "safety"};
inline constexpr std::string_view kRingFields[] = {"ring", "rings"};
inline constexpr std::string_view kOvenFields[] = {
    "oven", "celsius", "kind", "tolerance", "shelf_twelfths", "shared_tray", "door_shut_minutes"};
inline constexpr std::string_view kGrillFields[] = {"grill", "celsius", "tolerance"};
inline constexpr std::string_view kKitNeedFields[] = {"item", "count"};
inline constexpr std::string_view kGateFields[] = {"look_for", "minutes", "within_minutes"};
inline constexpr std::string_view kHoldFields[] = {"kind", "most_minutes", "in"};
inline constexpr std::string_view kSplitFields[] = {
    "name", "after", "kept", "longest_hours", "cooling_minutes", "fridge_tenths"};
inline constexpr std::string_view kVariantFields[] = {"name", "swap", "steps", "drop_steps"};

inline constexpr std::string_view kRoomFields[] = {
    "kind",           "version",         "name",          "bays",           "hand_basins",
    "hands_at_sinks", "table_positions", "fridge_tenths", "freezer_tenths", "kit",
    "change_over",    "seen_together"};
inline constexpr std::string_view kBayFields[] = {"name", "sinks", "cookers", "places"};
inline constexpr std::string_view kCookerFields[] = {"name",         "rings", "shelves", "grill",
                                                     "grill_places", "fan",   "gas"};
inline constexpr std::string_view kPlaceFields[] = {"name", "cookers"};
inline constexpr std::string_view kKitFields[] = {"item", "count", "washed_between",
                                                  "full_clean_minutes"};
inline constexpr std::string_view kChangeOverFields[] = {
    "cold_to_180_minutes", "cold_more_per_10_minutes", "heat_per_10_minutes",
    "cool_degrees_per_minute"};

inline constexpr std::string_view kHouseRulesFields[] = {"kind",
                                                         "version",
                                                         "school",
                                                         "frying",
                                                         "frying_from_year",
                                                         "knives_from_year",
                                                         "gas_from_year",
                                                         "nuts",
                                                         "food_home_chilled",
                                                         "no_raw_tasting",
                                                         "second_adult_for_frying",
                                                         "second_adult_above",
                                                         "count_knives",
                                                         "look_at_bays",
                                                         "watch",
                                                         "apron_and_hands_minutes",
                                                         "collect_ingredients_minutes",
                                                         "collect_equipment_minutes",
                                                         "clean_after_raw_minutes",
                                                         "clean_after_unwashed_minutes",
                                                         "hand_wash_minutes",
                                                         "kit_wash_minutes",
                                                         "kit_wash_within_minutes",
                                                         "store_minutes",
                                                         "pack_minutes",
                                                         "wash_up_minutes",
                                                         "wash_in_parts"};
inline constexpr std::string_view kWatchFields[] = {"hundredths", "at_once"};
inline constexpr std::string_view kWashUpFields[] = {"one", "two", "three", "each_further_dish"};

inline constexpr std::string_view kLessonFields[] = {"kind",
                                                     "version",
                                                     "title",
                                                     "date",
                                                     "zone",
                                                     "from",
                                                     "to",
                                                     "year",
                                                     "purpose",
                                                     "timelines",
                                                     "most_waves",
                                                     "room",
                                                     "house_rules",
                                                     "dishes",
                                                     "about",
                                                     "cooks",
                                                     "class",
                                                     "share_places",
                                                     "adults",
                                                     "windows",
                                                     "pins",
                                                     "bans",
                                                     "sittings",
                                                     "serve",
                                                     "carry",
                                                     "ovens_set",
                                                     "trays_at_places",
                                                     "taste_after_washing_up",
                                                     "ready_together_first",
                                                     "check_out_minutes",
                                                     "rack_for",
                                                     "opens_late_minutes"};
inline constexpr std::string_view kCookFields[] = {"name", "people",  "place",  "dishes", "avoids",
                                                   "pace", "arrives", "leaves", "away"};
inline constexpr std::string_view kSpanFields[] = {"from", "to"};
inline constexpr std::string_view kClassFields[] = {"pupils", "in", "dishes"};
inline constexpr std::string_view kAdultFields[] = {"name", "leads", "may_watch", "from", "to"};
inline constexpr std::string_view kWindowFields[] = {"name",    "kind",          "from",   "latest",
                                                     "minutes", "audience",      "led_by", "after",
                                                     "before",  "ovens_stay_on", "tasting"};
inline constexpr std::string_view kStepRefFields[] = {"dish", "step"};
inline constexpr std::string_view kPinFields[] = {"dish", "step", "at", "cooks"};
inline constexpr std::string_view kBanFields[] = {"hazard", "after"};
inline constexpr std::string_view kSittingFields[] = {"name", "from", "to", "dishes"};
inline constexpr std::string_view kCarryFields[] = {"dish", "split", "half"};
inline constexpr std::string_view kOvenSetFields[] = {"cooker", "celsius", "kind"};

/// A list and where its names stand in the schemas: file stem and pointer ("" = the document
/// itself).
struct FieldList {
  std::string_view schema;
  std::string_view pointer;
  std::span<const std::string_view> fields;
};

inline const std::vector<FieldList>& field_lists() {
  static const std::vector<FieldList> all = {
      {"dish", "", kDishFields},
      {"dish", "/$defs/ingredient", kIngredientFields},
      {"dish", "/$defs/step", kStepFields},
      {"dish", "/$defs/elastic", kElasticFields},
      {"dish", "/$defs/follows", kFollowsFields},
      {"dish", "/$defs/ring", kRingFields},
      {"dish", "/$defs/oven", kOvenFields},
      {"dish", "/$defs/grill", kGrillFields},
      {"dish", "/$defs/kit_need", kKitNeedFields},
      {"dish", "/$defs/gate", kGateFields},
      {"dish", "/$defs/hold", kHoldFields},
      {"dish", "/$defs/split", kSplitFields},
      {"dish", "/$defs/variant", kVariantFields},
      {"room", "", kRoomFields},
      {"room", "/$defs/bay", kBayFields},
      {"room", "/$defs/cooker", kCookerFields},
      {"room", "/$defs/place", kPlaceFields},
      {"room", "/$defs/kit", kKitFields},
      {"room", "/$defs/change_over", kChangeOverFields},
      {"house_rules", "", kHouseRulesFields},
      {"house_rules", "/$defs/watch", kWatchFields},
      {"house_rules", "/$defs/wash_up", kWashUpFields},
      {"lesson", "", kLessonFields},
      {"lesson", "/$defs/cook", kCookFields},
      {"lesson", "/$defs/away", kSpanFields},
      {"lesson", "/$defs/serve", kSpanFields},
      {"lesson", "/$defs/class", kClassFields},
      {"lesson", "/$defs/adult", kAdultFields},
      {"lesson", "/$defs/window", kWindowFields},
      {"lesson", "/$defs/step_ref", kStepRefFields},
      {"lesson", "/$defs/pin", kPinFields},
      {"lesson", "/$defs/ban", kBanFields},
      {"lesson", "/$defs/sitting", kSittingFields},
      {"lesson", "/$defs/carry", kCarryFields},
      {"lesson", "/$defs/oven_set", kOvenSetFields},
  };
  return all;
}

}  // namespace kitchen
