// One table in seven parts, longer than a file of code should be because it is a table.
#include "kitchen/ratios/rules.h"

#include <algorithm>

namespace kitchen {
namespace {

using enum Role;
using Roles = std::vector<Role>;

const Roles kAnyFlour = {kFlour, kSelfRaisingFlour};
const Roles kAnyFat = {kFat, kOil};
const Roles kThin = {kMilk, kWater, kStock, kJuice, kYogurt};
const Roles kSweet = {kSugar, kSyrup};
const Roles kRaising = {kBakingPowder, kBicarbonate, kSelfRaisingFlour};
const Roles kEggs = {kEgg, kEggWhite, kEggYolk};

void add_pastries(std::vector<Rule>& rules) {
  rules.push_back({"shortcrust",
                   "shortcrust pastry",
                   {kAnyFlour, kAnyFat},
                   {kWater, kMilk, kSalt, kEggYolk},
                   {kBakingPowder, kBicarbonate, kYeast, kFreshYeast, kSugar, kOats, kEgg},
                   {"rub", "breadcrumbs", "rubbing"},
                   {"shortcrust", "pastry", "pasty", "pasties", "quiche", "tart", "pie"},
                   {{"fat", "flour", 0.3, 0.7}, {"water+milk", "flour", 0.03, 0.35}}});
  rules.push_back(
      {"sweet_shortcrust",
       "sweet shortcrust pastry",
       {kAnyFlour, kAnyFat, kSweet, kEggs},
       {kWater, kMilk, kSalt, kFlavour},
       {kBakingPowder, kBicarbonate, kYeast, kFreshYeast, kOats},
       {"rub", "breadcrumbs", "rubbing", "cream"},
       {"sweet pastry", "sweet shortcrust", "tart", "pastry", "flan"},
       {{"fat", "flour", 0.4, 0.8}, {"sugar", "flour", 0.1, 0.5}, {"egg", "flour", 0.05, 0.4}}});
  rules.push_back({"rough_puff",
                   "rough puff pastry",
                   {kAnyFlour, kAnyFat, {kWater}},
                   {kSalt, kAcid},
                   {kSugar, kYeast, kFreshYeast, kEgg},
                   {"fold", "turn"},
                   {"rough puff"},
                   {{"fat", "flour", 0.55, 1.05}, {"water", "flour", 0.3, 0.7}}});
  rules.push_back({"flaky",
                   "flaky pastry",
                   {kAnyFlour, kAnyFat, {kWater}},
                   {kSalt, kAcid},
                   {kSugar, kYeast, kFreshYeast, kEgg},
                   {"fold", "turn"},
                   {"flaky"},
                   {{"fat", "flour", 0.55, 0.9}, {"water", "flour", 0.3, 0.7}}});
  rules.push_back({"suet_pastry",
                   "suet pastry",
                   {kAnyFlour, {kFat}},
                   {kWater, kMilk, kSalt, kBakingPowder},
                   {kSugar, kYeast, kEgg},
                   {"suet"},
                   {"suet", "dumpling", "suet pudding", "roly-poly"},
                   {{"fat", "flour", 0.3, 0.7}}});
  rules.push_back({"hot_water_crust",
                   "hot-water crust",
                   {kAnyFlour, {kFat}, {kWater, kMilk}},
                   {kSalt},
                   {kSugar, kYeast, kBakingPowder},
                   {"boil", "hot water", "raise", "boiling"},
                   {"hot-water crust", "hot water crust", "raised pie", "pork pie"},
                   {{"fat", "flour", 0.2, 0.5}, {"water+milk", "flour", 0.25, 0.55}}});
  rules.push_back({"choux",
                   "choux pastry",
                   {kAnyFlour, kAnyFat, {kWater, kMilk}, kEggs},
                   {kSalt, kSugar},
                   {kYeast, kBakingPowder, kOats},
                   {"leaves the pan", "leaves the side", "shoot the flour", "panada", "pipe",
                    "choux", "beat the eggs"},
                   {"choux", "eclair", "profiterole"},
                   {{"water+milk", "flour", 1.4, 2.8},
                    {"egg", "flour", 0.8, 2.2},
                    {"fat", "flour", 0.4, 1.2}}});
}

void add_doughs(std::vector<Rule>& rules) {
  const Roles liquid = {kWater, kMilk, kYogurt, kJuice};
  const Roles leaven = {kYeast, kFreshYeast};
  rules.push_back({"lean_bread",
                   "lean bread dough",
                   {kAnyFlour, leaven, liquid},
                   {kSalt, kFat, kOil, kNuts, kOats, kSugar, kSyrup},
                   {kEgg},
                   {"knead", "prove", "proof"},
                   {"bread", "roll", "loaf", "baguette", "focaccia"},
                   {{"water+milk", "flour", 0.45, 0.9},
                    {"fat", "flour", 0, 0.08},
                    {"sugar+syrup", "flour", 0, 0.06}}});
  rules.push_back({"enriched_bread",
                   "enriched bread dough",
                   {kAnyFlour, leaven, liquid, kAnyFat},
                   {kSalt, kEgg, kSugar, kSyrup, kDriedFruit, kFlavour},
                   {},
                   {"knead", "prove", "proof"},
                   {"bun", "enriched", "brioche", "teacake", "chelsea", "iced", "plait", "sweet"},
                   {{"fat", "flour", 0.06, 0.6}, {"sugar+syrup+egg", "flour", 0.04, 1}}});
  rules.push_back({"pizza_dough",
                   "pizza dough",
                   {kAnyFlour, leaven, liquid},
                   {kSalt, kOil, kSugar},
                   {kEgg, kFat},
                   {"knead", "stretch"},
                   {"pizza", "calzone"},
                   {{"water+milk", "flour", 0.45, 0.85}}});
  rules.push_back({"soda_bread",
                   "soda bread",
                   {kAnyFlour, {kBicarbonate}, {kYogurt, kMilk}},
                   {kSalt, kOats, kFat, kAcid, kWater},
                   {kYeast, kEgg, kSugar, kSyrup},
                   {"cross", "bring together"},
                   {"soda bread"},
                   {{"milk+yogurt+water", "flour", 0.5, 1}}});
  rules.push_back({"scones",
                   "scone dough",
                   {kAnyFlour, {kFat}, {kMilk, kYogurt, kWater}, kRaising},
                   {kSugar, kDriedFruit, kCheese, kSalt, kFlavour, kEgg, kFruit},
                   {kYeast, kOats},
                   {"rub", "cut"},
                   {"scone"},
                   {{"fat", "flour", 0.1, 0.4}, {"milk+yogurt+water+egg", "flour", 0.4, 0.9}}});
  rules.push_back({"flatbread",
                   "flatbread dough",
                   {kAnyFlour},
                   {kWater, kYogurt, kMilk, kOil, kFat, kSalt, kFlavour},
                   {kSugar, kEgg, kBicarbonate},
                   {"knead", "roll", "griddle"},
                   {"flatbread", "chapati", "roti", "naan", "flat bread", "breads"},
                   {{"water+milk+yogurt", "flour", 0.4, 0.9}, {"fat", "flour", 0, 0.2}}});
  rules.push_back({"fresh_pasta",
                   "fresh pasta",
                   {kAnyFlour, kEggs},
                   {kSalt, kOil, kWater},
                   {kFat, kSugar, kMilk, kBakingPowder, kYeast},
                   {"knead", "roll", "rest"},
                   {"pasta", "tagliatelle", "ravioli", "noodle"},
                   {{"egg", "flour", 0.4, 0.8}}});
}

void add_cakes(std::vector<Rule>& rules) {
  const Roles base = {kFlour, kSelfRaisingFlour, kPolenta};
  rules.push_back(
      {"creamed_cake",
       "creamed cake",
       {base, kAnyFat, kSweet, kEggs},
       {kBakingPowder, kMilk, kCocoa, kNuts, kFlavour, kSalt, kDriedFruit, kChocolate, kCornflour},
       {kYeast, kWater, kOats},
       {"cream butter", "cream the", "creaming", "cream together", "cream fat", "all in one",
        "all-in-one", "beat everything", "until pale"},
       {"victoria", "sponge", "cupcake", "fairy cake", "madeira", "creamed", "cake", "traybake"},
       {{"fat", "flour+nuts+polenta", 0.6, 1.5},
        {"sugar+syrup", "flour+nuts+polenta", 0.55, 1.6},
        {"egg", "flour+nuts+polenta", 0.45, 1.5}}});
  rules.push_back(
      {"whisked_sponge",
       "whisked sponge",
       {kEggs, {kSugar}, kAnyFlour},
       {kCocoa, kFlavour, kCornflour},
       {kMilk, kWater, kOil, kYeast},
       {"whisk", "trail", "ribbon", "fold"},
       {"swiss roll", "whisked", "sponge", "flan", "genoese"},
       {{"sugar", "egg", 0.3, 0.8}, {"flour+cornflour", "egg", 0.3, 0.8}, {"fat", "egg", 0, 0.3}}});
  rules.push_back({"rubbed_in_cake",
                   "rubbed-in cake",
                   {kAnyFlour, {kFat}, {kSugar}, kRaising},
                   {kEgg, kMilk, kDriedFruit, kFlavour, kNuts, kFruit},
                   {kYeast, kWater, kSyrup},
                   {"rub"},
                   {"rock", "bun", "fruit cake", "rubbed", "cake"},
                   {{"fat", "flour", 0.25, 0.65},
                    {"sugar", "flour", 0.25, 0.7},
                    {"milk+water", "flour", 0, 0.3}}});
  rules.push_back({"melted_cake",
                   "melted cake",
                   {{kFlour, kSelfRaisingFlour, kOats}, kAnyFat, {kSyrup}},
                   {kSugar, kEgg, kMilk, kBicarbonate, kBakingPowder, kFlavour, kDriedFruit},
                   {kYeast},
                   {"melt"},
                   {"gingerbread", "parkin", "melted", "sticky", "ginger cake", "flapjack"},
                   {{"sugar+syrup", "flour+oats", 0.4, 1.6}}});
  rules.push_back({"muffins",
                   "muffin batter",
                   {kAnyFlour, {kMilk, kYogurt, kWater}, kEggs, kAnyFat, kRaising},
                   {kSugar, kSyrup, kFruit, kDriedFruit, kChocolate, kCocoa, kFlavour, kCheese,
                    kVegetable, kNuts, kSalt},
                   {kYeast},
                   {"stir until just", "just mixed", "lumpy", "wet into", "into the dry"},
                   {"muffin"},
                   {{"milk+yogurt+egg", "flour", 0.6, 1.5}}});
  rules.push_back({"shortbread",
                   "shortbread",
                   {kAnyFlour, {kFat}, {kSugar}},
                   {kPolenta, kFlavour, kSalt, kChocolate, kDriedFruit, kNuts},
                   {kEgg, kMilk, kWater, kBakingPowder, kBicarbonate, kYeast, kOats, kSyrup},
                   {"rub", "press", "prick", "cream"},
                   {"shortbread", "biscuit", "cookie"},
                   {{"fat", "flour", 0.45, 0.95}, {"sugar", "flour", 0.2, 0.55}}});
  rules.push_back({"crumble",
                   "crumble topping",
                   {kAnyFlour, {kFat}, {kSugar}},
                   {kOats, kNuts, kFlavour},
                   {kEgg, kMilk, kWater, kYeast, kBakingPowder},
                   {"rub", "scatter", "sand", "topping"},
                   {"crumble"},
                   {{"fat", "flour+oats", 0.3, 0.85}}});
}

void add_sauces(std::vector<Rule>& rules) {
  const auto roux = [&](std::string_view key, std::string_view name, double least, double most,
                        std::vector<std::string_view> names) {
    rules.push_back(
        {key,
         name,
         {{kFlour}, kAnyFat, {kMilk, kStock, kCream}},
         {kCheese, kSalt, kFlavour, kMilk, kStock, kCream},
         {kSugar, kEgg, kYeast, kBakingPowder},
         {"roux", "sauce", "stir in the flour", "until it boils", "thick", "beating smooth"},
         std::move(names),
         {{"flour", "milk+stock+cream", least, most}, {"fat", "flour", 0.5, 1.8}}});
  };
  roux("pouring_sauce", "pouring sauce (roux)", 0.02, 0.064, {"pouring sauce", "parsley sauce"});
  roux("coating_sauce", "coating sauce (roux)", 0.0641, 0.116,
       {"coating", "coats", "macaroni", "lasagne", "cauliflower cheese", "white sauce",
        "cheese sauce", "bechamel"});
  roux("binding_sauce", "binding sauce (roux)", 0.1161, 0.27,
       {"panada", "binding", "croquette", "souffle"});
  const auto blended = [&](std::string_view key, std::string_view name, double least, double most) {
    rules.push_back({key,
                     name,
                     {{kCornflour}, {kMilk, kStock, kWater, kJuice}},
                     {kSugar, kFlavour, kEggYolk, kAcid, kYogurt},
                     {kFlour, kYeast},
                     {"blend", "slake", "thick", "sauce", "boil"},
                     {"custard", "sauce", "stir-fry", "sweet and sour", "blancmange"},
                     {{"cornflour", "milk+stock+water+juice", least, most}}});
  };
  blended("slurry", "pouring sauce blended with cornflour", 0.01, 0.05);
  blended("blended_sauce", "coating sauce blended with cornflour", 0.0501, 0.15);
  rules.push_back({"gravy",
                   "gravy",
                   {{kFlour, kCornflour}, {kStock}},
                   {kFat, kOil, kMeat, kFlavour, kSalt, kWater},
                   {kMilk, kSugar, kEgg, kYeast},
                   {"gravy", "pan juices", "dripping"},
                   {"gravy"},
                   {{"flour+cornflour", "stock+water", 0.02, 0.1}}});
  rules.push_back({"mayonnaise",
                   "mayonnaise",
                   {{kEggYolk, kEgg}, {kOil}},
                   {kAcid, kFlavour, kSalt},
                   {kFlour, kMilk, kSugar, kSelfRaisingFlour},
                   {"drop by drop", "whisk", "drip", "emuls"},
                   {"mayonnaise", "aioli"},
                   {{"oil", "egg", 2, 20}}});
  rules.push_back({"hollandaise",
                   "hollandaise",
                   {{kEggYolk}, {kFat}},
                   {kAcid, kSalt, kFlavour, kWater},
                   {kFlour, kSugar, kMilk},
                   {"whisk", "over"},
                   {"hollandaise"},
                   {{"fat", "egg", 2, 8}}});
  rules.push_back({"vinaigrette",
                   "vinaigrette",
                   {{kOil}, {kAcid}},
                   {kSalt, kFlavour, kSugar, kSyrup},
                   {kFlour, kMilk, kEggYolk, kEgg},
                   {"shake", "whisk", "dress"},
                   {"vinaigrette", "dressing", "salad"},
                   {{"oil", "acid", 1, 6}}});
}

void add_batters_and_eggs(std::vector<Rule>& rules) {
  const auto batter = [&](std::string_view key, std::string_view name,
                          std::vector<std::string_view> method, std::vector<std::string_view> names,
                          std::vector<AmountWindow> windows) {
    rules.push_back({key,
                     name,
                     {kAnyFlour, {kMilk, kWater, kJuice, kYogurt}},
                     {kEgg, kSalt, kOil, kFat, kSugar, kBakingPowder, kBicarbonate, kCornflour,
                      kFlavour, kWater},
                     {kYeast},
                     std::move(method),
                     std::move(names),
                     std::move(windows)});
  };
  batter("pancake_batter", "pancake batter", {"batter", "pour", "pancake"},
         {"pancake", "crepe", "galette"},
         {{"milk+water", "flour", 1.7, 3.5}, {"egg", "flour", 0.3, 1.3}});
  batter("batter_pudding", "batter pudding",
         {"batter", "hot fat", "smoking", "hot oil", "very hot"},
         {"batter pudding", "yorkshire", "toad", "popover"},
         {{"milk+water", "flour", 1.5, 3.2}, {"egg", "flour", 0.7, 2.3}});
  batter("coating_batter", "coating batter", {"batter", "dip"},
         {"battered", "coating batter", "tempura", "fritter"},
         {{"milk+water+juice", "flour+cornflour", 0.9, 1.9}});
  batter("drop_scones", "drop scones", {"batter", "drop", "griddle", "spoonful"},
         {"drop scone", "scotch pancake", "griddle"},
         {{"milk+yogurt", "flour", 0.8, 1.8}, {"egg", "flour", 0.1, 0.8}});
  const auto custard = [&](std::string_view key, std::string_view name, Roles eggs,
                           std::vector<std::string_view> method,
                           std::vector<std::string_view> names, AmountWindow window) {
    rules.push_back({key,
                     name,
                     {std::move(eggs), {kMilk, kCream}},
                     {kSugar, kFlavour, kCheese, kSalt, kVegetable, kMeat, kFish, kMilk, kCream},
                     {kFlour, kSelfRaisingFlour, kBakingPowder, kCornflour},
                     std::move(method),
                     std::move(names),
                     {window}});
  };
  custard(
      "baked_custard", "baked custard", {kEgg}, {"strain", "water bath", "bake", "custard"},
      {"baked custard", "custard tart", "egg custard", "creme caramel", "bread and butter pudding"},
      {"egg", "milk+cream", 0.2, 0.75});
  custard("pouring_custard", "pouring custard", {kEggYolk}, {"back of the spoon", "stir", "coats"},
          {"custard", "creme anglaise"}, {"egg", "milk+cream", 0.06, 0.4});
  custard("quiche_filling", "quiche filling", {kEgg}, {"beat", "pour", "filling"},
          {"quiche", "flan"}, {"egg", "milk+cream", 0.25, 1.2});
  rules.push_back({"meringue",
                   "meringue",
                   {{kEggWhite}, {kSugar}},
                   {kAcid, kFlavour, kCornflour},
                   {kFlour, kFat},
                   {"stiff", "whisk"},
                   {"meringue", "pavlova"},
                   {{"sugar", "egg", 0.8, 3}}});
  rules.push_back({"crumb_coat",
                   "egg and crumb coating",
                   {{kCrumbs}, {kEgg}, {kFlour}},
                   {kSalt, kFlavour},
                   {kSugar, kMilk},
                   {"coat", "crumb"},
                   {"fishcake", "goujon", "nugget", "schnitzel", "coated"},
                   {}});
}

void add_set_and_cold(std::vector<Rule>& rules) {
  rules.push_back({"jelly",
                   "gelatine jelly",
                   {{kGelatine}},
                   {kWater, kJuice, kFruit, kSugar, kAcid, kFlavour, kMilk},
                   {kCream, kYogurt, kSoftCheese, kEgg, kEggWhite},
                   {"dissolve", "set", "melt"},
                   {"jelly"},
                   {}});
  rules.push_back({"mousse",
                   "cold soufflé or mousse",
                   {{kGelatine}, {kCream, kYogurt, kEggWhite, kEgg}},
                   {kFruit, kSugar, kAcid, kFlavour, kWater, kJuice, kChocolate, kMilk, kEggYolk},
                   {kSoftCheese},
                   {"fold", "whip", "set"},
                   {"mousse", "cold souffle"},
                   {}});
  rules.push_back({"cheesecake",
                   "set cheesecake filling",
                   {{kGelatine}, {kSoftCheese}},
                   {kCream, kYogurt, kSugar, kAcid, kFlavour, kWater, kFruit, kJuice, kEgg},
                   {},
                   {"beat", "fold", "whip", "set", "chill"},
                   {"cheesecake"},
                   {}});
  rules.push_back({"soft_cheese",
                   "soft cheese",
                   {{kMilk}, {kAcid}},
                   {kSalt},
                   {kFlour, kSugar, kEgg},
                   {"curd", "whey"},
                   {"soft cheese", "paneer", "curd cheese"},
                   {}});
  const std::vector<Role> fruit_or_veg = {kFruit, kVegetable};
  rules.push_back({"jam",
                   "jam",
                   {{kFruit}, {kSugar}},
                   {kAcid, kWater, kOtherSetting, kFlavour},
                   {kFlour, kGelatine, kMilk, kCream, kEgg},
                   {"setting point", "rolling boil", "jar", "saucer"},
                   {"jam"},
                   {{"sugar", "fruit", 0.4, 1.8}}});
  rules.push_back({"marmalade",
                   "marmalade",
                   {{kFruit}, {kSugar}, {kWater}},
                   {kAcid, kFlavour},
                   {kFlour, kGelatine, kMilk},
                   {"peel", "setting point", "jar", "saucer"},
                   {"marmalade"},
                   {{"water", "fruit", 1, 5}}});
  rules.push_back({"chutney",
                   "chutney",
                   {fruit_or_veg, {kAcid}, {kSugar}},
                   {kDriedFruit, kFlavour, kSalt, kVegetable, kFruit},
                   {kFlour, kMilk, kOil},
                   {"simmer", "thick", "jar"},
                   {"chutney", "relish"},
                   {{"acid", "vegetable+fruit", 0.15, 1.2}}});
}

void add_grains_and_meat(std::vector<Rule>& rules) {
  rules.push_back({"risotto",
                   "risotto",
                   {{kRice}, {kStock, kWater}},
                   {kFat, kOil, kCheese, kVegetable, kFlavour, kSalt, kJuice},
                   {kSugar},
                   {"ladle", "a little at a time", "stirring"},
                   {"risotto"},
                   {{"stock+water", "rice", 2, 5}}});
  rules.push_back({"rice_absorption",
                   "rice by absorption",
                   {{kRice}},
                   {kWater, kStock, kSalt, kFlavour},
                   {kSugar},
                   {"lid", "absorb", "cover"},
                   {"absorption", "pilau"},
                   {{"water+stock", "rice", 1, 3}}});
  rules.push_back({"couscous",
                   "couscous",
                   {{kCouscous}},
                   {kWater, kStock, kSalt, kFlavour, kOil, kFat},
                   {},
                   {"couscous", "cover", "swell"},
                   {"couscous", "tabbouleh"},
                   {}});
  rules.push_back({"pasta",
                   "boiled pasta",
                   {{kPasta}},
                   {kWater, kSalt},
                   {},
                   {"boil the", "boil pasta", "drain"},
                   {"pasta", "macaroni", "spaghetti", "penne", "bolognese"},
                   {}});
  rules.push_back({"lentils",
                   "lentils cooked down",
                   {{kPulses}, {kWater, kStock}},
                   {kFlavour, kSalt},
                   {},
                   {"lentil", "simmer", "boil"},
                   {"dhal", "dal", "lentil"},
                   {{"water+stock", "pulses", 1.5, 6}},
                   "lentil"});
  rules.push_back({"porridge",
                   "porridge",
                   {{kOats}, {kMilk, kWater}},
                   {kSalt, kSyrup, kSugar, kMilk},
                   {kFlour, kFat},
                   {"stir", "simmer", "porridge"},
                   {"porridge"},
                   {{"milk+water", "oats", 3, 12}}});
  rules.push_back({"burger_mix",
                   "burger or stuffing mix",
                   {{kMeat, kMeatFree}},
                   {kCrumbs, kEgg, kSalt, kFlavour, kFruit},
                   {},
                   {"burger", "shape", "press", "meatball", "patties"},
                   {"burger", "meatball", "kofta", "stuffing", "koftas"},
                   {},
                   "mince"});
}

}  // namespace

const std::vector<Rule>& rules() {
  static const std::vector<Rule> kRules = [] {
    std::vector<Rule> out;
    add_pastries(out);
    add_doughs(out);
    add_cakes(out);
    add_sauces(out);
    add_batters_and_eggs(out);
    add_set_and_cold(out);
    add_grains_and_meat(out);
    return out;
  }();
  return kRules;
}

const Rule* rule_of(std::string_view key) {
  const auto& all = rules();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const Rule& r) { return r.key == key; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace kitchen
