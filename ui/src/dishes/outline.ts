/** A method as an indented list. In the file a step says which steps it follows; a teacher thinks "while that simmers,
 *  chop the herbs". Here the one becomes the other: a line moved in begins with the line above it that cooks by itself,
 *  and what comes next waits for both. All functions give a new method and leave the given one alone. */
import { runsByItself, stepOf, type Follow, type Step } from './dish';

export interface Line {
  step: Step;
  /** How far in: 0 is the main line. */
  depth: number;
  /** The step that goes on by itself meanwhile. */
  host: string | null;
  /** What it waits for. */
  after: string[];
}

const mostDepth = 3;

/** The same method with every `follows` written out; without one a step follows the step before it in the list. */
export function explicit(method: Step[]): Step[] {
  return method.map((step, i) => {
    if (step.follows) return { ...step };
    const before = method[i - 1];
    return { ...step, follows: before ? [before.id] : [] };
  });
}

const startsWith = (follow: Follow, host: string): boolean =>
  typeof follow !== 'string' && follow.step === host && follow.from === 'start';

/** All steps that must have ended before a step can begin. */
function ancestors(method: Step[], id: string): Set<string> {
  const byId = new Map(method.map((step) => [step.id, step]));
  const found = new Set<string>();
  const look = (step: string): void => {
    for (const follow of byId.get(step)?.follows ?? []) {
      const before = stepOf(follow);
      // Beginning with a step is not waiting for its end, but for the end of what that step waits for.
      if (typeof follow !== 'string' && follow.from === 'start') look(before);
      else if (!found.has(before)) {
        found.add(before);
        look(before);
      }
    }
  };
  look(id);
  return found;
}

/** The lines as they are shown. A step stands under the nearest earlier step that cooks by itself and that it does not
 *  wait for, until something waits for that one: then the list is back on its line. */
export function outline(given: Step[]): Line[] {
  const method = explicit(given);
  const before = method.map((step) => ancestors(method, step.id));
  const lines: Line[] = [];
  method.forEach((step, i) => {
    let host: Line | null = null;
    for (let j = i - 1; j >= 0 && host === null; j -= 1) {
      const candidate = method[j];
      const line = lines[j];
      if (!candidate || !line || !runsByItself(candidate) || before[i]?.has(candidate.id)) continue;
      const over = before.slice(j + 1, i).some((earlier) => earlier.has(candidate.id));
      if (!over) host = line;
    }
    lines.push({
      step,
      depth: host ? Math.min(mostDepth, host.depth + 1) : 0,
      host: host ? host.step.id : null,
      after: (step.follows ?? []).filter((f) => typeof f === 'string' || f.from !== 'start').map(stepOf),
    });
  });
  return lines;
}

/** The step a line could be moved in under: the one that cooks by itself and that it follows now. */
export function hostFor(given: Step[], id: string): string | null {
  const method = explicit(given);
  const i = method.findIndex((step) => step.id === id);
  const waits = ancestors(method, id);
  return method.slice(0, Math.max(0, i)).findLast((step) => runsByItself(step) && waits.has(step.id))?.id ?? null;
}

/** Moves a line in: it begins with its host, and whoever waits for it goes on waiting for the host as well. */
export function moveIn(given: Step[], id: string): Step[] {
  const method = explicit(given);
  const host = hostFor(given, id);
  if (host === null) return method;
  const waits = ancestors(method, id);
  const hostWaits = ancestors(method, host);
  return method.map((step) => {
    if (step.id === id) {
      // What it follows besides the host and what the host is the end of stays.
      const own = (step.follows ?? []).filter((follow) => {
        const before = stepOf(follow);
        return before !== host && !hostWaits.has(before) && !ancestors(method, before).has(host);
      });
      return { ...step, follows: [...own, { step: host, from: 'start' as const }] };
    }
    const follows = step.follows ?? [];
    const throughIt = follows.some((follow) => stepOf(follow) === id) && waits.has(host);
    return throughIt && !follows.some((follow) => stepOf(follow) === host)
      ? { ...step, follows: [...follows, host] }
      : step;
  });
}

/** Moves a line out: it begins when its host has ended. */
export function moveOut(given: Step[], id: string): Step[] {
  const method = explicit(given);
  const host = outline(given).find((line) => line.step.id === id)?.host ?? null;
  if (host === null) return method;
  return method.map((step) => {
    if (step.id !== id) return step;
    const own = (step.follows ?? []).filter((follow) => !startsWith(follow, host));
    return { ...step, follows: [...own, host] };
  });
}

/** Changes a line's place with its neighbour. If it followed that neighbour, the two change roles. */
export function moveBy(given: Step[], id: string, by: -1 | 1): Step[] {
  const method = explicit(given);
  const i = method.findIndex((step) => step.id === id);
  const first = method[Math.min(i, i + by)];
  const second = method[Math.max(i, i + by)];
  if (!first || !second || first === second) return method;
  const rename = (follows: Follow[] | undefined, from: string, to: string): Follow[] =>
    (follows ?? []).map((follow) =>
      stepOf(follow) !== from ? follow : typeof follow === 'string' ? to : { ...follow, step: to },
    );
  const chained = (second.follows ?? []).some((follow) => stepOf(follow) === first.id);
  const swapped = method.map((step) => {
    if (!chained) return step;
    if (step === first) return { ...first, follows: [second.id] };
    if (step === second) {
      const rest = (second.follows ?? []).filter((follow) => stepOf(follow) !== first.id);
      return { ...second, follows: [...(first.follows ?? []), ...rest] };
    }
    return { ...step, follows: rename(step.follows, second.id, first.id) };
  });
  const at = swapped.findIndex((step) => step.id === first.id);
  [swapped[at], swapped[at + 1]] = [swapped[at + 1] as Step, swapped[at] as Step];
  return swapped;
}

/** Takes a step out; what followed it follows what it followed. */
export function withoutStep(given: Step[], id: string): Step[] {
  const method = explicit(given);
  const gone = method.find((step) => step.id === id);
  return method
    .filter((step) => step.id !== id)
    .map((step) => {
      const follows = (step.follows ?? []).flatMap((follow) =>
        stepOf(follow) === id ? (gone?.follows ?? []) : [follow],
      );
      // Waiting for the end of a step says more than beginning with it; nothing is said twice.
      const ends = new Set(follows.filter((f) => typeof f === 'string' || f.from !== 'start').map(stepOf));
      const seen = new Set<string>();
      const kept = follows.filter((f) => (typeof f !== 'string' && f.from === 'start' ? !ends.has(f.step) : true));
      return { ...step, follows: kept.filter((f) => !seen.has(stepOf(f)) && seen.add(stepOf(f))) };
    });
}

/** Adds a step at the end; it follows what was last. */
export function withStep(given: Step[], step: Step): Step[] {
  const method = explicit(given);
  const last = method.at(-1);
  return [...method, { ...step, follows: last ? [last.id] : [] }];
}
