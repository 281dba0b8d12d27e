import { describe, expect, it } from 'vitest';
import { readAnswer } from './answer';
import { compare } from './compare';
import { lessonOf, task } from './picture/sample';

describe('two plans side by side', () => {
  it('names what moved and nothing else', () => {
    const before = readAnswer(
      lessonOf([task({ start: '11:00', end: '11:05' }), task({ step: 'fry', start: '11:05', end: '11:10' })]),
    );
    const after = readAnswer(
      lessonOf([task({ start: '11:00', end: '11:06' }), task({ step: 'fry', start: '11:06', end: '11:11' })]),
    );
    expect(compare(before, after).moved).toEqual([{ cook: 'Aisha', says: 'Fry', was: 665, now: 666 }]);
  });

  it('counts minutes over the bell below nought', () => {
    const fits = lessonOf([]);
    const over = { ...fits, verdict: 'does not fit' as const, spare_minutes: 0, over_minutes: 9 };
    expect(compare(readAnswer(over), readAnswer(fits)).spare).toEqual([-9, 3]);
  });
});
