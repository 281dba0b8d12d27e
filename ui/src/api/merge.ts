/** Two people changed one document. Finds what each changed since they read it, joins what does not touch, and lists the
 *  rest side by side. Lists whose items carry an `id` or a `name` are joined item by item; other lists are taken whole,
 *  because half of one method and half of another is no method. */

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

export interface Difference {
  /** JSON pointer into the document. */
  where: string;
  /** undefined: not there in that version. */
  before: Json | undefined;
  yours: Json | undefined;
  theirs: Json | undefined;
}

export interface Merged {
  /** Everything that does not clash, with theirs in the places that do. */
  body: Json;
  clashes: Difference[];
}

export function same(a: Json | undefined, b: Json | undefined): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((item, i) => same(item, b[i]));
  const left = a as Record<string, Json>;
  const right = b as Record<string, Json>;
  const keys = Object.keys(left);
  return keys.length === Object.keys(right).length && keys.every((key) => key in right && same(left[key], right[key]));
}

const isObject = (value: Json | undefined): value is { [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The items of a list by what names them, or null if they have no names of their own. */
function byName(value: Json | undefined): Map<string, Json> | null {
  if (!Array.isArray(value)) return null;
  const named = new Map<string, Json>();
  for (const item of value) {
    const name = isObject(item) ? (item.id ?? item.name) : undefined;
    if (typeof name !== 'string' || named.has(name)) return null;
    named.set(name, item);
  }
  return named;
}

const escape = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1');

/** Joins two changed versions of `before`. */
export function merge(before: Json | undefined, yours: Json | undefined, theirs: Json | undefined): Merged {
  const clashes: Difference[] = [];

  function join(
    where: string,
    base: Json | undefined,
    mine: Json | undefined,
    other: Json | undefined,
  ): Json | undefined {
    if (same(mine, other) || same(base, mine)) return other;
    if (same(base, other)) return mine;
    if (isObject(mine) && isObject(other)) {
      const old = isObject(base) ? base : {};
      const joined: { [key: string]: Json } = {};
      for (const key of new Set([...Object.keys(other), ...Object.keys(mine)])) {
        const value = join(`${where}/${escape(key)}`, old[key], mine[key], other[key]);
        if (value !== undefined) joined[key] = value;
      }
      return joined;
    }
    const mineNamed = byName(mine);
    const otherNamed = byName(other);
    if (mineNamed && otherNamed) {
      const old = byName(base) ?? new Map<string, Json>();
      const joined: Json[] = [];
      for (const name of order([...otherNamed.keys()], [...mineNamed.keys()])) {
        const value = join(`${where}/${escape(name)}`, old.get(name), mineNamed.get(name), otherNamed.get(name));
        if (value !== undefined) joined.push(value);
      }
      return joined;
    }
    clashes.push({ where, before: base, yours: mine, theirs: other });
    return other;
  }

  return { body: join('', before, yours, theirs) ?? null, clashes };
}

/** Their order, with what only mine has put after its neighbour of mine. */
function order(theirs: string[], mine: string[]): string[] {
  const names = [...theirs];
  mine.forEach((name, i) => {
    if (names.includes(name)) return;
    const neighbour = mine.slice(0, i).findLast((earlier) => names.includes(earlier));
    names.splice(neighbour === undefined ? 0 : names.indexOf(neighbour) + 1, 0, name);
  });
  return names;
}

/** Puts the chosen value of one clash into a merged body; the body given is left as it is. */
export function settle(body: Json, where: string, value: Json | undefined): Json {
  if (where === '') return value ?? null;
  const copy = structuredClone(body);
  const steps = where
    .split('/')
    .slice(1)
    .map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'));
  const last = steps.pop() ?? '';
  let at: Json | undefined = copy;
  const into = (holder: Json | undefined, step: string): Json | undefined =>
    Array.isArray(holder)
      ? holder.find((item) => isObject(item) && (item.id ?? item.name) === step)
      : isObject(holder)
        ? holder[step]
        : undefined;
  for (const step of steps) at = into(at, step);
  if (Array.isArray(at)) {
    const i = at.findIndex((item) => isObject(item) && (item.id ?? item.name) === last);
    if (i >= 0 && value === undefined) at.splice(i, 1);
    else if (i >= 0) at[i] = value ?? null;
    else if (value !== undefined) at.push(value);
  } else if (isObject(at)) {
    // `delete` on a copy of our own, made above.
    if (value === undefined) Reflect.deleteProperty(at, last);
    else at[last] = value;
  }
  return copy;
}
