#include "app/food_words.h"

#include <memory>

#include <CLI/CLI.hpp>

#include "app/commands.h"

namespace app {
namespace {

constexpr const char* kOwnFoods = "The school's own foods (CSV), which win over the shipped ones";

void add_foods(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<FoodsAsked>();
  CLI::App* foods = program.add_subcommand(
      "foods", "Look a food up: what it holds, weighs and contains, and where each figure is from");
  foods->add_option("words", asked->words, "Its name in any spelling, or its key");
  foods->add_option("--foods", asked->own_file, kOwnFoods);
  foods->footer("Examples:\n  benchbell foods scallion\n  benchbell foods \"tinned tomatos\"\n");
  foods->callback([asked, &code] { code = app::foods(*asked); });
}

void add_label(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<LabelAsked>();
  CLI::App* label = program.add_subcommand("label",
                                           "What a dish holds: the label's table, colours, five a "
                                           "day, shares of a day, and what is not known");
  label
      ->add_option("dishes", asked->dishes,
                   "Shipped dishes or dish files; \"dish: variant\" for a variant; several "
                   "stand side by side")
      ->required();
  label->add_option("--portions", asked->portions, "How many it serves, if not as the dish says")
      ->check(CLI::Range(1, 1000));
  label
      ->add_option("--weighed", asked->weighed,
                   "Grams of the finished dish on the scales: better than any estimate")
      ->check(CLI::Range(1.0, 1e6));
  label->add_option("--day-of", asked->band,
                    "Whose day: \"girls 11\", \"boys 11\", \"girls 15\" or \"boys 15\"");
  label->add_flag("--drink", asked->drink, "Judge it as a drink");
  label->add_flag("--details", asked->details, "Open every figure down to the row it came from");
  label->add_flag("--json", asked->json, "Print it for machines");
  label->add_flag("--raw-weights", asked->raw_weights, "Without weight changes in cooking");
  label->add_flag("--keep-vitamins", asked->keep_vitamins, "Without losses of vitamins in cooking");
  label->add_option("--foods", asked->own_file, kOwnFoods);
  label->footer(
      "Examples:\n  benchbell label macaroni-cheese\n  benchbell label lentil-dhal --portions 4 "
      "--details\n");
  label->callback([asked, &code] { code = app::label(*asked); });
}

void add_develop(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<DevelopWords>();
  CLI::App* develop = program.add_subcommand(
      "develop", "The smallest change that makes a dish reach a goal, or what stands in the way");
  develop->add_option("dish", asked->dish, "A shipped dish or a dish file")->required();
  develop
      ->add_option("--goal", asked->goals,
                   "\"salt not high\", \"saturates low\", \"fibre at least 6 g a portion\"; "
                   "give it again for a second goal")
      ->required();
  develop->add_option("--keep", asked->keep, "An ingredient that stays as it is");
  develop->add_option("--swap", asked->swaps,
                      "Another food that may stand in: \"butter = rapeseed oil\"");
  develop->add_option("--within", asked->within, "Per cent an ingredient may change by")
      ->capture_default_str()
      ->check(CLI::Range(1.0, 100.0));
  develop->add_option("--seconds", asked->seconds, "To search in, at most")
      ->capture_default_str()
      ->check(CLI::Range(0.01, 600.0));
  develop->add_option("--foods", asked->own_file, kOwnFoods);
  develop->footer(
      "Example:\n  benchbell develop macaroni-cheese --goal \"salt not high\" --keep macaroni\n"
      "Exit code: 0 a change was found, 1 none was, 2 something to mend.\n");
  develop->callback([asked, &code] { code = app::develop(*asked); });
}

void add_allergens(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<AllergensAsked>();
  CLI::App* allergens = program.add_subcommand(
      "allergens",
      "What is stated of the fourteen allergens in dishes; in lessons, who must not have it and "
      "what would settle it");
  allergens->add_option("what", asked->what, "Dishes, dish files, lesson files")->required();
  allergens->add_option("--foods", asked->foods_file, kOwnFoods);
  allergens->add_option("--needs", asked->needs_file,
                        "Allergies and diets of the cooks (CSV: cook, need, reach; lesson)");
  allergens->add_option("--labels", asked->labels_file,
                        "Labels that were read (CSV: food, pack, read_on, contains, may_contain, "
                        "in_use)");
  allergens->add_flag("--details", asked->details, "Every ingredient, with who says what");
  allergens->add_flag("--json", asked->json, "For machines");
  allergens->add_option("--width", asked->width, "Letters a line")
      ->capture_default_str()
      ->check(CLI::Range(40, 200));
  allergens->footer(
      "Examples:\n"
      "  benchbell allergens fruit-scones \"lentil-dhal: gluten-free flatbread\"\n"
      "  benchbell allergens demo/lessons/b-two-dishes.json\n"
      "Exit code: 0 nothing must be changed, 1 something must, 2 something in the input is wrong.\n"
      "Labels and the school's own records decide, not this sheet.\n");
  allergens->callback([asked, &code] { code = app::allergens(*asked); });
}

void add_format(CLI::App& word, std::string& format, std::string& out_file) {
  word.add_option("--format", format, "text, csv, xlsx or json")
      ->capture_default_str()
      ->check(CLI::IsMember({"text", "csv", "xlsx", "json"}));
  word.add_option("--out", out_file, "Write it into this file instead of printing it");
}

void add_order(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<OrderAsked>();
  CLI::App* order = program.add_subcommand(
      "order", "What to buy for a week's lessons: packs, vans, order days, what it costs a pupil");
  order->add_option("week", asked->week_file, "The week (JSON, docs/files.md)")->required();
  order->add_option("--prices", asked->prices_file, "The price list (CSV)")->required();
  order->add_option("--stock", asked->stock_file, "What is in the stores (CSV)");
  order->add_option("--foods", asked->own_file, kOwnFoods);
  order->add_option("--today", asked->today, "Count from this day (2026-11-12)");
  order->add_flag("--details", asked->details,
                  "Open every line: for which lessons, what is left, how good the order is");
  order->add_flag("--families", asked->families,
                  "Show what families bring and what the school supplies; for staff only");
  add_format(*order, asked->format, asked->out_file);
  order->footer(
      "Examples:\n"
      "  benchbell order demo/weeks/week-47.json --prices demo/stores/prices.csv --stock "
      "demo/stores/stock.csv --today 2026-11-12\n"
      "  benchbell order demo/weeks/week-47.json --prices demo/stores/prices.csv --format xlsx "
      "--out order.xlsx\n");
  order->callback([asked, &code] { code = app::order(*asked); });
}

void add_bring(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<BringAsked>();
  CLI::App* bring = program.add_subcommand(
      "bring", "What one pupil is asked to bring, in shop packs; the same words for everyone");
  bring->add_option("week", asked->week_file, "The week (JSON, docs/files.md)")->required();
  bring->add_option("--prices", asked->prices_file, "The price list (CSV)")->required();
  bring->add_option("--foods", asked->own_file, kOwnFoods);
  bring->footer(
      "Example:\n  benchbell bring demo/weeks/week-47.json --prices demo/stores/prices.csv\n");
  bring->callback([asked, &code] { code = app::bring(*asked); });
}

void add_delivery(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<DeliveryAsked>();
  CLI::App* delivery = program.add_subcommand(
      "delivery",
      "Tick a delivery in: what came, what is short, whose label to read again, what to top up");
  delivery->add_option("week", asked->week_file, "The week as it is now (JSON, docs/files.md)")
      ->required();
  delivery->add_option("--prices", asked->prices_file, "The price list (CSV)")->required();
  delivery
      ->add_option("--sent", asked->sent_file,
                   "The order as it was sent: what `benchbell order --format json` wrote")
      ->required();
  delivery->add_option("--ticks", asked->ticks_file,
                       "What came (CSV: line, came, use_by, instead, contains); leave it out for "
                       "the list to tick off");
  delivery->add_option("--stock", asked->stock_file, "What is in the stores without it (CSV)");
  delivery->add_option("--stock-out", asked->stock_out_file,
                       "Write the stores with what came into this file");
  delivery->add_option("--needs", asked->needs_file,
                       "Who must not have what (CSV: cook, need, reach, lesson); for staff only");
  delivery->add_option("--foods", asked->own_file, kOwnFoods);
  delivery->add_option("--today", asked->today, "The day it came (2026-11-16)");
  delivery->add_option("--format", asked->format, "text, csv or json")
      ->capture_default_str()
      ->check(CLI::IsMember({"text", "csv", "json"}));
  delivery->add_option("--out", asked->out_file, "Write into this file");
  delivery->footer(
      "Examples:\n"
      "  benchbell order demo/weeks/week-47.json --prices demo/stores/prices.csv --today "
      "2026-11-12 "
      "--format json --out sent.json\n"
      "  benchbell delivery demo/weeks/week-47.json --prices demo/stores/prices.csv --sent "
      "sent.json "
      "--today 2026-11-16 --format csv --out ticks.csv\n"
      "  benchbell delivery demo/weeks/week-47.json --prices demo/stores/prices.csv --sent "
      "sent.json "
      "--ticks ticks.csv --stock demo/stores/stock.csv --stock-out stock.csv --today 2026-11-16\n");
  delivery->callback([asked, &code] { code = app::delivery(*asked); });
}

void add_stock(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<StockAsked>();
  CLI::App* stock = program.add_subcommand(
      "stock", "The stores after the planned use: what to look at, and a person's corrections");
  stock->add_option("stock", asked->stock_file, "What is in the stores (CSV)")->required();
  stock->add_option("--week", asked->week_file, "Take off what this week's lessons plan to use");
  stock->add_option("--from", asked->from, "First day of them that counts");
  stock->add_option("--to", asked->to, "Last day of them that counts (today)");
  stock->add_option("--set", asked->corrections,
                    "What is really there: \"milk=2 l\", \"eggs@2026-11-20=12\", \"cream=0\"");
  stock->add_option("--foods", asked->own_file, kOwnFoods);
  stock->add_option("--today", asked->today, "Count from this day");
  stock->add_option("--out", asked->out_file, "Write the stores as they now are into this file");
  stock->footer(
      "Example:\n  benchbell stock demo/stores/stock.csv --week demo/weeks/week-47.json --to "
      "2026-11-17 --today 2026-11-17 --set \"milk=2 l\"\n");
  stock->callback([asked, &code] { code = app::stock(*asked); });
}

void add_trays(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<TraysAsked>();
  CLI::App* trays = program.add_subcommand(
      "trays", "What to weigh, each food once, and where to set it out; cards for the trays");
  trays->add_option("lesson", asked->lesson_file, "The lesson (JSON, docs/files.md)")->required();
  trays->add_flag("--cards", asked->cards, "The cards on the trays, which pupils see");
  trays->add_option("--foods", asked->own_file, kOwnFoods);
  add_format(*trays, asked->format, asked->out_file);
  trays->footer("Example:\n  benchbell trays demo/lessons/b-two-dishes.json\n");
  trays->callback([asked, &code] { code = app::trays(*asked); });
}

void add_ratios(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<RatiosAsked>();
  CLI::App* ratios = program.add_subcommand(
      "ratios", "The ratios of a dish that must stay, and what a pupil's change would do");
  ratios->add_option("dish", asked->dish, "A shipped dish, a dish file, or \"dish: variant\"")
      ->required();
  ratios->add_option(
      "--change", asked->changes,
      "\"swap butter for oil\", \"leave out the egg\", \"50 g more sugar\", \"double "
      "the salt\", \"add 30 g cocoa\"; again for another");
  ratios->add_flag("--details", asked->details,
                   "What was counted, where each band is from, why a preparation was recognised");
  ratios->add_option("--foods", asked->own_foods_file, kOwnFoods);
  ratios->footer(
      "Examples:\n  benchbell ratios fruit-scones --details\n"
      "  benchbell ratios swiss-roll --change \"swap eggs for aquafaba\"\n"
      "Exit code: 1 when a change will fail.\n");
  ratios->callback([asked, &code] { code = app::ratios(*asked); });
}

void add_scale(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<ScaleAsked>();
  CLI::App* scale = program.add_subcommand(
      "scale", "A dish for more or fewer, for another tin, by what there is, or in sets");
  scale->add_option("dish", asked->dish, "A shipped dish, a dish file, or \"dish: variant\"")
      ->required();
  scale->add_option("--portions", asked->portions, "For so many portions");
  scale->add_option("--tin", asked->tin, "The dish's tin, in cm: \"round 20\", \"two round 18\"");
  scale->add_option("--to-tin", asked->to_tin, "Your tin: \"rectangle 30 x 20\"");
  scale->add_option("--have", asked->have, "What there is: \"flour 900 g\"; again for another");
  scale->add_option("--cooks", asked->cooks, "Sets: one for each cook")->group("Sets for a class");
  scale->add_option("--spares", asked->spares, "Spare sets")->group("Sets for a class");
  scale->add_flag("--demonstration", asked->demonstration, "One more for the demonstration")
      ->group("Sets for a class");
  scale->add_flag("--practised", asked->practised, "Nothing more for beginners' peeling")
      ->group("Sets for a class");
  scale->add_flag("--beaten-eggs", asked->beaten_eggs, "Part of an egg is beaten and weighed");
  scale->add_option("--foods", asked->own_foods_file, kOwnFoods);
  scale->footer(
      "Examples:\n  benchbell scale fruit-scones --cooks 12 --spares 1 --demonstration\n"
      "  benchbell scale polenta-cake --tin \"round 20\" --to-tin \"round 23\"\n"
      "  benchbell scale fruit-scones --have \"flour 900 g\"\n");
  scale->callback([asked, &code] { code = app::scale(*asked); });
}

void add_read(CLI::App& program, std::optional<int>& code) {
  const auto asked = std::make_shared<ReadAsked>();
  CLI::App* read = program.add_subcommand(
      "read",
      "Understand a dish from its text, a web page or schema.org JSON-LD, and say how sure");
  read->add_option("file", asked->file, "The text; - for standard input");
  read->add_flag("--json", asked->json, "Write it as a dish file (docs/files.md)");
  read->add_flag("--jsonld", asked->json_ld, "Write it as schema.org Recipe");
  read->add_option("--footprint", asked->footprint,
                   "No text, only what the room feels: \"chop 10 min, oven 180 C 25 min\"");
  read->add_option("--name", asked->name, "What the dish of the footprint is called");
  read->add_option("--foods", asked->own_file, kOwnFoods);
  read->footer(
      "Examples:\n  benchbell read pie.txt\n  benchbell read pie.txt --json > pie.json\n"
      "  benchbell read --footprint \"one ring 20 min, oven 180 C 25 min\" --name \"Ali's pie\" > "
      "pie.json\n");
  read->callback([asked, &code] { code = app::read(*asked); });
}

}  // namespace

void add_food_words(CLI::App& program, std::optional<int>& code) {
  add_foods(program, code);
  add_label(program, code);
  add_develop(program, code);
  add_allergens(program, code);
  add_order(program, code);
  add_bring(program, code);
  add_delivery(program, code);
  add_stock(program, code);
  add_trays(program, code);
  add_ratios(program, code);
  add_scale(program, code);
  add_read(program, code);
}

}  // namespace app
