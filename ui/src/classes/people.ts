/** A class as its document has it (src/desk/class_list.h), and the changes a page makes to it: plain values in, plain
 *  values out. Pupils are known by their names, so whoever renames one must take the seating rules along. */

export type Reach = 'may not eat' | 'may not touch' | 'not in the room';
export interface Need {
  /** An allergen word or a diet word. */
  need: string;
  reach?: Reach;
}
export const limits = ['low bench', 'not at the hob alone', 'left-handed', 'near the teacher'] as const;
export type Limit = (typeof limits)[number];
export interface Pupil {
  name: string;
  /** Minutes are multiplied by it, 0.5 to 2; left out = 1. */
  pace?: number;
  needs?: Need[];
  limits?: Limit[];
}
export type Together = 'singles' | 'pairs' | 'threes';
export interface Class {
  kind: 'class';
  version: 1;
  name: string;
  /** 1 to 13. */
  year: number;
  in?: Together;
  pupils: Pupil[];
  never_together?: [string, string][];
  always_together?: [string, string][];
}

export const reaches: readonly Reach[] = ['may not eat', 'may not touch', 'not in the room'];
/** The fourteen of Annex II of Regulation (EU) No 1169/2011, by the files' words. */
export const allergens = [
  'celery',
  'gluten',
  'crustaceans',
  'eggs',
  'fish',
  'lupin',
  'milk',
  'molluscs',
  'mustard',
  'nuts',
  'peanuts',
  'sesame',
  'soya',
  'sulphites',
] as const;
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
] as const;
export const mostPupils = 60;

/** "slower" as a class list says it; the figure stands beside it. */
export const paces = [1.5, 1.25, 1.1, 1, 0.9, 0.8] as const;

export const newClass = (name: string, year: number): Class => ({
  kind: 'class',
  version: 1,
  name,
  year,
  in: 'pairs',
  pupils: [],
});

/** Names typed or pasted one a line, numbering and bullets taken off; names that are there already are given back. */
export function addNames(group: Class, text: string): { group: Class; twice: string[]; tooMany: number } {
  const there = new Set(group.pupils.map((pupil) => pupil.name));
  const pupils = [...group.pupils];
  const twice: string[] = [];
  let tooMany = 0;
  for (const line of text.split(/\r?\n/)) {
    const name = line
      .replace(/^\s*(?:\d+\s*[.)]|[-*•])\s*/, '')
      .replace(/\s+/g, ' ')
      .trim()
      .slice(0, 60);
    if (!name) continue;
    if (there.has(name)) twice.push(name);
    else if (pupils.length >= mostPupils) tooMany += 1;
    else {
      there.add(name);
      pupils.push({ name });
    }
  }
  return { group: { ...group, pupils }, twice, tooMany };
}

type Pairs = [string, string][] | undefined;
const tidy = (pairs: Pairs): Pairs => (pairs && pairs.length > 0 ? pairs : undefined);

/** Another name for a pupil, in the list and in the rules about who sits with whom. */
export function rename(group: Class, from: string, to: string): Class {
  const swap = (pairs: Pairs): Pairs =>
    pairs?.map(([a, b]) => [a === from ? to : a, b === from ? to : b] as [string, string]);
  return {
    ...group,
    pupils: group.pupils.map((pupil) => (pupil.name === from ? { ...pupil, name: to } : pupil)),
    never_together: swap(group.never_together),
    always_together: swap(group.always_together),
  };
}

/** Without a pupil, and without the rules that name them. */
export function without(group: Class, name: string): Class {
  const rest = (pairs: Pairs): Pairs => tidy(pairs?.filter((pair) => !pair.includes(name)));
  return {
    ...group,
    pupils: group.pupils.filter((pupil) => pupil.name !== name),
    never_together: rest(group.never_together),
    always_together: rest(group.always_together),
  };
}

/** A pupil without empty fields: what is usual is not written down. */
export function lean(pupil: Pupil): Pupil {
  const out: Pupil = { name: pupil.name };
  if (pupil.pace !== undefined && pupil.pace !== 1) out.pace = pupil.pace;
  if (pupil.needs && pupil.needs.length > 0) out.needs = pupil.needs;
  if (pupil.limits && pupil.limits.length > 0) out.limits = pupil.limits;
  return out;
}

export const samePair = (a: [string, string], b: [string, string]): boolean =>
  (a[0] === b[0] && a[1] === b[1]) || (a[0] === b[1] && a[1] === b[0]);
