/** Two plans of one lesson side by side: what moved, for whom. */
import type { Lesson, Task } from './answer';

export interface Moved {
  cook: string;
  says: string;
  was: number;
  now: number;
}
export interface Comparison {
  spare: [before: number, after: number];
  /** Lessons in 100 that end by the bell; null where there is no chance. */
  chance: [before: number | null, after: number | null];
  verdict: [before: string, after: string];
  moved: Moved[];
}

const keyOf = (task: Task): string => [task.cook, task.kind, task.dish, task.step, task.window].join('|');
const inHundred = (lesson: Lesson): number | null =>
  lesson.answer.chance ? Math.round(lesson.answer.chance.in_time_share * 100) : null;
/** Minutes to spare; what runs over counts below nought. */
const spare = (lesson: Lesson): number =>
  lesson.answer.verdict === 'fits' ? lesson.answer.spare_minutes : -lesson.answer.over_minutes;

/** Steps are matched by cook, dish and name; the same step done in parts is matched part by part. */
export function compare(before: Lesson, after: Lesson): Comparison {
  const old = new Map<string, Task[]>();
  for (const task of before.tasks) {
    const known = old.get(keyOf(task));
    if (known) known.push(task);
    else old.set(keyOf(task), [task]);
  }
  const moved: Moved[] = [];
  for (const task of after.tasks) {
    const was = old.get(keyOf(task))?.shift();
    if (was && was.from !== task.from) {
      moved.push({ cook: task.cook ?? '', says: task.short, was: was.from, now: task.from });
    }
  }
  return {
    spare: [spare(before), spare(after)],
    chance: [inHundred(before), inHundred(after)],
    verdict: [before.answer.verdict, after.answer.verdict],
    moved,
  };
}
