// The command line. Words in, one command done, an exit code out; everything else is in its own
// file.
#include <cstdio>
#include <exception>
#include <optional>
#include <string>

#include <CLI/CLI.hpp>

#include "app/commands.h"
#include "app/food_words.h"
#include "base/memory.h"

namespace {

constexpr const char* kCautions =
    "\nA plan never replaces your risk assessment, a probe or your own eyes; your employer's and "
    "local rules come first.\n";

void add_plan(CLI::App& program, app::PlanAsked& asked) {
  CLI::App* plan = program.add_subcommand("plan",
                                          "Plan a lesson: waves, clock times, who stands where, "
                                          "and how likely it is to end by the bell");
  plan->add_option(
      "lesson", asked.lesson_file,
      "Lesson file (JSON, see docs/files.md); leave it out and name a --dish for the quick way in");
  plan->add_option("--dish", asked.dishes,
                   "A shipped dish (`benchbell dishes`) or a dish file; give it again for a second "
                   "dish; \"dish: variant\" for a variant")
      ->group("The quick way in");
  plan->add_option("--pupils", asked.pupils, "How many pupils")
      ->capture_default_str()
      ->group("The quick way in");
  plan->add_option("--in", asked.in, "How they work: alone, pairs or threes")
      ->capture_default_str()
      ->group("The quick way in");
  plan->add_option("--cookers", asked.cookers, "Cookers in the room")
      ->capture_default_str()
      ->group("The quick way in");
  plan->add_option("--sinks", asked.sinks, "Sinks in the room")
      ->capture_default_str()
      ->group("The quick way in");
  plan->add_option("--from", asked.from, "When the lesson opens")
      ->capture_default_str()
      ->group("The quick way in");
  plan->add_option("--to", asked.to, "The bell")->capture_default_str()->group("The quick way in");
  plan->add_option("--purpose", asked.purpose,
                   "eat here, take home, taste, judged, demonstrate or event")
      ->capture_default_str()
      ->group("The quick way in");
  plan->add_flag("--trays", asked.trays, "Trays stand ready at the places: nobody collects")
      ->group("The quick way in");
  plan->add_option("--rules", asked.rules_file, "The school's house rules (file)")
      ->group("The quick way in");
  plan->add_option("--foods", asked.foods_file,
                   "The school's own foods (CSV), for what dishes contain");
  plan->add_option("--labels", asked.labels_file,
                   "Labels that were read (CSV); an unread label counts as all it might say");
  plan->add_option("--needs", asked.needs_file,
                   "Who must not have what (CSV: cook, need, reach, lesson), diets with it; what a "
                   "cook must not make is refused, who goes first at kit and sinks is noted");
  plan->add_flag(
      "--details", asked.details,
      "Show how far each goal is from the best possible, and how the chance was counted");
  plan->add_flag("--json", asked.json,
                 "Print the answer for machines (schemas/answer.schema.json)");
  plan->add_option("--svg", asked.svg_file, "Draw the plan into this file");
  plan->add_option("--html", asked.html_file,
                   "The same as a page that opens in any browser, with tables");
  plan->add_option("--export-minizinc", asked.minizinc_file,
                   "Write the problem behind the plan into this file, for other solvers");
  plan->add_option("--seconds", asked.seconds, "How long to look for something better")
      ->capture_default_str()
      ->check(CLI::Range(0.1, 3600.0));
  plan->add_option("--seed", asked.seed, "Another luck for the search and the chance")
      ->capture_default_str();
  plan->add_option("--runs", asked.runs, "Lessons played for the chance")
      ->capture_default_str()
      ->check(CLI::Range(20, 200000));
  plan->add_option("--width", asked.width, "Letters a line")
      ->capture_default_str()
      ->check(CLI::Range(40, 200));
  plan->footer(
      std::string("Examples:\n"
                  "  benchbell plan demo/lessons/a-first-hob.json\n"
                  "  benchbell plan demo/lessons/a-first-hob.json --html plan.html --details\n"
                  "  benchbell plan --dish lentil-dhal --pupils 24 --in pairs --cookers 6 --sinks "
                  "6 --from 09:05 --to 10:05\n"
                  "  benchbell plan --dish fruit-scones --pupils 20 --in alone --cookers 10 "
                  "--sinks 8 --purpose take-home\n"
                  "Exit code: 0 it fits, 1 it does not fit, 2 something in the input is wrong, 3 a "
                  "fault of the program.\n") +
      kCautions);
}

void add_check(CLI::App& program, app::CheckAsked& asked) {
  CLI::App* check = program.add_subcommand(
      "check",
      "Look over dish, room, house-rules and lesson files and say everything that is wrong");
  check->add_option("files", asked.files, "Files to look over")->required();
  check->footer(
      "Example:\n  benchbell check demo/dishes/*.json demo/lessons/*.json\n"
      "Exit code: 0 all good, 2 something to mend.\n");
}

void add_dishes(CLI::App& program, app::DishesAsked& asked) {
  CLI::App* dishes = program.add_subcommand(
      "dishes", "List the dishes that come with the program, or print one to start your own from");
  dishes->add_option("name", asked.name, "Print this dish's file");
  dishes->footer("Examples:\n  benchbell dishes\n  benchbell dishes lentil-dhal > my-dhal.json\n");
}

void add_serve(CLI::App& program, app::ServeAsked& asked) {
  CLI::App* serve = program.add_subcommand("serve", "The teacher's desk in a browser");
  serve->add_flag("--demo", asked.demo, "An invented school to try everything on; nothing is kept");
  serve->add_option("--file", asked.file, "The school's file; left out, one in your data folder");
  serve
      ->add_option("--address", asked.address,
                   "Listen on this address; 0.0.0.0 for every machine in the school")
      ->capture_default_str();
  serve->add_option("--port", asked.port, "0 for any free one")
      ->capture_default_str()
      ->check(CLI::Range(0, 65535));
  auto* certificate = serve->add_option("--certificate", asked.certificate,
                                        "Certificate for TLS (PEM)");
  auto* key = serve->add_option("--key", asked.key, "Its key (PEM)");
  certificate->needs(key);
  key->needs(certificate);
  serve->add_flag("--log", asked.log, "A line for each request on the error stream, without names");
  serve->footer(
      "Examples:\n"
      "  benchbell serve\n"
      "  benchbell serve --demo\n"
      "  benchbell serve --address 0.0.0.0 --file /srv/benchbell/school.benchbell\n"
      "Beyond this machine somebody must be able to sign in, and the connection is encrypted.\n");
}

void add_paper(CLI::App& program, app::PaperAsked& asked) {
  CLI::App* paper = program.add_subcommand(
      "paper", "Print a lesson: the teacher's page, the wall page, a card a bay, and more (PDF)");
  paper->add_option("lesson", asked.lesson_file, "Lesson file (JSON, see docs/files.md)")
      ->required();
  paper->add_option("--what", asked.what, "Sheets, with commas between (docs/paper.md)")
      ->capture_default_str();
  paper->add_option("--out", asked.out, "A folder, or one file when it ends in .pdf")
      ->capture_default_str();
  paper
      ->add_option("--reading", asked.reading,
                   "How the cooks' sheets are worded: few words, plain or full")
      ->capture_default_str();
  paper->add_option("--today", asked.today, "The day that stands on the sheets, if not today");
  paper->add_option("--foods", asked.foods_file,
                    "The school's own foods (CSV), for what dishes contain");
  paper->add_option("--labels", asked.labels_file,
                    "Labels that were read (CSV); an unread label counts as all it might say");
  paper->add_option("--needs", asked.needs_file,
                    "Who must not have what (CSV), for the allergy sheet");
  paper->add_option("--week", asked.week_file, "The week (JSON), for the order and the letter")
      ->group("Order and letter");
  paper->add_option("--prices", asked.prices_file, "Price list (CSV)")->group("Order and letter");
  paper->add_option("--stock", asked.stock_file, "Stores (CSV)")->group("Order and letter");
  paper->add_option("--reply-by", asked.reply_by, "Until when families answer: \"Fri 13 Nov\"")
      ->group("Order and letter");
  paper
      ->add_option("--stickers", asked.stickers,
                   "Columns x rows of the sheet, or measured: \"2x4 99x68 step 101.5x68\" (mm)")
      ->capture_default_str()
      ->group("Labels");
  paper->add_flag("--numbers", asked.numbers, "Places instead of names")->group("Labels");
  paper
      ->add_flag("--given-out", asked.given_out,
                 "Sold or given to others: all ingredients in falling weight")
      ->group("Labels");
  paper->add_option("--gone", asked.gone, "Stickers gone from the first sheet")
      ->check(CLI::Range(0, 800))
      ->group("Labels");
  paper->add_option("--keep", asked.keep_words, "Your own words on keeping and reheating")
      ->group("Labels");
  paper->add_option("--seconds", asked.seconds, "How long to look for something better")
      ->capture_default_str()
      ->check(CLI::Range(0.1, 3600.0));
  paper->add_option("--seed", asked.seed, "Another luck for the search and the chance")
      ->capture_default_str();
  paper->footer(
      std::string("Examples:\n"
                  "  benchbell paper demo/lessons/a-first-hob.json\n"
                  "  benchbell paper demo/lessons/b-two-dishes.json --what teacher,cooks --out "
                  "lesson.pdf\n"
                  "Exit code: 0 it fits, 1 it does not fit (then no sheet with its times is "
                  "written but the teacher's page), 2 something in the input is wrong.\n") +
      kCautions);
}

int run(int argc, char** argv) {
  CLI::App program{
      "Benchbell plans practical cookery lessons: dishes, room, class and bell in; a proved time "
      "plan out."};
  program.require_subcommand(1);
  program.footer(std::string("Start with:  benchbell plan --dish lentil-dhal\n"
                             "Help on one: benchbell plan --help\n") +
                 kCautions);
  app::PlanAsked plan;
  app::CheckAsked check;
  app::DishesAsked dishes;
  app::PaperAsked paper;
  add_plan(program, plan);
  add_paper(program, paper);
  add_check(program, check);
  add_dishes(program, dishes);
  app::ServeAsked serve;
  add_serve(program, serve);
  std::optional<int> food_code;
  app::add_food_words(program, food_code);
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& e) {
    const int code = program.exit(e);
    return code == 0 ? app::kFits : app::kBadInput;
  }
  if (food_code) return *food_code;
  if (program.got_subcommand("serve")) return app::serve(serve);
  if (program.got_subcommand("paper")) return app::paper(paper);
  if (program.got_subcommand("check")) return app::check(check);
  if (program.got_subcommand("dishes")) return app::dishes(dishes);
  if (plan.lesson_file.empty() && plan.dishes.empty()) {
    std::fputs(
        "Nothing to plan: name a lesson file or a --dish.\n  benchbell plan --dish lentil-dhal\n",
        stderr);
    return app::kBadInput;
  }
  if (!plan.lesson_file.empty() && !plan.dishes.empty()) {
    std::fputs("A lesson file says its own dishes: leave out either the file or --dish.\n", stderr);
    return app::kBadInput;
  }
  return app::plan(plan);
}

}  // namespace

int main(int argc, char** argv) {
  base::keep_freed_memory();
  try {
    return run(argc, argv);
  } catch (const std::exception& e) {
    std::fprintf(
        stderr,
        "A fault of the program, not of your lesson. Please keep the file and report this:\n  %s\n",
        e.what());
    return app::kInternalError;
  }
}
