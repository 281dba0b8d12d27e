// A changed dish, said: what to change, what comes of it, or which bound stands in the way.
#pragma once

#include <string>

#include "nutrition/develop.h"

namespace print {

std::string say_developed(const nutrition::DevelopAsked&, const nutrition::Developed&);

}  // namespace print
