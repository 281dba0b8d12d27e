#include "print/chance_words.h"

namespace print {
std::optional<Likely> likely(const kitchen::Lesson&, const Answer&) { return std::nullopt; }
}  // namespace print
