import { describe, expect, it } from 'vitest';
import { readAnswer } from '../answer';
import { lessonOf, task } from './sample';
import { bays, cut, dishInks, dishMarks, levels, union } from './scene';

const rows = (...given: Parameters<typeof lessonOf>) => bays(readAnswer(lessonOf(...given)));

describe('a cook’s row', () => {
  it('shrinks what cooks by itself to a foot line while hands are busy, and lets it grow back', () => {
    const [bay] = rows([
      task({ start: '11:00', end: '11:30', attention: 'watch', step: 'simmer' }),
      task({ start: '11:10', end: '11:15', attention: 'hands', step: 'roll' }),
    ]);
    const simmer = bay?.rows[0]?.bars.filter((bar) => bar.task.step === 'simmer');
    expect(simmer?.map((bar) => [bar.from - 660, bar.to - 660, bar.foot])).toEqual([
      [0, 10, false],
      [10, 15, true],
      [15, 30, false],
    ]);
    // The longest free piece carries the name, once.
    expect(simmer?.map((bar) => bar.named)).toEqual([false, false, true]);
  });

  it('covers every minute of every step exactly once', () => {
    const tasks = [
      task({ start: '11:00', end: '11:40', attention: 'leave', step: 'prove' }),
      task({ start: '11:05', end: '11:25', attention: 'watch', step: 'simmer' }),
      task({ start: '11:03', end: '11:09', step: 'a' }),
      task({ start: '11:20', end: '11:31', step: 'b' }),
    ];
    const bars = rows(tasks)[0]?.rows[0]?.bars ?? [];
    for (const step of ['prove', 'simmer', 'a', 'b']) {
      const own = bars.filter((bar) => bar.task.step === step);
      const whole = own[0]?.task;
      expect(own.reduce((sum, bar) => sum + bar.to - bar.from, 0)).toBe((whole?.to ?? 0) - (whole?.from ?? 0));
      expect(own.filter((bar) => bar.named)).toHaveLength(1);
    }
    // No two bars that take the row at the same minute.
    const high = bars.filter((bar) => !bar.foot).sort((a, b) => a.from - b.from);
    high.slice(1).forEach((bar, i) => expect(bar.from).toBeGreaterThanOrEqual(high[i]?.to ?? 0));
  });

  it('shares the row when a pair has its hands in two things at once', () => {
    const [bay] = rows([
      task({ start: '11:00', end: '11:05', step: 'carrot' }),
      task({ start: '11:00', end: '11:03', step: 'celery' }),
      task({ start: '11:05', end: '11:10', step: 'soften' }),
    ]);
    expect(bay?.rows[0]?.bars.map((bar) => [bar.task.step, bar.track, bar.tracks])).toEqual([
      ['carrot', 0, 2],
      ['celery', 1, 2],
      ['soften', 0, 1],
    ]);
  });

  it('stands by bay and place, A2 before A10', () => {
    const found = rows(
      [],
      [
        ['Ben', 'A10'],
        ['Cara', 'B1'],
        ['Dev', 'A2'],
      ],
    );
    expect(found.map((bay) => [bay.name, bay.rows.map((row) => row.cook.name)])).toEqual([
      ['A', ['Dev', 'Ben']],
      ['B', ['Cara']],
    ]);
  });
});

describe('stretches of time', () => {
  it('joins those that touch', () => {
    expect(
      union([
        { from: 5, to: 7 },
        { from: 0, to: 2 },
        { from: 2, to: 4 },
      ]),
    ).toEqual([
      { from: 0, to: 4 },
      { from: 5, to: 7 },
    ]);
  });
  it('cuts at both ends of a cover', () => {
    expect(
      cut({ from: 0, to: 10 }, [
        { from: -3, to: 2 },
        { from: 8, to: 12 },
      ]),
    ).toEqual([
      { from: 0, to: 2, covered: true },
      { from: 2, to: 8, covered: false },
      { from: 8, to: 10, covered: true },
    ]);
  });
  it('counts what is on at once', () => {
    expect(
      levels([
        { from: 0, to: 5 },
        { from: 3, to: 8 },
        { from: 8, to: 9 },
      ]),
    ).toEqual([
      { from: 0, to: 3, count: 1 },
      { from: 3, to: 5, count: 2 },
      { from: 5, to: 9, count: 1 },
    ]);
  });
});

describe('tags and inks', () => {
  it('gives no two dishes of a lesson the same tag', () => {
    const lesson = readAnswer(
      lessonOf(
        ['Fruit scones', 'Fish soup', 'Fishcakes', 'Fruit salad'].map((dish) =>
          task({ dish, start: '11:00', end: '11:01' }),
        ),
      ),
    );
    const marks = dishMarks(dishInks(lesson), (dish) => (dish === 'Fruit scones' ? 'FS' : undefined));
    expect(new Set([...marks.values()].map((mark) => mark.tag)).size).toBe(4);
    expect(marks.get('Fruit scones')).toEqual({ tag: 'FS', ink: 1 });
  });
});
