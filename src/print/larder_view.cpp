#include "print/larder_view.h"

#include "base/text.h"

namespace print {

std::string nothing_bought_words(const OrderView& view) {
  if (view.order.shortfalls.empty()) return "Nothing needs to be bought.";
  if (view.count_down.ahead.empty() && !view.count_down.gone.empty())
    return "Too late to order: the last day to order for this week is gone. What is short has to "
           "be "
           "bought by hand, or the lesson changed.";
  return "Nothing can be ordered of what is short.";
}

std::string food_name(const OrderView& view, int food) {
  return view.in.needs.foods[static_cast<std::size_t>(food)].name;
}

std::string lesson_name(const OrderView& view, int lesson) {
  const larder::WeekLesson& at = view.in.week.lessons[static_cast<std::size_t>(lesson)];
  return base::say(at.title, " (", larder::day_text(at.date), ")");
}

const larder::Measure& measure_of(const OrderView& view, int food) {
  return view.in.needs.foods[static_cast<std::size_t>(food)].measure;
}

const larder::Pack& pack_of(const OrderView& view, const larder::OrderLine& line) {
  return view.in.prices.packs[static_cast<std::size_t>(line.pack)];
}

std::string pack_words(const larder::Pack& pack) { return larder::pack_text(pack); }

}  // namespace print
