// A small week of invented dishes and packs over the shipped foods, for the larder's tests.
#pragma once

#include <fstream>
#include <sstream>
#include <string>

#include "../../support/shipped_foods.h"
#include "larder/cost.h"
#include "larder/order.h"

namespace tests {

inline std::string text_of(const std::string& path) {
  std::ifstream file(std::string(BENCHBELL_SOURCE_DIR) + "/" + path, std::ios::binary);
  std::stringstream text;
  text << file.rdbuf();
  return text.str();
}

/// Files of the project, by their paths from its top.
inline base::Result<std::string> load(const std::string& path) { return text_of(path); }

inline base::Date day(const char* text) { return *base::date_in(text); }

inline kitchen::Ingredient line(const std::string& name, double amount, const std::string& unit) {
  kitchen::Ingredient out;
  out.name = name;
  out.amount = amount;
  out.unit = unit;
  return out;
}

inline larder::WeekLesson lesson(const std::string& title, const char* date, int sets,
                                 std::vector<kitchen::Ingredient> lines) {
  kitchen::Dish dish;
  dish.name = "Dish of " + title;
  dish.ingredients = std::move(lines);
  larder::WeekLesson out;
  out.title = out.class_name = title;
  out.date = day(date);
  out.pupils = 2 * sets;
  out.dishes.push_back({dish, kitchen::Ratio(sets), {}, 0});
  return out;
}

inline larder::PriceList prices(const std::string& rows) {
  auto read = larder::read_prices(
      "food,supplier,pack,size,price,usable,loose,keeps_days,opened_days\n" + rows, "prices.csv",
      shipped_foods());
  return std::move(read).value();
}

inline larder::Stock stores(const std::string& rows) {
  auto read = larder::read_stock("food,amount,use_by,opened,where\n" + rows, "stock.csv",
                                 shipped_foods());
  return std::move(read).value();
}

/// A week, its needs and its order, kept together because the order refers to them.
struct Made {
  larder::Week week;
  larder::PriceList prices;
  std::vector<larder::StockLot> stock;
  larder::Needs needs;
  larder::Order order;

  larder::OrderInput in() const { return {week, needs, prices, stock, shipped_foods()}; }
  void plan(const char* today = "2026-11-12") {
    needs = larder::needs_of(week, shipped_foods());
    larder::OrderWish wish;
    wish.today = day(today);
    wish.gap = 0;
    order = larder::plan_order(in(), wish);
  }
};

}  // namespace tests
