/** What a person answers to a question about pasted text, put into the dish. A question names what it is about in words:
 *  "portions", "step 2 heat", "step 2 minutes", "ingredient 3". */
import { runsByItself, type Dish } from './dish';

export interface Asked {
  says: string;
  about?: string | undefined;
  choices?: string[] | undefined;
}

/** The name in quotes a question asks about: steps the program added since keep the numbers from being sure. */
const quotedIn = (says: string): string | undefined => /['‘“"](.+?)['’”"]/.exec(says)?.[1];

/** The dish with the answer in it, or null where the answer cannot be put in and the text itself must say it. */
export function answered(dish: Dish, question: Asked, choice: string): Dish | null {
  const about = question.about ?? '';
  const number = Number(/\d+(\.\d+)?/.exec(choice)?.[0] ?? NaN);
  if (about === 'portions') return number > 0 ? { ...dish, portions: Math.round(number) } : null;
  const [what, nth, part] = about.split(' ');
  if (what === 'step' && (part === 'heat' || part === 'minutes')) {
    const name = quotedIn(question.says);
    const at = dish.method.findIndex((step) => step.short === name);
    const step = dish.method[at];
    if (!step || !(number > 0)) return null;
    const next =
      part === 'heat'
        ? { ...step, heat: { ...step.heat, celsius: number } }
        : { ...step, minutes: number, attention: runsByItself(step) ? step.attention : 'leave' };
    return { ...dish, method: dish.method.map((one, i) => (i === at ? next : one)) };
  }
  if (what === 'ingredient') {
    const at = Number(nth) - 1;
    const line = dish.ingredients[at];
    if (!line) return null;
    // "none of these": the name stays as written and no figures are taken from a wrong food.
    const amount = /^(\d+(?:\.\d+)?) ?(\p{L}+)?$/u.exec(choice);
    const next = { ...line };
    if (amount) {
      next.amount = Number(amount[1]);
      if (amount[2]) next.unit = amount[2];
    } else {
      delete next.food;
      if (question.choices?.at(-1) !== choice) next.name = choice;
    }
    return { ...dish, ingredients: dish.ingredients.map((one, i) => (i === at ? next : one)) };
  }
  return null;
}
