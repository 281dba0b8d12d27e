/** A dish's document as the pages edit it (docs/files.md, schemas/dish.schema.json). Fields that no page shows are kept as
 *  they are. */
import type { Json } from '../api/merge';

export interface After {
  step: string;
  when?: string;
  from?: 'start' | 'end';
  [more: string]: Json | undefined;
}
export type Follow = string | After;

export interface Step {
  id: string;
  do: string;
  short?: string;
  minutes: number | { least: number; most?: number };
  attention?: string | number;
  follows?: Follow[];
  when?: string;
  heat?: { [kind: string]: Json };
  hazard?: string;
  uses?: string[];
  [more: string]: unknown;
}
export interface Ingredient {
  name: string;
  amount?: number;
  unit?: string;
  contains?: string[];
  [more: string]: unknown;
}
export interface Dish {
  kind: 'dish';
  version: number;
  name: string;
  tag?: string;
  portions?: number;
  ingredients: Ingredient[];
  method: Step[];
  cooling_minutes?: number;
  /** Left out: as the hold tells. */
  keep_chilled?: boolean;
  hold?: { kind?: string; in?: string; most_minutes?: number };
  aim?: string;
  key_words?: string[];
  questions?: string[];
  [more: string]: unknown;
}

/** Kept in a fridge once it is cold: as the dish says, else all food but what keeps out of one. */
export const keptChilled = (dish: Dish): boolean =>
  dish.keep_chilled ?? !(dish.hold?.kind === 'keeps' && dish.hold.in !== 'fridge');

export const stepOf = (follow: Follow): string => (typeof follow === 'string' ? follow : follow.step);
/** The words of attention that leave hands free (1 and 2 tenths count as glance and watch). */
export const runsByItself = (step: Step): boolean =>
  step.attention === 'leave' ||
  step.attention === 'glance' ||
  step.attention === 'watch' ||
  (typeof step.attention === 'number' && step.attention <= 2);

export const leastMinutes = (step: Step): number =>
  typeof step.minutes === 'number' ? step.minutes : step.minutes.least;

/** An id that no step has yet, from what it says. */
export function freshId(method: Step[], says: string): string {
  const base =
    says
      .toLowerCase()
      .normalize('NFD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 24)
      .replace(/-+$/, '') || 'step';
  let id = base;
  for (let n = 2; method.some((step) => step.id === id); n += 1) id = `${base}-${n}`;
  return id;
}
