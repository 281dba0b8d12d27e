// Money in whole pence, so that a term of lessons adds up to the penny.
//
// pence_in("£1.20"), pence_in("1,20") and pence_in("120p") are all 120.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/ratio.h"

namespace larder {

using Pence = std::int64_t;

inline constexpr Pence kDearest = 100'000'00;  ///< of one pack; beyond it a slip of the pen is
                                               ///< meant

/// A price as a person writes it: pounds with a point or a comma, with or without the sign, or
/// pence with a "p". Nothing for what is below 0, has parts of a penny or says something else.
std::optional<Pence> pence_in(std::string_view);
/// "£1.20", "-£0.05".
std::string pounds_text(Pence);
/// The same for a share of pence, to the nearest penny, halves away from nothing.
std::string pounds_text(const base::Ratio& pence);

}  // namespace larder
