#include "kitchen/reading/read_method.h"

#include "kitchen/reading/order_weights.h"
#include "kitchen/reading/step_facts.h"
#include "kitchen/reading/step_order.h"
#include "kitchen/reading/step_pieces.h"
#include "kitchen/reading/step_view.h"

namespace kitchen {

std::vector<Work> read_steps(DishDraft& draft, const std::vector<MethodLine>& lines,
                             const IngredientWords& words, const TaskTimes& times) {
  const std::vector<Sentence> sentences = sentences_of(lines);
  std::vector<std::size_t> aside;
  const std::vector<StepPieces> steps = gathered(sentences, aside);
  for (const std::size_t s : aside)
    draft.unread.push_back({sentences[s].line_number, sentences[s].text});
  SoFar so_far;
  draft.method.clear();
  for (const StepPieces& pieces : steps)
    draft.method.push_back(step_of(pieces, sentences, draft, words, times, so_far));
  return std::move(so_far.works);
}

void read_method(DishDraft& draft, const std::vector<MethodLine>& lines, const Foods& foods,
                 const TaskTimes& times) {
  const IngredientWords words(draft.ingredients, foods);
  const std::vector<Work> works = read_steps(draft, lines, words, times);
  finish_hygiene(draft, works, words);
  order_steps(draft, works, words, order_weights());
  finish_rings_in_order(draft, works);
  finish_vessels_in_order(draft, works);
  finish_hygiene_in_order(draft, works, words);
}

}  // namespace kitchen
