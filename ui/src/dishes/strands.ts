/** Where the steps of a method stand when it is drawn as strands that meet. The longest strand runs along the top; each
 *  other one joins it where its last step is needed. Columns, not minutes, place the steps, so that a method of short
 *  steps can be read; the length of a bar says how long it takes. */
import type { Schemas } from '../api/client';

export type Strand = Schemas['DishView']['strands'][number];

export interface Placed {
  strand: Strand;
  column: number;
  lane: number;
}
export interface Join {
  from: Placed;
  to: Placed;
  /** Along one lane, or from one strand into another. */
  across: boolean;
}
export interface Drawing {
  steps: Placed[];
  joins: Join[];
  /** First step of each strand, by lane. */
  begins: Placed[];
  columns: number;
  lanes: number;
}

export function layout(strands: Strand[]): Drawing {
  const byId = new Map(strands.map((strand) => [strand.step, strand]));
  const before = (strand: Strand): Strand[] => strand.follows.flatMap((id) => byId.get(id) ?? []);
  const after = new Map<string, Strand[]>();
  for (const strand of strands) {
    for (const id of strand.follows) after.set(id, [...(after.get(id) ?? []), strand]);
  }

  // Earliest column: one after the last of what it follows.
  const columns = new Map<string, number>();
  const columnOf = (strand: Strand): number => {
    const known = columns.get(strand.step);
    if (known !== undefined) return known;
    columns.set(strand.step, 0); // a circle in a broken draft must not hang the page
    const column = Math.max(0, ...before(strand).map((one) => columnOf(one) + 1));
    columns.set(strand.step, column);
    return column;
  };
  strands.forEach(columnOf);

  // Lanes: from the last step back along the most steps; every step left over begins another strand.
  const lanes = new Map<string, number>();
  let lane = 0;
  const trace = (last: Strand): void => {
    let at: Strand | undefined = last;
    while (at && !lanes.has(at.step)) {
      lanes.set(at.step, lane);
      at = before(at)
        .filter((one) => !lanes.has(one.step))
        .sort((a, b) => columnOf(b) - columnOf(a) || b.to - a.to)[0];
    }
    lane += 1;
  };
  for (const strand of [...strands].sort((a, b) => columnOf(b) - columnOf(a) || b.to - a.to)) {
    if (!lanes.has(strand.step)) trace(strand);
  }

  // Side strands stand as late as they may: right before what needs them.
  for (const strand of [...strands].sort((a, b) => columnOf(b) - columnOf(a))) {
    if (lanes.get(strand.step) === 0) continue;
    const needed = (after.get(strand.step) ?? []).map((one) => columns.get(one.step) ?? 0);
    if (needed.length > 0) columns.set(strand.step, Math.max(columns.get(strand.step) ?? 0, Math.min(...needed) - 1));
  }

  // A strand lies right below the one it joins, the first to join nearest, so that a rise crosses as little as can be.
  const joinOf = (number: number): { lane: number; column: number } => {
    let first = { lane: 0, column: Infinity };
    for (const strand of strands) {
      if (lanes.get(strand.step) !== number) continue;
      for (const one of after.get(strand.step) ?? []) {
        const column = columns.get(one.step) ?? 0;
        const into = lanes.get(one.step) ?? 0;
        if (into !== number && column < first.column) first = { lane: into, column };
      }
    }
    return first;
  };
  const into = Array.from({ length: lane }, (_, number) => joinOf(number));
  const order: number[] = [];
  const lay = (number: number): void => {
    if (order.includes(number)) return; // a circle in a broken draft
    order.push(number);
    into
      .map((join, child) => ({ ...join, child }))
      .filter((join) => join.lane === number && join.child !== number)
      .sort((a, b) => a.column - b.column)
      .forEach((join) => lay(join.child));
  };
  for (let number = 0; number < lane; number += 1) lay(number);
  for (const [step, number] of lanes) lanes.set(step, order.indexOf(number));

  const steps = strands.map((strand): Placed => ({
    strand,
    column: columns.get(strand.step) ?? 0,
    lane: lanes.get(strand.step) ?? 0,
  }));
  const placed = new Map(steps.map((one) => [one.strand.step, one]));
  const joins = steps.flatMap((to) =>
    to.strand.follows.flatMap((id) => {
      const from = placed.get(id);
      return from ? [{ from, to, across: from.lane !== to.lane }] : [];
    }),
  );
  const begins = [...new Set(steps.map((one) => one.lane))]
    .sort((a, b) => a - b)
    .flatMap((number) => steps.filter((one) => one.lane === number).sort((a, b) => a.column - b.column)[0] ?? []);
  return { steps, joins, begins, columns: Math.max(0, ...steps.map((one) => one.column)) + 1, lanes: lane };
}
