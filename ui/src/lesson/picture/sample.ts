/** A small invented lesson for the tests of the picture. */
import type { Answer, AnswerTask } from '../answer';

export function task(given: Partial<AnswerTask> & { start: string; end: string }): AnswerTask {
  const { start, end, ...rest } = given;
  return {
    kind: 'step',
    says: 'Chop',
    attention: 'hands',
    cook: 'Aisha',
    place: 'A1',
    dish: 'Lentil dhal',
    step: 'chop',
    part: 0,
    window: null,
    bay: null,
    cooker: null,
    oven: null,
    sink_bay: null,
    hand_basin: false,
    kit: null,
    kit_units: [],
    adult: null,
    ...rest,
    start: `2026-11-17T${start}:00`,
    end: `2026-11-17T${end}:00`,
  };
}

export function lessonOf(tasks: AnswerTask[], cooks: [name: string, place: string][] = [['Aisha', 'A1']]): Answer {
  return {
    verdict: 'fits',
    spare_minutes: 3,
    over_minutes: 0,
    checkpoint_cost_minutes: 0,
    own_timelines_needed: false,
    lesson: {
      title: '9K',
      school: 'Quillbridge School',
      room: 'Food Room 2',
      opens: '2026-11-17T10:50:00',
      bell: '2026-11-17T12:30:00',
      purpose: 'eat here',
      timelines: 'waves',
    },
    causes: [],
    causes_minimal: false,
    remedies: [],
    trials: [],
    chance: null,
    last_safe_starts: [],
    plan: {
      waves: 1,
      cooks: cooks.map(([name, place]) => ({
        name,
        place,
        bay: place.slice(0, 1),
        people: 1,
        wave: 1,
        buffer_minutes: 3,
      })),
      tasks,
      checkpoints: [],
      ovens: [],
      adults: [],
      goals: [],
    },
    notes: [],
    work: { seconds: 1, first_plan_seconds: 0.1, seed: 1, stopped_early: false },
  };
}
