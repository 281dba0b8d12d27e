/** The question a page asks when two people changed one document. parts/Clash.svelte shows it. */
import type { Schemas } from './client';
import { merge, settle, type Difference, type Json } from './merge';

type Document = Schemas['Document'];
/** The joined body to write; or keep theirs; or go back to the page first. */
export type Settled = Json | 'theirs' | 'look again';

export interface Question {
  theirs: Document;
  yours: Json;
  joined: Json;
  clashes: Difference[];
  answer: (settled: Settled) => void;
}

class Asking {
  // Raw: the bodies in it are copied and sent as they are.
  question = $state.raw<Question | null>(null);
}
export const clash = new Asking();

/** Joins what can be joined and asks about the rest; when nothing clashes nobody is asked. */
export function askAboutClash(before: Json, yours: Json, theirs: Document): Promise<Settled> {
  const { body, clashes } = merge(before, yours, theirs.body as Json);
  if (clashes.length === 0) return Promise.resolve(body);
  return new Promise((resolve) => {
    clash.question = {
      theirs,
      yours,
      joined: body,
      clashes,
      answer: (settled) => {
        clash.question = null;
        resolve(settled);
      },
    };
  });
}

/** The joined body with each clash settled as chosen, in the order of `clashes`. */
export function settleAll(question: Question, choices: ('yours' | 'theirs')[]): Json {
  return question.clashes.reduce<Json>(
    (body, difference, i) => (choices[i] === 'yours' ? settle(body, difference.where, difference.yours) : body),
    question.joined,
  );
}
