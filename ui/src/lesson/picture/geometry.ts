/** From minutes and rows to pixels. One scale for the whole picture, so that the bell is at one place in all its parts. */
import type { Lesson } from '../answer';
import type { Bay } from './scene';

export interface Geometry {
  width: number;
  /** Where time begins, px: left of it stand names. */
  left: number;
  right: number;
  /** Shown time, minutes after midnight. */
  from: number;
  to: number;
  rowHeight: number;
  barHeight: number;
  /** Minutes between clock times along the top. */
  every: number;
  x: (minutes: number) => number;
}

export const top = 38;
export const bayGap = 5;
export const left = 158;

/** The last minute anything happens, at least the bell. */
function lastMinute(lesson: Lesson): number {
  return lesson.tasks.reduce((last, task) => Math.max(last, task.to), lesson.bell);
}

export function geometry(lesson: Lesson, rows: number, width: number): Geometry {
  const from = Math.floor(lesson.opens / 5) * 5;
  const to = lastMinute(lesson) + 4;
  const right = width - 6;
  const perMinute = (right - left) / (to - from);
  // A clock time is 40 px wide; 52 leaves air.
  const every = [5, 10, 15, 20, 30, 60].find((step) => step * perMinute >= 52) ?? 60;
  const rowHeight = rows > 24 ? 18 : 20;
  return {
    width,
    left,
    right,
    from,
    to,
    rowHeight,
    barHeight: rowHeight === 18 ? 13 : 14,
    every,
    x: (minutes) => left + (minutes - from) * perMinute,
  };
}

/** Upper edge of each row, by cook, and where the rows end. */
export function rowTops(bays: Bay[], rowHeight: number): { tops: Map<string, number>; bayTops: number[]; end: number } {
  const tops = new Map<string, number>();
  const bayTops: number[] = [];
  let y = top;
  for (const bay of bays) {
    bayTops.push(y);
    for (const row of bay.rows) {
      tops.set(row.cook.name, y);
      y += rowHeight;
    }
    y += bayGap;
  }
  return { tops, bayTops, end: y };
}

/** About how wide a text is, px. Measuring hundreds of labels would cost more than the picture itself. */
export function textWidth(text: string, size: number): number {
  return text.length * size * 0.56;
}

/** What a bar can carry: tag and word, the tag, or nothing until it is looked at. Where there is no tag (one dish for
 *  all says nothing on a bar) the first part of the word will do. */
export function label(tag: string, word: string, width: number): string {
  const fits = (text: string): boolean => textWidth(text, 11) + 7 <= width;
  const both = tag ? `${tag} ${word}` : word;
  if (fits(both)) return both;
  if (tag) return width >= 18 ? tag : '';
  const first = word.split(/[ ,]/)[0] ?? '';
  return first.length > 2 && fits(first) ? first : '';
}
