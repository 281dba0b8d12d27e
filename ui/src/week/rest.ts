/** Which lessons of a week want planning: those to come that have no plan, or one from before they were changed. */
import type { Schemas } from '../api/client';

type Lesson = Schemas['WeekLesson'];

export function toPlan(lessons: readonly Lesson[], today: string): Lesson[] {
  return lessons.filter((l) => l.date >= today && (l.verdict === 'not planned' || l.stale));
}
