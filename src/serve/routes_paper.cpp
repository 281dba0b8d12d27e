// Paper: what can be printed of a lesson, each as a file.
#include <algorithm>
#include <functional>

#include "base/text.h"
#include "print/sheets/adult_sheets.h"
#include "print/sheets/allergy_sheet.h"
#include "print/sheets/bay_cards.h"
#include "print/sheets/cook_sheet.h"
#include "print/sheets/labels.h"
#include "print/sheets/larder_sheets.h"
#include "print/sheets/letter.h"
#include "print/sheets/picture_cards.h"
#include "print/sheets/risk_sheet.h"
#include "print/sheets/room_sheets.h"
#include "print/sheets/teacher_page.h"
#include "print/sheets/wall_page.h"
#include "print/words.h"
#include "serve/api_json.h"
#include "serve/order_desk.h"
#include "serve/planning.h"
#include "serve/routes.h"
#include "serve/week_days.h"
#include "shipped/safety.h"

namespace serve {
namespace {

namespace sheets = print::sheets;
using Done = base::Result<bool>;

/// What a sheet is made from. The plan is there only for sheets that need one.
struct From {
  Context& context;
  const Request& request;
  const kitchen::Lesson& lesson;  ///< as written
  const Planned* plan;

  sheets::Planned planned() const {
    return {plan->lesson, plan->answer, print::day(base::date_text(context.today()))};
  }
  std::string asked(std::string_view name) const {
    const std::string* text = request.asked(name);
    return text == nullptr ? std::string() : *text;
  }
};

enum class Needs : std::uint8_t {
  kLesson,  ///< printed from the lesson as written
  kPlan,    ///< from its plan, fitting or not
  kFit,     ///< promises times, so only from a plan that fits
};

struct Sheet {
  std::string name, title, says;
  Needs needs = Needs::kLesson;
  bool allergies = false;
  std::function<Done(sheets::Document&, const From&)> draw;
  std::string beside = "";  ///< a second form: "odt", "txt"
  std::function<std::string(const From&)> beside_of = {};
};

template <class Draw>
auto of_plan(Draw draw) {
  return [draw](sheets::Document& document, const From& from) -> Done {
    draw(document, from.planned());
    return true;
  };
}

Done draw_default(sheets::Document& document, const From& from) {
  sheets::draw_teacher_page(document, from.planned());
  if (from.plan->answer.verdict != timeplan::Verdict::kFits) return true;
  sheets::draw_wall_page(document, from.planned());
  sheets::draw_bay_cards(document, from.planned());
  return true;
}

Done draw_cooks(sheets::Document& document, const From& from) {
  sheets::CookSheets how;
  for (const sheets::Level level :
       {sheets::Level::kFew, sheets::Level::kPlain, sheets::Level::kFull}) {
    if (from.asked("reading") == sheets::word(level)) how.level = level;
  }
  sheets::draw_cook_sheets(document, from.planned(), how);
  return true;
}

Done draw_trays(sheets::Document& document, const From& from) {
  sheets::draw_tray_list(document, from.lesson,
                         larder::trays_of(from.lesson, *from.context.kept.foods()));
  return true;
}

Done draw_order(sheets::Document& document, const From& from) {
  const auto day = base::date_in(from.lesson.date);
  const auto made = order_for(from.context, monday_of(day.value_or(from.context.today())));
  if (!made) return made.problems();
  const auto input = made.value()->input();
  sheets::draw_order(document, made.value()->view(input));
  return true;
}

Done draw_allergies(sheets::Document& document, const From& from) {
  const auto foods = from.context.kept.foods();
  const auto labels = from.context.kept.labels();
  const safety::Evidence evidence{*foods, *labels, shipped::hidden()};
  const safety::LessonNeeds needs = safety::needs_in(from.lesson);
  sheets::draw_allergy_sheet(
      document, {from.lesson, needs,
                 safety::conflicts(
                     {from.lesson, needs, evidence, shipped::substitutes(), from.lesson.dishes}),
                 safety::order_at_things(from.lesson, needs, evidence)});
  return true;
}

Done draw_labels(sheets::Document& document, const From& from) {
  const std::string wanted = from.asked("stickers");
  const auto stickers = sheets::sticker_sheet(wanted.empty() ? "3x7" : wanted);
  if (!stickers) return stickers.problems();
  const auto foods = from.context.kept.foods();
  const auto labels = from.context.kept.labels();
  sheets::LabelWish wish;
  wish.sheet = stickers.value();
  wish.numbers = from.asked("numbers") == "true";
  wish.given_out = from.asked("given_out") == "true";
  sheets::draw_labels(document, from.lesson, {*foods, *labels, shipped::hidden()}, wish);
  return true;
}

Done draw_letter(sheets::Document& document, const From& from) {
  sheets::draw_letter(document, {from.lesson, {}, from.asked("reply_by")});
  return true;
}

const std::vector<Sheet>& all_sheets() {
  static const std::vector<Sheet> all = {
      {"lesson", "Lesson pages",
       "Your page, the wall page and one card a bay: the three that are usually printed.",
       Needs::kPlan, false, draw_default},
      {"teacher", "Teacher's page", "Waves, checkpoints, stops, last safe starts, where to stand.",
       Needs::kPlan, false, of_plan(sheets::draw_teacher_page)},
      {"wall", "Wall page", "The checkpoints in figures that are read from the back of the room.",
       Needs::kFit, false, of_plan(sheets::draw_wall_page)},
      {"bays", "Bay cards", "One card a bay, in minutes from the start, to laminate.", Needs::kFit,
       false, of_plan(sheets::draw_bay_cards)},
      {"cooks", "Cooks' sheets", "A time plan for each cook, in few words, plain or full.",
       Needs::kFit, false, draw_cooks},
      {"pictures", "Picture cards", "One step a card, drawn.", Needs::kPlan, false,
       of_plan(sheets::draw_picture_cards)},
      {"adults", "Adults' plan", "Where each adult stands, when and why.", Needs::kFit, false,
       of_plan(sheets::draw_adult_sheets)},
      {"bay-check", "Bay check and knife count", "To tick before they go.", Needs::kFit, false,
       of_plan(sheets::draw_bay_check)},
      {"probe", "Probe log", "What is probed, to fill in and sign.", Needs::kPlan, false,
       of_plan(sheets::draw_probe_log)},
      {"rota", "Rota", "Who wipes, sweeps and empties.", Needs::kPlan, false,
       of_plan([](sheets::Document& document, const sheets::Planned& planned) {
         sheets::draw_rota(document, planned);
       })},
      {"trays", "Tray list", "What the technician weighs, and where it goes.", Needs::kLesson,
       false, draw_trays},
      {"order", "Order", "What to buy for the lesson's week.", Needs::kLesson, false, draw_order},
      {"allergies", "Allergy sheet",
       "Who must not have what. For those who need to know; not for the wall.", Needs::kLesson,
       true, draw_allergies},
      {"labels", "Labels",
       "For boxes that go home: name, dish, made on, keep and reheat, allergens in bold.",
       Needs::kLesson, false, draw_labels},
      {"letter", "Letter home", "What is cooked, what to bring, a slip to send back.",
       Needs::kLesson, false, draw_letter, "txt",
       [](const From& from) {
         return sheets::text_of_letter({from.lesson, {}, from.asked("reply_by")});
       }},
      {"risks", "Risk sheet",
       "Hazards found in the steps, controls to edit and sign. Your employer's and local rules "
       "come first.",
       Needs::kLesson, false,
       [](sheets::Document& document, const From& from) -> Done {
         sheets::draw_risk_sheet(document, from.lesson);
         return true;
       },
       "odt", [](const From& from) { return sheets::odt_of_risk_sheet(from.lesson); }},
  };
  return all;
}

Response list() {
  Node node = Node::object();
  Node& out = node.set("sheets", Node::list());
  for (const Sheet& sheet : all_sheets()) {
    Node& one = out.add(Node::object());
    one.set("name", Node::of(sheet.name));
    one.set("title", Node::of(sheet.title));
    one.set("says", Node::of(sheet.says));
    Node& formats = one.set("formats", Node::list());
    formats.add(Node::of("pdf"));
    if (!sheet.beside.empty()) formats.add(Node::of(sheet.beside));
    one.set("needs_allergies", Node::of(sheet.allergies));
  }
  return answer(node);
}

Response print_it(Context& context, const Request& request) {
  const std::string& file = request.parameter("sheet");
  const auto dot = file.rfind('.');
  const std::string name = file.substr(0, dot),
                    ending = dot == std::string::npos ? "" : file.substr(dot + 1);
  const auto found = std::find_if(all_sheets().begin(), all_sheets().end(),
                                  [&](const Sheet& sheet) { return sheet.name == name; });
  if (found == all_sheets().end() ||
      (ending != "pdf" && (ending.empty() || ending != found->beside)))
    return http::not_found();
  const std::string* id = request.asked("lesson");
  if (id == nullptr)
    return http::refused(400, "paper.lesson", "It is not said which lesson to print.",
                         "Open the lesson and print from there.");
  const auto kept = context.kept.lesson(*id);
  if (!kept) return refuse(kept.problems());
  std::shared_ptr<const Planned> plan;
  if (found->needs != Needs::kLesson) {
    auto planned = planned_for_paper(context, *id);
    if (!planned) return refuse(planned.problems());
    plan = planned.value();
    if (found->needs == Needs::kFit && plan->answer.verdict != timeplan::Verdict::kFits)
      return http::refused(409, "paper.does_not_fit",
                           "This lesson does not fit, so sheets with its times are not printed.",
                           "The teacher's page says why and what would help.");
  }
  const kitchen::Lesson& lesson = kept.value().lesson;
  const From from{context, request, lesson, plan.get()};
  const std::string out_name = *id + "-" + file;
  if (ending != "pdf") {
    return http::download(
        ending == "odt" ? "application/vnd.oasis.opendocument.text" : "text/plain; charset=utf-8",
        out_name, found->beside_of(from));
  }
  sheets::Document document(lesson.title, lesson.date);
  const auto drawn = found->draw(document, from);
  if (!drawn) return refuse(drawn.problems());
  Response response;
  response.content_type = "application/pdf";
  response.body = document.pdf();
  response.headers.push_back({"Content-Disposition", "inline; filename=\"" + out_name + "\""});
  return response;
}

}  // namespace

void add_paper_routes(http::Router& router, Context& context) {
  router.add({.method = Method::kGet,
              .pattern = "/api/paper",
              .needs = "read",
              .handler = [](const Request&) { return list(); }});
  add_route(router, context, Method::kGet, "/api/paper/{sheet}", "read", print_it);
}

}  // namespace serve
