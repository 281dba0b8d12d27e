// What the command line can be asked, as plain values, and the functions that do it. main.cpp turns
// words into these. Every command returns the exit code: 0 fits (or all is well), 1 does not fit, 2
// bad input; 3 is main's, for a broken promise inside the program.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace app {

inline constexpr int kFits = 0;
inline constexpr int kDoesNotFit = 1;
inline constexpr int kBadInput = 2;
inline constexpr int kInternalError = 3;

struct PlanAsked {
  std::string lesson_file;          ///< empty = the quick way in
  std::vector<std::string> dishes;  ///< quick: names of shipped dishes or dish files, "name:
                                    ///< variant" for a variant
  int pupils = 24;
  std::string in = "pairs";  ///< alone, pairs, threes
  int cookers = 6;
  int sinks = 6;
  std::string from = "09:00";
  std::string to = "10:00";
  std::string purpose = "eat here";
  bool trays = false;                   ///< quick: trays stand at the places
  std::string rules_file;               ///< quick: the school's house rules
  std::string foods_file, labels_file;  ///< allergens: the school's own foods, labels read
  std::string needs_file;               ///< who must not have what, diets and reach with it
  bool details = false;
  bool json = false;
  std::string svg_file, html_file, minizinc_file;
  double seconds = 5.0;
  std::uint64_t seed = 1;
  int runs = 2000;
  int width = 80;
};

struct CheckAsked {
  std::vector<std::string> files;
};

struct DishesAsked {
  std::string name;  ///< empty = list them
};

struct FoodsAsked {
  std::string words;     ///< a key or any name; empty = how many there are
  std::string own_file;  ///< the school's own foods
};

struct RatiosAsked {
  std::string dish;
  std::vector<std::string> changes;  ///< "swap butter for oil"
  bool details = false;
  std::string own_foods_file;
};

struct ScaleAsked {
  std::string dish;
  std::optional<int> portions;
  std::string tin, to_tin;        ///< "round 20"
  std::vector<std::string> have;  ///< "flour 900 g"
  std::optional<int> cooks;
  int spares = 0;
  bool demonstration = false;
  bool practised = false;    ///< no more for beginners' peeling
  bool beaten_eggs = false;  ///< part of an egg is weighed
  std::string own_foods_file;
};

struct LabelAsked {
  std::vector<std::string> dishes;  ///< shipped dishes or dish files, "dish: variant" for a variant
  std::string own_file;             ///< the school's own foods
  int portions = 0;                 ///< 0 = as the dish says
  double weighed = 0;               ///< the finished dish on the scales, grams; 0 = estimate
  std::string band;                 ///< "girls 11", "boys 15"; empty = both of 11 to 14
  bool drink = false, details = false, json = false;
  bool raw_weights = false;  ///< no weight change in cooking
  bool keep_vitamins = false;
};

struct DevelopWords {
  std::string dish;
  std::vector<std::string> goals;
  std::vector<std::string> keep;   ///< ingredients that stay as they are
  std::vector<std::string> swaps;  ///< "butter = rapeseed oil"
  std::string own_file;
  double within = 50;    ///< per cent an ingredient may change by
  double seconds = 0.8;  ///< to search in, at most
};

struct AllergensAsked {
  std::vector<std::string> what;  ///< dishes (as find_dish) and lesson files; lessons of one room
                                  ///< and date are a day
  std::string foods_file, needs_file, labels_file;
  bool details = false;
  bool json = false;
  int width = 80;
};

struct OrderAsked {
  std::string week_file, prices_file;
  std::string stock_file;       ///< empty = nothing in the stores
  std::string own_file;         ///< the school's own foods
  std::string today;            ///< empty = by the clock
  std::string format = "text";  ///< text, csv, xlsx, json
  std::string out_file;         ///< empty = printed
  bool details = false;
  bool families = false;  ///< the private split
};

struct BringAsked {
  std::string week_file, prices_file, own_file;
};

struct DeliveryAsked {
  std::string week_file, prices_file;
  std::string sent_file;   ///< the order as `order --format json` wrote it
  std::string ticks_file;  ///< what came; empty = the list to tick off is printed
  std::string stock_file, stock_out_file;
  std::string needs_file;  ///< who must not have what; staff only
  std::string own_file;    ///< the school's own foods
  std::string today, format = "text", out_file;
};

struct StockAsked {
  std::string stock_file;
  std::string week_file;                 ///< its planned use is taken off; empty = none
  std::string from, to;                  ///< days of it; empty = the beginning, today
  std::vector<std::string> corrections;  ///< "milk=2 l"
  std::string own_file, today, out_file;
};

struct TraysAsked {
  std::string lesson_file, own_file;
  bool cards = false;
  std::string format = "text", out_file;
};

struct ReadAsked {
  std::string file;       ///< "-" = standard input
  std::string own_file;   ///< the school's own foods
  std::string footprint;  ///< instead of a file: "oven 180 C 25 min, one ring 20 min"
  std::string name = "A dish of one's own";
  bool json = false, json_ld = false;
};

struct ServeAsked {
  bool demo = false;  ///< the invented school, thrown away afterwards
  std::string file;   ///< empty = in the user's data folder
  std::string address = "127.0.0.1";
  int port = 8484;               ///< 0 = any free one
  std::string certificate, key;  ///< PEM files; beyond this machine a self-made one when empty
  bool log = false;              ///< a line a request on the error stream
};

int serve(const ServeAsked&);
struct PaperAsked {
  std::string lesson_file;
  std::string what = "teacher,wall,bays";
  std::string out = "paper";      ///< a folder, or one file when it ends in .pdf
  std::string reading = "plain";  ///< of the cooks' sheets: few words, plain, full
  std::string today;              ///< empty = by the clock
  std::string foods_file, labels_file, needs_file;  ///< allergens, as for a plan
  std::string week_file, prices_file, stock_file;   ///< order and what families bring
  std::string stickers = "3x7";
  bool numbers = false;    ///< labels with places instead of names
  bool given_out = false;  ///< labels with the whole list of ingredients
  int gone = 0;            ///< labels gone from the first sheet
  std::string keep_words;  ///< of the labels; empty = the program's
  std::string reply_by;    ///< of the letter
  double seconds = 5.0;
  std::uint64_t seed = 1;
};

int read(const ReadAsked&);
int plan(const PlanAsked&);
/// kDoesNotFit when the lesson does not fit; then only sheets without its times are written.
int paper(const PaperAsked&);
int label(const LabelAsked&);
int develop(const DevelopWords&);
int check(const CheckAsked&);
int dishes(const DishesAsked&);
/// kDoesNotFit when something must be changed for somebody.
int allergens(const AllergensAsked&);
int foods(const FoodsAsked&);
int order(const OrderAsked&);
int bring(const BringAsked&);
/// kDoesNotFit when a label must be read, food sent back or a lesson is short.
int delivery(const DeliveryAsked&);
int stock(const StockAsked&);
int trays(const TraysAsked&);
int ratios(const RatiosAsked&);
int scale(const ScaleAsked&);

}  // namespace app
