// Checks a proof that no schedule of a project instance is shorter than a bound (or that there is
// none). docs/methods/proof.md describes the text of a proof. Shares nothing with the engine.
#pragma once

#include <istream>
#include <string>

#include "proof_check/instance.h"

namespace proof_check {

struct Result {
  bool accepted = false;
  std::string fault;  ///< why not, with the line
  bool none = false;  ///< proved: no schedule ends by `horizon`
  int bound = 0;      ///< otherwise proved: every schedule that ends by `horizon` takes that long
  int horizon = 0;
  long lemmas = 0, derived = 0;
};

Result check(const Instance& instance, std::istream& proof);

}  // namespace proof_check
