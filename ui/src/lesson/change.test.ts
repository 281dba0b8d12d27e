import { describe, expect, it } from 'vitest';
import { readAnswer } from './answer';
import { changeOf, choicesOf, together, waveOf, type Filled } from './change';
import { lessonOf, task } from './picture/sample';

const filled: Filled = {
  cook: 'Aisha',
  other: '',
  pace: 1.25,
  from: '10:20',
  to: '10:50',
  cooker: '',
  window: '',
  step: 0,
  look_for: 'no pink',
  minutes: 2,
};
const choices = choicesOf(
  readAnswer(
    lessonOf([
      task({ start: '11:00', end: '11:05', cooker: 'B10' }),
      task({ start: '11:05', end: '11:09', cooker: 'B2', step: 'fry' }),
      task({ cook: 'Ben', start: '11:05', end: '11:09', cooker: 'B2', step: 'fry' }),
    ]),
  ),
);

describe('a change to a lesson', () => {
  it('offers each step and each cooker once', () => {
    expect(choices.steps.map((step) => step.step)).toEqual(['chop', 'fry']);
    expect(choices.cookers).toEqual(['B2', 'B10']);
  });

  it('sends what its kind asks for and nothing left over from another', () => {
    expect(changeOf('away', filled, choices)).toEqual({ change: 'away', cook: 'Aisha', from: '10:20', to: '10:50' });
    expect(changeOf('add gate', filled, choices)).toEqual({
      change: 'add gate',
      dish: 'Lentil dhal',
      step: 'chop',
      look_for: 'no pink',
      minutes: 2,
    });
  });

  it('is offered for the wave, and for those who start together', () => {
    const lesson = readAnswer(
      lessonOf(
        [
          task({ start: '11:00', end: '11:05' }),
          task({ cook: 'Ben', start: '11:00', end: '11:05' }),
          task({ cook: 'Cara', start: '11:03', end: '11:08' }),
        ],
        [
          ['Aisha', 'A1'],
          ['Ben', 'A2'],
          ['Cara', 'B1'],
          ['Dev', 'B2'],
        ],
      ),
    );
    const [chop] = lesson.tasks;
    if (!chop) throw new Error('no task');
    expect(waveOf(lesson, chop)).toEqual(['Aisha', 'Ben', 'Cara']);
    expect(together(lesson, chop)).toEqual(['Aisha', 'Ben']);
  });

  it('waits until everything is said', () => {
    expect(changeOf('swap', filled, choices)).toBeNull();
    expect(changeOf('add stop', { ...filled, step: -1 }, choices)).toBeNull();
  });
});
