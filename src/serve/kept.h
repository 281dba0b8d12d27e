// Kept documents as the values that plans and sheets are made from: the store's texts read by the
// readers of the files. What takes long to read is remembered by version.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/problem.h"
#include "desk/class_list.h"
#include "kitchen/foods.h"
#include "kitchen/json_tree.h"
#include "kitchen/lesson.h"
#include "kitchen/parts_read.h"
#include "kitchen/read.h"
#include "kitchen/reading/food_matcher.h"
#include "larder/prices.h"
#include "larder/stock.h"
#include "safety/labels.h"
#include "store/repository.h"

namespace serve {

/// A lesson with the document it was read from.
struct KeptLesson {
  store::Document document;
  kitchen::Lesson lesson;
};

class Kept {
 public:
  explicit Kept(store::Repository& store) : store_(store) {}

  /// Gives the text of "dish/fruit-scones.json", the names under which an export keeps them.
  kitchen::Loader loader();

  /// Problems: store.not_found and those of the readers.
  base::Result<store::Document> document(store::Kind, const std::string& id);
  base::Result<KeptLesson> lesson(const std::string& id);
  base::Result<kitchen::Lesson> lesson_in(const std::string& body, const std::string& id);
  base::Result<std::vector<kitchen::Dish>> dish(const std::string& id);
  /// The versions of a dish with what the table of foods and the labels say of their allergens:
  /// what somebody may cook is chosen by these.
  std::vector<kitchen::Dish> with_food_allergens(std::vector<kitchen::Dish>);
  base::Result<kitchen::Room> room(const std::string& id);
  base::Result<desk::Class> group(const std::string& id);
  /// The school's own house rules; the usual ones when it has none.
  base::Result<kitchen::HouseRules> house_rules();

  /// The shipped foods with the school's own over them, by the newest version of its table.
  std::shared_ptr<const kitchen::Foods> foods();
  /// The names of these foods, sorted for reading dishes: a third of the time of a reading.
  std::shared_ptr<const kitchen::FoodMatcher> food_names();
  std::shared_ptr<const safety::Labels> labels();
  std::shared_ptr<const larder::PriceList> prices();
  std::shared_ptr<const larder::Stock> stock();
  /// 0: there is no such table.
  std::int64_t table_version(const char* id);
  /// How a lesson's document names the school's own house rules; nothing when there are none.
  std::optional<std::string> house_rules_path();
  /// The text of a room or dish of a lesson's document, which stands in it or is named by its path.
  base::Result<std::string> text_of(const kitchen::Node& part);
  /// The school's document, or an empty object.
  kitchen::Node school();

 private:
  struct TableText {
    std::int64_t version = 0;
    std::string text;
  };
  store::Repository& store_;
  kitchen::PartsRead parts_;
  std::mutex mutex_;
  template <class Value>
  struct Cached {
    std::int64_t version = -1;
    std::int64_t foods = -1;
    std::shared_ptr<const Value> value;
  };
  Cached<kitchen::Foods> foods_;
  std::shared_ptr<const kitchen::FoodMatcher> food_names_;  ///< of foods_; null: not asked for yet
  Cached<safety::Labels> labels_;
  Cached<larder::PriceList> prices_;
  Cached<larder::Stock> stock_;

  TableText table(const std::string& id);
  /// Read again when the table or the foods it speaks of have changed.
  template <class Value, class Read>
  std::shared_ptr<const Value> read_table(const char* id, Cached<Value>&, Read);
  std::shared_ptr<const kitchen::Foods> foods_locked();
};

struct DocumentFaults {
  base::Problems wrong;     ///< it cannot be kept
  base::Problems left_out;  ///< rows of a table that are kept but not used, such as a price of a
                            ///< food nobody knows
};
/// What a document's reader says of it. Kinds without a reader of their own only have to be objects
/// with their kind.
DocumentFaults look_at(store::Kind, const std::string& body, Kept&);
/// What a document uses, for the store's links.
std::vector<store::Ref> links_of(store::Kind, const kitchen::Node& body);

}  // namespace serve
