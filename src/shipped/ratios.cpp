#include "shipped/ratios.h"

#include "shipped/sound.h"
#include "shipped/tables.h"

namespace shipped {

const kitchen::Preparations& ratios() {
  static const kitchen::Preparations kRatios = sound(
      kitchen::read_preparations(table("ratios.csv"), "ratios.csv"));
  return kRatios;
}

}  // namespace shipped
