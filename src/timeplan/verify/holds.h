// Finished dishes that wait to be served: from when to when, and in what (rules S3, S4).
#pragma once

#include <vector>

#include "timeplan/verify/case.h"

namespace timeplan::judge {

/// A dish of a cook between ready and served.
struct Waiting {
  int cook = -1;
  int dish = -1;
  int sitting = -1;
  Span span;  ///< from R to V; empty or backwards when served at once or too early
};

/// Is the dish part of the sitting?
bool in_sitting(const kitchen::Sitting&, int dish);
/// Does the sitting serve a dish of that cook which is finished in this lesson?
bool served_in(const Case&, int cook, int sitting);
/// The serve moment the plan gives, the first if there are several.
std::optional<Seconds> serve_moment(const Case&, int cook, int sitting);
/// Does a packed box of the dish wait in the fridge to go home (rule Y12)?
bool chilled(const Case&, int dish);
/// Every dish that is finished and served in this plan.
std::vector<Waiting> all_waiting(const Case&);

}  // namespace timeplan::judge
