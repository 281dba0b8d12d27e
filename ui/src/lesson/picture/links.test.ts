import { describe, expect, it } from 'vitest';
import { readAnswer } from '../answer';
import { waitingFor, waitsFor } from './links';
import { lessonOf, task } from './sample';

const lesson = readAnswer(
  lessonOf(
    [
      task({ cook: 'Aisha', step: 'form', start: '11:00', end: '11:10' }),
      task({ cook: 'Aisha', step: 'clean', attention: 'clean', dish: null, start: '11:10', end: '11:20' }),
      task({ cook: 'Sam', step: 'fry', attention: 'grown-up', adult: 'Ms Hart', start: '11:14', end: '11:20' }),
      task({ cook: 'Aisha', step: 'fry', attention: 'grown-up', adult: 'Ms Hart', start: '11:20', end: '11:24' }),
      task({ cook: 'Violet', step: 'fry', attention: 'grown-up', adult: 'Ms Hart', start: '11:24', end: '11:28' }),
      task({ cook: 'Ben', step: 'fry', attention: 'grown-up', adult: 'Mr Reed', start: '11:24', end: '11:28' }),
    ],
    [
      ['Aisha', 'A1'],
      ['Sam', 'A2'],
      ['Violet', 'A3'],
      ['Ben', 'A4'],
    ],
  ),
);
const follows = (_dish: string, step: string) => (step === 'fry' ? ['form'] : []);
const fry = lesson.tasks[3];

describe('what a step waits for', () => {
  it('names the step before it, the cook’s own hands and the adult who was elsewhere', () => {
    expect(
      fry && waitsFor(lesson, fry, follows).map(({ kind, task: other }) => [kind, other.cook, other.step]),
    ).toEqual([
      ['step', 'Aisha', 'form'],
      ['own', 'Aisha', 'clean'],
      ['adult', 'Sam', 'fry'],
    ]);
  });

  it('names who waits for the adult, and nobody who has another one', () => {
    expect(fry && waitingFor(lesson, fry, follows).map((link) => link.task.cook)).toEqual(['Violet']);
  });

  it('says nothing of steps that left a gap: nobody waited for those', () => {
    const form = lesson.tasks[0];
    expect(form && waitsFor(lesson, form, follows)).toEqual([]);
  });
});
