#include "print/chance_words.h"
#include "print/say_parts.h"

namespace print {

void say_chance(Paper& paper, const kitchen::Lesson& lesson, const Answer& answer) {
  const std::optional<Likely> chance = likely(lesson, answer);
  if (!chance) return;
  paper.heading("How likely");
  paper.paragraph(chance->whole);
  for (const std::string& sentence : chance->says) paper.paragraph(sentence);
}

}  // namespace print
