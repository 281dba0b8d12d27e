#include "shipped/foods.h"

#include "shipped/sound.h"
#include "shipped/tables.h"

namespace shipped {

const kitchen::Foods& foods() {
  static const kitchen::Foods kFoods = sound(kitchen::read_foods(table("foods.csv"), "foods.csv"));
  return kFoods;
}

}  // namespace shipped
