#include "kitchen/reading/line_words.h"

#include <algorithm>
#include <set>

#include "kitchen/foods.h"
#include "kitchen/reading/amounts.h"

namespace kitchen {
namespace {

using Words = std::set<std::string_view>;

const Words kCutting = {"chopped", "sliced",    "diced",     "grated",   "crushed",  "shredded",
                        "minced",  "cubed",     "quartered", "halved",   "torn",     "crumbled",
                        "mashed",  "julienned", "snipped",   "slivered", "pressed",  "bashed",
                        "bruised", "broken",    "cut",       "chunked",  "separated"};

const Words kPreparation = {
    "peeled",     "trimmed",     "deseeded",      "seeded",     "cored",    "drained",
    "rinsed",     "washed",      "beaten",        "whisked",    "melted",   "softened",
    "sifted",     "sieved",      "toasted",       "cooked",     "boiled",   "cooled",
    "chilled",    "thawed",      "defrosted",     "soaked",     "stoned",   "pitted",
    "zested",     "juiced",      "squeezed",      "picked",     "stripped", "scrubbed",
    "patted",     "warmed",      "heated",        "packed",     "blended",  "pureed",
    "strained",   "reserved",    "divided",       "shelled",    "topped",   "tailed",
    "destoned",   "destalked",   "skinned",       "boned",      "flaked",   "roasted",
    "fried",      "steamed",     "mixed",         "ground",     "crisped",  "hulled",
    "split",      "scored",      "segmented",     "blanched",   "whipped",  "lightly-beaten",
    "de-seeded",  "hard-boiled", "thinly-sliced", "spiralized", "seasoned", "loosened",
    "dissolved",  "rubbed",      "opened",        "debearded",  "cleaned",  "butterflied",
    "rolled-out", "diluted",     "unwrapped",     "tempered"};

const Words kManner = {
    "finely",     "roughly",    "coarsely",   "thinly",    "thickly",   "freshly", "lightly",
    "well",       "very",       "gently",     "evenly",    "firmly",    "loosely", "just",
    "diagonally", "lengthways", "lengthwise", "crosswise", "widthways", "newly",   "slightly",
    "cleanly",    "neatly",     "partially",  "partly",    "fairly"};

const Words kQuality = {"large",
                        "medium",
                        "small",
                        "big",
                        "ripe",
                        "firm",
                        "free-range",
                        "organic",
                        "skinless",
                        "boneless",
                        "skin-on",
                        "bone-in",
                        "good-quality",
                        "unwaxed",
                        "fat",
                        "thick",
                        "plump",
                        "medium-sized",
                        "extra-large",
                        "jumbo-sized",
                        "cold",
                        "warm",
                        "hot",
                        "tepid",
                        "lukewarm",
                        "boiling",
                        "iced",
                        "ice-cold",
                        "hand-hot",
                        "best",
                        "quality",
                        "overripe",
                        "over-ripe",
                        "very-ripe",
                        "largish",
                        "smallish",
                        "little",
                        "nice",
                        "good",
                        "long",
                        "short",
                        "round",
                        "seasonal",
                        "fine",
                        "tender",
                        "crisp",
                        "stale",
                        "day-old",
                        "room-temperature",
                        "outdoor-reared",
                        "british",
                        "local",
                        "homegrown",
                        "home-grown",
                        "leftover",
                        "left-over",
                        "medium-size",
                        "small-ish",
                        "average",
                        "generous",
                        "heaped",
                        "level",
                        "thin",
                        "extra",
                        "mild",
                        "strong",
                        "size",
                        "sized",
                        "xl",
                        "vine-ripened",
                        "chunky",
                        "skin",
                        "freerange",
                        "bite-sized",
                        "bite-size"};

const Words kMeasureQuality = {
    "heaped",       "heaping",      "level",    "rounded",   "scant",       "generous",
    "good",         "big",          "large",    "small",     "medium",      "full",
    "flat",         "packed",       "hearty",   "tiny",      "decent",      "overflowing",
    "mini",         "thick",        "thin",     "fat",       "thumb-sized", "thumb-size",
    "walnut-sized", "ready-rolled", "standard", "regular",   "extra",       "level-measured",
    "double",       "medium-sized", "fresh",    "inch-long", "whole",       "short",
    "long",         "nice"};

const Words kVerbs = {
    "add",       "allow",     "arrange",  "assemble",    "bake",   "baste",      "batter",
    "beat",      "bind",      "blanch",   "blend",       "blitz",  "boil",       "braise",
    "break",     "bring",     "brown",    "brush",       "butter", "caramelise", "carefully",
    "check",     "chill",     "chop",     "clean",       "coat",   "combine",    "continue",
    "cook",      "cool",      "core",     "cover",       "cream",  "crack",      "crimp",
    "crumble",   "crush",     "cut",      "decorate",    "deseed", "dice",       "dip",
    "discard",   "dissolve",  "divide",   "dot",         "drain",  "dredge",     "drizzle",
    "drop",      "dry",       "dust",     "enjoy",       "fill",   "finally",    "finely",
    "finish",    "first",     "flatten",  "flip",        "flour",  "fold",       "fry",
    "garnish",   "gather",    "gently",   "get",         "give",   "glaze",      "grate",
    "gradually", "grease",    "griddle",  "grill",       "grind",  "halve",      "heat",
    "hull",      "increase",  "infuse",   "juice",       "keep",   "knead",      "knock",
    "ladle",     "layer",     "lay",      "leave",       "let",    "lift",       "lightly",
    "line",      "lower",     "make",     "marinate",    "mash",   "measure",    "meanwhile",
    "melt",      "microwave", "mix",      "mould",       "next",   "once",       "oil",
    "paint",     "parboil",   "pat",      "peel",        "pick",   "pierce",     "pinch",
    "pipe",      "place",     "poach",    "pop",         "pour",   "prepare",    "preheat",
    "pre-heat",  "press",     "prick",    "process",     "prove",  "pull",       "pulse",
    "put",       "quarter",   "reduce",   "refrigerate", "reheat", "remove",     "repeat",
    "rest",      "return",    "rinse",    "roast",       "roll",   "rub",        "sandwich",
    "saute",     "scatter",   "scoop",    "score",       "scrape", "scrub",      "seal",
    "season",    "separate",  "serve",    "set",         "shake",  "shape",      "shred",
    "sieve",     "sift",      "simmer",   "skim",        "slice",  "slide",      "slowly",
    "smooth",    "snip",      "soak",     "soften",      "spoon",  "spray",      "spread",
    "sprinkle",  "squash",    "squeeze",  "stand",       "start",  "steam",      "stir",
    "stir-fry",  "strain",    "stretch",  "strip",       "stuff",  "sweat",      "switch",
    "take",      "taste",     "tear",     "then",        "thread", "tip",        "toast",
    "top",       "toss",      "transfer", "trim",        "tuck",   "turn",       "twist",
    "use",       "using",     "wait",     "warm",        "wash",   "weigh",      "when",
    "whip",      "whisk",     "whizz",    "wipe",        "work",   "wrap",       "zest",
    "to",        "in",        "after",    "while",       "now",    "if",         "with",
    "as",        "open",      "push",     "fit",         "flake",  "lastly",     "rewarm",
    "cube",      "mince",     "rinse",    "sear",        "char",   "deglaze",    "ensure",
    "try",       "store",     "freeze",   "defrost",     "thaw",   "preheat",    "warm",
    "light",     "collect",   "position", "adjust",      "invert", "unmould",    "ice",
    "frost",     "swirl",     "ease"};

const Words kVague = {"pinch",      "handful", "knob",     "dash",     "splash",
                      "drizzle",    "glug",    "squeeze",  "dollop",   "sprinkle",
                      "sprinkling", "grating", "grind",    "grinding", "twist",
                      "bunch",      "clove",   "sprig",    "tin",      "can",
                      "jar",        "packet",  "scraping", "shaving",  "dusting"};

const Words kOften = {"fillet", "breast", "thigh", "drumstick", "steak", "roll",
                      "wrap",   "half",   "bun",   "base",      "round", "medallion",
                      "finger", "burger", "chop",  "wing",      "leg"};

const Words kPieces = {
    "clove",      "tin",      "can",      "pinch",     "handful",  "knob",    "sprig",  "stick",
    "stalk",      "slice",    "rasher",   "bunch",     "leaf",     "sheet",   "jar",    "packet",
    "pack",       "sachet",   "tub",      "pot",       "carton",   "bag",     "bottle", "block",
    "bar",        "square",   "cube",     "head",      "bulb",     "ball",    "piece",  "chunk",
    "thumb",      "dash",     "splash",   "drizzle",   "glug",     "squeeze", "drop",   "dollop",
    "scoop",      "punnet",   "box",      "fillet",    "breast",   "loaf",    "nest",   "strip",
    "wedge",      "portion",  "ring",     "floret",    "ear",      "cob",     "rib",    "spear",
    "pat",        "tube",     "pouch",    "grind",     "grinding", "grating", "twist",  "sprinkle",
    "sprinkling", "envelope", "package",  "container", "log",      "mug",     "lump",   "segment",
    "round",      "shaving",  "shard",    "pod",       "strand",   "frond",   "stem",   "length",
    "half",       "quarter",  "thigh",    "drumstick", "steak",    "base",    "bundle", "rack",
    "scraping",   "smear",    "swirl",    "crown",     "side",     "joint",   "tray",   "basket",
    "cupful",     "spoonful", "ladleful", "ladle",     "spoon",    "tablet",  "finger", "medallion",
    "glass",      "tumbler",  "grain",    "dusting",   "turn"};

const Words kContainers = {"tin",    "can",      "jar",     "packet",    "pack", "sachet", "tub",
                           "pot",    "carton",   "bag",     "bottle",    "box",  "tube",   "pouch",
                           "punnet", "envelope", "package", "container", "tray", "basket"};

bool in(const Words& words, std::string_view word) { return words.find(word) != words.end(); }

}  // namespace

bool preparation_word(std::string_view w) { return in(kCutting, w) || in(kPreparation, w); }
bool cutting_word(std::string_view w) { return in(kCutting, w); }
bool manner_word(std::string_view w) { return in(kManner, w); }
bool quality_word(std::string_view w) { return in(kQuality, w); }
bool measure_quality(std::string_view w) { return in(kMeasureQuality, w); }
bool method_verb(std::string_view w) { return in(kVerbs, w); }
bool vague_piece(std::string_view w) { return in(kVague, w); }
bool names_food_itself(std::string_view w) { return in(kOften, w); }

std::optional<std::string> piece_word(const std::string& word) {
  if (word == "pkt" || word == "pkts" || word == "pack" || word == "packs") return "packet";
  if (word == "tins" || word == "cans") return word.substr(0, 3);
  std::string one = singular(word);
  if (one.ends_with("handfull") || one.ends_with("spoonfull")) one.pop_back();
  if (in(kPieces, one)) return one;
  return std::nullopt;
}

bool container_word(const std::string& piece) { return in(kContainers, piece); }

}  // namespace kitchen
