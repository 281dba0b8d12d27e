/** Twenty marks about the bell: where each stands. A mark is 5 lessons in 100. */

export interface Mark {
  /** Columns from the bell: 0 is the one next to it, on its side. */
  column: number;
  /** Marks below this one. */
  row: number;
  /** Ends after the bell. */
  late: boolean;
}

/** Places ends, in minutes after the bell (0 and less is in time), as stacks of columns `bucket` minutes wide. A stack
 *  that is full, or time further away than there are columns, spills outwards, never over the bell: the count on each
 *  side of it is what the picture says. */
export function placeMarks(ends: number[], bucket: number, columns: number, most: number): Mark[] {
  const stacks = { before: new Map<number, number>(), after: new Map<number, number>() };
  const marks: Mark[] = [];
  // Nearest the bell first on each side, so that spilling keeps the order.
  for (const end of [...ends].sort((a, b) => Math.abs(a) - Math.abs(b))) {
    const late = end > 0;
    const side = late ? stacks.after : stacks.before;
    let column = Math.min(columns - 1, Math.floor(Math.abs(end) / bucket));
    while ((side.get(column) ?? 0) >= most && column < columns - 1) column += 1;
    while ((side.get(column) ?? 0) >= most && column > 0) column -= 1;
    const row = side.get(column) ?? 0;
    side.set(column, row + 1);
    marks.push({ column, row, late });
  }
  return marks;
}
