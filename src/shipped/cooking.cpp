#include "shipped/cooking.h"

#include "shipped/sound.h"
#include "shipped/tables.h"

namespace shipped {

const nutrition::CookingTables& cooking() {
  static const nutrition::CookingTables kTables = sound(
      nutrition::read_cooking(table("yields.csv"), table("retention.csv")));
  return kTables;
}

}  // namespace shipped
