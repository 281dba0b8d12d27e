/** A plan as the program gives it (schemas/answer.schema.json), and the same in minutes for drawing. */
import { exactMinutesOn, minutesOn, moment } from '../base/clock';

export interface Setting {
  celsius: number;
  kind: 'conventional' | 'fan' | 'grill';
}
export interface AnswerTask {
  kind: string;
  says: string;
  start: string;
  end: string;
  attention: 'hands' | 'watch' | 'leave' | 'grown-up' | 'clean' | 'hands off';
  cook: string | null;
  place: string | null;
  dish: string | null;
  step: string | null;
  part: number;
  window: string | null;
  bay: string | null;
  cooker: string | null;
  oven: Setting | null;
  sink_bay: string | null;
  hand_basin: boolean;
  kit: string | null;
  kit_units: number[];
  adult: string | null;
  /** Its start is fixed by somebody; plans kept before there were pins do not say. */
  pinned?: boolean;
}
export interface AnswerCook {
  name: string;
  place: string;
  bay: string;
  people: number;
  wave: number | null;
  buffer_minutes: number | null;
}
export interface Visit {
  from: string;
  to: string;
  bay: string | null;
  who: string;
}
export interface AnswerOven {
  oven: string;
  batches: {
    setting: Setting;
    switch_at: string;
    ready_at: string;
    from_cold: boolean;
    from: string;
    to: string;
    trays: { dish: string; cooks: string[]; from: string; to: string }[];
  }[];
}
export interface AnswerAdult {
  name: string;
  leads: boolean;
  stands: { from: string; to: string; why: string; hazard: string | null; visits: Visit[] }[];
}
export interface Answer {
  verdict: 'fits' | 'does not fit' | 'not found';
  spare_minutes: number;
  over_minutes: number;
  checkpoint_cost_minutes: number;
  own_timelines_needed: boolean;
  lesson: {
    title: string;
    school: string;
    room: string;
    opens: string;
    bell: string;
    purpose: string;
    timelines: 'waves' | 'own';
  };
  causes: { code: string; says: string }[];
  causes_minimal: boolean;
  remedies: { code: string; says: string; buys: string; fits: boolean; gain_minutes: number }[];
  trials: { waves: number; fits: boolean; proved: boolean; misses_by_minutes: number | null }[];
  chance: null | {
    word: 'comfortable' | 'tight' | 'unlikely';
    about: string;
    says: string[];
    last_finish_twentieths: string[];
    runs: number;
    in_time_share: number;
    in_time_least: number;
    in_time_most: number;
  };
  last_safe_starts: { wave: number; at: string; says: string; instead: string }[];
  plan: null | {
    waves: number;
    cooks: AnswerCook[];
    tasks: AnswerTask[];
    checkpoints: { wave: number; at: string; says: string; dish: string | null; step: string | null }[];
    ovens: AnswerOven[];
    adults: AnswerAdult[];
    goals: { name: string; value: number; bound: number; proved: boolean }[];
  };
  notes: string[];
  work: { seconds: number; first_plan_seconds: number; seed: number; kept_standing?: boolean; stopped_early: boolean };
}

/** How a step is drawn and called. */
export type Pattern = 'hands' | 'watch' | 'leave' | 'grown' | 'clean' | 'off';

export interface Task {
  /** Index into the plan's tasks: its name within one plan. */
  id: number;
  kind: string;
  says: string;
  /** A few letters for a bar; asked for anew each time, since a dish may be read later than its plan. */
  readonly short: string;
  from: number;
  to: number;
  pattern: Pattern;
  cook: string | null;
  dish: string | null;
  step: string | null;
  window: string | null;
  bay: string | null;
  cooker: string | null;
  inOven: boolean;
  sinkBay: string | null;
  kit: string | null;
  kitUnits: number[];
  adult: string | null;
  part: number;
  pinned: boolean;
}

/** A plan in minutes after midnight of the lesson's day. */
export interface Lesson {
  day: string | null;
  opens: number;
  bell: number;
  cooks: AnswerCook[];
  tasks: Task[];
  /** Minutes on this lesson's day. */
  at: (text: string) => number;
  /** Last ends in minutes after the bell, to the second. */
  ends: number[];
  answer: Answer;
}

const patterns: Record<AnswerTask['attention'], Pattern> = {
  hands: 'hands',
  watch: 'watch',
  leave: 'leave',
  'grown-up': 'grown',
  clean: 'clean',
  'hands off': 'off',
};

/** What a step is called in few letters, where somebody has said so. */
export type ShortNames = (dish: string | null, step: string | null) => string | undefined;

/** "cut-carrot" as words: what a step is called when its dish gives no short name. */
function plainName(task: AnswerTask): string {
  if (task.step) return task.step.replaceAll('-', ' ').replace(/^./, (letter) => letter.toUpperCase());
  return task.says;
}

export function readAnswer(answer: Answer, shortNames: ShortNames = () => undefined): Lesson {
  const day = moment(answer.lesson.opens).day;
  const at = (text: string): number => minutesOn(day, text);
  const bell = at(answer.lesson.bell);
  const tasks = (answer.plan?.tasks ?? []).map((task, id): Task => ({
    id,
    kind: task.kind,
    says: task.says,
    get short() {
      return shortNames(task.dish, task.step) ?? plainName(task);
    },
    from: at(task.start),
    to: at(task.end),
    pattern: patterns[task.attention],
    cook: task.cook,
    dish: task.dish,
    step: task.step,
    window: task.window,
    bay: task.bay,
    cooker: task.cooker,
    inOven: task.oven !== null,
    sinkBay: task.sink_bay,
    kit: task.kit,
    kitUnits: task.kit_units,
    adult: task.adult,
    part: task.part,
    pinned: task.pinned ?? false,
  }));
  return {
    day,
    opens: at(answer.lesson.opens),
    bell,
    // Minutes to spare are those of a plan that fits; one that runs past the bell has none to show.
    cooks: (answer.plan?.cooks ?? []).map((cook) =>
      answer.verdict === 'fits' ? cook : { ...cook, buffer_minutes: null },
    ),
    tasks,
    at,
    ends: (answer.chance?.last_finish_twentieths ?? []).map((end) => exactMinutesOn(day, end) - bell),
    answer,
  };
}

/** Hands are busy: the cook can do nothing else meanwhile. */
export const isBusy = (task: Task): boolean =>
  task.pattern === 'hands' || task.pattern === 'grown' || task.pattern === 'clean';
