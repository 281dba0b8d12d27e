/** A class as the page changes it (schemas: a class document). What a pupil may not have is health data: it is shown only
 *  to those who need it, and never printed with a name beside it unless somebody asks for that sheet. */

export interface Need {
  need: string;
  reach: 'may not eat' | 'may not touch' | 'not in the room';
}
export interface Pupil {
  name: string;
  pace?: number;
  needs?: Need[];
  limits?: string[];
  [more: string]: unknown;
}
export interface ClassDoc {
  kind: 'class';
  version: number;
  name: string;
  year?: number;
  in?: 'singles' | 'pairs' | 'threes';
  pupils: Pupil[];
  never_together?: [string, string][];
  always_together?: [string, string][];
  [more: string]: unknown;
}

export const reaches: Need['reach'][] = ['may not eat', 'may not touch', 'not in the room'];
/** The fourteen allergens of Annex II to Regulation (EU) 1169/2011, as the program's files name them. */
export const allergens = [
  'celery',
  'crustaceans',
  'eggs',
  'fish',
  'gluten',
  'lupin',
  'milk',
  'molluscs',
  'mustard',
  'nuts',
  'peanuts',
  'sesame',
  'soya',
  'sulphites',
];
export const diets = [
  'vegetarian',
  'vegan',
  'halal',
  'kosher-style',
  'no pork',
  'no beef',
  'no alcohol',
  'no gelatine',
  'no animal rennet',
  'coeliac',
];
export const limits = ['low bench', 'not at the hob alone', 'left-handed', 'near the teacher'];

/** Pace in words and back: minutes are multiplied by the figure. */
export const paces = { quicker: 0.9, usual: 1, slower: 1.15, 'much slower': 1.35 } as const;
export type Pace = keyof typeof paces;
export function paceWord(pace: number | undefined): Pace {
  const value = pace ?? 1;
  const words = Object.keys(paces) as Pace[];
  return words.reduce((best, word) => (Math.abs(paces[word] - value) < Math.abs(paces[best] - value) ? word : best));
}

/** Renames a pupil wherever the class names them. */
export function renamed(doc: ClassDoc, index: number, name: string): ClassDoc {
  const was = doc.pupils[index]?.name;
  const rename = (pairs: [string, string][] | undefined): [string, string][] | undefined =>
    pairs?.map(([a, b]) => [a === was ? name : a, b === was ? name : b]);
  return {
    ...doc,
    pupils: doc.pupils.map((pupil, i) => (i === index ? { ...pupil, name } : pupil)),
    never_together: rename(doc.never_together),
    always_together: rename(doc.always_together),
  };
}

/** Takes a pupil out, and every pair that named them. */
export function without(doc: ClassDoc, index: number): ClassDoc {
  const gone = doc.pupils[index]?.name;
  const keep = (pairs: [string, string][] | undefined): [string, string][] | undefined =>
    pairs?.filter(([a, b]) => a !== gone && b !== gone);
  return {
    ...doc,
    pupils: doc.pupils.filter((_, i) => i !== index),
    never_together: keep(doc.never_together),
    always_together: keep(doc.always_together),
  };
}
