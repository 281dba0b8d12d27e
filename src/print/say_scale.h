// A scaled dish as it is weighed out, and an order of sets: every amount with what its rounding
// adds, and what does not grow with the amounts.
#pragma once

#include <string>
#include <vector>

#include "larder/scale.h"
#include "larder/scale_times.h"
#include "larder/sets.h"

namespace print {

/// `title` says how it was asked: "for 12 portions".
std::string say_scaled(const kitchen::Dish&, const larder::Scaled&, const std::string& title);
std::string say_sets(const kitchen::Dish&, const larder::SetOrder&);
std::string say_times(const kitchen::Dish&, const std::vector<larder::TimeWarning>&);
std::string say_warnings(const std::vector<std::string>&);

}  // namespace print
