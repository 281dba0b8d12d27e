/** The changes a teacher makes to a lesson, and what each must know. */
import type { Schemas } from '../api/client';
import type { Lesson, Task } from './answer';
import { placeOrder } from './picture/scene';

export type Change = Schemas['LessonChange'];
export type Kind =
  'pace' | 'away' | 'not here' | 'swap' | 'close cooker' | 'move window' | 'add stop' | 'add gate' | 'bell';
export type Field = 'cook' | 'other' | 'pace' | 'from' | 'to' | 'cooker' | 'window' | 'step' | 'look_for' | 'minutes';

export const kinds: { kind: Kind; says: `change.${string}`; fields: Field[] }[] = [
  { kind: 'away', says: 'change.away', fields: ['cook', 'from', 'to'] },
  { kind: 'not here', says: 'change.not_here', fields: ['cook'] },
  { kind: 'pace', says: 'change.pace', fields: ['cook', 'pace'] },
  { kind: 'close cooker', says: 'change.close', fields: ['cooker'] },
  { kind: 'swap', says: 'change.swap', fields: ['cook', 'other'] },
  { kind: 'move window', says: 'change.move', fields: ['window', 'from', 'minutes'] },
  { kind: 'add stop', says: 'change.stop', fields: ['step', 'minutes'] },
  { kind: 'add gate', says: 'change.gate', fields: ['step', 'look_for', 'minutes'] },
  { kind: 'bell', says: 'change.bell', fields: ['from', 'to'] },
];

/** That step of that dish as every cook does it, from its first part. */
const samePart = (lesson: Lesson, task: Task): Task[] =>
  lesson.tasks.filter((one) => one.dish === task.dish && one.step === task.step && one.part === 0);

/** Cooks who do that step of that dish in the wave of `task`'s cook, as a pin names them. */
export function waveOf(lesson: Lesson, task: Task): string[] {
  const wave = lesson.cooks.find((cook) => cook.name === task.cook)?.wave;
  const doing = new Set(samePart(lesson, task).map((one) => one.cook));
  return lesson.cooks.filter((cook) => cook.wave === wave && doing.has(cook.name)).map((cook) => cook.name);
}

/** Who starts the step with `task`'s cook, at the same minute: whom a pin moves anyway. */
export function together(lesson: Lesson, task: Task): string[] {
  const wave = new Set(waveOf(lesson, task));
  return samePart(lesson, task)
    .filter((one) => one.from === task.from)
    .flatMap((one) => (one.cook !== null && wave.has(one.cook) ? [one.cook] : []));
}

/** What can be chosen, read off the plan. */
export interface Choices {
  cooks: string[];
  cookers: string[];
  windows: string[];
  /** A step of a dish, once, in the order of the plan. */
  steps: { dish: string; step: string; says: string }[];
}

export function choicesOf(lesson: Lesson): Choices {
  const steps = new Map<string, Choices['steps'][number]>();
  for (const task of lesson.tasks) {
    if (task.dish === null || task.step === null) continue;
    const key = `${task.dish}|${task.step}`;
    if (!steps.has(key)) steps.set(key, { dish: task.dish, step: task.step, says: task.short });
  }
  const cookers = lesson.tasks.flatMap((task) => task.cooker ?? []);
  const ovens = (lesson.answer.plan?.ovens ?? []).map((oven) => oven.oven);
  return {
    cooks: lesson.cooks.map((cook) => cook.name),
    cookers: [...new Set([...cookers, ...ovens])].sort((a, b) => placeOrder.compare(a, b)),
    windows: [...new Set(lesson.tasks.flatMap((task) => task.window ?? []))],
    steps: [...steps.values()],
  };
}

export interface Filled {
  cook: string;
  other: string;
  pace: number;
  from: string;
  to: string;
  cooker: string;
  window: string;
  /** Index into the choices' steps; -1 for none. */
  step: number;
  look_for: string;
  minutes: number;
}

/** The change to send, or null while something is missing. Only what the kind asks for is sent. */
export function changeOf(kind: Kind, filled: Filled, choices: Choices): Change | null {
  const change: Change = { change: kind };
  for (const field of kinds.find((one) => one.kind === kind)?.fields ?? []) {
    if (field === 'step') {
      const chosen = choices.steps[filled.step];
      if (!chosen) return null;
      change.dish = chosen.dish;
      change.step = chosen.step;
    } else if (field === 'pace' || field === 'minutes') {
      if (!(filled[field] > 0)) return null;
      change[field] = filled[field];
    } else {
      if (filled[field] === '') return null;
      change[field] = filled[field];
    }
  }
  return change;
}
