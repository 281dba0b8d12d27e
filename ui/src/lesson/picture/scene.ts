/** Where everything of the time-plan picture stands. Pure: minutes and rows in, rows and bars out; the drawing turns
 *  minutes into pixels. A cook's row belongs to what their hands do; what cooks on by itself shrinks to a foot line under
 *  it and grows back to full height when hands are free. */
import { isBusy, type AnswerCook, type Lesson, type Task } from '../answer';

export interface Bar {
  task: Task;
  from: number;
  to: number;
  /** A foot line under a busy bar; else it takes the row. */
  foot: boolean;
  /** For a pair or three with their hands in different things at once: which part of the row, of how many. */
  track: number;
  tracks: number;
  /** The part of the task that carries its name. */
  named: boolean;
}
export interface Row {
  cook: AnswerCook;
  bars: Bar[];
}
export interface Bay {
  name: string;
  rows: Row[];
}
export interface Span {
  from: number;
  to: number;
}

/** The stretches covered by any of `spans`, in order, joined where they touch. */
export function union(spans: Span[]): Span[] {
  const joined: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last && span.from <= last.to) last.to = Math.max(last.to, span.to);
    else joined.push({ from: span.from, to: span.to });
  }
  return joined;
}

/** `span` cut where `covers` (joined and in order) begin and end; says for each piece whether it is covered. */
export function cut(span: Span, covers: Span[]): (Span & { covered: boolean })[] {
  const pieces: (Span & { covered: boolean })[] = [];
  let at = span.from;
  for (const cover of covers) {
    if (cover.to <= at || cover.from >= span.to) continue;
    if (cover.from > at) pieces.push({ from: at, to: cover.from, covered: false });
    const to = Math.min(cover.to, span.to);
    pieces.push({ from: Math.max(at, cover.from), to, covered: true });
    at = to;
  }
  if (at < span.to) pieces.push({ from: at, to: span.to, covered: false });
  return pieces;
}

/** Busy steps that overlap share the row's height. */
function busyBars(tasks: Task[]): Bar[] {
  const bars: Bar[] = [];
  let group: Bar[] = [];
  let end = -Infinity;
  const close = (): void => {
    const tracks = Math.max(1, ...group.map((bar) => bar.track + 1));
    for (const bar of group) bar.tracks = tracks;
    bars.push(...group);
    group = [];
  };
  for (const task of [...tasks].sort((a, b) => a.from - b.from || b.to - a.to)) {
    if (task.from >= end) close();
    const taken = new Set(group.filter((bar) => bar.to > task.from).map((bar) => bar.track));
    let track = 0;
    while (taken.has(track)) track += 1;
    group.push({ task, from: task.from, to: task.to, foot: false, track, tracks: 1, named: true });
    end = Math.max(end, task.to);
  }
  close();
  return bars;
}

function rowOf(cook: AnswerCook, tasks: Task[]): Row {
  const busy = tasks.filter(isBusy);
  const bars = busyBars(busy);
  let taken = union(busy);
  // What runs by itself: the one that ends first takes the free row, the others stay at its foot.
  for (const task of tasks.filter((one) => !isBusy(one)).sort((a, b) => a.to - b.to)) {
    const pieces = cut(task, taken);
    const longest = pieces
      .filter((piece) => !piece.covered)
      .reduce<Span | null>(
        (best, piece) => (best && best.to - best.from >= piece.to - piece.from ? best : piece),
        null,
      );
    for (const piece of pieces) {
      const named = longest === null ? piece === pieces[0] : piece.from === longest.from;
      bars.push({ task, from: piece.from, to: piece.to, foot: piece.covered, track: 0, tracks: 1, named });
    }
    taken = union([...taken, task]);
  }
  return { cook, bars };
}

/** "A2" before "A10". Made once: localeCompare() with options makes one for every pair. */
export const placeOrder = new Intl.Collator('en', { numeric: true });

/** All rows, grouped by bay, in the order of places. */
export function bays(lesson: Lesson): Bay[] {
  const byCook = new Map<string, Task[]>();
  for (const task of lesson.tasks) {
    if (task.cook === null || task.to <= task.from) continue;
    const own = byCook.get(task.cook);
    if (own) own.push(task);
    else byCook.set(task.cook, [task]);
  }
  const found = new Map<string, Bay>();
  const inOrder = [...lesson.cooks].sort((a, b) => placeOrder.compare(a.place, b.place));
  for (const cook of inOrder) {
    const name = cook.bay || cook.place;
    let bay = found.get(name);
    if (!bay) found.set(name, (bay = { name, rows: [] }));
    bay.rows.push(rowOf(cook, byCook.get(cook.name) ?? []));
  }
  return [...found.values()];
}

/** Fixed parts of the lesson (register, demonstration, stops): they stand over the whole picture. */
export function windows(lesson: Lesson): Task[] {
  return lesson.tasks.filter((task) => task.kind === 'window' && task.cook === null);
}

export interface Level extends Span {
  count: number;
}

/** How many of `spans` are on at once, as steps; stretches of nothing are left out. */
export function levels(spans: Span[]): Level[] {
  const times = [...new Set(spans.flatMap((span) => [span.from, span.to]))].sort((a, b) => a - b);
  const steps: Level[] = [];
  times.slice(0, -1).forEach((from, i) => {
    const to = times[i + 1] ?? from;
    const count = spans.filter((span) => span.from <= from && span.to >= to).length;
    if (count === 0) return;
    const last = steps.at(-1);
    if (last?.to === from && last.count === count) last.to = to;
    else steps.push({ from, to, count });
  });
  return steps;
}

/** Steps with something on a ring: on a cooker, not in its oven. */
export const onRing = (lesson: Lesson): Span[] => lesson.tasks.filter((task) => task.cooker !== null && !task.inOven);
export const atSink = (lesson: Lesson): Span[] => lesson.tasks.filter((task) => task.sinkBay !== null);

/** What each dish is drawn in, 1 to 8; after the eighth they begin again, which is why the tag always stands on the bar. */
export function dishInks(lesson: Lesson): Map<string, number> {
  const inks = new Map<string, number>();
  for (const { dish } of lesson.tasks) {
    if (dish !== null && !inks.has(dish)) inks.set(dish, (inks.size % 8) + 1);
  }
  return inks;
}

/** Two letters for each dish beside its ink; both stay the same through the lesson. */
export interface DishMark {
  tag: string;
  ink: number;
}
export function dishMarks(
  inks: Map<string, number>,
  tagOf: (dish: string) => string | undefined,
): Map<string, DishMark> {
  const marks = new Map<string, DishMark>();
  const used = new Set<string>();
  for (const [dish, ink] of inks) {
    const words = dish
      .toUpperCase()
      .split(/[^\p{L}]+/u)
      .filter(Boolean);
    const letters = words.join('');
    const choices = [
      tagOf(dish),
      words.length > 1 ? (words[0]?.[0] ?? '') + (words.at(-1)?.[0] ?? '') : undefined,
      ...[...letters].slice(1).map((letter) => (letters[0] ?? '') + letter),
    ];
    const tag =
      choices.find((one): one is string => one !== undefined && one !== '' && !used.has(one)) ?? letters.slice(0, 2);
    used.add(tag);
    marks.set(dish, { tag, ink });
  }
  return marks;
}
