// The words of the files for the values of the program, in one table a kind. Readers, writers,
// sentences and the schema test all use these tables; a word is never spelt anywhere else.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/lesson.h"
#include "kitchen/room.h"

namespace kitchen {

template <class T>
struct Word {
  std::string_view word;
  T value;
};

inline constexpr Word<Attention> kAttentionWords[] = {
    {"leave", Attention::kLeave}, {"glance", Attention::kGlance},
    {"watch", Attention::kWatch}, {"stand by", Attention::kStandBy},
    {"hands", Attention::kHands}, {"nothing else", Attention::kNothingElse}};
inline constexpr Word<Hygiene> kHygieneWords[] = {{"raw", Hygiene::kRaw},
                                                  {"unwashed", Hygiene::kUnwashed},
                                                  {"ready to eat", Hygiene::kReadyToEat}};
inline constexpr Word<Hazard> kHazardWords[] = {
    {"hot oil", Hazard::kHotOil},     {"first knife", Hazard::kFirstKnife},
    {"large pan", Hazard::kLargePan}, {"blender", Hazard::kBlender},
    {"probing", Hazard::kProbing},    {"adult only", Hazard::kAdultOnly}};
inline constexpr Word<Allergen> kAllergenWords[] = {{"celery", Allergen::kCelery},
                                                    {"gluten", Allergen::kGluten},
                                                    {"crustaceans", Allergen::kCrustaceans},
                                                    {"eggs", Allergen::kEggs},
                                                    {"fish", Allergen::kFish},
                                                    {"lupin", Allergen::kLupin},
                                                    {"milk", Allergen::kMilk},
                                                    {"molluscs", Allergen::kMolluscs},
                                                    {"mustard", Allergen::kMustard},
                                                    {"nuts", Allergen::kNuts},
                                                    {"peanuts", Allergen::kPeanuts},
                                                    {"sesame", Allergen::kSesame},
                                                    {"soya", Allergen::kSoya},
                                                    {"sulphites", Allergen::kSulphites}};
inline constexpr Word<OvenKind> kOvenKindWords[] = {{"conventional", OvenKind::kConventional},
                                                    {"fan", OvenKind::kFan},
                                                    {"grill", OvenKind::kGrill}};
inline constexpr Word<Moment> kMomentWords[] = {{"start", Moment::kStart}, {"end", Moment::kEnd}};
inline constexpr Word<HoldKind> kHoldKindWords[] = {
    {"hot", HoldKind::kHot}, {"crisp", HoldKind::kCrisp}, {"keeps", HoldKind::kKeeps}};
inline constexpr Word<HoldIn> kHoldInWords[] = {{"none", HoldIn::kNone},
                                                {"oven", HoldIn::kOven80},
                                                {"ring", HoldIn::kRing},
                                                {"fridge", HoldIn::kFridge}};
inline constexpr Word<KeptIn> kKeptInWords[] = {{"fridge", KeptIn::kFridge},
                                                {"freezer", KeptIn::kFreezer},
                                                {"prove in fridge", KeptIn::kProveInFridge}};
inline constexpr Word<GrillKind> kGrillWords[] = {{"none", GrillKind::kNone},
                                                  {"in oven", GrillKind::kInOven},
                                                  {"eye level", GrillKind::kEyeLevel}};
inline constexpr Word<Gas> kGasWords[] = {
    {"none", Gas::kNone}, {"rings", Gas::kRings}, {"all", Gas::kAll}};
inline constexpr Word<Purpose> kPurposeWords[] = {{"take home", Purpose::kTakeHome},
                                                  {"eat here", Purpose::kEatHere},
                                                  {"taste", Purpose::kTaste},
                                                  {"judged", Purpose::kJudged},
                                                  {"demonstrate", Purpose::kDemonstrate},
                                                  {"event", Purpose::kEvent}};
inline constexpr Word<Timelines> kTimelinesWords[] = {{"waves", Timelines::kWaves},
                                                      {"own", Timelines::kOwn}};
inline constexpr Word<WindowKind> kWindowWords[] = {{"hands off", WindowKind::kHandsOff},
                                                    {"stop", WindowKind::kStop},
                                                    {"break", WindowKind::kBreak}};
inline constexpr Word<bool> kHalfWords[] = {{"first", false}, {"second", true}};
inline constexpr Word<int> kGroupWords[] = {{"singles", 1}, {"pairs", 2}, {"threes", 3}};
enum class Spot : std::int8_t { kSink, kTable };
inline constexpr Word<Spot> kSpotWords[] = {{"sink", Spot::kSink}, {"table", Spot::kTable}};

template <class T, std::size_t N>
constexpr std::optional<T> value_of(const Word<T> (&words)[N], std::string_view word) {
  for (const Word<T>& each : words) {
    if (each.word == word) return each.value;
  }
  return std::nullopt;
}

/// The word for a value. Every value of the enumeration has one.
template <class T, std::size_t N>
constexpr std::string_view word_for(const Word<T> (&words)[N], const T& value) {
  for (const Word<T>& each : words) {
    if (each.value == value) return each.word;
  }
  return {};
}

template <class T, std::size_t N>
std::vector<std::string> spellings(const Word<T> (&words)[N]) {
  std::vector<std::string> out;
  for (const Word<T>& each : words) out.emplace_back(each.word);
  return out;
}

inline std::string_view word(Hazard hazard) { return word_for(kHazardWords, hazard); }
inline std::string_view word(Allergen allergen) { return word_for(kAllergenWords, allergen); }

}  // namespace kitchen
