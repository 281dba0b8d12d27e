// The words for kinds of tasks in what machines read; one table for writing and reading. Not for
// use outside print/.
#pragma once

#include <array>
#include <string_view>

#include "timeplan/plan.h"

namespace print {

/// In the order of timeplan::TaskKind.
inline constexpr std::array<std::string_view, 17> kTaskKinds = {"apron and hands",
                                                                "collect ingredients",
                                                                "collect equipment",
                                                                "step",
                                                                "hand wash",
                                                                "clean-down",
                                                                "kit wash",
                                                                "full clean",
                                                                "look",
                                                                "store",
                                                                "take out of store",
                                                                "pack",
                                                                "wash up",
                                                                "window",
                                                                "bay look",
                                                                "knives out",
                                                                "knives in"};

}  // namespace print
