import { expect, it } from 'vitest';
import type { Schemas } from '../api/client';
import { toPlan } from './rest';

type Lesson = Schemas['WeekLesson'];
const lesson = (id: string, date: string, verdict: Lesson['verdict'], stale = false): Lesson =>
  ({ id, date, verdict, stale }) as Lesson;

it('what is to come and has no plan, or an old one, is planned; what is over is not', () => {
  const week = [
    lesson('over', '2026-11-30', 'not planned'),
    lesson('today', '2026-12-01', 'not planned'),
    lesson('fits', '2026-12-02', 'fits'),
    lesson('changed', '2026-12-02', 'fits', true),
    lesson('does not', '2026-12-03', 'does not fit'),
  ];
  expect(toPlan(week, '2026-12-01').map((l) => l.id)).toEqual(['today', 'changed']);
});
