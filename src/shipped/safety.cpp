#include "shipped/safety.h"

#include "shipped/foods.h"
#include "shipped/sound.h"
#include "shipped/tables.h"

namespace shipped {

const safety::Hidden& hidden() {
  static const safety::Hidden kHidden = sound(
      safety::read_hidden(table("hidden.csv"), "hidden.csv", foods()));
  return kHidden;
}

const safety::Substitutes& substitutes() {
  static const safety::Substitutes kSubstitutes = sound(
      safety::read_substitutes(table("substitutes.csv"), "substitutes.csv", foods()));
  return kSubstitutes;
}

}  // namespace shipped
