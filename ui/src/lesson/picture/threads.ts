/** An adult's way through the bays: where they stand, from when to when. */
import type { AnswerAdult, Lesson } from '../answer';

export interface Stop {
  from: number;
  to: number;
  /** First and last lane: more than one when the adult keeps several bays in view at once. */
  low: number;
  high: number;
  why: string;
  hazard: boolean;
}

/** Lanes: 0 is the front, then the bays in order. A visit without a bay is at the front. */
export function stopsOf(adult: AnswerAdult, lesson: Lesson, bays: string[]): Stop[] {
  const stops: Stop[] = [];
  for (const stand of adult.stands) {
    const why = stand.why.replace(/ *\(.*\)$/, '');
    const visits = stand.visits
      .map((visit) => ({
        from: lesson.at(visit.from),
        to: lesson.at(visit.to),
        lane: visit.bay === null ? 0 : bays.indexOf(visit.bay) + 1,
      }))
      .sort((a, b) => a.from - b.from);
    let last: Stop | null = null;
    for (const visit of visits) {
      if (last && visit.from < last.to) {
        last.to = Math.max(last.to, visit.to);
        last.low = Math.min(last.low, visit.lane);
        last.high = Math.max(last.high, visit.lane);
      } else {
        last = {
          from: visit.from,
          to: visit.to,
          low: visit.lane,
          high: visit.lane,
          why,
          hazard: stand.hazard !== null,
        };
        stops.push(last);
      }
    }
  }
  return stops.sort((a, b) => a.from - b.from);
}
