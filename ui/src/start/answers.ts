/** The four answers of a quick plan, and the sentence that says how it came out. */
import type { Schemas } from '../api/client';
import { clock } from '../base/clock';
import type { Answer } from '../lesson/answer';
import { t } from '../words/words.svelte';

export interface Answers {
  /** Id of a dish. */
  dish: string;
  pupils: number;
  cookers: number;
  /** From the beginning to the bell. */
  minutes: number;
  in: 'singles' | 'pairs' | 'threes';
  /** When it begins, minutes after midnight. */
  from: number;
}

const within = (value: number, least: number, most: number): boolean =>
  Number.isInteger(value) && value >= least && value <= most;

/** Whether the numbers can be planned with: what the program itself takes, and a bell before midnight. */
export function sound(answers: Answers): boolean {
  return (
    within(answers.pupils, 1, 40) &&
    within(answers.cookers, 1, 20) &&
    within(answers.minutes, 20, 300) &&
    within(answers.from, 0, 1439 - answers.minutes)
  );
}

export function quickOf(answers: Answers): NonNullable<Schemas['PlanWanted']['quick']> {
  return {
    dishes: [answers.dish],
    pupils: answers.pupils,
    cookers: answers.cookers,
    in: answers.in,
    from: clock(answers.from),
    to: clock(answers.from + answers.minutes),
  };
}

export function headline(answer: Answer): string {
  if (answer.verdict === 'not found') return t('lesson.not_found');
  if (answer.verdict === 'does not fit')
    return answer.over_minutes > 0 ? t('lesson.over', { n: answer.over_minutes }) : t('lesson.no_fit');
  return answer.spare_minutes > 0 ? t('lesson.fits', { n: answer.spare_minutes }) : t('lesson.fits_none');
}
