#include "print/sheets/risk_sheet.h"

#include <algorithm>
#include <functional>

#include "base/index.h"
#include "base/text.h"
#include "kitchen/raw_tasting.h"
#include "print/say_allergens.h"
#include "print/sheets/open_document.h"
#include "print/words.h"

namespace print::sheets {
namespace {

using kitchen::Step;

using base::at;

/// A hazard of the kitchen: which steps have it, who is harmed, what is usually done. Controls are
/// common practice, no source, but for: cool running water for 20 minutes on a burn (health
/// service's first aid); 75 °C for 30 s or 70 °C for 2 min (Food Standards Agency).
struct Known {
  const char* name;
  const char* harm;
  const char* controls;
  std::function<bool(const Step&)> has;  ///< none = in every practical lesson
};

bool has_kit(const Step& step, const char* what) {
  return std::any_of(step.kit.begin(), step.kit.end(), [&](const kitchen::KitNeed& need) {
    return need.item.find(what) != std::string::npos;
  });
}

bool hazard_is(const Step& step, kitchen::Hazard hazard) { return step.hazard == hazard; }

bool on(const Step& step, kitchen::HeatKind kind) { return step.heat && step.heat->with == kind; }

const std::vector<Known>& known() {
  using kitchen::Hazard;
  static const std::vector<Known> all = {
      {"Hot oil", "Pupils and adults near it: burns, fire.",
       "An adult stands at the pan from cold oil to cold oil. Pan no more than a third full, dry "
       "food, lowered away from you. Oil never left. Fire blanket in reach and its use known; no "
       "water on burning oil. Ring off first.",
       [](const Step& s) { return hazard_is(s, Hazard::kHotOil); }},
      {"Food that harms: allergens", "Anyone with an allergy: a reaction, anaphylaxis.",
       "School's own records and labels read before the lesson; free-from trays first and apart; "
       "own board, knife and cloth; hands washed, not only gelled. Injector in the room, trained "
       "adult named.",
       nullptr},
      {"Raw meat, fish or egg", "Everyone who eats it: food poisoning.",
       "Own board and place; hands washed after; clean-down before anything ready to eat. Cooked "
       "through: 75 °C for 30 seconds or 70 °C for 2 minutes in the middle, probed and written "
       "down.",
       [](const Step& s) { return s.hygiene == kitchen::Hygiene::kRaw; }},
      {"Knives, graters, peelers", "Pupils: cuts.",
       "Counted out and in. Bridge or claw shown first; board on a damp cloth; knife down flat, "
       "carried point down, washed one at a time, never left in a sink. Plasters (blue) in reach.",
       [](const Step& s) {
         return hazard_is(s, Hazard::kFirstKnife) || has_kit(s, "knife") || has_kit(s, "grater") ||
                has_kit(s, "peeler");
       }},
      {"Blenders, processors, mixers",
       "Pupils: cuts, caught fingers or hair, splashes of hot food.",
       "Switched off at the wall before anyone touches a blade. Lid on; nothing hot and full. An "
       "adult fits and takes out blades. Hair tied back.",
       [](const Step& s) {
         return hazard_is(s, Hazard::kBlender) || has_kit(s, "blender") ||
                has_kit(s, "processor") || has_kit(s, "mixer") || has_kit(s, "whisk");
       }},
      {"Large hot pans, boiling water, kettles", "Pupils: scalds.",
       "Carried by an adult or not at all while full; way to the sink free and called out. Handles "
       "turned in. Kettle filled to half, poured standing still.",
       [](const Step& s) {
         return hazard_is(s, Hazard::kLargePan) || has_kit(s, "kettle") ||
                (s.heat && base::lower(s.says).find("boil") != std::string::npos);
       }},
      {"Rings and hot pans", "Pupils: burns, clothes or hair catching fire.",
       "Hair back, sleeves up, apron tied. Handles turned in. Ring off before the pan is lifted. "
       "Cool running water on a burn at once, for 20 minutes.",
       [](const Step& s) { return on(s, kitchen::HeatKind::kRing); }},
      {"Ovens and grills", "Pupils: burns on doors, shelves and trays; steam.",
       "Dry oven gloves, both hands. Stand aside when opening. Nobody behind. Hot trays to a "
       "stand, "
       "never on the edge. Grill never left.",
       [](const Step& s) {
         return on(s, kitchen::HeatKind::kOven) || on(s, kitchen::HeatKind::kGrill);
       }},
      {"Only for an adult", "Pupils, if they do it themselves.",
       "The adult does it; pupils watch from where they are told.",
       [](const Step& s) { return hazard_is(s, Hazard::kAdultOnly); }},
      {"Wet floors, crowding, bags", "Everyone: slips, trips, knocked with something hot.",
       "Bags and coats out of the room. Spills wiped at once. Walk; one way round the bays. Stools "
       "under.",
       nullptr},
      {"Gas, electricity, fire", "Everyone: burns, smoke, shock.",
       "Where the shut-offs and the blanket are is known and shown. Plugs with dry hands. Who "
       "calls "
       "for help is agreed.",
       nullptr},
      {"Food that was dirty, warm too long or past its date",
       "Everyone who eats it: food poisoning.",
       "Hands washed at the start and after raw food, nose, bin. Fridge at 5 °C or below, checked. "
       "Nothing tasted with a used spoon. Cooled and in the fridge within 90 minutes.",
       nullptr},
  };
  return all;
}

/// "Fruit scones (FS)" for each dish that `wanted` picks.
template <class Wanted>
std::vector<std::string> dishes_that(const kitchen::Lesson& lesson, Wanted wanted) {
  std::vector<std::string> out;
  for (const int d : dishes_made(lesson)) {
    if (wanted(d)) out.push_back(dish_name(lesson.dishes[at(d)]));
  }
  return out;
}

/// What the school's own switches add.
std::vector<RiskLine> risks_of_house_rules(const kitchen::Lesson& lesson) {
  std::vector<RiskLine> out;
  if (lesson.rules.no_raw_tasting) {
    const auto raw = dishes_that(
        lesson, [&](int d) { return !kitchen::raw_in(lesson.dishes[at(d)]).empty(); });
    if (!raw.empty())
      out.push_back({"Raw mixtures tasted or licked", raw,
                     "Who tastes raw egg, flour, meat or fish: food poisoning.",
                     "House rule: nobody tastes or licks a mixture before it is cooked. Spoons and "
                     "bowls of raw mixture go straight to the sink; hands washed. Tasted after "
                     "cooking, with a clean spoon each time."});
  }
  const auto boxes = dishes_that(lesson,
                                 [&](int d) { return kitchen::chilled_before_home(lesson, d); });
  if (!boxes.empty())
    out.push_back({"Food warm on the way home", boxes, "Who eats it: food poisoning.",
                   "House rule: home only out of the fridge. Cooled in the open, lidded, in the "
                   "fridge within 90 minutes of cooking, at 5 °C or below; handed out at home "
                   "time. What was not chilled stays at school."});
  return out;
}

constexpr const char* kFirst =
    "Your employer's and local rules come first. This is a draft from the steps of the lesson: "
    "read it, change it, and sign only what is true of your room, your class and this day.";
constexpr const char* kNotSeen =
    "Not seen by any program: pupils' needs, behaviour, staffing, the state of the room. Add them.";

}  // namespace

std::vector<RiskLine> risks(const kitchen::Lesson& lesson) {
  std::vector<RiskLine> out = risks_of_house_rules(lesson);
  for (const Known& hazard : known()) {
    RiskLine line{hazard.name, {}, hazard.harm, hazard.controls};
    for (const int d : dishes_made(lesson)) {
      if (!hazard.has) break;
      const kitchen::Dish& dish = lesson.dishes[at(d)];
      for (const Step& step : dish.method) {
        if (!hazard.has(step)) continue;
        const std::string where = capital(step.brief.empty() ? step.says : step.brief) + " (" +
                                  dish.tag + ")";
        if (std::find(line.where.begin(), line.where.end(), where) == line.where.end())
          line.where.push_back(where);
      }
    }
    if (hazard.has && line.where.empty()) continue;
    out.push_back(std::move(line));
  }
  return out;
}

void draw_risk_sheet(Document& document, const kitchen::Lesson& lesson) {
  document.begin_part(kA4Wide, stopped(lesson.title) + " Risk assessment for " + day(lesson.date),
                      lesson.title);
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {"", "Risk assessment in five steps", under_title(lesson), "", "", false});
  flow.paragraph(bold(kFirst), {10});
  std::vector<std::string> dishes;
  for (const int d : dishes_made(lesson))
    dishes.push_back(lesson.dishes[at(d)].tag + " " + dish_name(lesson.dishes[at(d)]));
  flow.paragraph(joined(dishes, ", ") + ".", {10});
  Table table;
  table.columns = {{"1 Hazard", 14, {10, true}},
                   {"Where in the lesson", 18, {9}},
                   {"2 Who might be harmed, and how", 17, {9}},
                   {"3 What is done about it (change as needed)", 33, {9}},
                   {"4 What more, by whom, by when", 18, {9}}};
  for (const RiskLine& risk : risks(lesson)) {
    table.rows.push_back({{{risk.hazard},
                           {risk.where.empty() ? "All through" : joined(risk.where, ", ")},
                           {risk.harm},
                           {risk.controls},
                           {}}});
  }
  for (int i = 0; i < 2; ++i) table.rows.push_back({{{" "}, {" "}, {" "}, {" "}, {" "}}});
  table.least_row = 34;
  flow.table(table);
  flow.paragraph(kNotSeen, {10});
  flow.heading("5 Looked at again");
  flow.to_fill_in(
      "After an accident or a near miss, a new class, new equipment, and at the latest on");
  flow.to_fill_in("Written by, date, signature");
  flow.to_fill_in("Seen by (head of department), date, signature");
}

std::string pdf_of_risk_sheet(const kitchen::Lesson& lesson) {
  Document document(lesson.title, lesson.date);
  draw_risk_sheet(document, lesson);
  return document.pdf();
}

std::string odt_of_risk_sheet(const kitchen::Lesson& lesson) {
  OpenDocument text("Risk assessment: " + lesson.title);
  text.heading("Risk assessment in five steps");
  text.paragraph(under_title(lesson));
  text.paragraph(bold(kFirst));
  std::vector<std::vector<Words>> rows = {
      {"1 Hazard", "Where in the lesson", "2 Who might be harmed, and how",
       "3 What is done about it", "4 What more, by whom, by when"}};
  for (const RiskLine& risk : risks(lesson)) {
    rows.push_back({bold(risk.hazard),
                    risk.where.empty() ? "All through" : joined(risk.where, ", "), risk.harm,
                    risk.controls, ""});
  }
  rows.push_back({"", "", "", "", ""});
  text.table({14, 18, 17, 33, 18}, rows);
  text.paragraph(kNotSeen);
  text.heading("5 Looked at again", 2);
  for (const char* line :
       {"After an accident or a near miss, a new class, new equipment, and at the latest on: ",
        "Written by, date, signature: ", "Seen by (head of department), date, signature: "})
    text.paragraph(line);
  return text.bytes();
}

}  // namespace print::sheets
