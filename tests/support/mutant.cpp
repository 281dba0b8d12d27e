// The wrong engine of a BENCHBELL_MUTANTS build. The environment variable BENCHBELL_MUTANT chooses
// what is wrong: "SITE PLACE", the number of the site in scheduler/mutant.h and the place of the
// literal that is left out, counted from 0, or from the end by -1, -2, ...
#include "scheduler/mutant.h"

#include <cstdlib>
#include <iostream>
#include <sstream>

namespace scheduler {
namespace {

struct Mutant {
  int site = -1, place = 0;
  long applied = 0;

  Mutant() {
    const char* chosen = std::getenv("BENCHBELL_MUTANT");
    if (chosen == nullptr) return;
    std::istringstream words(chosen);
    if (!(words >> site >> place)) {
      std::cerr << "BENCHBELL_MUTANT is not \"SITE PLACE\": " << chosen << '\n';
      std::abort();
    }
  }
  // Says whether there was anything to leave out: a mutant that never was cannot be caught.
  ~Mutant() {
    if (site >= 0) std::cerr << "mutant applied " << applied << " times\n";
  }
};

Mutant mutant;

}  // namespace

void spoil(Site site, std::vector<Literal>& literals) {
  if (static_cast<int>(site) != mutant.site) return;
  const int size = static_cast<int>(literals.size());
  const int place = mutant.place >= 0 ? mutant.place : size + mutant.place;
  if (place < 0 || place >= size) return;
  literals.erase(literals.begin() + place);
  ++mutant.applied;
}

}  // namespace scheduler
