// Any bytes whatever give a draft: no line is in two places, nothing that is read is out of its
// range, and a page is read or refused with reasons. And any bytes are a table or refused.
#include <cstdint>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <string_view>

#include "base/csv.h"
#include "base/text.h"
#include "kitchen/reading/footprint.h"
#include "kitchen/reading/json_ld.h"
#include "kitchen/reading/layout.h"
#include "kitchen/reading/read_dish_text.h"

namespace {

[[noreturn]] void fail(std::string_view why) {
  std::cerr << "dish_text_fuzz: " << why << '\n';
  std::abort();
}

// A few foods are enough to walk every way through the matcher.
const kitchen::Foods& foods() {
  static const kitchen::Foods kFoods = [] {
    auto read = kitchen::read_foods(
        "key,name,other_names,category,units\n"
        "plain_flour,Plain white flour,flour; plain flour,\"flours, grains, starches\",handful=30\n"
        "egg_whole,\"Hen's egg, whole\",egg; eggs,eggs,each=50\n"
        "thyme_fresh,\"Thyme, fresh\",fresh thyme,herbs spices,sprig=1\n"
        "thyme_dried,\"Thyme, dried\",thyme,herbs spices,\n"
        "lemon,Lemon flesh,lemon,fruit,each=58\n"
        "lemon_juice,\"Lemon juice, fresh\",lemon juice,fruit,each=48\n",
        "foods.csv");
    if (!read) fail("the foods of the test cannot be read");
    return std::move(read).value();
  }();
  return kFoods;
}

void judge(const base::Problems& problems) {
  if (problems.empty()) fail("refused without a reason");
  for (const base::Problem& problem : problems) {
    if (problem.code.empty() || problem.message.empty() || problem.remedy.empty())
      fail("a problem without code, message or remedy");
  }
}

void judge(const kitchen::DishDraft& draft) {
  for (const auto& each : draft.ingredients) {
    if (each.confidence < 0 || each.confidence > 1) fail("a confidence out of range");
    if (each.quantity.value.most < each.quantity.value.least) fail("a range turned round");
    if (!each.food.value.empty() && foods().find(each.food.value) == nullptr)
      fail("an unknown food");
    if (base::not_utf8(each.name) || base::not_utf8(each.preparation)) fail("a broken letter");
  }
  if (draft.portions.value < 1) fail("no portions");
  if (draft.questions.size() > 3) fail("too many questions");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const kitchen::TaskTimes times;
  judge(kitchen::read_dish_text(text, foods(), times));
  const auto page = kitchen::read_json_ld(text, "page.html", foods(), times);
  page ? judge(page.value()) : judge(page.problems());
  const auto footprint = kitchen::read_footprint(text, "Own", 1);
  if (!footprint) judge(footprint.problems());
  const auto table = base::read_csv(text, "table.csv");
  if (!table) {
    judge(table.problems());
  } else {
    for (const auto& row : table.value().rows) {
      if (row.cells.size() != table.value().columns.size()) fail("a row of another width");
    }
  }
  return 0;
}
