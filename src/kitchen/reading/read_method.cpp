#include "kitchen/reading/read_method.h"

#include "kitchen/reading/step_facts.h"
#include "kitchen/reading/step_order.h"
#include "kitchen/reading/step_pieces.h"
#include "kitchen/reading/step_view.h"

namespace kitchen {

void read_method(DishDraft& draft, const std::vector<MethodLine>& lines, const Foods& foods,
                 const TaskTimes& times) {
  const std::vector<Sentence> sentences = sentences_of(lines);
  std::vector<std::size_t> aside;
  const std::vector<StepPieces> steps = gathered(sentences, aside);
  for (const std::size_t s : aside)
    draft.unread.push_back({sentences[s].line_number, sentences[s].text});
  const IngredientWords words(draft.ingredients, foods);
  SoFar so_far;
  draft.method.clear();
  for (const StepPieces& pieces : steps)
    draft.method.push_back(step_of(pieces, sentences, draft, words, times, so_far));
  finish_hygiene(draft, so_far.works, words);
  order_steps(draft, so_far.works, words);
  finish_hygiene_in_order(draft, so_far.works, words);
}

}  // namespace kitchen
